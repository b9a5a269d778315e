#!/usr/bin/python3
"""Packs are whole or not at all, whatever happens: killed at every step and at random moments, run twice at once, on a full
disk, over odd files. Usage: whole.py PROGRAM [KILLS [DOUBLE_RUNS [JOBS]]]"""
import os
import pathlib
import pty
import random
import re
import resource
import shutil
import signal
import subprocess
import sys
import tempfile
import time

program = os.path.abspath(sys.argv[1])
kills, doubles, batch = [int(n) for n in sys.argv[2:]] + [24, 6, 40][len(sys.argv) - 2:]
failures = []
random.seed(1)
box = pathlib.Path(tempfile.mkdtemp())
out, outside = box / "out", box / "outside.txt"
outside.write_text("not yours")

# Calls that change files, counted: at the one numbered STEP the process is killed (or, for a rename, refused).
SHIM = r"""
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
static int is(const char *name) {
  const char *all = getenv("SHIM");
  char word[40];
  snprintf(word, sizeof word, " %s ", name);
  return all && strstr(all, word);
}
static int step(const char *kind) {
  static int n;
  if (getenv("LATE") && !strcmp(kind, "renameat2") && system(getenv("LATE"))) abort();
  if (!is(kind) || !getenv("STEP") || ++n != atoi(getenv("STEP"))) return 0;
  if (is("kill")) raise(SIGKILL);
  errno = EIO;
  return 1;
}
#define CALL(result, name, types, ...) \
  result name types { \
    if (is("no-" #name)) { errno = ENOSYS; return -1; } \
    if (step(#name)) return -1; \
    return ((result(*) types)dlsym(RTLD_NEXT, #name))(__VA_ARGS__); \
  }
CALL(int, mkdir, (const char *p, mode_t m), p, m)
CALL(int, linkat, (int a, const char *p, int b, const char *q, int f), a, p, b, q, f)
CALL(int, flock, (int fd, int how), fd, how)
CALL(int, renameat2, (int a, const char *p, int b, const char *q, unsigned f), a, p, b, q, f)
CALL(int, rename, (const char *p, const char *q), p, q)
CALL(int, remove, (const char *p), p)
CALL(ssize_t, write, (int fd, const void *p, size_t n), fd, p, n)
int open(const char *p, int flags, ...) {
  va_list rest; va_start(rest, flags); int mode = va_arg(rest, int); va_end(rest);
  if (flags & O_CREAT && step("open")) return -1;
  return ((int (*)(const char *, int, ...))dlsym(RTLD_NEXT, "open"))(p, flags, mode);
}
"""
EVERY_STEP = "kill mkdir linkat renameat2 rename remove write open"


def check(is_right, what):
    if not is_right:
        failures.append(what)
        print("FAILED:", what)


def words(job, *options):
    return [program, "pack", str(job), "-o", str(out), *options]


def run(*command, **options):
    return subprocess.run(command, capture_output=True, text=True, **options)


def shimmed(words, step=0, **more):
    return {**os.environ, **more, "LD_PRELOAD": str(box / "shim.so"), "SHIM": f" {words} ", "STEP": str(step)}


def days_of(calendar):
    """Its events as they stand: a calendar file goes on counting from the one before, and cancels what is gone."""
    events = re.split(rb"(?=BEGIN:VEVENT)", calendar.removesuffix(b"END:VCALENDAR\r\n"))
    return b"".join(re.sub(rb"(SEQUENCE|STATUS):[^\r]*\r\n", b"", e) for e in events if b"STATUS:CANCELLED" not in e)


def ours(folder):
    """The bytes of a pack; nothing where there is none."""
    files = [p for p in sorted(folder.glob("*")) if p.suffix in (".pdf", ".ics") and p.is_file()]
    return {p.name: days_of(p.read_bytes()) if p.suffix == ".ics" else p.read_bytes() for p in files}


def check_own(what):
    check((pack / "notes.txt").read_text() == "call first" and (pack / "photos/before.jpg").read_text() == "a deck"
          and (pack / "quote.pdf.part").is_fifo() and (pack / "office.pdf.part").is_symlink(), f"{what}: the user's own files")
    check(outside.read_text() == "not yours", f"{what}: a file outside")


def check_whole(what, *wanted):
    now = ours(pack)
    check(now in (wanted or (first, second)), f"{what}: mixed, {sorted(now)}")
    check_own(what)


def check_alone(what):
    check(os.geteuid() != 0 or pack.stat().st_uid == 12345, f"{what}: the folder's owner")
    left = [p.name for p in out.iterdir() if p != pack]
    check(not left, f"{what}: left behind {left}")


