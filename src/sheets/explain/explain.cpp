#include "sheets/explain/explain.h"

#include "base/match.h"
#include "model/lookup.h"
#include "model/names.h"
#include "model/plain.h"
#include "sheets/words/hours.h"

namespace sheets {
namespace {

using base::Match;

std::string shapeFormula(const model::Shape& shape, const Formatter& w) {
  return std::visit(
      Match{[&](const model::Rectangle& s) { return w.length(s.x) + " × " + w.length(s.y); },
            [&](const model::Polygon& s) {
              return w.counted("explain.shoelace", static_cast<std::int64_t>(s.points.size()));
            },
            [&](const model::Circle& s) { return "π/4 × (" + w.length(s.diameter) + ")²"; },
            [&](const model::Ring& s) {
              return "π/4 × ((" + w.length(s.outer) + ")² − (" + w.length(s.inner) + ")²)";
            },
            [&](const model::Triangle& s) {
              return w("explain.heron", {{"sides", w.joined({w.length(s.a), w.length(s.b), w.length(s.c)})}});
            },
            [&](const model::Stairs& s) {
              return std::to_string(s.steps) + " × " + w.length(s.width) + " × (" + w.size(s.going) + " + " +
                     w.size(s.rise) + ")";
            },
            [&](const model::Strip& s) { return w.length(s.length) + " × " + w.size(s.girth); },
            [&](const model::Screen& s) {
              return w.length(s.width) + " × " + w.length(s.height) + " × " + std::to_string(s.sides) +
                     " × " + w.share(s.solid);
            },
            [&](const model::Measured& s) {
              return w("explain.given", {{"area", w.area(s.area)}});
            }},
      shape);
}

class Teller {
 public:
  explicit Teller(const model::JobResult& x) : x_(x), w_(*x.c.region, x.language) {}

  std::vector<Explained> tell() {
    for (std::size_t i = 0; i < x_.c.job.areas.size(); ++i) deck(i);
    litres();
    hours();
    dates();
    price();
    tenYears();
    return std::move(list_);
  }

 private:
  /// 'name' is a word of "explain.names.".
  void say(const std::string& name, const std::string& formula, const std::string& value) {
    add(w_("explain.names." + name), formula, value);
  }
  void add(const std::string& name, const std::string& formula, const std::string& value) {
    list_.push_back({about_, name, formula, value, isOfTask_});
  }

  void deck(std::size_t i) {
    const auto& deck = x_.c.job.areas[i];
    const auto& m = x_.estimate.decks[i];
    about_ = deckLetter(i) + " " + deck.name;
    std::string area = shapeFormula(deck.shape, w_);
    for (const auto& cut : deck.without) area += " − " + shapeFormula(cut.shape, w_);
    say("area", area, w_.area(m.area));
    say("perimeter", w_("explain.perimeter"), w_.length(m.perimeter));
    const bool isAllRound =
        std::holds_alternative<model::Strip>(deck.shape) || std::holds_alternative<model::Screen>(deck.shape);
    if (!isAllRound) say("edges", w_("explain.edges"), w_.length(m.cutIn));
    if (!isAllRound && deck.boards) boards(*deck.boards, deck, m);
    for (const auto& coat : x_.estimate.coats) {
      if (coat.deck != i) continue;
      add(w_("explain.coat", {{"n", std::to_string(coat.coat)}}),
          w_.area(m.wetted) + " ÷ " + w_.spread(coat.rate) + " " +
              w_("explain.from", {{"source", rateFrom(coat)}}),
          exact(coat.litres));
    }
  }

  void boards(const model::Boards& b, const model::Deck& deck, const model::Measures& m) {
    const std::string pitch = "(" + w_.size(b.width) + " + " + w_.size(b.gap) + ")";
    if (const auto* stairs = std::get_if<model::Stairs>(&deck.shape)) {
      say("boards",
          std::to_string(stairs->steps) + " × (" + roundedUp(w_.size(stairs->going) + " ÷ " + pitch) +
              ", + " + roundedUp(w_.size(stairs->rise) + " ÷ " + pitch) + ")",
          std::to_string(m.boards));
    } else {
      say("boards", roundedUp(w_("explain.across", {{"width", w_.length(m.across)}}) + " ÷ " + pitch),
          std::to_string(m.boards));
    }
    say("board_length", w_.area(m.area) + " ÷ " + pitch, w_.length(m.boardMetres));
    if (deck.joists && deck.fixings) {
      say("fixings",
          roundedUp(w_.area(m.area) + " ÷ (" + pitch + " × " + w_.size(*deck.joists) + ") × " +
                    std::to_string(deck.fixings->perCrossing)),
          std::to_string(m.fixings));
    }
    // The upper face may be reeded, the lower one and the edges are smooth.
    std::string times = b.face == model::BoardFace::Reeded
                            ? w_("explain.reeded", {{"factor", w_.share(b.reededFactor)}})
                            : w_("explain.top");
    if (b.wetted == model::Wetted::AllFaces) times += " + " + w_("explain.underside");
    if (b.wetted != model::Wetted::Top)
      times += " + " + w_("explain.board_edges", {{"thickness", w_.size(b.thickness)}}) + " ÷ " + pitch;
    say("wetted", w_.area(m.area) + " × (" + times + ")", w_.area(m.wetted));
  }

