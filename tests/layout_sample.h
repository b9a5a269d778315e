// Blocks written short, a theme with the fonts of the house, and the dump of a page taken apart.
#pragma once

#include "typeset/dump.h"
#include "typeset/pages/layout.h"

#include <sstream>

namespace sample {

inline model::Theme theme() {
  using model::Face;
  model::Theme t;
  const std::string serif = "/usr/share/fonts/truetype/vollkorn/Vollkorn-";
  const std::string sans = "/usr/share/fonts/truetype/crosextra/Carlito-";
  t.faces = {{Face::Text, serif + "Regular.ttf"},      {Face::TextItalic, serif + "Italic.ttf"},
             {Face::TextBold, serif + "SemiBold.ttf"}, {Face::Display, serif + "Medium.ttf"},
             {Face::Sans, sans + "Regular.ttf"},       {Face::SansItalic, sans + "Italic.ttf"},
             {Face::SansBold, sans + "Bold.ttf"}};
  t.fallbackFaces = {"/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf"};
  const auto hex = [](unsigned v) {
    return model::Colour{static_cast<std::uint8_t>(v >> 16), static_cast<std::uint8_t>(v >> 8 & 255u),
                         static_cast<std::uint8_t>(v & 255u)};
  };
  t.colours = {{"ink", hex(0x211b17)},     {"soft", hex(0x5f554c)},   {"accent", hex(0x7a4522)},
               {"tint", hex(0xf5efe7)},    {"rule", hex(0x9c9083)},   {"white", hex(0xffffff)},
               {"warning", hex(0xf28c00)}, {"danger", hex(0x9b2423)}, {"caution", hex(0xf9a900)},
               {"notice", hex(0x005387)}};
  const auto style = [&](const char* name, Face face, int size, int leading, int rise,
                         const char* colour = "ink") {
    model::TextStyle s;
    s.face = face;
    s.size = size;
    s.leading = leading;
    s.baseline = rise;
    s.colour = colour;
    const bool isSans = face == Face::Sans || face == Face::SansBold;
    s.strong = isSans ? Face::SansBold : Face::TextBold;
    s.emphasis = isSans ? Face::SansItalic : Face::TextItalic;
    t.styles[name] = s;
  };
  style("title", Face::Display, 23'000, 28'000, 21'000);
  style("kind", Face::Display, 23'000, 28'000, 21'000, "accent");
  style("lede", Face::TextItalic, 11'500, 14'000, 10'500, "soft");
  style("figure", Face::Display, 20'000, 28'000, 24'500);
  style("total", Face::TextBold, 15'000, 21'000, 17'500);
  style("hazard", Face::TextBold, 14'000, 21'000, 14'000);
  style("signal", Face::SansBold, 15'000, 21'000, 16'000);
  style("head", Face::TextBold, 12'000, 14'000, 10'500);
  style("rowHead", Face::TextBold, 10'500, 14'000, 10'500);
  style("body", Face::Text, 10'500, 14'000, 10'500);
  style("table", Face::Sans, 10'500, 14'000, 10'500);
  style("note", Face::Sans, 9'000, 10'500, 7'000, "soft");
  style("label", Face::SansBold, 9'000, 10'500, 7'000, "accent");
  style("firm", Face::TextBold, 18'000, 28'000, 21'000);
  style("runFirm", Face::TextBold, 10'000, 14'000, 10'500);
  style("drawing", Face::Sans, 9'000, 10'500, 7'000);
  t.styles["signal"].tracking = 1'200;
  t.styles["table"].tabular = t.styles["total"].tabular = true;
  return t;
}

/// '**strong**', '*emphasis*', '<address>' and '{name}' for a picture; '/' alone breaks the line.
inline markup::Inlines words(const std::string& text) {
  using Style = markup::Inline::Style;
  markup::Inlines out;
  Style style = Style::Plain;
  const auto add = [&](char c) {
    if (out.empty() || out.back().style != style || !out.back().link.empty() || !out.back().figure.empty())
      out.push_back({style, "", "", ""});
    out.back().text += c;
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text.compare(i, 2, "**") == 0) {
      style = style == Style::Strong ? Style::Plain : Style::Strong;
      ++i;
    } else if (text[i] == '*') {
      style = style == Style::Emphasis ? Style::Plain : Style::Emphasis;
    } else if (text[i] == '<' || text[i] == '{') {
      const std::size_t end = text.find(text[i] == '<' ? '>' : '}', i);
      const std::string inner = text.substr(i + 1, end - i - 1);
      if (text[i] == '<') out.push_back({style, inner, "https://" + inner, ""});
      else out.push_back({style, "picture", "", inner});
      i = end;
    } else if (text.compare(i, 3, " / ") == 0) {
      add('\n');
      i += 2;
    } else {
      add(text[i]);
    }
  }
  return out;
}

inline std::vector<std::string> split(const std::string& text, char mark) {
  std::vector<std::string> parts(1);
  for (const char c : text) {
    if (c == mark) parts.emplace_back();
    else parts.back() += c;
  }
  for (std::string& s : parts) {
    s.erase(0, std::min(s.find_first_not_of(' '), s.size()));
    s.erase(s.find_last_not_of(' ') + 1);
  }
  return parts;
}

inline markup::Block title(const std::string& text) {
  return {markup::Heading{1, words(text), false, false}, 1};
}
inline markup::Block section(const std::string& text, bool isWide = false, bool isFenced = false) {
  return {markup::Heading{2, words(text), isWide, isFenced}, 1};
}
inline markup::Block paragraph(const std::string& text) { return {markup::Paragraph{words(text)}, 1}; }
inline markup::Block figure(const std::string& name) { return {markup::Figure{name, "a drawing"}, 1}; }
inline markup::Block pageBreak() { return {markup::PageBreak{}, 1}; }
inline markup::Block list(markup::Mark mark, const std::vector<std::string>& items) {
  markup::List l{mark, 1, {}};
  for (const std::string& item : items) l.items.push_back({{paragraph(item)}});
  return {l, 1};
}
inline markup::Block box(markup::Callout kind, const std::string& title, markup::Blocks body) {
  return {markup::Box{kind, words(title), std::move(body)}, 1};
}
inline std::vector<markup::Cell> cells(const std::string& row) {
  std::vector<markup::Cell> out;
  for (const std::string& cell : split(row, '|')) out.push_back({words(cell)});
  return out;
}
/// 'columns' as 'l6 r2 c1': alignment and weight. An empty head is none.
inline markup::Block table(const std::string& columns, const std::string& head,
                           const std::vector<std::string>& rows) {
  markup::Table t;
  for (const std::string& c : split(columns, ' '))
    t.columns.push_back({c[0] == 'r'   ? markup::Align::Right
                         : c[0] == 'c' ? markup::Align::Centre
                                       : markup::Align::Left,
                         std::stoi(c.substr(1))});
  t.hasHead = !head.empty();
  t.head = cells(head);
  int line = 100;
  for (const std::string& row : rows) t.rows.push_back({cells(row), line++});
  return {t, 1};
}

inline typeset::Furniture furniture() {
  typeset::Furniture f;
  f.firm = "Tallowback Deck Care";
  f.firmLines = {"18 Saltgrass Lane, Brindle Harbour", "office@tallowback.example", "03 555 0142"};
  f.kind = "Quote";
  f.where = "Kettle Point Guest House, Lake Brindle";
  f.jobLabel = "Job 26-014";
  f.footLeft = "03 555 0142";
  f.footMiddle = "Quote \u00B7 job 26-014";
  f.pageOf = "page {n} of {m}";
  const char* signalWords[] = {"NOTICE", "CAUTION", "WARNING", "DANGER"};
  for (std::size_t i = 0; i < 4; ++i) f.signalWords[i] = signalWords[i];
  return f;
}

/// A square sign and a wide drawing.
inline typeset::Drawings drawings() {
  using typeset::Dim;
  const auto make = [](Dim w, Dim h) {
    typeset::Path path;
    using Kind = typeset::Step::Kind;
    path.steps = {{Kind::Move, {}, {}, {}},
                  {Kind::Line, {}, {}, {w, {}}},
                  {Kind::Line, {}, {}, {w, h}},
                  {Kind::Line, {}, {}, {{}, h}},
                  {Kind::Close, {}, {}, {}}};
    path.fill = model::Colour{0, 83, 135};
    return typeset::Drawing{{w, h}, {{path, typeset::artifact}}, "a drawing"};
  };
  return {{"sign", make(Dim::mm(16), Dim::mm(16))},
          {"plan", make(Dim::mm(166), Dim::mm(60))},
          {"bar", make(Dim::mm(50), Dim::mm(9))}};
}

/// Where the lines of a document come from.
inline const std::vector<base::SourcePos>& lines() {
  static const std::vector<base::SourcePos> all = [] {
    std::vector<base::SourcePos> positions;
    for (int n = 1; n <= 100; ++n) positions.push_back({"quote.md", n, 0});
    return positions;
  }();
  return all;
}

struct Result {
  typeset::Document document;
  base::Diagnostics messages;
  std::string dump;
};

inline Result layOutIn(const model::Theme& look, const markup::Blocks& blocks, typeset::FitPolicy fit = {},
                       const typeset::Drawings& drawn = drawings()) {
  static const typeset::Fonts fonts = typeset::readFonts(theme());
  const markup::Document document{blocks};
  const typeset::LayoutInput in{document, look, fonts, model::Paper::A4, furniture(), drawn, "Quote",
                                "",       "",   "en",  "2026-01-19",     lines(),     fit};
  Result r;
  r.document = typeset::layOut(in, r.messages);
  r.dump = typeset::dump(r.document);
  return r;
}

inline Result layOut(const markup::Blocks& blocks, bool hasLetterhead = false,
                     model::Paper paper = model::Paper::A4, const typeset::Furniture& around = furniture(),
                     const std::string& language = "en") {
  static const model::Theme look = theme();
  static const typeset::Fonts fonts = typeset::readFonts(look);
  const markup::Document document{blocks};
  const auto drawn = drawings();
  typeset::LayoutInput in{document, look, fonts, paper,    around,       drawn,
                          "Quote",  "",   "",    language, "2026-01-19", lines()};
  in.furniture.hasLetterhead = hasLetterhead;
  Result r;
  r.document = typeset::layOut(in, r.messages);
  r.dump = typeset::dump(r.document);
  return r;
}

/// One line of the dump that is text.
struct Words {
  int page = 0;
  std::string role, face, text;
  double x = 0, y = 0, width = 0, size = 0;
};

inline std::vector<Words> wordsOf(const std::string& dump) {
  std::vector<Words> out;
  std::istringstream in(dump);
  for (std::string line; std::getline(in, line);) {
    std::istringstream parts(line);
    Words w;
    std::string kind, mark, colour;
    parts >> w.page >> w.role >> kind;
    if (kind != "text") continue;
    parts >> w.x >> w.y >> mark >> w.width >> w.face >> w.size >> colour;
    const std::size_t begin = line.find('\'');
    w.text = line.substr(begin + 1, line.size() - begin - 2);
    out.push_back(w);
  }
  return out;
}

/// The first words that are exactly these; page 0 when there are none.
inline Words find(const std::string& dump, const std::string& text) {
  for (const Words& w : wordsOf(dump))
    if (w.text == text) return w;
  return {};
}

}  // namespace sample
