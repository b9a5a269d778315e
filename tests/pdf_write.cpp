// The written file as independent programs read it: qpdf and poppler.
#include "near.h"
#include "pdf/fonts/glyph_groups.h"
#include "pdf_sample.h"
#include "typeset/pages/word_ends.h"

#include <catch2/catch.hpp>

#include <thread>

using namespace sample;

namespace {

std::string textOf(const Document& d) { return run("pdftotext -raw % -", pdf::write(d)).text; }

std::string textOf(const std::string& typed, model::Face face = model::Face::Text) {
  Document d = document();
  addText(d, addTag(d, Role::P), 40, typed, face);
  std::string text = textOf(d);
  text.erase(0, text.find_first_not_of(" \n"));
  text.erase(text.find_last_not_of(" \n\f") + 1);
  return text;
}

}  // namespace

TEST_CASE("qpdf finds nothing wrong with a file of everything") {
  const Said said = run("qpdf --check %", pdf::write(everything()));
  INFO(said.text);
  CHECK(said.status == 0);
  CHECK(holds(said.text, "PDF Version: 1.7"));
  CHECK(holds(said.text, "No syntax or stream encoding errors found"));
}

TEST_CASE("all objects but streams share one stream, and only where the standard allows it") {
  // PDF/A-1 builds on PDF 1.4, which has no such streams: ISO 19005-1:2005, 6.1.4.
  const auto kinds = [](pdf::Variant variant) {
    return run("qpdf --show-xref %", pdf::write(everything(), variant)).text;
  };
  CHECK(holds(kinds(pdf::Variant::A2b), " compressed; stream = "));
  CHECK_FALSE(holds(kinds(pdf::Variant::A1b), " compressed; stream = "));
}

TEST_CASE("poppler draws and reads a file of everything without complaint") {
  const std::string bytes = pdf::write(everything());
  CHECK(run("pdftocairo -pdf % /dev/null", bytes).text.empty());
  CHECK(run("pdftotext % /dev/null", bytes).text.empty());
  CHECK(holds(run("pdfinfo %", bytes).text, "Tagged:          yes"));
}

TEST_CASE("the same document gives the same bytes") {
  CHECK(pdf::write(everything()) == pdf::write(everything()));
}

TEST_CASE("bytes do not depend on what was written before, nor on what is written meanwhile") {
  const auto saying = [](const std::string& words) {
    Document d = document();
    addText(d, addTag(d, Role::P), 40, words);
    return pdf::write(d);
  };
  const std::string first = saying("A dozen jolly quick foxes");
  saying("Zebra");
  saying("The five boxing wizards jump quickly, 1234567890 times");
  std::string other;
  {
    const std::jthread thread([&] { other = saying("A dozen jolly quick foxes"); });
    saying("Sphinx of black quartz, judge my vow");
  }
  CHECK(saying("A dozen jolly quick foxes") == first);
  CHECK(other == first);
}

TEST_CASE("a face is cut for the whole alphabet where a document uses most of it, else letter by letter") {
  const auto groupsOf = [](const std::string& words) {
    pdf::UsedGlyphs used;
    used.texts.resize(5000);
    const StyledText span{words, model::Face::Text, Dim::pt(10), {}, {}, false};
    for (const TextRun& run : shape(fonts(), span).runs)
      for (std::size_t i = 0; i < run.glyphs.size(); ++i) {
        used.glyphs.push_back(run.glyphs[i].id);
        used.texts[run.glyphs[i].id] = std::string_view(words).substr(i, 1);
      }
    return pdf::glyphSet(fonts().faces[fonts().byRole.at(model::Face::Text)], used);
  };
  const auto few = groupsOf("deck");
  CHECK(few.groups == 0);
  CHECK(few.others.size() == 4);
  const auto most = groupsOf("abcdeghiklmnoprstuX");  // 18 of 26
  CHECK(most.others.size() == 1);
  CHECK(pdf::glyphsOf(most).size() == 27);
}

TEST_CASE("another document has another identifier") {
  Document other = everything();
  other.title += "!";
  const auto id = [](const std::string& pdf) { return pdf.substr(pdf.rfind("/ID")); };
  CHECK(id(pdf::write(other)).substr(0, 40) != id(pdf::write(everything())).substr(0, 40));
}

