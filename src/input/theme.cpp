// A theme file: grid, faces, colours and styles.
#include "input/colour.h"
#include "input/cursor.h"
#include "input/read.h"
#include "input/sorted.h"
#include "input/words.h"

#include <algorithm>
#include <filesystem>

namespace input {
namespace {

namespace fs = std::filesystem;
using model::Face;
using model::Millipoint;

constexpr const char* styleNames[] = {"title",  "kind", "lede",    "figure", "total", "hazard",
                                      "signal", "head", "rowHead", "body",   "table", "note",
                                      "label",  "firm", "runFirm", "drawing"};

/// Finds font files by name: beside the theme, then anywhere below the system's font folders.
class FontFinder {
 public:
  explicit FontFinder(const std::string& themeFile) : beside_(fs::path(themeFile).parent_path()) {}

  std::string find(const std::string& name) {
    std::error_code failed;
    const fs::path near = fs::absolute(beside_ / name, failed).lexically_normal();
    if (!failed && fs::is_regular_file(near, failed)) return near.string();
    if (!isListed_) list();
    const auto found = system_.find(name);
    return found == system_.end() ? "" : found->second;
  }

 private:
  void list() {
    isListed_ = true;
    for (const char* folder : {"/usr/local/share/fonts", "/usr/share/fonts"}) {
      std::error_code failed;
      std::vector<std::string> files;
      auto it =
          fs::recursive_directory_iterator(folder, fs::directory_options::skip_permission_denied, failed);
      for (; !failed && it != fs::recursive_directory_iterator(); it.increment(failed)) {
        std::error_code ignored;
        if (it->is_regular_file(ignored)) files.push_back(it->path().string());
      }
      std::sort(files.begin(), files.end());  // the same choice on every run
      for (const std::string& f : files) system_.emplace(fs::path(f).filename().string(), f);
    }
  }

