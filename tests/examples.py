#!/usr/bin/python3
"""Makes the packs of all examples and checks the files from outside: same bytes anywhere, sound PDFs, figures that can be
read back, nothing of the office or the machine in what a customer gets. Usage: examples.py PROGRAM SOURCE_DIR"""
import datetime
import decimal
import getpass
import json
import os
import pathlib
import re
import socket
import subprocess
import sys
import tempfile
import urllib.parse

import jsonschema
import yaml

program, source = sys.argv[1], pathlib.Path(sys.argv[2])
jobs = sorted(source.glob("out_examples/*/job.yaml"))
assert jobs, "no examples"
customers = ["quote", "aftercare", "extra", "handover", "invoice", "reminder"]
asked_for = ["extra", "handover", "survey", "lookover", "reminder"]  # in no pack unasked
without_money = ["safety", "dayplan"]
tasks = yaml.safe_load((source / "content/tasks.yaml").read_text())["tasks"]
claims = ["compliant", "guaranteed", "is safe", "are safe", "completely safe"]
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


class Forms:
    """How a region prints what figures give in metric units and ISO dates."""

    def __init__(self, job):
        self.is_us = re.search(r"region: (\w+)", job).group(1) == "us"
        self.litre_step = decimal.Decimal("0.01" if self.is_us else "0.1")

    def area(self, square_metres):
        # 1 ft2 = 0.09290304 m2 and 1 US gal = 3.785411784 L, exactly: NIST SP 811 (2008), App. B.8.
        amount = decimal.Decimal(str(square_metres)) / (decimal.Decimal("0.09290304") if self.is_us else 1)
        # As people say them: one decimal, none from 100 on, two below 1.
        step = "0.01" if amount < decimal.Decimal("0.9995") else "0.1" if amount < decimal.Decimal("99.95") else "1"
        return grouped(str(rounded(amount, decimal.Decimal(step)))) + (" ft²" if self.is_us else " m²")

    def volume(self, litres):
        return decimal.Decimal(str(litres)) / (decimal.Decimal("3.785411784") if self.is_us else 1)

    def date(self, at, weekday="", month="%B", year=False):
        d = datetime.datetime.fromisoformat(at)
        day = f"{d:{month}} {d.day}" if self.is_us else f"{d.day} {d:{month}}"
        last = (f", {d.year}" if self.is_us else f" {d.year}") if year else ""
        return (f"{d:{weekday}}" + (", " if self.is_us else " ") if weekday else "") + day + last

    def clock(self, at):
        d = datetime.datetime.fromisoformat(at)
        return f"{(d.hour + 11) % 12 + 1}:{d:%M} {'am' if d.hour < 12 else 'pm'}" if self.is_us else f"{d:%H:%M}"


def rounded(amount, step):
    return amount.quantize(step, rounding=decimal.ROUND_HALF_UP)


def check_litres(ref, text, figures, forms):
    """The table of coats in the aftercare sheet: each cell within a printed step, and the cells add up. One coat has no
    column of sums beside it."""
    loss = figures["litres"]["likely"] / sum(c["litres"] for c in figures["coats"])
    columns, step = max(c["coat"] for c in figures["coats"]), forms.litre_step
    number = r"(\d[\d,.]*|–)"
    printed = columns if columns == 1 else columns + 1
    sums = [decimal.Decimal(0)] * (columns + 1)
    for i, area in enumerate(figures["areas"]):
        row = re.search(f"{chr(65 + i)} {re.escape(area['name'])}" + f" {number}" * printed, text)
        check(row, f"{ref}: litres of {area['name']} in the aftercare sheet")
        if not row:
            continue
        cells = [decimal.Decimal(0) if cell == "–" else decimal.Decimal(cell.replace(",", "")) for cell in row.groups()]
        cells += cells if columns == 1 else []
        for coat in (c for c in figures["coats"] if c["area"] == area["name"]):
            apart = abs(cells[coat["coat"] - 1] - forms.volume(coat["litres"] * loss))
            check(apart < step, f"{ref}: coat {coat['coat']} of {area['name']} is printed {apart} off")
        check(sum(cells[:-1]) == cells[-1], f"{ref}: litres of {area['name']} add up")
        sums = [a + b for a, b in zip(sums, cells)]
    check(sums[-1] == rounded(forms.volume(figures["litres"]["likely"]), step), f"{ref}: litres add up to the likely need")
    check("all decks " + " ".join(f"{s:,}" for s in sums[:printed]) in text, f"{ref}: sums of the litres {sums}")


