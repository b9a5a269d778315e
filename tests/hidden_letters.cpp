// Letters that nobody sees, in jobs, firms' files, content, templates and on the terminal.
#include "base/hidden.h"
#include "firm_sample.h"
#include "input_fixture.h"
#include "markup/read.h"
#include "sheets/template/fill.h"

namespace {

/// All that is said about the good job with this for the customer's name.
std::string saidOfName(const std::string& name) {
  return fixture::messagesOf(fixture::edited(fixture::goodJob, "Inga Thorley", name));
}

const std::string hint = "  hint: delete its escape, which begins with a backslash\n";

}  // namespace

TEST_CASE("letters that steer a terminal, turn the direction of words or print nothing are told by number") {
  // The Unicode Standard 15.0, 23.1 (control codes), 23.2 (zero-width letters), 23.3 (bidirectional marks,
  // embeddings, overrides and isolates), 23.4 (deprecated format characters), 23.5 (private use) and 23.8
  // (byte order mark). From memory.
  CHECK(base::hiddenLetter(0x00) == "control character U+0000");
  CHECK(base::hiddenLetter(0x1B) == "control character U+001B");
  CHECK(base::hiddenLetter(0x7F) == "control character U+007F");
  CHECK(base::hiddenLetter(0x9B) == "control character U+009B");
  constexpr char32_t invisible[] = {0x061C, 0x200B, 0x200C, 0x200D, 0x200E, 0x200F, 0x2028, 0x2029,
                                    0x202A, 0x202E, 0x2060, 0x2066, 0x2069, 0x206F, 0xFEFF, 0xE0041,
                                    0x034F, 0x115F, 0x3164, 0xFE0F, 0xFFA0, 0xE0101};
  for (const char32_t letter : invisible) {
    INFO(static_cast<std::uint32_t>(letter));
    CHECK_THAT(base::hiddenLetter(letter), Catch::StartsWith("invisible character U+"));
  }
  CHECK(base::hiddenLetter(0xE000) == "private-use character U+E000");
  CHECK(base::hiddenLetter(0x10FFFD) == "private-use character U+10FFFD");
  // No-break spaces, a soft hyphen, dashes, accents and signs are letters like others.
  constexpr char32_t plain[] = {0x09,   0x0A,   0x20,   0x7E,   0xA0,   0xAD,   0xE9,
                                0x0141, 0x2009, 0x2014, 0x202F, 0x2264, 0xFFFD, 0x1F525};
  for (const char32_t letter : plain) CHECK(base::hiddenLetter(letter).empty());
}

TEST_CASE("a hidden letter written as an escape is refused with the place and path of its value") {
  CHECK(saidOfName("\"Inga \\e[31m\"") ==
        "job.yaml:3:18: error: customer.name: control character U+001B\n" + hint);
  CHECK(saidOfName("\"Inga \\0\"") ==
        "job.yaml:3:18: error: customer.name: control character U+0000\n" + hint);
  CHECK(saidOfName("\"Inga \\r\"") ==
        "job.yaml:3:18: error: customer.name: control character U+000D\n" + hint);
  CHECK(saidOfName("\"Inga \\N\"") ==
        "job.yaml:3:18: error: customer.name: control character U+0085\n" + hint);
  CHECK(saidOfName("\"Inga \\u202Eyelroht\"") ==
        "job.yaml:3:18: error: customer.name: invisible character U+202E\n" + hint);
  CHECK(saidOfName("\"In\\u200Bga\"") ==
        "job.yaml:3:18: error: customer.name: invisible character U+200B\n" + hint);
  CHECK(saidOfName("\"Inga\n    Thorley \\u2066\"") ==
        "job.yaml:3:18: error: customer.name: invisible character U+2066\n" + hint);
  CHECK(saidOfName("\"Inga\\tThorley \\u00E9\\n\"").empty());
}

