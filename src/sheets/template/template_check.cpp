#include "sheets/template/template_check.h"

#include "base/nearest.h"

#include <set>

namespace sheets {
namespace {

using Kind = Piece::Kind;

/// 'customer.name' in parts.
std::vector<std::string> partsOf(const std::string& name) {
  std::vector<std::string> parts(1);
  for (const char c : name) {
    if (c == '.') parts.emplace_back();
    else parts.back() += c;
  }
  return parts;
}

/// The name that a fact has now; empty for one that never had another.
std::string newNameOf(const std::string& name) {
  constexpr std::pair<const char*, const char*> renamed[] = {
      {"safety_title", "title"}, {"orders_title", "title"}, {"office_title", "title"}};
  for (const auto& [old, now] : renamed) {
    if (name == old) return now;
  }
  return {};
}

void addNames(const Facts& group, std::vector<std::string>& names) {
  for (const auto& [name, unused] : group) names.push_back(name);
}

/// "; did you mean 'x'?", or nothing.
std::string suggestion(const std::string& word, const std::vector<std::string>& names) {
  return base::didYouMean(base::nearest(word, names));
}

class Checker {
 public:
  Checker(const Pieces& pieces, const Facts& facts, const Withheld& withheld, base::Diagnostics& messages)
      : pieces_(pieces), withheld_(withheld), messages_(messages), closeOf_(pieces.size()), scopes_{&facts} {}

  void check() {
    if (findCloses()) checkRange(0, pieces_.size(), true);
  }

 private:
  bool findCloses() {
    std::vector<std::size_t> open;
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      const Piece& piece = pieces_[i];
      if (piece.kind == Kind::Close) {
        closeOf_[open.back()] = i;
        open.pop_back();
      } else if (piece.kind == Kind::Section || piece.kind == Kind::Inverted) {
        open.push_back(i);
        if (open.size() > sectionDepthCap) {
          messages_.error(piece.pos, written(piece), "more than 64 sections inside one another",
                          "close some before");
          return false;
        }
      }
    }
    return true;
  }

  void checkRange(std::size_t begin, std::size_t end, bool isPrinted) {
    for (std::size_t i = begin; i < end && !isFull(); ++i) {
      const Piece& piece = pieces_[i];
      count(piece, isPrinted ? piece.text.size() : 1);
      switch (piece.kind) {
        case Kind::Words:
        case Kind::Close:
        case Kind::Partial:
          break;
        case Kind::Variable:
          checkVariable(i, isPrinted);
          break;
        case Kind::Section:
        case Kind::Inverted:
          checkSection(i, isPrinted);
          i = closeOf_[i];
          break;
      }
    }
  }

  void checkVariable(std::size_t i, bool isPrinted) {
    const Piece& tag = pieces_[i];
    const Fact* fact = lookUp(i);
    if (!fact) return;
    if (const auto* words = std::get_if<std::string>(&fact->value)) {
      if (isPrinted) count(tag, words->size());
      return;
    }
    if (std::holds_alternative<bool>(fact->value)) {
      report(i, "is yes or no, not a word", "write {{#" + tag.text + "}} ... {{/" + tag.text + "}}");
    } else if (const auto* group = std::get_if<Facts>(&fact->value)) {
      report(i, "is a group of names, not a word",
             group->empty() ? "take it out" : "write {{" + tag.text + "." + group->front().first + "}}");
    } else {
      report(i, "is a list, not a word", "write {{#" + tag.text + "}} ... {{/" + tag.text + "}}");
    }
  }

  void checkSection(std::size_t i, bool isPrinted) {
    const Fact* fact = lookUp(i);
    const bool isInverted = pieces_[i].kind == Kind::Inverted;
    const auto body = [&](bool isOpen) { checkRange(i + 1, closeOf_[i], isPrinted && isOpen); };
    if (!fact) return;  // what stands inside cannot be judged
    if (isInverted) return body(!isTrue(*fact));
    if (const auto* group = std::get_if<Facts>(&fact->value)) {
      scopes_.push_back(group);
      body(true);
      scopes_.pop_back();
    } else if (const auto* list = std::get_if<FactList>(&fact->value)) {
      // An empty list has nothing to tell its names by: the section is skipped, here as when printing.
      for (const auto& item : *list) {
        scopes_.push_back(&item);
        body(true);
        scopes_.pop_back();
      }
    } else {
      body(isTrue(*fact));
    }
  }

