#include "markup/inlines.h"

#include "base/hidden.h"
#include "base/letters.h"
#include "base/signs.h"
#include "markup/apostrophes.h"

#include <algorithm>
#include <charconv>

namespace markup {
namespace {

void replaceAll(std::string& s, std::string_view from, std::string_view to) {
  for (std::size_t at = s.find(from); at != std::string::npos; at = s.find(from, at + to.size()))
    s.replace(at, from.size(), to);
}

std::string withoutSigns(std::string_view text) {
  std::string s(text);
  replaceAll(s, base::lineBreakSign, "\n");
  replaceAll(s, base::edgeSign, "");
  return s;
}

std::string utf8(std::uint32_t letter) {
  const auto tail = [&](int shift) { return static_cast<char>(0x80 | ((letter >> shift) & 0x3F)); };
  if (letter < 0x80) return {static_cast<char>(letter)};
  if (letter < 0x800) return {static_cast<char>(0xC0 | (letter >> 6)), tail(0)};
  if (letter < 0x10000) return {static_cast<char>(0xE0 | (letter >> 12)), tail(6), tail(0)};
  return {static_cast<char>(0xF0 | (letter >> 18)), tail(12), tail(6), tail(0)};
}

/// The letter of '&#8239;' or '&#x202F;'; empty when there is none.
std::string numbered(std::string_view digits) {
  int base = 10;
  if (digits.starts_with('x') || digits.starts_with('X')) {
    base = 16;
    digits.remove_prefix(1);
  }
  std::uint32_t letter = 0;
  const auto [end, problem] = std::from_chars(digits.data(), digits.data() + digits.size(), letter, base);
  const bool isLetter = letter >= 0x20 && letter <= 0x10FFFF && (letter < 0xD800 || letter > 0xDFFF);
  if (problem != std::errc() || end != digits.data() + digits.size() || !isLetter) return {};
  return utf8(letter);
}

}  // namespace

void InlineReader::enter(MD_SPANTYPE type, const void* detail) {
  switch (type) {
    case MD_SPAN_EM:
      ++emphasis_;
      break;
    case MD_SPAN_STRONG:
      ++strong_;
      break;
    case MD_SPAN_A:
      link_ = decoded(static_cast<const MD_SPAN_A_DETAIL*>(detail)->href);
      break;
    case MD_SPAN_IMG:
      if (++pictures_ == 1) address_ = decoded(static_cast<const MD_SPAN_IMG_DETAIL*>(detail)->src);
      break;
    case MD_SPAN_CODE:
    case MD_SPAN_DEL:
    case MD_SPAN_LATEXMATH:
    case MD_SPAN_LATEXMATH_DISPLAY:
    case MD_SPAN_WIKILINK:
    case MD_SPAN_U:
      break;
  }
}

void InlineReader::leave(MD_SPANTYPE type) {
  switch (type) {
    case MD_SPAN_EM:
      --emphasis_;
      break;
    case MD_SPAN_STRONG:
      --strong_;
      break;
    case MD_SPAN_A:
      checkLink();  // only now is its line known
      link_.clear();
      break;
    case MD_SPAN_IMG:
      if (--pictures_ == 0) addPicture();
      break;
    case MD_SPAN_CODE:
      source_.error(line_, "code has no place in a document", "take the ` away, or write \\`");
      break;
    case MD_SPAN_DEL:
    case MD_SPAN_LATEXMATH:
    case MD_SPAN_LATEXMATH_DISPLAY:
    case MD_SPAN_WIKILINK:
    case MD_SPAN_U:
      break;
  }
}

void InlineReader::text(MD_TEXTTYPE type, std::string_view text) {
  switch (type) {
    case MD_TEXT_NORMAL:
      add(withoutSigns(text));
      break;
    case MD_TEXT_NULLCHAR:
      add("\xEF\xBF\xBD");
      break;
    case MD_TEXT_BR:
      add("\n");
      break;
    case MD_TEXT_SOFTBR:
      add(" ");
      break;
    case MD_TEXT_ENTITY:
      add(entity(text));
      break;
    case MD_TEXT_HTML:
      source_.error(line_, "'" + std::string(text) + "' is HTML, which has no place in a document",
                    "write \\< for a less-than sign");
      break;
    case MD_TEXT_CODE:
    case MD_TEXT_LATEXMATH:
      break;
  }
}

Inlines InlineReader::take() {
  Inlines taken;
  std::swap(taken, inlines_);
  curlApostrophes(taken);
  return taken;
}

void InlineReader::add(std::string_view text) {
  if (pictures_ > 0) {
    alt_ += text;
    return;
  }
  if (text.empty()) return;
  const auto style = strong_ > 0     ? Inline::Style::Strong
                     : emphasis_ > 0 ? Inline::Style::Emphasis
                                     : Inline::Style::Plain;
  const bool continues = !inlines_.empty() && inlines_.back().style == style &&
                         inlines_.back().link == link_ && inlines_.back().figure.empty();
  if (continues) inlines_.back().text += text;
  else inlines_.push_back({style, std::string(text), link_, {}});
}

/// Whoever presses a link of a document must not start a script or open a file.
void InlineReader::checkLink() const {
  const auto begins = [&](std::string_view scheme) {
    return std::equal(scheme.begin(), scheme.end(), link_.begin(),
                      link_.begin() + static_cast<std::ptrdiff_t>(std::min(scheme.size(), link_.size())),
                      [](char s, char c) { return s == base::lowered(c); });
  };
  if (link_.empty() || begins("https://") || begins("http://") || begins("mailto:") || begins("tel:")) return;
  source_.error(line_, "'" + link_ + "' is not an address that may be pressed",
                "begin it with https://, http://, mailto: or tel:");
}

void InlineReader::addPicture() {
  constexpr std::string_view scheme = "figure:";
  std::string alt;
  std::swap(alt, alt_);
  replaceAll(alt, "\n", " ");
  if (!address_.starts_with(scheme) || address_.size() == scheme.size()) {
    source_.error(line_, "'" + address_ + "' is not a drawing", "name one, such as ![words](figure:plan)");
    return;
  }
  inlines_.push_back({Inline::Style::Plain, alt, link_, address_.substr(scheme.size())});
}

std::string InlineReader::decoded(const MD_ATTRIBUTE& attribute) const {
  std::string s;
  for (std::size_t i = 0; attribute.size > 0 && attribute.substr_offsets[i] < attribute.size; ++i) {
    const MD_OFFSET begin = attribute.substr_offsets[i];
    const std::string_view part(attribute.text + begin, attribute.substr_offsets[i + 1] - begin);
    s += attribute.substr_types[i] == MD_TEXT_ENTITY ? entity(part) : withoutSigns(part);
  }
  return s;
}

/// md4c passes on every '&word;' as it stands.
std::string InlineReader::entity(std::string_view text) const {
  const std::string_view name = text.substr(1, text.size() - 2);
  if (name == "nbsp") return "\u00A0";
  if (name == "amp") return "&";
  if (name == "lt") return "<";
  if (name == "gt") return ">";
  if (name == "quot") return "\"";
  std::string letter = name.starts_with('#') ? numbered(name.substr(1)) : "";
  if (letter.empty()) {
    source_.error(line_, "'" + std::string(text) + "' is not known", "type the letter itself");
  } else if (const std::string hidden = base::firstHiddenLetter(letter); !hidden.empty()) {
    source_.error(line_, "'" + std::string(text) + "' is the " + hidden, "delete it");
  }
  return letter;
}

}  // namespace markup
