#include "fuzz/targets.h"

#include "app/pack/documents.h"
#include "app/pack/job_calendar.h"
#include "drawings/drawings.h"
#include "example_jobs.h"
#include "firm_jobs.h"
#include "forecast/read.h"
#include "fuzz/samples.h"
#include "input/look/front_matter.h"
#include "input/read.h"
#include "layout_sample.h"
#include "markup/read.h"
#include "pdf/images/read_image.h"
#include "pdf/write.h"
#include "sheets/facts/make_facts.h"
#include "sheets/template/fill.h"

#include <unistd.h>
#include <fstream>
#include <set>

namespace fuzz {
namespace fs = std::filesystem;
namespace {

const std::string landing = (source / "out_examples/landing/job.yaml").string();

/// A folder of this process, gone at its end.
struct Folder {
  fs::path path = fs::temp_directory_path() / ("fuzz" + std::to_string(getpid()));
  ~Folder() { fs::remove_all(path); }

  /// Alone in the folder; its path.
  std::string put(const std::string& name, const std::string& bytes) const {
    fs::remove_all(path);
    fs::create_directories((path / name).parent_path());
    std::ofstream(path / name, std::ios::binary) << bytes;
    return (path / name).string();
  }
};

const Folder& folder() {
  static const Folder one;
  return one;
}

/// Whether nothing is refused: what headers promise to throw is told to people. Overflows are ours.
template <class Read>
bool isTaken(Read read) {
  try {
    read();
    return true;
  } catch (const std::overflow_error&) {
    throw;
  } catch (const std::runtime_error&) {
    return false;
  }
}

bool isOk(const base::Diagnostics& messages) {
  base::format(messages);
  return messages.ok();
}

const model::JobResult& computedLanding() {
  static const model::JobResult job = [] {
    base::Diagnostics messages;
    return firm_jobs::compute(landing, {}, messages).value();
  }();
  return job;
}

std::string filled(const std::string& text, model::Reader reader, base::Diagnostics& messages) {
  static const auto facts = sheets::makeFacts(computedLanding());
  return sheets::fill({"a.md", text}, firm_jobs::shipped().templates.at("en").texts, facts.at(reader),
                      messages);
}

void setAndWrite(const std::string& markdown, base::Diagnostics& messages) {
  const auto document = markup::readMarkdown(markdown, "a.md", messages);
  if (messages.ok()) pdf::write(sample::layOut(document.blocks).document);
}

constexpr auto page =
    "# Landing\n\nA 41 f\n\n## Figures\n\n| a | b |\n|---|--:|\n| Landing | 41 |\n\n- a\n- b\n";

/// The older file is never refused; whole it comes again.
bool readCalendar(const std::string& bytes) { return app::jobCalendar(computedLanding(), bytes) == bytes; }

bool readFirmFile(const std::string& bytes) {
  static const auto names = [] {
    std::set<std::string> all;
    for (const auto& sample : firmSamples()) all.insert(sample.substr(0, sample.find('\n')));
    return all;
  }();
  const auto end = std::min(bytes.find('\n'), bytes.size());
  const auto asked = bytes.substr(0, end), name = names.contains(asked) ? asked : "firm.yaml";
  const auto file = folder().put(name, bytes.substr(std::min(end + 1, bytes.size())));
  base::Diagnostics messages;
  const auto content =
      input::readContent((source / "tests/sample_content").string(), messages, folder().path.string());
  if (name == "firm.yaml") input::readFirm(folder().path.string(), content, messages);
  if (name == "spreading_rates.yaml") input::readLearnedRates(file, content, messages);
  return isOk(messages);
}

bool readFont(const std::string& bytes) {
  const auto file = folder().put("a.ttf", bytes);
  return isTaken([&] {
    auto look = sample::theme();
    for (auto& [role, face] : look.faces) face = file;
    const auto fonts = typeset::readFonts(look);
    base::Diagnostics messages;
    const auto blocks = markup::readMarkdown(page, "a.md", messages);
    const typeset::Drawings none;
    pdf::write(typeset::layOut({blocks, look, fonts, model::Paper::A4, sample::furniture(), none, "Quote", "",
                                "", "en", "2026-01-19", sample::lines()},
                               messages));
  });
}

bool readJob(const std::string& bytes) {
  base::Diagnostics messages;
  for (const auto& read : input::readJobs(bytes, landing, firm_jobs::shipped().content))
    messages.add(read.messages);
  input::headOf(bytes, landing);
  input::firmFolder(bytes, landing);
  return isOk(messages);
}

bool readMarkdown(const std::string& bytes) {
  base::Diagnostics messages;
  setAndWrite(bytes, messages);
  return isOk(messages);
}

bool readPack(const std::string& bytes) {
  base::Diagnostics messages;
  const app::JobText job{landing, bytes};
  const auto shipped = firm_jobs::firms().of(job);
  if (const auto x = app::compute(job, *shipped, {}, messages)) {
    app::makeDocuments(*x, *shipped, {}, {}, messages);
    app::jobCalendar(*x, "");
  }
  return isOk(messages);
}

bool readPicture(const std::string& bytes) {
  return isTaken([&] {
    pdf::readImage(bytes, 10);
    auto around = sample::furniture();
    around.logo = std::make_shared<const typeset::Image>(pdf::readImage(bytes));
    pdf::write(sample::layOut({sample::title("Quote")}, true, model::Paper::A4, around).document);
  });
}

bool readSign(const std::string& bytes) {
  folder().put("a.svg", bytes);
  return isTaken([] { drawings::sign(folder().path.string(), "a", typeset::Dim::mm(10)); });
}

bool readTemplate(const std::string& bytes) {
  base::Diagnostics messages;
  const auto read = input::readTemplate(bytes, "a.md", messages);
  const auto text =
      filled(read.body, read.document ? read.document->reader : model::Reader::Customer, messages);
  if (messages.ok()) setAndWrite(text, messages);
  return isOk(messages);
}

bool readTheme(const std::string& bytes) {
  base::Diagnostics messages;
  auto look =
      input::readTheme(folder().put("own.yaml", bytes), messages, {(source / "templates/themes").string()});
  if (messages.ok()) input::applyFirm(look, computedLanding().c.firm, "firm.yaml", messages);
  if (messages.ok())
    pdf::write(sample::layOutIn(look, markup::readMarkdown(page, "a.md", messages).blocks).document);
  return isOk(messages);
}

bool readWeather(const std::string& bytes) {
  base::Diagnostics messages;
  forecast::readForecast(bytes, "weather", {"Pacific/Auckland", 40}, messages);
  return isOk(messages);
}

std::vector<std::string> markdownSamples() {
  std::vector<std::string> all = {page};
  for (const char* name : {"quote", "aftercare", "safety", "orders"}) {
    const auto& templates = firm_jobs::shipped().templates.at("en");
    base::Diagnostics messages;
    all.push_back(filled(templates.texts.at(name).text, templates.documents.at(name).kind.reader, messages));
  }
  return all;
}

std::vector<std::string> templateSamples() {
  auto all = filesIn(source / "templates/en", ".md");
  std::erase_if(all, [](const auto& text) { return !text.starts_with("---"); });  // parts of others
  return all;
}

/// Without the one that has no rain.
std::vector<std::string> weatherSamples() {
  std::vector<std::string> all;
  for (const char* ending : {".csv", ".json", ".xml"})
    for (auto& file : filesIn(source / "tests/weather", ending, "nws-hourly.json"))
      all.push_back(std::move(file));
  return all;
}

struct Reader {
  std::vector<std::string> (*samples)();
  bool (*read)(const std::string& bytes);
  int changes;
};

const std::map<std::string, Reader> readers = {
    {"calendar", {[] { return std::vector{app::jobCalendar(computedLanding(), "")}; }, readCalendar, 100}},
    {"firm", {firmSamples, readFirmFile, 100}},
    {"font", {fontSamples, readFont, 100}},
    {"job", {jobSamples, readJob, 200}},
    {"jpeg", {jpegSamples, readPicture, 300}},
    {"markdown", {markdownSamples, readMarkdown, 100}},
    {"pack", {jobSamples, readPack, 30}},
    {"png", {pngSamples, readPicture, 300}},
    {"sign", {[] { return filesIn(source / "content/signs", ".svg"); }, readSign, 300}},
    {"template", {templateSamples, readTemplate, 100}},
    {"theme", {themeSamples, readTheme, 100}},
    {"weather", {weatherSamples, readWeather, 500}}};

}  // namespace

std::vector<std::string> targetNames() {
  std::vector<std::string> names;
  for (const auto& [name, reader] : readers) names.push_back(name);
  return names;
}

Target targetOf(const std::string& name) {
  const auto found = readers.find(name);
  if (found == readers.end()) throw std::runtime_error("no target '" + name + "'");
  return {name, found->second.samples(), found->second.read, found->second.changes};
}

}  // namespace fuzz
