// The crew's sheet and the care sheet as people get them: how long, how hard to read, and what they never
// say.
#include "app/documents.h"
#include "reading_level.h"

#include <unistd.h>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>

namespace fs = std::filesystem;

namespace {

/// A job file in a folder that goes away with the test.
class JobFile {
 public:
  explicit JobFile(const std::string& text)
      : path_(fs::temp_directory_path() / ("safety-pages-" + std::to_string(getpid()) + ".yaml")) {
    std::ofstream(path_) << text;
  }
  ~JobFile() { fs::remove(path_); }
  std::string path() const { return path_.string(); }

 private:
  fs::path path_;
};

const std::string brand = std::string("brand: ") + SOURCE_DIR + "/content/brands/demo.yaml\n";

/// Water-borne oil on a softwood deck on two cool days.
const std::string plainJob = R"(ref: PLAIN-1
quoted: 2027-03-02
customer: {name: Inga Thorley}
site: {region: nz, timezone: Pacific/Auckland, exposure: sheltered, hospital: 'Dunford, 20 min by road',
  meeting_point: car park, first_aider: Ada, sds_place: cab, extinguisher: tailgate}
start: 2027-03-16
product: plover-wb
colour: natural
loss: 5 %
areas:
  - name: Deck
    shape: {rectangle: [6 m, 4 m]}
    boards: {width: 140 mm, gap: 5 mm, thickness: 32 mm}
    timber: larch
    state: weathered
work: [wash, oil]
crew: {people: 2, hours: 07:30-16:00, names: [Ada, Ben], leader: Ada}
price: {deposit: 10 %}
)" + brand;

/// All that one job is likely to bring together.
const std::string worstJob = R"(ref: WORST-1
quoted: 2027-01-02
customer: {name: Inga Thorley}
site: {region: nz, timezone: Pacific/Auckland, exposure: coastal, access: 'gate behind the boat house, 0.9 m wide',
  water: tap at the shed, power: outlet at the door, hospital: 'Dunford Hospital, 20 min by road, 03 555 0100',
  meeting_point: 'car park, by the sign', first_aider: 'Ada, kit behind her seat', sds_place: blue folder in the cab,
  extinguisher: 'tailgate, left side', year_built: 1962, near_water: true, public: true, children: true}
start: 2027-02-15
product: tern-oil
colour: natural
loss: 5 %
areas:
  - name: Veranda
    shape: {rectangle: [10 m, 5 m]}
    boards: {width: 140 mm, gap: 5 mm, thickness: 32 mm}
    joists: 450 mm
    fixings: {kind: screws}
    timber: kwila
    state: film
    covered: true
    edge_height: 0.6 m
  - name: Terrace
    shape: {rectangle: [12 m, 8 m]}
    boards: {width: 140 mm, gap: 5 mm, thickness: 32 mm}
    joists: 450 mm
    fixings: {kind: screws}
    timber: kwila
    state: oiled
    edge_height: 0.9 m
work: [wash, fix, sand, oil]
sanding: [60, 80, 100]
crew: {people: 3, hours: 07:30-16:00, names: [Ada, Ben, Cyd], leader: Ada}
price: {deposit: 10 %}
)" + brand;

const app::Shipped& shipped() {
  static const app::Shipped all = app::readShipped({});
  return all;
}

/// The documents of a job by name.
std::map<std::string, typeset::Document> documents(const std::string& file) {
  base::Diagnostics messages;
  const auto x = app::compute(file, shipped(), {}, messages);
  REQUIRE(x);
  std::map<std::string, typeset::Document> all;
  for (auto& [name, pages] : app::setDocuments(*x, shipped(), {}, {}, messages)) all[name] = std::move(pages);
  for (const base::Diagnostic& d : messages.all()) FAIL(base::format(d));
  return all;
}

std::vector<std::string> exampleJobs() {
  std::vector<std::string> files;
  for (const auto& entry : fs::directory_iterator(SOURCE_DIR "/out_examples")) {
    if (fs::exists(entry.path() / "job.yaml")) files.push_back((entry.path() / "job.yaml").string());
  }
  std::sort(files.begin(), files.end());
  return files;
}

/// The words of each paragraph, item or cell, without drawings and furniture.
std::vector<std::string> blocksOf(const typeset::Document& document) {
  using typeset::Role;
  std::map<int, std::string> blocks;
  std::map<int, std::pair<std::size_t, typeset::Dim>> last;
  for (std::size_t p = 0; p < document.pages.size(); ++p) {
    for (const typeset::Item& item : document.pages[p].items) {
      const auto* run = std::get_if<typeset::TextRun>(&item.what);
      if (!run || item.tag <= 0) continue;
      int tag = item.tag;
      while (tag > 0 && (document.tags[static_cast<std::size_t>(tag)].role == Role::Link ||
                         document.tags[static_cast<std::size_t>(tag)].role == Role::Span))
        tag = document.tags[static_cast<std::size_t>(tag)].parent;
      if (document.tags[static_cast<std::size_t>(tag)].role == Role::Figure) continue;
      auto& words = blocks[tag];
      const std::pair place{p, run->baseline.y};
      if (!words.empty() && last[tag] != place) words += " ";
      last[tag] = place;
      words += run->text;
    }
  }
  std::vector<std::string> all;
  for (const auto& [tag, words] : blocks) all.push_back(words);
  return all;
}

std::string together(const typeset::Document& document) {
  std::string all;
  for (const auto& block : blocksOf(document)) all += block + "\n";
  return all;
}