def check_laid(ref, text, figures, forms):
    """The table of coats as laid: every record with its day, litres and batches; in all the litres recorded."""
    records = {}
    for coat in figures["actual"]:
        records.setdefault((coat["start"], coat["end"], coat["coat"], tuple(coat["batches"])), []).append(coat)
    for (start, end, coat, batches), coats in records.items():
        litres = rounded(forms.volume(sum(decimal.Decimal(str(c["litres"])) for c in coats)), forms.litre_step)
        row = f"{forms.date(start, '', '%b', year=True)} {['first', 'second', 'third', 'fourth'][coat - 1]}, "
        after = text.split(row)[1:]
        check(after, f"{ref}: '{row}' in the aftercare sheet")
        # A cell of two lines stands between the lines of its neighbours in what poppler reads.
        words = [str(litres), *batches]
        check(any(all(word in part[:120] for word in words) for part in after), f"{ref}: {words} after '{row}'")
    together = rounded(forms.volume(sum(decimal.Decimal(str(c["litres"])) for c in figures["actual"])), forms.litre_step)
    check(f" {together} " in text, f"{ref}: {together} used together")


def up_to_half_hour(at):
    d = datetime.datetime.fromisoformat(at)
    return (d + datetime.timedelta(minutes=-d.minute % 30)).isoformat()


def check_dates(ref, texts, figures, forms):
    at = {event["event"]: up_to_half_hour(event["at"]) for event in figures["timing"]}
    care = texts["aftercare"]
    last = max(event["at"] for event in figures["timing"] if event["event"].endswith("_end"))
    if len(figures["actual"]) < len(figures["coats"]):
        last = up_to_half_hour(last)
    check(f"{forms.date(last, '%A', year=True)} at {forms.clock(last)}" in care, f"{ref}: end of the last coat, {last}")
    check(f"{forms.date(at['walk'], '%A')}, {forms.clock(at['walk'])}" in care, f"{ref}: walk on it, {at['walk']}")
    for name in ["furniture", "rugs", "first_wash"]:
        check(forms.date(at[name], "%A") in care, f"{ref}: {name}, {at[name]}, in the aftercare sheet")
    visit = forms.date(at["maintenance"], "%a", "%b", year=True)
    check(visit in care, f"{ref}: yearly visit, {visit}, in the aftercare sheet")
    first, done = figures["calendar"][0]["start"], max(shift["end"] for shift in figures["calendar"])
    check(forms.date(first, "%a", "%b") in texts["quote"], f"{ref}: start, {first}, in the quote")
    eve = (datetime.date.fromisoformat(first[:10]) - datetime.timedelta(days=1)).isoformat() + first[10:]
    check(forms.date(eve, "%a", "%b") in texts["quote"], f"{ref}: evening to be clear by, {eve}, in the quote")
    check("about " + forms.date(done, "%a", "%b") in texts["quote"], f"{ref}: hand-over, {done}, in the quote")
    check("to " + forms.date(at["walk"], "%a", "%b") in texts["quote"], f"{ref}: kept clear until {at['walk']}, in the quote")


def check_code(ref, pdf, total):
    """The QR code of the quote, as a reader of its own sees it on paper (zbar)."""
    with tempfile.TemporaryDirectory() as folder:
        run("pdftoppm", "-r", "300", "-gray", "-png", str(pdf), folder + "/page")
        told = [run("zbarimg", "-q", "--raw", str(page)).stdout.strip() for page in sorted(pathlib.Path(folder).glob("*.png"))]
    found = [words for words in told if words]
    check(len(found) == 1 and found[0].startswith("mailto:"), f"{ref}: the code on the quote says {found}")
    mail = urllib.parse.unquote("".join(found))
    for words in [ref, total]:
        check(words in mail, f"{ref}: {words} in the e-mail that accepts: {mail}")


