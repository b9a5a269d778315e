#include "sheets/facts/make_facts.h"

#include "model/lookup.h"
#include "sheets/facts/facts_common.h"
#include "sheets/facts/facts_decks.h"
#include "sheets/facts/facts_invoice.h"
#include "sheets/facts/facts_price.h"
#include "sheets/facts/facts_quote.h"
#include "sheets/facts/facts_records.h"

#include <algorithm>
#include <map>

namespace sheets {
namespace {

/// Rails and screens carry no furniture.
bool isCleared(const model::Deck& deck) {
  return !std::holds_alternative<model::Strip>(deck.shape) &&
         !std::holds_alternative<model::Screen>(deck.shape);
}

/// What is cleared by the evening before the first work on it, decks of one day together.
FactList clearing(const model::JobResult& x, const Formatter& w) {
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

Facts customerFacts(const model::JobResult& x, const Formatter& w) {
  const auto& job = x.c.job;
  Facts f = commonFacts(x, w);
  const std::vector<std::string> block{job.customer.name, oneLine(job.customer.address, w)};
  f.emplace_back("customer", Facts{{"name", job.customer.name}, {"block", lines(block)}});
  const std::vector<std::string> caller =
      x.c.firm.contact.empty() ? std::vector{x.c.firm.phone} : std::vector{x.c.firm.contact, x.c.firm.phone};
  const std::vector<std::string> contact{oneLine(caller, w), x.c.firm.email};
  f.emplace_back("contact_block", lines(contact));
  f.emplace_back("valid_until", w.longDate(model::validUntil(job)));
  f.emplace_back("extra_hour", w.signedMoney(x.c.rates.extraHour));
  f.emplace_back("included", sentences(job.included));
  f.emplace_back("excluded", sentences(job.excluded));
  f.emplace_back("before_we_come", sentences(job.beforeWeCome));
  f.emplace_back("clearing", clearing(x, w));
  const auto& cancellation = x.c.region->cancellation;
  f.emplace_back("cancellation", cancellation.text);
  // What follows the semicolon is a note to the office.
  f.emplace_back("cancellation_source", cancellation.source.substr(0, cancellation.source.find("; ")));
  f.emplace_back("terms", sentences(x.c.firm.terms));
  f.emplace_back("has_terms", Fact::yes(!x.c.firm.terms.empty()));
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
  addVisit(f, x, w);
  f.emplace_back("valid_until_short", w.dayMonth(model::validUntil(job)));
  addPrice(f, x, w, false);
  addOffer(f, x, w);
  f.emplace_back("choices", choiceFacts(x, w));
  addInvoice(f, x, w);
  return f;
}

}  // namespace

FactsByReader makeFacts(const model::JobResult& x) {
  const Formatter w(*x.c.region, x.language);
  return {{model::Reader::Customer, customerFacts(x, w)},
          {model::Reader::Crew, crewFacts(x, w)},
          {model::Reader::Office, officeFacts(x, w)}};
}

Facts withRoom(Facts crew, const model::JobResult& x, LeafRoom room) {
  const Facts leaf = leafFacts(x, Formatter(*x.c.region, x.language), room);
  for (auto& [name, fact] : crew) {
    if (const auto* less = find(leaf, name)) fact = *less;
  }
  return crew;
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
