// Small documents for the tests of the PDF writer, and what independent programs say about them.
#pragma once

#include "pdf/write.h"
#include "typeset/fonts.h"

#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>

namespace sample {

using namespace typeset;

inline const Fonts& fonts() {
  static const Fonts read = [] {
    model::Theme theme;
    theme.faces = {{model::Face::Text, "/usr/share/fonts/truetype/vollkorn/Vollkorn-Regular.ttf"},
                   {model::Face::Sans, "/usr/share/fonts/truetype/crosextra/Carlito-Regular.ttf"}};
    theme.fallbackFaces = {"/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf",
                           "/usr/share/fonts/truetype/ancient-scripts/Symbola_hint.ttf"};
    return readFonts(theme);
  }();
  return read;
}

inline Document document() {
  Document d;
  d.title = "Quote – deck & stairs";
  d.subject = "Wash, sand and oil <two coats>";
  d.author = "Sample café";
  d.language = "en-NZ";
  d.date = "2027-03-16";
  d.faces = fonts().faces;
  d.pages.push_back({{Dim::mm(210), Dim::mm(297)}, {}});
  d.tags.push_back({Role::Document, -1, {}, {}, false, 1});
  return d;
}

inline int addTag(Document& d, Role role, int parent = 0) {
  d.tags.push_back({role, parent, {}, {}, false, 1});
  return static_cast<int>(d.tags.size()) - 1;
}

inline void addText(Document& d, int tag, int yMm, const std::string& text,
                    model::Face face = model::Face::Text, Dim x = Dim::mm(20)) {
  for (TextRun run : shape(fonts(), {text, face, Dim::pt(10), {}, {33, 27, 23}, false}).runs) {
    run.baseline = {run.baseline.x + x, Dim::mm(yMm)};
    d.pages.back().items.push_back({run, tag});
  }
}

inline Path rectangle(Dim x, Dim y, Dim w, Dim h) {
  using Kind = Step::Kind;
  Path path;
  path.steps = {{Kind::Move, {}, {}, {x, y}},
                {Kind::Line, {}, {}, {x + w, y}},
                {Kind::Line, {}, {}, {x + w, y + h}},
                {Kind::Line, {}, {}, {x, y + h}},
                {Kind::Close, {}, {}, {}}};
  path.fill = Colour{245, 239, 231};
  return path;
}

/// The first picture of a document.
inline std::shared_ptr<const Image>& pictureOf(Document& d) {
  for (Page& page : d.pages)
    for (Item& item : page.items)
      if (auto* placed = std::get_if<PlacedImage>(&item.what)) return placed->image;
  throw std::logic_error("no picture");
}

/// One of everything that can stand on a page.
inline Document everything() {
  Document d = document();
  addText(d, addTag(d, Role::H1), 30, "Quote");
  const int p = addTag(d, Role::P);
  addText(d, p, 40, "See ");
  const int link = addTag(d, Role::Link, p);
  addText(d, link, 40, "the care sheet", model::Face::Text, Dim::mm(28));
  d.pages.back().items.push_back({Link{{{Dim::mm(28), Dim::mm(36)}, {Dim::mm(25), Dim::mm(5)}},
                                       "https://example.org/a b(c)é",
                                       "the care sheet"},
                                  link});
  addText(d, p, 40, "today", model::Face::Text, Dim::mm(54));
  const int list = addTag(d, Role::L), entry = addTag(d, Role::LI, list);
  d.tags[static_cast<std::size_t>(list)].isOrdered = true;
  addText(d, addTag(d, Role::Lbl, entry), 50, "1.");
  addText(d, addTag(d, Role::LBody, entry), 50, "Sweep", model::Face::Text, Dim::mm(26));
  const int figure = addTag(d, Role::Figure);
  d.tags[static_cast<std::size_t>(figure)].alt = "Plan of the deck, 6 m by 4 m";
  d.pages.back().items.push_back({rectangle(Dim::mm(20), Dim::mm(60), Dim::mm(60), Dim::mm(40)), figure});
  const auto picture = std::make_shared<Image>(Image{2, 1, "rgbRGB", std::string("\xFF\x80", 2), "", false});
  d.pages.back().items.push_back(
      {PlacedImage{{{Dim::mm(30), Dim::mm(70)}, {Dim::mm(10), Dim::mm(5)}}, picture}, figure});
  const int table = addTag(d, Role::Table), head = addTag(d, Role::THead, table),
            top = addTag(d, Role::TR, head);
  for (const int x : {20, 60}) {
    const int th = addTag(d, Role::TH, top);
    d.tags.back().scope = Scope::Column;
    addText(d, th, 110, "Area", model::Face::Sans, Dim::mm(x));
  }
  const int row = addTag(d, Role::TR, addTag(d, Role::TBody, table));
  addTag(d, Role::TD, row);
  d.tags.back().columns = 2;
  addText(d, artifact, 285, "page 1 of 1");
  addTag(d, Role::Note);
  addText(d, addTag(d, Role::Note), 120, "Figures are examples.");
  d.pages.push_back(d.pages.front());
  d.pages.back().items.clear();
  addText(d, p, 30, "and tomorrow.");
  d.bookmarks = {
      {"Quote", 0, Dim::mm(25), 1}, {"Deck – boards", 0, Dim::mm(60), 2}, {"Stairs", 1, Dim::mm(25), 1}};
  return d;
}

/// A file that goes away again.
class TempFile {
 public:
  explicit TempFile(const std::string& bytes, const std::string& ending = ".pdf")
      : name_(std::filesystem::temp_directory_path() / ("sample" + std::to_string(getpid()) + ending)) {
    std::ofstream(name_, std::ios::binary) << bytes;
  }
  ~TempFile() { std::remove(name_.c_str()); }
  TempFile(const TempFile&) = delete;
  TempFile& operator=(const TempFile&) = delete;
  const std::string& name() const { return name_; }

 private:
  std::string name_;
};

struct Said {
  std::string text;
  int status = -1;
};

/// Runs a command with the document's file in place of '%' and returns all it says.
inline Said run(std::string command, const std::string& pdf) {
  const TempFile file(pdf);
  command.replace(command.find('%'), 1, file.name());
  Said said;
  FILE* pipe = popen((command + " 2>&1").c_str(), "r");
  if (!pipe) return said;
  std::array<char, 4096> part{};
  while (const std::size_t n = fread(part.data(), 1, part.size(), pipe)) said.text.append(part.data(), n);
  said.status = pclose(pipe);
  return said;
}

/// Without the compression, for looking at operators and dictionaries.
inline std::string plain(const std::string& pdf) {
  return run("qpdf --qdf --object-streams=disable % -", pdf).text;
}

inline std::size_t count(const std::string& in, const std::string& what) {
  std::size_t n = 0;
  for (std::size_t at = in.find(what); at != std::string::npos; at = in.find(what, at + what.size())) ++n;
  return n;
}

inline bool holds(const std::string& in, const std::string& what) { return count(in, what) > 0; }

}  // namespace sample
