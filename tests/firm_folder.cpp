// A firm's folder over the content that comes with the program: what takes the place of what, and whose the
// mistakes are.
#include "app/firm/firm_folder.h"
#include "content_folder.h"

#include <algorithm>
#include <cstdlib>

namespace fs = std::filesystem;
using fixture::Folder;

namespace {

/// The sample content with a firm's folder 'own' in it.
struct Layered {
  Folder folder;
  base::Diagnostics messages;

  model::Content content() { return input::readContent(folder.path().string(), messages, own()); }
  std::string own() const { return (folder.path() / "own").string(); }
  void write(const std::string& file, const std::string& text) { folder.write("own/" + file, text); }
  /// Without the folder's name.
  std::string said() const {
    std::string all;
    for (base::Diagnostic d : messages.all()) {
      d.pos.file = fs::path(d.pos.file).lexically_relative(folder.path()).string();
      all += base::format(d);
    }
    return all;
  }
};

std::vector<std::string> idsOf(const std::vector<model::Task>& tasks) {
  std::vector<std::string> ids;
  for (const auto& task : tasks) ids.push_back(task.id);
  return ids;
}

}  // namespace

TEST_CASE("a firm's folder with nothing in it changes nothing") {
  Layered l;
  fs::create_directories(l.own());
  l.write("timbers.yaml", "# timbers:\n#   oak: {name: oak}\n\n");  // all still switched off
  const auto c = l.content();
  CHECK(l.said() == "");
  CHECK(c.timbers.size() == 1);
  CHECK(idsOf(c.tasks) == std::vector<std::string>{"clear", "wash", "sand"});
}

TEST_CASE("a firm's content is laid over the shipped one key by key, products by file") {
  Layered l;
  l.write("consumables.yaml", "consumables: {pad: {price: {nz: 21.50}}}\n");
  l.write("timbers.yaml",
          "timbers:\n  oak: {name: oak, hardwood: true, density: 720 kg/m3, uptake: {new: medium, weathered: "
          "open, "
          "sanded: open, oiled: medium, film: tight}}\n");
  l.write("regions/nz.yaml", "tax: {rate: 12.5 %}\n");
  l.write("tools.yaml", "tools: {washer: {sound: 81 dB}}\n");
  auto oil = input::readFile((l.folder.path() / "products/oil.yaml").string()).value();
  l.write("products/mine.yaml", oil);
  const std::string gallons = "  us: [{size: 1 gal, price: 84.00}]\n";
  oil.erase(oil.find(gallons), gallons.size());
  l.write("products/oil.yaml", oil.replace(oil.find("118.00"), 6, "99.00"));
  const auto c = l.content();
  CHECK(l.said() == "");
  CHECK(c.consumables.at("pad").price.at("nz").minor == 2150);
  CHECK(c.consumables.at("pad").price.at("us").minor == 980);
  CHECK(c.consumables.at("pad").soaksOil);
  CHECK(c.timbers.size() == 2);
  CHECK(c.regions.at("nz").tax.rate == base::Share{12'500'000});
  CHECK(c.regions.at("nz").tax.name == "GST");
  CHECK(c.tools.at(0).soundDb == 81);
  CHECK(c.tools.at(0).vibration->millionths == 2'500'000);
  CHECK(c.products.size() == 2);
  const auto& tins = c.products.at("oil").tins.at("nz");
  CHECK_FALSE(c.products.at("oil").tins.contains("us"));  // a product is one whole file
  CHECK(std::any_of(tins.begin(), tins.end(), [](const auto& tin) { return tin.price.minor == 9900; }));
}

TEST_CASE(
    "a list of a firm takes the place of the shipped one, a task goes by its id and stands behind the one "
    "above") {
  Layered l;
  l.write("tasks.yaml",
          "tasks:\n"
          "  - {id: call, name: call, per: job, hours: 0.5 h, wears: [boots]}\n"
          "  - {id: wash, rate: 20 m2/h, wears: [gloves]}\n"
          "  - {id: rinse, name: rinse, work: wash, per: surface, rate: 60 m2/h, wears: [boots]}\n");
  const auto c = l.content();
  CHECK(l.said() == "");
  REQUIRE(idsOf(c.tasks) == std::vector<std::string>{"call", "clear", "wash", "rinse", "sand"});
  CHECK(c.tasks[2].ratePerHour == base::Count::whole(20));
  CHECK(c.tasks[2].dryAfter == base::Hours::whole(36));
  CHECK(c.tasks[2].wears == std::vector<std::string>{"gloves"});
}

