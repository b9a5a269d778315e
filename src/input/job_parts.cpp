#include "input/job_parts.h"

#include "input/words.h"

namespace input {
namespace {

bool isLetter(char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'); }
bool isDigit(char c) { return c >= '0' && c <= '9'; }

/// One @ with something on both sides, a point in the right part, no spaces.
bool isEmail(const std::string& s) {
  const std::size_t at = s.find('@');
  if (at == 0 || at == std::string::npos || s.find('@', at + 1) != std::string::npos) return false;
  const std::string place = s.substr(at + 1);
  const std::size_t point = place.find('.');
  return s.find_first_of(" ,;<>") == std::string::npos && point != std::string::npos && point > 0 &&
         place.back() != '.';
}

/// 'Area/City' as in the tz database; whether it exists is seen when the calendar is made.
bool isTimezone(const std::string& s) {
  const std::size_t slash = s.find('/');
  if (slash == std::string::npos || slash == 0 || s.back() == '/' || s.size() > 60) return false;
  for (const char c : s) {
    if (!isLetter(c) && !isDigit(c) && c != '/' && c != '_' && c != '-' && c != '+') return false;
  }
  return true;
}

/// Degrees as millionths.
std::int64_t degrees(const Field& f, int most) {
  const std::optional<std::string> s = f.word();
  if (!s) return 0;
  const Parsed<base::Count> p = parseNumber(*s);
  if (p.problem) {
    f.error(p.problem->message, p.problem->hint);
    return 0;
  }
  const std::int64_t limit = most * std::int64_t{1'000'000};
  if (p.value.millionths > limit || p.value.millionths < -limit) {
    f.error(inQuotes(*s) + " is out of range",
            "allowed: from -" + std::to_string(most) + " to " + std::to_string(most));
    return 0;
  }
  return p.value.millionths;
}

std::string percent(base::Share s) {
  std::string text = std::to_string(s.millionths / 1'000'000);
  if (s.millionths % 1'000'000 != 0) {
    std::string decimals = std::to_string(s.millionths % 1'000'000);
    decimals.insert(0, 6 - decimals.size(), '0');
    while (decimals.back() == '0') decimals.pop_back();
    text += "." + decimals;
  }
  return text + " %";
}

void readText(Record& r, const char* key, std::string& into) {
  if (const Field f = r.may(key); f.isGiven()) into = text(f);
}

void readWorkingDays(const Field& f, model::Crew& crew) {
  if (!f.isGiven()) return;
  for (bool& works : crew.works) works = false;
  const std::vector<Field> items = f.items();
  for (const Field& item : items) {
    if (const auto day = chosen(item, dayWords, "day")) crew.works[*day] = true;
  }
  if (f.isEmptyList()) f.error("at least one working day is needed");
}

}  // namespace

model::Customer readCustomer(const Field& f) {
  Record r(f);
  model::Customer c;
  c.name = text(r.must("name"));
  c.address = texts(r.may("address"));
  readText(r, "phone", c.phone);
  const Field email = r.may("email");
  if (email.isGiven()) c.email = text(email);
  if (!c.email.empty() && !isEmail(c.email))
    email.error(inQuotes(c.email) + " is not an e-mail address", "write it like name@place.example");
  r.finish();
  return c;
}

model::Site readSite(const Field& f, const model::Content& content) {
  Record r(f);
  model::Site s;
  s.address = texts(r.may("address"));
  s.region = knownId(r.must("region"), content.regions, "region");
  const Field north = r.may("latitude"), east = r.may("longitude");
  s.latitudeMicro = degrees(north, 90);
  s.longitudeMicro = degrees(east, 180);
  if (north.isGiven() != east.isGiven())
    f.error(std::string("'") + (north.isGiven() ? "longitude" : "latitude") + "' is missing",
            "latitude and longitude go together");
  const Field zone = r.must("timezone");
  s.timezone = text(zone);
  s.timezonePos = zone.pos();
  if (!s.timezone.empty() && !isTimezone(s.timezone)) {
    zone.error(inQuotes(s.timezone) + " is not a time zone", "write it like Pacific/Auckland");
    s.timezone.clear();  // nobody needs to look it up
  }
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
    s.yearBuilt = whole(year, {1500, 2199, "from 1500 to 2199"}, 2000);
  s.isNearWater = yesNo(r.may("near_water"), false);
  s.isPublic = yesNo(r.may("public"), false);
  s.hasChildren = yesNo(r.may("children"), false);
  r.finish();
  return s;
}

model::Crew readCrew(const Field& f) {
  Record r(f);
  model::Crew c;
  const int people = whole(r.must("people"), {1, 50, "from 1 to 50"}, 0);
  if (people > 0) c.people = people;
  if (const auto span = clockSpan(r.must("hours"))) {
    c.startMinutes = span->from;
    c.endMinutes = span->until;
  }
  const Field breaks = r.may("breaks");
  const base::Hours rest =
      quantity(breaks, parseTime, {{0}, base::Hours::whole(24), "from 0 min to 24 h"}, base::Hours{500'000});
  c.breakMinutes = static_cast<int>(base::mulDiv(rest.millionths, 60, 1'000'000, base::Round::Up));
  if (c.breakMinutes >= c.endMinutes - c.startMinutes)
    (breaks.isGiven() ? breaks : f).error("the breaks are as long as the working day");
  readWorkingDays(r.may("days"), c);
  for (const Field& day : r.may("off").items()) c.off.push_back(date(day));
  const Field names = r.may("names");
  c.names = texts(names);
  if (people > 0 && c.names.size() > static_cast<std::size_t>(people))
    names.error(std::to_string(c.names.size()) + " names for a crew of " + std::to_string(people),
                "write 'people: " + std::to_string(c.names.size()) + "', or name only those on this job");
  readText(r, "leader", c.leader);
  r.finish();
  return c;
}

model::Pricing readPricing(const Field& f, const model::Region* region) {
  model::Pricing p;
  if (!f.isGiven()) return p;
  const int digits = region == nullptr ? 2 : region->currencyDigits;
  Record r(f);
  if (const Field margin = r.may("margin"); margin.isGiven())
    p.margin = quantity(margin, parseShare, margins);
  p.discount = quantity(r.may("discount"), parseShare, toWhole);
  readText(r, "discount_reason", p.discountReason);
  const Field deposit = r.may("deposit"), stages = r.may("stages");
  p.deposit = quantity(deposit, parseShare, toWhole);
  if (region != nullptr && region->depositMost && p.deposit > *region->depositMost)
    deposit.warn(inQuotes(deposit.word().value_or("")) + " is more than the most in " + region->name + ", " +
                     percent(*region->depositMost),
                 region->depositSource);
  base::Share sum = p.deposit;
  for (const Field& item : stages.items()) {
    Record s(item);
    model::Stage stage;
    stage.share =
        quantity(s.must("share"), parseShare, {{10'000}, base::Share::whole(100), "from 0.01 % to 100 %"});
    stage.when = text(s.must("when"));
    s.finish();
    sum += stage.share;
    p.stages.push_back(std::move(stage));
  }
  if (sum > base::Share::whole(100)) stages.error("deposit and stages are more than 100 % together");
  for (const Field& item : r.may("options").items()) {
    Record o(item);
    model::Option option;
    option.text = text(o.must("text"));
    option.price = money(o.must("price"), digits);
    o.finish();
    p.options.push_back(std::move(option));
  }
  if (const Field tax = r.may("tax"); tax.isGiven())
    p.tax = quantity(tax, parseShare, {{0}, base::Share::whole(50), "from 0 % to 50 %"});
  r.finish();
  return p;
}

}  // namespace input
