"""Spoils a good document in one way at a time; the checker has to name the condition that is broken."""
import base64
import re

from ua_pdf import Pdf
from ua_rules import check


class NothingToSpoil(Exception):
    pass


def dictionaries(pdf):
    for entry in pdf.objects.values():
        value = entry.get("value") or entry.get("stream", {}).get("dict")
        if isinstance(value, dict):
            yield value


def tags(pdf, role):
    return [d for d in dictionaries(pdf) if "/P" in d and d.get("/S") == "/" + role]


def first(pdf, role):
    found = tags(pdf, role)
    if not found:
        raise NothingToSpoil
    return found[0]


def fonts(pdf):
    return [d for d in dictionaries(pdf) if d.get("/Subtype") in ("/Type0", "/CIDFontType2")]


def rewrite(pdf, reference, pattern, to):
    """Changes the first match in a stream."""
    stream = pdf.entry(reference)["stream"]
    data, n = re.subn(pattern, to, pdf.data(reference), count=1, flags=re.S)
    if n == 0:
        raise NothingToSpoil
    stream["data"] = base64.b64encode(data).decode()


def on_page(pattern, to):
    return lambda pdf: rewrite(pdf, pdf.of(pdf.pages()[0])["/Contents"], pattern, to)


def in_metadata(pattern, to):
    return lambda pdf: rewrite(pdf, pdf.root["/Metadata"], pattern, to)


def without(role, key):
    return lambda pdf: first(pdf, role).pop(key)


def renamed(role, to):
    return lambda pdf: first(pdf, role).update({"/S": "/" + to})


def each(key, value):
    """Changes every dictionary of a kind."""
    def spoiler(change):
        def spoil(pdf):
            found = [d for d in dictionaries(pdf) if d.get(key) == value]
            if not found:
                raise NothingToSpoil
            for d in found:
                change(d)
        return spoil
    return spoiler


link, page = each("/Subtype", "/Link"), each("/Type", "/Page")


def shorten_row(pdf):
    rows = [tr for tr in tags(pdf, "TR") if isinstance(pdf.of(pdf.of(tr["/P"])["/K"]), list)]
    if not rows:  # none has others to differ from
        raise NothingToSpoil
    row = rows[-1]
    row["/K"] = row["/K"][:-1]


def span(change):
    def spoil(pdf):
        found = [d for d in dictionaries(pdf) if d.get("/O") == "/Table" and "/RowSpan" in d]
        if not found:
            raise NothingToSpoil
        found[-1]["/RowSpan"] += change
    return spoil


def forget_letter(pdf):
    for font in fonts(pdf):
        if "/ToUnicode" in font:
            rewrite(pdf, font["/ToUnicode"], rb"beginbfchar\n<.*?>\n", b"beginbfchar\n")


def widen(pdf):
    for font in fonts(pdf):
        if "/W" in font:
            font["/W"][1] = [w + 2 for w in font["/W"][1]]


def forget_programs(pdf):
    for d in dictionaries(pdf):
        d.pop("/FontFile2", None)


def cross_parents(pdf):
    nums = pdf.of(pdf.of(pdf.root["/StructTreeRoot"])["/ParentTree"])["/Nums"]
    nums[1] = list(reversed(nums[1]))