TEST_CASE("a hidden letter as it stands is refused with its own place") {
  CHECK(saidOfName("Inga \u202EThorley") ==
        "job.yaml:3:23: error: invisible character U+202E\n  hint: delete it\n");
  CHECK(saidOfName("Inga\uFEFF Thorley") ==
        "job.yaml:3:22: error: invisible character U+FEFF\n  hint: delete it\n");
  CHECK(saidOfName("Inga # \u200F") ==
        "job.yaml:3:25: error: invisible character U+200F\n  hint: delete it\n");
}

TEST_CASE("a hidden letter is refused in keys, in lists, in values that are no text, and all in one run") {
  std::string job = fixture::edited(fixture::goodJob, "work: [wash, fix,", "work: [wash, \"fix\\x1b\",");
  job = fixture::edited(job, "joists: 450 mm", "joists: \"450\\x07 mm\"");
  job += "\"ti\\u200Btle\": Deck\n";
  CHECK(fixture::messagesOf(job) == "job.yaml:13:13: error: areas[1].joists: control character U+0007\n" +
                                        hint + "job.yaml:17:14: error: work[2]: control character U+001B\n" +
                                        hint + "job.yaml:22:1: error: invisible character U+200B\n" + hint);
}

TEST_CASE("a hidden letter in a firm's file is refused") {
  sample::Firm firm;
  firm.file(sample::replaced(sample::bytesOf(SOURCE_DIR "/out_examples/firms/cricketboard/firm.yaml"),
                             "contact: Odell Prewitt\nlogo: cricketboard.png", "contact: \"Ann\\e]0;x\\a\""));
  CHECK(sample::refusal(firm) == "firm.yaml:10:10: error: contact: control character U+001B\n" + hint);
}

TEST_CASE("a hidden letter in a template is refused, as it stands and by number") {
  base::Diagnostics messages;
  sheets::fill({"quote.md", "Deck\nof \u202E"}, {}, {}, messages);
  markup::readMarkdown("Deck\n\nof &#x202E; and &#8203;\n", "care.md", messages);
  CHECK(base::format(messages) ==
        "quote.md:2:4: error: invisible character U+202E\n  hint: delete it\n"
        "care.md:3: error: '&#x202E;' is the invisible character U+202E\n  hint: delete it\n"
        "care.md:3: error: '&#8203;' is the invisible character U+200B\n  hint: delete it\n");
}

TEST_CASE("messages write hidden letters, broken text and line breaks of a name out") {
  base::Diagnostics messages;
  messages.error({"a\x1B[2J\nb\xFF.yaml", 1, 2}, "si\u200Bte", "'\u202Ex' is bad", "no \x07");
  CHECK(base::format(messages) ==
        "a<U+001B>[2J<U+000A>b<FF>.yaml:1:2: error: si<U+200B>te: '<U+202E>x' is bad\n  hint: no <U+0007>\n");
  CHECK(base::printable("one\ntwo \u00E9", base::Lines::Keep) == "one\ntwo \u00E9");
}

TEST_CASE("of many messages about a file the first fifty are shown and the others counted") {
  base::Diagnostics messages;
  for (int i = 1; i <= 60; ++i) messages.warn({"job.yaml", i, 1}, "", "odd", "");
  for (int i = 1; i <= 5000; ++i) messages.error({"job.yaml", i, 2}, "", "wrong", "");
  messages.error({"firm.yaml", 7, 1}, "", "wrong", "");
  std::string expected;
  for (int i = 1; i <= 50; ++i) expected += "job.yaml:" + std::to_string(i) + ":1: warning: odd\n";
  for (int i = 1; i <= 50; ++i) expected += "job.yaml:" + std::to_string(i) + ":2: error: wrong\n";
  expected +=
      "firm.yaml:7:1: error: wrong\n"
      "job.yaml: error: and 4950 more mistakes\n  hint: mend those above first\n"
      "job.yaml: warning: and 10 more warnings\n  hint: look at those above first\n";
  CHECK(base::format(messages) == expected);
}
