"""A PDF as objects, for the checks of ua_check.py: read through qpdf's JSON (version 2), with the content streams taken
apart and what is needed of the embedded fonts."""
import base64
import json
import re
import struct
import subprocess


class Pdf:
    """Values are those of qpdf's JSON: '/Name', 'u:text', 'b:hex', '12 0 R', numbers, lists and dictionaries."""

    def __init__(self, path):
        done = subprocess.run(["qpdf", "--json", "--json-stream-data=inline", "--decode-level=generalized", str(path)],
                              capture_output=True, text=True)
        if done.returncode:
            raise ValueError(f"{path}: qpdf says {done.stderr}")
        self.objects = json.loads(done.stdout)["qpdf"][1]
        self.trailer = self.objects["trailer"]["value"]
        self.root = self.of(self.trailer["/Root"])

    def entry(self, reference):
        return self.objects.get(f"obj:{reference}", {})

    def of(self, value):
        """What a reference stands for; a stream is its dictionary."""
        while isinstance(value, str) and re.fullmatch(r"\d+ \d+ R", value):
            entry = self.entry(value)
            value = entry["stream"]["dict"] if "stream" in entry else entry.get("value")
        return value

    def data(self, reference):
        return base64.b64decode(self.entry(reference).get("stream", {}).get("data", ""))

    def pages(self):
        """References of the pages in order."""
        def below(node):
            kids = self.of(node).get("/Kids")
            return [node] if kids is None else [page for kid in kids for page in below(kid)]
        return below(self.root["/Pages"])

    def inherited(self, page, key):
        while page is not None:
            page = self.of(page)
            if key in page:
                return self.of(page[key])
            page = page.get("/Parent")
        return None

    def content(self, page):
        parts = self.of(page).get("/Contents", [])
        is_list = not isinstance(parts, str) or isinstance(self.of(parts), list)
        return b"\n".join(self.data(p) for p in (self.of(parts) if is_list else [parts]))


def text(value):
    """A text string, decoded."""
    if not isinstance(value, str):
        return ""
    return value[2:] if value.startswith("u:") else bytes.fromhex(value[2:]).decode("latin-1") if value.startswith("b:") else ""


TOKEN = re.compile(rb"%[^\r\n]*|(?P<hex><[0-9A-Fa-f\s]*>)|(?P<mark><<|>>|\[|\])|(?P<open>\()|(?P<word>/?[^\s()<>\[\]/%]+|/)")
ESCAPES = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f"}


def literal(data, at):
    """The string that opens before `at`, and where it ends: ISO 32000-1:2008, 7.3.4.2."""
    out, depth = b"", 1
    while True:
        c = data[at:at + 1]
        at += 1
        if c == b"":
            raise ValueError("a string in a content stream does not end")
        if c == b"\\":
            octal = re.compile(rb"[0-7]{1,3}").match(data, at)
            if octal:
                out, at = out + bytes([int(octal.group(), 8) & 255]), octal.end()
                continue
            c = data[at:at + 1]
            at += 1
            if c in b"\r\n":
                at += c == b"\r" and data[at:at + 1] == b"\n"
                continue
            out += ESCAPES.get(c, c)
            continue
        depth += (c == b"(") - (c == b")")
        if depth == 0:
            return out, at
        out += c


def operations(data):
    """(operator, operands) of a content stream. Strings are bytes, names and operators str."""
    stack, at = [[]], 0
    while match := TOKEN.search(data, at):
        at = match.end()
        if match["hex"] is not None:
            digits = re.sub(rb"\s", b"", match["hex"][1:-1])
            stack[-1].append(bytes.fromhex((digits + b"0" * (len(digits) % 2)).decode()))
        elif match["open"]:
            string, at = literal(data, at)
            stack[-1].append(string)
        elif match["mark"] in (b"[", b"<<"):
            stack.append([])
        elif match["mark"]:
            inner = stack.pop()
            stack[-1].append(inner if match["mark"] == b"]" else dict(zip(inner[::2], inner[1::2])))
        elif match["word"]:
            word = match["word"].decode("latin-1")
            if word[0] == "/":
                stack[-1].append(word)
            elif re.fullmatch(r"[+-]?(\d+\.?\d*|\.\d+)", word):
                stack[-1].append(float(word) if "." in word else int(word))
            elif word in ("true", "false", "null"):
                stack[-1].append({"true": True, "false": False, "null": None}[word])
            else:
                yield word, stack[-1]
                stack = [[]]


class TrueType:
    """Number of glyphs and advances of an embedded program: OpenType 1.9, head, hhea, hmtx, maxp."""

    def __init__(self, data):
        tables = {}
        for i in range(struct.unpack(">H", data[4:6])[0]):
            tag, _, offset, length = struct.unpack(">4sIII", data[12 + 16 * i:28 + 16 * i])
            tables[tag] = data[offset:offset + length]
        self.units = struct.unpack(">H", tables[b"head"][18:20])[0]
        self.glyphs = struct.unpack(">H", tables[b"maxp"][4:6])[0]
        self.long_metrics = struct.unpack(">H", tables[b"hhea"][34:36])[0]
        self.hmtx = tables[b"hmtx"]

    def advance(self, glyph):
        """In thousandths of an em."""
        at = 4 * min(glyph, self.long_metrics - 1)
        return struct.unpack(">H", self.hmtx[at:at + 2])[0] * 1000 / self.units


def to_unicode(data):
    """{code: letters} of a ToUnicode CMap: ISO 32000-1:2008, 9.10.3."""
    letters = {}
    for block in re.findall(rb"beginbfchar(.*?)endbfchar", data, re.S):
        for code, to in re.findall(rb"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]*)>", block):
            letters[int(code, 16)] = bytes.fromhex(to.decode()).decode("utf-16-be", "replace")
    for block in re.findall(rb"beginbfrange(.*?)endbfrange", data, re.S):
        for first, last, to in re.findall(rb"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>", block):
            for i in range(int(last, 16) - int(first, 16) + 1):
                letters[int(first, 16) + i] = (int(to, 16) + i).to_bytes(len(to) // 2, "big").decode("utf-16-be", "replace")
    return letters


def widths(pdf, font):
    """{code: width} and the default of a CID font's /W and /DW."""
    out, entries = {}, list(pdf.of(font.get("/W", [])))
    while entries:
        first, second = entries.pop(0), pdf.of(entries.pop(0))
        if isinstance(second, list):
            out.update((first + i, w) for i, w in enumerate(second))
        else:
            width = entries.pop(0)
            out.update((code, width) for code in range(first, second + 1))
    return out, font.get("/DW", 1000)
