#include "app/commands/manual.h"

#include "app/commands/command_tree.h"
#include "base/joined.h"

#include <CLI/CLI.hpp>
#include <sstream>

namespace app {
namespace {

/// For roff: its own signs written out, and a hyphen that can be copied.
std::string escaped(const std::string& text) {
  std::string s = text.starts_with('.') || text.starts_with('\'') ? "\\&" : "";
  for (const char c : text)
    s += c == '\\' ? std::string("\\e") : c == '-' ? std::string("\\-") : std::string(1, c);
  return s;
}

/// The same, with what stands between backticks bold.
std::string inlines(const std::string& text) {
  std::string s;
  bool isCode = false;
  for (const char c : escaped(text)) {
    if (c == '`') isCode = !isCode;
    s += c == '`' ? std::string(isCode ? "\\fB" : "\\fR") : std::string(1, c);
  }
  return s;
}

/// A topic's text: paragraphs, lists of one level, and code, which is indented by four letters or more.
class TopicToRoff {
 public:
  std::string convert(const std::string& text) {
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) add(line);
    setCode(false);
    return roff_;
  }

 private:
  void add(const std::string& line) {
    const auto indent = line.find_first_not_of(' ');
    if (indent == std::string::npos) {
      isNew_ = true;
      return;
    }
    if (isNew_ && indent >= 4 && !isCode_) roff_ += ".sp\n";
    setCode(indent >= 4);
    const std::string words = line.substr(isCode_ ? 4 : indent);
    const auto mark = isCode_ || indent > 0 ? 0 : markOf(words);
    if (mark > 0) {
      roff_ += ".IP \"" + (words[0] == '-' ? "\\(bu" : words.substr(0, mark - 1)) + "\" 4\n";
    } else if (isNew_ && !isCode_) {
      roff_ += indent > 0 ? ".IP \"\" 4\n" : ".PP\n";
    }
    isNew_ = false;
    roff_ += (isCode_ ? escaped(words) : inlines(words.substr(mark))) + "\n";
  }

  /// How long '- ' or '12. ' at the beginning is; 0 when there is neither.
  static std::size_t markOf(const std::string& words) {
    if (words.starts_with("- ")) return 2;
    const auto end = words.find_first_not_of("0123456789");
    return end > 0 && words.compare(end, 2, ". ") == 0 ? end + 2 : 0;
  }

  void setCode(bool isCode) {
    if (isCode != isCode_) roff_ += isCode ? ".EX\n" : ".EE\n";
    isCode_ = isCode;
  }

  std::string roff_;
  bool isCode_ = false, isNew_ = true;
};

std::string upper(std::string s) {
  for (char& c : s) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  return s;
}

const CLI::Option* positionalOf(const CLI::App& command) {
  for (const auto* option : command.get_options()) {
    if (option->get_positional()) return option;
  }
  return nullptr;
}

/// 'DIR'; empty for one that takes no value.
std::string typeOf(const CLI::Option& option) {
  const std::string type = option.get_items_expected_max() == 0 ? "" : option.get_type_name();
  return type.substr(0, type.find(':'));  // behind it what the library checks
}

bool isRepeated(const CLI::Option& option) { return option.get_items_expected_max() > 1; }

std::string manOptions(const CLI::App& command) {
  std::string s;
  for (const auto* option : command.get_options()) {
    const auto names = namesOf(*option);
    const std::string type = typeOf(*option);
    s += ".TP\n";
    for (const auto& name : names)
      s += (&name == &names.front() ? "\\fB" : ", \\fB") + escaped(name) + "\\fR";
    if (!type.empty()) s += (names.empty() ? "\\fI" : " \\fI") + type + "\\fR";
    s += "\n" + escaped(option->get_description()) + (option->get_required() ? " (needed)\n" : "\n");
  }
  return s;
}

std::string manCommand(const CLI::App& command) {
  const auto* words = positionalOf(command);
  std::string s = ".SS planksheaf " + command.get_name() + " [OPTIONS]";
  if (words != nullptr) s += " " + typeOf(*words) + (isRepeated(*words) ? "..." : "");
  s += "\n" + escaped(command.get_description()) + "\n" + manOptions(command);
  const std::string footer = command.get_footer();
  const auto example = footer.find("  ");
  return example == std::string::npos
             ? s
             : s + ".PP\nExample:\n.EX\n" + escaped(footer.substr(example)) + "\n.EE\n";
}

/// Ready words for a value of this type.
std::string valuesOf(const std::string& type, const CLI::App& program, const std::vector<Topic>& topics) {
  if (type == "PAPER") return "a4 letter";
  if (type == "REGION") return "au gb ie nz us";
  if (type != "TOPIC") return {};
  std::vector<std::string> words;
  for (const auto& topic : topics) words.push_back(topic.name);
  for (const auto* command : commandsOf(program)) words.push_back(command->get_name());
  return base::joined(words, " ");
}

bool isFolder(const std::string& type) { return type == "DIR" || type == "FOLDER"; }
bool isFile(const std::string& type) { return type == "FILE" || type == "JOB"; }

std::string bashValues(const std::string& type, const CLI::App& program, const std::vector<Topic>& topics) {
  if (isFolder(type)) return "-d";
  if (isFile(type)) return "-f";
  return "-W '" + valuesOf(type, program, topics) + "'";
}

/// A word between single quotes, as zsh takes descriptions.
std::string zshQuoted(const std::string& text) {
  std::string s;
  for (const char c : text) {
    if (c == '\'') s += "'\\''";
    else if (c == '[' || c == ']' || c == ':') s += std::string("\\") + c;
    else s += c;
  }
  return s;
}

std::string zshValues(const std::string& type, const CLI::App& program, const std::vector<Topic>& topics) {
  if (type.empty()) return {};
  const std::string words = valuesOf(type, program, topics);
  const std::string free = words.empty() ? " " : "(" + words + ")";
  return ":" + type + ":" + (isFolder(type) ? "_files -/" : isFile(type) ? "_files" : free);
}

std::string zshOption(const CLI::Option& option, const CLI::App& program, const std::vector<Topic>& topics) {
  const std::string values = zshValues(typeOf(option), program, topics);
  if (option.get_positional()) return " '" + std::string(isRepeated(option) ? "*" : "1") + values + "'";
  std::string s;
  for (const auto& name : namesOf(option))
    s += " '" + name + "[" + zshQuoted(option.get_description()) + "]" + values + "'";
  return s;
}

}  // namespace

