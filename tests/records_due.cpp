// Whose visit falls due among the jobs of a folder, and which job follows which.
#include "records/due.h"
#include "records/links.h"

#include <catch2/catch.hpp>

namespace {

using model::Progress;

records::Visit visit(const char* ref, const char* last, const char* customer, const char* after = "") {
  records::Visit v;
  v.ref = v.file = ref;
  v.lastCoat = *base::parseDate(last);
  v.due = base::plusMonths(v.lastCoat, 12);
  v.customer = customer;
  v.address = {std::string("1 ") + customer + " Road"};
  v.areas = {"Deck"};
  v.after = after;
  return v;
}

/// A job that is not done, quoted four weeks before its start; an answer came a week after the quote.
records::Visit ahead(const char* ref, const char* start, const char* customer, Progress progress,
                     const char* after = "") {
  auto v = visit(ref, start, customer, after);
  v.progress = progress;
  v.due = v.lastCoat;
  v.lastCoat = {};
  v.quoted = v.due - std::chrono::days{28};
  if (progress == Progress::Accepted) v.accepted = v.quoted + std::chrono::days{7};
  if (progress == Progress::Declined) v.declined = v.quoted + std::chrono::days{7};
  return v;
}

/// 'A | A-2 B | | C': whom to write to, who waits, who is booked, who is lost.
std::string listed(const std::vector<records::Visit>& all, const char* from = "2000-01-01",
                   const char* by = "2040-01-01") {
  std::string s;
  auto group = Progress::Done;
  for (const auto& v : records::dueBetween(all, base::parseDate(from), *base::parseDate(by))) {
    for (; group != v.progress; group = static_cast<Progress>(static_cast<int>(group) + 1)) s += "| ";
    s += v.ref + " ";
  }
  return s;
}

model::Job job(const char* ref, const char* after, const char* customer) {
  model::Job j;
  j.ref = ref;
  j.after = after;
  j.customer.name = customer;
  j.refPos = {std::string(ref) + ".yaml", 1, 6};
  j.afterPos = {std::string(ref) + ".yaml", 2, 8};
  return j;
}

std::string saidOf(const std::vector<model::Job>& jobs) {
  std::vector<const model::Job*> all;
  for (const auto& j : jobs) all.push_back(&j);
  base::Diagnostics messages;
  records::checkLinks(all, messages);
  std::string s;
  for (const auto& m : messages.all()) s += base::format(m);
  return s;
}

}  // namespace

TEST_CASE("visits are listed by date, without the jobs that a later one follows") {
  const auto visit = [](const char* ref, const char* due, const char* last, const char* customer,
                        std::vector<std::string> areas, const char* after = "") {
    records::Visit v;
    v.ref = v.file = ref;
    v.due = *base::parseDate(due);
    v.lastCoat = *base::parseDate(last);
    v.customer = customer;
    v.areas = std::move(areas);
    v.after = after;
    return v;
  };
  const std::vector<records::Visit> all = {
      visit("C", "2028-05-02", "2027-05-02", "Inga", {"Deck"}),
      visit("A", "2028-03-20", "2027-03-19", "Tem", {"Deck"}),
      visit("B", "2028-03-20", "2027-03-19", "Mara", {"Deck"}),
      visit("old", "2027-03-01", "2026-03-01", "Mara", {"Deck"}),             // B coats it again
      visit("other", "2027-03-01", "2026-03-01", "Mara", {"Deck", "Steps"}),  // B does not coat the steps
      visit("first", "2027-06-01", "2026-06-01", "Wren", {"Porch"}),          // named by the next
      visit("first-2", "2028-06-01", "2027-06-01", "wren", {"Deck"}, "first")};
  const auto refs = [&](std::optional<base::Date> from, const char* by) {
    std::string s;
    for (const auto& v : records::dueBetween(all, from, *base::parseDate(by))) s += v.ref + " ";
    return s;
  };
  CHECK(refs({}, "2028-12-31") == "other A B C first-2 ");
  CHECK(refs({}, "2028-03-20") == "other A B ");
  CHECK(refs(base::parseDate("2028-03-20"), "2028-05-02") == "A B C ");
  CHECK(refs(base::parseDate("2028-03-21"), "2028-05-01") == "");
}