TEST_CASE("text is copied out as it was typed") {
  for (const std::string typed :
       {"a (b) c \\ d ) ( \\(", "Café – ½ déjà vu, 42 m² at 15 °C", "Kōwhai rātā ŵ ș ß Œ", "leaf 🍂 end",
        "-> fi fl ffi", "AVAToWa.", "“quoted” ‘q’ … € £", "≤ ⅓ ☐ ✓ ⚠"}) {
    CHECK(textOf(typed) == typed);
    CHECK(textOf(typed, model::Face::Sans) == typed);
  }
}

TEST_CASE("every glyph code survives the string it is written in") {
  // More than 256 glyphs, so that codes hold bytes of parentheses, backslash and carriage return.
  Document d = document();
  std::string all;
  int y = 20;
  for (char32_t c = 0x21; c < 0x250; ++c) {
    if ((c > 0x7E && c < 0xA1) || c == 0xAD || !fonts().faces[fonts().byRole.at(model::Face::Sans)]->has(c))
      continue;
    std::string letter;
    if (c >= 0x80) letter += static_cast<char>(0xC0 | c >> 6);
    letter += static_cast<char>(c < 0x80 ? c : 0x80 | (c & 0x3F));
    addText(d, artifact, y += 5, letter, model::Face::Sans);
    all += letter;
  }
  d.pages.back().size.h = Dim::mm(y + 10);
  std::string text = run("pdftotext -raw % -", pdf::write(d)).text;
  text.erase(std::remove_if(text.begin(), text.end(), [](char c) { return c == '\n' || c == '\f'; }),
             text.end());
  CHECK(text.size() > 700);
  CHECK(text == all);
}

TEST_CASE("fonts are embedded, cut down and can be copied from") {
  const std::string said = run("pdffonts %", pdf::write(everything())).text;
  INFO(said);
  CHECK(count(said, "CID TrueType      Identity-H       yes yes yes") == 2);
  CHECK(holds(said, "+Vollkorn-Regular"));
  CHECK(holds(said, "+Carlito"));
  CHECK_FALSE(holds(said, "DejaVu"));  // no letter needs it
}

TEST_CASE("file data come from the document and from nowhere else") {
  const std::string bytes = pdf::write(everything());
  const std::string said = run("TZ=UTC pdfinfo %", bytes).text;
  for (const char* line :
       {"Title:           Quote – deck & stairs", "Subject:         Wash, sand and oil <two coats>",
        "Author:          Sample café", "Producer:        planksheaf",
        "CreationDate:    Tue Mar 16 00:00:00 2027 UTC", "ModDate:         Tue Mar 16 00:00:00 2027 UTC"})
    CHECK(holds(said, line));
  CHECK(holds(bytes, "<rdf:li xml:lang=\"x-default\">Wash, sand and oil &lt;two coats&gt;</rdf:li>"));
  CHECK(holds(bytes, "<xmp:CreateDate>2027-03-16T00:00:00+00:00</xmp:CreateDate>"));
  CHECK(holds(bytes, "<pdfaid:part>2</pdfaid:part><pdfaid:conformance>B</pdfaid:conformance>"));
  CHECK_FALSE(holds(plain(bytes), "Haru"));
}

TEST_CASE("tags come out in reading order with their attributes") {
  const std::string said = run("pdfinfo -struct-text %", pdf::write(everything())).text;
  INFO(said);
  std::size_t at = 0;
  for (const char* part : {"Document",
                           "H1 (block)",
                           "\"Quote\"",
                           "P (block)",
                           "\"See \"",
                           "Link (inline)",
                           "\"the care sheet\"",
                           "\"today\"",
                           "\"and tomorrow.\"",
                           "L (block)",
                           "/ListNumbering /Decimal",
                           "LI (block)",
                           "Lbl",
                           "\"1.\"",
                           "LBody",
                           "\"Sweep\"",
                           "Figure",
                           "BBox",
                           "Table",
                           "THead",
                           "TR",
                           "TH",
                           "/Scope /Column",
                           "TBody",
                           "TD",
                           "/ColSpan 2",
                           "\"Figures are examples.\""}) {
    INFO(part);
    at = said.find(part, at);
    REQUIRE(at != std::string::npos);
  }
  CHECK_FALSE(holds(said, "page 1 of 1"));
  CHECK(count(said, "Note") == 1);  // the empty one is left out
}

