#!/usr/bin/python3
"""Times 'planksheaf due' over a folder of many jobs. Usage: due.py PROGRAM SOURCE_DIR [COUNT [NAME...]]
The jobs are those of the examples, or the named ones, in turn, each with a number and a customer of its own. Prints
seconds of the clock and of the processors, for a folder just written and read before."""
import pathlib
import re
import resource
import subprocess
import sys
import tempfile
import time

program, source = sys.argv[1], pathlib.Path(sys.argv[2])
count = int(sys.argv[3]) if len(sys.argv) > 3 else 10_000
names = sys.argv[4:] or sorted(p.parent.name for p in source.glob("out_examples/*/job.yaml"))


def write_jobs(folder):
    """One folder for each job, as a firm would keep them."""
    texts = [(source / "out_examples" / name / "job.yaml").read_text() for name in names]
    forecasts = [source / "out_examples" / name / "forecast.csv" for name in names]
    for i in range(count):
        at = folder / f"{i:05}"
        at.mkdir()
        text = texts[i % len(texts)]
        ref = re.search(r"^ref: (\S+)", text, re.M).group(1)
        text = re.sub(r"^(after|first_job): .*\n", "", text, flags=re.M)
        text = text.replace(f"ref: {ref}", f"ref: {ref}-{i:05}", 1)
        text = re.sub(r"(^customer: \{name: )([^,]+)", rf"\g<1>\2 {i:05}", text, count=1, flags=re.M)
        (at / "job.yaml").write_text(text)
        forecast = forecasts[i % len(texts)]
        if forecast.exists():
            (at / "forecast.csv").write_bytes(forecast.read_bytes())


def run(folder):
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    begun = time.monotonic()
    done = subprocess.run([program, "due", folder, "--by", "2035-01-01", "--csv"], capture_output=True, check=True)
    clock = time.monotonic() - begun
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    cpu = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    print(f"{count} jobs, {done.stdout.count(10) - 1} due: {clock:.2f} s, {cpu:.2f} s of CPU, "
          f"{1000 * cpu / count:.3f} ms of CPU a job")


with tempfile.TemporaryDirectory() as made:
    write_jobs(pathlib.Path(made))
    run(made)
    run(made)
