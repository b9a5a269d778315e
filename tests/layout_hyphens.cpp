// Hyphens: where the patterns divide words, and where the page may use them.
#include "layout_sample.h"
#include "page_checks.h"
#include "typeset/lines/hyphen.h"

#include <catch2/catch.hpp>

using namespace sample;
using markup::Callout;
using markup::Mark;

namespace {

std::string divided(const std::string& language, std::string word) {
  const std::vector<std::size_t> places = typeset::hyphenPlaces(language, word);
  for (std::size_t i = places.size(); i-- > 0;) word.insert(places[i], "-");
  return word;
}

/// Lines of the side column that end in a hyphen, of a note of these words beside a section.
std::vector<std::string> noteLines(const std::string& words, const std::string& language = "en-GB") {
  const Result r = layOut({section("Care"), box(Callout::Side, "", {paragraph(words)}), paragraph("Text.")},
                          false, model::Paper::A4, furniture(), language);
  std::vector<std::string> lines;
  for (const Words& w : wordsOf(r.dump))
    if (w.role == "P" && w.x < 100 && w.size == 9) lines.push_back(w.text);
  return lines;
}

int hyphensIn(const std::vector<std::string>& lines) {
  int count = 0;
  for (const std::string& line : lines) count += line.back() == '-';
  return count;
}

}  // namespace

TEST_CASE("words are divided as their language does", "[layout][hyphen]") {
  // The patterns of Debian's packages hyphen-en-gb and hyphen-en-us, 7.5.0: Britain divides by origin and
  // sound, the United States by sound (F. M. Liang: Word Hy-phen-a-tion by Com-put-er, 1983).
  CHECK(divided("en-GB", "maintenance") == "main-ten-ance");
  CHECK(divided("en-US", "maintenance") == "main-te-nance");
  CHECK(divided("en-US", "legends") == "leg-ends");
  CHECK(divided("en-GB", "legends") == "legends");  // 'le-gends' leaves two letters: less than three
  for (const char* language : {"en-AU", "en-IE", "en-NZ"})
    CHECK(divided(language, "maintenance") == "main-ten-ance");
  CHECK(divided("en-US", "therapist") == "thera-pist");  // not 'ther-apist'
  CHECK(divided("es", "electr\u00F3nica") == "elec-tr\u00F3-nica");
  // Polish divides between syllables and after prefixes: prze-dmuchać (hyphen-pl 3.0a).
  CHECK(divided("pl", "ostrzeżenie") == "ostrze-że-nie");
  CHECK(divided("pl", "przedmuchiwanie") == "prze-dmu-chi-wa-nie");
  CHECK(divided("pl", "naïveté") == "naïveté");  // letters its patterns do not know
}

TEST_CASE("names, codes and words of other languages stay whole", "[layout][hyphen]") {
  for (const char* word : {"MAINTENANCE", "Maintenance", "mainTenance", "maintenance2", "main.tenance",
                           "maintenance@deck", "oil", "", "\xFF\xFEmaintenance"})
    CHECK(divided("en-GB", word) == word);
  CHECK(divided("en-GB", std::string(5000, 'a')) == std::string(5000, 'a'));
  CHECK(divided("de-DE", "Wartungsarbeiten") == "Wartungsarbeiten");
  CHECK(divided("en", "maintenance") == "maintenance");
}

TEST_CASE("a narrow column divides a word where a line would stay a third empty", "[layout][hyphen]") {
  // 119 pt hold about 31 letters of 9 pt: one of these words a line, half a line each.
  const std::string words = "a misunderstandings characteristically incomprehensibly matter.";
  const std::vector<std::string> lines = noteLines(words);
  CHECK(hyphensIn(lines) > 0);
  CHECK(hyphensIn(noteLines(words, "en")) == 0);
  std::string joined;
  for (const std::string& line : lines)
    joined += line.back() == '-' ? line.substr(0, line.size() - 1) : line + " ";
  CHECK(joined == words + " ");
  CHECK(hyphensIn(noteLines("Soft soles only until the oil has gone hard, on all of the boards.")) == 0);
}

TEST_CASE("only the hyphens that lines add are told from those of words", "[layout][hyphen]") {
  const auto endings = [](const std::string& words, bool isDivided) {
    const Result r = layOut({section("Care"), box(Callout::Side, "", {paragraph(words)}), paragraph("Text.")},
                            false, model::Paper::A4, furniture(), "en-GB");
    int count = 0;
    for (const typeset::Item& item : r.document.pages[0].items) {
      const auto* run = std::get_if<typeset::TextRun>(&item.what);
      count += run && run->text.ends_with('-') && run->isDivided == isDivided;
    }
    return count;
  };
  const std::string divided = "a misunderstandings characteristically incomprehensibly matter.";
  CHECK(endings(divided, true) == hyphensIn(noteLines(divided)));
  CHECK(endings(divided, false) == 0);
  std::string own;
  for (int i = 0; i < 10; ++i) own += "self-explanatory ";
  CHECK(endings(own, true) == 0);
  CHECK(endings(own, false) > 0);
}

TEST_CASE("a wide column does not divide words", "[layout][hyphen]") {
  std::string words;
  for (int i = 0; i < 40; ++i) words += "misunderstandings extraordinarily characteristics ";
  const Result r = layOut({section("Care"), paragraph(words)}, false, model::Paper::A4, furniture(), "en-GB");
  for (const Words& w : wordsOf(r.dump))
    if (w.role == "P") CHECK(w.text.find('-') == std::string::npos);
}

TEST_CASE("no more than two lines in a row end in a hyphen, and never the line before the last word",
          "[layout][hyphen]") {
  for (int n = 1; n < 30; ++n) {
    std::string words = "a";
    for (int i = 0; i < n; ++i) words += " misunderstandings";
    for (int i = 0; i < 10; ++i) words += " in extraordinarily characteristics";
    const std::vector<std::string> lines = noteLines(words + " maintenance.");
    REQUIRE(lines.size() > 2);
    int row = 0;
    for (const std::string& line : lines) {
      row = line.back() == '-' ? row + 1 : 0;
      CHECK(row <= 2);
    }
    CHECK(lines.back().find("maintenance.") != std::string::npos);
  }
}

TEST_CASE("a word wider than its column breaks at hyphens", "[layout][hyphen]") {
  const Result r = layOut({section("A"), table("l1 l1 l1 l1 l1 l1 l1 l1", "a | b | c | d | e | f | g | h",
                                               {"misunderstandings | misunderstandings | misunderstandings | "
                                                "misunderstandings | misunderstandings | misunderstandings | "
                                                "misunderstandings | misunderstandings"})},
                          false, model::Paper::A4, furniture(), "en-GB");
  int hyphens = 0;
  for (const Words& w : wordsOf(r.dump)) hyphens += w.role == "TD" && w.text.back() == '-';
  CHECK(hyphens >= 8);
  CHECK(checks::overlaps(r.document).empty());
}
