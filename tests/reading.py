#!/usr/bin/python3
"""Reads every document of every example the way a screen reader does, by its tags (pdfinfo -struct-text): the title first, the
sections in order, tables row by row, no two words joined. Usage: reading.py PROGRAM SOURCE_DIR"""
import concurrent.futures
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile

program, source = sys.argv[1], pathlib.Path(sys.argv[2])
jobs = sorted(source.glob("out_examples/*/job.yaml"))
assert jobs, "no examples"
failures = []


def run(*words):
    done = subprocess.run([str(w) for w in words], capture_output=True, text=True)
    if done.returncode or done.stderr:
        failures.append(f"{words[0]}: {done.stderr}")
        print("FAILED:", failures[-1])
    return done.stdout


def grouped(amount):
    """'8686.10' as printed: '8,686.10'."""
    whole, point, rest = str(amount).partition(".")
    return f"{int(whole):,}{point}{rest}"


def anchors(figures):
    """What has to be read in this order, by document."""
    price = figures["price"]
    decks = [f"{chr(65 + i)} {area['name']}" for i, area in enumerate(figures["areas"])]
    stages = [grouped(stage["amount"]) for stage in price["stages"]]
    tins = [grouped(tin["price"]) for tin in figures["tins"]]
    return {
        "quote": [figures["ref"], grouped(price["total"]), "What you get", *decks, grouped(price["net"]), grouped(price["tax"]),
                  grouped(price["total"]), "You pay", *stages, "What we do", "Wash and rinse the", "Dates", "Not included",
                  "Who comes", "Price and weather", "How to say yes", "I accept quote", "Signature"],
        "aftercare": ["after oiling", "The first days", "Through the year", "every week", "Sweep", "every month", "Never",
                      "high-pressure washer", "Spills and marks", "Oil, wine, coffee", "Blot it", "A scratch", "A faded patch", "Call us before it spreads",
                      "On your decks", "Next visit", "Your record"],
        "safety": ["You are at", "read this out", "Three things here", "noise", "vibration", "heat", "people", "Stop",
                   "Anyone may stop the work", "What to wear now", "Task", "Everywhere", "Wash", "skin", "eyes", "swallowed", "spilled",
                   "Talked through"],
        "dayplan": ["start", "last stroke by", "home by", "Go?", "moisture meter", "above dew point", "without rain", "Log", "batch", "At the end"],
        "orders": ["order by", "deliver to", "Product", "size", *tins, grouped(figures["tins_cost"]), "Used up", "On the truck", "Delivered"],
        "office": ["Customer", "Money by area", *decks, grouped(price["net"]), grouped(price["cost"]), "Hours", "Days", "Invoices", *stages],
    }


def read(pdf):
    """The words of a document in the order of its tags, and the kind of its first tag."""
    told = run("pdfinfo", "-struct-text", pdf)
    strings = re.findall(r'^ *"(.*)"$', told, re.M)
    return re.sub(r"\s+", " ", " ".join(strings)), told.split()[1]


def check(is_right, what):
    if not is_right:
        failures.append(what)
        print("FAILED:", what)


def judge(pdf, where, expected):
    text, first = read(pdf)
    check(first == "H1", f"{where}: begins with {first}, not with the title")
    at = 0
    for anchor in expected:
        found = text.find(anchor, at)
        check(found >= 0, f"{where}: '{anchor}' is not read after '{text[max(0, at - 40):at]}'")
        at = max(at, found + len(anchor))
    # Printed words are told apart by the white between them.
    printed = set(re.split(r"[\s/-]+", run("pdftotext", "-raw", pdf, "-")))
    for word in set(re.split(r"[\s/-]+", text)) - printed:
        parts = [(word[:i], word[i:]) for i in range(2, len(word) - 1)]
        check(not any(left in printed and right in printed for left, right in parts), f"{where}: '{word}' is two words on paper")


with tempfile.TemporaryDirectory() as temporary, concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
    folder = pathlib.Path(temporary)
    run(program, "pack", *jobs, "-o", folder)
    judged = []
    shortest = min(jobs, key=lambda job: len(pathlib.Path(job).read_text()))
    for job in jobs:
        figures = json.loads(run(program, "figures", "--json", job))
        for name, expected in anchors(figures).items():
            # pdfinfo looks every element up anew, so long office sheets take half a minute: one stands for all.
            if name == "office" and job != shortest:
                continue
            pdf = folder / figures["ref"] / f"{name}.pdf"
            judged.append(pool.submit(judge, pdf, f"{figures['ref']} {name}", expected))
    for one in judged:
        one.result()

print(f"{len(jobs)} jobs, {len(failures)} failures")
sys.exit(1 if failures or not jobs else 0)