TEST_CASE("a later job takes the place of the visit and is listed by what became of it") {
  const auto done = visit("A", "2027-03-20", "Inga");
  const auto next = [](const char* ref, Progress progress) {
    return ahead(ref, "2028-03-21", "Inga", progress, "A");
  };
  CHECK(listed({done}) == "A ");
  CHECK(listed({done, next("A-2", Progress::Quoted)}) == "| A-2 ");
  CHECK(listed({done, next("A-2", Progress::Accepted)}) == "| | A-2 ");
  CHECK(listed({done, next("A-2", Progress::Declined)}, "2000-01-01", "2028-12-31") == "| | | A-2 ");
  CHECK(listed({done, visit("A-2", "2028-03-21", "Inga", "A")}) == "A-2 ");
  // Without a number: the same boards at the same address. Two quotes for one day are two to answer.
  auto unnamed = next("new", Progress::Quoted);
  unnamed.after = "";
  CHECK(listed({done, next("A-2", Progress::Quoted), unnamed}) == "| A-2 new ");
}

TEST_CASE(
    "the last quote counts, a declined one takes no other's place, and who was booked stays so until it is "
    "done") {
  const auto one = [](Progress progress) { return ahead("A-2", "2028-03-21", "Inga", progress); };
  const auto two = [](Progress progress) { return ahead("A-3", "2028-05-02", "Inga", progress); };
  const auto both = [&](Progress first, Progress second) { return listed({one(first), two(second)}); };
  CHECK(both(Progress::Quoted, Progress::Quoted) == "| A-3 ");
  CHECK(both(Progress::Quoted, Progress::Accepted) == "| | A-3 ");
  CHECK(both(Progress::Quoted, Progress::Declined) == "| A-2 | | A-3 ");
  CHECK(both(Progress::Declined, Progress::Quoted) == "| A-3 ");
  CHECK(both(Progress::Declined, Progress::Declined) == "| | | A-3 ");
  CHECK(both(Progress::Accepted, Progress::Quoted) == "| A-3 | A-2 ");
  CHECK(both(Progress::Accepted, Progress::Accepted) == "| | A-2 A-3 ");
  CHECK(listed({one(Progress::Accepted), visit("A-3", "2028-05-02", "Inga")}) == "A-3 ");
}

TEST_CASE("who declined is not written to, and is asked again a year later") {
  const auto done = visit("A", "2027-03-20", "Inga");
  const auto no = ahead("A-2", "2028-03-21", "Inga", Progress::Declined, "A");
  CHECK(listed({done, no}, "2000-01-01", "2029-03-20") == "| | | A-2 ");
  CHECK(listed({done, no}, "2000-01-01", "2029-03-21") == "A ");
  CHECK(listed({done, no}, "2029-03-22", "2029-12-31").empty());
  const auto asked = records::dueBetween({done, no}, {}, *base::parseDate("2029-12-31"));
  REQUIRE(asked.size() == 1);
  CHECK(base::isoDate(asked[0].due) == "2029-03-21");
  // A quote since then waits; one that was declined too puts it off again.
  const auto later = [](Progress progress) { return ahead("A-3", "2029-04-03", "Inga", progress, "A"); };
  CHECK(listed({done, no, later(Progress::Quoted)}) == "| A-3 ");
  CHECK(listed({done, no, later(Progress::Declined)}, "2000-01-01", "2029-12-31") == "| | | A-3 ");
  CHECK(listed({done, no, later(Progress::Declined)}, "2000-01-01", "2030-04-03") == "A ");
}

TEST_CASE("a wash alone does not take the place of a coat") {
  auto wash = ahead("A-2", "2028-03-21", "Inga", Progress::Accepted, "A");
  wash.laysCoat = false;
  CHECK(listed({visit("A", "2027-03-20", "Inga"), wash}) == "A | | A-2 ");
  auto other = ahead("A-3", "2028-05-02", "Inga", Progress::Quoted);
  CHECK(listed({ahead("A-2", "2028-03-21", "Inga", Progress::Quoted), other}) == "| A-3 ");
  other.laysCoat = false;
  CHECK(listed({ahead("A-2", "2028-03-21", "Inga", Progress::Quoted), other}) == "| A-2 A-3 ");
}

