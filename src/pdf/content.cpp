// Page items become operators: ISO 32000-1:2008, 8 and 9. The display list counts down from the top, PDF up
// from the bottom.
#include "pdf/content.h"

#include "pdf/notation.h"
#include "pdf/text.h"
#include "typeset/roles.h"

#include <algorithm>
#include <stdexcept>

namespace pdf {
namespace {

using typeset::Colour;
using typeset::Dim;
using typeset::Point;

std::string colour(Colour c) { return channel(c.r) + " " + channel(c.g) + " " + channel(c.b); }

class PageWriter {
 public:
  PageWriter(Dim height, const std::vector<EmbeddedFont>& fonts, const WordEnds& ends)
      : height_(height), fonts_(fonts), ends_(ends) {}

  void operator()(const typeset::TextRun& run) {
    if (run.glyphs.empty()) return;
    if (run.size <= Dim{}) throw std::logic_error("internal error: letters without a size");
    setFill(run.colour);
    out_ += "BT ";
    const std::string font = "/F" + std::to_string(run.face) + " " + number(run.size) + " Tf ";
    if (font != font_) out_ += font_ = font;
    out_ += run.isUpright ? at(run.baseline) + "Td " : "0 1 -1 0 " + at(run.baseline) + "Tm ";
    addText(out_, run, fonts_[run.face], ends_.isAfter(run));
    out_ += "ET\n";
  }

  void operator()(const typeset::Path& path) {
    if (path.steps.empty() || (!path.fill && !path.stroke)) return;
    if (path.fill) setFill(*path.fill);
    if (path.stroke) setStroke(*path.stroke);
    for (const typeset::Step& step : path.steps) addStep(step);
    if (path.fill && path.stroke) out_ += path.isEvenOdd ? "B*\n" : "B\n";
    else if (path.fill) out_ += path.isEvenOdd ? "f*\n" : "f\n";
    else out_ += "S\n";
  }

  void operator()(const typeset::PlacedImage& image) {
    const Point corner = {image.box.at.x, image.box.at.y + image.box.size.h};
    out_ += "q " + number(image.box.size.w) + " 0 0 " + number(image.box.size.h) + " " + at(corner) +
            "cm /I" + std::to_string(image.image) + " Do Q\n";
  }

  void operator()(const typeset::Link&) {}

  void mark(const std::string& begin) { out_ += begin; }
  std::string take() { return std::move(out_); }

 private:
  std::string at(Point p) const { return number(p.x) + " " + number(height_ - p.y) + " "; }

  void setFill(Colour c) {
    if (const std::string s = colour(c) + " rg\n"; s != fill_) out_ += fill_ = s;
  }

  void setStroke(const typeset::Stroke& stroke) {
    if (stroke.width < Dim{}) throw std::logic_error("internal error: a line narrower than nothing");
    std::string s = colour(stroke.colour) + " RG " + number(stroke.width) + " w ";
    s += stroke.isRound ? "1 J 1 j [" : "0 J 0 j [";
    Dim period;
    for (const Dim length : stroke.dash) {
      if (length < Dim{}) throw std::logic_error("internal error: a dash shorter than nothing");
      period += length;
      s += number(length) + " ";
    }
    if (!stroke.dash.empty() && period == Dim{})
      throw std::logic_error("internal error: a dash without length");
    s += "] 0 d\n";
    if (s != stroke_) out_ += stroke_ = s;
  }

  void addStep(const typeset::Step& step) {
    switch (step.kind) {
      case typeset::Step::Kind::Move:
        out_ += at(step.to) + "m\n";
        return;
      case typeset::Step::Kind::Line:
        out_ += at(step.to) + "l\n";
        return;
      case typeset::Step::Kind::Curve:
        out_ += at(step.a) + at(step.b) + at(step.to) + "c\n";
        return;
      case typeset::Step::Kind::Close:
        out_ += "h\n";
        return;
    }
    throw std::logic_error("internal error: unknown step of a path");
  }

  const Dim height_;
  const std::vector<EmbeddedFont>& fonts_;
  const WordEnds& ends_;
  std::string out_;
  std::string fill_, stroke_, font_;  // last set on this page
};

bool draws(const typeset::Item& item) {
  if (const auto* run = std::get_if<typeset::TextRun>(&item.what)) return !run->glyphs.empty();
  if (const auto* path = std::get_if<typeset::Path>(&item.what))
    return !path->steps.empty() && (path->fill || path->stroke);
  return std::holds_alternative<typeset::PlacedImage>(item.what);
}

}  // namespace

std::string drawPage(const typeset::Document& document, std::size_t page,
                     const std::vector<EmbeddedFont>& fonts, const WordEnds& ends, Structure& structure) {
  PageWriter writer(document.pages[page].size.h, fonts, ends);
  std::optional<int> open;  // tag of the sequence being written
  for (const typeset::Item& item : document.pages[page].items) {
    if (!draws(item)) continue;
    if (open != item.tag) {
      if (open) writer.mark("EMC\n");
      open = item.tag;
      if (item.tag == typeset::artifact) writer.mark("/Artifact BMC\n");
      else
        writer.mark(std::string("/") + typeset::roleName(structure.role(item.tag)) + " <</MCID " +
                    std::to_string(structure.addSequence(item.tag, page)) + ">> BDC\n");
    }
    std::visit(writer, item.what);
  }
  if (open) writer.mark("EMC\n");
  return writer.take();
}

}  // namespace pdf
