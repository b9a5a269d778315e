#include "input/read.h"

#include <catch2/catch.hpp>
#include <filesystem>

namespace {

const std::string root = SOURCE_DIR;

std::string said(const base::Diagnostics& messages) {
  std::string all;
  for (const base::Diagnostic& d : messages.all()) all += base::format(d);
  return all;
}

}  // namespace

TEST_CASE("the content, firms, themes and jobs that come with the program have no mistakes") {
  namespace fs = std::filesystem;
  base::Diagnostics messages;
  model::Content content = input::readContent(root + "/content", messages);
  content.documents = {"safety"};  // of which an example names the languages
  CHECK(said(messages) == "");
  CHECK(content.regions.size() >= 5);
  CHECK(content.products.contains("tern-oil"));
  model::Theme theme = input::readTheme(root + "/templates/themes/generous.yaml", messages);
  CHECK(said(messages) == "");
  CHECK(theme.styles.size() == 16);
  const model::Theme compact = input::readTheme(root + "/templates/themes/compact.yaml", messages);
  CHECK(said(messages) == "");
  CHECK(compact.styles.size() == 16);
  CHECK(compact.unit == 3'000);
  int jobs = 0;
  for (const auto& folder : fs::directory_iterator(root + "/out_examples")) {
    const std::string file = (folder.path() / "job.yaml").string();
    if (!fs::exists(file)) continue;
    ++jobs;
    const std::string text = input::readFile(file).value();
    const model::Job job = input::readJob(text, file, content, messages);
    const std::string firmFolder = input::firmFolder(text, file);
    const model::Firm firm = input::readFirm(firmFolder, content, messages);
    CHECK(firm.rates.contains(job.site.region));
    model::Theme own = theme;
    input::applyFirm(own, firm, firmFolder + "/firm.yaml", messages);
    CHECK(said(messages) == "");
  }
  CHECK(jobs >= 1);
}