TEST_CASE("items of one tag in a row share one marked sequence") {
  Document d = document();
  const int p = addTag(d, Role::P);
  addText(d, p, 30, "one");
  addText(d, p, 40, "two");
  addText(d, artifact, 50, "foot");
  d.pages.back().items.push_back({rectangle({}, {}, Dim::mm(1), Dim::mm(1)), artifact});
  const std::string said = plain(pdf::write(d));
  CHECK(count(said, "BDC") == 1);
  CHECK(count(said, "/Artifact BMC") == 1);
  CHECK(count(said, "EMC") == 2);
}

TEST_CASE("links carry their address, their words and their tag") {
  const std::string said = plain(pdf::write(everything()));
  CHECK(holds(said, "(https://example.org/a%20b\\(c\\)%C3%A9)"));
  CHECK(holds(said, "/StructParent 2"));  // after the two pages
  CHECK(holds(said, "/Type /OBJR"));
  CHECK(holds(said, "/F 4"));
}

TEST_CASE("bookmarks make a tree that opens at their place") {
  const std::string said = plain(pdf::write(everything()));
  CHECK(count(said, "/XYZ") == 3);
  // 297 mm - 25 mm = 272 mm = 771.024 pt
  CHECK(count(said, "771.02") == 2);
  CHECK(run("qpdf --check %", pdf::write(everything())).status == 0);
}

TEST_CASE("lengths are written to a hundredth of a point from the bottom of the page") {
  Document d = document();
  Path line;
  line.steps = {{Step::Kind::Move, {}, {}, {Dim::mm(20), Dim::mm(97)}},
                {Step::Kind::Curve, {{1}, {0}}, {{-6}, {0}}, {Dim::pt(7), Dim::mm(297)}}};
  line.stroke = Stroke{{255, 0, 51}, Dim::milli(500), {Dim::pt(2), Dim::pt(1)}, true};
  d.pages.back().items.push_back({line, artifact});
  const std::string said = plain(pdf::write(d));
  INFO(said);
  CHECK(holds(said, "1 0 0.2 RG 0.5 w 1 J 1 j [2 1 ] 0 d\n"));
  CHECK(holds(said, "56.69 566.93 m\n"));  // 20 mm = 56.6929 pt; 200 mm = 566.9291 pt
  CHECK(holds(said,
              "0 841.89 0 841.89 7 0 c\n"));  // 1/12700 pt and -6/12700 pt are 0.00; 297 mm = 841.8898 pt
}

TEST_CASE("turned text reads upwards") {
  Document d = document();
  addText(d, artifact, 100, "6.0 m");
  std::get<TextRun>(d.pages.back().items.back().what).isUpright = false;
  CHECK(holds(plain(pdf::write(d)), "0 1 -1 0 56.69 558.43 Tm"));
  CHECK(holds(run("pdftotext -layout % -", pdf::write(d)).text, "6.0 m"));
}

TEST_CASE("a run ends where its width says, with kerning and tracking") {
  for (const Dim tracking : {Dim{}, Dim::milli(1200)}) {
    Document d = document();
    Shaped s = shape(
        fonts(), {"WAVE To AV WAVE To AV WAVE To AV", model::Face::Text, Dim::pt(20), tracking, {}, false});
    TextRun& one = s.runs.at(0);
    one.baseline = {Dim::pt(50), Dim::pt(100)};
    d.pages.back().items.push_back({one, artifact});
    const std::string said = run("pdftotext -bbox % -", pdf::write(d)).text;
    // The last word's right edge; poppler adds no tracking after the last letter.
    const std::size_t at = said.rfind("xMax=\"") + 6;
    const double end = std::stod(said.substr(at)),
                 wanted = 50 + static_cast<double>((one.width - tracking).raw) / 12'700;
    CHECK(end == near(wanted).margin(0.03));
  }
}

TEST_CASE("a picture with clear places gets a mask and one without does not") {
  CHECK(count(plain(pdf::write(everything())), "/SMask") == 1);
  Document d = everything();
  pictureOf(d) = std::make_shared<Image>(Image{2, 1, "rgbRGB", std::string("\xFF\xFF", 2), "", false});
  CHECK_FALSE(holds(plain(pdf::write(d)), "/SMask"));
}

