#include "app/commands/command_line.h"

#include "app/after/year_after.h"
#include "app/commands/command_tree.h"
#include "app/commands/commands.h"
#include "app/commands/help.h"
#include "app/commands/new_job.h"
#include "app/commands/watch.h"
#include "app/firm/new_firm.h"
#include "base/hidden.h"
#include "input/yaml/quantity.h"

#include <CLI/CLI.hpp>
#include <functional>
#include <iostream>
#include <sstream>

namespace app {
namespace {

constexpr int wrongUse = 2;

using Run = std::function<int()>;

constexpr auto intro =
    R"(One YAML job file becomes a pack of PDFs: quote, aftercare sheet, crew safety sheet, day plan, order list, office sheet.

  planksheaf firm firm                 make the firm's folder
  planksheaf new deck.yaml             write a commented job to fill in
  planksheaf pack deck.yaml            make its pack, in a folder named after the job's number
  planksheaf plan deck.yaml            which days, and which hours are fit for coating
  planksheaf figures --explain deck.yaml   how each figure came about
  planksheaf help                      what there is to read)";

/// What a command is told; each uses what it has options for.
struct Order {
  std::string job, file;
  std::string region;
  std::vector<std::string> copies;
  bool isJson = false, isExplain = false, isCsv = false;
  PackOrder pack;
  DueOrder due;
  AgainOrder again;
  NewJobOrder newJob;
  std::optional<base::Date> by, start;
  HelpOrder help;
};

struct Command {
  CLI::App* tree;
  std::shared_ptr<Order> order = std::make_shared<Order>();
};

/// A command that 'does' what its words say, once all of them have been read.
Command addCommand(CLI::App& program, Run& run, const char* name, const char* about,
                   const std::string& example, int (*does)(const Order&)) {
  const Command command{program.add_subcommand(name, about)};
  command.tree->footer("Example:\n  planksheaf " + example);
  command.tree->callback([&run, does, order = command.order] { run = [=] { return does(*order); }; });
  return command;
}

void addJob(const Command& command) {
  command.tree->add_option("job", command.order->job, "job file; - reads standard input")
      ->required()
      ->type_name("JOB");
}

void addJobs(const Command& command) {
  command.tree
      ->add_option("jobs", command.order->pack.jobs,
                   "job files, folders of them, patterns in quotes; - reads standard input")
      ->required()
      ->type_name("JOB");
}

/// A file or folder to be written. 'otherwise' is said where it is '-'.
CLI::Option* addWritten(const Command& command, const char* name, std::string& into, const char* about,
                        const char* type, const std::string& otherwise) {
  return command.tree->add_option(name, into, about)
      ->check(
          [=](const std::string& word) { return word == "-" ? "'-' cannot be written: " + otherwise : ""; })
      ->type_name(type);
}

/// A list as in 'quote,safety'; the next word is a job.
void addNames(const Command& command, const char* name, std::vector<std::string>& into, const char* about) {
  command.tree->add_option(name, into, about)->delimiter(',')->allow_extra_args(false)->type_name("NAMES");
}

constexpr auto folderInstead = "there are several files, so name a folder";
constexpr auto fileInstead = "name a file that is not there yet";

void addFirm(const Command& command, Choices& choices) {
  command.tree->add_option("--firm", choices.firm, "the firm's folder, instead of the job's")
      ->check(CLI::ExistingDirectory)
      ->type_name("DIR");
}

void addChoices(const Command& command) {
  Choices& choices = command.order->pack.choices;
  addFirm(command, choices);
  command.tree
      ->add_option("--theme", choices.theme,
                   "generous, compact or one of the firm's own, instead of the firm's usual")
      ->type_name("NAME");
  command.tree
      ->add_option_function<std::string>(
          "--paper",
          [&choices](const std::string& name) {
            choices.paper = name == "a4" ? model::Paper::A4 : model::Paper::Letter;
          },
          "a4 or letter, instead of the region's")
      ->check(CLI::IsMember({"a4", "letter"}))
      ->type_name("PAPER");
  addNames(command, "--language", choices.languages,
           "of every document, instead of the job's; the first is the main one, as in en,es");
}

/// Of what makes many jobs.
void addBatch(const Command& command) {
  PackOrder& order = command.order->pack;
  addNames(command, "--only", order.only,
           "only these documents, by the names of their templates, as in quote,safety");
  command.tree->add_option("--threads", order.threads, "how many jobs at a time")
      ->check(CLI::Range(1, 256))
      ->type_name("N");
  addWritten(command, "--report", order.report, "what became of each job, a line of JSON each", "FILE",
             "--json prints the same");
  command.tree->add_flag(
      "--json", order.isJson,
      "print that instead of a line for people, by the names of content/schemas/report.schema.json");
}

/// 'YYYY-MM-DD', for a day that exists.
CLI::Option* addDate(const Command& command, const char* name, std::optional<base::Date>& into,
                     const char* about) {
  return command.tree
      ->add_option_function<std::string>(
          name, [&into](const std::string& s) { into = base::parseDate(s); }, about)
      ->check([](const std::string& s) {
        return base::parseDate(s) ? std::string()
                                  : "'" + s + "' is not a date; write year, month and day like 2028-03-20";
      })
      ->type_name("DATE");
}

void addFolderOfJobs(const Command& command, std::string& into) {
  command.tree->add_option("folder", into, "where the jobs are")
      ->required()
      ->check(CLI::ExistingDirectory)
      ->type_name("FOLDER");
}

void addPack(CLI::App& program, Run& run) {
  const auto command = addCommand(program, run, "pack", "make the pack of each job",
                                  "pack deck.yaml --only quote,safety --language en,es",
                                  [](const Order& order) { return pack(order.pack); });
  addJobs(command);
  addWritten(command, "-o,--output", command.order->pack.folder,
             "folder for the packs, instead of the job's own", "DIR", folderInstead);
  addBatch(command);
  command.tree->add_flag("--if-changed", command.order->pack.onlyIfChanged,
                         "pass over packs whose job, firm, content and program are as they were");
  addChoices(command);
}

void addCheck(CLI::App& program, Run& run) {
  const auto command =
      addCommand(program, run, "check", "read and compute, write nothing, list every mistake",
                 "check deck.yaml", [](const Order& order) { return check(order.pack); });
  addJobs(command);
  addBatch(command);
  addChoices(command);
}

void addFigures(CLI::App& program, Run& run) {
  const auto command = addCommand(program, run, "figures", "every computed figure",
                                  "figures --explain deck.yaml", [](const Order& order) {
                                    return figures(order.job,
                                                   order.isJson      ? FiguresForm::Json
                                                   : order.isCsv     ? FiguresForm::Csv
                                                   : order.isExplain ? FiguresForm::Explain
                                                                     : FiguresForm::Plain,
                                                   order.pack.choices);
                                  });
  addJob(command);
  command.tree->add_flag("--json", command.order->isJson,
                         "as JSON, by the names of content/schemas/figures.schema.json");
  command.tree->add_flag("--csv", command.order->isCsv, "the lines of the price, for the accounts (RFC 4180)")
      ->excludes("--json");
  command.tree
      ->add_flag("--explain", command.order->isExplain,
                 "with the formula behind each, the day of one person and the hazards, in English")
      ->excludes("--json")
      ->excludes("--csv");
  addChoices(command);
}

void addPlan(CLI::App& program, Run& run) {
  const auto command =
      addCommand(program, run, "plan", "the calendar day by day, and the hours fit for coating",
                 "plan deck.yaml --from 2027-03-02 --by 2027-03-20",
                 [](const Order& order) { return plan(order.job, order.isJson, order.pack.choices); });
  auto& bounds = command.order->pack.choices.bounds;
  addJob(command);
  addDate(command, "--from", bounds.from, "no work before this day, instead of the job's start");
  addDate(command, "--by", bounds.by, "the last day wanted with work on site");
  command.tree->add_flag("--json", command.order->isJson,
                         "as JSON, by the names of content/schemas/plan.schema.json");
  addChoices(command);
}

void addNew(CLI::App& program, Run& run) {
  const auto command = addCommand(program, run, "new", "write a commented job to fill in",
                                  "new deck.yaml --customer thorley --number next",
                                  [](const Order& order) { return newJob(order.newJob); });
  NewJobOrder& order = command.order->newJob;
  addWritten(command, "file", order.file, "where to write it; must not be there yet", "FILE", fileInstead)
      ->required();
  command.tree
      ->add_option(
          "--region", order.region,
          "whose place, units, season and prices it has: au gb ie nz us; left out: the firm's, or nz")
      ->type_name("REGION");
  command.tree->add_option("--customer", order.customer, "one of the firm's customers, by key or name")
      ->type_name("NAME");
  command.tree->add_option("--product", order.product, "what the decks are coated with; left out: tern-oil")
      ->type_name("NAME");
  command.tree
      ->add_option("--number", order.number, "of the job; 'next' counts on from the firm's job quoted last")
      ->type_name("NUMBER");
  addFirm(command, order.choices);
}

void addFacts(CLI::App& program, Run& run) {
  const auto command =
      addCommand(program, run, "facts", "every name a template may use, with its value in a job",
                 "facts deck.yaml", [](const Order& order) { return facts(order.job, order.pack.choices); });
  addJob(command);
  addChoices(command);
}

void addNewFirm(CLI::App& program, Run& run) {
  const auto command =
      addCommand(program, run, "firm", "make the firm's folder: letterhead, rates, and what is to differ",
                 "firm firm --region ie --copy templates/en/quote.md,themes", [](const Order& order) {
                   return newFirm(order.file, order.region.empty() ? "nz" : order.region, order.copies);
                 });
  addWritten(command, "folder", command.order->file, "where to; nothing is written over", "DIR",
             folderInstead)
      ->required();
  command.tree->add_option("--region", command.order->region, "where you work: au gb ie nz us; left out: nz")
      ->type_name("REGION");
  addNames(command, "--copy", command.order->copies,
           "shipped files to edit, as they are named there: templates/en/quote.md, products/tern-oil.yaml, "
           "themes");
}

void addWatch(CLI::App& program, Run& run) {
  const auto command = addCommand(
      program, run, "watch", "make the pack again on every save of job, firm, template, theme or content",
      "watch deck.yaml", [](const Order& order) { return watch(order.job, order.pack); });
  command.tree->add_option("job", command.order->job, "job file")
      ->required()
      ->check(CLI::ExistingFile)
      ->type_name("JOB");
  addWritten(command, "-o,--output", command.order->pack.folder,
             "folder for the pack, instead of the job's own", "DIR", folderInstead);
  addChoices(command);
}

void addDue(CLI::App& program, Run& run) {
  const auto command = addCommand(
      program, run, "due",
      "whose visit falls due, who has a quote, who is booked: of every job below a folder",
      "due jobs --by 2028-06-30 --csv", [](const Order& order) {
        if (order.due.from > order.by) {
          std::cerr << "--from: '" << base::isoDate(*order.due.from) << "' is after --by, '"
                    << base::isoDate(order.by.value())
                    << "'\n  hint: --from is the first day, --by the last\n";
          return wrongUse;
        }
        DueOrder wanted = order.due;
        wanted.by = order.by.value();
        wanted.form = order.isJson ? ListForm::Json : order.isCsv ? ListForm::Csv : ListForm::Table;
        return due(wanted);
      });
  Order& order = *command.order;
  addFolderOfJobs(command, order.due.folder);
  addFirm(command, order.due.choices);
  addDate(command, "--from", order.due.from, "first day; left out: all before --by");
  addDate(command, "--by", order.by, "last day")->required();
  addDate(command, "--today", order.due.today, "until when the days are counted that a quote waits");
  auto* json = command.tree->add_flag("--json", order.isJson,
                                      "as JSON, by the names of content/schemas/due.schema.json");
  auto* csv = command.tree->add_flag("--csv", order.isCsv, "as CSV (RFC 4180)")->excludes(json);
  command.tree
      ->add_flag("--by-place", order.due.byPlace,
                 "visits close to each other as rounds, with their way, hours and litres")
      ->excludes(json)
      ->excludes(csv);
  addWritten(command, "--letters", order.due.letters,
             "new folder for a reminder to each customer to write to, as a letter and as an e-mail", "DIR",
             folderInstead)
      ->excludes(json)
      ->excludes(csv);
}

void addAgain(CLI::App& program, Run& run) {
  const auto command =
      addCommand(program, run, "again", "write next year's job: a wash and one maintenance coat",
                 "again deck.yaml --start 2028-03-20", [](const Order& order) {
                   AgainOrder wanted = order.again;
                   wanted.start = order.start.value();
                   return again(wanted);
                 });
  Order& order = *command.order;
  command.tree->add_option("job", order.again.job, "the finished job")->required()->type_name("JOB");
  addFirm(command, order.again.choices);
  addDate(command, "--start", order.start, "first day on site")->required();
  addDate(command, "--quoted", order.again.quoted,
          "date of the quote; left out: four weeks before the start");
  command.tree
      ->add_option_function<std::string>(
          "--raise", [&order](const std::string& s) { order.again.raise = input::parseShare(s).value; },
          "on every price of the last job, as in '4 %'")
      ->check([](const std::string& s) {
        const auto share = input::parseShare(s);
        return share.problem ? share.problem->message + "; write it like '4 %'" : std::string();
      })
      ->type_name("SHARE");
  addWritten(command, "-o,--output", order.again.file, "where to write it; must not be there yet", "FILE",
             fileInstead);
}

void addRates(CLI::App& program, Run& run) {
  const auto command =
      addCommand(program, run, "rates", "spreading rates learned from every recorded job below a folder",
                 "rates jobs -o rates.yaml",
                 [](const Order& order) { return rates(order.job, order.file, order.pack.choices); });
  addFolderOfJobs(command, command.order->job);
  addFirm(command, command.order->pack.choices);
  addWritten(command, "-o,--output", command.order->file,
             "where to write them, over older rates only; left out: printed", "FILE",
             "without -o the rates are printed");
}

void addHelp(CLI::App& program, Run& run) {
  const auto command =
      addCommand(program, run, "help", "what there is to read, or one of its topics, or a command",
                 "help weather", [](const Order& order) { return help(order.help); });
  HelpOrder& order = command.order->help;
  order.program = &program;
  command.tree->add_option("topic", order.topic, "left out: lists them")->type_name("TOPIC");
  auto* man = command.tree->add_flag("--man", order.isMan, "everything, as a man page");
  auto* bash = command.tree->add_flag("--bash", order.isBash, "completion for bash")->excludes(man);
  command.tree->add_flag("--zsh", order.isZsh, "completion for zsh")->excludes(man)->excludes(bash);
}

}  // namespace

int runCommand(int argc, char** argv, const std::string& version) {
  CLI::App program{intro, "planksheaf"};
  program.set_version_flag("--version", "planksheaf " + version);
  program.require_subcommand(1);
  Run run;
  for (const auto add : {addPack, addCheck, addFigures, addPlan, addNew, addFacts, addNewFirm, addWatch,
                         addDue, addAgain, addRates, addHelp})
    add(program, run);
  if (argc < 2) {
    std::cerr << program.help();
    return wrongUse;
  }
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& e) {
    std::ostringstream asked, wrong;
    const bool isAsked = program.exit(e, asked, wrong) == 0;
    if (!isAsked && tellOfSlip(program, argv[1])) return wrongUse;
    std::cout << asked.str();
    std::cerr << base::printable(wrong.str(), base::Lines::Keep);
    return isAsked ? 0 : wrongUse;
  }
  return run();
}

}  // namespace app
