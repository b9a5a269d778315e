#include "app/documents.h"

#include "app/charts.h"
#include "figures/figures.h"
#include "input/read.h"
#include "markup/read.h"
#include "pdf/write.h"
#include "sheets/addresses.h"
#include "sheets/fill.h"
#include "sheets/make_facts.h"
#include "sheets/words.h"
#include "typeset/layout.h"

#include <algorithm>
#include <filesystem>

namespace app {
namespace fs = std::filesystem;
namespace {

enum class Reader { Customer, Crew, Office };

struct DocumentKind {
  std::string name;     // of the template and the file
  std::string heading;  // beside the title and in the foot
  Reader reader;
  bool hasLetterhead;
};

const std::vector<DocumentKind> kinds = {{"quote", "Quote", Reader::Customer, true},
                                         {"aftercare", "Aftercare", Reader::Customer, false},
                                         {"safety", "Crew safety", Reader::Crew, false},
                                         {"orders", "Order list", Reader::Office, false},
                                         {"office", "Office", Reader::Office, false}};

std::shared_ptr<const typeset::Image> readLogo(const std::string& file, base::Diagnostics& messages) {
  const auto bytes = input::readFile(file);
  if (!bytes) {
    messages.error({file}, "", "the logo cannot be read");
    return {};
  }
  try {
    return std::make_shared<const typeset::Image>(pdf::readImage(*bytes));
  } catch (const std::runtime_error& e) {
    messages.error({file}, "", e.what());
    return {};
  }
}

std::shared_ptr<const typeset::Image> logoOf(const model::Brand& brand, const Shipped& shipped,
                                             base::Diagnostics& messages) {
  if (brand.logoFile.empty()) return {};
  return readOnce(shipped.shelves->logos, brand.logoFile, messages,
                  [&](auto& told) { return readLogo(brand.logoFile, told); });
}

/// The faces of a theme. Throws std::runtime_error naming the file that cannot be used.
typeset::Fonts fontsOf(const model::Theme& theme, const Shipped& shipped) {
  std::string files;
  for (const auto& [role, file] : theme.faces) files += std::to_string(static_cast<int>(role)) + file + "\n";
  for (const auto& file : theme.fallbackFaces) files += file + "\n";
  return *shipped.shelves->fonts.take(files, [&] { return typeset::readFonts(theme); });
}

typeset::Furniture furnitureOf(const DocumentKind& kind, const model::Case& c,
                               const std::shared_ptr<const typeset::Image>& logo) {
  typeset::Furniture f;
  f.firm = c.brand.name;
  std::string last = c.brand.phone;
  for (const auto& r : c.brand.registrations) last += " · " + r;
  std::string address;
  for (const auto& line : c.brand.address) address += (address.empty() ? "" : ", ") + line;
  f.firmLines.push_back(address);
  std::string online = c.brand.email;
  if (!c.brand.web.empty()) online += (online.empty() ? "" : " · ") + sheets::webWords(c.brand.web);
  if (!online.empty()) f.firmLines.push_back(online);
  f.firmLines.push_back(last);
  f.links[c.brand.phone] = sheets::phoneAddress(c.brand.phone);
  f.links[c.brand.email] = sheets::mailAddress(c.brand.email);
  if (!c.brand.web.empty()) f.links[sheets::webWords(c.brand.web)] = sheets::webAddress(c.brand.web);
  f.kind = kind.heading;
  for (const auto& line : c.job.site.address) f.where += (f.where.empty() ? "" : ", ") + line;
  if (f.where.empty()) f.where = c.job.customer.name;
  f.jobLabel = "Job " + c.job.ref;
  f.footLeft = c.brand.phone;
  f.footMiddle = kind.heading + " · job " + c.job.ref;
  f.pageOf = "page {n} of {m}";
  f.hasLetterhead = kind.hasLetterhead;
  f.logo = logo;
  f.logoAlt = "Logo of " + c.brand.name;
  f.signalWords[0] = "NOTICE";
  f.signalWords[1] = "CAUTION";
  f.signalWords[2] = "WARNING";
  f.signalWords[3] = "DANGER";
  return f;
}

std::vector<figures::Station> stationsOf(const Computation& x) {
  const sheets::Words w(*x.c.region);
  const auto& plan = x.plan;
  const std::map<std::string, std::array<std::string, 3>> stations = {
      {"walk", {"care-walk", "Walk on it", "in soft soles"}},
      {"furniture", {"care-chair", "Furniture", "lifted, not dragged"}},
      {"rugs", {"care-pot", "Rugs, pots", "dry rugs, pots on feet"}},
      {"first_wash", {"care-wash", "First wash", "cool water and a soft broom"}},
      {"maintenance",
       {"care-brush", x.c.product->times.maintenanceMonths == 12 ? "Yearly visit" : "Next visit",
        "we wash and lay one coat"}}};
  std::vector<figures::Station> list{{"care-coat", w.weekday(plan.finished.day),
                                      w.dayMonth(plan.finished.day), "Last coat",
                                      "done at " + w.clock(plan.finished.minutes), ""}};
  base::LocalTime last = plan.finished;
  for (const auto& e : plan.events) {
    const auto found = stations.find(e.name);
    if (found == stations.end()) continue;
    const auto& [picture, what, note] = found->second;
    const auto days = (e.at.day - last.day).count();
    list.back().gap = days >= 60                    ? sheets::counted((days + 15) / 30, "month", "months")
                      : days >= 14 && days % 7 == 0 ? sheets::counted(days / 7, "week", "weeks")
                                                    : sheets::counted(days, "day", "days");
    const bool isNextYear = e.name == "maintenance";
    const std::string from =
        e.name == "walk" || e.name == "furniture" ? "from " + w.clock(e.at.minutes) + ", " : "";
    list.push_back({picture, w.weekday(e.at.day) + (isNextYear ? ", " + w.year(e.at.day) : ""),
                    w.dayMonth(e.at.day), what, from + note, ""});
    last = e.at;
  }
  return list;
}

/// The look of sheets for the office: tables as small as notes.
model::Theme dense(model::Theme theme) {
  const model::TextStyle note = theme.styles.at("note");
  for (const char* name : {"table", "rowHead"}) {
    auto& style = theme.styles.at(name);
    style.size = note.size;
    style.leading = note.leading;
    style.rise = note.rise;
  }
  return theme;
}

/// The small plan gives way where many decks lengthen the table below it, so that the sheet keeps to two
/// sides.
typeset::Dim keyHeight(std::size_t decks) {
  const auto more = static_cast<std::int64_t>(decks > 3 ? decks - 3 : 0);
  return typeset::Dim::mm(std::max<std::int64_t>(30, 50 - 4 * more));
}

/// Every drawing a template may name.
std::map<std::string, typeset::Drawing> drawingsOf(const Computation& x, const Shipped& shipped,
                                                   const typeset::Fonts& fonts) {
  using typeset::Dim;
  const figures::Pen pen{x.c.theme, fonts, *x.c.region, shipped.contentFolder + "/signs"};
  const auto& t = x.c.theme;
  const Dim full = Dim::milli(t.sideWidth) + Dim::milli(t.gutter) + Dim::milli(t.textWidth),
            text = Dim::milli(t.textWidth),
            side = Dim::milli(t.sideWidth) - Dim::mm(2);  // as wide as a note under a head
  std::map<std::string, typeset::Drawing> drawings;
  drawings["plan"] = figures::deckPlan(x.c, x.estimate, pen, {full, Dim::mm(126)}, false);
  drawings["key"] = figures::deckPlan(x.c, x.estimate, pen, {text, keyHeight(x.c.job.areas.size())}, true);
  if (!x.estimate.coats.empty()) {
    drawings["timeline"] = figures::timeline(
        stationsOf(x), pen, full, "The closer the lines, the softer the coat. Distances are not to scale.");
  }
  drawings["litres"] = litresChartOf(x, shipped, pen, full);
  drawings["price"] = priceChartOf(x, pen, full);
  if (const auto& sds = x.c.product->sds)
    drawings["diamonds"] = figures::hazardDiamonds(sds->pictograms, pen, side);
  const std::string folder = shipped.contentFolder + "/signs";
  for (const auto& entry : fs::directory_iterator(folder)) {
    const auto name = entry.path().stem().string();
    if (const auto drawing = figures::sign(folder, name, Dim::mm(11))) drawings[name] = *drawing;
  }
  return drawings;
}

const DocumentKind& kindOf(const std::string& name) {
  for (const auto& kind : kinds) {
    if (kind.name == name) return kind;
  }
  throw std::logic_error("internal error: unknown document '" + name + "'");
}

/// What all documents of one pack share.
struct Studio {
  const Computation& x;
  const Shipped& shipped;
  typeset::Fonts fonts;
  std::shared_ptr<const typeset::Image> logo;
  std::map<std::string, typeset::Drawing> drawings;
  model::Paper paper;
};

/// The pages of one document; nothing when its template has mistakes.
std::optional<typeset::Document> setDocument(const DocumentKind& kind, const Studio& studio,
                                             base::Diagnostics& messages) {
  const auto& c = studio.x.c;
  const auto& main = studio.shipped.templates.at(kind.name);
  base::Diagnostics own;
  const auto filled =
      sheets::fillWithLines(*studio.shipped.shelves->sheets.take(
                                main.file, [&] { return sheets::makeSheet(main, studio.shipped.templates); }),
                            factsOf(kind.name, studio.x, studio.shipped), own);
  const auto blocks = own.ok() ? markup::readMarkdown(filled.text, filled.lines, own) : markup::Document{};
  std::optional<typeset::Document> pages;
  if (own.ok()) {
    const auto theme = kind.reader == Reader::Office ? dense(c.theme) : c.theme;
    pages = typeset::layOut({.blocks = blocks,
                             .theme = theme,
                             .fonts = studio.fonts,
                             .paper = studio.paper,
                             .furniture = furnitureOf(kind, c, studio.logo),
                             .drawings = studio.drawings,
                             .title = kind.heading + " " + c.job.ref,
                             .subject = sheets::titleOf({c, studio.shipped.content, studio.x.estimate,
                                                         studio.x.plan, studio.x.price}),
                             .author = c.brand.name,
                             .language = c.region->language,
                             .date = base::isoDate(c.job.quoted),
                             .template_ = main.file},
                            own);
    if (!own.ok()) pages.reset();
  }
  messages.add(own);
  return pages;
}

}  // namespace

const std::vector<std::string>& documentNames() {
  static const std::vector<std::string> names = [] {
    std::vector<std::string> list;
    for (const auto& k : kinds) list.push_back(k.name);
    return list;
  }();
  return names;
}

sheets::Facts factsOf(const std::string& document, const Computation& x, const Shipped& shipped) {
  const sheets::Computed computed{x.c, shipped.content, x.estimate, x.plan, x.price};
  switch (kindOf(document).reader) {
    case Reader::Customer:
      return sheets::customerFacts(computed);
    case Reader::Crew:
      return sheets::crewFacts(computed);
    case Reader::Office:
      return sheets::officeFacts(computed);
  }
  return {};
}

std::vector<SetDocument> setDocuments(const Computation& x, const Shipped& shipped, const Choices& choices,
                                      const std::vector<std::string>& only, base::Diagnostics& messages) {
  typeset::Fonts fonts;
  try {
    fonts = fontsOf(x.c.theme, shipped);
  } catch (const std::runtime_error& e) {
    messages.error({"theme " + x.c.theme.name}, "faces", e.what());
    return {};
  }
  const Studio studio{x,
                      shipped,
                      fonts,
                      logoOf(x.c.brand, shipped, messages),
                      drawingsOf(x, shipped, fonts),
                      choices.paper.value_or(x.c.region->paper)};
  std::vector<SetDocument> documents;
  for (const auto& kind : kinds) {
    const bool isWanted = only.empty() || std::find(only.begin(), only.end(), kind.name) != only.end();
    // A job without a coat has nothing to care for afterwards.
    if (!isWanted || (kind.name == "aftercare" && x.estimate.coats.empty())) continue;
    if (auto pages = setDocument(kind, studio, messages)) documents.push_back({kind.name, std::move(*pages)});
  }
  return documents;
}

std::vector<OutputFile> makeDocuments(const Computation& x, const Shipped& shipped, const Choices& choices,
                                      const std::vector<std::string>& only, const std::string& folder,
                                      base::Diagnostics& messages) {
  std::vector<OutputFile> files;
  try {
    for (const auto& [name, pages] : setDocuments(x, shipped, choices, only, messages))
      files.push_back({(fs::path(folder) / (name + ".pdf")).string(), pdf::write(pages, choices.variant)});
  } catch (const pdf::UnusableFont& e) {
    messages.error({"theme " + x.c.theme.name}, "faces", e.what());
  }
  return files;
}

}  // namespace app
