// The file of spreading rates learned from finished jobs.
#include "input/read.h"
#include "input/yaml/cursor.h"
#include "input/yaml/sorted.h"
#include "input/yaml/words.h"

#include <stdexcept>

namespace input {
namespace {

model::LearnedRate readOne(const Field& item, const model::Content& content) {
  Record r(item);
  model::LearnedRate rate;
  rate.product = knownId(r.must("product"), content.products, "product");
  rate.timber = knownId(r.must("timber"), content.timbers, "timber");
  rate.state = choice(r.must("state"), stateWords, "state of the boards", rate.state);
  rate.isSanded = yesNo(r.may("sanded"), false);
  rate.coat = whole(r.must("coat"), {1, 4, "from 1 to 4"}, 1);
  if (const Field f = r.must("rate"); f.isGiven()) rate.rate = spread(f);
  rate.jobs = whole(r.must("jobs"), {1, 1'000'000, "from 1 to 1000000"}, 1);
  // The interval of the mean is for the reader of the file.
  if (const Field f = r.may("low"); f.isGiven()) (void)spread(f);
  if (const Field f = r.may("high"); f.isGiven()) (void)spread(f);
  if (const Field f = r.may("spread"); f.isGiven())
    rate.spread = quantity(f, parseShare, {{0}, base::Share::whole(1000), "from 0 % to 1000 %"});
  r.finish();
  return rate;
}

bool isSame(const model::LearnedRate& a, const model::LearnedRate& b) {
  return a.product == b.product && a.timber == b.timber && a.state == b.state && a.isSanded == b.isSanded &&
         a.coat == b.coat;
}

}  // namespace

std::string nameOf(model::State state) {
  for (const auto& word : stateWords) {
    if (word.value == state) return word.name;
  }
  throw std::logic_error("internal error: unknown state");
}

std::vector<model::LearnedRate> readLearnedRates(const std::string& file, const model::Content& content,
                                                 base::Diagnostics& out) {
  std::vector<model::LearnedRate> rates;
  const std::optional<std::string> text = readFile(file);
  if (!text) {
    out.error(
        {file, 0, 0}, "", "the file of spreading rates cannot be read: " + whyUnreadable(file),
        "'planksheaf rates FOLDER' writes it; the path under 'spreading_rates' begins at the folder of the "
        "file it stands in");
    return rates;
  }
  base::Diagnostics messages;
  if (const std::optional<Node> root = parseTree(*text, file, messages)) {
    const Source source{file, messages};
    Record r(Field(source, &*root, "", root->mark));
    if (!r.has("rates")) {  // its lines are nobody's business: a file named by mistake may hold secrets
      out.error({file, 0, 0}, "", "this is not a file of spreading rates",
                "'planksheaf rates FOLDER' writes one");
      return rates;
    }
    for (const Field& item : r.must("rates").items()) {
      const model::LearnedRate rate = readOne(item, content);
      for (const model::LearnedRate& other : rates) {
        if (isSame(rate, other))
          item.error("this product, timber, state and coat stand above already", "leave one of them out");
      }
      rates.push_back(rate);
    }
    r.finish();
  }
  forwardSorted(messages, out);
  return rates;
}

}  // namespace input
