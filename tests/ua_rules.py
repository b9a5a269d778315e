"""The conditions of PDF/UA-1 (ISO 14289-1) that a machine can check, over the objects of a file.

Each message begins with the failure condition of the Matterhorn Protocol 1.1 (PDF Association, 2021). Numbers with '~', and the
clauses of ISO 14289-1, are given from memory. What this checker does not know is reported as well: silence means checked."""
import re
import xml.etree.ElementTree as xml

from ua_pdf import TrueType, operations, text, to_unicode, widths

# ISO 32000-1:2008, 14.8.4, without the types below it that our files never use; those are reported as unknown.
STANDARD = set("Document Part Art Sect Div BlockQuote Caption NonStruct Private P H H1 H2 H3 H4 H5 H6 L LI Lbl LBody "
               "Table TR TH TD THead TBody TFoot Span Quote Note Reference Code Link Annot Figure".split())
PAINTS = {"f", "F", "f*", "B", "B*", "b", "b*", "S", "s", "sh", "Tj", "TJ", "'", '"', "Do", "EI"}
SHOWS = {"Tj", "TJ", "'", '"'}
# Kept strict, as our files are: no captions and no foot rows.
CHILDREN = {"Table": ({"TR", "THead", "TBody"}, "09-004"), "THead": ({"TR"}, "09-004"), "TBody": ({"TR"}, "09-004"),
            "TR": ({"TH", "TD"}, "09-004"), "L": ({"LI"}, "09-005"), "LI": ({"Lbl", "LBody"}, "09-005")}
PARENTS = {"TR": {"Table", "THead", "TBody"}, "THead": {"Table"}, "TBody": {"Table"}, "TH": {"TR"}, "TD": {"TR"}, "LI": {"L"},
           "Lbl": {"LI"}, "LBody": {"LI"}}
LANGUAGE = re.compile(r"[a-zA-Z]{2,3}(-[a-zA-Z]{4})?(-([a-zA-Z]{2}|\d{3}))?$")  # the part of BCP 47 that is in use here


class Element:
    def __init__(self, reference, dictionary, parent):
        self.reference, self.dictionary, self.parent = reference, dictionary, parent
        self.role = str(dictionary.get("/S", ""))[1:]
        self.children, self.marks, self.annotations = [], [], []  # marks: (page, number)

    def all(self):
        yield self
        for child in self.children:
            yield from child.all()


