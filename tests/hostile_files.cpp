// Files that are none, that never end or that hold something else, wherever a path can be named.
#include "firm_sample.h"

#include <sys/stat.h>

using sample::bytesOf;
using sample::replaced;
namespace fs = std::filesystem;

namespace {

/// A folder with a job, its firm's file and what they are to name; goes away again.
class JobFolder {
 public:
  JobFolder() : folder_(fs::temp_directory_path() / ("odd" + std::to_string(getpid()))) {
    fs::create_directories(folder_ / "dir");
    sample::write(folder_ / "empty", "");
    ::mkfifo((folder_ / "pipe").c_str(), 0600);
    firm("logo: cricketboard.png", "");
    job("");
  }
  ~JobFolder() { fs::remove_all(folder_); }
  JobFolder(const JobFolder&) = delete;
  JobFolder& operator=(const JobFolder&) = delete;

  /// Lines of the job in place of its 'firm:'; the nearest is its firm.
  void job(const std::string& lines) {
    sample::write(folder_ / "job.yaml", replaced(bytesOf(SOURCE_DIR "/out_examples/porch/job.yaml"),
                                                 "firm: ../firms/cricketboard", lines));
  }
  void firm(const std::string& from, const std::string& to) {
    sample::write(folder_ / "firm/firm.yaml",
                  replaced(bytesOf(SOURCE_DIR "/out_examples/firms/cricketboard/firm.yaml"), from, to));
  }
  void put(const std::string& name, const std::string& bytes) { sample::write(folder_ / name, bytes); }
  fs::path path(const std::string& name) const { return folder_ / name; }

  /// What is said about a job that has to be refused, the folder's name cut out.
  std::string refusal(const std::string& name = "job.yaml", const app::Choices& choices = {}) const {
    const sample::Listener listener;
    const int status = app::check({{(folder_ / name).string()}, "", {}, choices});
    std::string said = listener.said();
    for (std::size_t at; (at = said.find(folder_.string() + "/")) != std::string::npos;)
      said.erase(at, folder_.string().size() + 1);
    INFO(said);
    CHECK(status == 1);
    return said;
  }

 private:
  fs::path folder_;
};

const std::string jobHint = "  hint: give the path of a job file; 'planksheaf new FILE' makes one\n";
const std::string isFolder = "cannot be read: it is a folder\n",
                  isPipe = "cannot be read: it is a device or a pipe, not a file\n",
                  isMissing = "cannot be read: there is no such file\n";

}  // namespace

TEST_CASE("a job that is an empty folder, a pipe, a device, empty or not there is told so") {
  const JobFolder odd;
  CHECK(odd.refusal("dir") ==
        "dir: error: there is no job below it\n  hint: a job has 'customer:' and 'areas:' at its top\n");
  CHECK(odd.refusal("pipe") == "pipe: error: " + isPipe + jobHint);
  CHECK(odd.refusal("/dev/zero") == "/dev/zero: error: " + isPipe + jobHint);
  CHECK(odd.refusal("none") == "none: error: " + isMissing + jobHint);
  CHECK(odd.refusal("empty") ==
        "empty:1:1: error: the file is empty\n"
        "  hint: name another file; 'planksheaf new FILE' writes a job to fill in\n");
}

TEST_CASE("a firm's folder that is none is told where it is named") {
  JobFolder odd;
  const auto saidOf = [&](const std::string& name) {
    odd.job("firm: " + name);
    return odd.refusal();
  };
  const std::string at = "job.yaml:27:7: error: firm: '", none = "' is not a firm's folder: ";
  const std::string hint = "  hint: 'planksheaf firm DIR' makes one; the path starts at the job's folder\n";
  CHECK(saidOf("dir") == at + "dir" + none + "it has no 'firm.yaml'\n" + hint);
  CHECK(saidOf("pipe") == at + "pipe" + none + "it is not a folder\n" + hint);
  CHECK(saidOf("firm/firm.yaml") == at + "firm/firm.yaml" + none + "it is not a folder\n" + hint);
  CHECK(saidOf("none") == at + "none" + none + "there is no such folder\n" + hint);
  app::Choices choices;
  choices.firm = odd.path("dir").string();
  CHECK(odd.refusal("job.yaml", choices) ==
        "--firm: error: firm: 'dir' is not a firm's folder: it has no 'firm.yaml'\n"
        "  hint: 'planksheaf firm DIR' makes one\n");
}

