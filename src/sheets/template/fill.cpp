#include "sheets/template/fill.h"

#include "base/signs.h"
#include "sheets/template/template_check.h"
#include "sheets/template/template_inline.h"

#include <kainjow/mustache.hpp>
#include <mutex>
#include <stdexcept>
#include <unordered_set>

// The library substitutes names, sections and inverted sections, which it does by the book. It knows nothing
// of lines, keeps the line break of a tag alone on its line and fails in silence, so what it is given has
// been checked, and is cut so that no such line is left.

namespace sheets {
namespace {

namespace mustache = kainjow::mustache;
using Kind = Piece::Kind;

// Control characters that stand in the rendered text only: '\1' number '\2' at the start of each line of the
// template, and '\2' alone between two braces that are no tag. No fact and no template can hold them.
constexpr char markBegin = '\1';
constexpr char markEnd = '\2';

bool isSpace(char c) { return static_cast<unsigned char>(c) <= ' ' || c == '\x7F'; }

bool isPunctuation(char c) {
  return (c >= '!' && c <= '/') || (c >= ':' && c <= '@') || (c >= '[' && c <= '`') || (c >= '{' && c <= '~');
}

/// Words as CommonMark that prints them as they are: white space and control characters become one space, or
/// the sign of a forced line break where there was one, and every ASCII punctuation character gets a
/// backslash (CommonMark 0.31.2, 2.4: any may be escaped).
///
/// '____' and '[ ]' are a template's marks for a line to write on and a box to tick. Typed by a person they
/// are only letters: a word joiner (U+2060, prints nothing) inside keeps them from being taken for the marks.
std::string escaped(const std::string& words) {
  constexpr const char* wordJoiner = "\u2060";
  std::string out;
  out.reserve(words.size() + words.size() / 8);
  bool hadSpace = false, hadBreak = false;
  int underscores = 0;
  for (const char c : words) {
    if (isSpace(c)) {
      hadSpace = true;
      hadBreak |= c == '\n';
      continue;
    }
    if (hadSpace && !out.empty()) out += hadBreak ? base::lineBreakSign : " ";
    hadSpace = hadBreak = false;
    underscores = c == '_' ? underscores + 1 : 0;
    if (underscores > 1 && underscores % 3 == 1) out += wordJoiner;
    if (isPunctuation(c)) out += '\\';
    out += c;
    if (c == '[') out += wordJoiner;
  }
  return out;
}

using Names = std::unordered_set<std::string>;

/// Every part of every name a template holds: 'price' and 'total' of '{{price.total}}'.
Names namesIn(const Pieces& pieces) {
  Names names;
  for (const auto& piece : pieces) {
    if (piece.kind == Kind::Words) continue;
    std::string_view rest = piece.text;
    for (auto dot = rest.find('.'); dot != std::string_view::npos; dot = rest.find('.')) {
      names.emplace(rest.substr(0, dot));
      rest.remove_prefix(dot + 1);
    }
    names.emplace(rest);
  }
  return names;
}

/// The facts that have one of these names, put into 'group'.
void addData(mustache::data& group, const Facts& facts, const Names& names) {
  for (const auto& [name, fact] : facts) {
    if (!names.contains(name)) continue;
    mustache::data& data = group[name];
    if (!isTrue(fact)) {
      data = mustache::data{mustache::data::type::bool_false};
    } else if (const auto* words = std::get_if<std::string>(&fact.value)) {
      data = mustache::data{*words};
    } else if (const auto* inner = std::get_if<Facts>(&fact.value)) {
      addData(data, *inner, names);
    } else if (const auto* items = std::get_if<FactList>(&fact.value)) {
      // The library copies whatever goes into a list with all that is below it, so empty groups go in and are
      // filled there; it has no other way to them than this.
      data = mustache::data{mustache::list(items->size())};
      auto& groups = const_cast<mustache::list&>(data.list_value());
      for (std::size_t i = 0; i < items->size(); ++i) addData(groups[i], (*items)[i], names);
    } else {
      data = mustache::data{mustache::data::type::bool_true};
    }
  }
}

bool isEmphasis(char c) { return c == '*' || c == '_'; }

/// Whether the words next to a variable, sections' tags aside, touch it with '*' or '_'.
bool isOpened(const Pieces& pieces, std::size_t i) {
  while (i-- > 0 && pieces[i].kind != Kind::Variable) {
    if (pieces[i].kind == Kind::Words) return isEmphasis(pieces[i].text.back());
  }
  return false;
}
bool isClosed(const Pieces& pieces, std::size_t i) {
  while (++i < pieces.size() && pieces[i].kind != Kind::Variable) {
    if (pieces[i].kind == Kind::Words) return isEmphasis(pieces[i].text.front());
  }
  return false;
}

/// The text for the library. Each line gets the number of its piece; that also keeps the library from taking
/// an empty line after a section's tag for that tag's own.
std::string textOf(const Pieces& pieces) {
  std::string text;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const Piece& piece = pieces[i];
    if (piece.startsLine) text += markBegin + std::to_string(i) + markEnd;
    if (text.ends_with('{') && written(piece).starts_with('{')) text += markEnd;
    const bool isVariable = piece.kind == Kind::Variable;
    if (isVariable && isOpened(pieces, i)) text += base::edgeSign;
    text += written(piece);
    if (isVariable && isClosed(pieces, i)) text += base::edgeSign;
  }
  return text;
}

}  // namespace

