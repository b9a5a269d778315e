#!/usr/bin/python3
"""Man page, completions, help texts and README against what 'planksheaf COMMAND --help' says, and slips of the keyboard
against their guesses. Usage: command_tree.py PROGRAM SOURCE_DIR"""
import os
import pathlib
import re
import subprocess
import sys
import tempfile

program, source = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2])
topics = {file.stem: file.read_text() for file in sorted(source.glob("content/help/*.md"))}
failures = []


def same(what, got, wanted):
    if got != wanted:
        failures.append(what)
        print(f"FAILED: {what}:\n  {got!r}\nnot\n  {wanted!r}")


def run(*words, **options):
    return subprocess.run(words, capture_output=True, text=True, **options)


def help_of(*words):
    done = run(program, *words)
    same(f"status of {words}", done.returncode, 0)
    return done.stdout


def options_in(text):
    """'-o' and '--output' of the lines of a --help."""
    heads = re.findall(r"^  (-[^ ]+)", text, re.M)
    return {name for head in heads for name in head.split(",")}


def commands_in(text):
    return re.findall(r"^  ([a-z]+) ", text[text.index("Subcommands:"):], re.M)


def man_page_says(options, page):
    for command, names in options.items():
        section = re.search(rf"^\.SS planksheaf {command} .*?(?=^\.S[SH])", page, re.M | re.S)[0]
        heads = re.findall(r"^\.TP\n(.*)", section, re.M)
        told = {name.replace("\\-", "-") for head in heads for name in re.findall(r"\\fB(.*?)\\fR", head)}
        same(f"options of {command} in the man page", told, names)


def man_page_reads(page):
    """No warning of groff, and every word of the topics is there, in their order."""
    done = run("groff", "-ww", "-man", "-K", "utf8", "-Tutf8", "-P-cbou", "-rHY=0", "-rLL=100n", input=page)
    same("warnings of groff", done.stderr, "")
    words = re.findall(r"\w+", re.sub(r"[\u2010\u2011-]", "", done.stdout))
    for name, text in topics.items():
        wanted = re.findall(r"\w+", re.sub(r"[\u2010-]", "", text))
        at = [i for i in range(len(words)) if words[i:i + 8] == wanted[:8]]
        same(f"topic {name} in the man page", [words[i:i + len(wanted)] for i in at], [wanted])


def bash_offers(completion, *words):
    script = completion + f"\nCOMP_WORDS=({' '.join(map(repr, words))}) COMP_CWORD={len(words) - 1}\n_planksheaf\n" \
        'printf "%s\\n" "${COMPREPLY[@]}"\n'
    done = run("bash", "-c", script, cwd=source)
    same(f"bash completes {words}", done.stderr, "")
    return set(done.stdout.split())


def bash_completes(options, completion):
    for command, names in options.items():
        same(f"bash, options of {command}", bash_offers(completion, "planksheaf", command, "-"), names)
    same("bash, commands", bash_offers(completion, "planksheaf", ""), set(options) | {"-h", "--help", "--version"})
    same("bash, papers", bash_offers(completion, "planksheaf", "pack", "--paper", ""), {"a4", "letter"})
    same("bash, topics", bash_offers(completion, "planksheaf", "help", "w"), {"weather", "watch"})
    same("bash, a job", bash_offers(completion, "planksheaf", "pack", "READ"), {"README.md"})
    same("bash, a folder", bash_offers(completion, "planksheaf", "pack", "-o", "sr"), {"src"})
    same("bash, a job after -o", bash_offers(completion, "planksheaf", "pack", "-o", "x", "READ"), {"README.md"})


def zsh_completes(options, completion):
    for command, names in options.items():
        line = re.search(rf"^    {command}\) _arguments(.*) ;;$", completion, re.M)[1]
        same(f"zsh, options of {command}", set(re.findall(r" '(-[^\[' ]+)\[", line)), names)
        same(f"zsh, free words of {command}", ":()" in line, False)
        same(f"zsh, quotes of {command}", line.replace("'\\''", "").count("'") % 2, 0)