def start_anew():
    """The first pack, and the user's own files in its folder: some of them named like parts of ours."""
    shutil.rmtree(out, ignore_errors=True)
    shutil.copytree(box / "reference" / ref, pack)
    (pack / "notes.txt").write_text("call first")
    (pack / "photos").mkdir()
    (pack / "photos/before.jpg").write_text("a deck")
    os.mkfifo(pack / "quote.pdf.part")
    (pack / "office.pdf.part").symlink_to(outside)
    if os.geteuid() == 0:
        os.chown(pack, 12345, 12345)


subprocess.run(["cc", "-shared", "-fPIC", "-o", box / "shim.so", "-x", "c", "-", "-ldl"], input=SHIM, text=True, check=True)
check(run(program, "firm", str(box / "firm")).returncode == 0, "a firm")
check(run(program, "new", str(box / "a.yaml")).returncode == 0, "a new job")
text = (box / "a.yaml").read_text()
ref = re.search(r"^ref: (\S+)", text, re.M).group(1)
pack = out / ref
washed = re.sub(r"^work: .*", "work: [wash]", re.sub(r"^sanding: .*\n", "", text, flags=re.M), flags=re.M)
(box / "b.yaml").write_text(washed)
for job in ("a", "b"):
    check(run(*words(box / f"{job}.yaml")).returncode == 0, f"pack of {job}")
    if job == "a":
        shutil.copytree(out, box / "reference")
        first = ours(pack)
second = ours(pack)
check("aftercare.pdf" in first and "aftercare.pdf" not in second and first["job.ics"] != second["job.ics"],
      "the second job has other documents")
a, b = words(box / "a.yaml"), words(box / "b.yaml")

# A new pack takes the place of the old one; some documents of it leave the others as they are.
start_anew()
check(run(*b).returncode == 0, "over an older pack")
check_whole("over an older pack", second)
check_alone("over an older pack")
was = {name: (pack / name).stat().st_ino for name in second}
check(run(*a, "--only", "aftercare").returncode == 0, "one document")
check_whole("one document", {**second, "aftercare.pdf": first["aftercare.pdf"]})
check(was == {name: (pack / name).stat().st_ino for name in second}, "one document: the others are as they were")
stands_in = pack.stat().st_ino
check(run(*a, cwd=pack).returncode == 0 and pack.stat().st_ino == stands_in, "from inside")
check_whole("from inside", first)

# What somebody saves in the very moment of the exchange is not lost.
start_anew()
late = f"cd {pack}; echo a new one > photos/late.jpg; echo call later > new; mv new notes.txt; mkdir more; touch more/file"
check(run(*b, env=shimmed("", LATE=late)).returncode == 0, "saved late")
check((pack / "photos/late.jpg").read_text() == "a new one\n" and (pack / "notes.txt").read_text() == "call later\n"
      and (pack / "more/file").exists(), "saved late")
check(ours(pack) == second, "saved late: the new pack")
check_alone("saved late")

# Folders beside it go only when a run that has ended made them.
start_anew()
of_another, of_the_user = out / f".{ref}.planksheaf-1-1", out / f".{ref}.planksheaf-notes"
for folder in (of_another, of_the_user):
    folder.mkdir()
    (folder / "quote.pdf").touch()
check(run(*b, env=shimmed("no-flock")).returncode == 0 and of_another.exists(), "without a lock")
check(run(*b).returncode == 0 and not of_another.exists(), "with a lock")
check((of_the_user / "quote.pdf").exists(), "a folder of the user's with a name like ours")

# Killed at every step, then run again.
for how in ("", "no-renameat2", "no-linkat"):
    step, was_killed = 1, True
    while was_killed:
        start_anew()
        done = run(*b, env=shimmed(f"{EVERY_STEP} {how}", step))
        was_killed = done.returncode == -signal.SIGKILL
        what = f"killed at step {step} {how}"
        if how:
            now = ours(pack).items()
            check(now <= first.items() or now <= second.items(), f"{what}: mixed")
        else:
            check_whole(what)
        check(run(*b).returncode == 0, f"after {what}")
        check_whole(f"after {what}", second)
        check_alone(f"after {what}")
        step += 1 if len(sys.argv) > 2 else random.randint(1, 7)
    check(step > 20 and done.returncode == 0, f"steps {how}: {step}, {done}")

# Without a way to exchange folders the files go one after the other, and back when one cannot.
for step in range(1, 60):
    start_anew()
    done = run(*b, env=shimmed("no-renameat2 rename", step))
    if done.returncode == 0:
        break
    check(done.returncode == 2 and "error" in done.stderr, f"rename {step} fails: {done}")
    check_whole(f"rename {step} fails", first)
    check_alone(f"rename {step} fails")
check(10 < step < 59, f"renames: {step}")
check_whole("one after the other", second)
check_alone("one after the other")

