// The weather file of a job: where it is looked for, what is said about it, and who is named for it.
#include "app/pack/weather_file.h"
#include "safety_jobs.h"
#include "weather_files.h"

#include <unistd.h>

namespace fs = std::filesystem;

namespace {

/// The plain job at a place, with a sample of a weather file beside it.
struct JobBeside {
  fs::path folder = fs::temp_directory_path() / ("weather-job-" + std::to_string(getpid()));
  std::string said;
  std::optional<model::JobResult> x;

  JobBeside(const std::string& sample, const std::string& place, const std::string& weather) {
    fs::create_directories(folder);
    fs::copy_file(fs::path(SOURCE_DIR) / "tests/weather" / sample, folder / "saved",
                  fs::copy_options::overwrite_existing);
    std::string job = safety_jobs::plainJob + "weather: " + weather + "\n";
    job = safety_jobs::replaced(job, "latitude: -45.0, longitude: 168.7", place);
    job = safety_jobs::replaced(job, "{region: nz,", "{region: nz, state: WGN,");
    job = safety_jobs::replaced(job, "quoted: 2027-03-02", "quoted: 2027-07-01");
    job = safety_jobs::replaced(job, "start: 2027-03-16", "start: 2027-07-12");
    base::Diagnostics messages;
    if (auto made = firm_jobs::compute({(folder / "job.yaml").string(), job}, {}, messages))
      x.emplace(std::move(*made));
    for (const auto& d : messages.all()) {
      if (d.path.starts_with("weather")) said += base::format(d).substr(folder.string().size() + 1);
    }
  }
  ~JobBeside() { fs::remove_all(folder); }
};

const std::string wellington = "latitude: -41.3, longitude: 174.8";

}  // namespace

TEST_CASE("what was understood of a weather file is said in one line", "[weather files]") {
  // 0.05 degrees north and 0.05 east at 41 degrees south: 5.6 and 4.2 km, together 7.
  const JobBeside near("open-meteo.json", wellington, "saved");
  CHECK(near.said.find("'saved'") == std::string::npos);
  REQUIRE(near.x);
  CHECK(app::weatherWords(near.x->c.job) ==
        "saved, Open-Meteo, for -41.25, 174.75, 7 km from the site, 2027-07-12 18:00 to 2027-07-13 18:00, "
        "steps of 1 h");
  const JobBeside far("met-norway-compact.json", wellington, "saved");
  REQUIRE(far.x);
  CHECK_THAT(app::weatherWords(far.x->c.job),
             Catch::EndsWith(
                 " km from the site, 2027-07-12 18:00 to 2027-07-14 06:00, steps of 1 h, longer ones shared "
                 "out from 2027-07-13 18:00 on"));
}

TEST_CASE("a weather file for another place is told", "[weather files]") {
  // 3.75 degrees of latitude along a meridian: 3.75 * 6371 km * pi / 180 = 417 km.
  const JobBeside far("open-meteo.json", "latitude: -45.0, longitude: 174.75", "saved");
  CHECK_THAT(far.said,
             Catch::StartsWith(
                 "job.yaml:21:10: warning: weather: 'saved' is for -41.25, 174.75, 417 km from the site\n"
                 "  hint: save the one for -45.00, 174.75\n"));
}

TEST_CASE("a job gives the cloud that its weather file has not", "[weather files]") {
  const JobBeside uk("uk-met-office-hourly.json", wellington, "{forecast: saved, cloud: 80 %}");
  REQUIRE(uk.x);
  CHECK(uk.x->c.job.forecast.steps.at(0).cloud == 0.8);
}
