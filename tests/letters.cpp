// Reminders for the yearly visit, as a letter and as an e-mail, and the sheet to look the decks over.
#include "example_jobs.h"
#include "markup/plain_text.h"
#include "markup/read.h"
#include "model/names.h"
#include "page_checks.h"
#include "safety_jobs.h"

using namespace safety_jobs;

namespace {

std::string plain(const std::string& markdown) {
  base::Diagnostics messages;
  const auto text = markup::plainText(markup::readMarkdown(markdown, std::string(), messages));
  return "[" + text.title + "] " + std::to_string(text.unreadLine) + "\n" + text.body;
}

std::string letter(const model::JobResult& x, const app::Choices& choices = {}) {
  base::Diagnostics messages;
  const auto made = app::makeLetter("reminder_mail", "reminder", x, shipped(), choices, messages);
  std::string said;
  for (const auto& d : messages.all()) said += base::format(d);
  return made ? made->title + "\n\n" + made->text : said;
}

}  // namespace

TEST_CASE("paragraphs and lists become plain text, anything else is told by its line") {
  CHECK(plain("# A\u00A0title\n\nTwo *words* and [a link](https://firm.example)\nin one line.\n\n- one\n- "
              "**two**\n") == "[A title] 0\nTwo words and a link in one line.\n\n- one\n- two\n");
  CHECK(plain("# T\n\nWords\n\n| a | b |\n|---|---|\n| c | d |\n") == "[T] 5\nWords\n");
  CHECK(plain("- one\n  - deeper\n") == "[] 1\n");
  CHECK(plain("") == "[] 0\n");
}

TEST_CASE("a reminder tells when the last coat was laid, when the next is due, two weeks and a guide price") {
  // Laid on 30 and 31 March 2027, so due on Friday 31 March 2028; the weeks are from Monday to Friday.
  auto x = example("landing");
  const auto day = [](const char* words) { return base::parseDate(words).value(); };
  x.offer = {base::Money{2'120'00}, day("2028-03-31"), day("2028-03-31")};
  CHECK(letter(x) ==
        "Landing, Steps and Terrace: the next coat is due\n\n"
        "Dear Inga Thorley,\n\n"
        "We laid the last coat of oil, light walnut, on Wednesday 31 March 2027. The next one falls due on "
        "Fri 31 Mar "
        "2028. A wash and one coat in time save the boards another sanding.\n\n"
        "We would come in one of these weeks:\n\n"
        "- Mon 27 Mar to Fri 31 Mar\n- Mon 3 Apr to Fri 7 Apr\n\n"
        "It would cost about $2,120 including GST. That is a guide, not an offer: you get a quote before we "
        "start.\n\n"
        "Which week suits you? Just reply, or call us on 03 555 0117.\n\n"
        "Kind regards\n\nMara Quill, Tideboard Timber Care\n");
  const std::string words = together(documents(x, {"reminder"}).at("reminder"));
  for (const char* said : {"Inga Thorley", "Fri\u00A031\u00A0Mar 2028", "about $2,120", "31\u00A0Mar 2027",
                           "light walnut", "A Landing", "B Steps", "C Terrace"}) {
    INFO(said << " in\n" << words);
    CHECK(holds(words, said));
  }
  // Overdue: the weeks lie ahead, the day it fell due stays.
  x.offer->from = day("2028-05-10");
  CHECK(holds(letter(x), "The next one falls due on Fri 31 Mar 2028."));
  CHECK(holds(letter(x), "- Mon 8 May to Fri 12 May\n- Mon 15 May to Fri 19 May\n"));
  x.offer.reset();
  CHECK_FALSE(holds(letter(x), "guide"));
  CHECK_FALSE(holds(together(documents(x, {"reminder"}).at("reminder")), "guide price"));
}

TEST_CASE("the weeks of a reminder are those on which the crew works") {
  // Good Friday is 14 April 2028, Easter Monday the 17th (tables of Western Easter; from memory).
  auto x = example("landing");
  for (auto& event : x.plan.events) {
    if (model::nameOf(event) == "maintenance") event.at.day = *base::parseDate("2028-04-12");
  }
  CHECK(holds(letter(x), "- Mon 10 Apr to Thu 13 Apr\n- Tue 18 Apr to Fri 21 Apr\n"));
  for (int day = 10; day < 18; ++day)
    x.c.job.crew.off.push_back(*base::parseDate("2028-04-" + std::to_string(day)));
  CHECK(holds(letter(x), "- Tue 18 Apr to Fri 21 Apr\n- Mon 24 Apr to Fri 28 Apr\n"));
}

TEST_CASE("an e-mail is in the language of the letter; where there is none of it, that is told") {
  auto x = example("landing");
  x.c.job.languages["reminder"] = {"es", "en"};
  CHECK(holds(letter(x), "Hola, Inga Thorley:"));
  app::Choices polish;
  polish.languages = {"pl"};
  CHECK(letter(x, polish) ==
        "--language: error: languages.reminder: there is no template of 'reminder_mail' in 'pl'\n"
        "  hint: write templates/pl/reminder_mail.md in the firm's folder\n");
}

TEST_CASE("the look-over sheet holds what is known of each deck from last time") {
  auto x = example("landing");
  x.c.job.areas[0].officeNote = "Loose board by the gate.";
  const std::string words = together(documents(x, {"lookover"}).at("lookover"));
  for (const char* said : {"4 Mill Bay Road", "A Landing", "A-113", "Loose board by the gate.", "wear, 0–3",
                           "moisture, %", "Test patch", "photo"}) {
    INFO(said << " in\n" << words);
    CHECK(holds(words, said));
  }
}
