// What must hold on every page, looked for in its display list: no text over other text, none off the page.
#pragma once

#include "typeset/page.h"

#include <algorithm>
#include <string>
#include <vector>

namespace checks {

using typeset::Dim;

/// The box of a run's letters, a little less than its line: from the height of a capital down to a descender.
struct TextBox {
  Dim left, top, right, bottom;
  const typeset::TextRun* run = nullptr;
};

inline TextBox boxOf(const typeset::TextRun& run) {
  const Dim up = run.size * 7 / 10, down = run.size / 5;
  const typeset::Point at = run.baseline;
  if (run.isUpright) return {at.x, at.y - up, at.x + run.width, at.y + down, &run};
  return {at.x - up, at.y - run.width, at.x + down, at.y, &run};
}

inline std::vector<TextBox> boxesOf(const typeset::Page& page) {
  std::vector<TextBox> boxes;
  for (const typeset::Item& item : page.items)
    if (const auto* run = std::get_if<typeset::TextRun>(&item.what);
        run && run->text.find_first_not_of(' ') != std::string::npos)
      boxes.push_back(boxOf(*run));
  return boxes;
}

/// A sentence for each pair of runs that print over each other.
inline std::vector<std::string> overlaps(const typeset::Document& document) {
  const Dim hair = Dim::pt(1) / 10;  // rounding at the end of a run
  std::vector<std::string> found;
  for (std::size_t p = 0; p < document.pages.size(); ++p) {
    std::vector<TextBox> boxes = boxesOf(document.pages[p]);
    std::sort(boxes.begin(), boxes.end(), [](const TextBox& a, const TextBox& b) { return a.top < b.top; });
    for (std::size_t i = 0; i < boxes.size(); ++i)
      for (std::size_t k = i + 1; k < boxes.size() && boxes[k].top + hair < boxes[i].bottom; ++k)
        if (boxes[i].left + hair < boxes[k].right && boxes[k].left + hair < boxes[i].right)
          found.push_back("page " + std::to_string(p + 1) + ": '" + boxes[i].run->text + "' meets '" +
                          boxes[k].run->text + "'");
  }
  return found;
}

/// A sentence for each run outside the column of the page, or nearer than 6 mm to the edge of the paper above
/// and below, where many printers cannot reach; common practice.
inline std::vector<std::string> outside(const typeset::Document& document, Dim left, Dim right) {
  const Dim hair = Dim::pt(1) / 10, edge = Dim::mm(6);
  std::vector<std::string> found;
  for (std::size_t p = 0; p < document.pages.size(); ++p)
    for (const TextBox& box : boxesOf(document.pages[p]))
      if (box.left + hair < left || box.right > right + hair || box.top < edge ||
          box.bottom > document.pages[p].size.h - edge)
        found.push_back("page " + std::to_string(p + 1) + ": '" + box.run->text + "' leaves the page");
  return found;
}

/// A sentence for each drawing, tagged as such, that hangs below the foot of the text.
inline std::vector<std::string> hanging(const typeset::Document& document, Dim bottom) {
  std::vector<std::string> found;
  for (std::size_t p = 0; p < document.pages.size(); ++p)
    for (const typeset::Item& item : document.pages[p].items) {
      const auto* path = std::get_if<typeset::Path>(&item.what);
      if (!path || item.tag == typeset::artifact) continue;
      for (const typeset::Step& step : path->steps)
        if (step.kind != typeset::Step::Kind::Close && step.to.y > bottom) {
          found.push_back("page " + std::to_string(p + 1) + ": a drawing hangs into the foot");
          break;
        }
    }
  return found;
}

/// A sentence for each run of the text, tagged as such, that stands in the head or the foot of its page. The
/// firm's own lines there are the paragraphs tagged after all that stands between.
inline std::vector<std::string> overFurniture(const typeset::Document& document, Dim top, Dim bottom) {
  std::vector<std::string> found;
  int last = 0;
  for (const typeset::Page& page : document.pages)
    for (const typeset::Item& item : page.items)
      if (const auto* run = std::get_if<typeset::TextRun>(&item.what))
        if (const TextBox box = boxOf(*run); box.top >= top && box.bottom <= bottom)
          last = std::max(last, item.tag);
  const auto isFirm = [&](int tag) {
    if (tag <= last) return false;
    const auto& tags = document.tags;
    if (tags[static_cast<std::size_t>(tag)].role == typeset::Role::Link)
      tag = tags[static_cast<std::size_t>(tag)].parent;
    return tags[static_cast<std::size_t>(tag)].role == typeset::Role::P &&
           tags[static_cast<std::size_t>(tag)].parent == 0;
  };
  for (std::size_t p = 0; p < document.pages.size(); ++p)
    for (const typeset::Item& item : document.pages[p].items) {
      const auto* run = std::get_if<typeset::TextRun>(&item.what);
      if (!run || item.tag == typeset::artifact || isFirm(item.tag)) continue;
      const TextBox box = boxOf(*run);
      if (box.top < top || box.bottom > bottom)
        found.push_back("page " + std::to_string(p + 1) + ": '" + run->text + "' stands over head or foot");
    }
  return found;
}

}  // namespace checks
