// The file 'firm.yaml' of a firm's folder: letterhead, colours, rates by region.
#include "input/content/content_parts.h"
#include "input/look/colour.h"
#include "input/look/font_finder.h"
#include "input/read.h"
#include "input/yaml/cursor.h"
#include "input/yaml/overlay.h"
#include "input/yaml/sorted.h"
#include "input/yaml/words.h"

#include <algorithm>
#include <filesystem>

namespace input {
namespace {

constexpr auto spreadingRatesName = "spreading_rates.yaml";
constexpr const char* ratesExample =
    "{nz: {labour_cost: 42.00, travel: 95.00, disposal: 60.00, overhead: 12 %, contingency: 4 %, margin: 25 "
    "%, "
    "extra_hour: 78.00}}";

model::Rates readRates(const Field& f, int digits) {
  const Limits<base::Share> shares = {{0}, base::Share::whole(200), "from 0 % to 200 %"};
  Record r(f);
  model::Rates rates;
  rates.labourCostPerHour = money(r.must("labour_cost", "42.00"), digits);
  rates.travelPerDay = money(r.must("travel", "95.00"), digits);
  rates.disposalPerJob = money(r.must("disposal", "60.00"), digits);
  rates.overhead = quantity(r.must("overhead", "12 %"), parseShare, shares);
  rates.contingency = quantity(r.must("contingency", "4 %"), parseShare, shares);
  rates.extraHour = money(r.must("extra_hour", "78.00"), digits);
  rates.margin = quantity(r.must("margin", "25 %"), parseShare, margins);
  r.finish();
  return rates;
}

std::string readLogo(const Field& f, const std::string& folder) {
  if (!f.isGiven()) return {};
  const std::string name = text(f);
  if (name.empty()) return {};
  std::error_code failed;
  const auto path =
      std::filesystem::absolute(std::filesystem::path(folder) / name, failed).lexically_normal();
  if (!failed && std::filesystem::is_regular_file(path, failed)) return path.string();
  f.error(inQuotes(name) + " cannot be read: " + whyUnreadable(path.string()),
          "the path starts at the firm's folder");
  return {};
}

/// With or without http:// or https://; it can be pressed.
std::string readWeb(const Field& f) {
  const std::string web = text(f);
  std::string_view rest = web;
  if (web.starts_with("https://") || web.starts_with("http://")) rest.remove_prefix(web.find("//") + 2);
  const std::string_view host = rest.substr(0, rest.find('/'));
  const bool isWeb = !host.empty() && host.find(':') == std::string_view::npos &&
                     rest.find_first_of(" <>\"\\") == std::string_view::npos;
  if (web.empty() || isWeb) return web;
  f.error(inQuotes(web) + " is not a web address", "write it like firm.example or https://firm.example");
  return {};
}

model::Delivery readDelivery(const Field& f) {
  model::Delivery d;
  if (!f.isGiven()) return d;
  Record r(f);
  d.to = texts(r.may("to"));
  if (const Field hours = r.may("hours"); hours.isGiven()) d.hours = text(hours);
  d.workingDays = whole(r.may("days"), {0, 60, "from 0 to 60"}, d.workingDays);
  r.finish();
  return d;
}

model::TenYearsBasis readTenYears(const Field& f) {
  const Limits<base::Share> rates = {{0}, base::Share::whole(25), "from 0 % to 25 %"};
  Record r(f);
  model::TenYearsBasis basis;
  basis.discountRate = quantity(r.must("discount_rate", "3 %"), parseShare, rates);
  basis.priceRise = quantity(r.may("price_rise"), parseShare, rates);
  const Field after = r.must("sand_after", "{new: 8, weathered: 3, sanded: 8, oiled: 6, film: 5}");
  if (after.isGiven()) {
    Record states(after);
    for (const auto& [name, state] : stateWords)
      basis.sandAfter[state] = whole(states.must(name, "8"), {1, 50, "from 1 to 50 years"}, 50);
    states.finish();
  }
  basis.grits = readGrits(r.must("sanding", "[40, 60, 80]"));
  basis.coats = whole(r.must("coats", "2"), {1, 4, "from 1 to 4"}, 2);
  r.finish();
  return basis;
}

/// What a customer may want to know of a firm before he signs, and where he pays.
void readTrust(Record& r, model::Firm& b) {
  if (const Field f = r.may("insurance"); f.isGiven()) b.insurance = text(f);
  if (const Field f = r.may("guarantee"); f.isGiven()) b.guarantee = text(f);
  b.licences = texts(r.may("licences"));
  b.bank = texts(r.may("bank"));
  if (const Field f = r.may("payment_days"); f.isGiven())
    b.paymentDays = whole(f, {0, 120, "from 0 to 120"}, 0);
}

/// A list for every region, or lists by region.
std::map<std::string, std::vector<std::string>> readRegistrations(const Field& f,
                                                                  const model::Content& content) {
  std::map<std::string, std::vector<std::string>> all;
  if (!f.is(Node::Kind::Map)) {
    all[""] = texts(f);
    return all;
  }
  Record regions(f);
  for (const auto& [id, at, list] : regions.all()) {
    if (content.regions.contains(id)) all[id] = texts(list);
    else reportUnknown(at, id, "region", keysOf(content.regions));
  }
  regions.finish();
  return all;
}

/// A file of something else may hold secrets; its lines are not to be told as mistakes of a firm's.
bool isFirm(const Record& r) {
  const auto keys = {"name", "address", "phone", "email", "rates"};
  return std::count_if(keys.begin(), keys.end(), [&](const char* key) { return r.has(key); }) >= 2;
}

model::Firm readKeys(Record& r, const std::string& folder, const model::Content& content) {
  model::Firm b;
  const auto optional = [&](const char* key) {
    const Field f = r.may(key);
    return f.isGiven() ? text(f) : std::string{};
  };
  b.name = text(r.must("name", "Example Timber Care"));
  b.tagline = optional("tagline");
  b.address = texts(r.must("address", "[1 Example Street, Exampletown]"));
  b.phone = text(r.must("phone", "03 555 0100"));
  b.email = text(r.must("email", "office@firm.example"));
  if (const Field web = r.may("web"); web.isGiven()) b.web = readWeb(web);
  b.registrations = readRegistrations(r.may("registrations"), content);
  b.contact = optional("contact");
  b.logoFile = readLogo(r.may("logo"), folder);
  if (const Field f = r.may("colours"); f.isGiven()) b.colours = readOwnColours(f);
  if (const Field f = r.may("fonts"); f.isGiven()) {
    FontFinder finder;
    Record fonts(f);
    b.fonts = readFaceFiles(fonts, finder);
    fonts.finish();
  }
  b.theme = optional("theme");
  if (const Field f = r.may("region"); f.isGiven()) b.region = knownId(f, content.regions, "region");
  b.terms = texts(r.may("terms"));
  readTrust(r, b);
  b.delivery = readDelivery(r.may("delivery"));
  if (const Field f = r.may("price"); f.isGiven()) {
    Record price(f);
    b.priceShow = choice(price.must("show", "areas"), priceShowWords, "way to show the price", b.priceShow);
    price.finish();
  }
  if (const Field f = r.may("ten_years"); f.isGiven()) b.tenYears = readTenYears(f);
  if (const Field f = r.may("spreading_rates"); f.isGiven())
    f.error("learned rates are found by their name now",
            std::string("put the file into the firm's folder as '") + spreadingRatesName +
                "', and leave this key out");
  const std::string learned = (std::filesystem::path(folder) / spreadingRatesName).string();
  if (isThere(learned)) b.spreadingRates = learned;
  const Field rates = r.must("rates", ratesExample);
  b.ratesPos = rates.pos();
  if (const Field& f = rates; f.isGiven()) {
    Record regions(f);
    for (const auto& [id, at, rates] : regions.all()) {
      const auto known = content.regions.find(id);
      if (known == content.regions.end()) {
        reportUnknown(at, id, "region", keysOf(content.regions));
      } else {
        b.rates[id] = readRates(rates, known->second.currencyDigits);
      }
    }
    regions.finish();
  }
  return b;
}

}  // namespace

model::Firm readFirm(const std::string& folder, const model::Content& content, base::Diagnostics& out) {
  const std::string file = (std::filesystem::path(folder) / "firm.yaml").string();
  const std::optional<std::string> text = readFile(file);
  if (!text) {
    out.error({file, 0, 0}, "", "the firm's file cannot be read: " + whyUnreadable(file),
              "'planksheaf firm DIR' writes one to fill in");
    return {};
  }
  model::Firm b;
  base::Diagnostics messages;
  if (const std::optional<Node> root = parseTree(*text, file, messages)) {
    const Source source{file, messages};
    Record r(Field(source, &*root, "", root->mark));
    if (isFirm(r)) {
      b = readKeys(r, folder, content);
      r.finish();
    } else if (messages.ok()) {
      messages.error(
          {file, 0, 0}, "", "this is not a firm's file",
          "it needs 'name', 'address', 'phone', 'email' and 'rates'; 'planksheaf firm DIR' writes one");
    }
  }
  forwardSorted(messages, out);
  return b;
}

}  // namespace input
