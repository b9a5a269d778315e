// Photographs of a job, on the quote and at the handover.
#include "page_checks.h"
#include "picture_sample.h"
#include "safety_jobs.h"

#include <unistd.h>

#include <fstream>

using namespace safety_jobs;
namespace fs = std::filesystem;

namespace {

/// A folder for a job with pictures beside it; it goes away with the test.
class Folder {
 public:
  Folder() : path_(fs::temp_directory_path() / ("photographs-" + std::to_string(getpid()))) {
    fs::create_directories(path_);
  }
  ~Folder() { fs::remove_all(path_); }

  void write(const std::string& file, const std::string& bytes) const {
    std::ofstream(path_ / file, std::ios::binary) << bytes;
  }
  app::JobText job(const std::string& photos) const {
    return {(path_ / "job.yaml").string(), plainJob + "photos:\n" + photos};
  }
  /// All that is said when the documents are made, file names without the folder.
  std::string saidOf(const std::string& photos) const {
    base::Diagnostics messages;
    if (const auto x = compute(job(photos), {}, messages))
      app::setDocuments(*x, shipped(), {}, {"quote"}, messages);
    std::string all;
    for (const auto& d : messages.all()) {
      if (d.path.starts_with("photos")) all += base::format(d);
    }
    for (const std::string folder = path_.string() + "/"; all.find(folder) != std::string::npos;)
      all.erase(all.find(folder), folder.size());
    return all;
  }
  model::JobResult computed(const std::string& photos) const {
    base::Diagnostics messages;
    auto x = compute(job(photos), {}, messages);
    REQUIRE(x);
    return std::move(*x);
  }

 private:
  fs::path path_;
};

std::vector<typeset::PlacedImage> picturesOn(const typeset::Document& document) {
  std::vector<typeset::PlacedImage> all;
  for (const auto& page : document.pages) {
    for (const auto& item : page.items) {
      const auto* picture = std::get_if<typeset::PlacedImage>(&item.what);
      if (picture && item.tag != typeset::artifact) all.push_back(*picture);
    }
  }
  return all;
}

const std::string two =
    "  - {file: a.jpg, shows: The deck from the garden}\n"
    "  - {file: b.png, shows: The soft board at the door}\n";

Folder withTwo() {
  Folder folder;
  folder.write("a.jpg", sample::makeJpeg(1600, 1200, 3, JCS_RGB));
  folder.write("b.png", sample::makePng(40, 30, PNG_FORMAT_RGB, std::string(40 * 30 * 3, 'p')));
  return folder;
}

}  // namespace

TEST_CASE("photographs stand side by side on quote and handover, with what they show") {
  const Folder folder = withTwo();
  const auto x = folder.computed(two);
  for (const auto& name : {"quote", "handover"}) {
    INFO(name);
    const auto document = documents(x, {name}).at(name);
    const auto pictures = picturesOn(document);
    REQUIRE(pictures.size() == 2);
    CHECK(pictures[0].box.at.y == pictures[1].box.at.y);
    CHECK(pictures[0].box.size.h == pictures[1].box.size.h);
    CHECK(pictures[0].box.at.x + pictures[0].box.size.w < pictures[1].box.at.x);
    const auto shape = [](const typeset::PlacedImage& p) {
      return p.box.size.w.raw * 3 - p.box.size.h.raw * 4;
    };
    CHECK(std::abs(shape(pictures[0])) < 10);  // 1600 by 1200 is 4 to 3, as is 40 by 30
    CHECK(std::abs(shape(pictures[1])) < 10);
    bool hasAlt = false;
    for (const auto& tag : document.tags)
      hasAlt = hasAlt || tag.alt == "Photographs: The deck from the garden; The soft board at the door.";
    CHECK(hasAlt);
    CHECK(document.pages.size() <= 3);
  }
}

TEST_CASE("a photograph is no finer than its print shows, and upright") {
  const Folder folder;
  const std::string whole = sample::makeJpeg(1600, 2400, 3, JCS_RGB);
  folder.write("a.jpg", whole);
  const auto x = folder.computed("  - {file: a.jpg, shows: The deck}\n");
  const auto pictures = picturesOn(documents(x, {"quote"}).at("quote"));
  REQUIRE(pictures.size() == 1);
  const auto& picture = pictures.front();
  const double dotsPerInch =
      picture.image->height / (static_cast<double>(picture.box.size.h.raw) / 12'700 / 72);
  CHECK(dotsPerInch >= 200);
  CHECK(dotsPerInch < 600);
  CHECK(picture.image->height < 2400);
}

TEST_CASE("what is wrong with photographs is told where they are named") {
  const Folder folder = withTwo();
  folder.write("notes.txt", "no picture");
  folder.write("cut.jpg", sample::makeJpeg(16, 12, 3, JCS_RGB).substr(0, 300));
  const std::string line =
      "job.yaml:" + std::to_string(2 + std::count(plainJob.begin(), plainJob.end(), '\n')) + ":";
  CHECK(folder.saidOf(two).empty());
  CHECK(folder.saidOf("  - {file: none.jpg, shows: Nothing}\n") ==
        line +
            "12: error: photos: 'none.jpg' cannot be read: there is no such file\n"
            "  hint: the path starts at this file's folder\n");
  CHECK(folder.saidOf("  - {file: notes.txt, shows: Notes}\n") ==
        line +
            "12: error: photos: 'notes.txt': not a PNG or JPEG picture\n"
            "  hint: save it again as a plain PNG or JPEG of at most 16 megapixels\n");
  CHECK(folder.saidOf("  - {file: cut.jpg, shows: Half}\n") ==
        line +
            "12: error: photos: 'cut.jpg': the JPEG picture is damaged or cut off\n"
            "  hint: save it again as a plain PNG or JPEG of at most 16 megapixels\n");
  CHECK(folder.saidOf("  - {file: a.jpg}\n") ==
        line +
            "5: error: photos[1]: 'shows' is missing\n"
            "  hint: write it like shows: The deck from the garden\n");
  CHECK(folder.saidOf(two + "  - {file: a.jpg, shows: Again}\n") ==
        line +
            "3: error: photos: at most two photographs stand on the quote, not 3\n"
            "  hint: keep the two that say most\n");
}

TEST_CASE("a quote without photographs has no place for them") {
  const auto x = computed(plainJob);
  CHECK(picturesOn(documents(x, {"quote"}).at("quote")).empty());
  CHECK_FALSE(holds(together(documents(x, {"quote"}).at("quote")), "Photographs\n"));
}
