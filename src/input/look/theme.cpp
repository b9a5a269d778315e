// A theme file: grid, faces, colours and styles. One that extends another holds only what it changes and is
// read over it.
#include "input/look/colour.h"
#include "input/look/font_finder.h"
#include "input/read.h"
#include "input/yaml/cursor.h"
#include "input/yaml/edit.h"
#include "input/yaml/sorted.h"
#include "input/yaml/words.h"

#include <algorithm>
#include <filesystem>
#include <optional>

namespace input {
namespace {

namespace fs = std::filesystem;
using model::Face;
using model::Millipoint;

constexpr const char* styleNames[] = {"title",  "kind", "lede",    "figure", "total", "hazard",
                                      "signal", "head", "rowHead", "body",   "table", "note",
                                      "label",  "firm", "runFirm", "drawing"};

Millipoint points(const Field& f, Limits<int> limits) {
  const auto isWithin = [&](PageLength l) {
    return limits.least <= l.millipoints && l.millipoints <= limits.most;
  };
  const auto length =
      valueWithin(f, parsePageLength, isWithin, std::string("allowed: ") + limits.words, {"pt", "mm"});
  return length ? length->millipoints : limits.least;
}

/// True, and an error, where a key still has the name of earlier versions.
bool refuseOldName(Record& r, const char* old, const std::string& now) {
  const Field f = r.may(old);
  if (f.isGiven()) f.error(inQuotes(old) + " is now called " + inQuotes(now), "write '" + now + ":'");
  return f.isGiven();
}

constexpr const char* gridExample =
    "{left: 20 mm, side: 42 mm, gutter: 5 mm, text: 118 mm, top: 25 mm, letterhead_top: 45 mm, bottom: 20 "
    "mm, "
    "unit: 3.5 pt}";

/// A theme being read, perhaps over the one it extends.
struct Layer {
  model::Theme& theme;
  bool isOver;  // there is a theme below: what is not written stays as it is

