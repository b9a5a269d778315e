#include "sheets/explain.h"

#include "base/match.h"
#include "sheets/words.h"

namespace sheets {
namespace {

using base::Match;

std::string shapeFormula(const model::Shape& shape, const Words& w) {
  return std::visit(
      Match{[&](const model::Rectangle& s) { return w.length(s.x) + " × " + w.length(s.y); },
            [&](const model::Polygon& s) {
              return "shoelace formula over " + std::to_string(s.points.size()) + " corners";
            },
            [&](const model::Circle& s) { return "π/4 × (" + w.length(s.diameter) + ")²"; },
            [&](const model::Ring& s) {
              return "π/4 × ((" + w.length(s.outer) + ")² − (" + w.length(s.inner) + ")²)";
            },
            [&](const model::Triangle& s) {
              return "Heron's formula for sides " + w.joined({w.length(s.a), w.length(s.b), w.length(s.c)});
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
            [&](const model::Measured& s) { return "as given: " + w.area(s.area); }},
      shape);
}

class Teller {
 public:
  explicit Teller(const Computed& x) : x_(x), w_(*x.c.region, x.language) {}

  std::vector<Explained> tell() {
    for (std::size_t i = 0; i < x_.c.job.areas.size(); ++i) deck(i);
    litres();
    hours();
    dates();
    price();
    return std::move(list_);
  }

 private:
  void say(const std::string& name, const std::string& formula, const std::string& value) {
    list_.push_back({about_, name, formula, value});
  }

  void deck(std::size_t i) {
    const auto& deck = x_.c.job.areas[i];
    const auto& m = x_.estimate.decks[i];
    about_ = deckLetter(i) + " " + deck.name;
    std::string area = shapeFormula(deck.shape, w_);
    for (const auto& cut : deck.without) area += " − " + shapeFormula(cut.shape, w_);
    say("area", area, w_.area(m.area));
    say("perimeter", "sum of the outer edges", w_.length(m.perimeter));
    const bool isAllRound =
        std::holds_alternative<model::Strip>(deck.shape) || std::holds_alternative<model::Screen>(deck.shape);
    if (!isAllRound) say("edges to cut in", "perimeter and edges of cut-outs", w_.length(m.cutIn));
    if (!isAllRound && deck.boards) boards(*deck.boards, deck, m);
    for (const auto& coat : x_.estimate.coats) {
      if (coat.deck != i) continue;
      say("coat " + std::to_string(coat.coat),
          w_.area(m.wetted) + " ÷ " + w_.spread(coat.rate) + " (from " + coat.rateFrom + ")",
          exact(coat.litres));
    }
  }

  void boards(const model::Boards& b, const model::Deck& deck, const model::Measures& m) {
    const std::string pitch = "(" + w_.size(b.width) + " + " + w_.size(b.gap) + ")";
    if (const auto* stairs = std::get_if<model::Stairs>(&deck.shape)) {
      say("boards",
          std::to_string(stairs->steps) + " × (" + w_.size(stairs->going) + " ÷ " + pitch +
              ", rounded up, + " + w_.size(stairs->rise) + " ÷ " + pitch + ", rounded up)",
          std::to_string(m.boards));
    } else {
      say("boards", w_.length(m.across) + " across ÷ " + pitch + ", rounded up", std::to_string(m.boards));
    }
    say("metres of board", w_.area(m.area) + " ÷ " + pitch, w_.length(m.boardMetres));
    if (deck.joists && deck.fixings) {
      say("fixings",
          w_.area(m.area) + " ÷ (" + pitch + " × " + w_.size(*deck.joists) + ") × " +
              std::to_string(deck.fixings->perCrossing) + ", rounded up",
          std::to_string(m.fixings));
    }
    // The upper face may be reeded, the lower one and the edges are smooth.
    std::string times =
        b.face == model::BoardFace::Reeded ? w_.share(b.reededFactor) + " reeded top" : "1 top";
    if (b.wetted == model::Wetted::AllFaces) times += " + 1 underside";
    if (b.wetted != model::Wetted::Top) times += " + 2 × " + w_.size(b.thickness) + " edges ÷ " + pitch;
    say("surface that takes product", w_.area(m.area) + " × (" + times + ")", w_.area(m.wetted));
  }

  void litres() {
    const auto& n = x_.estimate.product;
    const auto& p = *x_.c.product;
    about_ = "product";
    base::Volume sum;
    for (const auto& coat : x_.estimate.coats) sum += coat.litres;
    say("likely need", "sum of the coats " + exact(sum) + " × (1 + " + w_.share(x_.c.job.loss) + " loss)",
        exact(n.likely));
    say("low and high",
        "likely × " + w_.share(p.lowUse) + " and × " + w_.share(p.highUse) +
            ", half as far apart with a test patch",
        exact(n.low) + " and " + exact(n.high));
    say("wanted", "likely × (1 + " + w_.share(x_.c.job.allowance) + " allowance)", exact(n.wanted));
    say("to buy", exact(n.wanted) + " − " + exact(n.fromStock) + " in stock", exact(n.toBuy));
    std::string tins;
    for (const auto& t : n.bought.tins) {
      tins += (tins.empty() ? "" : " + ") + std::to_string(t.count) + " × " + w_.tinSize(t.tin.size) +
              " at " + w_.money(t.tin.price);
    }
    if (!tins.empty()) say("tins", "cheapest set that covers it: " + tins, w_.money(n.bought.cost));
    say("left over",
        exact(n.bought.volume) + " bought + " + exact(n.fromStock) + " in stock − " + exact(n.likely),
        exact(n.leftOver));
  }

  void hours() {
    about_ = "labour";
    for (const auto& line : x_.estimate.labour) {
      const std::string where = line.deck ? ", " + deckLetter(*line.deck) : "";
      say(line.task + (line.pass > 0 ? " " + std::to_string(line.pass) : "") + where, line.how,
          w_.number({line.hours.millionths}, 2) + "\u00A0h");
    }
    say("days on site",
        "the work laid into the working hours " + w_.clock(x_.c.job.crew.startMinutes) + " to " +
            w_.clock(x_.c.job.crew.endMinutes) + " less " + std::to_string(x_.c.job.crew.breakMinutes) +
            " minutes",
        std::to_string(x_.plan.days.size()));
  }

  void dates() {
    about_ = "dates";
    const auto& t = x_.c.product->times;
    for (const auto& e : x_.plan.events) {
      std::string why;
      if (e.name.ends_with("_start"))
        why = e.name == "coat_1_start"
                  ? "boards dry, inside the hours fit for coating"
                  : "at least " + w_.wait(t.recoatMin) + " after the end of the coat before on each deck";
      if (e.name.ends_with("_end")) why = "start and the hours of cutting in and coating";
      if (e.name == "walk") why = "last coat + " + w_.wait(t.walk);
      if (e.name == "furniture") why = "last coat + " + w_.wait(t.furniture);
      if (e.name == "rugs") why = "last coat + " + w_.wait(t.rugs);
      if (e.name == "first_wash") why = "last coat + " + w_.wait(t.firstWash);
      if (e.name == "maintenance")
        why = "last coat + " + w_.counted("waits.months", t.maintenanceMonths) + ", on the next working day";
      say(e.name, why, w_.shortDateYear(e.at.day) + ", " + w_.clock(e.at.minutes));
    }
  }

  void price() {
    about_ = "price";
    const auto& p = x_.price;
    const auto& pricing = x_.c.job.price;
    const auto& rates = x_.c.rates;
    const auto& tax = x_.c.region->tax;
    say("rate of a line",
        "cost × (1 + " + w_.share(rates.overhead) + " overhead + " + w_.share(rates.contingency) +
            " contingency) ÷ (1 − " + w_.share(pricing.margin.value_or(rates.margin)) + " margin) ÷ quantity",
        "rounded to a coin");
    say("sum of the lines", std::to_string(p.lines.size()) + " lines", w_.money(p.subtotal));
    say("discount", w_.share(pricing.discount) + " of " + w_.money(p.subtotal), w_.money(p.discount));
    say("net", w_.money(p.subtotal) + " − " + w_.money(p.discount), w_.money(p.net));
    say("tax",
        tax.name + " " + w_.share(pricing.tax.value_or(tax.rate)) +
            (tax.onLines ? ", rounded on each line" : ", rounded once on the net price"),
        w_.money(p.tax));
    say("total", w_.money(p.net) + " + " + w_.money(p.tax), w_.money(p.total));
    say("deposit", w_.share(pricing.deposit) + " of " + w_.money(p.total), w_.money(p.deposit));
    say("margin reached", "(" + w_.money(p.net) + " − cost " + w_.money(p.cost) + ") ÷ " + w_.money(p.net),
        w_.share({base::mulDiv(p.marginReached.millionths, 1, 100'000, base::Round::HalfUp) * 100'000}));
  }

  /// Volumes in a formula carry one more place than elsewhere.
  std::string exact(base::Volume v) const {
    const std::int64_t unit = w_.isMetric() ? 1'000'000'000 : 3'785'411'784;
    return w_.number({base::mulDiv(v.millionths, 1'000'000, unit, base::Round::HalfUp)}, 2) + "\u00A0" +
           w_.volumeUnit();
  }

  const Computed& x_;
  Words w_;
  std::string about_;
  std::vector<Explained> list_;
};

}  // namespace

std::vector<Explained> explain(const Computed& x) { return Teller(x).tell(); }

}  // namespace sheets
