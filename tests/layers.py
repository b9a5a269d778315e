"""Fails when a source folder includes a folder it must not know, a library is used in a folder that is not its
own, or folders or modules (a header and its source) include each other in a circle.

python3 tests/layers.py src"""

import collections
import pathlib
import re
import sys

MAY_INCLUDE = {
    "base": "base",
    "model": "base model",
    "input": "base model input",
    "estimate": "base model estimate",
    "schedule": "base model schedule",
    "forecast": "base model schedule forecast",
    "safety": "base model safety",
    "records": "base model records",
    "sheets": "base model sheets",
    "markup": "base markup",
    "typeset": "base markup typeset model/theme.h",
    "drawings": "base model typeset drawings",
    "pdf": "base typeset pdf",
    "ics": "base ics",
    "app": "base model input estimate schedule forecast records safety sheets markup typeset drawings pdf ics app",
}
OWNERS = {
    r"yaml-cpp/|yaml\.h|fontconfig/": ["input"],
    r"kainjow/": ["sheets"],
    r"md4c": ["markup"],
    r"date/": ["schedule"],
    r"hpdf|png\.h|jpeglib|zlib|libdeflate|hb-subset": ["pdf"],
    r"hyphen\.h": ["typeset"],
    r"hb(-ot)?\.h": ["typeset", "pdf"],
    r"CLI/": ["app"],
    r"nlohmann/": ["app", "forecast"],  # the one writes JSON, the other reads that of weather services
    r"pugixml\.hpp": ["forecast"],
}
# Circles and crowded folders that are being opened, by their first name.
STILL_OPEN = {
    "schedule/weather/hours",
}


def circles(graph):
    """The groups of names that lead back to themselves (Tarjan's strongly connected components)."""
    index, low, stack, found = {}, {}, [], []

    def visit(name):
        index[name] = low[name] = len(index)
        stack.append(name)
        for other in graph[name]:
            if other not in graph or other == name:
                continue
            if other not in index:
                visit(other)
                low[name] = min(low[name], low[other])
            elif other in stack:
                low[name] = min(low[name], index[other])
        if low[name] == index[name]:
            at = stack.index(name)
            if len(stack) - at > 1:
                found.append(sorted(stack[at:]))
            del stack[at:]

    for name in sorted(graph):
        if name not in index:
            visit(name)
    return found


def main():
    sys.setrecursionlimit(10_000)
    root = pathlib.Path(sys.argv[1])
    wrong = []
    modules, folders = collections.defaultdict(set), collections.defaultdict(set)
    files = sorted(f for f in root.rglob("*") if f.suffix in (".h", ".cpp"))
    if not files:
        sys.exit(f"no sources in {root}")
    for file in files:
        path = file.relative_to(root)
        if len(path.parts) > 3:
            wrong.append(f"{path}: folders have one level of sub-folders")
        module, folder = str(path.with_suffix("")), str(path.parent)
        modules[module], folders[folder]
        allowed = MAY_INCLUDE[path.parts[0]].split()
        for line in file.read_text().splitlines():
            own = re.match(r'#include "([^"]+)"', line)
            if own and own[1].split("/")[0] not in allowed and own[1] not in allowed:
                wrong.append(f"{path}: '{path.parts[0]}' must not include '{own[1]}'")
            if own and (root / own[1]).exists():
                modules[module].add(own[1].rsplit(".", 1)[0])
                folders[folder].add(own[1].rsplit("/", 1)[0])
            library = re.match(r"#include <([^>]+)>", line)
            for pattern, owners in OWNERS.items():
                if library and re.match(pattern, library[1]) and path.parts[0] not in owners:
                    wrong.append(f"{path}: only {' and '.join(owners)} may include <{library[1]}>")
    wrong += [f"these modules include each other: {' '.join(c)}" for c in circles(modules) if c[0] not in STILL_OPEN]
    wrong += [f"these folders include each other: {' '.join(c)}" for c in circles(folders)]
    for folder in sorted(folders):
        count = len({m for m in modules if m.rsplit("/", 1)[0] == folder})
        if count > 17 and folder not in STILL_OPEN:
            wrong.append(f"{folder}: {count} modules in one folder")
    print("\n".join(wrong))
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
