#!/usr/bin/python3
"""Fails when the documents for people who change the code speak of what is not there: a path, or a word between backticks
that stands nowhere in code, content or templates. Also holds the length of the map, and the one place of the version.

python3 tests/documents.py SOURCE_DIR [PROGRAM]"""

import pathlib
import re
import subprocess
import sys

MOST_WORDS = 1500  # of DEVELOPERS.md
DOCUMENTS = ["README.md", "CONTRIBUTING.md", "DEVELOPERS.md", "tests/bench/README.md", "src/*/DECISIONS.md"]
CODE = ["src/**/*", "tests/**/*", "content/**/*", "templates/**/*", "out_examples/*", "out_examples/*/*.yaml", "CMake*", ".clang-tidy"]
WRITTEN = {".md", ".h", ".cpp", ".py", ".sh", ".txt", ".yaml", ".json", ".svg"}
ROOTS = ["", "src", "content", "templates"]  # a path begins at one of these, or beside the document that names it


def is_path(quoted):
    return re.fullmatch(r"[\w.*/-]+", quoted) and ("/" in quoted or pathlib.Path(quoted).suffix in WRITTEN)


def words_of(text):
    return set(re.findall(r"[A-Za-z_][A-Za-z_0-9]*", text))


def exists(root, document, path):
    places = [root / r for r in ROOTS] + [document.parent]
    stem = path.rstrip("/").removesuffix(".{h,cpp}")
    return any(any(place.glob(stem + end)) for place in places for end in ("", ".h", ".cpp"))


def missing(root, document, text, known):
    """What the text says of the tree that is not so."""
    for target in re.findall(r"\]\(([^)#:]+)\)", text):
        if not (document.parent / target).exists():
            yield f"links to {target}, which is not there"
    bare = re.sub(r"^( *)```.*?^\1```", "", text, flags=re.S | re.M)
    for quoted in re.findall(r"`([^`]+)`", bare):
        if is_path(quoted):
            if not quoted.startswith("build") and not exists(root, document, quoted):
                yield f"'{quoted}' is no path of the tree"
        else:
            unknown = words_of(quoted) - known
            if unknown:
                yield f"'{quoted}': {', '.join(sorted(unknown))} stands nowhere in the tree"


def version_of(root):
    return re.search(r"project\(\w+ VERSION ([\d.]+)", (root / "CMakeLists.txt").read_text())[1]


def version_repeated(root, files):
    version = version_of(root)
    again = [f for f, text in files.items() if re.search(rf"(?<![\d.]){re.escape(version)}(?![\d.])", text)]
    return [f"{f.relative_to(root)}: repeats the version {version} of CMakeLists.txt" for f in again]


def versions_differ(root, program):
    """Of the program and of the package that is made beside it."""
    version = version_of(root)
    told = subprocess.run([program, "--version"], capture_output=True, text=True).stdout
    if told != f"planksheaf {version}\n":
        yield f"--version says {told!r}, not {version}"
    if f'set(CPACK_PACKAGE_VERSION "{version}")' not in (pathlib.Path(program).parent / "CPackConfig.cmake").read_text():
        yield f"the package has another version than {version}"


def main():
    root = pathlib.Path(sys.argv[1])
    documents = [d for pattern in DOCUMENTS for d in sorted(root.glob(pattern))]
    code = {f: f.read_text() for pattern in CODE for f in root.glob(pattern)
            if f.is_file() and f.suffix in WRITTEN | {""} and f not in documents}
    known = {"planksheaf"}.union(*(words_of(text) | words_of(str(f.relative_to(root))) for f, text in code.items()))
    wrong = [f"{d.relative_to(root)}: {w}" for d in documents for w in missing(root, d, d.read_text(), known)]
    length = len((root / "DEVELOPERS.md").read_text().split())
    if length > MOST_WORDS:
        wrong.append(f"DEVELOPERS.md: {length} words, more than {MOST_WORDS}")
    wrong += versions_differ(root, sys.argv[2]) if len(sys.argv) > 2 else []
    wrong += version_repeated(root, {f: t for f, t in code.items() if f.name != "CMakeLists.txt"}
                                | {d: d.read_text() for d in [*documents, root / "CHANGELOG.md"]})
    # It would notice: names and paths that are made up of halves, so that they do not stand in this file.
    for made_up in ["make" + "Squirrel", "src/pdf/" + "squirrel.cpp", "--" + "squirr" + "els"]:
        if not list(missing(root, root / "README.md", f"see `{made_up}`", known)):
            wrong.append(f"this test does not notice that '{made_up}' is made up")
    print("\n".join(wrong) or f"{len(documents)} documents speak of what is there")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
