#include "typeset/blocks/panel.h"

#include "base/fixed.h"
#include "typeset/blocks/blocks.h"
#include "typeset/face.h"
#include "typeset/shapes.h"

#include <algorithm>

namespace typeset {
namespace {

using markup::Callout;
using markup::Inlines;

/// Signal words on their colours as in ANSI Z535.4: danger white on red, warning black on orange, caution
/// black on yellow, notice white on blue and without the alert sign.
struct Signal {
  std::size_t word;
  const char *ground, *letters;
};

Signal signalOf(Callout kind) {
  switch (kind) {
    case Callout::Danger:
      return {3, "danger", "white"};
    case Callout::Warning:
      return {2, "warning", "ink"};
    case Callout::Caution:
      return {1, "caution", "ink"};
    default:
      return {0, "notice", "white"};
  }
}

const Dim frameWeight = Dim::milli(1'500), inset = Dim::mm(3);

class PanelLayout {
 public:
  PanelLayout(LayoutContext& context, const markup::Box& box, int parent)
      : context_(context),
        box_(box),
        place_(context.fullColumn()),
        isFramed_(box.kind != Callout::Note),
        tag_(context.tag(Role::Sect, parent)) {}

  VerticalList run() {
    const Grid& grid = context_.grid;
    Fragment head = layOutHead();
    const Dim headHeight = head.height;
    VerticalList body = layOutBody();
    const int line = context_.line;
    VerticalList all = {std::move(head)};
    Fragment gap;
    gap.height = grid.half();
    all.push_back(gap);
    append(all, std::move(body));
    all.push_back(gap);
    if (context_.height(all) <= context_.pageHeight()) {
      Fragment whole = collapse(std::move(all), grid.line, grid.unit);
      whole.baseline = {-1};
      whole.line = line;
      whole.isPanel = true;
      addFrame(whole, headHeight, whole.height);
      return {std::move(whole)};
    }
    // Too tall for any page: it breaks, and each part carries its piece of the frame's sides.
    all.front().keepWithNext = true;
    for (Fragment& fragment : all) {
      fragment.line = line;
      if (isFramed_)
        for (const Dim x : {place_.x, place_.x + place_.width})
          fragment.items.push_back(
              lineItem({x, {}}, {x, fragment.height}, frameWeight, context_.colour("ink")));
    }
    return all;
  }

 private:
  Fragment layOutHead() {
    const Grid& grid = context_.grid;
    const Signal signal = signalOf(box_.kind);
    const Column hazard = {grid.textX, grid.text - inset, false};
    Text title(context_, box_.title, context_.style("hazard"));
    const int tag = context_.tag(Role::P, tag_);
    std::vector<TextLine> lines = title.lines(hazard.width, tag, true);
    Fragment head;
    const auto count = static_cast<std::int64_t>(std::max<std::size_t>(lines.size(), 1));
    head.height = grid.half() * 2 + context_.style("hazard").leading * count;  // 35 pt with one line
    const Dim ground = grid.side + grid.gutter / 2;
    head.items.push_back(filledBox({place_.x, {}, ground, head.height}, context_.colour(signal.ground)));
    addSignal(head, signal, ground, tag);
    Dim y = grid.half();
    for (Fragment& line : listOf(context_, std::move(lines), hazard)) {
      for (Item& item : line.items) {
        move(item, {}, y);
        head.items.push_back(std::move(item));
      }
      y += line.height;
    }
    return head;
  }

  void addSignal(Fragment& head, const Signal& signal, Dim ground, int tag) {
    const Dim middle = head.height / 2;
    Style style = context_.style("signal");
    style.plain.colour = context_.colour(signal.letters);
    Dim x = place_.x + inset;
    if (isFramed_) {
      const Dim high = std::min(Dim::pt(24), head.height * 7 / 10);
      const Size sign = {high * 55 / 48, high};
      head.items.push_back(
          alertSign({x, middle - sign.h / 2, sign.w, sign.h}, context_.colour(signal.letters)));
      x += Dim::mm(12);
    }
    const std::string& word = context_.in.furniture.signalWords[signal.word];
    StyledText span = style.plain;
    span.text = word;
    const Dim room = place_.x + ground - inset / 2 - x;
    if (width(context_.in.fonts, span) > room) {  // a long word in another language
      style.plain.tracking = span.tracking = {};
      style.plain.size = span.size = context_.style("table").plain.size;
      if (const Dim wide = width(context_.in.fonts, span); wide > room)
        style.plain.size = {base::mulDiv(style.plain.size.raw, room.raw, wide.raw, base::Round::Down)};
    }
    const FaceMetrics& metrics =
        context_.in.fonts.faces[context_.in.fonts.byRole.at(style.plain.face)]->metrics();
    const Dim capital = {
        base::mulDiv(style.plain.size.raw, metrics.capHeight, metrics.unitsPerEm, base::Round::HalfUp)};
    PlacedWords set = placeWords(context_, style, word, {x, middle + capital / 2}, tag);
    for (Item& item : set.items) head.items.push_back(std::move(item));
  }

  /// The consequence stands in the side column, what to do in the text column.
  VerticalList layOutBody() {
    const Grid& grid = context_.grid;
    const Column side = {grid.left + inset, grid.side - inset, false};
    const Column text = {grid.textX, grid.text - inset, false};
    if (box_.body.empty()) return {};
    const auto* first = std::get_if<markup::Paragraph>(&box_.body.front().node);
    if (!first) return layOutBlocks(context_, box_.body, text, tag_);
    Inlines words, pictures;
    for (const markup::Inline& part : first->text) (part.figure.empty() ? words : pictures).push_back(part);
    context_.line = box_.body.front().line;
    const bool isAlone = box_.body.size() == 1;
    std::vector<VerticalList> columns(2);
    if (isAlone) columns[1] = layOutParagraph(context_, words, "body", text, tag_);
    else columns[0] = layOutParagraph(context_, words, "body", side, tag_);
    if (!pictures.empty()) columns[0].push_back(layOutPictures(pictures, side, !columns[0].empty()));
    context_.isTight = true;
    if (!isAlone)
      columns[1] = layOutBlocks(context_, markup::Blocks(box_.body.begin() + 1, box_.body.end()), text, tag_);
    context_.isTight = false;
    return parallel(std::move(columns), grid.line, grid.unit);
  }

  Fragment layOutPictures(const Inlines& pictures, Column side, bool hasWords) {
    Fragment fragment;
    const Dim size = Dim::mm(13), gap = Dim::mm(3), pitch = roundUp(size, context_.grid.unit);
    Dim x = side.x, y = hasWords ? context_.grid.half() : Dim{};
    for (const markup::Inline& picture : pictures) {
      const Drawing* known = context_.drawing(picture.figure);
      if (!known) continue;
      const Drawing drawing = scaled(*known, size);
      if (x > side.x && x + drawing.size.w > side.x + side.width) {
        x = side.x;
        y += pitch + context_.grid.unit;
      }
      const int tag = context_.tag(Role::Figure, tag_);
      context_.out.tags.back().alt = picture.text.empty() ? drawing.alt : picture.text;
      for (Item item : drawing.items) {
        move(item, x, y);
        item.tag = tag;
        fragment.items.push_back(std::move(item));
      }
      x += drawing.size.w + gap;
    }
    fragment.height = y + pitch;
    return fragment;
  }

  void addFrame(Fragment& whole, Dim headHeight, Dim height) {
    const Colour ink = context_.colour("ink");
    const Dim left = place_.x, right = place_.x + place_.width;
    if (isFramed_) {
      whole.items.push_back(lineItem({left, headHeight}, {right, headHeight}, frameWeight, ink));
      whole.items.push_back(frame({place_.x, {}, place_.width, height}, frameWeight, ink));
      return;
    }
    for (const Dim y : {Dim{}, height})
      whole.items.push_back(lineItem({left, y}, {right, y}, Dim::pt(1), ink));
  }

  LayoutContext& context_;
  const markup::Box& box_;
  const Column place_;
  const bool isFramed_;
  const int tag_;
};

}  // namespace

VerticalList layOutPanel(LayoutContext& context, const markup::Box& box, int parent) {
  return PanelLayout(context, box, parent).run();
}

}  // namespace typeset
