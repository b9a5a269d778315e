// A job file from its first key to its last, and what must fit together between its parts.
#include "base/letters.h"
#include "input/content/content_parts.h"
#include "input/job/job_parts.h"
#include "input/read.h"
#include "input/yaml/edit.h"
#include "input/yaml/words.h"
#include "model/lookup.h"

#include <algorithm>
#include <filesystem>

namespace input {
namespace {

/// The name of a folder everywhere: letters, digits, points, lines.
bool isFolderName(const std::string& s) {
  if (s.empty() || s.size() > 64 || s.front() == '.' || s.back() == '.') return false;
  for (const char c : s) {
    if (!base::isLetter(c) && !base::isDigit(c) && c != '.' && c != '_' && c != '-') return false;
  }
  return true;
}

std::string readRef(const Field& f) {
  std::string ref = text(f);
  if (!ref.empty() && !isFolderName(ref)) {
    f.error(inQuotes(ref) + " cannot name a folder",
            "use letters, digits, . _ and -, at most 64, not . first or last");
    return {};
  }
  return ref;
}

std::string readFirstJob(const Field& f, const model::Job& job) {
  if (job.after.empty())
    f.error("belongs to a job that names the one before it under 'after'",
            "add a line like after: LA-2026-007, or leave it out");
  const std::string ref = readRef(f);
  if (!ref.empty() && ref == job.ref)
    f.error(inQuotes(ref) + " is this job's own number", "name the first job of the deck");
  return ref;
}

std::vector<model::Work> readWork(const Field& f) {
  std::vector<model::Work> work;
  const std::vector<Field> items = f.items();
  if (f.isEmptyList()) f.error("at least one kind of work is needed", "known: wash, fix, sand or oil");
  for (const Field& item : items) {
    const std::optional<model::Work> w = chosen(item, workWords, "kind of work");
    if (!w) continue;
    if (asksFor(work, *w))
      item.error(inQuotes(item.word().value_or("")) + " is given twice", "leave one out");
    work.push_back(*w);
  }
  std::sort(work.begin(), work.end());  // the order in which it is done
  return work;
}

std::vector<int> readSanding(const Field& f, const Field& work, const std::vector<model::Work>& kinds) {
  std::vector<int> grits = readGrits(f);
  const bool sands = asksFor(kinds, model::Work::Sand);
  if (!sands && f.is(Node::Kind::List) && !f.isEmptyList() && work.is(Node::Kind::List))
    f.error("grits are given but 'work' has no 'sand'", "add 'sand' to 'work' or leave 'sanding' out");
  if (sands && (!f.isGiven() || f.isEmptyList()))
    (f.isGiven() ? f : work)
        .error("'sand' is asked for but no grits are given", "add a line like sanding: [40, 60, 80]");
  return grits;
}

constexpr const char* newProduct =
    "each is a file in content/products, or in 'products' of the firm's folder";

/// A size that the product is not sold in is hardly meant.
void warnOfSize(const Field& f, const model::StockTin& tin, const std::string& region,
                const model::Content& content) {
  const auto product = content.products.find(tin.product);
  if (product == content.products.end() || tin.size.isZero()) return;
  const auto tins = product->second.tins.find(region);
  if (tins == product->second.tins.end()) return;
  const auto isSold = [&](const model::Tin& t) { return t.size == tin.size; };
  if (std::any_of(tins->second.begin(), tins->second.end(), isSold)) return;
  f.warn(inQuotes(tin.product) + " is not sold in tins of " + inQuotes(f.word().value_or("")),
         "check number and unit; its tins stand in the product's file, under tins: " + region);
}

std::vector<model::StockTin> readStock(const Field& f, const std::string& region,
                                       const model::Content& content) {
  std::vector<model::StockTin> stock;
  for (const Field& item : f.items()) {
    Record r(item);
    model::StockTin t;
    t.product = knownId(r.must("product", "tern-oil"), content.products, "product", newProduct);
    const Field size = r.must("size", "2.5 L");
    t.size = quantity(size, parseVolume, tinSizes);
    warnOfSize(size, t, region, content);
    t.count = whole(r.must("count", "1"), tinCounts, 0);
    r.finish();
    stock.push_back(std::move(t));
  }
  return stock;
}

/// A rate five times the usual one, or a fifth of it, is hardly meant.
void warnOfRate(const Field& f, base::Count rate, const model::Task& task) {
  const base::Count usual = task.ratePerHour;
  if (rate.isZero() || usual.isZero() || (rate <= usual * 5 && usual <= rate * 5)) return;
  f.warn(inQuotes(f.word().value_or("")) + " is far from the usual rate of '" + task.id + "'",
         "one person's hour is meant; check number and unit");
}

std::map<std::string, base::Count> readTaskRates(const Field& f, const model::Content& content) {
  std::map<std::string, base::Count> rates;
  if (!f.isGiven()) return rates;
  Record r(f);
  std::vector<std::string> known;
  for (const model::Task& t : content.tasks) known.push_back(t.id);
  for (const auto& [id, at, rate] : r.all()) {
    const auto task = std::find_if(content.tasks.begin(), content.tasks.end(),
                                   [&, &wanted = id](const model::Task& t) { return t.id == wanted; });
    if (task == content.tasks.end()) {
      reportUnknown(at, id, "task", known);
    } else {
      rates[id] = taskRate(rate, task->measure);
      warnOfRate(rate, rates[id], *task);
    }
  }
  r.finish();
  return rates;
}

void checkProduct(const Field& f, const model::Job& job, const model::Content& content) {
  const auto product = content.products.find(job.product);
  const auto region = content.regions.find(job.site.region);
  if (product == content.products.end() || region == content.regions.end()) return;
  const auto tins = product->second.tins.find(job.site.region);
  if (tins == product->second.tins.end() || tins->second.empty())
    f.error(inQuotes(job.product) + " has no tins in region '" + job.site.region + "'",
            "add them with their prices to the product's file, under tins: " + job.site.region);
}

void readTexts(Record& r, const char* key, std::vector<std::string>& into) { into = texts(r.may(key)); }

/// A path named in a file, from that file's folder.
std::string besideFile(const std::string& file, const std::string& path) {
  return (std::filesystem::path(file).parent_path() / path).lexically_normal().string();
}

/// 'languages: {safety: [en, es]}'.
std::map<std::string, std::vector<std::string>> readLanguages(const Field& f, const model::Content& content) {
  std::map<std::string, std::vector<std::string>> languages;
  Record r(f);
  for (const std::string& document : content.documents) {
    const Field list = r.may(document);
    if (!list.isGiven()) continue;
    auto& ids = languages[document];
    for (const Field& item : list.items()) {
      const std::string id = text(item);
      if (std::find(content.languages.begin(), content.languages.end(), id) == content.languages.end())
        reportUnknown(item, id, "language", content.languages);
      else if (std::find(ids.begin(), ids.end(), id) != ids.end())
        item.error(inQuotes(id) + " is given twice", "leave one out");
      else ids.push_back(id);
    }
    if (list.isEmptyList()) list.error("the list is empty", "name a language or leave the key out");
  }
  r.finish();
  return languages;
}

base::Places placesIn(const Node& root, const std::string& file) {
  base::Places places = {{"", {file, 1, 1}}};
  const auto put = [&](const std::string& path, Mark m) {
    places.emplace(path, base::SourcePos{file, m.line, m.column});
  };
  for (const Entry& e : root.entries) {
    put(e.key, e.value.mark);
    for (const Entry& part : e.value.entries) put(e.key + "." + part.key, part.value.mark);
    for (std::size_t i = 0; i < e.value.items.size(); ++i)
      put(e.key + "[" + std::to_string(i + 1) + "]", e.value.items[i].mark);
  }
  return places;
}

/// Nothing where it is left out, or no date.
std::optional<base::Date> mayDate(const Field& f) {
  const base::Date day = date(f);
  return day == base::Date{} ? std::nullopt : std::optional(day);
}

std::vector<std::string> readPapers(const Field& f) {
  std::vector<std::string> papers;
  constexpr Word<const char*> paperWords[] = {{"treated", "treated"}};
  for (const Field& item : f.items()) papers.emplace_back(choice(item, paperWords, "licence", ""));
  return papers;
}

}  // namespace

std::vector<int> readGrits(const Field& f) {
  std::vector<int> grits;
  const std::vector<Field> items = f.items();
  for (const Field& item : items) {
    const int grit = whole(item, {12, 600, "from 12 to 600"}, 0);
    if (grit == 0) continue;
    if (!grits.empty() && grit <= grits.back())
      item.error("grit " + std::to_string(grit) + " is not finer than " + std::to_string(grits.back()),
                 "list the grits from coarse to fine");
    grits.push_back(grit);
  }
  if (items.size() > 8) f.error("more than 8 passes", "one grit for each pass, coarse to fine");
  return grits;
}

base::Count taskRate(const Field& f, model::Measure measure) {
  if (!f.word()) return {};
  PerHour counted = PerHour::Area;
  switch (measure) {
    case model::Measure::Job:
    case model::Measure::Day:
      f.error("this task has no rate, it takes a fixed time",
              "leave it out; its time stands in content/tasks.yaml");
      return {};
    case model::Measure::Surface:
    case model::Measure::Wetted:
      break;
    case model::Measure::CutIn:
    case model::Measure::BoardLength:
      counted = PerHour::Length;
      break;
    case model::Measure::Fixings:
      counted = PerHour::Pieces;
      break;
  }
  const bool isUs = f.source().isUs;
  const char* unit = counted == PerHour::Area     ? (isUs ? "ft2/h" : "m2/h")
                     : counted == PerHour::Length ? (isUs ? "ft/h" : "m/h")
                                                  : "pieces/h";
  const auto parse = [&](std::string_view s) { return parsePerHour(s, counted); };
  const auto isWithin = [](base::Count n) {
    return n.millionths >= 10'000 && n <= base::Count::whole(100'000);
  };
  return valueWithin(f, parse, isWithin, "allowed: from 0.01 to 100000 an hour", {unit})
      .value_or(base::Count{});
}

