// A job file that cannot be read as it stands: broken text, broken YAML, wrong keys.
#include "input_fixture.h"

#include <catch2/catch.hpp>

using fixture::BadJob;

TEST_CASE("broken text, YAML and keys are refused with the whole message") {
  const BadJob jobs[] = {
      {"an empty file",
       {{fixture::goodJob, ""}},
       "job.yaml:1:1: error: the file is empty\n"
       "  hint: name another file; 'planksheaf new FILE' writes a job to fill in\n"},
      {"a file of comments only",
       {{fixture::goodJob, "# nothing yet\n"}},
       "job.yaml:1:1: error: the file is empty\n"
       "  hint: name another file; 'planksheaf new FILE' writes a job to fill in\n"},
      {"a file that is a list",
       {{fixture::goodJob, "- ref: A\n"}},
       "job.yaml:1:1: error: a group of keys is needed here, not a list\n"
       "  hint: write it like {key: value}\n"},
      {"a byte that is not UTF-8",
       {{"Inga", "Ing\xE9"}},
       "job.yaml:3:21: error: this is not UTF-8 text\n"
       "  hint: save the file as UTF-8\n"},
      {"a control character",
       {{"Inga", "Ing\004a"}},
       "job.yaml:3:21: error: control character U+0004\n"
       "  hint: delete it\n"},
      {"a tab in the indentation",
       {{"    joists:", "  \tjoists:"}},
       "job.yaml:13:1: error: a tab in the indentation\n"
       "  hint: indent with spaces\n"},
      {"an unclosed quote",
       {{"joists: 450 mm", "joists: \"450 mm"}},
       "job.yaml:13:13: error: a quote is opened and never closed\n"
       "  hint: close it; a value that has quotes of one kind in it goes in quotes of the other kind\n"},
      {"an unclosed brace",
       {{"gap: 5 mm, thickness: 38 mm}", "gap: 5 mm, thickness: 38 mm"}},
       "job.yaml:12:13: error: this { is not closed, or a comma is missing after it\n"
       "  hint: values with # , { } [ ] in them need quotes\n"},
      {"an unclosed bracket",
       {{"[40, 60, 80]", "[40, 60, 80"}},
       "job.yaml:18:10: error: this [ is not closed, or a comma is missing after it\n"
       "  hint: values with # , { } [ ] in them need quotes\n"},
      {"a colon in a value",
       {{"name: Landing", "name: Landing: lower"}},
       "job.yaml:9:18: error: this colon cannot stand here\n"
       "  hint: a value with a colon and a space in it needs quotes; lines of one list or one group of keys "
       "begin in the same column\n"},
      {"a line indented too far",
       {{"    joists", "      joists"}},
       "job.yaml:13:7: error: this line is not indented like those above\n"
       "  hint: lines of one list or one group of keys begin in the same column\n"},
      {"a key that is out of line",
       {{"    joists", "   joists"}},
       "job.yaml:13:4: error: this line is not indented like those above\n"
       "  hint: lines of one list or one group of keys begin in the same column\n"},
      {"content after the document",
       {{"price: {", "---\nprice: {"}},
       "job.yaml:21:1: error: content after the end of the document\n"
       "  hint: lines of one list or one group of keys begin in the same column\n"},
      {"an anchor and its alias",
       {{"joists: 450 mm", "joists: &j 450 mm"}, {"thickness: 38 mm", "thickness: *j"}},
       "job.yaml:12:51: error: aliases (*name) are not allowed\n"
       "  hint: quote the value if it begins with *\n"},
      {"an alias",
       {{"joists: 450 mm", "joists: &j 450 mm"}, {"state: sanded", "state: sanded\n    edge_height: *j"}},
       "job.yaml:13:13: error: anchors (&name) are not allowed\n"
       "  hint: quote the value if it begins with &\n"
       "job.yaml:17:18: error: aliases (*name) are not allowed\n"
       "  hint: quote the value if it begins with *\n"},
      {"a merge key",
       {{"boards: {", "boards: {<<: {gap: 5 mm}, "}},
       "job.yaml:12:14: error: merge keys (<<) are not allowed\n"
       "  hint: write the keys again\n"},
      {"a tag",
       {{"joists: 450 mm", "joists: !!str 450 mm"}},
       "job.yaml:13:13: error: tags (!name) are not allowed\n"
       "  hint: quote the value if it begins with !\n"},
      {"a list as a key",
       {{"joists: 450 mm", "? [a, b]\n    : 450 mm"}},
       "job.yaml:9:5: error: areas[1]: 'joists' is missing\n"
       "  hint: the fixings are counted from it; write it like joists: 450 mm\n"
       "job.yaml:13:7: error: a key must be a word\n"
       "  hint: write it like key: value\n"},
      {"more raised fixings than there are",
       {{"{kind: nails}", "{kind: nails, raised: 120 %}"}},
       "job.yaml:14:36: error: areas[1].fixings.raised: '120 %' is out of range\n"
       "  hint: allowed: from 0 % to 100 %\n"},
      {"a mistyped key",
       {{"width: 138", "widht: 138"}},
       "job.yaml:12:13: error: areas[1].boards: 'width' is missing\n"
       "  hint: write it like width: 140 mm\n"
       "job.yaml:12:14: error: areas[1].boards: 'widht' is not a known key here; did you mean 'width'?\n"
       "  hint: known: width, gap, thickness, run, face, wetted or reeded_factor\n"},
      {"an unknown key",
       {{"joists: 450 mm", "joists: 450 mm\n    varnish: yes"}},
       "job.yaml:14:5: error: areas[1]: 'varnish' is not a known key here\n"
       "  hint: known: name, shape, at, without, boards, joists, fixings, timber, state, coats, rates, "
       "test_patch, note, office_note, crew_note, covered, enclosed, treated, sun, edges, way_out, "
       "edge_height or rail\n"},
      {"a key given twice",
       {{"joists: 450 mm", "joists: 450 mm\n    joists: 400 mm"}},
       "job.yaml:14:5: error: areas[1]: 'joists' is given twice\n"
       "  hint: the first stands in line 13\n"},
      {"a key without a value",
       {{"joists: 450 mm", "joists:"}},
       "job.yaml:13:5: error: areas[1].joists: no value is given\n"
       "  hint: give one or leave the key out\n"},
      {"a missing key of the job",
       {{"start: 2027-03-16\n", ""}},
       "job.yaml:1:1: error: 'start' is missing\n"
       "  hint: write it like start: 2027-03-16\n"},
      {"a firm's file named as before it had a folder",
       {{"firm: ../firm", "brand: brands/mine.yaml"}},
       "job.yaml:6:8: error: brand: 'brand' is now 'firm', a folder\n"
       "  hint: put this file into it as 'firm.yaml', with its logo, and write firm: FOLDER\n"},
      {"all keys missing",
       {{fixture::goodJob, "title: x\n"}},
       "job.yaml:1:1: error: 'ref' is missing\n"
       "  hint: write it like ref: JOB-2027-001\n"
       "job.yaml:1:1: error: 'quoted' is missing\n"
       "  hint: write it like quoted: 2027-03-02\n"
       "job.yaml:1:1: error: 'customer' is missing\n"
       "  hint: write it like customer: {name: A. Customer}\n"
       "job.yaml:1:1: error: 'site' is missing\n"
       "  hint: write it like site: {region: nz, timezone: Pacific/Auckland}\n"
       "job.yaml:1:1: error: 'start' is missing\n"
       "  hint: write it like start: 2027-03-16\n"
       "job.yaml:1:1: error: 'product' is missing\n"
       "  hint: write it like product: tern-oil\n"
       "job.yaml:1:1: error: 'work' is missing\n"
       "  hint: write it like work: [wash, fix, sand, oil]\n"
       "job.yaml:1:1: error: 'areas' is missing\n"
       "  hint: write it like areas: [{name: Deck, shape: {rectangle: [6 m, 4 m]}, timber: kwila, state: "
       "weathered}]\n"
       "job.yaml:1:1: error: 'crew' is missing\n"
       "  hint: write it like crew: {people: 2, hours: 07:30-16:00}\n"},
      {"a value where a list belongs",
       {{"[wash, fix, sand, oil]", "oil"}},
       "job.yaml:17:7: error: work: a list is needed here, not a single value\n"
       "  hint: put [ ] around it: [oil]\n"},
      {"a list where a value belongs",
       {{"timber: kwila", "timber: [kwila]"}},
       "job.yaml:15:13: error: areas[1].timber: a single value is needed here, not a list\n"
       "  hint: take the [ ] or the dashes away\n"},
      {"a value where keys belong",
       {{"crew: {people: 2, hours: 07:30-16:00, breaks: 45 min}", "crew: 2"}},
       "job.yaml:19:7: error: crew: a group of keys is needed here, not a single value\n"
       "  hint: write it like {key: value}\n"},
  };
  fixture::checkAll(jobs);
}