  fs::path beside_;
  bool isListed_ = false;
  std::map<std::string, std::string> system_;
};

std::string fontFile(const Field& f, FontFinder& finder) {
  const std::string name = text(f);
  if (name.empty()) return {};
  std::string file = finder.find(name);
  if (file.empty())
    f.error("the font file '" + name + "' is not found",
            "install the package that brings it, or write its path");
  return file;
}

Millipoint points(const Field& f, Limits<int> limits) {
  const std::optional<std::string> s = f.word();
  if (!s) return limits.least;
  const Parsed<PageLength> p = parsePageLength(*s);
  if (p.problem) {
    f.error(p.problem->message, p.problem->hint);
  } else if (p.value.millipoints < limits.least || p.value.millipoints > limits.most) {
    f.error(inQuotes(*s) + " is out of range", std::string("allowed: ") + limits.words);
  } else {
    return p.value.millipoints;
  }
  return limits.least;
}

void readGrid(const Field& f, model::Theme& t) {
  constexpr Limits<int> widths = {0, 600'000, "from 0 pt to 600 pt"};
  if (!f.isGiven()) return;
  Record r(f);
  t.marginLeft = points(r.must("left"), widths);
  t.sideWidth = points(r.must("side"), widths);
  t.gutter = points(r.must("gutter"), widths);
  t.textWidth = points(r.must("text"), {100'000, 600'000, "from 100 pt to 600 pt"});
  t.top = points(r.must("top"), widths);
  t.letterheadTop = points(r.must("letterhead_top"), widths);
  t.bottom = points(r.must("bottom"), widths);
  t.unit = points(r.must("unit"), {1000, 20'000, "from 1 pt to 20 pt"});
  r.finish();
  const Millipoint wide = t.marginLeft + t.sideWidth + t.gutter + t.textWidth;
  if (wide > 595'276)  // A4, 210 mm; Letter is wider
    f.error("the columns are wider than the paper",
            "left, side, gutter and text are at most 210 mm together");
}

void readFaces(const Field& f, model::Theme& t, const std::string& themeFile) {
  if (!f.isGiven()) return;
  FontFinder finder(themeFile);
  Record r(f);
  for (const auto& word : faceWords) t.faces[word.value] = fontFile(r.must(word.name), finder);
  for (const Field& item : r.may("fallback").items()) {
    std::string file = fontFile(item, finder);
    if (!file.empty()) t.fallbackFaces.push_back(std::move(file));
  }
  r.finish();
}

/// The bold and the italic face that go with a face.
Face strongOf(Face f) {
  switch (f) {
    case Face::Text:
    case Face::TextItalic:
    case Face::TextBold:
      return Face::TextBold;
    case Face::Display:
      return Face::Display;
    case Face::Sans:
    case Face::SansItalic:
    case Face::SansBold:
      break;
  }
  return Face::SansBold;
}

Face emphasisOf(Face f) {
  const bool isSans = f == Face::Sans || f == Face::SansItalic || f == Face::SansBold;
  return isSans ? Face::SansItalic : Face::TextItalic;
}

model::TextStyle readStyle(const Field& f, const model::Theme& t) {
  Record r(f);
  model::TextStyle s;
  s.face = choice(r.must("face"), faceWords, "face", s.face);
  s.strong = choice(r.may("strong"), faceWords, "face", strongOf(s.face));
  s.emphasis = choice(r.may("emphasis"), faceWords, "face", emphasisOf(s.face));
  s.size = points(r.must("size"), {4000, 100'000, "from 4 pt to 100 pt"});
  const Field leading = r.must("leading"), rise = r.must("rise");
  s.leading = points(leading, {4000, 200'000, "from 4 pt to 200 pt"});
  s.rise = points(rise, {0, 200'000, "from 0 pt to 200 pt"});
  if (leading.isGiven() && t.unit > 0 && s.leading % t.unit != 0)
    leading.error("the leading is not a multiple of the grid's unit");
  if (s.rise > s.leading) rise.error("the baseline lies below the line", "rise is at most leading");
  if (const Field tracking = r.may("tracking"); tracking.isGiven())
    s.tracking = points(tracking, {-5000, 20'000, "from -5 pt to 20 pt"});
  const Field colourName = r.may("colour");
  if (colourName.isGiven()) s.colour = knownId(colourName, t.colours, "colour of this theme");
  s.tabular = yesNo(r.may("tabular"), false);
  r.finish();
  return s;
}

/// Where a brand's file sets a colour; only the file where it cannot be read again.
base::SourcePos placeOfColour(const std::string& key, const std::string& brandFile) {
  base::Diagnostics ignored;
  if (const auto text = readFile(brandFile)) {
    if (const auto root = parseTree(*text, brandFile, ignored)) {
      const Source source{brandFile, ignored};
      Record brand(Field(source, &*root, "", root->mark));
      if (const Field colours = brand.may("colours"); colours.isGiven())
        return Record(colours).may(key).pos();
    }
  }
  return {brandFile, 0, 0};
}

}  // namespace

model::Theme readTheme(const std::string& file, base::Diagnostics& out) {
  model::Theme t;
  const std::optional<std::string> bytes = readFile(file);
  if (!bytes) {
    out.error({file, 0, 0}, "", "the theme's file cannot be read");
    return t;
  }
  base::Diagnostics messages;
  if (const std::optional<Node> root = parseTree(*bytes, file, messages)) {
    const Source source{file, messages};
    Record r(Field(source, &*root, "", root->mark));
    t.name = text(r.must("name"));
    readGrid(r.must("grid"), t);
    readFaces(r.must("faces"), t, file);
    if (const Field f = r.must("colours"); f.isGiven()) t.colours = readThemeColours(f);
    if (const Field f = r.must("styles"); f.isGiven()) {
      Record styles(f);
      for (const char* name : styleNames) {
        if (const Field s = styles.must(name); s.isGiven()) t.styles[name] = readStyle(s, t);
      }
      styles.finish();
    }
    r.finish();
  }
  forwardSorted(messages, out);
  return t;
}

void applyBrand(model::Theme& theme, const model::Brand& brand, const std::string& brandFile,
                base::Diagnostics& messages) {
  for (const auto& [name, value] : brand.colours) theme.colours[name] = value;
  for (const char* name : textColours) {
    // Where the brand gives both, reading it has compared them.
    if (brand.colours.contains(name) == brand.colours.contains("tint")) continue;
    const std::string mistake = contrastMistake(theme.colours, name, "tint");
    if (!mistake.empty()) {
      const std::string key = brand.colours.contains(name) ? name : "tint";
      messages.error(placeOfColour(key, brandFile), "colours." + key,
                     key == name ? mistake : inQuotes(name) + " cannot be read on it: " + mistake,
                     key == name ? contrastHint(theme.colours, name) : "take a tint nearer to white");
    }
  }
}

}  // namespace input
