// The command line.
#include "app/commands/commands.h"
#include "app/commands/watch.h"
#include "app/commands/year_after.h"
#include "app/pack/looks.h"
#include "app/pack/process.h"
#include "base/hidden.h"
#include "base/nearest.h"

#include <CLI/CLI.hpp>
#include <iostream>
#include <sstream>

namespace {

constexpr int wrongUse = 2;
constexpr auto version = "planksheaf " PLANKSHEAF_VERSION;

const std::vector<std::string> commands = {"pack",  "check", "figures", "plan",  "new",  "facts",
                                           "looks", "watch", "due",     "again", "rates"};

constexpr auto intro =
    R"(One YAML job file becomes a pack of PDFs: quote, aftercare sheet, crew safety sheet, day plan, order list, office sheet.

  planksheaf new deck.yaml             write a commented job to fill in
  planksheaf pack deck.yaml            make its pack, in a folder named after the job's number
  planksheaf plan deck.yaml            which days, and which hours are fit for coating
  planksheaf figures --explain deck.yaml   how each figure came about
  planksheaf due jobs --by 2028-06-30  whose yearly visit falls due
  planksheaf again deck.yaml --start 2028-03-20   next year's job)";

void addChoices(CLI::App& command, app::Choices& choices) {
  command.add_option("--brand", choices.brandFile, "the firm's file, instead of the job's")
      ->type_name("FILE");
  command.add_option("--looks", choices.looks, "folder with the firm's own templates and themes")
      ->check(CLI::ExistingDirectory)
      ->type_name("DIR");
  command
      .add_option("--theme", choices.theme,
                  "generous, compact or one of the firm's own, instead of the brand's")
      ->type_name("NAME");
  command
      .add_option_function<std::string>(
          "--paper",
          [&choices](const std::string& name) {
            choices.paper = name == "a4" ? model::Paper::A4 : model::Paper::Letter;
          },
          "a4 or letter, instead of the region's")
      ->check(CLI::IsMember({"a4", "letter"}))
      ->type_name("PAPER");
  command
      .add_option("--language", choices.languages,
                  "of every document, instead of the job's; the first is the main one, as in en,es")
      ->delimiter(',')
      ->allow_extra_args(false)  // the next word is a job
      ->type_name("NAMES");
}

void addOnly(CLI::App& command, app::PackOrder& order) {
  command
      .add_option("--only", order.only,
                  "only these documents, by the names of their templates, as in quote,safety")
      ->delimiter(',')
      ->allow_extra_args(false)  // the next word is a job
      ->type_name("NAMES");
}

/// 'YYYY-MM-DD', for a day that exists.
CLI::Option* addDate(CLI::App& command, const char* name, std::optional<base::Date>& into,
                     const char* about) {
  return command
      .add_option_function<std::string>(
          name, [&into](const std::string& s) { into = base::parseDate(s); }, about)
      ->check([](const std::string& s) {
        return base::parseDate(s) ? std::string()
                                  : "'" + s + "' is not a date; write year, month and day like 2028-03-20";
      })
      ->type_name("DATE");
}

int run(int argc, char** argv) {
  CLI::App program{intro, "planksheaf"};
  program.set_version_flag("--version", version);
  program.require_subcommand(1);
  app::PackOrder order;
  auto* pack = program.add_subcommand("pack", "make the pack of each job");
  pack->add_option("jobs", order.jobs, "job files; - reads standard input")->required()->type_name("JOB");
  pack->add_option("-o,--output", order.folder, "folder for the packs, instead of the job's own")
      ->type_name("DIR");
  addOnly(*pack, order);
  pack->add_option("--threads", order.threads, "how many jobs at a time")
      ->check(CLI::Range(1, 256))
      ->type_name("N");
  addChoices(*pack, order.choices);
  auto* check = program.add_subcommand("check", "read and compute, write nothing, list every mistake");
  check->add_option("jobs", order.jobs, "job files; - reads standard input")->required()->type_name("JOB");
  addOnly(*check, order);
  addChoices(*check, order.choices);
  std::string job;
  bool isJson = false, isExplain = false, isCsv = false;
  auto* figures = program.add_subcommand("figures", "every computed figure");
  figures->add_option("job", job, "job file; - reads standard input")->required()->type_name("JOB");
  figures->add_flag("--json", isJson, "as JSON, by the names of content/schemas/figures.schema.json");
  figures->add_flag("--csv", isCsv, "the lines of the price, for the accounts")->excludes("--json");
  figures
      ->add_flag("--explain", isExplain,
                 "with the formula behind each, the day of one person and the hazards, in English")
      ->excludes("--json")
      ->excludes("--csv");
  addChoices(*figures, order.choices);
  auto* plan = program.add_subcommand("plan", "the calendar day by day, and the hours fit for coating");
  plan->add_option("job", job, "job file; - reads standard input")->required()->type_name("JOB");
  addDate(*plan, "--from", order.choices.bounds.from, "no work before this day, instead of the job's start");
  addDate(*plan, "--by", order.choices.bounds.by, "the last day wanted with work on site");
  plan->add_flag("--json", isJson, "as JSON, by the names of content/schemas/plan.schema.json");
  addChoices(*plan, order.choices);
  std::string file;
  auto* fresh = program.add_subcommand("new", "write a commented job to fill in");
  fresh->add_option("file", file, "where to write it; must not be there yet")->required()->type_name("FILE");
  std::string region = "nz";
  fresh
      ->add_option("--region", region,
                   "whose place, units, season and prices it has: au gb ie nz us; left out: nz")
      ->type_name("REGION");

  auto* facts = program.add_subcommand("facts", "every name a template may use, with its value in a job");
  facts->add_option("job", job, "job file; - reads standard input")->required()->type_name("JOB");
  addChoices(*facts, order.choices);
  auto* looks = program.add_subcommand("looks", "copy templates, themes and a brand out for editing");
  looks->add_option("folder", file, "where to; nothing is written over")->required()->type_name("DIR");
  auto* watch = program.add_subcommand(
      "watch", "make the pack again on every save of job, brand, template, theme or content");
  watch->add_option("job", job, "job file")->required()->check(CLI::ExistingFile)->type_name("JOB");
  watch->add_option("-o,--output", order.folder, "folder for the pack, instead of the job's own")
      ->type_name("DIR");
  addChoices(*watch, order.choices);

  app::DueOrder dueOrder;
  std::optional<base::Date> by, start;
  auto* due = program.add_subcommand("due", "whose maintenance falls due, from every job below a folder");
  due->add_option("folder", dueOrder.folder, "where the jobs are")
      ->required()
      ->check(CLI::ExistingDirectory)
      ->type_name("FOLDER");
  addDate(*due, "--from", dueOrder.from, "first day; left out: all before --by");
  addDate(*due, "--by", by, "last day")->required();
  auto* dueJson = due->add_flag("--json", isJson, "as JSON");
  due->add_flag("--csv", isCsv, "as CSV (RFC 4180)")->excludes(dueJson);
  due->callback([&] {
    if (dueOrder.from > by)
      throw CLI::ValidationError(
          "--from", "'" + base::isoDate(*dueOrder.from) + "' is after --by, '" + base::isoDate(*by) + "'");
  });
  app::AgainOrder againOrder;
  auto* again = program.add_subcommand("again", "write next year's job: a wash and one maintenance coat");
  again->add_option("job", againOrder.job, "the finished job")->required()->type_name("JOB");
  addDate(*again, "--start", start, "first day on site")->required();
  addDate(*again, "--quoted", againOrder.quoted, "date of the quote; left out: four weeks before the start");
  again->add_option("-o,--output", againOrder.file, "where to write it; must not be there yet")
      ->type_name("FILE");
  std::string folder, ratesFile;
  auto* rates =
      program.add_subcommand("rates", "spreading rates learned from every recorded job below a folder");
  rates->add_option("folder", folder, "where the jobs are")
      ->required()
      ->check(CLI::ExistingDirectory)
      ->type_name("FOLDER");
  rates->add_option("-o,--output", ratesFile, "where to write them, over older rates only; left out: printed")
      ->type_name("FILE");

  if (argc < 2) {
    std::cerr << program.help();
    return wrongUse;
  }
  const std::string word = argv[1];
  if (!word.starts_with("-") && std::find(commands.begin(), commands.end(), word) == commands.end()) {
    const std::string guess = base::nearest(word, commands);
    std::cerr << "planksheaf: '" << base::printable(word) << "' is not a command"
              << (guess.empty() ? "" : "; did you mean '" + guess + "'?")
              << "\n  hint: see 'planksheaf --help'\n";
    return wrongUse;
  }
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& e) {
    std::ostringstream asked, wrong;
    const bool isAsked = program.exit(e, asked, wrong) == 0;
    std::cout << asked.str();
    std::cerr << base::printable(wrong.str(), base::Lines::Keep);
    return isAsked ? 0 : wrongUse;
  }
  if (*pack) return app::pack(order);
  if (*check) return app::check(order);
  if (*figures)
    return app::figures(job,
                        isJson      ? app::FiguresForm::Json
                        : isCsv     ? app::FiguresForm::Csv
                        : isExplain ? app::FiguresForm::Explain
                                    : app::FiguresForm::Plain,
                        order.choices);
  if (*plan) return app::plan(job, isJson, order.choices);
  if (*facts) return app::facts(job, order.choices);
  if (*looks) return app::copyLooks(file);
  if (*watch) return app::watch(job, order);
  if (*due) {
    dueOrder.by = *by;
    dueOrder.form = isJson ? app::ListForm::Json : isCsv ? app::ListForm::Csv : app::ListForm::Table;
    return app::due(dueOrder);
  }
  if (*rates) return app::rates(folder, ratesFile);
  if (*again) {
    againOrder.start = *start;
    return app::again(againOrder);
  }
  return app::newJob(file, region);
}

}  // namespace

int main(int argc, char** argv) {
  app::guardStreams();
  app::endBetweenWrites();
  try {
    return app::checkedOutput(run(argc, argv));
  } catch (const std::exception& e) {
    std::cerr << "planksheaf: error: " << base::printable(e.what(), base::Lines::Keep) << "\n";
    return 2;
  }
}