def check_office(ref, text, figures, explained):
    hours = decimal.Decimal(str(figures["labour_hours"]))
    printed = [hours.quantize(decimal.Decimal("0.1"), rounding=r) for r in (decimal.ROUND_FLOOR, decimal.ROUND_CEILING)]
    check(any(f" {p:,}" in text for p in printed), f"{ref}: {hours} person-hours in the office sheet")
    # Task by area, in tenths: each cell, and the sum of each row and column, next to its exact value, and all add up.
    names = {task["id"]: task["name"].capitalize() for task in tasks}
    columns = [area["name"] for area in figures["areas"]] + [None]
    once = [task["id"] for task in tasks if task["per"] in ("day", "job")]
    rows = {}
    for line in figures["labour"]:
        name = "Set up, cover, pack" if line["task"] in once else names[line["task"]]
        row = rows.setdefault(name, [decimal.Decimal(0)] * len(columns))
        row[columns.index(line["area"])] += decimal.Decimal(str(line["hours"]))
    tenth, sums = decimal.Decimal("0.1"), [decimal.Decimal(0)] * (len(columns) + 1)
    rows["Total"] = [sum(column) for column in zip(*rows.values())]
    for name, exact in rows.items():
        found = re.search(rf"{name}(?:, \w+ (?:pass|coat)e?s)?((?: (?:[\d,]+\.\d|–)){{{len(columns) + 1}}})", text)
        check(found, f"{ref}: a row of hours of '{name}' in the office sheet")
        if not found:
            continue
        cells = [decimal.Decimal(0) if cell == "–" else decimal.Decimal(cell.replace(",", "")) for cell in found.group(1).split()]
        for cell, amount in zip(cells, [*exact, sum(exact)]):
            check(abs(cell - amount) < tenth, f"{ref}: {name}: {cell} h is printed for {amount}")
        check(sum(cells[:-1]) == cells[-1], f"{ref}: hours of '{name}' add up: {cells}")
        if name == "Total":
            check(cells == sums, f"{ref}: hours of the tasks {sums} add up to {cells}")
        sums = [a + b for a, b in zip(sums, cells)]
    for area in figures["areas"]:
        for name in ["boards", "fixings"]:
            count = area[name]
            check(count == 0 or re.search(rf"\b{name}\b.{{0,90}}?\b{count}\b", explained), f"{ref}: {count} {name} explained")


