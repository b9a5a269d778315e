#include "app/commands.h"

#include "app/documents.h"
#include "app/facts_text.h"
#include "app/figures_json.h"
#include "app/files.h"
#include "app/job_calendar.h"
#include "app/parallel.h"
#include "input/read.h"
#include "sheets/explain.h"

#include <algorithm>
#include <filesystem>
#include <iostream>
#include <map>
#include <set>

namespace app {
namespace fs = std::filesystem;
namespace {

constexpr int done = 0, refused = 1;

/// What became of one job: its messages, and its pack.
struct Outcome {
  base::Diagnostics messages;
  std::string folder;
  std::vector<OutputFile> files;
  std::string failure;  // of the world: a font that is gone, a disk that is full
};

OutputFile jobCalendarIn(const std::string& folder, const Telling& told) {
  const auto path = fs::path(folder) / "job.ics";
  const bool isThere = fs::is_regular_file(path);
  return {path.string(), jobCalendar(told, isThere ? input::readFile(path.string()).value_or("") : "")};
}

void makeOne(const std::string& job, const Shipped& shipped, const PackOrder& order, Outcome& out) {
  try {
    const auto x = compute(job, shipped, order.choices, out.messages);
    if (!x) return;
    out.folder = fs::path(packFolder(job, x->c.job.ref, order.folder)).lexically_normal().string();
    out.files = makeDocuments(*x, shipped, order.choices, order.only, out.folder, out.messages);
    if (!order.only.empty() || !out.messages.ok()) return;
    const auto language = languagesOf("office", *x, order.choices).front();
    if (const auto told = tell(*x, shipped, language, out.messages))
      out.files.push_back(jobCalendarIn(out.folder, *told));
  } catch (const std::exception& e) {
    out.failure = e.what();
  }
}

/// Makes every job on its own thread of a few, in any order; the outcomes keep the order of the jobs.
std::vector<Outcome> makeAll(const Shipped& shipped, const PackOrder& order) {
  std::vector<Outcome> outcomes(order.jobs.size());
  inParallel(order.jobs.size(), order.threads,
             [&](std::size_t i) { makeOne(order.jobs[i], shipped, order, outcomes[i]); });
  return outcomes;
}

/// Two jobs of one number would write over each other: neither is written.
void refuseSameFolders(const PackOrder& order, std::vector<Outcome>& outcomes) {
  std::map<std::string, std::vector<std::size_t>> users;
  for (std::size_t i = 0; i < outcomes.size(); ++i) {
    if (!outcomes[i].folder.empty()) users[outcomes[i].folder].push_back(i);
  }
  for (const auto& [folder, jobs] : users) {
    for (const auto i : jobs) {
      if (jobs.size() < 2) continue;
      const auto other = order.jobs[jobs[i == jobs[0] ? 1 : 0]];
      outcomes[i].messages.error({order.jobs[i]}, "ref", "has the same number and folder as '" + other + "'",
                                 "give each job a number of its own");
    }
  }
}

/// Writes a pack; a document that the job no longer has does not stay behind with old dates.
void writeOne(const PackOrder& order, const std::vector<std::string>& languages, Outcome& out) {
  if (!out.messages.ok() || !out.failure.empty()) return;
  try {
    writeAll(out.files);
    const auto remove = [&](const std::string& name) {
      const auto path = (fs::path(out.folder) / (name + ".pdf")).string();
      const bool isMade =
          std::any_of(out.files.begin(), out.files.end(), [&](const auto& f) { return f.path == path; });
      if (!isMade) fs::remove(path);
    };
    for (const auto& name : documentNames()) {
      if (!order.only.empty()) break;
      remove(name);
      for (const auto& language : languages) remove(name + "-" + language);
    }
  } catch (const std::exception& e) {
    out.failure = e.what();
  }
}

void show(const base::Diagnostics& messages) {
  for (const auto& d : messages.all()) std::cerr << base::format(d);
}

int report(const PackOrder& order, const std::vector<Outcome>& outcomes, bool writes) {
  int status = done;
  for (std::size_t i = 0; i < outcomes.size(); ++i) {
    const auto& out = outcomes[i];
    show(out.messages);
    if (!out.failure.empty()) {
      std::cerr << order.jobs[i] << ": error: " << out.failure << "\n";
      status = 2;
    } else if (!out.messages.ok()) {
      if (status == done) status = refused;
    } else if (writes) {
      std::cout << out.folder << ": " << out.files.size() << (out.files.size() == 1 ? " file\n" : " files\n");
    } else {
      std::cout << order.jobs[i] << ": in order\n";
    }
  }
  return status;
}

}  // namespace

std::string packFolder(const std::string& job, const std::string& ref, const std::string& folder) {
  if (!folder.empty()) return (fs::path(folder) / ref).string();
  return ((job == "-" ? fs::path(".") : fs::path(job).parent_path()) / ref).string();
}

int pack(const PackOrder& order) {
  const Shipped shipped = readShipped(order.choices);
  auto outcomes = makeAll(shipped, order);
  refuseSameFolders(order, outcomes);
  for (auto& out : outcomes) writeOne(order, shipped.content.languages, out);
  return report(order, outcomes, true);
}

int check(const std::vector<std::string>& jobs, const Choices& choices) {
  const Shipped shipped = readShipped(choices);
  PackOrder order;
  order.jobs = jobs;
  order.choices = choices;
  return report(order, makeAll(shipped, order), false);
}

int figures(const std::string& job, FiguresForm form, const Choices& choices) {
  const Shipped shipped = readShipped(choices);
  base::Diagnostics messages;
  const auto x = compute(job, shipped, choices, messages);
  show(messages);
  if (!x) return refused;
  if (form == FiguresForm::Json) {
    std::cout << figuresJson(*x);
    return done;
  }
  const auto told = tell(*x, shipped, shipped.english.id, messages);
  std::string about;
  for (const auto& e : sheets::explain(told->computed())) {
    if (e.about != about) std::cout << (about.empty() ? "" : "\n") << e.about << "\n";
    about = e.about;
    std::cout << "  " << e.name << ": " << (form == FiguresForm::Explain ? e.formula + " = " : "") << e.value
              << "\n";
  }
  if (form == FiguresForm::Explain) std::cout << sheets::explainSafety(told->computed());
  return done;
}

int facts(const std::string& job, const Choices& choices) {
  const Shipped shipped = readShipped(choices);
  base::Diagnostics messages;
  const auto x = compute(job, shipped, choices, messages);
  show(messages);
  if (!x) return refused;
  const auto told = tell(*x, shipped, shipped.english.id, messages);
  std::set<std::string> known;
  for (const auto& [document, title] : {std::pair{"quote", "in every document for the customer"},
                                        {"safety", "and for the crew"},
                                        {"office", "and for the office"}}) {
    sheets::Facts fresh;
    for (auto& fact : factsOf(document, told->computed())) {
      if (known.insert(fact.first).second) fresh.push_back(std::move(fact));
    }
    std::cout << "# " << title << "\n" << factsText(fresh) << "\n";
  }
  return done;
}

int newJob(const std::string& file) {
  if (fs::exists(file)) {
    std::cerr << file << ": error: is there already\n  hint: choose another name; nothing is written over\n";
    return refused;
  }
  const fs::path content = shippedFolder("content");
  auto text = input::readFile((content / "new_job.yaml").string()).value();
  // Paths in the shipped job are relative to the content folder; the new file may lie anywhere.
  const auto folder = fs::absolute(fs::path(file)).parent_path();
  const auto relative = [&](const std::string& shipped) {
    return fs::proximate(content / shipped, folder).string();
  };
  for (const std::string shipped : {"schemas/job.schema.json", "brands/demo.yaml"}) {
    const auto at = text.find(shipped);
    if (at != std::string::npos) text.replace(at, shipped.size(), relative(shipped));
  }
  writeAll({{file, text}});
  std::cout << file << ": a job to fill in; then run 'planksheaf pack " << file << "'\n";
  return done;
}

}  // namespace app