TEST_CASE("a file of more than 1 MiB is refused before it is parsed") {
  CHECK(fixture::messagesOf(fixture::goodJob + std::string(1 << 20, '#')) ==
        "job.yaml:1:1: error: the file is larger than 1 MiB\n"
        "  hint: check that it is the right file; long texts go into 'note' lines\n");
}

TEST_CASE("a byte that is zero is refused") {
  std::string job = fixture::goodJob;
  job[5] = '\0';
  CHECK(fixture::messagesOf(job) == "job.yaml:1:6: error: control character U+0000\n  hint: delete it\n");
}

TEST_CASE("brackets without end are refused without falling over") {
  CHECK_THAT(fixture::messagesOf("a: " + std::string(100'000, '[')),
             Catch::EndsWith("error: nested too deeply\n  hint: take some brackets or blanks away\n"));
  std::string deep;
  for (int i = 0; i < 1000; ++i) deep += std::string(static_cast<std::size_t>(i), ' ') + "a:\n";
  CHECK_THAT(fixture::messagesOf(deep),
             Catch::EndsWith("error: nested too deeply\n  hint: take some brackets or blanks away\n"));
}

TEST_CASE("columns count letters, not bytes") {
  const std::string job =
      fixture::edited(fixture::goodJob, "name: Inga Thorley, email: inga@coldwater.example",
                      "name: \u00C5sa \u0141\u00F3d\u017A, email: nowhere");
  CHECK(fixture::messagesOf(job) ==
        "job.yaml:3:35: error: customer.email: 'nowhere' is not an e-mail address\n"
        "  hint: write it like name@place.example\n");
}

TEST_CASE("a byte order mark and Windows line ends do no harm") {
  std::string job = "\xEF\xBB\xBF";
  for (const char c : fixture::goodJob) job += c == '\n' ? std::string("\r\n") : std::string(1, c);
  CHECK(fixture::messagesOf(job) == "");
}

TEST_CASE("lists, groups and values without end are refused quickly") {
  std::string keys, items = "work: [", job = fixture::goodJob;
  for (int i = 0; i < 60'000; ++i) keys += "k" + std::to_string(i) + ":\n";
  CHECK(fixture::messagesOf(keys) ==
        "job.yaml:1:1: error: more than 1000 items\n"
        "  hint: make several files of it\n");
  for (int i = 0; i < 200'000; ++i) items += "oil,";
  job = fixture::edited(fixture::edited(job, "work: [wash, fix, sand, oil]", items + "oil]"),
                        "sanding: [40, 60, 80]\n", "");
  CHECK(fixture::messagesOf(job) ==
        "job.yaml:17:7: error: work: more than 1000 items\n"
        "  hint: make several files of it\n");
  job = fixture::edited(fixture::goodJob, "kwila", std::string(500'000, 'k'));
  CHECK(fixture::messagesOf(job) ==
        "job.yaml:15:13: error: areas[1].timber: the text is longer than 2000 bytes\n"
        "  hint: shorten it\n");
  job = fixture::edited(fixture::goodJob, "2027-03-16", std::string(500'000, '1'));
  CHECK(fixture::messagesOf(job) == "job.yaml:5:8: error: start: '" + std::string(60, '1') +
                                        "...' is not a date\n"
                                        "  hint: write year, month and day like 2027-03-16\n");
}
