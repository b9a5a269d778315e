#include "fuzz/samples.h"

#include "example_jobs.h"
#include "layout_sample.h"
#include "picture_sample.h"

#include <hb-subset.h>
#include <fstream>

namespace fuzz {
namespace fs = std::filesystem;
namespace {

std::string cutDown(const std::string& file) {
  hb_blob_t* whole = hb_blob_create_from_file(file.c_str());
  hb_face_t* face = hb_face_create(whole, 0);
  hb_subset_input_t* wanted = hb_subset_input_create_or_fail();
  for (const char letter : {'A', 'L', 'a', 'd', 'f', 'g', 'i', 'n', 'x', ' ', '0', '1', '4'})
    hb_set_add(hb_subset_input_unicode_set(wanted), static_cast<unsigned char>(letter));
  hb_face_t* small = hb_subset_or_fail(face, wanted);
  hb_blob_t* blob = hb_face_reference_blob(small);
  unsigned length = 0;
  const char* data = hb_blob_get_data(blob, &length);
  std::string bytes(data, length);
  hb_blob_destroy(blob);
  hb_face_destroy(small);
  hb_subset_input_destroy(wanted);
  hb_face_destroy(face);
  hb_blob_destroy(whole);
  return bytes;
}

std::string without(const std::string& line, std::string text) {
  const auto at = text.find(line);
  return at == std::string::npos ? text : text.erase(at, line.size());
}

constexpr auto learned = R"(spreading_rates.yaml
rates:
  - {product: oil, timber: kwila, state: weathered, coat: 1, rate: 5.6 m2/L, low: 5 m2/L,
     high: 6.2 m2/L, spread: 12 %, jobs: 4}
  - {product: oil, timber: kwila, state: weathered, sanded: yes, coat: 2, rate: 9 m2/L, jobs: 1}
)";

constexpr auto addressBook = R"(customers.vcf
BEGIN:VCARD
VERSION:4.0
FN:Inga Thorley
N:Thorley;Inga;;;
TEL;TYPE=work:03 555 0117
EMAIL:inga@home.example
ADR:;;4 Mill Bay Road;Dunford;;9300;
END:VCARD
)";

}  // namespace

std::string bytesOf(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  if (!in) throw std::runtime_error("cannot read " + file.string());
  return {std::istreambuf_iterator<char>(in), {}};
}

std::vector<std::string> filesIn(const fs::path& folder, const std::string& ending,
                                 const std::string& except) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(folder))
    if (entry.path().extension() == ending && entry.path().filename() != except)
      files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  std::vector<std::string> all;
  for (const auto& file : files) all.push_back(bytesOf(file));
  return all;
}

std::vector<std::string> firmSamples() {
  const auto content = source / "tests/sample_content";
  std::vector<std::string> all = {learned, addressBook,
                                  "customers.csv\n" + bytesOf(source / "content/new_customers.csv")};
  for (const auto& entry : fs::recursive_directory_iterator(content)) {
    const auto name = entry.path().lexically_relative(content).string();
    if (entry.is_regular_file() && name != "theme.yaml")
      all.push_back(name + "\n" + without("logo: logo.png\n", bytesOf(entry.path())));
  }
  std::sort(all.begin(), all.end());
  return all;
}

std::vector<std::string> fontSamples() {
  const auto look = sample::theme();
  return {cutDown(look.faces.at(model::Face::Sans)), cutDown(look.faces.at(model::Face::Text)),
          cutDown(look.fallbackFaces.front())};
}

std::vector<std::string> jobSamples() {
  std::vector<std::string> all;
  for (const auto& job : examples::jobs()) all.push_back(bytesOf(job));
  return all;
}

std::vector<std::string> jpegSamples() {
  return {sample::makeJpeg(20, 60, 3, JCS_RGB), sample::makeJpeg(9, 9, 1, JCS_GRAYSCALE),
          sample::makeJpegOfScans(20)};
}

std::vector<std::string> pngSamples() {
  const std::string pixels(std::size_t{12} * 60 * 4, '\x5A');
  return {sample::makePng(12, 60, PNG_FORMAT_RGBA, pixels), sample::makePng(12, 60, PNG_FORMAT_RGB, pixels),
          sample::makePng(48, 60, PNG_FORMAT_GRAY, pixels)};
}

std::vector<std::string> themeSamples() { return filesIn(source / "templates/themes", ".yaml"); }

}  // namespace fuzz