class Check:
    def __init__(self, pdf):
        self.pdf, self.messages = pdf, []
        self.used = {}  # reference of a font: codes shown in it
        self.marked = set()  # (page, number) of the marks in content streams

    def fail(self, number, words):
        message = f"{number}: {words}"
        if message not in self.messages:
            self.messages.append(message)

    def run(self):
        self.catalogue()
        self.metadata()
        self.structure()
        for page in self.pdf.pages():
            self.content(page)
            self.annotations(page)
        self.marks()
        self.roles()
        self.tables()
        self.headings()
        for font, codes in self.used.items():
            self.font(self.pdf.of(font), codes)
        return self.messages

    def catalogue(self):
        root, of = self.pdf.root, self.pdf.of
        info = of(root.get("/MarkInfo", {}))
        if of(info.get("/Marked")) is not True:
            self.fail("ISO 14289-1, 7.1", "the catalogue does not say Marked true")
        if of(info.get("/Suspects", False)) is not False:
            self.fail("01-007", "Suspects is true")
        preferences = of(root.get("/ViewerPreferences", {}))
        if "/DisplayDocTitle" not in preferences:
            self.fail("07-001", "no DisplayDocTitle")
        elif of(preferences["/DisplayDocTitle"]) is not True:
            self.fail("07-002", "DisplayDocTitle is not true")
        if not LANGUAGE.match(text(of(root.get("/Lang")))):
            for number, of_what in [("11-001", "text on pages"), ("11-002", "alternative texts"), ("11-003", "the outline"),
                                    ("11-004", "the contents of annotations"), ("11-005", "form fields"), ("11-006", "metadata")]:
                self.fail(number, f"the language of {of_what} is not given: no Lang in the catalogue")
        if "/Encrypt" in self.pdf.trailer:
            self.fail("~26-001", "the file is encrypted")
        for key in ["/AcroForm", "/OCProperties", "/Collection", "/OpenAction", "/AA", "/AF"]:
            if key in root:
                self.fail("not checked", f"{key} in the catalogue")
        for key in of(root.get("/Names", {})):
            self.fail("not checked", f"{key} in the name tree")

    def metadata(self):
        stream = self.pdf.root.get("/Metadata")
        data = self.pdf.data(stream) if stream else b""
        if not data:
            return self.fail("06-001", "no XMP metadata")
        tree = xml.fromstring(data)
        part = tree.find(".//{http://www.aiim.org/pdfua/ns/id/}part")
        if part is None or part.text != "1":
            self.fail("06-002", "no PDF/UA identifier")
        title = tree.find(".//{http://purl.org/dc/elements/1.1/}title//{http://www.w3.org/1999/02/22-rdf-syntax-ns#}li")
        if title is None or not (title.text or "").strip():
            self.fail("06-003", "no dc:title")

    def structure(self):
        """Reads the tree of tags and the tree of their parents."""
        of = self.pdf.of
        self.elements, self.owners, self.parents = [], {}, {}
        root = of(self.pdf.root.get("/StructTreeRoot"))
        if not root:
            return self.fail("ISO 14289-1, 7.1", "no StructTreeRoot")
        if root.get("/RoleMap"):
            self.fail("not checked", "a role map (02-001, 02-003, 02-004)")
        kids = of(root.get("/K", []))
        for kid in kids if isinstance(kids, list) else [root["/K"]]:
            self.elements += self.element(kid, None, None).all()
        for element in self.elements:
            for mark in element.marks:
                if mark in self.owners:
                    self.fail("ISO 32000-1, 14.7.4", f"mark {mark[1]} on page {self.number(mark[0])} has two owners")
                self.owners[mark] = element
        nodes = [root["/ParentTree"]] if "/ParentTree" in root else []
        while nodes:
            node = of(nodes.pop())
            nodes += of(node.get("/Kids", []))
            entries = of(node.get("/Nums", []))
            self.parents.update(zip(entries[::2], entries[1::2]))

    def element(self, reference, parent, page):
        of = self.pdf.of
        dictionary = of(reference)
        element = Element(reference, dictionary, parent)
        page = dictionary.get("/Pg", page)
        if parent and dictionary.get("/P") != parent.reference:
            self.fail("ISO 32000-1, 14.7.2", f"{element.role} {reference} names another parent")
        kids = of(dictionary.get("/K", []))
        for kid in kids if isinstance(kids, list) else [dictionary["/K"]]:
            if isinstance(kid, int):
                element.marks.append((page, kid))
                continue
            inner = of(kid)
            if inner.get("/Type") == "/MCR":
                element.marks.append((inner.get("/Pg", page), inner["/MCID"]))
            elif inner.get("/Type") == "/OBJR":
                element.annotations.append(inner["/Obj"])
            else:
                element.children.append(self.element(kid, element, page))
        return element

    def number(self, page):
        pages = self.pdf.pages()
        return pages.index(page) + 1 if page in pages else f"({page})"

    def content(self, page):
        """Everything that paints stands in a tag or is an artifact, and neither stands in the other."""
        of, where = self.pdf.of, f"page {self.number(page)}"
        resources = self.pdf.inherited(page, "/Resources") or {}
        fonts, forms = of(resources.get("/Font", {})), of(resources.get("/XObject", {}))
        open_marks, saved, font = [], [], None  # open marks: 'artifact', 'tag' or 'other'
        for operator, operands in operations(self.pdf.content(page)):
            if operator in ("BMC", "BDC"):
                properties = operands[1] if operator == "BDC" else {}
                if isinstance(properties, str):
                    properties = of(of(resources.get("/Properties", {})).get(properties, {}))
                kind = "artifact" if operands[0] == "/Artifact" else "tag" if "/MCID" in properties else "other"
                if kind == "artifact" and "tag" in open_marks:
                    self.fail("01-003", f"{where}: an artifact inside tagged content")
                if kind == "tag" and "artifact" in open_marks:
                    self.fail("01-004", f"{where}: tagged content inside an artifact")
                if kind == "tag":
                    if (page, properties["/MCID"]) in self.marked:
                        self.fail("ISO 32000-1, 14.7.4", f"{where}: mark {properties['/MCID']} stands there twice")
                    self.marked.add((page, properties["/MCID"]))
                open_marks.append(kind)
            elif operator == "EMC":
                if not open_marks:
                    self.fail("ISO 32000-1, 14.6.1", f"{where}: EMC without a mark")
                else:
                    open_marks.pop()
            elif operator == "q":
                saved.append(font)
            elif operator == "Q":
                font = saved.pop()
            elif operator == "Tf":
                font = fonts.get(operands[0])
            if operator not in PAINTS:
                continue
            if "artifact" not in open_marks and "tag" not in open_marks:
                self.fail("01-005", f"{where}: '{operator}' outside tags and artifacts")
            if operator in SHOWS:
                parts = operands[-1] if isinstance(operands[-1], list) else [operands[-1]]
                shown = b"".join(p for p in parts if isinstance(p, bytes))
                codes = {int.from_bytes(shown[i:i + 2], "big") for i in range(0, len(shown), 2)}
                self.used.setdefault(font, set()).update(codes)
            if operator == "Do" and of(forms.get(operands[0], {})).get("/Subtype") != "/Image":
                self.fail("not checked", f"{where}: {operands[0]} is not a picture")
        if open_marks:
            self.fail("ISO 32000-1, 14.6.1", f"{where}: a mark without EMC")

    def marks(self):
        """Marks, tags and the tree of parents say the same."""
        of = self.pdf.of
        for page, number in self.marked:
            where = f"page {self.number(page)}: mark {number}"
            owner = self.owners.get((page, number))
            if owner is None:
                self.fail("01-005", f"{where} belongs to no tag")
                continue
            row = of(self.parents.get(of(page).get("/StructParents"))) or []
            if number >= len(row) or row[number] != owner.reference:
                self.fail("ISO 32000-1, 14.7.4.4", f"{where}: the tree of parents names another tag")
        for page, number in self.owners:
            if (page, number) not in self.marked:
                self.fail("ISO 32000-1, 14.7.4", f"mark {number} of a tag is not on page {self.number(page)}")

    def annotations(self, page):
        of, where = self.pdf.of, f"page {self.number(page)}"
        annotations = of(of(page).get("/Annots", []))
        if annotations and of(of(page).get("/Tabs")) is None:
            self.fail("~28-008", f"{where}: annotations and no Tabs")
        elif annotations and of(of(page)["/Tabs"]) != "/S":
            self.fail("~28-009", f"{where}: Tabs is not S")
        owners = {annotation: element for element in self.elements for annotation in element.annotations}
        for reference in annotations:
            annotation = of(reference)
            if annotation.get("/Subtype") != "/Link":
                self.fail("not checked", f"{where}: an annotation {annotation.get('/Subtype')}")
            owner = owners.get(reference)
            if owner is None or owner.role != "Link":
                self.fail("~28-011", f"{where}: a link outside a Link tag")
            elif self.parents.get(annotation.get("/StructParent")) != owner.reference:
                self.fail("ISO 32000-1, 14.7.4.4", f"{where}: the tree of parents names another tag for a link")
            if not text(annotation.get("/Contents")).strip():
                self.fail("~28-012", f"{where}: a link without Contents")

    def roles(self):
        seen = set()
        for element in self.elements:
            name, of = element.role, self.pdf.of
            if name not in STANDARD:
                self.fail("02-001", f"'{name}' is not a standard type")
            above = element.parent.role if element.parent else "the root"
            if name in PARENTS and above not in PARENTS[name]:
                self.fail("09-005" if name[0] == "L" else "09-004", f"{name} in {above}")
            if name in CHILDREN:
                allowed, number = CHILDREN[name]
                for child in element.children:
                    if child.role not in allowed:
                        self.fail(number, f"{child.role} in {name}")
                if element.marks:
                    self.fail(number, f"{name} holds content of its own")
            if name == "LI" and "LBody" not in [c.role for c in element.children]:
                self.fail("09-005", "LI without LBody")
            if name == "Figure" and not (text(element.dictionary.get("/Alt")) or text(element.dictionary.get("/ActualText"))).strip():
                self.fail("13-004", "a Figure without alternative text")
            if name == "Link" and not element.annotations:
                self.fail("~28-011", "a Link tag without a link")
            if name == "Note":
                identifier = element.dictionary.get("/ID")
                if not identifier:
                    self.fail("~19-003", "a Note without ID")
                elif identifier in seen:
                    self.fail("~19-004", f"two Notes of ID {identifier}")
                seen.add(identifier)
            if "/Lang" in element.dictionary and not LANGUAGE.match(text(of(element.dictionary["/Lang"]))):
                self.fail("11-001", f"{name}: Lang is not a language")

    def attribute(self, element, key):
        attributes = self.pdf.of(element.dictionary.get("/A", []))
        for one in attributes if isinstance(attributes, list) else [attributes]:
            if key in self.pdf.of(one):
                return self.pdf.of(self.pdf.of(one)[key])
        return None

    def tables(self):
        for table in (e for e in self.elements if e.role == "Table"):
            parts = [c.role for c in table.children]
            if "THead" in parts and (parts[0] != "THead" or parts.count("THead") > 1 or "TBody" not in parts or "TR" in parts):
                self.fail("09-004", f"a table of {', '.join(parts)}: THead comes once, first, with TBody after it")
            rows = [e for e in table.all() if e.role == "TR"]
            if not rows:
                self.fail("09-004", "a table without rows")
            columns = set()
            for group in {row.parent.reference: row.parent for row in rows}.values():
                reaching = []  # cells of rows above: columns, rows still to come
                for row in (e for e in group.children if e.role == "TR"):
                    reaching += [[self.attribute(cell, "/ColSpan") or 1, self.attribute(cell, "/RowSpan") or 1] for cell in row.children]
                    columns.add(sum(wide for wide, _ in reaching))
                    reaching = [[wide, high - 1] for wide, high in reaching if high > 1]
                if reaching:
                    self.fail("ISO 14289-1, 7.2", f"a cell spans {max(high for _, high in reaching)} rows that are not there")
            if len(columns) > 1:
                self.fail("ISO 14289-1, 7.2", f"a table with rows of {sorted(columns)} columns")
            for cell in table.all():
                if cell.role == "TH" and self.attribute(cell, "/Scope") not in ("/Row", "/Column", "/Both"):
                    self.fail("~15-003", "a TH without Scope")

    def headings(self):
        levels = [int(e.role[1]) for e in self.elements if re.fullmatch("H[1-6]", e.role)]
        if levels and levels[0] != 1:
            self.fail("14-002", f"the first heading is H{levels[0]}")
        for before, after in zip(levels, levels[1:]):
            if after > before + 1:
                self.fail("14-003", f"H{after} follows H{before}")
        if "H" in [e.role for e in self.elements]:
            self.fail("~14-007", "H, beside or in place of H1 to H6")

    def font(self, font, codes):
        of = self.pdf.of
        if not isinstance(font, dict) or font.get("/Subtype") != "/Type0" or font.get("/Encoding") != "/Identity-H":
            return self.fail("not checked", "a font that is not of Type0 with Identity-H")
        name = font["/BaseFont"]
        inner = of(of(font["/DescendantFonts"])[0])
        program = of(inner.get("/FontDescriptor", {})).get("/FontFile2")
        letters = to_unicode(self.pdf.data(font["/ToUnicode"])) if "/ToUnicode" in font else {}
        for code in sorted(codes):
            if not letters.get(code):
                self.fail("10-001", f"{name}: code {code} has no letter")
            elif any(c in letters[code] for c in "\0\ufeff\ufffe"):
                self.fail("~31-028", f"{name}: code {code} stands for no letter")
        if 0 in codes:
            self.fail("~31-030", f"{name}: .notdef is shown")
        if inner.get("/Subtype") != "/CIDFontType2":
            return self.fail("not checked", f"{name}: a program that is not TrueType")
        if not program:
            return self.fail("~31-009", f"{name} is not embedded")
        if inner.get("/CIDToGIDMap") != "/Identity":
            self.fail("~31-004", f"{name}: no CIDToGIDMap Identity")
        shapes = TrueType(self.pdf.data(program))
        told, default = widths(self.pdf, inner)
        for code in sorted(codes):
            if code >= shapes.glyphs:
                self.fail("~31-011", f"{name}: glyph {code} is not embedded")
            elif abs(told.get(code, default) - shapes.advance(code)) > 1:
                self.fail("~31-016", f"{name}: glyph {code} has two widths, {told.get(code, default)} and {shapes.advance(code)}")


def check(pdf):
    """All conditions that do not hold."""
    return Check(pdf).run()
