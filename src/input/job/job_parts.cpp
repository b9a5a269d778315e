#include "input/job/job_parts.h"

#include "base/letters.h"
#include "base/nearest.h"
#include "input/content/customers.h"
#include "input/yaml/words.h"

#include <algorithm>
#include <set>

namespace input {
namespace {

std::string readState(const Field& f, const model::Region& region) {
  if (!region.states.empty()) return knownId(f, region.states, "state");
  f.error("the rules of " + region.name + " do not differ by state", "leave 'state' out");
  return {};
}

void readText(Record& r, const char* key, std::string& into) {
  if (const Field f = r.may(key); f.isGiven()) into = text(f);
}

/// The id of a region; where it is unknown the hint names all, and finds 'New Zealand' too.
std::string readRegion(const Field& f, const model::Content& content) {
  const std::string id = text(f);
  if (id.empty() || content.regions.contains(id)) return id;
  std::string meant, all;
  for (const auto& [known, region] : content.regions) {
    const std::string word = base::lowered(id);
    if (word == known || word == base::lowered(region.name)) meant = known;
    all += (all.empty() ? "" : ", ") + known + (region.name.empty() ? "" : " (" + region.name + ")");
  }
  f.error(inQuotes(id) + " is not a known region" + base::didYouMean(meant),
          "known: " + all + "; each is a file in content/regions");
  return {};
}

void readWorkingDays(const Field& f, model::Crew& crew) {
  if (!f.isGiven()) return;
  for (bool& works : crew.works) works = false;
  const std::vector<Field> items = f.items();
  for (const Field& item : items) {
    if (const auto day = chosen(item, dayWords, "day")) crew.works[*day] = true;
  }
  if (f.isEmptyList())
    f.error("at least one working day is needed", "write it like [mon, tue, wed, thu, fri]");
}

/// '2027-12-24', or '2027-12-24 to 2028-01-07'.
void readOff(const Field& f, std::vector<base::Date>& off) {
  const std::string s = text(f);
  const auto to = s.find(" to ");
  if (to == std::string::npos) {
    off.push_back(date(f));
    return;
  }
  const auto from = base::parseDate(s.substr(0, to)), until = base::parseDate(s.substr(to + 4));
  if (!from || !until || *until < *from || *until - *from > std::chrono::days{366}) {
    f.error(inQuotes(s) + " is no span of days", "write it like 2027-12-24 to 2028-01-07, at most a year");
    return;
  }
  for (base::Date day = *from; day <= *until; day += std::chrono::days{1}) off.push_back(day);
}

/// 'true', or the names of some.
void readWorkedHolidays(const Field& f, const model::Region* region, model::Crew& crew) {
  if (!f.isGiven()) return;
  if (!f.is(Node::Kind::List)) {
    crew.worksOnHolidays = yesNo(f, false);
    return;
  }
  std::set<std::string> known;
  if (region != nullptr)
    for (const auto& holiday : region->holidays) known.insert(holiday.name);
  for (const Field& item : f.items()) {
    const std::string name = text(item);
    if (region != nullptr && !name.empty() && !known.contains(name))
      reportUnknown(item, name, "public holiday", {known.begin(), known.end()});
    crew.workedHolidays.push_back(name);
  }
}

}  // namespace

model::Customer readCustomer(const Field& f, const model::Content& content) {
  const auto named = [&](const Field& name) {
    const auto* found = knownCustomer(name, content.customers);
    return found == nullptr ? model::Customer{} : found->customer;
  };
  if (f.is(Node::Kind::Word)) return named(f);
  Record r(f);
  const Field known = r.may("known");
  model::Customer c = known.isGiven() ? named(known) : model::Customer{};
  if (const Field name = known.isGiven() ? r.may("name") : r.must("name", "A. Customer"); name.isGiven())
    c.name = text(name);
  if (const Field address = r.may("address"); address.isGiven()) c.address = texts(address);
  readText(r, "phone", c.phone);
  if (const Field email = r.may("email"); email.isGiven()) {
    c.email = text(email);
    if (!c.email.empty() && !isEmail(c.email))
      email.error(inQuotes(c.email) + " is not an e-mail address", "write it like name@place.example");
  }
  c.isUninvited = yesNo(r.may("uninvited"), false);
  r.finish();
  return c;
}

/// Words that content/hazards.yaml asks for with 'site:'.
std::vector<std::string> readSiteHazards(const Field& f, const model::Content& content) {
  std::vector<std::string> known, named;
  for (const auto& hazard : content.hazards) {
    for (const auto* clauses : {&hazard.when.all, &hazard.when.any, &hazard.when.none}) {
      for (const auto& clause : *clauses) {
        if (clause.condition == model::Condition::Site) known.push_back(clause.id);
      }
    }
  }
  for (const Field& item : f.items()) {
    std::string word = text(item);
    if (!word.empty() && std::find(known.begin(), known.end(), word) == known.end())
      reportUnknown(item, word, "hazard of the site", known);
    named.push_back(std::move(word));
  }
  return named;
}

model::Site readSite(const Field& f, const model::Content& content) {
  Record r(f);
  model::Site s;
  s.address = texts(r.may("address"));
  s.region = readRegion(r.must("region", "nz"), content);
  const Field state = r.may("state");
  if (const auto region = content.regions.find(s.region); state.isGiven() && region != content.regions.end())
    s.state = readState(state, region->second);
  const Field north = r.may("latitude"), east = r.may("longitude");
  const auto latitude = degrees(north, 90), longitude = degrees(east, 180);
  if (latitude && longitude) {  // else the site counts as one without a place
    s.latitudeMicro = *latitude;
    s.longitudeMicro = *longitude;
    if (*latitude == 0 && *longitude == 0)
      north.error("0, 0 lies in the sea off Africa",
                  "write where the site lies, or leave 'latitude' and 'longitude' out");
  }
  if (north.isGiven() != east.isGiven())
    f.error(std::string("'") + (north.isGiven() ? "longitude" : "latitude") + "' is missing",
            "latitude and longitude go together, like latitude: -45.00, longitude: 169.00");
  s.timezone = text(r.must("timezone", "Pacific/Auckland"));
  s.exposure = choice(r.may("exposure"), exposureWords, "exposure", s.exposure);
  if (const Field turn = r.may("north"); turn.isGiven())
    s.north = whole(turn, {0, 359, "from 0 to 359 degrees"}, 0);
  readText(r, "access", s.access);
  readText(r, "water", s.water);
  readText(r, "power", s.power);
  readText(r, "hospital", s.hospital);
  readText(r, "meeting_point", s.meetingPoint);
  readText(r, "first_aider", s.firstAider);
  readText(r, "sds_place", s.sdsPlace);
  readText(r, "extinguisher", s.extinguisher);
  if (const Field year = r.may("year_built"); year.isGiven())
    s.yearBuilt = whole(year, {1500, 2199, "from 1500 to 2199", 1700, 2199, "from 1700 on"}, 2000);
  s.isNearWater = yesNo(r.may("near_water"), false);
  readText(r, "eye_wash", s.eyeWash);
  readText(r, "pails", s.pails);
  s.hazards = readSiteHazards(r.may("hazards"), content);
  if (const Field f = r.may("public"); f.isGiven()) s.isPublic = yesNo(f, false);
  s.hasChildren = yesNo(r.may("children"), false);
  r.finish();
  return s;
}

model::Crew readCrew(const Field& f, const model::Region* region) {
  Record r(f);
  model::Crew c;
  const int people = whole(r.must("people", "2"), {1, 50, "from 1 to 50", 1, 12, "from 1 to 12"}, 0);
  if (people > 0) c.people = people;
  if (const auto span = clockSpan(r.must("hours", "07:30-16:00"))) {
    c.startMinutes = span->from;
    c.endMinutes = span->until;
  }
  const Field breaks = r.may("breaks");
  const base::Hours rest = quantity(breaks, parseTime,
                                    {{0},
                                     base::Hours::whole(24),
                                     "from 0 min to 24 h",
                                     base::Hours{166'667},
                                     base::Hours::whole(3),
                                     "from 10 min to 3 h"},
                                    base::Hours{500'000});
  c.breakMinutes = static_cast<int>(base::mulDiv(rest.millionths, 60, 1'000'000, base::Round::Up));
  if (c.breakMinutes >= c.endMinutes - c.startMinutes)
    (breaks.isGiven() ? breaks : f)
        .error("the breaks are as long as the working day", "write them like 45 min");
  readWorkingDays(r.may("days"), c);
  for (const Field& day : r.may("off").items()) readOff(day, c.off);
  readWorkedHolidays(r.may("works_on_holidays"), region, c);
  const Field names = r.may("names");
  c.names = texts(names);
  if (people > 0 && c.names.size() > static_cast<std::size_t>(people))
    names.error(std::to_string(c.names.size()) + " names for a crew of " + std::to_string(people),
                "write 'people: " + std::to_string(c.names.size()) + "', or name only those on this job");
  const Field leader = r.may("leader");
  if (leader.isGiven()) c.leader = text(leader);
  if (!c.leader.empty() && !c.names.empty() &&
      std::find(c.names.begin(), c.names.end(), c.leader) == c.names.end())
    leader.warn(inQuotes(c.leader) + " leads but is not among 'names'",
                "add the name there, or name another leader");
  // Where not everyone comes, whoever leads does.
  const auto leads = std::find(c.names.begin(), c.names.end(), c.leader);
  if (leads != c.names.end()) std::rotate(c.names.begin(), leads, leads + 1);
  r.finish();
  return c;
}

model::Pricing readPricing(const Field& f, const model::Region* region) {
  constexpr Limits<base::Share> discounts = {{0},
                                             base::Share::whole(100),
                                             "from 0 % to 100 %",
                                             base::Share::whole(1),
                                             base::Share::whole(40),
                                             "from 1 % to 40 %"};
  constexpr Limits<base::Share> deposits = {{0},
                                            base::Share::whole(100),
                                            "from 0 % to 100 %",
                                            base::Share::whole(2),
                                            base::Share::whole(60),
                                            "from 2 % to 60 %"};
  constexpr Limits<base::Share> taxes = {{0},
                                         base::Share::whole(50),
                                         "from 0 % to 50 %",
                                         base::Share::whole(1),
                                         base::Share::whole(30),
                                         "from 1 % to 30 %"};
  model::Pricing p;
  if (!f.isGiven()) return p;
  const int digits = region == nullptr ? 2 : region->currencyDigits;
  Record r(f);
  if (const Field margin = r.may("margin"); margin.isGiven())
    p.margin = quantity(margin, parseShare, margins);
  p.raise = quantity(r.may("raise"), parseShare, raises);
  p.discount = quantity(r.may("discount"), parseShare, discounts);
  readText(r, "discount_reason", p.discountReason);
  const Field deposit = r.may("deposit"), stages = r.may("stages");
  p.deposit = quantity(deposit, parseShare, deposits);
  p.depositPos = deposit.pos();
  if (const Field orders = r.may("special_orders"); orders.isGiven()) p.specialOrders = money(orders, digits);
  base::Share sum = p.deposit;
  for (const Field& item : stages.items()) {
    Record s(item);
    model::Stage stage;
    stage.share = quantity(s.must("share", "40 %"), parseShare,
                           {{10'000}, base::Share::whole(100), "from 0.01 % to 100 %"});
    stage.when = text(s.must("when", "when the sanding is finished"));
    s.finish();
    sum += stage.share;
    p.stages.push_back(std::move(stage));
  }
  if (sum > base::Share::whole(100))
    stages.error("deposit and stages are more than 100 % together",
                 "what is left of 100 % is due on completion");
  for (const Field& item : r.may("options").items()) {
    Record o(item);
    model::Option option;
    option.text = text(o.must("text", "Handrail sanded and oiled"));
    option.price = money(o.must("price", "480.00"), digits);
    option.isTaken = yesNo(o.may("taken"), false);
    o.finish();
    p.options.push_back(std::move(option));
  }
  if (const Field tax = r.may("tax"); tax.isGiven()) {
    p.tax = quantity(tax, parseShare, taxes);
    const base::Share usual = region == nullptr ? base::Share{} : region->tax.rate;
    if (!usual.isZero() && !p.tax->isZero() && (*p.tax > usual * 4 || usual > *p.tax * 4))
      tax.warn(inQuotes(tax.word().value_or("")) + " is far from the region's own rate",
               "leave 'tax' out for that rate, or check the number");
  }
  if (const Field show = r.may("show"); show.isGiven())
    p.show = choice(show, priceShowWords, "way to show the price", model::PriceShow::Areas);
  r.finish();
  return p;
}

std::vector<base::Date> readInvoices(const Field& f, const model::Job& job) {
  std::vector<base::Date> days;
  for (const Field& item : f.items()) {
    const base::Date day = date(item), before = days.empty() ? job.quoted : days.back();
    if (day < before && day != base::Date{})
      item.error("the invoice goes out before " + base::isoDate(before) + ", the date of the " +
                     (days.empty() ? "quote" : "one before it"),
                 "check both dates");
    days.push_back(day);
  }
  base::Share asked = job.price.deposit;
  std::size_t stages = job.price.stages.size() + (asked.isZero() ? 0 : 1);
  for (const auto& stage : job.price.stages) asked += stage.share;
  if (asked < base::Share::whole(100)) ++stages;
  if (days.size() > stages)
    f.error(std::to_string(days.size()) + " invoices for a price that is paid in " + std::to_string(stages),
            "name a stage for each under 'price.stages', or take days out");
  return days;
}

}  // namespace input
