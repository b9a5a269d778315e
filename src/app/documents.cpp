#include "app/documents.h"

#include "app/charts.h"
#include "app/day_charts.h"
#include "app/stations.h"
#include "figures/figures.h"
#include "input/read.h"
#include "markup/read.h"
#include "pdf/write.h"
#include "sheets/addresses.h"
#include "sheets/fill.h"
#include "sheets/make_facts.h"
#include "sheets/words.h"
#include "typeset/face.h"
#include "typeset/layout.h"

#include <algorithm>
#include <filesystem>

namespace app {
namespace fs = std::filesystem;
namespace {

enum class Reader { Customer, Crew, CrewByDay, Office };

struct DocumentKind {
  std::string name;  // of the template, the file, and its heading among the language's words
  Reader reader;
  bool hasLetterhead;
  std::size_t mostPages = 0;  // more than these are set closer; 0 = as many as it takes
};

const std::vector<DocumentKind> kinds = {
    {"quote", Reader::Customer, true},  {"aftercare", Reader::Customer, false, 2},
    {"safety", Reader::Crew, false, 3}, {"dayplan", Reader::CrewByDay, false},
    {"orders", Reader::Office, false},  {"office", Reader::Office, false}};

std::shared_ptr<const typeset::Image> readLogo(const std::string& file, base::Diagnostics& messages) {
  std::error_code failed;
  if (fs::is_regular_file(file, failed) && fs::is_empty(file, failed)) {
    messages.error({file}, "", "the logo is empty");
    return {};
  }
  const auto bytes = input::readFile(file);
  if (!bytes) {
    messages.error({file}, "", "the logo cannot be read");
    return {};
  }
  try {
    constexpr std::int64_t inch = 72, perInch = 600;  // finer than office printers
    constexpr auto rows =
        static_cast<std::size_t>(typeset::logoHeight.raw * perInch / typeset::Dim::pt(inch).raw);
    return std::make_shared<const typeset::Image>(pdf::readImage(*bytes, rows));
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

/// The faces of a theme, without a language. Throws std::runtime_error naming the file that cannot be used.
typeset::Fonts fontsOf(const model::Theme& theme, const Shipped& shipped) {
  std::string files;
  for (const auto& [role, file] : theme.faces) files += std::to_string(static_cast<int>(role)) + file + "\n";
  for (const auto& file : theme.fallbackFaces) files += file + "\n";
  return *shipped.shelves->fonts.take(files, [&] { return typeset::readFonts(theme); });
}

/// Tells that a font cannot be used, at the place that names it where the message or the face's own name says
/// which one it is.
void tellOfFont(const model::Theme& theme, const std::string& fault, base::Diagnostics& messages) {
  for (const auto& [file, named] : theme.named) {
    const auto isMeant = [&] {
      if (fault.find("'" + file + "'") != std::string::npos) return true;
      try {
        return fault.find("'" + typeset::FontFace::read(file)->postscriptName() + "'") != std::string::npos;
      } catch (const std::runtime_error&) {
        return false;
      }
    };
    if (!isMeant()) continue;
    messages.error(named.pos, named.key, fault);
    return;
  }
  messages.error({"theme " + theme.name}, "faces", fault);
}

typeset::Furniture furnitureOf(const DocumentKind& kind, const Telling& t,
                               const std::shared_ptr<const typeset::Image>& logo) {
  const model::Case& c = t.c;
  const model::Language& w = *t.language;
  const std::string heading = w("documents." + kind.name);
  typeset::Furniture f;
  f.firm = c.brand.name;
  std::string last = c.brand.phone;
  for (const auto& r : c.brand.registrations) last += " · " + r;
  std::string address;
  for (const auto& line : c.brand.address) address += (address.empty() ? "" : ", ") + line;
  f.firmLines.push_back(address);
  if (!c.brand.email.empty()) f.firmLines.push_back(c.brand.email);
  if (!c.brand.web.empty()) f.firmLines.push_back(sheets::webWords(c.brand.web));
  f.firmLines.push_back(last);
  f.links[c.brand.phone] = sheets::phoneAddress(c.brand.phone);
  f.links[c.brand.email] = sheets::mailAddress(c.brand.email);
  if (!c.brand.web.empty()) f.links[sheets::webWords(c.brand.web)] = sheets::webAddress(c.brand.web);
  f.kind = heading;
  for (const auto& line : c.job.site.address) f.where += (f.where.empty() ? "" : ", ") + line;
  if (f.where.empty()) f.where = c.job.customer.name;
  f.jobLabel = w("furniture.job", {{"ref", c.job.ref}});
  f.footLeft = c.brand.phone;
  f.footMiddle = w("furniture.foot", {{"document", heading}, {"ref", c.job.ref}});
  f.pageOf = w("furniture.page", {{"n", "{n}"}, {"m", "{m}"}});  // filled in when the pages are counted
  f.hasLetterhead = kind.hasLetterhead;
  f.logo = logo;
  f.logoAlt = w("furniture.logo", {{"firm", c.brand.name}});
  f.signalWords[0] = w("signals.notice");
  f.signalWords[1] = w("signals.caution");
  f.signalWords[2] = w("signals.warning");
  f.signalWords[3] = w("signals.danger");
  return f;
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

/// The look of a sheet that has grown too long to be read out: reading as small as notes, on a tighter grid.
model::Theme close(model::Theme theme) {
  theme = dense(std::move(theme));
  const model::TextStyle note = theme.styles.at("note");
  auto& body = theme.styles.at("body");
  body.size = note.size + theme.unit / 7;  // half a point
  body.leading = note.leading;
  body.rise = note.rise + theme.unit / 7;
  auto& hazard = theme.styles.at("hazard");
  const auto& head = theme.styles.at("head");
  hazard.size = head.size;
  hazard.leading = head.leading;
  hazard.rise = head.rise;
  theme.tighten = base::Share::whole(12);
  return theme;
}

/// The small plan gives way where many decks lengthen the table below it, so that the sheet keeps to two
/// sides.
typeset::Dim keyHeight(std::size_t decks) {
  const auto more = static_cast<std::int64_t>(decks > 3 ? decks - 3 : 0);
  return typeset::Dim::mm(std::max<std::int64_t>(30, 50 - 4 * more));
}

/// What all documents of one pack share.
struct Studio {
  const Shipped& shipped;
  typeset::Fonts fonts;
  std::shared_ptr<const typeset::Image> logo;
  model::Paper paper;
  bool hasDays;  // a day plan is among them
};

/// Every drawing a template may name; those of the day plan only where it is wanted.
std::map<std::string, typeset::Drawing> drawingsOf(const sheets::Computed& x, const Studio& studio,
                                                   const typeset::Fonts& fonts) {
  const Shipped& shipped = studio.shipped;
  using typeset::Dim;
  const figures::Pen pen{x.c.theme, fonts, *x.c.region, x.language, shipped.contentFolder + "/signs"};
  const auto& t = x.c.theme;
  const Dim full = Dim::milli(t.sideWidth) + Dim::milli(t.gutter) + Dim::milli(t.textWidth),
            text = Dim::milli(t.textWidth),
            side = Dim::milli(t.sideWidth) - Dim::mm(2);  // as wide as a note under a head
  std::map<std::string, typeset::Drawing> drawings;
  drawings["plan"] = figures::deckPlan(x.c, x.estimate, pen, {full, Dim::mm(126)}, false);
  drawings["key"] = figures::deckPlan(x.c, x.estimate, pen, {text, keyHeight(x.c.job.areas.size())}, true);
  if (!x.estimate.coats.empty()) {
    drawings["timeline"] = figures::timeline(stationsOf(x), pen, full, x.language("timeline.caption"));
  }
  drawings["litres"] = litresChartOf(x, pen, full);
  drawings["price"] = priceChartOf(x, pen, full);
  if (studio.hasDays) addDayDrawings(drawings, x, pen, full, studio.paper);
  if (const auto& sds = x.c.product->sds)
    drawings["diamonds"] = figures::hazardDiamonds(sds->pictograms, pen, side);
  addGauges(drawings, x, pen);
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

/// What those in one language share besides.
struct Desk {
  Telling telling;
  std::string language;  // of its documents
  typeset::Fonts fonts;
  std::map<std::string, typeset::Drawing> drawings;
};

/// A translation says what it is, under its title.
void addTranslationNote(markup::Document& document, const Telling& t) {
  const model::Language& w = *t.language;
  const std::string note = w("translation.note", {{"language", w("languages." + w.id)},
                                                  {"ruling", w("languages." + rulingLanguage(t.x))}});
  auto& blocks = document.blocks;
  if (blocks.size() > 1) {
    auto* lede = std::get_if<markup::Paragraph>(&blocks[1].node);
    if (lede != nullptr && !lede->text.empty() && lede->text[0].style == markup::Inline::Style::Emphasis) {
      lede->text.push_back({markup::Inline::Style::Emphasis, "\n" + note, "", ""});
      return;
    }
  }
  blocks.insert(blocks.begin() + (blocks.empty() ? 0 : 1),
                {markup::Paragraph{{{markup::Inline::Style::Emphasis, note, "", ""}}}, 1});
}

/// The pages of one document; nothing when its template has mistakes.
std::optional<typeset::Document> setDocument(const DocumentKind& kind, const Studio& studio, const Desk& desk,
                                             base::Diagnostics& messages) {
  const auto& t = desk.telling;
  const auto& c = t.c;
  const auto& main = t.templates->at(kind.name);
  base::Diagnostics own;
  const auto sheet =
      studio.shipped.shelves->sheets.take(main.file, [&] { return sheets::makeSheet(main, *t.templates); });
  const auto facts = factsOf(kind.name, t.computed());
  const std::size_t mostPages =
      kind.reader == Reader::CrewByDay ? sheets::pagesOfDays(facts) : kind.mostPages;
  const auto filled = sheets::fillWithLines(*sheet, facts, own);
  auto blocks = own.ok() ? markup::readMarkdown(filled.text, filled.lines, own) : markup::Document{};
  const bool isTranslation = t.language->id != rulingLanguage(t.x);
  if (isTranslation) addTranslationNote(blocks, t);
  std::optional<typeset::Document> pages;
  const auto set = [&](const model::Theme& theme, base::Diagnostics& told) {
    return typeset::layOut({.blocks = blocks,
                            .theme = theme,
                            .fonts = desk.fonts,
                            .paper = studio.paper,
                            .furniture = furnitureOf(kind, t, studio.logo),
                            .drawings = desk.drawings,
                            .title = (*t.language)("documents." + kind.name) + " " + c.job.ref,
                            .subject = sheets::titleOf(t.computed()),
                            .author = c.brand.name,
                            .language = desk.language,
                            .date = base::isoDate(c.job.quoted),
                            .template_ = main.file,
                            .mostPages = mostPages},
                           told);
  };
  if (own.ok()) {
    pages = set(kind.reader == Reader::Office ? dense(c.theme) : c.theme, own);
    if (mostPages > 0 && pages->pages.size() > mostPages) {
      base::Diagnostics told;
      auto closer = set(close(c.theme), told);
      if (closer.pages.size() < pages->pages.size()) pages = std::move(closer);
    }
    if (!own.ok()) pages.reset();
  }
  messages.add(own);
  return pages;
}

/// The desk for a language, kept in 'desks'; nothing when it cannot be told in it. A mistake is told once.
const Desk* deskFor(const std::string& language, std::map<std::string, std::optional<Desk>>& desks,
                    const Studio& studio, const Computation& x, base::Diagnostics& messages) {
  const auto [found, isNew] = desks.try_emplace(language);
  if (isNew) {
    if (auto telling = tell(x, studio.shipped, language, messages)) {
      const bool isTranslation = telling->language->id != rulingLanguage(x);
      Desk& desk = found->second.emplace(
          Desk{std::move(*telling), isTranslation ? language : x.c.region->language, studio.fonts, {}});
      desk.fonts.language = desk.language;
      desk.drawings = drawingsOf(desk.telling.computed(), studio, desk.fonts);
    }
  }
  return found->second ? &*found->second : nullptr;
}

/// Where the languages are asked for.
base::SourcePos languagesPos(const Computation& x, const Choices& choices) {
  return choices.languages.empty() ? x.c.job.languagesPos : base::SourcePos{"--language"};
}

void refuseTemplate(const std::string& document, const std::string& language, const Studio& studio,
                    const Computation& x, const Choices& choices, base::Diagnostics& messages) {
  std::string known;
  for (const auto& id : studio.shipped.content.languages) {
    if (!findLook(studio.shipped.looks, id + "/" + document + ".md").empty())
      known += (known.empty() ? "" : ", ") + id;
  }
  messages.error(languagesPos(x, choices), "languages." + document,
                 "there is no template of '" + document + "' in '" + language + "'",
                 "there are: " + known + "; leave the document out with '--only', or write templates/" +
                     language + "/" + document + ".md");
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

sheets::Facts factsOf(const std::string& document, const sheets::Computed& x) {
  switch (kindOf(document).reader) {
    case Reader::Customer:
      return sheets::customerFacts(x);
    case Reader::Crew:
      return sheets::crewFacts(x);
    case Reader::CrewByDay:
      return sheets::dayFacts(x);
    case Reader::Office:
      return sheets::officeFacts(x);
  }
  return {};
}

std::vector<SetDocument> setDocuments(const Computation& x, const Shipped& shipped, const Choices& choices,
                                      const std::vector<std::string>& only, base::Diagnostics& messages) {
  typeset::Fonts fonts;
  try {
    fonts = fontsOf(x.c.theme, shipped);
  } catch (const std::runtime_error& e) {
    tellOfFont(x.c.theme, e.what(), messages);
    return {};
  }
  const auto isWanted = [&](const std::string& name) {
    return only.empty() || std::find(only.begin(), only.end(), name) != only.end();
  };
  const Studio studio{shipped, fonts, logoOf(x.c.brand, shipped, messages),
                      choices.paper.value_or(x.c.region->paper), isWanted("dayplan")};
  std::map<std::string, std::optional<Desk>> desks;
  std::vector<SetDocument> documents;
  std::string unruled;  // documents that come in translation only
  for (const auto& kind : kinds) {
    // A job without a coat has nothing to care for afterwards.
    if (!isWanted(kind.name) || (kind.name == "aftercare" && x.estimate.coats.empty())) continue;
    const auto languages = languagesOf(kind.name, x, choices);
    if (std::find(languages.begin(), languages.end(), rulingLanguage(x)) == languages.end())
      unruled += (unruled.empty() ? "" : ", ") + kind.name;
    for (const auto& language : languages) {
      const Desk* desk = deskFor(language, desks, studio, x, messages);
      if (desk == nullptr) continue;
      if (!desk->telling.templates->contains(kind.name)) {
        refuseTemplate(kind.name, language, studio, x, choices, messages);
        continue;
      }
      const std::string name = kind.name + (language == languages.front() ? "" : "-" + language);
      if (auto pages = setDocument(kind, studio, *desk, messages))
        documents.push_back({name, std::move(*pages)});
    }
  }
  if (!unruled.empty())
    messages.warn(languagesPos(x, choices), "languages",
                  "only a translation is made of " + unruled + "; the sheet that rules is not among them",
                  "name '" + rulingLanguage(x) + "' too");
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
    tellOfFont(x.c.theme, e.what(), messages);
  }
  return files;
}

}  // namespace app