TEST_CASE("what lies in a firm's folder and is no file, or none of its, is told so, all at once") {
  JobFolder odd;
  const auto put = [&](const std::string& name, const std::string& text = "") {
    odd.put("firm/" + name, text);
  };
  fs::remove(odd.path("firm/firm.yaml"));
  ::mkfifo(odd.path("firm/firm.yaml").c_str(), 0600);
  ::mkfifo(odd.path("firm/timbers.yaml").c_str(), 0600);
  fs::create_directories(odd.path("firm/products"));
  fs::create_symlink("/dev/zero", odd.path("firm/products/mine.yaml"));
  fs::create_symlink("nowhere", odd.path("firm/tasks.yaml"));
  fs::create_directory_symlink("..", odd.path("firm/loop"));  // not gone into
  fs::create_directories(odd.path("firm/templates/en/quote.md"));
  put("templates/themes/own.yaml");
  put("templates/fr/quote.md");
  put("themes", "a file");
  put("tooles.yaml");
  put("costumers.csv");
  put("product/mine.yaml");
  put("regions/nz.yml");
  put("languages/de.yaml");
  for (const char* other :
       {"letters.txt", "firm.yaml~", "tasks.yaml.bak", "customers.xlsx", "themes-old/x.yaml"})
    put(other);  // anything else may lie there
  CHECK(odd.refusal() ==
        "firm/products/mine.yaml: error: the file cannot be read: it is a device or a pipe, not a file\n"
        "  hint: check that it is there and may be read\n"
        "firm/timbers.yaml: error: the file cannot be read: it is a device or a pipe, not a file\n"
        "  hint: check that it is there and may be read\n"
        "firm/tasks.yaml: error: the file cannot be read: there is no such file\n"
        "  hint: check that it is there and may be read\n"
        "firm/templates/en/quote.md: error: the template cannot be read: it is a folder\n"
        "  hint: check that it may be read\n"
        "firm/costumers.csv: error: is not part of a firm's folder; did you mean 'customers.csv'?\n"
        "  hint: known: firm.yaml, customers.csv, customers.vcf, spreading_rates.yaml, consumables.yaml, "
        "ghs.yaml, "
        "hazards.yaml, tasks.yaml, timbers.yaml, tools.yaml\n"
        "firm/languages/de.yaml: error: 'de' is not a known language\n"
        "  hint: known: en, es, pl\n"
        "firm/product: error: is not part of a firm's folder; did you mean 'products'?\n"
        "  hint: known: languages, products, regions, templates, themes\n"
        "firm/regions/nz.yml: error: would not be read\n"
        "  hint: end its name in .yaml\n"
        "firm/templates/fr: error: 'fr' is not a known language\n"
        "  hint: known: en, es, pl\n"
        "firm/templates/themes: error: themes do not belong in 'templates'\n"
        "  hint: move it up, beside 'templates'\n"
        "firm/themes: error: is not a folder\n"
        "  hint: 'themes' is a folder of files, one for each\n"
        "firm/tooles.yaml: error: is not part of a firm's folder; did you mean 'tools.yaml'?\n"
        "  hint: known: firm.yaml, customers.csv, customers.vcf, spreading_rates.yaml, consumables.yaml, "
        "ghs.yaml, "
        "hazards.yaml, tasks.yaml, timbers.yaml, tools.yaml\n"
        "firm/firm.yaml: error: the firm's file cannot be read: it is a device or a pipe, not a file\n"
        "  hint: 'planksheaf firm DIR' writes one to fill in\n");
}

TEST_CASE("a forecast and rates that are no files are told with the line that names them") {
  JobFolder odd;
  const std::string hint = "  hint: the path starts at this file's folder\n";
  const auto saidOf = [&](const std::string& line) {
    odd.job("#\n" + line);
    return odd.refusal();
  };
  CHECK(saidOf("weather: dir") == "job.yaml:28:10: error: weather: 'dir' " + isFolder + hint);
  CHECK(saidOf("weather: pipe") == "job.yaml:28:10: error: weather: 'pipe' " + isPipe + hint);
  CHECK(saidOf("weather: /dev/zero") == "job.yaml:28:10: error: weather: '/dev/zero' " + isPipe + hint);
  CHECK(saidOf("weather: empty") ==
        "empty: error: it is empty\n"
        "  hint: save it again\n");
  const std::string at = "job.yaml:28:18: error: spreading_rates: '";
  const std::string about =
      "  hint: 'planksheaf rates FOLDER' writes it; the path starts at the folder of the file it stands in\n";
  CHECK(saidOf("spreading_rates: dir") == at + "dir' " + isFolder + about);
  CHECK(saidOf("spreading_rates: pipe") == at + "pipe' " + isPipe + about);
  odd.job("");
  fs::create_directories(odd.path("firm/spreading_rates.yaml"));
  CHECK(odd.refusal() ==
        "firm/spreading_rates.yaml: error: spreading_rates: 'firm/spreading_rates.yaml' " + isFolder + about);
  fs::remove(odd.path("firm/spreading_rates.yaml"));
  odd.firm("logo: cricketboard.png", "spreading_rates: none");
  CHECK(odd.refusal() ==
        "firm/firm.yaml:11:18: error: spreading_rates: learned rates are found by their name now\n"
        "  hint: put the file into the firm's folder as 'spreading_rates.yaml', and leave this key out\n");
  odd.firm("logo: cricketboard.png", "");
  CHECK(saidOf("spreading_rates: empty") ==
        "empty:1:1: error: the file is empty\n"
        "  hint: name another file; 'planksheaf new FILE' writes a job to fill in\n");
}

