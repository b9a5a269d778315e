#!/usr/bin/python3
"""Two hundred jobs: folders and patterns, reports, packs passed over because nothing changed, runs that are stopped, and the
recipe of 'planksheaf help batch' with GNU parallel, one of whose workers is killed. Usage: batch.py PROGRAM SOURCE_DIR"""
import collections
import json
import os
import pathlib
import re
import resource
import shutil
import signal
import subprocess
import sys
import tempfile
import time

import jsonschema

program, source = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2]).absolute()
count, broken = 200, 77
schema = jsonschema.Draft7Validator(json.loads((source / "content/schemas/report.schema.json").read_text()))
failures = []


def same(what, got, wanted):
    if got != wanted:
        failures.append(what)
        print(f"FAILED: {what}:\n  {got!r}\nnot\n  {wanted!r}")


def run(*words, cwd):
    return subprocess.run(words, cwd=cwd, capture_output=True, text=True)


def lines_of(text):
    lines = [json.loads(line) for line in text.splitlines()]
    for line in lines:
        same(f"report of {line['job']}", [e.message for e in schema.iter_errors(line)], [])
    return lines


def statuses(lines):
    return dict(collections.Counter(line["status"] for line in lines))


def write_jobs(box):
    text = (source / "out_examples/landing/job.yaml").read_text()
    ref = re.search(r"^ref: (\S+)", text, re.M)[1]
    text = re.sub(r"^firm: .*\n", "", text, flags=re.M)  # the nearest
    shutil.copytree(source / "out_examples/firms/tideboard", box / "firm")
    for i in range(count):
        folder = box / f"jobs/{i:03}"
        folder.mkdir(parents=True)
        one = text.replace(f"ref: {ref}", f"ref: N-{i:03}", 1)
        (folder / "job.yaml").write_text(one.replace("\nwork:", "\nworks:") if i == broken else one)
        shutil.copy(source / "out_examples/landing/forecast.csv", folder)
    (box / "jobs/rates.yaml").write_text("# no job\nrates: []\n")


def packs_in(folder):
    return {f.parent.name: f.read_bytes() for f in folder.glob("*/orders.pdf")}


def memory(box):
    """Of whole packs on two threads. Before any other program runs: the largest counts."""
    run(program, "pack", "jobs", "-o", "all", "--threads", "2", cwd=box)
    kilobytes = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss
    same(f"200 packs need no more than 60 MB, not {kilobytes} kB", kilobytes <= 60_000, True)


def whole_folder(box):
    done = run(program, "pack", "jobs", "-o", "whole", "--only", "orders", "--report", "whole.jsonl", cwd=box)
    same("status of a folder with a broken job", done.returncode, 1)
    lines = lines_of((box / "whole.jsonl").read_text())
    same("jobs of a folder, in order", [line["job"] for line in lines], [f"jobs/{i:03}/job.yaml" for i in range(count)])
    same("what became of them", statuses(lines), {"written": count - 1, "refused": 1})
    same("files", lines[0]["files"], ["orders.pdf"])
    same("the mistake", (lines[broken]["messages"][0]["line"], lines[broken]["messages"][0]["message"]), (3, "'work' is missing"))
    one = run(program, "pack", "jobs", "-o", "whole", "--only", "orders", "--threads", "1", cwd=box)
    same("words, whatever the threads", (one.stdout, one.stderr), (done.stdout, done.stderr))
    return packs_in(box / "whole")


def patterns(box):
    done = run(program, "check", "jobs/00?/job.yaml", "jobs/000", "jobs/000/job.yaml", "--only", "orders", "--json", cwd=box)
    same("jobs of a pattern, each once", [line["job"] for line in lines_of(done.stdout)], [f"jobs/{i:03}/job.yaml" for i in range(10)])
    same("they are in order", statuses(lines_of(done.stdout)), {"in order": 10})
    done = run(program, "pack", "nothing/*.yaml", "jobs/000", "--only", "orders", "-o", "some", cwd=box)
    same("a pattern that fits nothing", (done.returncode, done.stdout, done.stderr), (
        1, "some/N-000: 1 file\n",
        "nothing/*.yaml: error: no file fits this pattern\n  hint: 'planksheaf pack FOLDER' takes every job below a folder\n"))
    (box / "empty").mkdir()
    done = run(program, "pack", "empty", cwd=box)
    same("an empty folder", (done.returncode, done.stdout, done.stderr), (
        1, "", "empty: error: there is no job below it\n  hint: a job has 'customer:' and 'areas:' at its top\n"))
    done = run(program, "pack", "jobs/000", "--report", "empty/x/report", cwd=box)
    same("a report that cannot be written", (done.returncode, done.stderr), (
        2, "planksheaf: error: empty/x/report: cannot be written: No such file or directory\n"))


