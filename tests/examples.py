#!/usr/bin/python3
"""Makes the packs of all examples and checks the files from outside: same bytes anywhere, sound PDFs, figures that can be
read back, nothing of the office or the machine in what a customer gets. Usage: examples.py PROGRAM SOURCE_DIR"""
import getpass
import json
import os
import pathlib
import re
import socket
import subprocess
import sys
import tempfile

import jsonschema

program, source = sys.argv[1], pathlib.Path(sys.argv[2])
jobs = sorted(source.glob("out_examples/*/job.yaml"))
customers = ["quote", "aftercare"]
failures = []


def check(is_right, what):
    if not is_right:
        failures.append(what)
        print("FAILED:", what)


def run(*words, **options):
    return subprocess.run(words, capture_output=True, text=True, **options)


def pack(folder, cwd, **environment):
    done = run(program, "pack", *map(str, jobs), "-o", str(folder), cwd=cwd, env={**os.environ, **environment})
    check(done.returncode == 0, f"pack: {done.stdout}{done.stderr}")
    return {str(p.relative_to(folder)): p.read_bytes() for p in sorted(folder.rglob("*.pdf"))}


def text_of(pdf):
    done = run("pdftotext", "-layout", str(pdf), "-")
    check(done.stderr == "", f"{pdf.name}: poppler says {done.stderr}")
    return re.sub(r"[\s\u00a0]+", " ", done.stdout)


def grouped(amount):
    """'8686.10' as printed: '8,686.10'."""
    whole, point, rest = amount.partition(".")
    return f"{int(whole):,}{point}{rest}"


with tempfile.TemporaryDirectory() as one, tempfile.TemporaryDirectory() as two:
    first, second = pathlib.Path(one) / "a", pathlib.Path(two) / "b"
    here = pack(first, cwd=source, LC_ALL="C", TZ="UTC")
    there = pack(second, cwd=two, LC_ALL="C.UTF-8", LANG="de_DE.UTF-8", LC_NUMERIC="de_DE.UTF-8", TZ="Pacific/Kiritimati")
    check(len(here) >= 5 * len(jobs), f"{len(here)} documents of {len(jobs)} jobs")
    check(here == there, "the same bytes in another locale, time zone and folder")

    schema = json.loads((source / "content/schemas/figures.schema.json").read_text())
    for job in jobs:
        told = run(program, "figures", "--json", str(job))
        check(told.returncode == 0, f"figures {job}: {told.stderr}")
        figures = json.loads(told.stdout)
        for error in jsonschema.Draft7Validator(schema).iter_errors(figures):
            check(False, f"{job}: {error.json_path}: {error.message}")
        folder = first / figures["ref"]
        texts = {p.stem: text_of(p) for p in sorted(folder.glob("*.pdf"))}
        price = figures["price"]
        for name in ["net", "tax", "total", "deposit"]:
            check(grouped(price[name]) in texts["quote"], f"{figures['ref']}: {name} {price[name]} in the quote")
        for line in price["lines"]:
            for name in ["rate", "amount"]:
                check(grouped(line[name]) in texts["quote"], f"{figures['ref']}: {name} {line[name]} in the quote")
        for stage in price["stages"]:
            check(grouped(stage["amount"]) in texts["quote"], f"{figures['ref']}: stage {stage['amount']} in the quote")
        for area in figures["areas"]:
            for name in ["quote", "office"]:
                check(area["name"] in texts[name], f"{figures['ref']}: {area['name']} in {name}")
        for tin in figures["tins"]:
            check(grouped(tin["price"]) in texts["orders"], f"{figures['ref']}: tin at {tin['price']} in orders")
        check(grouped(figures["tins_cost"]) in texts["orders"], f"{figures['ref']}: cost of the tins in orders")
        check(grouped(price["cost"]) in texts["office"], f"{figures['ref']}: cost in the office sheet")

        for pdf in sorted(folder.glob("*.pdf")):
            sound = run("qpdf", "--check", str(pdf))
            check(sound.returncode == 0 and "WARNING" not in sound.stderr, f"{pdf.name}: qpdf says {sound.stdout}{sound.stderr}")
            plain = run("qpdf", "--qdf", "--object-streams=disable", str(pdf), "-", encoding="latin-1").stdout
            metadata = plain + texts[pdf.stem]
            for secret in [str(source), os.path.expanduser("~"), one, two, socket.gethostname(), f"user {getpass.getuser()}"]:
                check(len(secret) < 3 or secret not in metadata, f"{pdf.name}: holds '{secret}'")
            if pdf.stem in customers:
                for word in ["margin", "overhead", "contingency", grouped(price["cost"])]:
                    check(word not in texts[pdf.stem].lower(), f"{figures['ref']} {pdf.stem}: says '{word}'")
                for note in re.findall(r"office_note: (.*)", job.read_text()):
                    check(note[:24] not in texts[pdf.stem], f"{figures['ref']} {pdf.stem}: holds an office note")
        for name in ["safety", "aftercare"]:
            for word in ["compliant", "guaranteed", "is safe"]:
                check(word not in texts[name].lower(), f"{figures['ref']} {name}: claims '{word}'")

print(f"{len(jobs)} jobs, {len(failures)} failures")
sys.exit(1 if failures else 0)
