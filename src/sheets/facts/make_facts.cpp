#include "sheets/facts/make_facts.h"

#include "model/lookup.h"
#include "sheets/facts/explain.h"
#include "sheets/facts/facts_common.h"
#include "sheets/facts/facts_decks.h"
#include "sheets/facts/facts_price.h"
#include "sheets/facts/facts_records.h"

#include <algorithm>
#include <map>

namespace sheets {
namespace {

std::string deckNames(const model::Job& job, const Formatter& w) {
  constexpr std::size_t mostNamed = 3;
  if (job.areas.size() > mostNamed)
    return w.counted("title.decks", static_cast<std::int64_t>(job.areas.size()));
  std::vector<std::string> names;
  for (const auto& deck : job.areas) names.push_back(deck.name);
  return w.joined(names);
}

/// Rails and screens carry no furniture.
bool isCleared(const model::Deck& deck) {
  return !std::holds_alternative<model::Strip>(deck.shape) &&
         !std::holds_alternative<model::Screen>(deck.shape);
}

/// What is cleared by the evening before the first work on it, decks of one day together.
FactList clearing(const Computed& x, const Formatter& w) {
  std::map<base::Date, std::vector<std::string>> days;
  std::size_t all = 0;
  for (std::size_t i = 0; i < x.c.job.areas.size(); ++i) {
    const auto first =
        std::find_if(x.plan.shifts.begin(), x.plan.shifts.end(), [&](const auto& s) { return s.deck == i; });
    if (first == x.plan.shifts.end() || !isCleared(x.c.job.areas[i])) continue;
    days[first->start.day - std::chrono::days{1}].push_back(deckLetter(i) + "\u00A0" + x.c.job.areas[i].name);
    ++all;
  }
  constexpr std::size_t mostNamed = 3;
  FactList list;
  for (const auto& [day, names] : days) {
    const bool isAll = names.size() == all && all > mostNamed;
    list.push_back({{"by", w.shortDate(day)}, {"decks", isAll ? w("day.all_decks") : w.joined(names)}});
  }
  return list;
}

/// So many days, but none after the day before the start: nobody accepts what has begun.
base::Date lastDayOfPrices(const model::Job& job) {
  const base::Date last = job.quoted + std::chrono::days{job.validDays};
  return job.start > job.quoted ? std::min(last, job.start - std::chrono::days{1}) : last;
}

Facts customerFacts(const Computed& x, const Formatter& w) {
  const auto& job = x.c.job;
  Facts f = commonFacts(x, w);
  std::vector<std::string> block{job.customer.name};
  block.insert(block.end(), job.customer.address.begin(), job.customer.address.end());
  f.emplace_back("customer", Facts{{"name", job.customer.name}, {"block", lines(block)}});
  std::vector<std::string> contact{x.c.brand.phone, x.c.brand.email};
  if (!x.c.brand.contact.empty()) contact.insert(contact.begin(), x.c.brand.contact);
  f.emplace_back("contact_block", lines(contact));
  f.emplace_back("valid_until", w.longDate(lastDayOfPrices(job)));
  f.emplace_back("extra_hour", w.signedMoney(x.c.rates.extraHour));
  f.emplace_back("included", sentences(job.included));
  f.emplace_back("excluded", sentences(job.excluded));
  f.emplace_back("before_we_come", sentences(job.beforeWeCome));
  f.emplace_back("clearing", clearing(x, w));
  const auto& cancellation = x.c.region->cancellation;
  f.emplace_back("cancellation", cancellation.text);
  // What follows the semicolon is a note to the office.
  f.emplace_back("cancellation_source", cancellation.source.substr(0, cancellation.source.find("; ")));
  f.emplace_back("terms", sentences(x.c.brand.terms));
  f.emplace_back("has_terms", Fact::yes(!x.c.brand.terms.empty()));
  f.emplace_back("batches", w.joined(batchesOf(x)));
  f.emplace_back("has_patch", Fact::yes(std::any_of(job.areas.begin(), job.areas.end(), [](const auto& deck) {
                   return deck.testPatch.has_value();
                 })));
  f.emplace_back("aftercare_title",
                 capitalised(w(x.c.product->kind == model::ProductKind::FilmStain ? "title.after_staining"
                                                                                  : "title.after_oiling",
                               {{"decks", deckNames(job, w)}})));
  addLitreTable(f, x, w);
  addLaid(f, x, w);
  addPrice(f, x, w, false);
  return f;
}

}  // namespace

std::string namesOfDecks(const Computed& x) {
  return capitalised(deckNames(x.c.job, Formatter(*x.c.region, x.language)));
}

std::string titleOf(const Computed& x) {
  const auto& job = x.c.job;
  if (!job.title.empty()) return job.title;
  const Formatter w(*x.c.region, x.language);
  std::vector<std::string> done;
  if (model::asksFor(job.work, model::Work::Wash)) done.push_back(w("title.washed"));
  if (model::asksFor(job.work, model::Work::Fix) && !model::asksFor(job.work, model::Work::Sand))
    done.push_back(w("title.fixed"));
  if (model::asksFor(job.work, model::Work::Sand)) done.push_back(w("title.sanded"));
  if (model::asksFor(job.work, model::Work::Oil)) {
    const auto coats = coatCounts(x);
    const bool isStain = x.c.product->kind == model::ProductKind::FilmStain;
    if (coats.most > 1 && coats.fewest == coats.most)
      done.push_back(
          w(isStain ? "title.stained_times" : "title.oiled_times", {{"times", w.times(coats.most)}}));
    else done.push_back(w(isStain ? "title.stained" : "title.oiled"));
  }
  return w("title.job", {{"decks", capitalised(deckNames(job, w))}, {"work", w.joined(done)}});
}

FactsByReader makeFacts(const Computed& x) {
  const Formatter w(*x.c.region, x.language);
  return {{model::Reader::Customer, customerFacts(x, w)},
          {model::Reader::Crew, crewFacts(x, w)},
          {model::Reader::Office, officeFacts(x, w)}};
}

std::string readersOf(const std::string& name, const FactsByReader& facts) {
  std::string readers;
  for (const auto& [reader, known] : facts) {
    if (find(known, name) != nullptr)
      readers += (readers.empty() ? "the " : " and the ") + model::nameOf(reader);
  }
  return readers;
}

}  // namespace sheets