struct CompiledTemplate::Parts {
  explicit Parts(Pieces all) : pieces(std::move(all)), names(namesIn(pieces)), page(textOf(pieces)) {
    page.set_custom_escape(escaped);
    if (!page.is_valid()) throw broken();
  }

  std::string render(const Facts& facts) const {
    mustache::data data;
    addData(data, facts, names);
    const std::lock_guard lock(guard);
    std::string out;
    page.render(data, [&](const std::string& part) { out += part; });
    if (!page.is_valid()) throw broken();
    return out;
  }

  std::logic_error broken() const {
    return std::logic_error("internal error: mustache: " + page.error_message());
  }

  const Pieces pieces;
  const Names names;
  // Parsing takes longer than printing, so it is done once. The library notes errors in the page: one thread
  // at a time.
  mutable std::mutex guard;
  mutable mustache::mustache page;
};

namespace {

/// Takes the marks out of the rendered text.
Filled withoutMarks(const std::string& text, const Pieces& pieces) {
  Filled filled;
  filled.text.reserve(text.size());
  base::SourcePos pos;
  bool isMarked = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == markBegin) {
      std::size_t number = 0;
      while (text[++i] != markEnd) number = number * 10 + static_cast<std::size_t>(text[i] - '0');
      if (!isMarked) pos = {pieces[number].pos.file, pieces[number].pos.line, 0};
      isMarked = true;
      continue;
    }
    if (text[i] == markEnd) continue;
    filled.text += text[i];
    if (text[i] != '\n') continue;
    filled.lines.push_back(pos);
    isMarked = false;
  }
  if (!filled.text.empty() && filled.text.back() != '\n') filled.lines.push_back(pos);
  return filled;
}

}  // namespace

CompiledTemplate compileTemplate(const Template& main, const std::map<std::string, Template>& partials) {
  CompiledTemplate sheet;
  Pieces pieces = inlinePartials(main, partials, sheet.messages);
  if (sheet.messages.ok()) sheet.parts = std::make_shared<const CompiledTemplate::Parts>(std::move(pieces));
  return sheet;
}

Filled fillWithLines(const CompiledTemplate& sheet, const Facts& facts, base::Diagnostics& messages) {
  base::Diagnostics own = sheet.messages;
  if (own.ok()) checkNames(sheet.parts->pieces, facts, own);
  messages.add(own);
  if (!own.ok()) return {};
  return withoutMarks(sheet.parts->render(facts), sheet.parts->pieces);
}

Filled fillWithLines(const Template& main, const std::map<std::string, Template>& partials,
                     const Facts& facts, base::Diagnostics& messages) {
  return fillWithLines(compileTemplate(main, partials), facts, messages);
}

std::string fill(const Template& main, const std::map<std::string, Template>& partials, const Facts& facts,
                 base::Diagnostics& messages) {
  return fillWithLines(main, partials, facts, messages).text;
}

}  // namespace sheets
