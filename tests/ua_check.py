#!/usr/bin/python3
"""Makes the documents of all examples in every theme and on both papers and checks each against the conditions of PDF/UA-1 in ua_rules.py, after
proving on spoilt files that the conditions find what they name. Usage: ua_check.py PROGRAM SOURCE_DIR, or ua_check.py FILE.pdf"""
import itertools
import pathlib
import subprocess
import sys
import tempfile

from ua_pdf import Pdf
from ua_prove import unseen
from ua_rules import check


def judge(name, file):
    messages = check(Pdf(file))
    for message in messages:
        print(f"FAILED: {name}: {message}")
    return len(messages)


def pack(program, jobs, folder, *options):
    subprocess.run([program, "pack", *map(str, jobs), "-o", str(folder), *options], check=True, stdout=subprocess.DEVNULL)
    return sorted(folder.rglob("*.pdf"))


def judge_examples(program, jobs, themes, folder):
    failures, documents = 0, 0
    looks = list(itertools.product(themes, ["a4", "letter"]))
    for theme, paper in looks:
        files = pack(program, jobs, folder / theme / paper, "--theme", theme, "--paper", paper)
        documents += len(files)
        failures += sum(judge(f"{theme} {paper} {f.parent.name}/{f.name}", f) for f in files)
    print(f"{documents} documents, {failures} failures")
    return failures + (documents < 5 * len(jobs) * len(looks) or documents == 0)


# What no example prints, and a firm's own sheet may.
MORE = """
[Write to us](mailto:office@example.org).

## Boards {wide}

|      | board  | length |
|------|--------|-------:|
| Deck | first  | 3 m    |
|      | second | 4 m    |
"""


def prove(program, jobs, folder):
    """With a link and a row head over two rows in each quote, so that there are such to spoil."""
    firm = folder / "firm"
    subprocess.run([program, "firm", str(firm), "--copy", "templates/en/quote.md"], check=True, stdout=subprocess.DEVNULL)
    quote = firm / "templates/en/quote.md"
    quote.write_text(quote.read_text() + MORE)
    files = pack(program, jobs, folder / "linked", "--firm", str(firm))
    missed = unseen(sorted(files, key=lambda f: f.name != "quote.pdf"))
    for words in missed:
        print("FAILED: not noticed:", words)
    return len(missed) + sum(judge(f"linked {f.parent.name}/{f.name}", f) for f in files)


if sys.argv[1].endswith(".pdf"):
    sys.exit(1 if judge(sys.argv[1], sys.argv[1]) else 0)
all_jobs = sorted(pathlib.Path(sys.argv[2]).glob("out_examples/*/job.yaml"))
all_themes = sorted(theme.stem for theme in pathlib.Path(sys.argv[2]).glob("templates/themes/*.yaml"))
assert all_jobs and all_themes, "no examples or no themes"
with tempfile.TemporaryDirectory() as temporary:
    place = pathlib.Path(temporary)
    failed = judge_examples(sys.argv[1], all_jobs, all_themes, place) + prove(sys.argv[1], all_jobs, place)
sys.exit(1 if failed else 0)
