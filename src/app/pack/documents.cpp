#include "app/pack/documents.h"

#include "app/pack/drawings.h"
#include "app/pack/firm_look.h"
#include "base/joined.h"
#include "markup/plain_text.h"
#include "markup/read.h"
#include "pdf/write.h"
#include "sheets/facts/facts_common.h"
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
  std::vector<drawings::Photograph> photos;
  model::Paper paper;
};

/// What those in one language share besides.
struct LanguageContext {
  std::shared_ptr<const model::JobResult> job;
  const Templates& templates;
  typeset::Fonts fonts;  // with the language of its documents
  typeset::Drawings drawings;
  sheets::FactsByReader facts;
};

/// A translation says what it is, under its title; on a leaf that is read standing up, at its foot.
void addTranslationNote(markup::Document& document, const model::JobResult& x, bool isAtFoot) {
  const base::Language& w = x.language;
  const std::string note = w("translation.note", {{"language", w("languages." + w.id)},
                                                  {"ruling", w("languages." + rulingLanguage(x))}});
  auto& blocks = document.blocks;
  if (!isAtFoot && blocks.size() > 1) {
    auto* lede = std::get_if<markup::Paragraph>(&blocks[1].node);
    if (lede != nullptr && !lede->text.empty() && lede->text[0].style == markup::Inline::Style::Emphasis) {
      lede->text.push_back({markup::Inline::Style::Emphasis, "\n" + note, "", ""});
      return;
    }
  }
  const int line = isAtFoot && !blocks.empty() ? blocks.back().line : 1;
  blocks.insert(isAtFoot ? blocks.end() : blocks.begin() + (blocks.empty() ? 0 : 1),
                {markup::Paragraph{{{markup::Inline::Style::Emphasis, note, "", ""}}}, line});
}

typeset::FitPolicy fitOf(const model::DocumentKind& kind, const model::Job& job) {
  // More areas take a page more, as do choices, years and photographs on the quote.
  constexpr std::size_t manyAreas = 6;
  const bool saysMore = kind.reader == model::Reader::Customer &&
                        (!job.choices.empty() || job.price.asksTenYears || !job.photos.empty());
  const bool isLong = job.areas.size() > manyAreas || saysMore;
  const std::size_t more = kind.mostPages > 0 && isLong ? kind.morePages : 0;
  return {.mostPages = kind.mostPages + more,
          .mostPagesEach = kind.isByDay ? std::size_t{2} : 0,  // a day is one leaf, and one side where it can
          .bestPagesEach = kind.isByDay ? std::size_t{1} : 0,
          .compactTables = kind.hasSmallTables,
          .largeReading = kind.hasLargeReading,
          .keepsType = kind.hasLetterhead || kind.hasSmallTables};
}

struct FilledSheet {
  markup::Document blocks;
  std::vector<base::SourcePos> lines;  // of its text, in the templates
};

/// A template with these facts; nothing, and messages, when it has mistakes.
std::optional<FilledSheet> fillSheet(const sheets::Template& main, const sheets::Facts& facts,
                                     const sheets::FactsByReader& all, const Templates& templates,
                                     const Shipped& shipped, base::Diagnostics& messages) {
  const auto sheet = shipped.caches->sheets.getOrMake(
      main.file, [&] { return sheets::compileTemplate(main, templates.texts); });
  auto filled = sheets::fillWithLines(*sheet, facts, messages,
                                      [&](const std::string& word) { return sheets::readersOf(word, all); });
  if (!messages.ok()) return {};
  auto blocks = markup::readMarkdown(filled.text, filled.lines, messages);
  return messages.ok() ? std::optional(FilledSheet{std::move(blocks), std::move(filled.lines)})
                       : std::nullopt;
}

/// The pages of one document with these facts; nothing when its template has mistakes.
std::optional<typeset::Document> setWith(const sheets::Facts& facts, const std::string& name,
                                         const PackContext& studio, const LanguageContext& desk,
                                         base::Diagnostics& messages) {
  const auto& x = *desk.job;
  const auto& c = x.c;
  const auto& templates = desk.templates;
  const auto& [kind, mistakes] = templates.documents.at(name);
  base::Diagnostics own = mistakes;
  auto filled = fillSheet(templates.texts.at(name), facts, desk.facts, templates, studio.shipped, own);
  messages.add(own);
  if (!filled) return std::nullopt;
  auto& blocks = filled->blocks;
  const bool isTranslation = x.language.id != rulingLanguage(x);
  if (isTranslation) addTranslationNote(blocks, x, kind.hasLargeReading);
  base::Diagnostics told;
  auto pages = typeset::layOut({.blocks = blocks,
                                .theme = c.theme,
                                .fonts = desk.fonts,
                                .paper = studio.paper,
                                .furniture = furnitureOf(kind, x, studio.logo),
                                .drawings = desk.drawings,
                                .title = kind.heading + " " + c.job.ref,
                                .subject = sheets::titleOf(x),
                                .author = c.firm.name,
                                .language = desk.fonts.language,
                                .date = base::isoDate(c.job.quoted),
                                .lines = filled->lines,
                                .fit = fitOf(kind, c.job)},
                               told);
  messages.add(told);
  if (!told.ok()) return std::nullopt;
  if (kind.reader == model::Reader::Crew) colourForCrew(pages, c.theme);
  return pages;
}

