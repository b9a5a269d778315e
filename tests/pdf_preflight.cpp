// PDF/A by an independent checker: Apache PDFBox preflight (Debian's libpdfbox2-java). It knows part 1
// (ISO 19005-1:2005), so the files are written in that variant.
#include "app/pack/documents.h"
#include "example_jobs.h"
#include "firm_jobs.h"
#include "pdf_sample.h"

#include <catch2/catch.hpp>

using namespace sample;
namespace fs = std::filesystem;

namespace {

std::string classPath() {
  std::string path;
  for (const char* jar : {"preflight", "pdfbox2", "fontbox2", "xmpbox", "commons-logging", "commons-io",
                          "javax.activation", "jaxb-api"})
    path += std::string("/usr/share/java/") + jar + ".jar:";
  return path;
}

const std::string validator =
    "java -XX:TieredStopAtLevel=1 -cp " + classPath() + " org.apache.pdfbox.preflight.Validator_A1b ";

/// The checker's report on all files of a folder, as XML.
std::string verdictOnAll(const fs::path& folder) {
  std::string list;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (entry.path().extension() == ".pdf") list += entry.path().string() + "\n";
  const TempFile files(list, ".txt");
  const std::string said = run(validator + "xml group " + files.name() + " %", "").text;
  std::ifstream in(files.name() + ".preflight.xml");
  const std::string report{std::istreambuf_iterator<char>(in), {}};
  fs::remove(files.name() + ".preflight.xml");
  return report.empty() ? said : report;
}

/// The packs of all examples as PDF/A-1b, in a folder that goes away again.
class Packs {
 public:
  explicit Packs(model::Paper paper)
      : folder_(fs::temp_directory_path() / ("packs" + std::to_string(getpid()))) {
    app::Choices choices;
    choices.paper = paper;
    choices.variant = pdf::Variant::A1b;
    const app::Shipped shipped = app::readShipped();
    for (const auto& job : examples::jobs()) {
      base::Diagnostics messages;
      const auto x = firm_jobs::compute(job.string(), choices, messages);
      REQUIRE(x);
      auto files = app::makeDocuments(*x, shipped, choices, {}, messages);
      REQUIRE(messages.ok());
      for (auto& file : files) file.path = (folder_ / x->c.job.ref / file.path).string();
      app::writeAll(files);
      documents_ += files.size();
    }
  }
  ~Packs() { fs::remove_all(folder_); }
  Packs(const Packs&) = delete;
  Packs& operator=(const Packs&) = delete;
  const fs::path& folder() const { return folder_; }
  std::size_t documents() const { return documents_; }

 private:
  fs::path folder_;
  std::size_t documents_ = 0;
};

}  // namespace

TEST_CASE("one of everything keeps to PDF/A, its clear picture laid on white") {
  const std::string said = run(validator + "%", pdf::write(everything(), pdf::Variant::A1b)).text;
  INFO(said);
  CHECK(holds(said, "is a valid PDF/A-1b file"));
}

TEST_CASE("the checker of PDF/A finds in a file of part 2 what part 1 forbids, and nothing else") {
  const std::string said = run(validator + "%", pdf::write(everything())).text;
  INFO(said);
  CHECK(holds(said, "part must be 1"));
  CHECK(holds(said, "Soft Mask must be null or None"));
  CHECK(holds(said, "cross reference streams are not allowed"));
  const std::size_t faces = count(said, "The CIDSet entry is missing for the Composite Subset");
  CHECK(faces == 2);
  CHECK(count(said, " : ") == 3 + faces);
}

TEST_CASE("every document of every example keeps to PDF/A on both papers") {
  for (const model::Paper paper : {model::Paper::A4, model::Paper::Letter}) {
    const Packs packs(paper);
    const std::string report = verdictOnAll(packs.folder());
    INFO(report);
    CHECK(packs.documents() >= 15);
    CHECK(count(report, "<isValid type=\"PDF/A1-b\">true</isValid>") == packs.documents());
  }
}

TEST_CASE("a clear picture laid on white keeps its whole places and loses its clear ones") {
  Document d = document();
  const auto picture =
      std::make_shared<Image>(Image{3, 1, "abcABCxyz", std::string("\xFF\x80\x00", 3), "", false});
  d.pages.back().items.push_back({PlacedImage{{{}, {Dim::mm(20), Dim::mm(10)}}, picture}, artifact});
  const std::string bytes = plain(pdf::write(d, pdf::Variant::A1b));
  CHECK(holds(bytes, "abc\xA0\xA0\xA1\xFF\xFF\xFF"));  // (65 · 128 + 255 · 127) / 255 = 159.6
  CHECK_FALSE(holds(bytes, "/SMask"));
}