SPOILS = [
    ("artifact in a tag", "01-003", on_page(rb"(/P<</MCID \d+>>BDC\n)", rb"\1/Artifact BMC EMC ")),
    ("tag in an artifact", "01-004", on_page(rb"(/P<</MCID \d+>>BDC\n)", rb"/Artifact BMC\n\1")),
    ("text without a tag", "01-005", on_page(rb"/P<</MCID \d+>>BDC\n(.*?)EMC\n", rb"\1")),
    ("drawing without a mark", "01-005", on_page(rb"/Artifact BMC\n(.*?)EMC\n", rb"\1")),
    ("mark of no tag", "01-005", on_page(rb"/MCID 1>>", b"/MCID 9999>>")),
    ("mark that is gone", "ISO 32000-1, 14.7.4", on_page(rb"/P<</MCID \d+>>BDC\n.*?EMC\n", b"")),
    ("mark left open", "ISO 32000-1, 14.6.1", on_page(rb"EMC\n$", b"")),
    ("Suspects", "01-007", lambda pdf: pdf.of(pdf.root["/MarkInfo"]).update({"/Suspects": True})),
    ("not Marked", "ISO 14289-1, 7.1", lambda pdf: pdf.root.pop("/MarkInfo")),
    ("no tree of tags", "ISO 14289-1, 7.1", lambda pdf: pdf.root.pop("/StructTreeRoot")),
    ("tree of parents", "ISO 32000-1, 14.7.4.4", cross_parents),
    ("unknown role", "02-001", renamed("P", "Paragraph")),
    ("no XMP", "06-001", lambda pdf: pdf.root.pop("/Metadata")),
    ("no identifier", "06-002", in_metadata(b"<pdfuaid:part>1", b"<pdfuaid:part>")),
    ("no title", "06-003", in_metadata(b"<dc:title>.*?</dc:title>", b"")),
    ("no DisplayDocTitle", "07-001", lambda pdf: pdf.root.pop("/ViewerPreferences")),
    ("DisplayDocTitle false", "07-002", lambda pdf: pdf.root.update({"/ViewerPreferences": {"/DisplayDocTitle": False}})),
    ("cell beside rows", "09-004", renamed("TR", "TD")),
    ("head of a table as body", "09-004", renamed("TBody", "THead")),
    ("paragraph in a list", "09-005", renamed("LI", "P")),
    ("item without body", "09-005", renamed("LBody", "Lbl")),
    ("short row", "ISO 14289-1, 7.2", shorten_row),
    ("row head over too few rows", "ISO 14289-1, 7.2", span(-1)),
    ("row head over too many rows", "ISO 14289-1, 7.2", span(+100)),
    ("letter without Unicode", "10-001", forget_letter),
    ("no language", "11-001", lambda pdf: pdf.root.pop("/Lang")),
    ("no language", "11-006", lambda pdf: pdf.root.pop("/Lang")),
    ("language that is none", "11-001", lambda pdf: pdf.root.update({"/Lang": "u:English (UK)"})),
    ("figure without words", "13-004", without("Figure", "/Alt")),
    ("H2 first", "14-002", renamed("H1", "H2")),
    ("level skipped", "14-003", renamed("H2", "H3")),
    ("head without Scope", "~15-003", without("TH", "/A")),
    ("encrypted", "~26-001", lambda pdf: pdf.trailer.update({"/Encrypt": {}})),
    ("no Tabs", "~28-008", page(lambda d: d.pop("/Tabs"))),
    ("Tabs by rows", "~28-009", page(lambda d: d.update({"/Tabs": "/R"}))),
    ("link outside Link", "~28-011", renamed("Link", "Span")),
    ("link without Contents", "~28-012", link(lambda d: d.pop("/Contents"))),
    ("another annotation", "not checked", link(lambda d: d.update({"/Subtype": "/Widget"}))),
    ("no CIDToGIDMap", "~31-004", lambda pdf: [f.pop("/CIDToGIDMap", 0) for f in fonts(pdf)]),
    ("font not embedded", "~31-009", forget_programs),
    ("widths apart", "~31-016", widen),
    (".notdef shown", "~31-030", on_page(rb"\] ?TJ", rb"<0000>] TJ")),
]


def unseen(files):
    """The spoils that the checker did not report, each tried on the first document that has what it spoils."""
    missed = []
    for what, number, spoil in SPOILS:
        for file in files:
            pdf = Pdf(file)
            try:
                spoil(pdf)
            except NothingToSpoil:
                continue
            messages = check(pdf)
            if not any(m.startswith(number + ":") for m in messages):
                missed.append(f"{what} ({number}) in {file.name}: {messages[:3]}")
            break
        else:
            missed.append(f"{what} ({number}): no document to spoil")
    return missed