std::string manPage(const CLI::App& program, const std::vector<Topic>& topics) {
  const std::string about = program.get_description();
  std::string s =
      ".TH PLANKSHEAF 1 \"\" \"" + program.version() +
      "\"\n.SH NAME\nplanksheaf \\- papers of a deck\\-oiling job, typeset from one file\n.SH SYNOPSIS\n"
      ".B planksheaf\n.I COMMAND\n[OPTIONS]\n.SH DESCRIPTION\n" +
      escaped(about.substr(0, about.find('\n'))) + "\n.SH OPTIONS\n" + manOptions(program) + ".SH COMMANDS\n";
  for (const auto* command : commandsOf(program)) s += manCommand(*command);
  for (const auto& topic : topics)
    s += ".SH " + upper(topic.name) + "\n.B " + escaped(topic.title) + "\n" +
         TopicToRoff().convert(topic.text);
  return s +
         ".SH EXIT STATUS\n0 all done, 1 a job was refused, 2 wrong use or broken surroundings. A refused "
         "job writes "
         "nothing and leaves older files as they were.\n";
}

std::string bashCompletion(const CLI::App& program, const std::vector<Topic>& topics) {
  std::vector<std::string> first;
  std::string values, options;
  for (const auto* command : commandsOf(program)) {
    const std::string name = command->get_name();
    first.push_back(name);
    for (const auto* option : command->get_options()) {
      const auto names = namesOf(*option);
      if (names.empty() || typeOf(*option).empty()) continue;
      values += "    '" + name + " " + base::joined(names, ("' | '" + name + " ").c_str()) + "') kind=\"" +
                bashValues(typeOf(*option), program, topics) + "\" ;;\n";
    }
    const auto* words = positionalOf(*command);
    options += "    " + name + ") options='" + base::joined(namesOfOptions(*command), " ") + "'" +
               (words == nullptr ? "" : " other=\"" + bashValues(typeOf(*words), program, topics) + "\"") +
               " ;;\n";
  }
  for (const auto& name : namesOfOptions(program)) first.push_back(name);
  return "# Completion of planksheaf for bash.\n_planksheaf() {\n"
         "  local word=${COMP_WORDS[COMP_CWORD]} kind='' options='' other=''\n"
         "  case \"${COMP_WORDS[1]} ${COMP_WORDS[COMP_CWORD-1]}\" in\n" +
         values + "  esac\n  case ${COMP_WORDS[1]} in\n" + options +
         "  esac\n  if [ \"$COMP_CWORD\" = 1 ]; then kind=\"-W '" + base::joined(first, " ") +
         "'\"\n"
         "  elif [ -z \"$kind\" ] && [[ $word == -* ]]; then kind=\"-W '$options'\"\n"
         "  elif [ -z \"$kind\" ]; then kind=$other\n  fi\n"
         "  eval \"mapfile -t COMPREPLY < <(compgen $kind -- \\\"\\$word\\\")\"\n}\n"
         "complete -o filenames -F _planksheaf planksheaf\n";
}

std::string zshCompletion(const CLI::App& program, const std::vector<Topic>& topics) {
  std::string commands, options;
  for (const auto* command : commandsOf(program)) {
    commands += " '" + command->get_name() + ":" + zshQuoted(command->get_description()) + "'";
    options += "    " + command->get_name() + ") _arguments";
    for (const auto* option : command->get_options()) options += zshOption(*option, program, topics);
    options += " ;;\n";
  }
  return "#compdef planksheaf\nlocal -a commands=(" + commands +
         ")\nif (( CURRENT == 2 )); then\n  _describe command commands\n  _values -w option " +
         base::joined(namesOfOptions(program), " ") +
         "\nelse\n  shift words\n  (( CURRENT-- ))\n  case $words[1] in\n" + options + "  esac\nfi\n";
}

}  // namespace app
