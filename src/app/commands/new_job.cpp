// 'planksheaf new': content/new_job.yaml with the words of one region, customer, product and number.
#include "app/commands/new_job.h"

#include "app/after/job_folder.h"
#include "app/firm/new_file.h"
#include "app/system/files.h"
#include "base/hidden.h"
#include "base/joined.h"
#include "base/letters.h"
#include "input/content/customers.h"
#include "input/read.h"
#include "input/yaml/edit.h"
#include "input/yaml/overlay.h"

#include <filesystem>
#include <iostream>
#include <tuple>

namespace app {
namespace fs = std::filesystem;
namespace {

constexpr int done = 0, refused = 1, wrongUse = 2;

/// A number and the job it counts on from, which may be none.
struct Number {
  std::string ref, last, file;
};

/// 'LA-2027-' and '031' of LA-2027-031; the second is empty where it does not end in digits.
std::pair<std::string, std::string> split(const std::string& ref) {
  auto at = ref.size();
  while (at > 0 && base::isDigit(ref[at - 1]) && ref.size() - at < 9) --at;
  return {ref.substr(0, at), ref.substr(at)};
}

/// Where the firm's jobs are: below the folder that holds its own, if the new one is, too; else beside that.
std::string jobsOf(const Shipped& shipped, const std::string& file) {
  const auto here = fs::absolute(file).lexically_normal().parent_path();
  if (shipped.firmFolder.empty()) return here.string();
  const auto beside = fs::absolute(shipped.firmFolder).lexically_normal().parent_path();
  const auto way = here.lexically_relative(beside);
  return (way.empty() || *way.begin() == ".." ? here : beside).string();
}

struct NumberedJob {
  input::JobHead head;
  std::string file;
};

std::vector<NumberedJob> numberedJobs(const std::string& folder) {
  std::vector<NumberedJob> jobs;
  if (!fs::is_directory(folder)) return jobs;  // made for the new one
  for (const auto& file : jobFiles(folder)) {
    const auto text = input::readFile(file);
    if (text && looksLikeJob(*text)) jobs.push_back({input::headOf(*text, file), file});
  }
  return jobs;
}

/// The number of the job quoted last, counted up past all that begin alike. A visit a year after ('after:')
/// does not count: its number is the old one with -2.
Number nextNumber(const std::string& folder, const std::string& first) {
  const auto jobs = numberedJobs(folder);
  const NumberedJob* last = nullptr;
  for (const auto& job : jobs) {
    if (!job.head.after.empty() || split(job.head.ref).second.empty()) continue;
    const auto rank = [](const NumberedJob& j) { return std::tie(j.head.quoted, j.head.ref); };
    if (last == nullptr || rank(job) > rank(*last)) last = &job;
  }
  if (last == nullptr) return {first, "", ""};
  const auto [begin, digits] = split(last->head.ref);
  int highest = std::stoi(digits);
  for (const auto& job : jobs) {
    const auto& ref = job.head.ref;
    if (!ref.starts_with(begin)) continue;
    const auto own = ref.substr(begin.size(), ref.find('-', begin.size()) - begin.size());
    if (!base::isDigits(own) || own.size() > 9 || std::stoi(own) <= highest) continue;
    highest = std::stoi(own);
    last = &job;
  }
  auto number = std::to_string(highest + 1);
  if (number.size() < digits.size()) number.insert(0, digits.size() - number.size(), '0');
  return {begin + number, last->head.ref, last->file};
}

/// '[1 Example Street, Exampletown]'
std::string listOf(const std::vector<std::string>& lines) {
  std::vector<std::string> words;
  for (const auto& line : lines) words.push_back(input::plainOrQuoted(line));
  return "[" + base::joined(words) + "]";
}

/// Of the firm's book; nothing where none is asked for, or (and an error) none is meant.
std::optional<model::Customer> customerNamed(const std::string& name, const model::Content& content,
                                             base::Diagnostics& messages) {
  if (name.empty()) return {};
  const input::Source source{"--customer", messages};
  const input::Node word{input::Node::Kind::Word, {}, name, {}, {}};
  const auto* known = input::knownCustomer({source, &word, "", {}}, content.customers);
  return known == nullptr ? std::nullopt : std::optional(known->customer);
}

void checkProduct(const std::string& id, const model::Region& region, const model::Content& content,
                  base::Diagnostics& messages) {
  std::vector<std::string> known;
  for (const auto& [name, product] : content.products) known.push_back(name);
  const auto product = content.products.find(id);
  if (product == content.products.end()) reportUnknown({"--product"}, "", id, "product", known, messages);
  else if (!product->second.tins.contains(region.id))
    messages.error({"--product"}, "", "'" + id + "' has no tins in region '" + region.id + "'",
                   "add them with their prices to the product's file, under tins: " + region.id);
}

void tell(const std::string& file, const NewJobOrder& order, const Number& number, const Shipped& shipped,
          const std::string& region) {
  const std::string name = base::printable(file);
  std::cout << name << ": a job to fill in; then run 'planksheaf pack " << name << "'\n";
  const std::string last = base::printable(number.last + " in " + number.file);
  if (order.number == "next")
    std::cout << "  its number is " << base::printable(number.ref)
              << (number.last.empty() ? ", the first" : ", the next after " + last) << "\n";
  if (shipped.firmFolder.empty())
    std::cout << "  first make the firm's folder, beside it or above: 'planksheaf firm firm --region "
              << region << "'\n";
}

}  // namespace

int newJob(const NewJobOrder& order) {
  const auto& file = order.file;
  if (input::isThere(file)) {
    std::cerr << base::printable(file)
              << ": error: is there already\n  hint: choose another name; nothing is written over\n";
    return refused;
  }
  const auto shipped = Firms(order.choices).of({file, ""});
  const auto& content = shipped->content;
  const std::string usual = shipped->firm.region.empty() ? "nz" : shipped->firm.region;
  const auto* region = newRegion(order.region.empty() ? usual : order.region, content);
  if (region == nullptr) return wrongUse;
  auto messages = shipped->firmMistakes;
  const auto customer = customerNamed(order.customer, content, messages);
  checkProduct(order.product, *region, content, messages);
  std::cerr << base::format(messages);
  if (!messages.ok()) return refused;
  const std::string first = "JOB-2027-001";
  const auto number = order.number == "next" ? nextNumber(jobsOf(*shipped, file), first)
                                             : Number{order.number.empty() ? first : order.number, "", ""};
  const bool isAtHome = customer && !customer->address.empty();
  const SampleWords own{
      {{"ref", input::plainOrQuoted(number.ref)},
       {"customer", input::plainOrQuoted(order.customer)},
       {"address", isAtHome ? listOf(customer->address) : "[1 Example Street, Exampletown]"},
       {"product", order.product}},
      {customer ? "known" : "typed"}};
  const auto sample =
      movedText(fs::path(shipped->contentFolder) / "new_job.yaml", fs::absolute(file).parent_path());
  writeAll({{file, sampleFor(*region, sample, own)}});
  tell(file, order, number, *shipped, region->id);
  return done;
}

}  // namespace app
