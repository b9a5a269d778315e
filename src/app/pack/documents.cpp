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

/// What the templates of any language say of a document; nothing where there are none.
std::optional<model::DocumentKind> kindOf(const std::string& document, const Shipped& shipped) {
  for (const auto& [language, templates] : shipped.templates) {
    const auto found = templates.documents.find(document);
    if (found != templates.documents.end()) return found->second.kind;
  }
  return {};
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
  sheets::FactsByReader facts;
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

typeset::FitPolicy fitOf(const model::DocumentKind& kind) {
  return {.mostPages = kind.mostPages,
          .mostPagesEach = kind.isByDay ? std::size_t{2} : 0,  // a day is one leaf
          .fillsEvenly = kind.isByDay,
          .compactTables = kind.hasSmallTables,
          .largeReading = kind.hasLargeReading};
}

/// The pages of one document; nothing when its template has mistakes.
std::optional<typeset::Document> setDocument(const std::string& name, const PackContext& studio,
                                             const LanguageContext& desk, base::Diagnostics& messages) {
  const auto& t = desk.telling;
  const auto& c = t.c;
  const auto& main = t.templates->texts.at(name);
  const auto& [kind, mistakes] = t.templates->documents.at(name);
  base::Diagnostics own = mistakes;
  const auto sheet = studio.shipped.shelves->sheets.getOrMake(
      main.file, [&] { return sheets::compileTemplate(main, t.templates->texts); });
  const auto& facts = desk.facts.at(kind.reader);
  const auto filled = sheets::fillWithLines(
      *sheet, facts, own, [&](const std::string& word) { return sheets::readersOf(word, desk.facts); });
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
                                .furniture = furnitureOf(kind, t, studio.logo),
                                .drawings = desk.drawings,
                                .title = kind.heading + " " + c.job.ref,
                                .subject = sheets::titleOf(t.computed()),
                                .author = c.brand.name,
                                .language = desk.language,
                                .date = base::isoDate(c.job.quoted),
                                .lines = filled.lines,
                                .fit = fitOf(kind)},
                               told);
  messages.add(told);
  if (!told.ok()) return std::nullopt;
  if (kind.reader == model::Reader::Crew) colourForCrew(pages, c.theme);
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
          std::move(*telling), isTranslation ? language : x.c.region->language, studio.fonts, {}, {}});
      desk.facts = sheets::makeFacts(desk.telling.computed());
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

std::vector<SetDocument> setDocuments(const Computation& x, const Shipped& shipped, const Choices& choices,
                                      const std::vector<std::string>& only, base::Diagnostics& messages) {
  typeset::Fonts fonts;
  try {
    fonts = fontsOf(x.c.theme, shipped);
  } catch (const std::runtime_error& e) {
    tellOfFont(x.c.theme, e.what(), messages);
    return {};
  }
  std::vector<std::string> wanted;
  for (const auto& name : only.empty() ? shipped.packed : shipped.content.documents) {
    const auto kind = kindOf(name, shipped);
    const bool isAsked = only.empty() || std::find(only.begin(), only.end(), name) != only.end();
    if (!isAsked || (kind->needsCoats && x.estimate.coats.empty())) continue;
    wanted.push_back(name);
  }
  const PackContext studio{shipped, fonts, logoOf(x.c.brand, shipped, messages),
                           choices.paper.value_or(x.c.region->paper)};
  std::map<std::string, std::optional<LanguageContext>> desks;
  std::vector<SetDocument> documents;
  std::string unruled;  // documents that come in translation only
  for (const auto& document : wanted) {
    const auto languages = languagesOf(document, x, choices);
    if (std::find(languages.begin(), languages.end(), rulingLanguage(x)) == languages.end())
      unruled += (unruled.empty() ? "" : ", ") + document;
    for (const auto& language : languages) {
      const LanguageContext* desk = deskFor(language, desks, studio, x, messages);
      if (desk == nullptr) continue;
      if (!desk->telling.templates->documents.contains(document)) {
        refuseTemplate(document, language, studio, x, choices, messages);
        continue;
      }
      const std::string name = document + (language == languages.front() ? "" : "-" + language);
      if (auto pages = setDocument(document, studio, *desk, messages))
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
