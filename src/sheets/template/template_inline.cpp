#include "sheets/template/template_inline.h"

#include "base/joined.h"
#include "base/nearest.h"

#include <algorithm>

namespace sheets {
namespace {

using Kind = Piece::Kind;

class Inliner {
 public:
  Inliner(const std::map<std::string, Template>& partials, base::Diagnostics& messages)
      : partials_(partials), messages_(messages) {}

  Pieces result;

  void add(const Pieces& pieces, const std::string& prefix) {
    for (const auto& piece : pieces) {
      if (!fits(piece)) return;
      if (piece.kind == Kind::Partial) {
        addPartial(piece, prefix);
        continue;
      }
      const bool isPrefixed = piece.startsLine && !prefix.empty();
      if (isPrefixed) result.push_back({Kind::Words, prefix, piece.pos, true, false, {}});
      result.push_back(piece);
      if (isPrefixed) result.back().startsLine = false;
    }
  }

 private:
  /// Partials that name each other twice double with every step: hence a cap on the whole.
  bool fits(const Piece& piece) {
    constexpr std::size_t costOfTag = 4;
    if (used_ > templateSizeCap) return false;
    used_ += piece.text.size() + (piece.kind == Kind::Words ? 0 : costOfTag);
    if (used_ > templateSizeCap)
      messages_.error(piece.pos, "", "the template with its partials is longer than 256 KiB",
                      "look for partials that hold each other many times");
    return used_ <= templateSizeCap;
  }

  void addPartial(const Piece& tag, const std::string& prefix) {
    if (std::find(open_.begin(), open_.end(), tag.text) != open_.end()) {
      messages_.error(tag.pos, written(tag), "this partial contains itself", "take it out of its own file");
      return;
    }
    const auto* pieces = scanned(tag);
    if (!pieces) return;
    open_.push_back(tag.text);
    if (tag.isStandalone) add(*pieces, prefix + tag.prefix);
    else add(withoutLastBreak(*pieces), prefix);
    open_.pop_back();
  }

  /// Each partial is scanned once, so that its mistakes are reported once.
  const Pieces* scanned(const Piece& tag) {
    const auto partial = partials_.find(tag.text);
    if (partial == partials_.end()) {
      std::vector<std::string> names;
      for (const auto& [name, unused] : partials_) names.push_back(name);
      const std::string near = base::nearest(tag.text, names);
      messages_.error(tag.pos, written(tag),
                      "there is no partial '" + tag.text + "'" + base::didYouMean(near),
                      near.empty() ? "known: " + base::joined(names) : "write {{>" + near + "}}");
      return nullptr;
    }
    const auto known = scanned_.find(tag.text);
    if (known != scanned_.end()) return &known->second;
    Template source = partial->second;
    if (!source.text.empty() && !source.text.ends_with('\n')) source.text += '\n';
    return &scanned_.emplace(tag.text, scanTemplate(source, messages_)).first->second;
  }

  static Pieces withoutLastBreak(Pieces pieces) {
    if (pieces.empty()) return pieces;
    pieces.front().startsLine = false;
    if (pieces.back().kind == Kind::Words && pieces.back().text.ends_with('\n')) {
      pieces.back().text.pop_back();
      if (pieces.back().text.empty()) pieces.pop_back();
    }
    return pieces;
  }

  const std::map<std::string, Template>& partials_;
  base::Diagnostics& messages_;
  std::map<std::string, Pieces> scanned_;
  std::vector<std::string> open_;
  std::size_t used_ = 0;
};

}  // namespace

Pieces inlinePartials(const Template& main, const std::map<std::string, Template>& partials,
                      base::Diagnostics& messages) {
  Inliner inliner(partials, messages);
  inliner.add(scanTemplate(main, messages), "");
  return std::move(inliner.result);
}

}  // namespace sheets