# At random moments, most of them while the pack is written.
start_anew()
left = {pack}
for n in range(kills):
    how = random.choice([signal.SIGKILL, signal.SIGKILL, signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
    process = subprocess.Popen(random.choice([a, b]), stdout=subprocess.DEVNULL)
    until = time.time() + random.uniform(0, 0.6)
    while process.poll() is None and (time.time() < until if n % 4 == 0 else not list(out.glob(".*"))):
        pass
    if n % 4:
        time.sleep(random.uniform(0, 0.004))
    process.send_signal(how)
    check(process.wait() in (-how, 0), f"{how.name}: {process.returncode}")
    check_whole(f"{how.name} {n}")
    if how != signal.SIGKILL:
        check(set(out.iterdir()) <= left, f"{how.name} {n}: left behind {set(out.iterdir()) - left}")
    left = set(out.iterdir())
check(run(*b).returncode == 0, "after kills")
check_whole("after kills", second)
check_alone("after kills")

# Two runs at once: one of them wins whole.
for n in range(doubles):
    both = [subprocess.Popen(w, stdout=subprocess.DEVNULL) for w in random.sample([a, b], 2)]
    check([p.wait() for p in both] == [0, 0], "two at once")
    check_whole(f"two at once {n}")
    check_alone(f"two at once {n}")

# A full disk, and things that lie in the way.
start_anew()
full = run(*b, preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (30000, 30000)))
check(full.returncode == 2 and full.stderr == f"{box}/b.yaml: error: {pack}/quote.pdf: cannot be written: File too large\n",
      f"a full disk: {full}")
check_whole("a full disk", first)
check_alone("a full disk")
(pack / "dayplan.pdf").unlink()
(pack / "dayplan.pdf").mkdir()
now = ours(pack)
done = run(*b)
check(done.returncode == 2 and done.stderr == f"{box}/b.yaml: error: {pack}/dayplan.pdf: is a folder, not a document\n"
      "  hint: give it another name; nothing was written\n", f"a folder in the way: {done}")
check_whole("a folder in the way", now)
check(run(*b, "--only", "quote").returncode == 0, "a folder beside the document asked for")
check((pack / "dayplan.pdf").is_dir(), "a folder beside the document asked for stays")
shutil.rmtree(pack)
(box / "elsewhere").mkdir()
pack.symlink_to(box / "elsewhere")
done = run(*b)
check(done.returncode == 2 and done.stderr == f"{box}/b.yaml: error: {pack}: is a file or a link, not a folder\n"
      "  hint: move it away; nothing was written\n", f"a link in place of the folder: {done}")
check(not list((box / "elsewhere").iterdir()) and pack.is_symlink(), "a link in place of the folder is not followed")

# A batch: each pack is there when it is told, Ctrl-C leaves those, and memory does not grow with the jobs.
many = []
for n in range(batch):
    many.append(str(box / f"{n}.yaml"))
    pathlib.Path(many[-1]).write_text(re.sub(r"^ref: \S+", f"ref: N-{n}", text, flags=re.M))
shutil.rmtree(out)
process = subprocess.Popen([program, "pack", *many, "-o", str(out), "--threads", "2"], stdout=subprocess.PIPE, text=True)
told = process.stdout.readline()
process.send_signal(signal.SIGINT)
rest = process.stdout.read()
check(process.wait() == -signal.SIGINT, f"Ctrl-C: {process.returncode}")
made = list(out.iterdir())
check(told == f"{out}/N-0: 7 files\n" and 0 < len(made) < batch, f"Ctrl-C: {told}, {len(made)} made")
for folder in made:
    check(sorted(ours(folder)) == sorted(first), f"Ctrl-C: {folder.name} is whole")


def peak(jobs):
    process = subprocess.Popen([program, "pack", *jobs, "-o", str(out), "--threads", "2"], stdout=subprocess.DEVNULL)
    _, status, used = os.wait4(process.pid, 0)
    check(status == 0, "a batch")
    return used.ru_maxrss / 1024


few, all_of_them = peak(many[:8]), peak(many)
print(f"{all_of_them:.0f} MB for {batch} jobs, {few:.0f} MB for 8")
check(all_of_them < few + 15 and all_of_them < 80, f"memory: {few} MB for 8 jobs, {all_of_them} MB for {batch}")

# Progress on a terminal only.
leader, terminal = pty.openpty()
subprocess.run([program, "check", *many[:2]], stdout=subprocess.DEVNULL, stderr=terminal)
seen = os.read(leader, 1000).decode()
check("1 of 2 jobs" in seen and seen.endswith("\r"), f"progress: {seen!r}")
check(run(program, "check", *many[:2]).stderr == "", "no progress elsewhere")

shutil.rmtree(box)
sys.exit(1 if failures else 0)
