#include "app/documents.h"

#include "figures/figures.h"
#include "input/read.h"
#include "markup/read.h"
#include "pdf/write.h"
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

sheets::Facts factsFor(Reader reader, const sheets::Computed& computed) {
  switch (reader) {
    case Reader::Customer:
      return sheets::customerFacts(computed);
    case Reader::Crew:
      return sheets::crewFacts(computed);
    case Reader::Office:
      return sheets::officeFacts(computed);
  }
  return {};
}

std::shared_ptr<const typeset::Image> readLogo(const model::Brand& brand, base::Diagnostics& messages) {
  if (brand.logoFile.empty()) return {};
  const auto bytes = input::readFile(brand.logoFile);
  if (!bytes) {
    messages.error({brand.logoFile}, "", "the logo cannot be read");
    return {};
  }
  try {
    return std::make_shared<const typeset::Image>(pdf::readImage(*bytes));
  } catch (const std::runtime_error& e) {
    messages.error({brand.logoFile}, "", e.what());
    return {};
  }
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
  if (!c.brand.email.empty()) f.firmLines.push_back(c.brand.email);
  f.firmLines.push_back(last);
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
      {"furniture", {"care-chair", "Furniture", "lift it back, never drag it"}},
      {"rugs", {"care-pot", "Rugs, pots", "dry rugs, pots on feet"}},
      {"first_wash", {"care-wash", "First wash", "cool water and a soft broom"}},
      {"maintenance", {"care-brush", "Yearly visit", "we wash and lay one coat"}}};
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
    const std::string from = e.name == "walk" ? "from " + w.clock(e.at.minutes) + ", " : "";
    list.push_back({picture, w.weekday(e.at.day) + (isNextYear ? " " + w.year(e.at.day) : ""),
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
            text = Dim::milli(t.textWidth);
  std::map<std::string, typeset::Drawing> drawings;
  drawings["plan"] = figures::deckPlan(x.c, x.estimate, pen, {full, Dim::mm(126)}, false);
  drawings["key"] = figures::deckPlan(x.c, x.estimate, pen, {text, keyHeight(x.c.job.areas.size())}, true);
  if (!x.estimate.coats.empty()) {
    drawings["timeline"] = figures::timeline(
        stationsOf(x), pen, full, "The closer the lines, the softer the oil. Distances are not to scale.");
  }
  const std::string folder = shipped.contentFolder + "/signs";
  for (const auto& entry : fs::directory_iterator(folder)) {
    const auto name = entry.path().stem().string();
    if (const auto drawing = figures::sign(folder, name, Dim::mm(11))) drawings[name] = *drawing;
  }
  return drawings;
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

std::vector<OutputFile> makeDocuments(const Computation& x, const Shipped& shipped, const Choices& choices,
                                      const std::vector<std::string>& only, const std::string& folder,
                                      base::Diagnostics& messages) {
  const sheets::Computed computed{x.c, shipped.content, x.estimate, x.plan, x.price};
  const auto templates = readTemplates(shipped.looks, "en");
  const auto fonts = typeset::readFonts(x.c.theme);
  const auto logo = readLogo(x.c.brand, messages);
  const auto drawings = drawingsOf(x, shipped, fonts);
  std::vector<OutputFile> files;
  for (const auto& kind : kinds) {
    const bool isWanted = only.empty() || std::find(only.begin(), only.end(), kind.name) != only.end();
    // A job without a coat has nothing to care for afterwards.
    if (!isWanted || (kind.name == "aftercare" && x.estimate.coats.empty())) continue;
    const auto& main = templates.at(kind.name);
    auto facts = factsFor(kind.reader, computed);
    facts.emplace_back("has_plan", sheets::Fact::yes(!drawings.at("plan").items.empty()));
    const auto filled = sheets::fillWithLines(main, templates, facts, messages);
    if (!messages.ok()) continue;
    const auto blocks = markup::readMarkdown(filled.text, filled.lines, messages);
    if (!messages.ok()) continue;
    const auto theme = kind.reader == Reader::Office ? dense(x.c.theme) : x.c.theme;
    typeset::LayoutInput in{blocks,
                            theme,
                            fonts,
                            choices.paper.value_or(x.c.region->paper),
                            furnitureOf(kind, x.c, logo),
                            drawings,
                            {},
                            {},
                            {},
                            {},
                            {},
                            {}};
    in.title = kind.heading + " " + x.c.job.ref;
    in.subject = sheets::titleOf(computed);
    in.author = x.c.brand.name;
    in.language = x.c.region->language;
    in.date = base::isoDate(x.c.job.quoted);
    in.template_ = main.file;
    const auto pages = typeset::layOut(in, messages);
    if (messages.ok())
      files.push_back({(fs::path(folder) / (kind.name + ".pdf")).string(), pdf::write(pages)});
  }
  return files;
}

}  // namespace app