TEST_CASE("a mistake in a firm's file is told with that file, and the others are told too") {
  Layered l;
  l.write("timbers.yaml", "timbers:\n  kwila: {density: heavy}\n  kwila: {name: k}\n");
  l.write("consumables.yaml", "consumables:\n  padd: {price: {nz: 1.00}}\n");
  l.write("tasks.yaml", "- not a group\n");
  l.write("tools.yaml", "tools: {washer: [\n");
  l.write("regions/nz.yaml", "\ntex: {rate: 12.5 %}\n");
  l.content();
  CHECK(l.said() ==
        "own/regions/nz.yaml:2:1: error: 'tex' is not a known key here; did you mean 'tax'?\n"
        "  hint: known: name, language, currency, tax, units, paper, dates, numbers, emergency, telephone, "
        "poison, cutout, authorities, limits, states, holidays, deposit, cancellation, new_job or weather\n"
        "own/timbers.yaml:2:20: error: timbers.kwila.density: 'heavy' is not a value in kg/m3\n"
        "  hint: it is given like '12 kg/m3'\n"
        "own/timbers.yaml:3:3: error: timbers: 'kwila' is given twice\n"
        "  hint: the first stands in line 2\n"
        "own/consumables.yaml:2:9: error: consumables.padd: 'name' is missing\n"
        "  hint: write it like name: deck cleaner\n"
        "own/consumables.yaml:2:9: error: consumables.padd: 'unit' is missing\n"
        "  hint: write it like unit: L\n"
        "own/tasks.yaml:1:1: error: a group of keys is needed here, not a list\n"
        "  hint: write it like {key: value}\n"
        "own/tools.yaml:1:17: error: this [ is not closed, or a comma is missing after it\n"
        "  hint: values with # , { } [ ] in them need quotes\n");
}

TEST_CASE(
    "a language has the firm's words over the shipped ones, and lacks what only the firm's content says") {
  Layered l;
  base::Diagnostics& m = l.messages;
  const auto read = [&](const char* file, const char* id, const base::Language* english,
                        const model::Content& c) {
    return input::readLanguage((l.folder.path() / file).string(), id, english, c, m, l.own() + "/" + file);
  };
  l.folder.write("en.yaml",
                 "name: English\nplural: one other\nwords: {a: {b: Price}, days: {one: '{n} day', other: "
                 "'{n} days'}}\n");
  l.folder.write(
      "xx.yaml",
      "name: X\nplural: one other\nwords: {a: {b: Preis}, days: {one: '{n} Tag', other: '{n} Tage'}}\n"
      "content: {timbers: {oak: Eiche}}\n");
  model::Content c;
  c.timbers["oak"].name = "oak";
  const auto english = read("en.yaml", "en", nullptr, {});
  CHECK(read("xx.yaml", "xx", &english, c).words.at("a.b").forms.rbegin()->second == "Preis");
  l.write("xx.yaml", "words: {days: {one: 'ein Tag'}}\n");
  const auto own = read("xx.yaml", "xx", &english, c);
  CHECK(own.counted("days", 1) == "ein Tag");
  CHECK(own.counted("days", 2) == "2 Tage");
  CHECK(l.said() == "");
  l.write("en.yaml", "words: {a: {c: Cost}}\n");
  read("en.yaml", "en", &english, {});
  c.timbers.clear();
  c.timbers["larch"].name = "larch";  // and no oak: of that the shipped file may go on to speak
  read("xx.yaml", "xx", &english, c);
  CHECK(l.said() ==
        "own/en.yaml:1:16: error: words.a.c: there is no such text to translate; did you mean 'a.b'?\n"
        "  hint: take it out, or name it as content/languages/en.yaml does\n"
        "own/xx.yaml: error: content.timbers: 'timbers.larch' is missing\n"
        "  hint: in English: larch\n");
}

TEST_CASE("a firm is the nearest folder of that name that holds its file, else the user's own") {
  const Folder box;
  const auto at = [&](const char* name) { return (box.path() / name).string(); };
  const std::string job = at("jobs/2027/deck.yaml");
  fs::create_directories(at("jobs/2027"));
  const char* before = std::getenv("XDG_CONFIG_HOME");
  const std::string old = before == nullptr ? "" : before;
  ::setenv("XDG_CONFIG_HOME", at("config").c_str(), 1);
  CHECK(app::nearestFirm(job) == "");
  box.write("config/planksheaf/firm.yaml", "");
  CHECK(app::nearestFirm(job) == at("config/planksheaf"));
  ::setenv("XDG_CONFIG_HOME", "config", 1);  // a path that is not absolute is none (XDG Base Directory, 0.8)
  CHECK(app::nearestFirm(job) == "");
  ::setenv("XDG_CONFIG_HOME", at("config").c_str(), 1);
  box.write("firm/firm.yaml", "");
  CHECK(app::nearestFirm(job) == at("firm"));
  fs::create_directories(at("jobs/firm"));  // of no firm: it has no such file
  CHECK(app::nearestFirm(job) == at("firm"));
  box.write("jobs/2027/firm/firm.yaml", "");
  CHECK(app::nearestFirm(job) == at("jobs/2027/firm"));
  if (before == nullptr) ::unsetenv("XDG_CONFIG_HOME");
  else ::setenv("XDG_CONFIG_HOME", old.c_str(), 1);
}
