#include "sheets/facts/facts_quote.h"

#include "model/lookup.h"
#include "sheets/facts/facts_common.h"
#include "sheets/facts/facts_decks.h"
#include "sheets/facts/facts_price.h"
#include "sheets/words/addresses.h"

#include <algorithm>

namespace sheets {
namespace {

using Kind = model::LineKind;

bool hasLine(const model::JobResult& x, Kind kind, std::optional<std::size_t> deck = {},
             std::optional<model::Work> work = {}) {
  return std::any_of(x.price.lines.begin(), x.price.lines.end(), [&](const model::PriceLine& line) {
    return line.kind == kind && line.deck == deck && line.work == work;
  });
}

/// What an area is, what is done to it, and its price.
FactList areaFacts(const model::JobResult& x, const Formatter& w) {
  FactList list = deckFacts(x, w);
  const PriceParts parts = priceParts(x);
  const auto passes = static_cast<int>(x.c.job.sanding.size());
  for (std::size_t i = 0; i < list.size(); ++i) {
    const auto has = [&](model::Work work) { return Fact::yes(hasLine(x, Kind::Work, i, work)); };
    const auto coats = std::count_if(x.estimate.coats.begin(), x.estimate.coats.end(),
                                     [&](const auto& coat) { return coat.deck == i; });
    const auto& fixings = x.c.job.areas[i].fixings;
    Facts& f = list[i];
    f.emplace_back("wash", has(model::Work::Wash));
    f.emplace_back("fix", has(model::Work::Fix));
    f.emplace_back("nails", Fact::yes(fixings && fixings->kind == "nails"));
    f.emplace_back("sand", has(model::Work::Sand));
    f.emplace_back("passes", w.times(passes));
    f.emplace_back("coat_words", coats == 0 ? "" : w.counted("coats.count", coats));
    f.emplace_back("amount", w.money(parts.areas[i].amount));
  }
  return list;
}

Facts trustFacts(const model::JobResult& x, const Formatter& w) {
  const auto& b = x.c.firm;
  std::vector<std::string> others;
  for (const auto& name : x.c.job.crew.names) {
    if (name != x.c.job.crew.leader) others.push_back(name);
  }
  return {{"leader", x.c.job.crew.leader},
          {"others", w.joined(others)},
          {"insurance", b.insurance},
          {"licences", w.joined(b.licences)},
          {"guarantee", b.guarantee}};
}

/// Which choice costs least over ten years, be it ours or not.
std::string leastWords(const model::JobResult& x, const Formatter& w) {
  std::size_t least = 0;
  base::Money most;
  const auto costOf = [&](std::size_t i) { return model::choiceOf(x, i).tenYears->presentValue; };
  for (std::size_t i = 0; i < x.c.job.choices.size(); ++i) {
    if (costOf(i) < costOf(least)) least = i;
    most = std::max(most, costOf(i));
  }
  const base::Money saved = most - costOf(least);
  if (saved <= base::share(most, base::Share::whole(3))) return w("choices.alike");
  return w("choices.least", {{"choice", std::to_string(least + 1)}, {"saved", roughMoney(saved, w)}});
}

/// RFC 3986 (2005), 2.1: what is not unreserved is written in hexadecimal.
std::string escaped(const std::string& words) {
  constexpr char digits[] = "0123456789ABCDEF";
  const std::string unreserved = "-._~";
  std::string s;
  for (const char c : words) {
    const auto byte = static_cast<unsigned char>(c);
    const bool isPlain = (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') ||
                         unreserved.find(c) != std::string::npos;
    if (isPlain) s += c;
    else s += {'%', digits[byte >> 4], digits[byte & 15]};
  }
  return s;
}

bool isChoiceOpen(const model::Job& job) { return !job.choices.empty() && !job.isChosen; }

/// What the customer ticks on the quote: 'choice', 'colour', 'options'.
std::vector<std::string> ticked(const model::JobResult& x, const Formatter& w) {
  std::vector<std::string> all;
  if (isChoiceOpen(x.c.job)) all.push_back(w("accept.choice"));
  if (model::isColourOpen(x.c)) all.push_back(w("say.colour"));
  if (!x.c.job.price.options.empty()) all.push_back(w("accept.options"));
  return all;
}

}  // namespace

Facts choiceFacts(const model::JobResult& x, const Formatter& w) {
  const auto& job = x.c.job;
  FactList list;
  bool haveLooks = false, leaveOut = false;
  for (std::size_t i = 0; i < job.choices.size(); ++i) {
    const auto& one = model::choiceOf(x, i);
    const auto* visit = model::eventOf(one.plan, model::Moment::Maintenance);
    const bool comesBack = visit != nullptr;
    const auto start = one.plan.days.empty() ? one.c.job.start : one.plan.days.front().date;
    haveLooks = haveLooks || !job.choices[i].looks.empty();
    leaveOut = leaveOut || !job.choices[i].leftOut.empty();
    list.push_back({{"number", std::to_string(i + 1)},
                    {"name", job.choices[i].name},
                    {"looks", job.choices[i].looks},
                    {"left_out", w.joined(job.choices[i].leftOut)},
                    {"is_taken", Fact::yes(job.isChosen && i == job.choice)},
                    {"total", w.signedMoney(one.price.total)},
                    {"days", w.counted("waits.days", static_cast<std::int64_t>(one.plan.days.size()))},
                    {"start", w.shortDate(start)},
                    {"visit", comesBack ? w("glance.month", {{"month", w.month(visit->at.day)},
                                                             {"year", w.year(visit->at.day)}})
                                        : ""},
                    {"sum", one.tenYears ? roughMoney(one.tenYears->sum, w) : ""},
                    {"worth", one.tenYears ? roughMoney(one.tenYears->presentValue, w) : ""}});
  }
  const bool isAsked = !list.empty();
  return {{"asked", Fact::yes(isAsked)},
          {"open", Fact::yes(isAsked && !job.isChosen)},
          {"number", isAsked ? std::to_string(job.choice + 1) : ""},
          {"name", isAsked ? job.choices[job.choice].name : ""},
          {"have_looks", Fact::yes(haveLooks)},
          {"leave_out", Fact::yes(leaveOut)},
          {"least", isAsked && x.tenYears ? leastWords(x, w) : ""},
          {"list", std::move(list)}};
}

PriceParts priceParts(const model::JobResult& x) {
  PriceParts parts;
  parts.areas.resize(x.c.job.areas.size());
  const auto partOf = [&](const model::PriceLine& line) -> PriceParts::Part& {
    switch (line.kind) {
      case Kind::Work:
        return line.deck ? parts.areas.at(*line.deck) : parts.site;
      case Kind::Product:
      case Kind::Consumables:
        return parts.materials;
      case Kind::Preparation:
      case Kind::Travel:
      case Kind::Disposal:
        return parts.site;
    }
    return parts.site;
  };
  for (const auto& line : x.price.lines) {
    PriceParts::Part& part = partOf(line);
    part.amount += line.amount;
    part.cost += line.cost;
  }
  return parts;
}

void addOffer(Facts& facts, const model::JobResult& x, const Formatter& w) {
  const auto show = x.c.job.price.show.value_or(x.c.firm.priceShow);
  const PriceParts parts = priceParts(x);
  const auto is = [&](model::PriceShow s) { return Fact::yes(show == s); };
  facts.emplace_back("offer", Facts{{"by_areas", is(model::PriceShow::Areas)},
                                    {"by_work", is(model::PriceShow::Work)},
                                    {"is_lump", is(model::PriceShow::Lump)},
                                    {"areas", areaFacts(x, w)},
                                    {"has_materials", Fact::yes(parts.materials.amount > base::Money{})},
                                    {"materials", w.money(parts.materials.amount)},
                                    {"has_product", Fact::yes(hasLine(x, Kind::Product))},
                                    {"has_consumables", Fact::yes(hasLine(x, Kind::Consumables))},
                                    {"consumables", materialWords(x, w)},
                                    {"has_site", Fact::yes(parts.site.amount > base::Money{})},
                                    {"site", w.money(parts.site.amount)},
                                    {"has_preparation", Fact::yes(hasLine(x, Kind::Preparation))},
                                    {"has_travel", Fact::yes(hasLine(x, Kind::Travel))},
                                    {"has_disposal", Fact::yes(hasLine(x, Kind::Disposal))}});
  facts.emplace_back("trust", trustFacts(x, w));
  const auto& b = x.c.firm;
  facts.emplace_back("payment", Facts{{"days", b.paymentDays ? w.counted("waits.days", *b.paymentDays) : ""},
                                      {"bank", oneLine(b.bank, w)}});
  facts.emplace_back("accept", Facts{{"link", acceptanceMail(x)}, {"ticked", w.joined(ticked(x, w))}});
  facts.emplace_back("is_colour_open", Fact::yes(model::isColourOpen(x.c)));
  facts.emplace_back("has_swatch", Fact::yes(model::screenColour(x.c) != nullptr));
  facts.emplace_back("has_photos", Fact::yes(!x.c.job.photos.empty()));
}

std::string acceptanceMail(const model::JobResult& x) {
  const Formatter w(*x.c.region, x.language);
  std::vector<std::string> answers = ticked(x, w);
  answers.push_back(w("accept.name"));
  const base::Values values{{"ref", x.c.job.ref},
                            {"total", w.signedMoney(x.price.total)},
                            {"answers", capitalised(w.joined(answers))}};
  // Short, so that the modules of the code stay large enough for any printer and telephone.
  return mailAddress(x.c.firm.email) + "?subject=" + escaped(w("accept.subject", values)) +
         "&body=" + escaped(w(isChoiceOpen(x.c.job) ? "accept.body_choice" : "accept.body", values));
}

}  // namespace sheets