  void litres() {
    const auto& n = x_.resources.product;
    const auto& p = *x_.c.product;
    about_ = w_("explain.about.product");
    base::Volume sum;
    for (const auto& coat : x_.estimate.coats) sum += coat.litres;
    say("likely", w_("explain.likely", {{"sum", exact(sum)}, {"loss", w_.share(x_.c.job.loss)}}),
        exact(n.likely));
    const bool hasLearned = std::any_of(x_.estimate.coats.begin(), x_.estimate.coats.end(),
                                        [](const auto& coat) { return coat.learnedSpread.has_value(); });
    say("range",
        w_(hasLearned ? "explain.range_learned" : "explain.range",
           {{"low", w_.share(p.lowUse)}, {"high", w_.share(p.highUse)}}),
        w_.joined({exact(n.low), exact(n.high)}));
    say("wanted", w_("explain.wanted", {{"allowance", w_.share(x_.c.job.allowance)}}), exact(n.wanted));
    say("to_buy", w_("explain.to_buy", {{"wanted", exact(n.wanted)}, {"stock", exact(n.drawn)}}),
        exact(n.toBuy));
    std::string tins;
    for (const auto& t : n.bought.tins) {
      tins += (tins.empty() ? "" : " + ") + w_("explain.tin", {{"count", std::to_string(t.count)},
                                                               {"size", w_.tinSize(t.tin.size)},
                                                               {"price", w_.money(t.tin.price)}});
    }
    if (!tins.empty()) say("tins", w_("explain.tins", {{"tins", tins}}), w_.money(n.bought.cost));
    say("left_over",
        w_("explain.left_over",
           {{"bought", exact(n.bought.volume)}, {"stock", exact(n.fromStock)}, {"likely", exact(n.likely)}}),
        exact(n.leftOver));
    if (x_.estimate.coats.empty()) return;
    say("chance",
        w_(hasLearned ? "explain.chance_learned" : "explain.chance",
           {{"have", exact(n.bought.volume + n.fromStock)}}),
        w_.share(x_.enough.chanceOfMore));
  }

  void hours() {
    about_ = w_("explain.about.labour");
    isOfTask_ = true;
    for (const auto& line : x_.resources.labour) {
      const std::string where = line.deck ? ", " + deckLetter(*line.deck) : "";
      add(model::taskOf(x_.content, line.task).name + (line.pass > 0 ? " " + std::to_string(line.pass) : "") +
              where,
          hoursFormula(line, model::taskOf(x_.content, line.task), w_),
          w_.number({line.hours.millionths}, 2) + "\u00A0" + w_("units.hour"));
    }
    isOfTask_ = false;
    say("days",
        w_.counted(
            "explain.days", x_.c.job.crew.breakMinutes,
            {{"from", w_.clock(x_.c.job.crew.startMinutes)}, {"to", w_.clock(x_.c.job.crew.endMinutes)}}),
        std::to_string(x_.plan.days.size()));
  }

  void dates() {
    about_ = w_("explain.about.dates");
    for (const auto& e : x_.plan.events) {
      const std::string why = whyThen(e);
      std::vector<std::string> decks;
      for (const auto deck : e.decks) decks.push_back(deckLetter(deck));
      add(dateName(e) + (decks.empty() ? "" : ", " + w_.joined(decks)), why,
          w_("dates.day_clock", {{"day", w_.shortDateYear(e.at.day)}, {"time", w_.clock(e.at.minutes)}}));
    }
  }

  /// 'coat 2 begins', 'first wash'.
  std::string dateName(const model::Event& event) const {
    if (event.coat == 0) return w_(std::string("explain.dates.") + model::nameOf(event.what));
    return w_(event.what == model::Moment::CoatStart ? "explain.dates.start" : "explain.dates.end",
              {{"n", std::to_string(event.coat)}});
  }

  std::string whyThen(const model::Event& event) const {
    const auto& t = x_.c.product->times;
    switch (event.what) {
      case model::Moment::CoatStart:
        return event.coat == 1 ? w_("explain.first_start")
                               : w_("explain.later_start", {{"wait", w_.wait(t.recoatMin)}});
      case model::Moment::CoatEnd:
        return w_("explain.coat_end");
      case model::Moment::Walk:
        return afterLast(w_.wait(t.walk));
      case model::Moment::Furniture:
        return afterLast(w_.wait(t.furniture));
      case model::Moment::Rugs:
        return afterLast(w_.wait(t.rugs));
      case model::Moment::FirstWash:
        return afterLast(w_.wait(t.firstWash));
      case model::Moment::Maintenance:
        return w_("explain.visit", {{"wait", w_.counted("waits.months", t.maintenanceMonths)}});
    }
    throw std::logic_error("internal error: unknown date of a plan");
  }

