// What a job's 'done:' and 'left:' tell: the coats as they were laid, and the tins counted afterwards.
#include "input/job/job_parts.h"
#include "input/yaml/words.h"
#include "model/lookup.h"
#include "model/plain.h"

#include <algorithm>
#include <tuple>

namespace input {
namespace {

using base::LocalTime;

constexpr Limits<base::Volume> anyUse = {base::millilitres(1), base::litres(10'000), "from 1 mL to 10000 L"};
constexpr Limits<base::Share> humidities = {base::Share::whole(1),   base::Share::whole(100),
                                            "from 1 % to 100 %",     base::Share::whole(10),
                                            base::Share::whole(100), "from 10 % to 100 %"};
/// Of the timber, by a meter. Soaked boards hold some 30 %.
constexpr Limits<base::Share> moistures = {base::Share::whole(1), base::Share::whole(60), "from 1 % to 60 %",
                                           base::Share::whole(6), base::Share::whole(35), "from 6 % to 35 %"};
constexpr auto longestCoat = std::chrono::days{14};

/// Of air and boards while a coat is laid.
Limits<base::Temperature> outdoors() {
  const auto c = base::Temperature::whole;
  return {c(-40), c(90), "from -40 C to 90 C", c(2), c(60), "from 2 C to 60 C (36 to 140 F)"};
}

/// '2027-03-16 08:10', also with a T between; '08:10' alone where the day is known.
std::optional<LocalTime> moment(const Field& f, std::optional<base::Date> day) {
  const std::optional<std::string> s = f.word();
  if (!s) return {};
  if (const auto clock = base::parseClock(*s); clock && day) return LocalTime{*day, *clock};
  if (s->size() == 16 && ((*s)[10] == ' ' || (*s)[10] == 'T')) {
    const auto date = base::parseDate(s->substr(0, 10));
    const auto clock = base::parseClock(s->substr(11));
    if (date && clock) return LocalTime{*date, *clock};
  }
  f.error(
      inQuotes(*s) + " is not a day and a time",
      day ? "write it like 2027-03-16 11:30, or 11:30 on the same day" : "write it like 2027-03-16 08:10");
  return {};
}

/// Reads the entries one by one; finds what contradicts between them.
class DoneReader {
 public:
  DoneReader(const model::Job& job, const model::Product* product) : job_(job), product_(product) {}

  std::vector<model::DoneCoat> read(const std::vector<Field>& items) {
    for (const Field& item : items) readEntry(item);
    std::stable_sort(coats_.begin(), coats_.end(), [](const Coat& a, const Coat& b) {
      return std::tuple(a.done.deck, a.done.coat, a.done.start) <
             std::tuple(b.done.deck, b.done.coat, b.done.start);
    });
    checkParts();
    checkOrder();
    std::vector<model::DoneCoat> done;
    for (Coat& c : coats_) done.push_back(std::move(c.done));
    return done;
  }

 private:
  struct Coat {
    model::DoneCoat done;
    Field item;
    bool isTimed = false;
  };

  void readEntry(const Field& item) {
    Record r(item);
    const Field area = r.may("area"), coat = r.must("coat", "1"), from = r.must("from", "2027-02-17 08:10"),
                to = r.must("to", "11:30");
    model::DoneCoat done;
    done.coat = whole(coat, {1, 4, "from 1 to 4"}, 0);
    const auto start = moment(from, {});
    const auto end = moment(to, start ? std::optional(start->day) : std::nullopt);
    if (start && end) checkTimes(from, *start, to, *end);
    done.start = start.value_or(LocalTime{});
    done.end = end.value_or(LocalTime{});
    done.entry = entries_++;
    done.pos = item.pos();
    done.fromPos = from.pos();
    done.toPos = to.pos();
    if (const Field f = r.may("used"); f.isGiven()) {
      done.used = quantity(f, parseVolume, anyUse);
      done.usedPos = f.pos();
    }
    done.batches = texts(r.may("batches"));
    if (const Field f = r.may("air"); f.isGiven()) done.air = quantity(f, parseTemperature, outdoors());
    if (const Field f = r.may("surface"); f.isGiven())
      done.surface = quantity(f, parseTemperature, outdoors());
    if (const Field f = r.may("humidity"); f.isGiven())
      done.humidity = quantity(f, parseShare, humidities, humidities.most);
    if (const Field f = r.may("moisture"); f.isGiven())
      done.moisture = quantity(f, parseShare, moistures, moistures.least);
    if (const Field f = r.may("remark"); f.isGiven()) done.remark = text(f);
    r.finish();
    for (const std::size_t deck : decksOf(area, coat, done.coat)) {
      done.deck = deck;
      coats_.push_back({done, item, start && end});
    }
  }

  void checkTimes(const Field& from, LocalTime start, const Field& to, LocalTime end) const {
    if (end <= start) {
      to.error(inQuotes(to.word().value_or("")) + " is not after " + inQuotes(from.word().value_or("")),
               "a coat ends later than it begins");
    } else if (end.day - start.day > longestCoat) {
      to.error("one coat takes longer than 14 days", "check both dates");
    } else if (start.day < job_.start && job_.start != base::Date{}) {
      from.warn(
          inQuotes(from.word().value_or("")) + " is before the job's start, " + base::isoDate(job_.start),
          "check both dates");
    } else if (start.day > job_.start + std::chrono::days{366} && job_.start != base::Date{}) {
      from.warn(inQuotes(from.word().value_or("")) + " is more than a year after the job's start, " +
                    base::isoDate(job_.start),
                "check both dates");
    }
  }

  /// The decks an entry holds for: those named, or all that get such a coat.
  std::vector<std::size_t> decksOf(const Field& area, const Field& coat, int number) const {
    std::vector<std::size_t> decks;
    if (number == 0) return decks;
    if (!area.isGiven()) {
      for (std::size_t i = 0; i < job_.areas.size(); ++i) {
        if (job_.areas[i].coats >= number) decks.push_back(i);
      }
      if (decks.empty() && !job_.areas.empty())
        coat.error("no area has " + std::to_string(number) + " coats",
                   "set 'coats' of the area to what was laid");
      return decks;
    }
    for (const Field& name : area.is(Node::Kind::List) ? area.items() : std::vector<Field>{area}) {
      if (const auto deck = deckOf(name, coat, number)) decks.push_back(*deck);
    }
    if (area.isEmptyList()) area.error("no area is named", "leave the key out where all areas are meant");
    return decks;
  }

  std::optional<std::size_t> deckOf(const Field& name, const Field& coat, int number) const {
    const std::string wanted = text(name);
    if (wanted.empty()) return {};
    std::vector<std::string> known;
    for (std::size_t i = 0; i < job_.areas.size(); ++i) {
      const model::Deck& deck = job_.areas[i];
      if (deck.name != wanted) {
        known.push_back(deck.name);
        continue;
      }
      if (number <= deck.coats) return i;
      coat.error(inQuotes(wanted) + " has only " + std::to_string(deck.coats) +
                     (deck.coats == 1 ? " coat" : " coats"),
                 "set 'coats' of the area to what was laid");
      return {};
    }
    reportUnknown(name, wanted, "area", known);
    return {};
  }

  /// The parts of one coat follow each other.
  void checkParts() const {
    std::size_t first = 0;
    for (std::size_t i = 1; i < coats_.size(); ++i) {
      const Coat &before = coats_[i - 1], &part = coats_[i];
      if (!isSame(before, part.done.deck, part.done.coat)) first = i;
      if (first == i || !before.isTimed || !part.isTimed) continue;
      const std::string hint = "the other part stands in line " + std::to_string(before.item.pos().line);
      if (part.done.start < before.done.end) {
        part.item.error(nameOf(part) + " is recorded twice for the same time", hint);
      } else if (part.done.end.day - coats_[first].done.start.day > longestCoat) {
        part.item.error(nameOf(part) + " takes longer than 14 days", hint + "; check both dates");
      }
    }
  }

  void checkOrder() const {
    for (const Coat& later : coats_) {
      bool liesOnAnother = later.done.coat == 1;
      for (const Coat& before : coats_) {
        if (!isSame(before, later.done.deck, later.done.coat - 1)) continue;
        liesOnAnother = true;
        if (!before.isTimed || !later.isTimed) continue;
        const std::string place = "that stands in line " + std::to_string(before.item.pos().line);
        const std::string coat = "coat " + std::to_string(before.done.coat);
        const base::Hours wait = waitOf(before.done.end, later.done.start);
        if (later.done.start < before.done.end)
          later.item.error(nameOf(later) + " begins before " + coat + " ended", place);
        else if (isTooShort(wait))
          later.item.warn(nameOf(later) + " begins " + wordsOf(wait) + " after " + coat + " ended, but '" +
                              job_.product + "' has to wait " + hoursOf(product_->times.recoatMin),
                          "check the times; " + place);
        else if (isTooLong(wait))
          later.item.warn(nameOf(later) + " begins " + wordsOf(wait) + " after " + coat + " ended, but '" +
                              job_.product + "' takes it within " + hoursOf(product_->times.recoatMax),
                          "check the times; if they are right, look whether the coat holds; " + place);
      }
      if (!liesOnAnother)
        later.item.warn(
            nameOf(later) + " is recorded, but coat " + std::to_string(later.done.coat - 1) + " is not",
            "record that one too, or mend the number");
    }
  }

  static bool isSame(const Coat& c, std::size_t deck, int coat) {
    return c.done.deck == deck && c.done.coat == coat;
  }

  static std::string hoursOf(base::Hours wait) { return model::plain(wait, 1) + " h"; }

  /// By the clock on the wall.
  static base::Hours waitOf(LocalTime end, LocalTime start) {
    const std::int64_t minutes = (start.day - end.day).count() * 24 * 60 + start.minutes - end.minutes;
    return {base::mulDiv(minutes, 1'000'000, 60, base::Round::HalfUp)};
  }

  bool isTooLong(base::Hours wait) const {
    return product_ && !product_->times.recoatMax.isZero() && wait > product_->times.recoatMax;
  }

  bool isTooShort(base::Hours wait) const { return product_ && wait < product_->times.recoatMin; }

  /// Never rounded up to the least.
  static std::string wordsOf(base::Hours wait) {
    const auto minutes = base::mulDiv(wait.millionths, 60, 1'000'000, base::Round::HalfUp);
    return minutes < 2 * 60 ? std::to_string(minutes) + " min"
                            : hoursOf({wait.millionths / 100'000 * 100'000});
  }

  std::string nameOf(const Coat& c) const {
    return "coat " + std::to_string(c.done.coat) + " of " + inQuotes(job_.areas[c.done.deck].name);
  }

  const model::Job& job_;
  const model::Product* product_;
  std::vector<Coat> coats_;
  std::size_t entries_ = 0;
};

}  // namespace

std::vector<model::DoneCoat> readDone(const Field& f, const model::Job& job, const model::Product* product) {
  const std::vector<Field> items = f.items();
  if (!items.empty() && !job.work.empty() && !asksFor(job.work, model::Work::Oil))
    f.error("coats are recorded but 'work' has no 'oil'", "add 'oil' to 'work' or leave 'done' out");
  return DoneReader(job, product).read(items);
}

std::vector<model::StockTin> readLeft(const Field& f, const model::Job& job, const model::Content& content) {
  std::vector<model::StockTin> left;
  for (const Field& item : f.items()) {
    Record r(item);
    model::StockTin t;
    const Field product = r.may("product"), holds = r.may("holds"), stays = r.may("with_customer");
    t.product = product.isGiven() ? knownId(product, content.products, "product") : job.product;
    t.size = quantity(r.must("size", "2.5 L"), parseVolume, tinSizes, tinSizes.most);
    t.count = whole(r.may("count"), {1, 1000, "from 1 to 1000", 1, 60, "from 1 to 60"}, 1);
    if (holds.isGiven()) t.holds = quantity(holds, parseVolume, {{0}, tinSizes.most, "from 0 L to 1000 L"});
    if (t.holds && *t.holds > t.size)
      holds.error("a tin holds more than its size",
                  "'size' is that of the full tin, 'holds' what is left in it");
    t.isWithCustomer = yesNo(stays, false);
    r.finish();
    left.push_back(std::move(t));
  }
  return left;
}

}  // namespace input
