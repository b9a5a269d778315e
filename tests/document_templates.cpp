// A template with a head is a document: what its head may say, which facts its reader gets, which documents a
// pack holds.
#include "input/look/front_matter.h"
#include "safety_jobs.h"

#include <unistd.h>
#include <filesystem>
#include <fstream>

namespace {

using safety_jobs::shipped;
namespace fs = std::filesystem;

std::string said(const base::Diagnostics& messages) {
  std::string all;
  for (const auto& d : messages.all()) all += base::format(d);
  return all;
}

std::string mistakesIn(const std::string& text) {
  base::Diagnostics messages;
  input::readTemplate(text, "invoice.md", messages);
  return said(messages);
}

/// A firm's own templates, in its folder that goes away with the test.
class Looks {
 public:
  Looks() : path_(fs::temp_directory_path() / ("own-looks-" + std::to_string(getpid()))) {
    fs::remove_all(path_);
    fs::copy(SOURCE_DIR "/out_examples/firms/tideboard", path_);
    fs::create_directories(path_ / "templates/en");
    choices.firm = path_.string();
  }
  ~Looks() { fs::remove_all(path_); }
  void write(const std::string& file, const std::string& text) const {
    std::ofstream(path_ / "templates" / file) << text;
  }

  struct Made {
    std::map<std::string, typeset::Document> pages;
    std::string names;     // in order, each with a blank behind
    std::string messages;  // without the firm's folder
  };
  Made make(const std::vector<std::string>& only) const {
    base::Diagnostics messages;
    const auto [shipped, x] =
        app::computeFile(SOURCE_DIR "/out_examples/landing/job.yaml", choices, messages);
    Made made;
    for (auto& [name, pages] :
         x ? app::setDocuments(*x, *shipped, choices, only, messages) : std::vector<app::SetDocument>{}) {
      made.names += name + " ";
      made.pages[name] = std::move(pages);
    }
    made.messages = said(messages);
    for (auto at = made.messages.find(path_.string()); at != std::string::npos;
         at = made.messages.find(path_.string()))
      made.messages.replace(at, path_.string().size() + 10, "looks");
    return made;
  }

  app::Choices choices;

 private:
  fs::path path_;
};

constexpr auto invoiceHead = "---\nreader: customer\nheading: Invoice\n---\n";

}  // namespace

TEST_CASE("a template with a head is a document, one without is a part of others") {
  base::Diagnostics messages;
  const auto invoice = input::readTemplate(
      "---\nreader: office\nheading: Invoice  # at the top\nmost_pages: 2\nmore_pages: 1\nletterhead: yes\n"
      "tables: small\nreading: large\nneeds: coats\n---\n# {{title}}\n",
      "invoice.md", messages);
  CHECK(said(messages) == "");
  REQUIRE(invoice.document);
  CHECK(invoice.document->reader == model::Reader::Office);
  CHECK(invoice.document->heading == "Invoice");
  CHECK(invoice.document->mostPages == 2);
  CHECK(invoice.document->hasLetterhead);
  CHECK(invoice.document->hasSmallTables);
  CHECK(invoice.document->hasLargeReading);
  CHECK(invoice.document->needs == model::DocumentNeeds::Coats);
  CHECK(invoice.body == "# {{title}}\n");
  CHECK(invoice.document->morePages == 1);
  CHECK(invoice.firstLine == 11);
  const auto fromWindows = input::readTemplate(
      "\xEF\xBB\xBF---\r\nreader: crew\r\nheading: Days\r\nmost_pages: by day\r\n---\r\n# A\r\n", "a.md",
      messages);
  CHECK(said(messages) == "");
  REQUIRE(fromWindows.document);
  CHECK(fromWindows.document->isByDay);
  CHECK(fromWindows.document->mostPages == 0);
  CHECK(fromWindows.body == "# A\r\n");
  const auto part = input::readTemplate("{{! a line }}{{words}}\n---\n", "part.md", messages);
  CHECK_FALSE(part.document);
  CHECK(part.body == "{{! a line }}{{words}}\n---\n");
  CHECK(part.firstLine == 1);
}

TEST_CASE("mistakes in the head of a template have their line") {
  CHECK(mistakesIn("---\nreader: custmer\nmost_pages: 0\nleterhead: yes\n---\n# A\n") ==
        "invoice.md:2:1: error: 'heading' is missing\n"
        "  hint: write it like heading: Invoice\n"
        "invoice.md:2:9: error: reader: 'custmer' is not a known reader; did you mean 'customer'?\n"
        "  hint: known: customer, crew or office\n"
        "invoice.md:3:13: error: most_pages: '0' is out of range\n"
        "  hint: allowed: from 1 to 99\n"
        "invoice.md:4:1: error: 'leterhead' is not a known key here; did you mean 'letterhead'?\n"
        "  hint: known: reader, heading, most_pages, more_pages, letterhead, tables, reading or needs\n");
  CHECK(mistakesIn("---\nreader: crew\n# A\n") ==
        "invoice.md:1:1: error: the head of the template has no end\n"
        "  hint: close it with a line of '---'\n");
}