  Field field(Record& r, const char* key, const char* example) const {
    return isOver ? r.may(key) : r.must(key, example);
  }
  void take(Record& r, const char* key, const char* example, Millipoint& value, Limits<int> limits) const {
    if (const Field f = field(r, key, example); f.isGiven()) value = points(f, limits);
  }
};

void readGrid(const Field& f, const Layer& layer) {
  constexpr Limits<int> widths = {0, 600'000, "from 0 pt to 600 pt"};
  if (!f.isGiven()) return;
  model::Theme& t = layer.theme;
  Record r(f);
  layer.take(r, "left", "20 mm", t.marginLeft, widths);
  layer.take(r, "side", "42 mm", t.sideWidth, widths);
  layer.take(r, "gutter", "5 mm", t.gutter, widths);
  layer.take(r, "text", "118 mm", t.textWidth, {100'000, 600'000, "from 100 pt to 600 pt"});
  layer.take(r, "top", "25 mm", t.top, widths);
  layer.take(r, "letterhead_top", "45 mm", t.letterheadTop, widths);
  layer.take(r, "bottom", "20 mm", t.bottom, widths);
  layer.take(r, "unit", "3.5 pt", t.unit, {1000, 20'000, "from 1 pt to 20 pt"});
  refuseOldName(r, "tighten", "shrink");
  if (const Field shrink = r.may("shrink"); shrink.isGiven())
    t.shrink = quantity(shrink, parseShare, {{0}, base::Share::whole(15), "from 0 % to 15 %"});
  r.finish();
  const Millipoint wide = t.marginLeft + t.sideWidth + t.gutter + t.textWidth;
  if (wide > 595'276)  // A4, 210 mm; Letter is wider
    f.error("the columns are wider than the paper",
            "left, side, gutter and text are at most 210 mm together");
}

void readFaces(const Field& f, const Layer& layer, FontFinder& finder) {
  if (!f.isGiven()) return;
  Record r(f);
  for (auto& [role, named] : readFaceFiles(r, finder)) {
    layer.theme.faces[role] = named.file;
    layer.theme.named[named.file] = std::move(named);
  }
  if (!layer.isOver)
    for (const auto& word : faceWords)
      if (!layer.theme.faces.contains(word.value)) r.must(word.name, "{family: Vollkorn}");
  if (const Field list = r.may("fallback"); list.isGiven()) {
    layer.theme.fallbackFaces.clear();
    for (const Field& item : list.items()) {
      std::string file = fontFile(item, finder);
      if (file.empty()) continue;
      layer.theme.named[file] = {file, item.pos(), item.path()};
      layer.theme.fallbackFaces.push_back(std::move(file));
    }
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

/// 's' is the style of the theme below, or a new one. A new face brings its own bold and italic.
model::TextStyle readStyle(const Field& f, const Layer& layer, model::TextStyle s) {
  const model::Theme& t = layer.theme;
  Record r(f);
  if (const Field face = layer.field(r, "face", "text"); face.isGiven()) {
    s.face = choice(face, faceWords, "face", s.face);
    s.strong = strongOf(s.face);
    s.emphasis = emphasisOf(s.face);
  }
  s.strong = choice(r.may("strong"), faceWords, "face", s.strong);
  s.emphasis = choice(r.may("emphasis"), faceWords, "face", s.emphasis);
  layer.take(r, "size", "10.5 pt", s.size, {4000, 100'000, "from 4 pt to 100 pt"});
  const bool isOld = refuseOldName(r, "rise", "baseline");
  const Field leading = layer.field(r, "leading", "14 pt"),
              baseline = isOld ? r.may("baseline") : layer.field(r, "baseline", "10 pt");
  if (leading.isGiven()) s.leading = points(leading, {4000, 200'000, "from 4 pt to 200 pt"});
  if (baseline.isGiven()) s.baseline = points(baseline, {0, 200'000, "from 0 pt to 200 pt"});
  if (leading.isGiven() && t.unit > 0 && s.leading % t.unit != 0)
    leading.error("the leading is not a multiple of the grid's unit",
                  "the lines of all styles stand on one grid");
  if (s.baseline > s.leading)
    (baseline.isGiven() ? baseline : leading)
        .error("the baseline lies below the line", "baseline is at most leading");
  if (const Field tracking = r.may("tracking"); tracking.isGiven())
    s.tracking = points(tracking, {-5000, 20'000, "from -5 pt to 20 pt"});
  const Field colourName = r.may("colour");
  if (colourName.isGiven()) s.colour = knownId(colourName, t.colours, "colour of this theme");
  s.tabular = yesNo(r.may("tabular"), s.tabular);
  constexpr Word<bool> aligns[] = {{"ragged", false}, {"justified", true}};
  s.isJustified = choice(r.may("align"), aligns, "align", s.isJustified);
  r.finish();
  return s;
}

void readStyles(const Field& f, const Layer& layer) {
  if (!f.isGiven()) return;
  Record styles(f);
  for (const char* name : styleNames)
    if (const Field s =
            layer.field(styles, name, "{face: text, size: 10.5 pt, leading: 14 pt, baseline: 10 pt}");
        s.isGiven())
      layer.theme.styles[name] = readStyle(s, layer, layer.theme.styles[name]);
  styles.finish();
}

/// Whether a theme's 'styles:' gives this style a leading.
bool hasOwnLeading(const Field& styles, const std::string& style) {
  const Entry* own = styles.is(Node::Kind::Map) ? Editor::find(*styles.node(), style) : nullptr;
  return own != nullptr && Editor::find(own->value, "leading") != nullptr;
}

/// A new unit has to suit the styles that stay as they are below.
void checkUnit(const Field& grid, const Field& styles, const model::Theme& t) {
  if (!grid.is(Node::Kind::Map)) return;
  Record r(grid);
  const Field unit = r.may("unit");
  if (!unit.isGiven() || t.unit <= 0) return;
  for (const auto& [name, style] : t.styles) {
    if (!hasOwnLeading(styles, name) && style.leading % t.unit != 0)
      unit.error("the leading of '" + name + "' is not a multiple of it", "give this style its own leading");
  }
}

/// Theme files being read, each extending the next, and where others are looked for.
struct Chain {
  const std::vector<std::string>& folders;
  std::vector<fs::path> files;
  FontFinder fonts;
};

fs::path plainPath(const fs::path& file) {
  std::error_code failed;
  const fs::path plain = fs::weakly_canonical(file, failed);
  return failed ? file : plain;
}

/// The file of the theme another extends: beside it, then in the folders of themes. A theme may extend one
/// of its own name that lies elsewhere. Empty (and an error) when there is none.
std::string baseFile(const Field& f, const Chain& chain) {
  const std::string name = text(f);
  if (name.empty()) return {};
  std::vector<fs::path> folders = {chain.files.back().parent_path()};
  folders.insert(folders.end(), chain.folders.begin(), chain.folders.end());
  std::vector<std::string> known;
  bool isItself = false;
  for (const fs::path& folder : folders) {
    std::error_code failed;
    for (fs::directory_iterator it(folder, failed), end; !failed && it != end; it.increment(failed)) {
      if (it->path().extension() != ".yaml") continue;
      known.push_back(it->path().stem().string());
      if (known.back() != name) continue;
      if (plainPath(it->path()) != chain.files.back()) return it->path().string();
      isItself = true;
    }
  }
  std::sort(known.begin(), known.end());
  known.erase(std::unique(known.begin(), known.end()), known.end());
  if (isItself) f.error("the theme extends itself", "name another theme, or leave 'extends' out");
  else reportUnknown(f, name, "theme", known);
  return {};
}

model::Theme readTheme(const std::string& file, Chain& chain, base::Diagnostics& out);

/// The theme below; nothing when there is none to stand on.
std::optional<model::Theme> readBase(const Field& f, Chain& chain, base::Diagnostics& below) {
  const std::string file = baseFile(f, chain);
  if (file.empty()) return {};
  if (std::find(chain.files.begin(), chain.files.end(), plainPath(file)) != chain.files.end()) {
    f.error("the themes extend each other in a circle", "one of them must stand on its own");
    return {};
  }
  model::Theme t = readTheme(file, chain, below);
  if (!below.ok()) return {};
  return t;
}

model::Theme readTheme(const std::string& file, Chain& chain, base::Diagnostics& out) {
  model::Theme t;
  const std::optional<std::string> bytes = readFile(file);
  if (!bytes) {
    out.error({file, 0, 0}, "", "the theme's file cannot be read: " + whyUnreadable(file),
              "check that it may be read");
    return t;
  }
  chain.files.push_back(plainPath(file));
  base::Diagnostics messages, below;
  if (const std::optional<Node> root = parseTree(*bytes, file, messages)) {
    const Source source{file, messages};
    Record r(Field(source, &*root, "", root->mark));
    const std::string name = text(r.must("name", "generous"));
    bool isWhole = true;  // else what is missing here would be told although it stands below
    bool isOver = false;
    if (const Field f = r.may("extends"); f.isGiven()) {
      isOver = true;
      if (const auto base = readBase(f, chain, below)) t = *base;
      else isWhole = false;
    }
    t.name = name;
    if (isWhole) {
      const Layer layer{t, isOver};
      const Field grid = layer.field(r, "grid", gridExample);
      readGrid(grid, layer);
      readFaces(layer.field(r, "faces", "{text: {family: Vollkorn}}"), layer, chain.fonts);
      if (const Field f = layer.field(r, "colours", "{ink: '#1c1a17'}"); f.isGiven())
        readThemeColours(f, t.colours);
      if (const Field f = r.may("crew_colours"); f.isGiven())
        for (const auto& [key, value] : readOwnColours(f)) t.crewColours[key] = value;
      const Field styles =
          layer.field(r, "styles", "{body: {face: text, size: 10.5 pt, leading: 14 pt, baseline: 10 pt}}");
      readStyles(styles, layer);
      if (isOver) checkUnit(grid, styles, t);
      r.finish();
    }
  }
  out.add(below);
  forwardSorted(messages, out);
  return t;
}

/// Where the firm's file sets a colour; only the file where it cannot be read again.
base::SourcePos placeOfColour(const std::string& key, const std::string& firmFile) {
  base::Diagnostics ignored;
  if (const auto text = readFile(firmFile)) {
    if (const auto root = parseTree(*text, firmFile, ignored)) {
      const Source source{firmFile, ignored};
      Record firm(Field(source, &*root, "", root->mark));
      if (const Field colours = firm.may("colours"); colours.isGiven()) return Record(colours).may(key).pos();
    }
  }
  return {firmFile, 0, 0};
}

}  // namespace

model::Theme readTheme(const std::string& file, base::Diagnostics& messages,
                       const std::vector<std::string>& folders) {
  Chain chain{folders, {}, {}};
  return readTheme(file, chain, messages);
}

void applyFirm(model::Theme& theme, const model::Firm& firm, const std::string& firmFile,
               base::Diagnostics& messages) {
  for (const auto& [name, value] : firm.colours) theme.colours[name] = value;
  for (const auto& [role, named] : firm.fonts) {
    theme.faces[role] = named.file;
    theme.named[named.file] = named;
  }
  for (const char* name : textColours) {
    // Where the firm gives both, reading it has compared them.
    if (firm.colours.contains(name) == firm.colours.contains("tint")) continue;
    const std::string mistake = contrastMistake(theme.colours, name, "tint");
    if (!mistake.empty()) {
      const std::string key = firm.colours.contains(name) ? name : "tint";
      messages.error(placeOfColour(key, firmFile), "colours." + key,
                     key == name ? mistake : inQuotes(name) + " cannot be read on it: " + mistake,
                     key == name ? contrastHint(theme.colours, name) : "take a tint nearer to white");
    }
  }
}

}  // namespace input
