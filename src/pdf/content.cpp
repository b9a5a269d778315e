// Page items become operators: ISO 32000-1:2008, 8 and 9. The display list counts down from the top, PDF up
// from the bottom.
#include "pdf/content.h"

#include "pdf/fonts/show_text.h"
#include "pdf/objects/notation.h"
#include "typeset/roles.h"

#include <optional>
#include <stdexcept>

namespace pdf {
namespace {

using typeset::Colour;
using typeset::Dim;
using typeset::Point;

void addColour(std::string& out, Colour c) {
  for (const std::uint8_t part : {c.r, c.g, c.b}) {
    out += channel(part);
    out += ' ';
  }
}

class PageWriter {
 public:
  PageWriter(Dim height, const std::vector<EmbeddedFont>& fonts, const std::vector<EmbeddedImage>& images)
      : height_(height), fonts_(fonts), images_(images) {
    out_.reserve(50'000);
  }

  void operator()(const typeset::TextRun& run) {
    if (run.glyphs.empty()) return;
    if (run.size <= Dim{}) throw std::logic_error("internal error: letters without a size");
    setFill(run.colour);
    out_ += "BT ";
    setFont(run.face, run.size);
    if (!run.isUpright) out_ += "0 1 -1 0 ";
    addPoint(run.baseline);
    out_ += run.isUpright ? "Td " : "Tm ";
    addText(out_, run, *fonts_[run.face].cut);
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
    out_ += "q ";
    addNumber(out_, image.box.size.w);
    out_ += "0 0 ";
    addNumber(out_, image.box.size.h);
    addPoint({image.box.at.x, image.box.at.y + image.box.size.h});
    out_ += "cm /" + nameOf(image.image.get(), images_) + " Do Q\n";
  }

  void operator()(const typeset::Link&) {}

  void mark(const std::string& begin) { out_ += begin; }
  std::string take() { return std::move(out_); }

 private:
  void addPoint(Point p) {
    addNumber(out_, p.x);
    addNumber(out_, height_ - p.y);
  }

  void setFill(Colour c) {
    if (fill_ == c) return;
    fill_ = c;
    addColour(out_, c);
    out_ += "rg\n";
  }

  void setFont(std::size_t face, Dim size) {
    if (font_ == std::pair{face, size}) return;
    font_ = {face, size};
    out_ += "/F" + std::to_string(face) + " ";
    addNumber(out_, size);
    out_ += "Tf ";
  }

  void setStroke(const typeset::Stroke& stroke) {
    if (stroke.width < Dim{}) throw std::logic_error("internal error: a line narrower than nothing");
    if (ink_ != stroke.colour) {
      ink_ = stroke.colour;
      addColour(out_, stroke.colour);
      out_ += "RG ";
    }
    if (pen_.width != stroke.width) {
      pen_.width = stroke.width;
      addNumber(out_, stroke.width);
      out_ += "w ";
    }
    if (pen_.isRound != stroke.isRound) {
      pen_.isRound = stroke.isRound;
      out_ += stroke.isRound ? "1 J 1 j " : "0 J 0 j ";
    }
    if (pen_.dash != stroke.dash) setDash(stroke.dash);
  }

  void setDash(const std::vector<Dim>& dash) {
    pen_.dash = dash;
    Dim period;
    out_ += '[';
    for (const Dim length : dash) {
      if (length < Dim{}) throw std::logic_error("internal error: a dash shorter than nothing");
      period += length;
      addNumber(out_, length);
    }
    if (!dash.empty() && period == Dim{}) throw std::logic_error("internal error: a dash without length");
    out_ += "] 0 d\n";
  }

  void addStep(const typeset::Step& step) {
    switch (step.kind) {
      case typeset::Step::Kind::Move:
        addPoint(step.to);
        out_ += "m\n";
        return;
      case typeset::Step::Kind::Line:
        addPoint(step.to);
        out_ += "l\n";
        return;
      case typeset::Step::Kind::Curve:
        addPoint(step.a);
        addPoint(step.b);
        addPoint(step.to);
        out_ += "c\n";
        return;
      case typeset::Step::Kind::Close:
        out_ += "h\n";
        return;
    }
    throw std::logic_error("internal error: unknown step of a path");
  }

  const Dim height_;
  const std::vector<EmbeddedFont>& fonts_;
  const std::vector<EmbeddedImage>& images_;
  std::string out_;
  // Last set on this page:
  std::optional<Colour> fill_, ink_;
  std::optional<std::pair<std::size_t, Dim>> font_;
  typeset::Stroke pen_ = {{}, Dim::pt(1), {}, false};  // as a page begins: ISO 32000-1:2008, 8.4.1
};

bool draws(const typeset::Item& item) {
  if (const auto* run = std::get_if<typeset::TextRun>(&item.what)) return !run->glyphs.empty();
  if (const auto* path = std::get_if<typeset::Path>(&item.what))
    return !path->steps.empty() && (path->fill || path->stroke);
  return std::holds_alternative<typeset::PlacedImage>(item.what);
}

}  // namespace

std::string drawPage(const typeset::Document& document, std::size_t page,
                     const std::vector<EmbeddedFont>& fonts, const std::vector<EmbeddedImage>& images,
                     Structure& structure) {
  PageWriter writer(document.pages[page].size.h, fonts, images);
  std::optional<int> open;  // tag of the sequence being written
  for (const typeset::Item& item : document.pages[page].items) {
    if (!draws(item)) continue;
    if (open != item.tag) {
      if (open) writer.mark("EMC\n");
      open = item.tag;
      if (item.tag == typeset::artifact) writer.mark("/Artifact BMC\n");
      else
        writer.mark(std::string("/") + typeset::roleName(structure.role(item.tag)) + "<</MCID " +
                    std::to_string(structure.addSequence(item.tag, page)) + ">>BDC\n");
    }
    std::visit(writer, item.what);
  }
  if (open) writer.mark("EMC\n");
  return writer.take();
}

}  // namespace pdf
