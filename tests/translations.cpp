// Documents in the language of their reader: which are made, what they say of themselves, what is refused.
#include "app/pack/documents.h"
#include "firm_jobs.h"
#include "typeset/dump.h"
#include "typeset/pages/layout.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace {

struct Made {
  std::vector<app::SetDocument> documents;
  std::string messages;

  const typeset::Document& named(const std::string& name) const {
    for (const auto& d : documents) {
      if (d.name == name) return d.pages;
    }
    throw std::logic_error("no document '" + name + "'");
  }
  std::string names() const {
    std::string s;
    for (const auto& d : documents) s += (s.empty() ? "" : " ") + d.name;
    return s;
  }
};

Made make(const std::string& example, const std::vector<std::string>& languages,
          const std::vector<std::string>& only,
          const std::map<std::string, std::vector<std::string>>& ofJob = {}) {
  app::Choices choices;
  choices.languages = languages;
  static const app::Shipped shipped = app::readShipped();
  base::Diagnostics messages;
  auto x = firm_jobs::compute(SOURCE_DIR "/out_examples/" + example + "/job.yaml", choices, messages);
  if (!x) throw std::logic_error("the example has mistakes");
  x->c.job.languages = ofJob;
  Made made{app::setDocuments(*x, shipped, choices, only, messages), ""};
  for (const auto& d : messages.all()) made.messages += base::format(d);
  return made;
}

std::string wordsOf(const typeset::Document& document) { return typeset::dump(document); }

bool says(const typeset::Document& document, const std::string& words) {
  return wordsOf(document).find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("a document comes in each language asked for, the first without a mark") {
  CHECK(make("landing", {}, {"quote", "orders"}).names() == "quote orders");
  CHECK(make("landing", {"en", "es"}, {"quote", "orders"}).names() == "quote quote-es orders orders-es");
  CHECK(make("landing", {"es", "en", "es"}, {"orders"}).names() == "orders orders-en");
  CHECK(make("landing", {}, {"quote", "safety"}, {{"safety", {"en", "pl", "es"}}}).names() ==
        "quote safety safety-pl safety-es");
}

TEST_CASE("a translation says what it is and which sheet rules, and carries its language") {
  const auto made = make("landing", {"en", "es"}, {"aftercare"});
  CHECK(made.messages == "");
  const auto &english = made.named("aftercare"), &spanish = made.named("aftercare-es");
  CHECK(english.language == "en-NZ");
  CHECK(spanish.language == "es");
  CHECK_FALSE(says(english, "Translation"));
  CHECK(says(spanish, "Traducci\u00F3n"));
  CHECK(says(spanish, "rige la de ingl\u00E9s"));
  CHECK(spanish.title == "Cuidados LA-2027-031");
  // What the job's author typed stays, what the content says does not.
  CHECK(says(spanish, "Terrace"));
  CHECK(says(spanish, "light walnut"));
  CHECK_FALSE(says(spanish, "penetrating oil"));
}

TEST_CASE("what cannot be told in a language is refused with what there is") {
  CHECK(make("landing", {"en", "pl"}, {"quote"}).messages ==
        "--language: error: languages.quote: there is no template of 'quote' in 'pl'\n"
        "  hint: there are: en, es; leave the document out with '--only', or write templates/pl/quote.md "
        "in the firm's folder\n");
  CHECK(make("landing", {"en", "tlh"}, {"quote"}).messages ==
        "--language: error: 'tlh' is not a known language\n"
        "  hint: known: en, es, pl\n");
}

TEST_CASE("a translation without the sheet that rules is told of") {
  CHECK(make("landing", {"es"}, {"quote", "orders"}).messages ==
        "--language: warning: languages: only a translation is made of quote, orders; the sheet that rules "
        "is not "
        "among them\n"
        "  hint: name 'en' too\n");
}