TEST_CASE("a logo that is no file is told so") {
  JobFolder odd;
  const std::string hint = "  hint: the path starts at the firm's folder\n";
  const auto saidOf = [&](const std::string& name) {
    odd.firm("logo: cricketboard.png", "logo: " + name);
    return odd.refusal();
  };
  fs::create_directories(odd.path("firm/dir"));
  ::mkfifo(odd.path("firm/pipe").c_str(), 0600);
  odd.put("firm/empty", "");
  CHECK(saidOf("dir") == "firm/firm.yaml:11:7: error: logo: 'dir' " + isFolder + hint);
  CHECK(saidOf("pipe") == "firm/firm.yaml:11:7: error: logo: 'pipe' " + isPipe + hint);
  CHECK(saidOf("empty") ==
        "firm/empty: error: the logo is empty\n"
        "  hint: save it again as a PNG or JPEG, or leave 'logo' out of the firm's file\n");
}

TEST_CASE("no line of a file is told that is named as a firm's file and is none") {
  JobFolder odd;
  const std::string about =
      "  hint: it needs 'name', 'address', 'phone', 'email' and 'rates'; 'planksheaf firm DIR' writes one\n";
  for (const char* text : {"password: hunter2\nhost: db.example\n", "name: hunter2\nkey: x\n",
                           "hunter2 is the gate's code: nobody must know\n"}) {
    odd.put("firm/firm.yaml", text);
    CHECK(odd.refusal() == "firm/firm.yaml: error: this is not a firm's file\n" + about);
  }
  odd.put("firm/firm.yaml", "PASSWORD=hunter2\nHOST=db.example\n");
  CHECK(odd.refusal() ==
        "firm/firm.yaml:1:1: error: a group of keys is needed here, not a single value\n"
        "  hint: write it like {key: value}\n");
}

TEST_CASE("no line of a file is told that is named as spreading rates and holds none") {
  JobFolder odd;
  odd.job("spreading_rates: secrets");
  odd.firm("logo: cricketboard.png", "");
  for (const char* text : {"password: hunter2\n", "PASSWORD=hunter2\n", "[hunter2]\n"}) {
    odd.put("secrets", text);
    CHECK(odd.refusal() ==
          "secrets: error: this is not a file of spreading rates\n"
          "  hint: 'planksheaf rates FOLDER' writes one\n");
  }
}

TEST_CASE("only a web address can be the firm's page") {
  JobFolder odd;
  const std::string hint = "  hint: write it like firm.example or https://firm.example\n";
  const auto firm = bytesOf(SOURCE_DIR "/out_examples/firms/cricketboard/firm.yaml");
  const auto line =
      firm.substr(firm.find("\nweb: "), firm.find('\n', firm.find("\nweb: ") + 1) - firm.find("\nweb: "));
  for (const std::string bad : {"javascript://alert(1)", "file:///etc/passwd", "ftp://firm.example",
                                "javascript:alert(1)", "https:///x", "firm example"}) {
    odd.put("firm/firm.yaml", replaced(replaced(firm, line, "\nweb: " + bad), "logo: cricketboard.png", ""));
    CHECK(odd.refusal() == "firm/firm.yaml:8:6: error: web: '" + bad + "' is not a web address\n" + hint);
  }
}

TEST_CASE("a mistake of a drawing's name is told with the line of the template, whatever it is filled with") {
  JobFolder odd;
  odd.firm("logo: cricketboard.png", "");
  const std::string quote =
      "---\nreader: customer\nheading: Quote\n---\n# {{title}}\n\n{{#options}}\n{{text}}\n{{/options}}\n";
  const auto lines = std::count(quote.begin(), quote.end(), '\n');
  odd.put("firm/templates/en/quote.md", quote + "\n![a plan](figure:paln)\n");
  CHECK(odd.refusal() == "firm/templates/en/quote.md:" + std::to_string(lines + 2) +
                             ": error: 'paln' is not a known drawing; did you mean 'plan'?\n"
                             "  hint: write figure:plan\n");
  odd.put("firm/templates/en/quote.md", quote + "\n{{>foot}}\n");
  odd.put("firm/templates/en/foot.md", "One\n\nTwo\n\n![a plan](figure:paln)\n");
  CHECK(odd.refusal() ==
        "firm/templates/en/foot.md:5: error: 'paln' is not a known drawing; did you mean 'plan'?\n"
        "  hint: write figure:plan\n");
}