def only_if_changed(box):
    job, firm, pack = box / "jobs/000/job.yaml", box / "firm/firm.yaml", box / "again/N-000"

    def becomes(what, wanted, *options):
        words = [program, "pack", "jobs/000", "-o", "again", "--only", "orders", "--json", *options]
        same(what, [line["status"] for line in lines_of(run(*words, cwd=box).stdout)], [wanted])

    becomes("a first time", "written", "--if-changed")
    becomes("nothing changed", "unchanged", "--if-changed")
    os.utime(job)
    becomes("only its time changed", "unchanged", "--if-changed")
    job.write_text(job.read_text() + "# a remark\n")
    becomes("the job changed", "written", "--if-changed")
    firm.write_text(firm.read_text() + "# a remark\n")
    becomes("the firm changed", "written", "--if-changed")
    (box / "firm/customers.csv").write_text("key,name,phone\nthorley,Inga Thorley,1\nmarsh,Ben Marsh,2\n")
    becomes("customers the job does not name", "unchanged", "--if-changed")
    job.write_text(re.sub(r"^customer:.*\n(?:  .*\n)*", "customer: thorley\n", job.read_text(), flags=re.M))
    becomes("one that it names", "written", "--if-changed")
    (box / "firm/customers.csv").write_text("key,name,phone\nthorley,Inga Thorley,1\nmarsh,Ben Marsh,3\n")
    becomes("another customer changed", "unchanged", "--if-changed")
    (box / "firm/customers.csv").write_text("key,name,phone\nthorley,Inga Thorley,4\nmarsh,Ben Marsh,3\n")
    becomes("its customer changed", "written", "--if-changed")
    becomes("another paper", "written", "--if-changed", "--paper", "letter")
    becomes("the usual paper again", "written", "--if-changed")
    (pack / "orders.pdf").unlink()
    becomes("a file was deleted", "written", "--if-changed")
    becomes("all there again", "unchanged", "--if-changed")
    becomes("without the option", "written")
    same("and without the stamp", sorted(os.listdir(pack)), ["orders.pdf"])


def wait_for_lines(file, number):
    for _ in range(6000):
        if file.exists() and file.read_text().count("\n") >= number:
            return
        time.sleep(0.01)
    sys.exit(f"{file} never had {number} lines")


def stopped(box):
    words = [program, "pack", "jobs", "-o", "stopped", "--only", "orders", "--if-changed", "--report"]
    with subprocess.Popen([*words, "first.jsonl"], cwd=box, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True) as first:
        wait_for_lines(box / "first.jsonl", 5)
        first.send_signal(signal.SIGINT)
        told = first.stderr.read()
    same("a run ends by the signal", first.returncode, -signal.SIGINT)
    same("and says how to go on", told.endswith("planksheaf: stopped between two packs; give the same command again to go on\n"), True)
    run(*words, "second.jsonl", cwd=box)
    after = statuses(lines_of((box / "second.jsonl").read_text()))
    same("what was made stays", after.get("unchanged", 0) >= 5 and after["unchanged"] + after["written"] == count - 1, True)


def worker_of(report):
    """The process that writes this report."""
    for entry in pathlib.Path("/proc").glob("[0-9]*/cmdline"):
        try:
            words = entry.read_bytes().split(b"\0")
        except OSError:
            continue
        if words[0] == program.encode() and report.encode() in words:
            return int(entry.parent.name)
    sys.exit(f"nobody writes {report}")


def parallel(box, wanted):
    text = (source / "content/help/batch.md").read_text()
    recipe = re.search(r"^    mkdir -p reports\n(?:    .*\n)+", text, re.M)[0]
    (box / "recipe.sh").write_text(recipe.replace("planksheaf pack", f"'{program}' pack --only orders"))
    with subprocess.Popen(["sh", "recipe.sh"], cwd=box, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) as first:
        wait_for_lines(box / "reports/3.jsonl", 5)
        os.kill(worker_of("reports/3.jsonl"), signal.SIGKILL)
    same("a killed worker is noticed", first.returncode, 2)  # its run, and the one with the broken job
    made = packs_in(box / "packs")
    same("the others go on", len(made) >= count - 51 and len(made) < count - 1, True)
    again = run("sh", "recipe.sh", cwd=box)
    same("the same command again", again.returncode, 1)
    same("makes what was missing", packs_in(box / "packs"), wanted)
    after = statuses(lines_of((box / "reports/3.jsonl").read_text()))
    same("and nothing else", after.get("unchanged", 0) >= 5 and sum(after.values()) == 50, True)


def main():
    with tempfile.TemporaryDirectory() as name:
        box = pathlib.Path(name)
        write_jobs(box)
        memory(box)
        wanted = whole_folder(box)
        same("packs", len(wanted), count - 1)
        patterns(box)
        stopped(box)
        parallel(box, wanted)
        only_if_changed(box)
    print(f"{count} jobs: in one run, stopped and resumed, by parallel with a worker killed")
    sys.exit(1 if failures else 0)


main()