model::Job readTree(const Node& root, const std::string& file, const model::Content& content,
                    base::Diagnostics& messages) {
  model::Job job;
  Source source{file, messages};
  Record r(Field(source, &root, "", root.mark));
  const Field ref = r.must("ref", "JOB-2027-001"), after = r.may("after");
  job.ref = readRef(ref);
  job.refPos = ref.pos();
  if (after.isGiven()) job.after = readRef(after);
  job.afterPos = after.pos();
  if (!job.after.empty() && job.after == job.ref)
    after.error(inQuotes(job.after) + " is this job's own number",
                "name the job it follows, or leave 'after' out");
  if (const Field f = r.may("first_job"); f.isGiven()) job.firstJob = readFirstJob(f, job);
  job.revision = whole(r.may("revision"), {0, 999, "from 0 to 999"}, 0);
  job.quoted = date(r.must("quoted", "2027-03-02"));
  job.validDays = whole(r.may("valid_days"), {1, 365, "from 1 to 365", 5, 120, "from 5 to 120"}, 30);
  job.accepted = mayDate(r.may("accepted"));
  job.declined = mayDate(r.may("declined"));
  if (const Field f = r.must("customer", "{name: A. Customer}"); f.isGiven())
    job.customer = readCustomer(f, content);
  if (const Field f = r.must("site", "{region: nz, timezone: Pacific/Auckland}"); f.isGiven())
    job.site = readSite(f, content);
  const auto region = content.regions.find(job.site.region);
  source.isUs = region != content.regions.end() && region->second.units == model::UnitSystem::UsCustomary;
  const Field start = r.must("start", "2027-03-16");
  job.start = date(start);
  job.startPos = start.pos();
  if (job.start < job.quoted && job.start != base::Date{} && job.quoted != base::Date{})
    start.error("the work starts before " + base::isoDate(job.quoted) + ", the date of the quote",
                "check both dates");
  else if (job.start > job.quoted + std::chrono::days{366} && job.quoted != base::Date{})
    start.warn(
        "the work starts more than a year after " + base::isoDate(job.quoted) + ", the date of the quote",
        "check both dates");
  job.firmFolder = pathBeside(r.may("firm"), file);
  if (const Field f = r.may("brand"); f.isGiven())
    f.error("'brand' is now 'firm', a folder",
            "put this file into it as 'firm.yaml', with its logo, and write firm: FOLDER");
  const Field product = r.must("product", "tern-oil");
  job.product = knownId(product, content.products, "product", newProduct);
  checkProduct(product, job, content);
  if (const Field f = r.may("colour"); f.isGiven()) job.colour = text(f);
  const Limits<base::Share> toHalf = {{0},
                                      base::Share::whole(50),
                                      "from 0 % to 50 %",
                                      base::Share::whole(1),
                                      base::Share::whole(25),
                                      "from 1 % to 25 %"};
  job.loss = quantity(r.may("loss"), parseShare, toHalf, base::Share::whole(5));
  job.allowance = quantity(r.may("allowance"), parseShare, toHalf);
  const Field work = r.must("work", "[wash, fix, sand, oil]");
  job.work = readWork(work);
  job.sanding = readSanding(r.may("sanding"), work, job.work);
  job.areas = readDecks(
      r.must("areas", "[{name: Deck, shape: {rectangle: [6 m, 4 m]}, timber: kwila, state: weathered}]"),
      content, job.work);
  job.around = readAround(r.may("around"));
  job.photos = readPhotos(r.may("photos"), file);
  if (const Field f = r.must("crew", "{people: 2, hours: 07:30-16:00}"); f.isGiven())
    job.crew = readCrew(f, region == content.regions.end() ? nullptr : &region->second);
  if (const auto span = clockSpan(r.may("coating"))) {
    job.coatingFrom = span->from;
    job.coatingUntil = span->until;
  }
  job.inStock = readStock(r.may("in_stock"), job.site.region, content);
  if (region != content.regions.end()) job.normals = region->second.normals;
  if (const Field f = r.may("weather"); f.isGiven()) readWeather(f, job);
  job.price = readPricing(r.may("price"), region == content.regions.end() ? nullptr : &region->second);
  job.taskRates = readTaskRates(r.may("task_rates"), content);
  job.ratesFile = pathBeside(r.may("spreading_rates"), file);
  readTexts(r, "included", job.included);
  readTexts(r, "excluded", job.excluded);
  readTexts(r, "before_we_come", job.beforeWeCome);
  readTexts(r, "batches", job.batches);
  const auto oil = content.products.find(job.product);
  if (const Field f = r.may("done"); f.is(Node::Kind::Word)) job.doneOn = mayDate(f);
  else job.done = readDone(f, job, oil == content.products.end() ? nullptr : &oil->second);
  job.left = readLeft(r.may("left"), job, content);
  job.invoices = readInvoices(r.may("invoices"), job);
  if (const Field f = r.may("title"); f.isGiven()) job.title = text(f);
  if (const Field f = r.may("office_note"); f.isGiven()) job.officeNote = text(f);
  if (const Field f = r.may("languages"); f.isGiven()) job.languages = readLanguages(f, content);
  if (const Field f = r.may("licensed_for"); f.isGiven()) job.licensedFor = readPapers(f);
  r.may("choices");  // laid over the rest before
  if (const Field f = r.may("chosen"); f.isGiven())
    f.error("there are no choices", "list them under 'choices:', or leave 'chosen' out");
  r.finish();
  job.places = placesIn(root, file);
  checkWhole(job, content, messages);
  return job;
}