  /// Inside out for the first part of the name, then part by part. Reports and gives null when unknown.
  const Fact* lookUp(std::size_t i) {
    const std::string& name = pieces_[i].text;
    if (name.find('.') == std::string::npos) {
      const Fact* fact = inScope(name);
      if (!fact) reportUnknown(i, name);
      return fact;
    }
    const auto parts = partsOf(name);
    const Fact* fact = inScope(parts.front());
    if (!fact) {
      reportUnknown(i, parts.front());
      return nullptr;
    }
    for (std::size_t part = 1; part < parts.size(); ++part) {
      const std::string& owner = parts[part - 1];
      const auto* group = std::get_if<Facts>(&fact->value);
      if (!group) {
        const bool isList = std::holds_alternative<FactList>(fact->value);
        report(i, "'" + owner + "' is " + (isList ? "a list" : "a word") + " and has no names of its own",
               isList ? "write {{#" + owner + "}}{{" + parts[part] + "}}{{/" + owner + "}}"
                      : "write {{" + name.substr(0, name.find("." + parts[part])) + "}}");
        return nullptr;
      }
      fact = find(*group, parts[part]);
      if (!fact) {
        std::vector<std::string> names;
        addNames(*group, names);
        report(i, "'" + owner + "' has no '" + parts[part] + "'" + suggestion(parts[part], names), factsHelp);
        return nullptr;
      }
    }
    return fact;
  }

  const Fact* inScope(const std::string& name) const {
    const Fact* fact = nullptr;
    for (auto scope = scopes_.rbegin(); scope != scopes_.rend() && !fact; ++scope) fact = find(**scope, name);
    return fact;
  }

  void reportUnknown(std::size_t i, const std::string& name) {
    if (const std::string whose = withheld_(name); !whose.empty()) {
      report(i, "'" + name + "' is for " + whose + " only",
             "take it out, or change 'reader:' at the top of the template");
      return;
    }
    if (const std::string now = newNameOf(name); !now.empty()) {
      report(i, "'" + name + "' is called '" + now + "' now", "write {{" + now + "}}");
      return;
    }
    std::vector<std::string> names;
    for (auto scope = scopes_.rbegin(); scope != scopes_.rend(); ++scope) addNames(**scope, names);
    const std::string near = suggestion(name, names);
    report(i, "'" + name + "' is not known here" + near, near.empty() ? listsHolding(name) : factsHelp);
  }

  /// A hint for a name that stands outside the section it belongs to.
  std::string listsHolding(const std::string& name) const {
    for (const auto* scope : scopes_) {
      for (const auto& [owner, fact] : *scope) {
        const auto* list = std::get_if<FactList>(&fact.value);
        const auto* group = std::get_if<Facts>(&fact.value);
        if (group && find(*group, name)) return "write {{" + owner + "." + name + "}}";
        if (list && !list->empty() && find(list->front(), name))
          return "it is known inside {{#" + owner + "}} ... {{/" + owner + "}}";
      }
    }
    return factsHelp;
  }

  /// Once for each tag, though a loop may pass it many times.
  void report(std::size_t i, std::string message, std::string hint) {
    if (!reported_.insert(i).second) return;
    messages_.error(pieces_[i].pos, written(pieces_[i]), std::move(message), std::move(hint));
  }

  void count(const Piece& piece, std::size_t bytes) {
    const bool wasFull = isFull();
    bytes_ += bytes;
    if (isFull() && !wasFull)
      messages_.error(piece.pos, "", "the filled text would be longer than 4 MiB",
                      "look for loops inside loops");
  }
  static constexpr auto factsHelp = "'planksheaf facts JOB' lists every name";

  bool isFull() const { return bytes_ > outputCap; }

  const Pieces& pieces_;
  const Withheld& withheld_;
  base::Diagnostics& messages_;
  std::vector<std::size_t> closeOf_;
  std::vector<const Facts*> scopes_;
  std::set<std::size_t> reported_;
  std::size_t bytes_ = 0;
};

}  // namespace

bool isTrue(const Fact& fact) {
  if (const auto* words = std::get_if<std::string>(&fact.value)) return !words->empty();
  if (const auto* yes = std::get_if<bool>(&fact.value)) return *yes;
  if (const auto* list = std::get_if<FactList>(&fact.value)) return !list->empty();
  return true;
}

void checkNames(const Pieces& pieces, const Facts& facts, const Withheld& withheld,
                base::Diagnostics& messages) {
  Checker(pieces, facts, withheld, messages).check();
}

}  // namespace sheets