/// A crew's document that is longer than its pages says less, each side as little less as it has to; the risk
/// assessment says it all.
std::optional<typeset::Document> setDocument(const std::string& name, const PackContext& studio,
                                             const LanguageContext& desk, base::Diagnostics& messages) {
  const auto& kind = desk.templates.documents.at(name).kind;
  const auto& facts = desk.facts.at(kind.reader);
  base::Diagnostics told;
  auto pages = setWith(facts, name, studio, desk, told);
  const bool mayLeaveOut = kind.mostPages > 0 && kind.reader == model::Reader::Crew;
  const auto isLong = [&] { return pages && pages->pages.size() > kind.mostPages; };
  const auto setAgain = [&](sheets::LeafRoom room) {
    told = {};
    pages = setWith(sheets::withRoom(facts, *desk.job, room), name, studio, desk, told);
    return !isLong();
  };
  using sheets::Room;
  constexpr Room rooms[] = {Room::Full, Room::Fewer, Room::Few, Room::Fewest, Room::Least};
  if (mayLeaveOut && isLong()) {
    sheets::LeafRoom room = {Room::Full, Room::Least};
    for (const Room front : rooms) {
      room.front = front;
      if (setAgain(room)) break;
    }
    for (const Room back : rooms) {
      room.back = back;
      if (setAgain(room)) break;
    }
  }
  messages.add(told);
  return pages;
}

/// The job in one look.
struct Look {
  const model::JobResult& job;
  PackContext studio;
  std::map<std::string, std::optional<LanguageContext>> desks;  // by language
  std::shared_ptr<const model::JobResult> own = {};             // where the look is not the job's
};

bool isSmall(const model::Theme& theme) {
  constexpr model::Millipoint reading = 10'500;
  return theme.styles.at("body").size < reading;
}

/// Nothing, and a message, where one of them cannot be used.
std::optional<typeset::Fonts> usableFonts(const model::Theme& theme, const Shipped& shipped,
                                          base::Diagnostics& messages) {
  try {
    return fontsOf(theme, shipped);
  } catch (const std::runtime_error& e) {
    tellOfFont(theme, e.what(), messages);
    return {};
  }
}

/// A look made for small type has letters too wide for large: what is read standing up is set in the usual
/// one. Nothing, and messages, where that cannot be used.
std::optional<Look> forStanding(const Look& look, base::Diagnostics& messages) {
  base::Diagnostics told;
  auto job = std::make_shared<model::JobResult>(look.job);
  job->c.theme = usualTheme(look.studio.shipped, told);
  PackContext studio = look.studio;
  auto fonts = told.ok() ? usableFonts(job->c.theme, studio.shipped, told) : std::nullopt;
  messages.add(told);
  if (!fonts) return {};
  studio.fonts = std::move(*fonts);
  return Look{*job, std::move(studio), {}, job};
}

/// The desk for a language; nothing when it cannot be told in it. A mistake is told once.
const LanguageContext* deskFor(const std::string& language, Look& look, base::Diagnostics& messages) {
  const auto& studio = look.studio;
  const auto& x = look.job;
  const auto [found, isNew] = look.desks.try_emplace(language);
  if (isNew) {
    if (auto job = localized(x, studio.shipped, language, messages)) {
      LanguageContext& desk = found->second.emplace(
          LanguageContext{std::move(job), studio.shipped.templates.at(language), studio.fonts, {}, {}});
      desk.fonts.language = language != rulingLanguage(x) ? language : x.c.region->language;
      desk.facts = sheets::makeFacts(*desk.job);
      desk.drawings = drawingsOf(*desk.job, studio.shipped, desk.fonts, studio.photos);
    }
  }
  return found->second ? &*found->second : nullptr;
}

/// Where the languages are asked for.
base::SourcePos languagesPos(const model::JobResult& x, const Choices& choices) {
  return choices.languages.empty() ? base::placeOf(x.c.job.places, "languages")
                                   : base::SourcePos{"--language"};
}

constexpr auto noInvoice = "the job does not say on which day an invoice goes out";
constexpr auto dateIt = "write the days, one for each stage of the price so far: invoices: [2027-03-15]";

void refuseTemplate(const std::string& document, const std::string& language, const PackContext& studio,
                    const model::JobResult& x, const Choices& choices, base::Diagnostics& messages) {
  std::vector<std::string> known;
  for (const auto& id : studio.shipped.content.languages) {
    if (!findLook(studio.shipped.looks.templates, id + "/" + document + ".md").empty()) known.push_back(id);
  }
  messages.error(languagesPos(x, choices), "languages." + document,
                 "there is no template of '" + document + "' in '" + language + "'",
                 "there are: " + base::joined(known) +
                     "; leave the document out with '--only', or write templates/" + language + "/" +
                     document + ".md in the firm's folder");
}

}  // namespace

