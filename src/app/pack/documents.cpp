#include "app/pack/documents.h"

#include "app/pack/dense.h"
#include "app/pack/drawings.h"
#include "app/pack/firm_look.h"
#include "app/pack/recolour.h"
#include "markup/read.h"
#include "pdf/write.h"
#include "sheets/facts/make_facts.h"
#include "sheets/template/fill.h"
#include "sheets/words/formatter.h"
#include "typeset/layout.h"

#include <algorithm>
#include <functional>

namespace app {
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

bool isKey(const markup::Block& block) {
  const auto* figure = std::get_if<markup::Figure>(&block.node);
  return figure != nullptr && figure->name == "key";
}

const DocumentKind& kindOf(const std::string& name) {
  for (const auto& kind : kinds) {
    if (kind.name == name) return kind;
  }
  throw std::logic_error("internal error: unknown document '" + name + "'");
}

/// What all documents of one pack share.
struct PackContext {
  const Shipped& shipped;
  typeset::Fonts fonts;
  std::shared_ptr<const typeset::Image> logo;
  model::Paper paper;
  bool hasDays;  // a day plan is among them
};

/// What those in one language share besides.
struct LanguageContext {
  Telling telling;
  std::string language;  // of its documents
  typeset::Fonts fonts;
  Drawings drawings;
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

/// One more sheet of paper for less than half a page.
bool needsHalfASheet(const typeset::Document& document) {
  if (document.pages.size() < 3 || document.pages.size() % 2 == 0) return false;
  const typeset::Page& last = document.pages.back();
  typeset::Dim lowest;
  for (const typeset::Item& item : last.items)
    if (const auto* run = std::get_if<typeset::TextRun>(&item.what); run && item.tag != typeset::artifact)
      lowest = std::max(lowest, run->baseline.y);
  return lowest * 2 < last.size.h;
}

/// A document laid out, and what there was to say about it.
struct Layout {
  typeset::Document pages;
  base::Diagnostics told;
};

/// Lays a document out in a look, with these drawings.
using Setting = std::function<Layout(const model::Theme&, const Drawings&)>;

/// The small plan of the decks gives way where the pages are too many: it shrinks, then it is left out.
Layout setWithKey(markup::Document& blocks, const model::Theme& look, const LanguageContext& desk,
                  const drawings::Pen& pen, std::size_t mostPages, const Setting& set) {
  const auto fits = [&](const Layout& layout) { return layout.pages.pages.size() <= mostPages; };
  const auto& largest = desk.drawings.at("key");
  if (!largest.items.empty()) {
    auto layout = set(look, desk.drawings);
    if (fits(layout)) return layout;
    Drawings drawings = desk.drawings;
    typeset::Dim before = largest.size.h;
    for (const typeset::Dim height : smallerKeys) {
      auto key = keyOf(desk.telling.computed(), pen, height);
      if (key.items.empty()) break;
      if (key.size.h == before) continue;
      before = key.size.h;
      drawings["key"] = std::move(key);
      layout = set(look, drawings);
      if (fits(layout)) return layout;
    }
  }
  markup::Document whole = blocks;
  std::erase_if(blocks.blocks, isKey);
  auto layout = set(look, desk.drawings);
  if (!fits(layout)) blocks = std::move(whole);  // a closer look may have room for it
  return layout;
}

/// The pages of one document; nothing when its template has mistakes.
std::optional<typeset::Document> setDocument(const DocumentKind& kind, const PackContext& studio,
                                             const LanguageContext& desk, base::Diagnostics& messages) {
  const auto& t = desk.telling;
  const auto& c = t.c;
  const auto& main = t.templates->at(kind.name);
  base::Diagnostics own;
  const auto sheet = studio.shipped.shelves->sheets.getOrMake(
      main.file, [&] { return sheets::compileTemplate(main, *t.templates); });
  const auto facts = factsOf(kind.name, t.computed());
  const std::size_t mostPages =
      kind.reader == Reader::CrewByDay ? sheets::pagesOfDays(facts) : kind.mostPages;
  const auto filled = sheets::fillWithLines(*sheet, facts, own);
  auto blocks = own.ok() ? markup::readMarkdown(filled.text, filled.lines, own) : markup::Document{};
  messages.add(own);
  if (!own.ok()) return std::nullopt;
  const bool isTranslation = t.language->id != rulingLanguage(t.x);
  if (isTranslation) addTranslationNote(blocks, t);
  const Setting set = [&](const model::Theme& theme, const Drawings& drawings) {
    Layout layout;
    layout.pages = typeset::layOut({.blocks = blocks,
                                    .theme = theme,
                                    .fonts = desk.fonts,
                                    .paper = studio.paper,
                                    .furniture = furnitureOf(kind.name, kind.hasLetterhead, t, studio.logo),
                                    .drawings = drawings,
                                    .title = (*t.language)("documents." + kind.name) + " " + c.job.ref,
                                    .subject = sheets::titleOf(t.computed()),
                                    .author = c.brand.name,
                                    .language = desk.language,
                                    .date = base::isoDate(c.job.quoted),
                                    .lines = filled.lines,
                                    .mostPages = mostPages},
                                   layout.told);
    return layout;
  };
  const bool mayShrink = mostPages > 0 && std::any_of(blocks.blocks.begin(), blocks.blocks.end(), isKey);
  const auto setIn = [&](const model::Theme& look) {
    if (!mayShrink) return set(look, desk.drawings);
    const auto pen = penFor(t.computed(), studio.shipped, desk.fonts);
    return setWithKey(blocks, look, desk, pen, mostPages, set);
  };
  auto layout = setIn(kind.reader == Reader::Office ? dense(c.theme) : c.theme);
  const bool isLong = mostPages > 0 && layout.pages.pages.size() > mostPages;
  if (isLong || (mostPages > 0 && needsHalfASheet(layout.pages))) {
    constexpr int toKeepTheLimit = 12, toSavePaper = 8;  // lines that are read stay further apart
    auto closer = setIn(close(c.theme, isLong ? toKeepTheLimit : toSavePaper));
    // What there is to say of the wider look is said: it is the one that was asked for.
    if (closer.pages.pages.size() < layout.pages.pages.size()) layout.pages = std::move(closer.pages);
  }
  messages.add(layout.told);
  if (!layout.told.ok()) return std::nullopt;
  if (kind.reader == Reader::Crew || kind.reader == Reader::CrewByDay) colourForCrew(layout.pages, c.theme);
  return std::move(layout.pages);
}

/// The desk for a language, kept in 'desks'; nothing when it cannot be told in it. A mistake is told once.
const LanguageContext* deskFor(const std::string& language,
                               std::map<std::string, std::optional<LanguageContext>>& desks,
                               const PackContext& studio, const Computation& x, base::Diagnostics& messages) {
  const auto [found, isNew] = desks.try_emplace(language);
  if (isNew) {
    if (auto telling = tell(x, studio.shipped, language, messages)) {
      const bool isTranslation = telling->language->id != rulingLanguage(x);
      LanguageContext& desk = found->second.emplace(LanguageContext{
          std::move(*telling), isTranslation ? language : x.c.region->language, studio.fonts, {}});
      desk.fonts.language = desk.language;
      desk.drawings = drawingsOf(desk.telling.computed(), studio.shipped, desk.fonts,
                                 studio.hasDays ? std::optional(studio.paper) : std::nullopt);
    }
  }
  return found->second ? &*found->second : nullptr;
}

/// Where the languages are asked for.
base::SourcePos languagesPos(const Computation& x, const Choices& choices) {
  return choices.languages.empty() ? base::placeOf(x.c.job.places, "languages")
                                   : base::SourcePos{"--language"};
}

void refuseTemplate(const std::string& document, const std::string& language, const PackContext& studio,
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
  const PackContext studio{shipped, fonts, logoOf(x.c.brand, shipped, messages),
                           choices.paper.value_or(x.c.region->paper), isWanted("dayplan")};
  std::map<std::string, std::optional<LanguageContext>> desks;
  std::vector<SetDocument> documents;
  std::string unruled;  // documents that come in translation only
  for (const auto& kind : kinds) {
    // A job without a coat has nothing to care for afterwards.
    if (!isWanted(kind.name) || (kind.name == "aftercare" && x.estimate.coats.empty())) continue;
    const auto languages = languagesOf(kind.name, x, choices);
    if (std::find(languages.begin(), languages.end(), rulingLanguage(x)) == languages.end())
      unruled += (unruled.empty() ? "" : ", ") + kind.name;
    for (const auto& language : languages) {
      const LanguageContext* desk = deskFor(language, desks, studio, x, messages);
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
                                      const std::vector<std::string>& only, base::Diagnostics& messages) {
  std::vector<OutputFile> files;
  try {
    for (const auto& [name, pages] : setDocuments(x, shipped, choices, only, messages))
      files.push_back({name + ".pdf", pdf::write(pages, choices.variant)});
  } catch (const pdf::UnusableFont& e) {
    tellOfFont(x.c.theme, e.what(), messages);
  }
  return files;
}

}  // namespace app
