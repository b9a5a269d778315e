// What the customer reads is said as it is in his country.
#include "input/read.h"
#include "safety_jobs.h"

#include <filesystem>
#include <fstream>
#include <regex>

using namespace safety_jobs;

namespace {

std::string wordsIn(const std::string& region) {
  const std::string job = replaced(plainJob, "region: nz", "region: " + region);
  auto x = computed(job);
  x.c.job.invoices = {x.c.job.start};
  std::string all;
  for (const auto& [name, document] :
       documents(x, {"quote", "aftercare", "extra", "handover", "invoice", "survey", "reminder", "lookover"}))
    all += together(document);
  return all;
}

std::string readFrom(const std::string& text) {
  const auto file = std::filesystem::temp_directory_path() / "planksheaf-regional.yaml";
  std::ofstream(file) << text;
  base::Diagnostics messages;
  const auto regional =
      input::readLanguage(file.string(), "en-XX", &shipped().english, shipped().content, messages);
  std::filesystem::remove(file);
  std::string all;
  for (const auto& d : messages.all()) all += base::format(d).substr(file.string().size() + 1);
  return all.empty() ? regional("say.outlet") + ", " + regional("say.tap") : all;
}

}  // namespace

// Common usage of each country; no source.
TEST_CASE("no document for a customer uses a word of another country") {
  const std::string elsewhere = "spigot|faucet|\\bcolor\\b|gallon|lumber|[Ll]icenses|outlet";
  const std::map<std::string, std::pair<std::string, std::string>> lists = {
      {"us", {"an outlet", "litre|colour|metre|\\btap\\b|power point|socket|timber|[Ll]icences|[Ll]abour"}},
      {"gb", {"a socket", elsewhere + "|power point"}},
      {"ie", {"a socket", elsewhere + "|power point"}},
      {"au", {"a power point", elsewhere + "|socket"}},
      {"nz", {"a power point", elsewhere + "|socket"}}};
  for (const auto& [region, list] : lists) {
    const std::string words = wordsIn(region);
    CHECK(holds(words, list.first));
    const std::regex foreign(list.second);
    for (std::sregex_iterator found(words.begin(), words.end(), foreign), end; found != end; ++found)
      FAIL_CHECK(
          region << ": '" << found->str() << "' in '"
                 << words.substr(static_cast<std::size_t>(std::max<long>(0, found->position() - 40)), 90)
                 << "'");
  }
}

TEST_CASE("a regional English holds what differs and keeps the rest") {
  const std::string head = "name: X\nplural: one other\nwords:\n";
  CHECK(readFrom(head + "  say: {outlet: a point}\n") == "a point, a tap");
  CHECK(readFrom(head + "  say: {outlt: a point}\n") ==
        "4:16: error: words.say.outlt: there is no such text to translate; did you mean 'say.outlet'?\n"
        "  hint: take it out, or name it as content/languages/en.yaml does\n");
}