with tempfile.TemporaryDirectory() as one, tempfile.TemporaryDirectory() as two:
    first, second = pathlib.Path(one) / "a", pathlib.Path(two) / "b"
    here = pack(first, cwd=source, LC_ALL="C", TZ="UTC")
    there = pack(second, cwd=two, LC_ALL="C.UTF-8", LANG="de_DE.UTF-8", LC_NUMERIC="de_DE.UTF-8", TZ="Pacific/Kiritimati")
    check(len(here) >= 5 * len(jobs), f"{len(here)} documents of {len(jobs)} jobs")
    check(here == there, "the same bytes in another locale, time zone and folder")

    schema = json.loads((source / "content/schemas/figures.schema.json").read_text())
    plans = jsonschema.Draft7Validator(json.loads((source / "content/schemas/plan.schema.json").read_text()))
    told = run(program, "due", str(source / "out_examples"), "--by", "2035-01-01", "--json")
    visits = json.loads(told.stdout)
    check(told.returncode == 0 and visits, f"due: {told.stdout}{told.stderr}")
    dues = jsonschema.Draft7Validator(json.loads((source / "content/schemas/due.schema.json").read_text()))
    for error in dues.iter_errors(visits):
        check(False, f"due: {error.json_path}: {error.message}")
    for job in jobs:
        told = run(program, "figures", "--json", str(job))
        check(told.returncode == 0, f"figures {job}: {told.stderr}")
        figures = json.loads(told.stdout)
        for error in jsonschema.Draft7Validator(schema).iter_errors(figures):
            check(False, f"{job}: {error.json_path}: {error.message}")
        told = run(program, "plan", "--json", str(job))
        check(told.returncode == 0, f"plan {job}: {told.stderr}")
        plan = json.loads(told.stdout)
        for error in plans.iter_errors(plan):
            check(False, f"plan of {job}: {error.json_path}: {error.message}")
        check(all(hour["fit"] == (not hour["reasons"]) for hour in plan["hours"]), f"{job}: unfit hours have a reason")
        every_day = ("set-up", "pack-down", "rest", "wait")
        spans = [(s["task"], s["area"], s["start"], s["end"]) for s in figures["calendar"]]
        pieces = [(t["task"], t["area"], t["start"][:16], t["end"][:16]) for t in plan["tasks"] if t["task"] not in every_day]
        for t in pieces:
            check(any(s[:2] == t[:2] and s[2] <= t[2] and t[3] <= s[3] for s in spans), f"{job}: one calendar: {t}")
        for span in spans:
            check(any(t[:3] == span[:3] for t in pieces), f"{job}: one calendar: {span}")
        folder = first / figures["ref"]
        asked = asked_for + (["invoice"] if "\ninvoices:" in job.read_text() else [])
        told = run(program, "pack", str(job), "-o", str(first), *(word for name in asked for word in ("--only", name)))
        check(told.returncode == 0, f"{asked} of {job}: {told.stdout}{told.stderr}")
        texts = {p.stem: text_of(p) for p in sorted(folder.glob("*.pdf"))}
        check(set(asked) < set(texts), f"{job}: {asked} beside the pack")
        price, forms = figures["price"], Forms(job.read_text())
        (check_laid if figures["actual"] else check_litres)(figures["ref"], texts["aftercare"], figures, forms)
        check_dates(figures["ref"], texts, figures, forms)
        check_office(figures["ref"], texts["office"], figures, run(program, "figures", str(job), "--explain").stdout)
        for name in ["quote", "office"]:
            check(f"{figures['crew_days']} days" in texts[name], f"{figures['ref']}: {figures['crew_days']} days in {name}")
        for name in ["net", "tax", "total", "deposit"]:
            check(grouped(price[name]) in texts["quote"], f"{figures['ref']}: {name} {price[name]} in the quote")
        for area in figures["areas"]:
            amount = sum(decimal.Decimal(line["amount"]) for line in price["lines"] if line["area"] == area["name"])
            for name in ["quote", "office"]:
                check(grouped(str(amount)) in texts[name], f"{figures['ref']}: {amount} for {area['name']} in {name}")
        for stage in price["stages"]:
            check(grouped(stage["amount"]) in texts["quote"], f"{figures['ref']}: stage {stage['amount']} in the quote")
        for area in figures["areas"]:
            for name in ["quote", "office"]:
                check(area["name"] in texts[name], f"{figures['ref']}: {area['name']} in {name}")
            size = forms.area(area["area_m2"])
            check(size in texts["quote"], f"{figures['ref']}: {size} of {area['name']} in the quote")
        size = forms.area(sum(decimal.Decimal(str(area["area_m2"])) for area in figures["areas"]))
        check(size in texts["office"], f"{figures['ref']}: {size} in all in the office sheet")
        for tin in figures["tins"]:
            check(grouped(tin["price"]) in texts["orders"], f"{figures['ref']}: tin at {tin['price']} in orders")
        check(grouped(figures["tins_cost"]) in texts["orders"], f"{figures['ref']}: cost of the tins in orders")
        check(grouped(price["cost"]) in texts["office"], f"{figures['ref']}: cost in the office sheet")

        check_code(figures["ref"], folder / "quote.pdf", grouped(price["total"]))
        for pdf in sorted(folder.glob("*.pdf")):
            sound = run("qpdf", "--check", str(pdf))
            check(sound.returncode == 0 and "WARNING" not in sound.stderr, f"{pdf.name}: qpdf says {sound.stdout}{sound.stderr}")
            plain = run("qpdf", "--qdf", "--object-streams=disable", str(pdf), "-", encoding="latin-1").stdout
            metadata = plain + texts[pdf.stem]
            for secret in [str(source), os.path.expanduser("~"), one, two, socket.gethostname(), f"user {getpass.getuser()}"]:
                check(len(secret) < 3 or secret not in metadata, f"{pdf.name}: holds '{secret}'")
            if pdf.stem in without_money:
                for amount in [grouped(price["total"]), grouped(price["cost"])]:
                    check(amount not in texts[pdf.stem], f"{figures['ref']} {pdf.stem}: names {amount}")
            if pdf.stem in customers:
                for word in ["margin", "overhead", "contingency", grouped(price["cost"])]:
                    check(word not in texts[pdf.stem].lower(), f"{figures['ref']} {pdf.stem}: says '{word}'")
                for note in re.findall(r"office_note: (.*)", job.read_text()):
                    check(note[:24] not in texts[pdf.stem], f"{figures['ref']} {pdf.stem}: holds an office note")
        for name, text in texts.items():
            for word in claims:
                check(not re.search(rf'\b{word}\b', text.lower()), f"{figures['ref']} {name}: claims '{word}'")

    # Two good jobs of one number would write over each other: neither is written.
    copy = pathlib.Path(one) / "copy.yaml"
    copy.write_text(jobs[0].read_text().replace("../../content", str(source / "content")).replace("../firms", str(source / "out_examples/firms")))
    alone = run(program, "pack", str(copy), "-o", str(first / "alone"))
    check(alone.returncode == 0, f"a copy is a good job: {alone.stderr}")
    both = run(program, "pack", str(jobs[0]), str(copy), "-o", str(first / "both"))
    check(both.returncode != 0 and "same number" in both.stderr, f"two jobs of one number: {both.returncode} {both.stderr}")
    check(not list((first / "both").rglob("*.pdf")), "two jobs of one number write nothing")

print(f"{len(jobs)} jobs, {len(failures)} failures")
sys.exit(1 if failures else 0)
