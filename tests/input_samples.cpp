#include "input/read.h"

#include <catch2/catch.hpp>

namespace {

const std::string root = SOURCE_DIR;

std::string said(const base::Diagnostics& messages) {
  std::string all;
  for (const base::Diagnostic& d : messages.all()) all += base::format(d);
  return all;
}

}  // namespace

TEST_CASE("the content that comes with the program has no mistakes") {
  base::Diagnostics messages;
  const model::Content content = input::readContent(root + "/content", messages);
  CHECK(said(messages) == "");
  for (const char* brand : {"demo"}) {
    input::readBrand(root + "/content/brands/" + brand + ".yaml", content, messages);
    CHECK(said(messages) == "");
  }
  const model::Theme theme = input::readTheme(root + "/templates/themes/generous.yaml", messages);
  CHECK(said(messages) == "");
  const std::string file = root + "/out_examples/landing/job.yaml";
  const std::string text = input::readFile(file).value();
  const model::Job job = input::readJob(text, file, content, messages);
  CHECK(said(messages) == "");
  CHECK(input::brandFile(text, file) == root + "/content/brands/demo.yaml");
}