TEST_CASE("a firm's template is made where it is asked for by its name, and is in no pack unasked") {
  Looks looks;
  looks.write("en/invoice.md", std::string(invoiceHead) + "# {{title}}\n\n*for {{customer.name}}*\n");
  const auto made = looks.make({"invoice"});
  CHECK(made.messages == "");
  CHECK(made.names == "invoice ");
  CHECK(made.pages.at("invoice").title == "Invoice LA-2027-031");
  CHECK(looks.make({}).names == "quote aftercare safety dayplan orders office ");
  looks.write("pack.yaml", "documents: [office, invoice]\n");
  CHECK(looks.make({}).names == "office invoice ");
  CHECK(looks.make({"quote", "invoice"}).names == "invoice quote ");
}

TEST_CASE("a list of the pack that names no document is refused with the known ones") {
  Looks looks;
  looks.write("pack.yaml", "documents: [quote, ofice, quote]\n");
  CHECK(looks.make({}).messages ==
        "looks/pack.yaml:1:20: error: documents[2]: 'ofice' is not a known document; did you mean 'office'?\n"
        "  hint: known: aftercare, dayplan, extra, handover, invoice, lookover, office, orders, quote, "
        "reminder, risk, safety or survey\n"
        "looks/pack.yaml:1:27: error: documents[3]: 'quote' is given twice\n"
        "  hint: leave one out\n");
}

TEST_CASE("no template can print what is not for its reader") {
  Looks looks;
  looks.write(
      "en/invoice.md",
      std::string(invoiceHead) + "# {{title}}\n\n{{costs.cost}} {{sign_sheets}} {{loss}} {{costs.labour}}\n");
  CHECK(looks.make({"invoice"}).messages ==
        "looks/en/invoice.md:7:1: error: {{costs.cost}}: 'costs' is for the office only\n"
        "  hint: take it out, or change 'reader:' at the top of the template\n"
        "looks/en/invoice.md:7:16: error: {{sign_sheets}}: 'sign_sheets' is for the crew only\n"
        "  hint: take it out, or change 'reader:' at the top of the template\n"
        "looks/en/invoice.md:7:32: error: {{loss}}: 'loss' is for the crew and the office only\n"
        "  hint: take it out, or change 'reader:' at the top of the template\n"
        "looks/en/invoice.md:7:41: error: {{costs.labour}}: 'costs' is for the office only\n"
        "  hint: take it out, or change 'reader:' at the top of the template\n");
  looks.write("en/invoice.md", "---\nreader: crew\nheading: Invoice\n---\n# {{price.total}}\n");
  CHECK(looks.make({"invoice"}).messages ==
        "looks/en/invoice.md:5:3: error: {{price.total}}: 'price' is for the customer and the office only\n"
        "  hint: take it out, or change 'reader:' at the top of the template\n");
}

TEST_CASE("a firm's text without a head of its own keeps that of the template in whose place it stands") {
  Looks looks;
  looks.write("en/safety.md", "# Our own {{title}}\n\n{{costs.cost}}\n");
  CHECK(looks.make({"safety"}).messages ==
        "looks/en/safety.md:3:1: error: {{costs.cost}}: 'costs' is for the office only\n"
        "  hint: take it out, or change 'reader:' at the top of the template\n");
}

TEST_CASE("a document says in each language that it is for the same reader") {
  for (const auto& [language, templates] : shipped().templates) {
    for (const auto& [name, head] : templates.documents) {
      INFO(language << "/" << name);
      const auto& english = shipped().templates.at("en").documents.at(name).kind;
      CHECK(said(head.messages) == "");
      CHECK(head.kind.reader == english.reader);
      CHECK(head.kind.mostPages >= english.mostPages);
      CHECK(head.kind.mostPages <= english.mostPages + 1);  // other languages take more words
      CHECK(head.kind.morePages == english.morePages);
      CHECK(head.kind.isByDay == english.isByDay);
      CHECK(head.kind.hasLetterhead == english.hasLetterhead);
      CHECK(head.kind.hasSmallTables == english.hasSmallTables);
      CHECK(head.kind.hasLargeReading == english.hasLargeReading);
      CHECK(head.kind.needs == english.needs);
    }
  }
}