TEST_CASE("whoever took the place of a visit is listed when that falls due, though the work is later") {
  const auto done = visit("A", "2027-03-20", "Inga");  // due on 20 March 2028
  const auto booked = ahead("A-2", "2028-05-02", "Inga", Progress::Accepted, "A");
  CHECK(listed({done, booked}, "2028-03-01", "2028-03-31") == "| | A-2 ");
  CHECK(listed({done, booked}, "2028-05-02", "2028-05-02") == "| | A-2 ");
  CHECK(listed({done, booked}, "2028-05-03", "2028-06-30").empty());
  CHECK(listed({done, booked}, "2028-03-01", "2028-03-19").empty());
  CHECK(listed({booked}, "2028-03-01", "2028-05-01").empty());
  // A quote waits from its date on, 4 April; the no came on 11 April.
  const auto quote = ahead("B", "2028-05-02", "Tem", Progress::Quoted);
  CHECK(listed({quote}, "2028-03-01", "2028-04-03").empty());
  CHECK(listed({quote}, "2028-03-01", "2028-04-04") == "| B ");
  const auto no = ahead("B", "2028-05-02", "Tem", Progress::Declined);
  CHECK(listed({no}, "2028-03-01", "2028-04-10").empty());
  CHECK(listed({no}, "2028-03-01", "2028-04-11") == "| | | B ");
  // The visit that was declined is handed on along the row of quotes.
  const auto first = ahead("A-2", "2028-03-21", "Inga", Progress::Declined, "A");
  auto second = ahead("A-3", "2028-06-20", "Inga", Progress::Quoted, "A-2");
  CHECK(listed({done, first, second}, "2028-03-01", "2028-03-20") == "| A-3 ");
}

TEST_CASE("a number under 'after' means the job of that customer") {
  const auto other = visit("A", "2027-03-01", "Tem");
  CHECK(listed({visit("A", "2027-03-20", "Inga"), other, visit("A-2", "2028-03-21", "Inga", "A")}) ==
        "A A-2 ");
  auto sold = visit("A-2", "2028-03-21", "New Owner", "A");
  CHECK(listed({visit("A", "2027-03-20", "Inga"), sold}) == "A A-2 ");
  sold.address = {"1 Inga Road"};
  CHECK(listed({visit("A", "2027-03-20", "Inga"), sold}) == "A-2 ");
}

TEST_CASE("a number named by slip at another site of the customer takes nobody off the list") {
  auto ridge = visit("B", "2027-03-25", "Inga"), next = visit("B-2", "2028-03-21", "Inga", "A");
  ridge.address = next.address = {"77 Ridge Road"};
  CHECK(listed({visit("A", "2027-03-20", "Inga"), ridge, next}) == "A B-2 ");
}

TEST_CASE("jobs in a circle keep the last of them on the list") {
  CHECK(listed({visit("A", "2027-03-20", "Inga", "B"), visit("B", "2028-03-21", "Inga", "A")}) == "B ");
  CHECK(listed({visit("A", "2027-03-20", "Inga", "A")}) == "A ");
}

TEST_CASE("numbers that several jobs have or none, and circles, are told") {
  CHECK(saidOf({job("A", "", "Inga"), job("A-2", "A", "inga"), job("A-3", "A-2", "Inga")}).empty());
  CHECK(saidOf({job("A-2", "A", "Inga")}) ==
        "A-2.yaml:2:8: warning: after: no job of this folder has the number 'A'\n"
        "  hint: check the number; as long as it is not found, the job it follows counts as due\n");
  CHECK(saidOf({job("A", "", "Tem"), job("A-2", "A", "Inga")}) ==
        "A-2.yaml:2:8: warning: after: 'A' is a job for 'Tem', not for 'Inga'\n"
        "  hint: check the number, or write customer or address as they stand there\n");
  auto second = job("A", "", "Tem");
  second.refPos.file = "b.yaml";
  CHECK(saidOf({job("A", "", "Inga"), second, job("A-2", "A", "Tem")}) ==
        "A.yaml:1:6: warning: ref: 'A' is the number of another job too, in 'b.yaml'\n"
        "  hint: give each job a number of its own, or delete the file that no longer counts\n"
        "b.yaml:1:6: warning: ref: 'A' is the number of another job too, in 'A.yaml'\n"
        "  hint: give each job a number of its own, or delete the file that no longer counts\n");
  const std::string hint = "  hint: take 'after' out of the one that came first\n";
  CHECK(saidOf({job("A", "B", "Inga"), job("B", "A", "Inga")}) ==
        "A.yaml:2:8: error: after: 'A' and 'B' follow each other in a circle\n" + hint);
  CHECK(
      saidOf({job("X", "A", "Inga"), job("A", "C", "Inga"), job("B", "A", "Inga"), job("C", "B", "Inga")}) ==
      "A.yaml:2:8: error: after: 'A', 'C' and 'B' follow each other in a circle\n" + hint);
}