bool holds(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("the safety sheet of a plain job has two pages and no fire or heat, the worst has three") {
  const auto plain = documents(JobFile(plainJob).path());
  CHECK(plain.at("safety").pages.size() <= 2);
  const std::string words = together(plain.at("safety"));
  CHECK_FALSE(holds(words, "alight"));
  CHECK_FALSE(holds(words, "DANGER"));
  CHECK(documents(JobFile(worstJob).path()).at("safety").pages.size() <= 3);
}

TEST_CASE(
    "oily rags are the first panel of the first page, with their number and the size of the container") {
  const auto worst = documents(JobFile(worstJob).path());
  const auto& sheet = worst.at("safety");
  std::string page;
  for (const typeset::Item& item : sheet.pages[0].items) {
    if (const auto* run = std::get_if<typeset::TextRun>(&item.what)) page += run->text + " ";
  }
  const std::size_t rags = page.find("alight");
  REQUIRE(rags != std::string::npos);
  CHECK(page.find("DANGER") < rags);
  CHECK(rags < page.find("WARNING"));
  CHECK(std::regex_search(page, std::regex(R"(\d+ rags, pads and brushes)")));
  // Both published ways, whichever comes first: NFPA, Safety with Oily Rags (2017), and USDA Wood Handbook,
  // FPL-GTR-282 (2021), ch. 16.
  const std::string words = together(sheet);
  for (const char* part : {"under water", "lid", "flat outdoors", "in one layer"}) {
    INFO(part);
    CHECK(holds(words, part));
    CHECK(holds(together(worst.at("aftercare")), part));
  }
}

TEST_CASE("limits are printed with the year of their rule, and those from memory not at all") {
  const std::map<std::string, std::string> brands = {{"gb", "withyplank"}, {"us", "cricketboard"}};
  const auto sheetIn = [&](const std::string& region) {
    std::string job = worstJob;
    const std::string nz = "region: nz", demo = "brands/demo";
    job.replace(job.find(nz), nz.size(), "region: " + region);
    job.replace(job.find(demo), demo.size(), "brands/" + brands.at(region));
    return together(documents(JobFile(job).path()).at("safety"));
  };
  const std::string nz = together(documents(JobFile(worstJob).path()).at("safety"));
  CHECK(holds(nz, "ask WorkSafe New Zealand"));  // wood dust: its file has no number it would stand for
  CHECK(holds(nz, "Directive 2002/44/EC (2002)"));
  const std::string gb = sheetIn("gb");
  CHECK(holds(gb, "3\u00A0mg/m³"));  // EH40/2005, hardwood
  CHECK(holds(gb, "Noise at Work Regulations 2005"));
  const std::string us = sheetIn("us");
  for (const char* words :
       {"29 CFR 1910.95", "85 and 90 dB(A)", "80\u00A0°F", "ft³/min", "a fall of 2\u00A0ft"}) {
    INFO(words);
    CHECK(holds(us, words));
  }
  for (const char* metric : {"°C", "m³/h", " kg"}) {
    INFO(metric);
    CHECK_FALSE(holds(us, metric));
  }
}

TEST_CASE("safety and care sheets read at grade 8 or below") {
  // Flesch-Kincaid grade: Kincaid et al., Navy Research Branch Report 8-75 (1975), formula from memory.
  auto files = exampleJobs();
  const JobFile worst(worstJob);
  files.push_back(worst.path());
  for (const auto& file : files) {
    const auto all = documents(file);
    for (const char* name : {"safety", "aftercare"}) {
      const auto level = reading::gradeOf(blocksOf(all.at(name)));
      INFO(file << ": " << name << ", " << level.words << " words");
      CHECK(level.words > 200);
      CHECK(level.grade <= 8);
    }
  }
}

TEST_CASE("no sheet promises what nobody can keep, and each defers to law, data sheet and manual") {
  const std::regex promise(R"(\b(safe|safely|compliant|compliance|complies|guaranteed|harmless|risk-free)\b)",
                           std::regex::icase);
  const JobFile worst(worstJob);
  auto files = exampleJobs();
  files.push_back(worst.path());
  for (const auto& file : files) {
    for (const auto& [name, pages] : documents(file)) {
      const std::string words = together(pages);
      std::smatch found;
      INFO(file << ": " << name);
      CHECK_FALSE(std::regex_search(words, found, promise));
      if (!found.empty()) FAIL_CHECK("says '" << found.str() << "'");
      if (name == "safety" || name == "aftercare") CHECK(holds(words, "stand above this"));
    }
  }
}

TEST_CASE("syllables and grades are counted as by hand") {
  for (const auto& [word, count] : std::map<std::string, int>{
           {"rag", 1},     {"water", 2},    {"outdoors", 2},  {"paper", 2},   {"bucket", 2},
           {"vehicle", 3}, {"handle", 2},   {"table", 2},     {"noise", 1},   {"closed", 1},
           {"sanded", 2},  {"eyes", 1},     {"safety", 3},    {"coating", 2}, {"danger", 2},
           {"people", 2},  {"machines", 2}, {"vibration", 3}, {"the", 1},     {"edges", 2}}) {
    INFO(word);
    CHECK(reading::syllables(word) == count);
  }
  // 6 words, 6 syllables, 1 sentence: 0.39 x 6 + 11.8 x 1 - 15.59 = -1.45
  CHECK(reading::gradeOf({"The cat sat on the mat."}).grade == Approx(-1.45));
}
