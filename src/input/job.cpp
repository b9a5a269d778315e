// A job file from its first key to its last, and what must fit together between its parts.
#include "input/content_parts.h"
#include "input/job_parts.h"
#include "input/read.h"
#include "input/sorted.h"
#include "input/words.h"
#include "model/lookup.h"

#include <algorithm>
#include <filesystem>

namespace input {
namespace {

/// The name of a folder everywhere: letters, digits, points, lines.
bool isFolderName(const std::string& s) {
  if (s.empty() || s.size() > 64 || s.front() == '.' || s.back() == '.') return false;
  for (const char c : s) {
    const bool isFine = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                        c == '.' || c == '_' || c == '-';
    if (!isFine) return false;
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

std::vector<model::Work> readWork(const Field& f) {
  std::vector<model::Work> work;
  const std::vector<Field> items = f.items();
  if (f.isEmptyList()) f.error("at least one kind of work is needed", "known: wash, fix, sand or oil");
  for (const Field& item : items) {
    const std::optional<model::Work> w = chosen(item, workWords, "kind of work");
    if (!w) continue;
    if (asksFor(work, *w)) item.error(inQuotes(item.word().value_or("")) + " is given twice");
    work.push_back(*w);
  }
  std::sort(work.begin(), work.end());  // the order in which it is done
  return work;
}

std::vector<int> readSanding(const Field& f, const Field& work, const std::vector<model::Work>& kinds) {
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
  if (items.size() > 8) f.error("more than 8 passes");
  const bool sands = asksFor(kinds, model::Work::Sand);
  if (!sands && !items.empty() && work.is(Node::Kind::List))
    f.error("grits are given but 'work' has no 'sand'", "add 'sand' to 'work' or leave 'sanding' out");
  if (sands && (!f.isGiven() || f.isEmptyList()))
    (f.isGiven() ? f : work)
        .error("'sand' is asked for but no grits are given", "add a line like sanding: [40, 60, 80]");
  return grits;
}

std::vector<model::StockTin> readStock(const Field& f, const model::Content& content) {
  std::vector<model::StockTin> stock;
  for (const Field& item : f.items()) {
    Record r(item);
    model::StockTin t;
    t.product = knownId(r.must("product"), content.products, "product");
    t.size = quantity(r.must("size"), parseVolume, tinSizes);
    t.count = whole(r.must("count"), {0, 1000, "from 0 to 1000"}, 0);
    r.finish();
    stock.push_back(std::move(t));
  }
  return stock;
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
  for (const char* document : {"quote", "aftercare", "safety", "dayplan", "orders", "office"}) {
    const Field list = r.may(document);
    if (!list.isGiven()) continue;
    auto& ids = languages[document];
    for (const Field& item : list.items()) {
      const std::string id = text(item);
      if (std::find(content.languages.begin(), content.languages.end(), id) == content.languages.end())
        reportUnknown(item, id, "language", content.languages);
      else if (std::find(ids.begin(), ids.end(), id) != ids.end())
        item.error(inQuotes(id) + " is given twice");
      else ids.push_back(id);
    }
    if (list.isEmptyList()) list.error("the list is empty", "name a language or leave the key out");
  }
  r.finish();
  return languages;
}

}  // namespace

base::Count taskRate(const Field& f, model::Measure measure) {
  const std::optional<std::string> s = f.word();
  if (!s) return {};
  PerHour counted = PerHour::Area;
  switch (measure) {
    case model::Measure::Job:
    case model::Measure::Day:
      f.error("this task has no rate, it takes a fixed time");
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
  const Parsed<base::Count> p = parsePerHour(*s, counted);
  if (p.problem) {
    f.error(p.problem->message, p.problem->hint);
  } else if (p.value.millionths < 10'000 || p.value > base::Count::whole(100'000)) {
    f.error(inQuotes(*s) + " is out of range", "allowed: from 0.01 to 100000 an hour");
  } else {
    return p.value;
  }
  return {};
}

model::Job readJob(const std::string& bytes, const std::string& file, const model::Content& content,
                   base::Diagnostics& out) {
  model::Job job;
  base::Diagnostics messages, forecastMessages;
  const std::optional<Node> root = parseTree(bytes, file, messages);
  if (!root) {
    forwardSorted(messages, out);
    return job;
  }
  const Source source{file, messages};
  Record r(Field(source, &*root, "", root->mark));
  job.ref = readRef(r.must("ref"));
  if (const Field f = r.may("after"); f.isGiven()) job.after = readRef(f);
  job.quoted = date(r.must("quoted"));
  job.validDays = whole(r.may("valid_days"), {1, 365, "from 1 to 365"}, 30);
  if (const Field f = r.must("customer"); f.isGiven()) job.customer = readCustomer(f);
  if (const Field f = r.must("site"); f.isGiven()) job.site = readSite(f, content);
  const Field start = r.must("start");
  job.start = date(start);
  if (job.start < job.quoted && job.start != base::Date{} && job.quoted != base::Date{})
    start.error("the work starts before " + base::isoDate(job.quoted) + ", the date of the quote");
  job.brandFile = pathBeside(r.must("brand"), file);
  const Field product = r.must("product");
  job.product = knownId(product, content.products, "product");
  checkProduct(product, job, content);
  if (const Field f = r.may("colour"); f.isGiven()) job.colour = text(f);
  const Limits<base::Share> toHalf = {{0}, base::Share::whole(50), "from 0 % to 50 %"};
  job.loss = quantity(r.may("loss"), parseShare, toHalf, base::Share::whole(5));
  job.allowance = quantity(r.may("allowance"), parseShare, toHalf);
  const Field work = r.must("work");
  job.work = readWork(work);
  job.sanding = readSanding(r.may("sanding"), work, job.work);
  job.areas = readDecks(r.must("areas"), content, job.work);
  if (const Field f = r.must("crew"); f.isGiven()) job.crew = readCrew(f);
  if (const auto span = clockSpan(r.may("coating"))) {
    job.coatingFrom = span->from;
    job.coatingUntil = span->until;
  }
  job.inStock = readStock(r.may("in_stock"), content);
  const auto region = content.regions.find(job.site.region);
  if (region != content.regions.end()) job.normals = region->second.normals;
  if (const Field f = r.may("weather"); f.isGiven()) readWeather(f, file, job, forecastMessages);
  job.price = readPricing(r.may("price"), region == content.regions.end() ? nullptr : &region->second);
  job.taskRates = readTaskRates(r.may("task_rates"), content);
  job.ratesFile = pathBeside(r.may("spreading_rates"), file);
  readTexts(r, "included", job.included);
  readTexts(r, "excluded", job.excluded);
  readTexts(r, "before_we_come", job.beforeWeCome);
  readTexts(r, "batches", job.batches);
  const auto oil = content.products.find(job.product);
  job.done = readDone(r.may("done"), job, oil == content.products.end() ? nullptr : &oil->second);
  job.left = readLeft(r.may("left"), job, content);
  if (const Field f = r.may("title"); f.isGiven()) job.title = text(f);
  if (const Field f = r.may("office_note"); f.isGiven()) job.officeNote = text(f);
  if (const Field f = r.may("languages"); f.isGiven()) {
    job.languages = readLanguages(f, content);
    job.languagesPos = f.pos();
  }
  r.finish();
  forwardSorted(messages, out);
  out.add(forecastMessages);
  return job;
}

std::string pathBeside(const Field& f, const std::string& file) {
  if (!f.isGiven()) return {};
  const std::string name = text(f);
  return name.empty() ? name : besideFile(file, name);
}

std::string brandFile(const std::string& text, const std::string& file) {
  base::Diagnostics ignored;  // readJob reports them
  const std::optional<Node> root = parseTree(text, file, ignored);
  if (!root || root->kind != Node::Kind::Map) return {};
  for (const Entry& e : root->entries) {
    if (e.key == "brand" && e.value.kind == Node::Kind::Word && !e.value.word.empty())
      return besideFile(file, e.value.word);
  }
  return {};
}

std::optional<model::Rates> ratesFor(const std::string& text, const std::string& file, const model::Job& job,
                                     const model::Brand& brand, base::Diagnostics& messages) {
  const auto found = brand.rates.find(job.site.region);
  if (found != brand.rates.end()) return found->second;
  base::Diagnostics ignored;
  const std::optional<Node> root = parseTree(text, file, ignored);
  base::SourcePos pos{file, 0, 0};
  if (root) {
    for (const Entry& e : root->entries) {
      if (e.key == "brand") pos = {file, e.value.mark.line, e.value.mark.column};
    }
  }
  messages.error(pos, "brand", inQuotes(brand.name) + " has no rates for region '" + job.site.region + "'",
                 "add them to the brand's file, under rates: " + job.site.region);
  return {};
}

}  // namespace input