TEST_CASE("a picture that stands twice is in the file once, another one beside it") {
  Document d = everything();
  const auto placed = [](std::shared_ptr<const Image> image) {
    return Item{PlacedImage{{{}, {Dim::mm(20), Dim::mm(10)}}, std::move(image)}, artifact};
  };
  d.pages.back().items.push_back(placed(pictureOf(d)));
  d.pages.back().items.push_back(placed(std::make_shared<Image>(Image{1, 1, "xyz", "", "", false})));
  const std::string bytes = plain(pdf::write(d));
  CHECK(count(bytes, "/Subtype /Image") == 3);  // with the mask of the first
  CHECK(count(bytes, "/I0 Do") == 2);
  CHECK(count(bytes, "/I1 Do") == 1);
}

TEST_CASE("a document without tags, dates or words is still a sound file") {
  Document d;
  d.pages.push_back({{Dim::mm(210), Dim::mm(297)}, {}});
  CHECK(run("qpdf --check %", pdf::write(d)).status == 0);
}

TEST_CASE("a broken display list is our own mistake") {
  const auto fails = [](auto breakIt) {
    Document d = everything();
    breakIt(d);
    CHECK_THROWS_WITH(pdf::write(d), Catch::StartsWith("internal error: "));
  };
  fails([](Document& d) { d.pages.clear(); });
  fails([](Document& d) { d.faces.clear(); });
  fails([](Document& d) { pictureOf(d).reset(); });
  fails([](Document& d) { d.pages[0].items[0].tag = 999; });
  fails([](Document& d) { d.pages[0].items[0].tag = -2; });
  fails([](Document& d) { d.tags[1].parent = 5; });
  fails([](Document& d) { d.bookmarks[0].page = 2; });
  fails([](Document& d) { d.pages[0].size.w = {}; });
  fails([](Document& d) { std::get<TextRun>(d.pages[0].items[0].what).glyphs[0].id = 70'000; });
  fails([](Document& d) { std::get<TextRun>(d.pages[0].items[0].what).glyphs[0].cluster = 70'000; });
  fails([](Document& d) { std::get<TextRun>(d.pages[0].items[0].what).size = {}; });
  fails([](Document& d) { std::get<TextRun>(d.pages[0].items[0].what).baseline.x = Dim::mm(1'000'000); });
  fails([](Document& d) { pictureOf(d) = std::make_shared<Image>(Image{2, 2, "rgb", "", "", false}); });
  fails([](Document& d) { d.date = "16 March"; });
}

TEST_CASE("what is made of a face for files goes when the face goes") {
  Document d = document();
  d.faces = {FontFace::read("/usr/share/fonts/truetype/vollkorn/Vollkorn-Regular.ttf")};
  addText(d, addTag(d, Role::P), 30, "Sweep");
  const std::weak_ptr<const FontFace> face = d.faces.front();
  const std::string once = pdf::write(d);
  CHECK(pdf::write(d) == once);
  d = {};
  CHECK(face.expired());
}

TEST_CASE("lines of one paragraph do not join their words when it is read by its tags") {
  Document d = document();
  const int p = addTag(d, Role::P), other = addTag(d, Role::P);
  addText(d, p, 30, "no");
  addText(d, other, 30, "beside it", model::Face::Text, Dim::mm(90));
  addText(d, p, 35, "pets, no self-");
  addText(d, p, 40, "made oil");
  d.pages.push_back(d.pages.front());
  d.pages.back().items.clear();
  addText(d, p, 30, "on the boards, see");
  addText(d, addTag(d, Role::Link, p), 35, "our page");
  markWordEnds(d);
  const std::string said = run("pdfinfo -struct-text %", pdf::write(d)).text;
  CHECK(holds(said, "\"no \""));
  CHECK(holds(said, "\"pets, no self-made oil \""));
  CHECK(holds(said, "\"on the boards, see \""));
  CHECK(holds(said, "\"beside it\""));
}

TEST_CASE("a word divided at the end of a line is whole to whoever searches it or has it read") {
  Document d = document();
  const int p = addTag(d, Role::P);
  addText(d, p, 30, "by ambulan-");
  std::get<TextRun>(d.pages[0].items.back().what).isDivided = true;  // the hyphen is the line's
  addText(d, p, 35, "cia or in a self-");
  addText(d, p, 40, "made cart");
  const auto bytes = pdf::write(d);
  const std::string said = run("pdftotext -raw % -", bytes).text;
  INFO(said);
  CHECK(holds(said, "by ambulan\u00AD\ncia or in a self-\nmade cart"));  // U+00AD is no letter of the word
}
