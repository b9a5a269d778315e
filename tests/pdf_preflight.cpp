// PDF/A by an independent checker, where it is installed: Apache PDFBox preflight (Debian packages
// libpdfbox2-java libactivation-java libjaxb-api-java default-jre-headless).
#include "pdf_sample.h"

#include <catch2/catch.hpp>

using namespace sample;

namespace {

/// The checker's class path; empty when something is missing.
std::string classPath() {
  std::string path;
  for (const char* jar : {"preflight", "pdfbox2", "fontbox2", "xmpbox", "commons-logging", "commons-io",
                          "javax.activation", "jaxb-api"}) {
    const std::string file = std::string("/usr/share/java/") + jar + ".jar";
    if (!std::filesystem::exists(file)) return "";
    path += (path.empty() ? "" : ":") + file;
  }
  return std::filesystem::exists("/usr/bin/java") ? path : "";
}

std::string verdict(const std::string& pdf) {
  return run("java -cp " + classPath() + " org.apache.pdfbox.preflight.Validator_A1b %", pdf).text;
}

}  // namespace

TEST_CASE("a file without clear pictures keeps to PDF/A") {
  if (classPath().empty()) {
    WARN("skipped: the PDF/A checker is not installed");
    return;
  }
  Document d = everything();
  d.images[0] = std::make_shared<Image>(Image{2, 1, "rgbRGB", "", "", false});
  std::string pdf = pdf::write(d);
  // The checker knows part 1 (ISO 19005-1:2005) only, which is stricter but for this one number.
  const std::string claim = "<pdfaid:part>2<";
  REQUIRE(holds(pdf, claim));
  CHECK(holds(verdict(pdf), "part must be 1"));
  CHECK(count(verdict(pdf), " : ") == 1);
  pdf.replace(pdf.find(claim), claim.size(), "<pdfaid:part>1<");
  const std::string said = verdict(pdf);
  INFO(said);
  CHECK(holds(said, "is a valid PDF/A-1b file"));
}
