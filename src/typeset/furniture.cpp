// Letterhead, running head, ruler and foot.
#include "typeset/furniture.h"

#include "base/fixed.h"
#include "typeset/shapes.h"
#include "typeset/text.h"

#include <algorithm>

namespace typeset {
namespace {

// Baselines and rulers from the top of the paper.
const Dim runningBaseline = Dim::pt(42), runningRuler = Dim::pt(49);
const Dim letterBaseline = Dim::pt(66), letterRuler = Dim::pt(77);

class FurnitureSetter {
 public:
  explicit FurnitureSetter(Setter& setter)
      : setter_(setter), grid_(setter.grid), furniture_(setter.in.furniture) {
    setter_.line = 0;
    if (furniture_.logo && furniture_.logo->width > 0 && furniture_.logo->height > 0)
      setter_.out.images.push_back(furniture_.logo);
  }

  void run() {
    std::vector<Page>& pages = setter_.out.pages;
    for (std::size_t i = 0; i < pages.size(); ++i) {
      page_ = &pages[i];
      if (i == 0 && furniture_.hasLetterhead) {
        addLetterhead();
        addRuler(letterRuler);
      } else {
        addRunningHead(i > 0 || furniture_.hasLetterhead);
        addRuler(runningRuler);
      }
      addFoot(i + 1, pages.size());
    }
  }

 private:
  Dim words(const Style& style, const std::string& text, Point at) {
    SetWords set = setWords(setter_, style, text, at);
    for (Item& item : set.items) page_->items.push_back(std::move(item));
    return set.width;
  }

  Dim widthOf(const Style& style, const std::string& text) const {
    Span span = style.plain;
    span.text = text;
    return width(setter_.in.fonts, span);
  }

  void wordsRight(const Style& style, const std::string& text, Dim baseline) {
    words(style, text, {grid_.right - widthOf(style, text), baseline});
  }

  /// The logo, no wider than the side column; its width.
  Dim addLogo(Point at, Dim height) {
    if (setter_.out.images.empty()) return {};
    const Image& logo = *setter_.out.images.front();
    Size size = {{base::mulDiv(height.raw, logo.width, logo.height, base::Round::HalfUp)}, height};
    if (size.w > grid_.side)
      size = {grid_.side, {base::mulDiv(grid_.side.raw, logo.height, logo.width, base::Round::HalfUp)}};
    at.y += height - size.h;
    page_->items.push_back({PlacedImage{{at, size}, 0}, artifact});
    return size.w;
  }

  void addLetterhead() {
    addLogo({grid_.left, letterBaseline - Dim::pt(30)}, Dim::pt(30));
    const Style& note = setter_.style("note");
    Dim widest;
    Dim y = letterBaseline - note.leading * static_cast<std::int64_t>(furniture_.firmLines.size());
    for (const std::string& line : furniture_.firmLines) {
      y += note.leading;
      wordsRight(note, line, y);
      widest = std::max(widest, widthOf(note, line));
    }
    // A long name breaks in two lines, the last on the baseline.
    markup::Inlines name(1);
    name[0].text = furniture_.firm;
    const Dim room = grid_.text - (widest > Dim{} ? widest + grid_.gutter : Dim{});
    const char* style = Text(setter_, name, setter_.style("firm")).natural() > room ? "total" : "firm";
    Text text(setter_, name, setter_.style(style));
    std::vector<TextLine> lines = text.lines(std::max(room, text.longest()), artifact, true);
    const auto count = static_cast<std::int64_t>(lines.size());
    for (std::int64_t i = 0; i < count; ++i) {
      TextLine& line = lines[static_cast<std::size_t>(i)];
      const Dim baseline = letterBaseline - setter_.style(style).leading * (count - 1 - i);
      for (Item& item : line.items) {
        move(item, grid_.textX, baseline - line.rise);
        page_->items.push_back(std::move(item));
      }
    }
  }

  void addRunningHead(bool hasKind) {
    const Style &firm = setter_.style("runFirm"), &plain = setter_.style("table");
    Style soft = plain, bold = plain;
    soft.plain.colour = setter_.colour("soft");
    bold.plain.face = plain.strong;
    const Dim y = runningBaseline;
    Dim x = grid_.left;
    const Dim logo = addLogo({x, y - Dim::pt(11)}, Dim::pt(11));
    if (logo > Dim{}) x += logo + Dim::pt(4);
    x += words(firm, furniture_.firm, {x, y});
    x = std::max(grid_.textX, x + Dim::mm(3));
    if (hasKind && !furniture_.kind.empty()) x += words(bold, furniture_.kind, {x, y}) + Dim::mm(3);
    const Dim label = widthOf(soft, furniture_.jobLabel);
    wordsRight(soft, furniture_.jobLabel, y);
    words(soft, shortened(soft, furniture_.where, grid_.right - label - Dim::mm(3) - x), {x, y});
  }

  /// As many whole words as there is room for.
  std::string shortened(const Style& style, std::string text, Dim room) const {
    if (widthOf(style, text) <= room) return text;
    while (!text.empty()) {
      text.erase(std::min(text.rfind(' '), text.size() - 1));
      while (!text.empty() && (text.back() == ',' || text.back() == ' ')) text.pop_back();
      const std::string cut = text + "\u2026";
      if (!text.empty() && text.find(' ') == std::string::npos && widthOf(style, cut) > room) return {};
      if (!text.empty() && widthOf(style, cut) <= room) return cut;
    }
    return text;
  }

  /// The head line is a ruler: ticks 10 mm apart, long ones every 50 mm, so that a wrong print scale shows.
  void addRuler(Dim y) {
    const Colour accent = setter_.colour("accent");
    page_->items.push_back(lineItem({grid_.left, y}, {grid_.right, y}, Dim::pt(1), accent));
    Path ticks;
    for (std::int64_t i = 0; Dim::mm(10) * i <= grid_.full; ++i) {
      const Dim x = grid_.left + Dim::mm(10) * i;
      const Dim length = i % 5 == 0 ? Dim::mm(26) / 10 : Dim::mm(15) / 10;
      ticks.steps.push_back({Step::Kind::Move, {}, {}, {x, y}});
      ticks.steps.push_back({Step::Kind::Line, {}, {}, {x, y + length}});
    }
    ticks.stroke = Stroke{accent, Dim::milli(600), {}, false};
    page_->items.push_back({std::move(ticks), artifact});
  }

  void addFoot(std::size_t number, std::size_t count) {
    const Style& note = setter_.style("note");
    Style bold = note;
    bold.plain.face = note.strong;
    bold.plain.colour = setter_.colour("ink");
    const Dim y = grid_.bottom + grid_.line;
    words(bold, furniture_.footLeft, {grid_.left, y});
    words(note, furniture_.footMiddle, {grid_.textX, y});
    std::string text = furniture_.pageOf;
    const auto fill = [&](const std::string& mark, std::size_t value) {
      if (const std::size_t at = text.find(mark); at != std::string::npos)
        text.replace(at, mark.size(), std::to_string(value));
    };
    fill("{n}", number);
    fill("{m}", count);
    wordsRight(note, text, y);
  }

  Setter& setter_;
  const Grid& grid_;
  const Furniture& furniture_;
  Page* page_ = nullptr;
};

}  // namespace

void addFurniture(Setter& setter) { FurnitureSetter(setter).run(); }

}  // namespace typeset
