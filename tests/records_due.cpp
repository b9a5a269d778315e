// Whose visit falls due among the jobs of a folder, and which job follows which.
#include "records/due.h"
#include "records/links.h"

#include <catch2/catch.hpp>

namespace {

records::Visit visit(const char* ref, const char* last, const char* customer, const char* after = "") {
  records::Visit v;
  v.ref = v.file = ref;
  v.lastCoat = *base::parseDate(last);
  v.due = base::plusMonths(v.lastCoat, 12);
  v.customer = customer;
  v.address = {std::string("1 ") + customer + " Road"};
  v.areas = {"Deck"};
  v.after = after;
  v.hasRecords = true;
  return v;
}

/// 'A(A-2 A-3) B': visits with their open quotes.
std::string listed(const std::vector<records::Visit>& all) {
  std::string s;
  for (const auto& v : records::dueBetween(all, {}, *base::parseDate("2040-01-01"))) {
    s += (s.empty() ? "" : " ") + v.ref;
    for (const auto& quote : v.openQuotes) s += (&quote == &v.openQuotes.front() ? "(" : " ") + quote;
    if (!v.openQuotes.empty()) s += ")";
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
    v.hasRecords = true;
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

TEST_CASE("a quote that nobody has accepted leaves the visit on the list and stands beside it") {
  auto quote = visit("A-2", "2028-03-21", "Inga", "A");
  quote.hasRecords = false;
  auto unnamed = quote;
  unnamed.ref = "new";
  unnamed.after = "";
  CHECK(listed({visit("A", "2027-03-20", "Inga"), quote, unnamed}) == "A(A-2 new) A-2 new");
  quote.hasRecords = true;
  CHECK(listed({visit("A", "2027-03-20", "Inga"), quote}) == "A-2");
}

TEST_CASE("a number under 'after' means the job of that customer") {
  const auto other = visit("A", "2027-03-01", "Tem");
  CHECK(listed({visit("A", "2027-03-20", "Inga"), other, visit("A-2", "2028-03-21", "Inga", "A")}) ==
        "A A-2");
  auto sold = visit("A-2", "2028-03-21", "New Owner", "A");
  CHECK(listed({visit("A", "2027-03-20", "Inga"), sold}) == "A A-2");
  sold.address = {"1 Inga Road"};
  CHECK(listed({visit("A", "2027-03-20", "Inga"), sold}) == "A-2");
}

TEST_CASE("a number named by slip at another site of the customer takes nobody off the list") {
  auto ridge = visit("B", "2027-03-25", "Inga"), next = visit("B-2", "2028-03-21", "Inga", "A");
  ridge.address = next.address = {"77 Ridge Road"};
  CHECK(listed({visit("A", "2027-03-20", "Inga"), ridge, next}) == "A B-2");
}

TEST_CASE("jobs in a circle keep the last of them on the list") {
  CHECK(listed({visit("A", "2027-03-20", "Inga", "B"), visit("B", "2028-03-21", "Inga", "A")}) == "B");
  CHECK(listed({visit("A", "2027-03-20", "Inga", "A")}) == "A");
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