std::vector<SetDocument> setDocuments(const model::JobResult& x, const Shipped& shipped,
                                      const Choices& choices, const std::vector<std::string>& only,
                                      base::Diagnostics& messages) {
  const auto fonts = usableFonts(x.c.theme, shipped, messages);
  if (!fonts) return {};
  std::vector<std::string> wanted;
  for (const auto& name : only.empty() ? shipped.packed : shipped.content.documents) {
    const auto kind = kindOf(name, shipped);
    const bool isAsked = only.empty() || std::find(only.begin(), only.end(), name) != only.end();
    if (!isAsked || (kind->needs == model::DocumentNeeds::Coats && x.estimate.coats.empty())) continue;
    if (kind->needs == model::DocumentNeeds::Invoices && x.c.job.invoices.empty()) {
      if (!only.empty()) messages.error(base::placeOf(x.c.job.places, ""), "invoices", noInvoice, dateIt);
      continue;
    }
    wanted.push_back(name);
  }
  Look own{x,
           {shipped, *fonts, logoOf(x.c.firm, shipped, messages), photographsOf(x.c.job, messages),
            choices.paper.value_or(x.c.region->paper)},
           {}};
  std::optional<Look> standing;
  std::vector<SetDocument> documents;
  std::string unruled;  // documents that come in translation only
  for (const auto& document : wanted) {
    const auto languages = languagesOf(document, x, choices);
    if (std::find(languages.begin(), languages.end(), rulingLanguage(x)) == languages.end())
      unruled += (unruled.empty() ? "" : ", ") + document;
    const bool isStanding = kindOf(document, shipped)->hasLargeReading && isSmall(x.c.theme);
    if (isStanding && !standing) {
      if (auto look = forStanding(own, messages)) standing.emplace(std::move(*look));
      else return {};
    }
    Look& look = isStanding ? *standing : own;
    for (const auto& language : languages) {
      const LanguageContext* desk = deskFor(language, look, messages);
      if (desk == nullptr) continue;
      if (!desk->templates.documents.contains(document)) {
        refuseTemplate(document, language, look.studio, x, choices, messages);
        continue;
      }
      const std::string name = document + (language == languages.front() ? "" : "-" + language);
      if (auto pages = setDocument(document, look.studio, *desk, messages))
        documents.push_back({name, std::move(*pages)});
    }
  }
  if (!unruled.empty())
    messages.warn(languagesPos(x, choices), "languages",
                  "only a translation is made of " + unruled + "; the sheet that rules is not among them",
                  "name '" + rulingLanguage(x) + "' too");
  return documents;
}

std::vector<OutputFile> makeDocuments(const model::JobResult& x, const Shipped& shipped,
                                      const Choices& choices, const std::vector<std::string>& only,
                                      base::Diagnostics& messages) {
  std::vector<OutputFile> files;
  try {
    for (const auto& [name, pages] : setDocuments(x, shipped, choices, only, messages))
      files.push_back({name + ".pdf", pdf::write(pages, choices.variant)});
  } catch (const pdf::UnusableFont& e) {
    tellOfFont(x.c.theme, e.what(), messages);
  }
  return files;
}

std::optional<Letter> makeLetter(const std::string& part, const std::string& document,
                                 const model::JobResult& x, const Shipped& shipped, const Choices& choices,
                                 base::Diagnostics& messages) {
  const auto language = languagesOf(document, x, choices).front();
  const auto job = localized(x, shipped, language, messages);
  if (!job) return {};
  const auto& templates = shipped.templates.at(language);
  const auto main = templates.texts.find(part);
  if (main == templates.texts.end()) {
    messages.error(languagesPos(x, choices), "languages." + document,
                   "there is no template of '" + part + "' in '" + language + "'",
                   "write templates/" + language + "/" + part + ".md in the firm's folder");
    return {};
  }
  const auto facts = sheets::makeFacts(*job);
  base::Diagnostics own;
  const auto filled =
      fillSheet(main->second, facts.at(model::Reader::Customer), facts, templates, shipped, own);
  messages.add(own);
  if (!filled) return {};
  auto text = markup::plainText(filled->blocks);
  if (text.title.empty())
    messages.error({main->second.file, 1, 1}, "", "has no title", "begin it with a line like '# Subject'");
  else if (text.unreadLine > 0)
    messages.error(filled->lines.at(static_cast<std::size_t>(text.unreadLine) - 1), "",
                   "an e-mail is plain text: paragraphs and lists only", "write it in words");
  else return Letter{std::move(text.title), std::move(text.body)};
  return {};
}

}  // namespace app