def texts_are_true(options):
    """What README, help and the content tell to type can be typed."""
    files = [source / "README.md", source / "DEVELOPERS.md", source / "content/new_job.yaml", *source.glob("content/help/*.md"),
             *source.glob("content/schemas/*.json"), *source.glob("templates/**/*.yaml")]
    seen = 0
    for file in files:
        text = re.sub(r"\\\n", " ", file.read_text())
        for words in re.findall(r"planksheaf ((?:--)?[a-z]+\b[^`'\n|]*)", text):
            command, *rest = words.split()
            if command.strip(".,") not in options and not words.startswith("--") and "`planksheaf " + command not in text:
                continue  # a sentence about planksheaf
            seen += 1
            known = options.get(command, {"--help", "--version"})
            same(f"{file.name}: 'planksheaf {words}'", [o for o in rest if re.match("--?[a-z]", o) and o.strip(".,)") not in known], [])
    same("commands in texts were found", seen > 40, True)


def slips(box):
    hint = "\n  hint: see 'planksheaf {} --help'\n"
    old = "\n  hint: 'planksheaf help firm' says what goes where in it\n"
    for words, message in {
        ("pakc", "x"): "planksheaf: 'pakc' is not a command; did you mean 'pack'?\n  hint: see 'planksheaf --help'\n",
        ("--versoin",): "planksheaf: '--versoin' is not an option; did you mean '--version'?\n  hint: see 'planksheaf --help'\n",
        ("pack", "--frm", "x", "y"): "planksheaf pack: '--frm' is not an option; did you mean '--firm'?" + hint.format("pack"),
        ("pack", "--looks", "x", "y"): "planksheaf: '--looks' is now '--firm DIR': one folder for all that is the firm's" + old,
        ("plan", "--brand=x", "y"): "planksheaf: '--brand' is now '--firm DIR': one folder for all that is the firm's" + old,
        ("looks", "x"): "planksheaf: 'looks' is now 'firm DIR --copy templates,themes'" + old,
        ("due", box, "--buy=2028-06-30"): "planksheaf due: '--buy' is not an option; did you mean '--by'?" + hint.format("due"),
        ("pack", "--wwwwww", "y"): "planksheaf pack: '--wwwwww' is not an option" + hint.format("pack"),
        ("help", "wether"): "planksheaf help: 'wether' is neither a topic nor a command; did you mean 'weather'?\n"
                            f"  hint: topics: {', '.join(topics)}\n",
        ("pack", "x", "-o", "-"): "--output: '-' cannot be written: there are several files, so name a folder\n"
                                  "Run with --help for more information.\n",
        ("again", "x", "--start", "2028-06-30", "-o", "-"): "--output: '-' cannot be written: name a file that is not there yet\n"
                                                           "Run with --help for more information.\n",
        ("rates", box, "-o", "-"): "--output: '-' cannot be written: without -o the rates are printed\n"
                                   "Run with --help for more information.\n",
        ("new", "-"): "file: '-' cannot be written: name a file that is not there yet\nRun with --help for more information.\n",
    }.items():
        done = run(program, *words, cwd=box)
        same(f"planksheaf {' '.join(words)}", (done.returncode, done.stdout, done.stderr), (2, "", message))
    same("refused words write nothing", os.listdir(box), [])


def main():
    whole = help_of("--help")
    options = {command: options_in(help_of(command, "--help")) for command in commands_in(whole)}
    same("there are commands", len(options) > 10 and "pack" in options, True)
    for command in options:
        topic = topics[command][2:] + "\n" if command in topics else ""
        same(f"help {command}", help_of("help", command), topic + help_of(command, "--help"))
        same(f"an example of {command}", f"Example:\n  planksheaf {command} " in help_of("help", command), True)
    for name, text in topics.items():
        same(f"help {name}", ("# " + help_of("help", name)).startswith(text), True)
        same(f"help {name} and no more", name in options or "# " + help_of("help", name) == text, True)
        same(f"{name} in the list", f"  {name} " in help_of("help"), True)
        same(f"lines of {name} fit a terminal", [line for line in text.splitlines() if len(line) > 82], [])
    page = help_of("help", "--man")
    man_page_says(options, page)
    man_page_reads(page)
    bash_completes(options, help_of("help", "--bash"))
    zsh_completes(options, help_of("help", "--zsh"))
    texts_are_true(options)
    with tempfile.TemporaryDirectory() as box:
        slips(box)
    print(f"{len(options)} commands, {len(topics)} topics")
    sys.exit(1 if failures else 0)


main()
