#include "app/pack/documents.h"

#include "app/pack/drawings.h"
#include "app/pack/firm_look.h"
#include "app/pack/recolour.h"
#include "markup/read.h"
#include "pdf/write.h"
#include "sheets/facts/make_facts.h"
#include "sheets/template/fill.h"
#include "sheets/words/formatter.h"
#include "typeset/pages/layout.h"

#include <algorithm>

namespace app {
namespace {

enum class Reader { Customer, Crew, CrewByDay, Office };

struct DocumentKind {
  std::string name;  // of the template, the file, and its heading among the language's words
  Reader reader;
  bool hasLetterhead;
  typeset::FitPolicy fit = {};
};

const std::vector<DocumentKind> kinds = {
    {"quote", Reader::Customer, true},
    {"aftercare", Reader::Customer, false, {.mostPages = 2}},
    {"safety", Reader::Crew, false, {.mostPages = 3}},
    {"dayplan", Reader::CrewByDay, false, {.mostPagesEach = 2, .fillsEvenly = true}},
    {"orders", Reader::Office, false, {.compactTables = true}},
    {"office", Reader::Office, false, {.compactTables = true}}};

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
};

/// What those in one language share besides.
struct LanguageContext {
  Telling telling;
  std::string language;  // of its documents
  typeset::Fonts fonts;
  typeset::Drawings drawings;
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
std::optional<typeset::Document> setDocument(const DocumentKind& kind, const PackContext& studio,
                                             const LanguageContext& desk, base::Diagnostics& messages) {
  const auto& t = desk.telling;
  const auto& c = t.c;
  const auto& main = t.templates->at(kind.name);
  base::Diagnostics own;
  const auto sheet = studio.shipped.shelves->sheets.getOrMake(
      main.file, [&] { return sheets::compileTemplate(main, *t.templates); });
  const auto facts = factsOf(kind.name, t.computed());
  const auto filled = sheets::fillWithLines(*sheet, facts, own);
  auto blocks = own.ok() ? markup::readMarkdown(filled.text, filled.lines, own) : markup::Document{};
  messages.add(own);
  if (!own.ok()) return std::nullopt;
  const bool isTranslation = t.language->id != rulingLanguage(t.x);
  if (isTranslation) addTranslationNote(blocks, t);
  base::Diagnostics told;
  auto pages = typeset::layOut({.blocks = blocks,
                                .theme = c.theme,
                                .fonts = desk.fonts,
                                .paper = studio.paper,
                                .furniture = furnitureOf(kind.name, kind.hasLetterhead, t, studio.logo),
                                .drawings = desk.drawings,
                                .title = (*t.language)("documents." + kind.name) + " " + c.job.ref,
                                .subject = sheets::titleOf(t.computed()),
                                .author = c.brand.name,
                                .language = desk.language,
                                .date = base::isoDate(c.job.quoted),
                                .lines = filled.lines,
                                .fit = kind.fit},
                               told);
  messages.add(told);
  if (!told.ok()) return std::nullopt;
  if (kind.reader == Reader::Crew || kind.reader == Reader::CrewByDay) colourForCrew(pages, c.theme);
  return pages;
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
      desk.drawings = drawingsOf(desk.telling.computed(), studio.shipped, desk.fonts);
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
                           choices.paper.value_or(x.c.region->paper)};
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
