// Groups of rows beside their head, in wide tables.
#include "layout_sample.h"
#include "near.h"
#include "page_checks.h"

#include <catch2/catch.hpp>

using namespace sample;

namespace {

std::vector<std::string> group(const std::string& head, int count) {
  std::vector<std::string> rows;
  for (int i = 0; i < count; ++i) {
    const std::string name = head.substr(0, 1) + std::to_string(i);
    rows.push_back((i == 0 ? head : "") + " | " + name + " | 1.00");
  }
  return rows;
}

Result priceOf(const std::vector<std::vector<std::string>>& groups) {
  std::vector<std::string> rows;
  for (const auto& g : groups) rows.insert(rows.end(), g.begin(), g.end());
  return layOut({section("Price", true), table("l4 l8 r3", " | work | amount", rows)});
}

}  // namespace

TEST_CASE("a group of rows that runs over a page has its name again beside its next row", "[layout]") {
  const Result r = priceOf({group("Shore deck", 3), group("Veranda", 120)});
  REQUIRE(r.document.pages.size() == 3);
  for (int page = 1; page <= 3; ++page) {
    double first = 1000;  // row of the page
    for (const Words& w : wordsOf(r.dump))
      if (w.page == page && w.role == "TD") first = std::min(first, w.y);
    int names = 0;
    for (const Words& w : wordsOf(r.dump)) {
      if (w.page != page || w.text != "Veranda") continue;
      ++names;
      CHECK(w.role == (page == 1 ? "TH" : "-"));  // decoration to a reader of tags
      if (page > 1) CHECK(w.y == first);
    }
    INFO(page);
    CHECK(names == 1);
  }
  CHECK(r.dump.find("10.50 #5f554c 'Veranda'") != std::string::npos);  // in the soft colour
  CHECK(checks::overlaps(r.document).empty());
}

TEST_CASE("a group of more than five rows runs over a page and leaves no white", "[layout]") {
  double least = 1000, most = 0;  // lowest row of the first page
  for (int first = 1; first <= 8; ++first) {
    std::vector<std::vector<std::string>> groups = {group("First deck", first)};
    for (int i = 0; i < 10; ++i) groups.push_back(group("Veranda", 8));
    double lowest = 0;
    for (const Words& w : wordsOf(priceOf(groups).dump))
      if (w.page == 1 && w.role == "TD") lowest = std::max(lowest, w.y);
    least = std::min(least, lowest);
    most = std::max(most, lowest);
  }
  CHECK(most - least < 50);  // no group of eight rows was kept together
}

TEST_CASE("a reader of tags is told how many rows a row head stands for", "[layout]") {
  const Result r = priceOf({group("Shore deck", 3), group("Veranda", 2), {"**Total** | | **5.00**"}});
  std::string table;
  for (const typeset::Tag& tag : r.document.tags) {
    if (tag.role == typeset::Role::TR) table += "\n";
    if (tag.role == typeset::Role::TH)
      table += "TH" + (tag.rows > 1 ? "x" + std::to_string(tag.rows) : std::string()) + " ";
    if (tag.role == typeset::Role::TD) table += "TD ";
  }
  CHECK(table == "\nTH TH TH \nTHx3 TD TD \nTD TD \nTD TD \nTHx2 TD TD \nTD TD \nTH TD TD ");
}

TEST_CASE("a row head of several lines hangs beside the rows of its group", "[layout]") {
  const std::string head = "Shore deck with the long stairs down to the water and the landing";
  const Result r = priceOf({group(head, 4), group("Veranda", 2)});
  // Rows of one line follow each other as if the head had one line too.
  for (int i = 1; i < 4; ++i)
    CHECK(find(r.dump, "S" + std::to_string(i)).y - find(r.dump, "S" + std::to_string(i - 1)).y == near(14));
  CHECK(checks::overlaps(r.document).empty());
}

TEST_CASE("a row head taller than its group keeps the next group below itself", "[layout]") {
  const std::string head = "Shore deck with the long stairs down to the water and the landing";
  for (int before = 0; before < 40; ++before) {
    const Result r =
        priceOf({group("Porch", before), group(head, 1), group("Veranda", 2), {"**Total** | | **3.00**"}});
    INFO(before);
    CHECK(checks::overlaps(r.document).empty());
    double lowest = 0;
    int page = 0;
    for (const Words& w : wordsOf(r.dump))
      if (w.role == "TH" && w.x < 100 && head.find(w.text) != std::string::npos) {
        lowest = std::max(lowest, w.y);
        CHECK((page == 0 || page == w.page));
        page = w.page;
      }
    const Words next = find(r.dump, "Veranda");
    CHECK((next.page > page || next.y >= lowest + 14));
  }
}
