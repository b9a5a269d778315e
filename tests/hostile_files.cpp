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
    brand("logo: cricketboard.png", "");
    job("brand: firm.yaml");
  }
  ~JobFolder() { fs::remove_all(folder_); }
  JobFolder(const JobFolder&) = delete;
  JobFolder& operator=(const JobFolder&) = delete;

  /// Lines of the job in place of its 'brand:'.
  void job(const std::string& lines) {
    sample::write(folder_ / "job.yaml", replaced(bytesOf(SOURCE_DIR "/out_examples/porch/job.yaml"),
                                                 "brand: ../../content/brands/cricketboard.yaml", lines));
  }
  void brand(const std::string& from, const std::string& to) {
    sample::write(folder_ / "firm.yaml",
                  replaced(bytesOf(SOURCE_DIR "/content/brands/cricketboard.yaml"), from, to));
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

TEST_CASE("a firm's file that is none is told so") {
  JobFolder odd;
  const auto saidOf = [&](const std::string& name) {
    odd.job("brand: " + name);
    return odd.refusal();
  };
  const std::string at = "job.yaml:27:8: error: brand: '";
  const std::string hint = "  hint: the path starts at the folder of the file it stands in\n";
  CHECK(saidOf("dir") == at + "dir' " + isFolder + hint);
  CHECK(saidOf("pipe") == at + "pipe' " + isPipe + hint);
  CHECK(saidOf("/dev/zero") == at + "/dev/zero' " + isPipe + hint);
  CHECK(saidOf("none") == at + "none' " + isMissing + hint);
  app::Choices choices;
  choices.brandFile = odd.path("none").string();
  CHECK(odd.refusal("job.yaml", choices) == "--brand: error: brand: 'none' " + isMissing + hint);
  CHECK(saidOf("empty") ==
        "empty:1:1: error: the file is empty\n"
        "  hint: name another file; 'planksheaf new FILE' writes a job to fill in\n");
}

TEST_CASE("a forecast and rates that are no files are told with the line that names them") {
  JobFolder odd;
  const std::string hint = "  hint: the path starts at this file's folder\n";
  const auto saidOf = [&](const std::string& line) {
    odd.job("brand: firm.yaml\n" + line);
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
  odd.job("brand: firm.yaml");
  odd.brand("logo: cricketboard.png", "spreading_rates: none");
  CHECK(odd.refusal() == "firm.yaml:11:18: error: spreading_rates: 'none' " + isMissing + about);
  odd.brand("logo: cricketboard.png", "");
  CHECK(saidOf("spreading_rates: empty") ==
        "empty:1:1: error: the file is empty\n"
        "  hint: name another file; 'planksheaf new FILE' writes a job to fill in\n");
}

TEST_CASE("a logo and a template that are no files are told so") {
  JobFolder odd;
  const std::string hint = "  hint: the path starts at the brand's folder\n";
  const auto saidOf = [&](const std::string& name) {
    odd.brand("logo: cricketboard.png", "logo: " + name);
    return odd.refusal();
  };
  CHECK(saidOf("dir") == "firm.yaml:11:7: error: logo: 'dir' " + isFolder + hint);
  CHECK(saidOf("pipe") == "firm.yaml:11:7: error: logo: 'pipe' " + isPipe + hint);
  CHECK(saidOf("empty") ==
        "empty: error: the logo is empty\n"
        "  hint: save it again as a PNG or JPEG, or leave 'logo' out of the brand\n");
  fs::create_directories(odd.path("looks/en/quote.md"));
  app::Choices choices;
  choices.looks = odd.path("looks").string();
  CHECK_THROWS_WITH(app::check({{odd.path("job.yaml").string()}, "", {}, choices}),
                    odd.path("looks/en/quote.md").string() + ": the template cannot be read: it is a folder");
}

TEST_CASE("no line of a file is told that is named as a firm's file and is none") {
  JobFolder odd;
  odd.job("brand: secrets");
  const std::string about =
      "  hint: it needs 'name', 'address', 'phone', 'email' and 'rates', like content/brands/demo.yaml\n";
  for (const char* text : {"password: hunter2\nhost: db.example\n", "name: hunter2\nkey: x\n",
                           "hunter2 is the gate's code: nobody must know\n"}) {
    odd.put("secrets", text);
    CHECK(odd.refusal() == "secrets: error: this is not a firm's file\n" + about);
  }
  odd.put("secrets", "PASSWORD=hunter2\nHOST=db.example\n");
  CHECK(odd.refusal() ==
        "secrets:1:1: error: a group of keys is needed here, not a single value\n"
        "  hint: write it like {key: value}\n");
}

TEST_CASE("no line of a file is told that is named as spreading rates and holds none") {
  JobFolder odd;
  odd.job("brand: firm.yaml\nspreading_rates: secrets");
  odd.brand("logo: cricketboard.png", "");
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
  const auto brand = bytesOf(SOURCE_DIR "/content/brands/cricketboard.yaml");
  const auto line = brand.substr(brand.find("\nweb: "),
                                 brand.find('\n', brand.find("\nweb: ") + 1) - brand.find("\nweb: "));
  for (const std::string bad : {"javascript://alert(1)", "file:///etc/passwd", "ftp://firm.example",
                                "javascript:alert(1)", "https:///x", "firm example"}) {
    odd.put("firm.yaml", replaced(replaced(brand, line, "\nweb: " + bad), "logo: cricketboard.png", ""));
    CHECK(odd.refusal() == "firm.yaml:8:6: error: web: '" + bad + "' is not a web address\n" + hint);
  }
}

TEST_CASE("a mistake of a drawing's name is told with the line of the template, whatever it is filled with") {
  JobFolder odd;
  odd.brand("logo: cricketboard.png", "");
  const std::string quote =
      "---\nreader: customer\nheading: Quote\n---\n# {{title}}\n\n{{#options}}\n{{text}}\n{{/options}}\n";
  const auto lines = std::count(quote.begin(), quote.end(), '\n');
  odd.put("looks/en/quote.md", quote + "\n![a plan](figure:paln)\n");
  app::Choices choices;
  choices.looks = odd.path("looks").string();
  CHECK(odd.refusal("job.yaml", choices) ==
        "looks/en/quote.md:" + std::to_string(lines + 2) +
            ": error: 'paln' is not a known drawing; did you mean 'plan'?\n"
            "  hint: write figure:plan\n");
  odd.put("looks/en/quote.md", quote + "\n{{>foot}}\n");
  odd.put("looks/en/foot.md", "One\n\nTwo\n\n![a plan](figure:paln)\n");
  CHECK(odd.refusal("job.yaml", choices) ==
        "looks/en/foot.md:5: error: 'paln' is not a known drawing; did you mean 'plan'?\n"
        "  hint: write figure:plan\n");
}