  void price() {
    about_ = w_("explain.about.price");
    const auto& p = x_.price;
    const auto& pricing = x_.c.job.price;
    const auto& rates = x_.c.rates;
    const auto& tax = x_.c.region->tax;
    say("amount",
        w_(pricing.raise.isZero() ? "explain.amount" : "explain.amount_raised",
           {{"overhead", w_.share(rates.overhead)},
            {"contingency", w_.share(rates.contingency)},
            {"margin", w_.share(pricing.margin.value_or(rates.margin))},
            {"raise", w_.share(pricing.raise)}}),
        w_("explain.to_a_coin"));
    say("lines", w_.counted("explain.lines", static_cast<std::int64_t>(p.lines.size())),
        w_.money(p.subtotal));
    say("discount", shareOf(pricing.discount, p.subtotal), w_.money(p.discount));
    say("net", w_.money(p.subtotal) + " − " + w_.money(p.discount), w_.money(p.net));
    say("tax",
        w_(tax.onLines ? "explain.tax_on_lines" : "explain.tax_on_net",
           {{"tax", tax.name}, {"rate", w_.share(pricing.tax.value_or(tax.rate))}}),
        w_.money(p.tax));
    say("total", w_.money(p.net) + " + " + w_.money(p.tax), w_.money(p.total));
    say("deposit", shareOf(pricing.deposit, p.total), w_.money(p.deposit));
    say("margin", w_("explain.margin", {{"net", w_.money(p.net)}, {"cost", w_.money(p.cost)}}),
        w_.share({base::mulDiv(p.marginReached.millionths, 1, 100'000, base::Round::HalfUp) * 100'000}));
  }

  void tenYears() {
    if (!x_.tenYears) return;
    using Kind = model::TenYears::Kind;
    about_ = w_("explain.about.ten_years");
    const auto& t = *x_.tenYears;
    const auto& basis = *x_.c.firm.tenYears;
    std::string sum;
    for (const auto kind : {Kind::Today, Kind::Visit, Kind::Sanding}) {
      std::int64_t n = 0;
      base::Money amount;
      for (const auto& o : t.outlays) {
        if (o.kind != kind) continue;
        ++n;
        amount = o.amount;
      }
      if (n == 0) continue;
      if (kind == Kind::Visit) say("visit", w_("explain.later_visit"), w_.money(amount));
      if (kind == Kind::Sanding) say("sanding", w_("explain.later_sanding"), w_.money(amount));
      sum += sum.empty() ? w_.money(amount) : " + " + std::to_string(n) + " × " + w_.money(amount);
    }
    say("ten_years", sum, w_.money(t.sum));
    say("present_value",
        w_("explain.present_value",
           {{"rate", w_.share(basis.discountRate)}, {"rise", w_.share(basis.priceRise)}}),
        w_.money(t.presentValue));
    say("per_year", w_("explain.per_year", {{"rate", w_.share(basis.discountRate)}}), w_.money(t.perYear));
  }

  std::string rateFrom(const model::CoatNeed& coat) const {
    const std::string key = "explain.sources.";
    switch (coat.source) {
      case model::RateSource::Job:
        return w_(key + "job");
      case model::RateSource::Table:
        return w_(key + "table",
                  {{"uptake", w_(std::string("explain.uptakes.") + model::nameOf(*coat.uptake))}});
      case model::RateSource::Learned:
        if (!coat.learnedSpread) return w_.counted(key + "learned", coat.learnedFrom);
        return w_("explain.learned_spread", {{"jobs", w_.counted(key + "learned", coat.learnedFrom)},
                                             {"spread", w_.share(*coat.learnedSpread)}});
      case model::RateSource::Patch:
        return w_(key + "patch", {{"area", w_.area(coat.rate.area)},
                                  {"volume", model::plainVolume(coat.rate.volume, x_.c.region->units)}});
      case model::RateSource::PatchByJob:
        return w_(key + "patch_by_job");
      case model::RateSource::PatchByProduct:
        return w_(key + "patch_by_product");
    }
    throw std::logic_error("internal error: unknown source of a rate");
  }
  std::string roundedUp(const std::string& quotient) const {
    return w_("explain.rounded_up", {{"quotient", quotient}});
  }
  std::string afterLast(const std::string& wait) const {
    return w_("explain.after_last", {{"wait", wait}, {"air", w_.temperature(base::Temperature::whole(20))}});
  }
  std::string shareOf(base::Share share, base::Money of) const {
    return w_("explain.share_of", {{"share", w_.share(share)}, {"whole", w_.money(of)}});
  }

  /// Volumes in a formula carry one more place than elsewhere.
  std::string exact(base::Volume v) const {
    const std::int64_t unit = w_.isMetric() ? 1'000'000'000 : 3'785'411'784;
    return w_.number({base::mulDiv(v.millionths, 1'000'000, unit, base::Round::HalfUp)}, 2) + "\u00A0" +
           w_.volumeUnit();
  }

  const model::JobResult& x_;
  Formatter w_;
  std::string about_;
  bool isOfTask_ = false;
  std::vector<Explained> list_;
};

}  // namespace

std::vector<Explained> explain(const model::JobResult& x) { return Teller(x).tell(); }

}  // namespace sheets