std::string pathBeside(const Field& f, const std::string& file) {
  if (!f.isGiven()) return {};
  const std::string name = text(f);
  return name.empty() ? name : besideFile(file, name);
}

JobHead headOf(const std::string& text, const std::string& file) {
  JobHead head;
  base::Diagnostics ignored;
  const std::optional<Node> root = parseTree(text, file, ignored);
  if (!root || root->kind != Node::Kind::Map) return head;
  const std::pair<const char*, std::string*> parts[] = {
      {"ref", &head.ref}, {"after", &head.after}, {"quoted", &head.quoted}, {"firm", &head.firm}};
  for (const Entry& e : root->entries) {
    for (const auto& [key, into] : parts) {
      if (e.key == key && e.value.kind == Node::Kind::Word && into->empty()) *into = e.value.word;
    }
  }
  if (!head.firm.empty()) head.firm = besideFile(file, head.firm);
  return head;
}

// Thousands of jobs are not read twice for it: most name none, or say it on a plain line of its own.
std::string firmFolder(const std::string& text, const std::string& file) {
  if (text.find("firm") == std::string::npos) return {};
  const std::string line = "\nfirm: ";
  if (const auto at = text.find(line); at != std::string::npos && text.front() != '{') {
    const auto from = at + line.size();
    const auto name = text.substr(from, text.find_first_of("\r\n", from) - from);
    const bool isOnly = text.find(line, from) == std::string::npos;
    if (isOnly && plainOrQuoted(name) == name) return besideFile(file, name);
  }
  return headOf(text, file).firm;
}

}  // namespace input
