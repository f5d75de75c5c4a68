"""Checks documents, as pikepdf (qpdf) reads them, clause by clause: ISO 19005-2 (PDF/A-2, level U) and the tags of
ISO 32000-1, 14.7 to 14.9; numbers of clauses from memory. Prints a JSON object for each document: what is wrong by clause, and what was counted.

    pdf_rules.py FILE...
    pdf_rules.py --spoil FILE   breaks one thing after the other in copies in memory, and prints what is found first
"""
import io
import json
import re
import struct
import sys
import xml.etree.ElementTree as ET

import pikepdf
from PIL import Image, ImageCms

# Operators of ISO 32000-1, annex A, that the documents use, and no others.
OPERATORS = set("q Q cm w J j d m l c h re S f* B* G g rg BT ET Td Tf Tj Do BDC BMC EMC".split())
PAINTING = set("S f* B* Tj Do".split())
LEAST = 2.0  # mm, of the body of letters
RDF = "{http://www.w3.org/1999/02/22-rdf-syntax-ns#}"
DC = "{http://purl.org/dc/elements/1.1/}"
XMP = "{http://ns.adobe.com/xap/1.0/}"
PDF = "{http://ns.adobe.com/pdf/1.3/}"
PDFAID = "{http://www.aiim.org/pdfa/ns/id/}"


class Found(Exception):
    """The first fault, where one is enough."""


class Document:
    def __init__(self, pdf, raw, first=False):
        self.pdf, self.raw, self.first, self.faults, self.counts = pdf, raw, first, [], {}
        self.small = []

    def need(self, clause, holds, what):
        if holds:
            return
        self.faults.append({"clause": clause, "what": what})
        if self.first:
            raise Found

    def count(self, what, n=1):
        self.counts[what] = self.counts.get(what, 0) + n

    def check(self):
        self.file()
        self.color()
        self.fonts()
        self.objects()
        self.metadata()
        self.structure()
        for i, page in enumerate(self.pdf.pages):
            self.page(i + 1, page)

    def file(self):
        self.need("A-2 6.1.2", re.match(rb"%PDF-1\.[0-7]\n%[\x80-\xff]{4}", self.raw), "head of the file")
        self.need("A-2 6.1.3", re.search(rb"startxref\n\d+\n%%EOF\n?$", self.raw), "end of the file")
        ids = self.pdf.trailer.get("/ID")
        self.need("A-2 6.1.3", ids is not None and len(ids) == 2 and all(len(bytes(i)) >= 16 for i in ids), "file identifier")
        self.need("A-2 6.1.3", "/Encrypt" not in self.pdf.trailer, "encrypted")
        root = self.pdf.Root
        for clause, key in (("A-2 6.4", "/AcroForm"), ("A-2 6.5", "/OpenAction"), ("A-2 6.5", "/AA"),
                            ("A-2 6.9", "/OCProperties"), ("A-2 6.11", "/Requirements"), ("A-2 6.1.12", "/Perms")):
            self.need(clause, key not in root, key + " in the catalogue")
        self.need("A-2 6.8", "/Names" not in root, "embedded files")

    def objects(self):
        self.need("A-2 6.1.13", len(self.pdf.objects) <= 8388607, "objects")
        for o in self.pdf.objects:
            if isinstance(o, pikepdf.Stream):
                for key in ("/F", "/FFilter", "/FDecodeParms"):
                    self.need("A-2 6.1.7.1", key not in o, "a stream outside the file")
                self.need("A-2 6.1.7.2", o.get("/Filter", "/FlateDecode") == "/FlateDecode", "filter " + str(o.get("/Filter")))
                sub = o.get("/Subtype")
                self.need("A-2 6.2.8", sub != "/Image", "a picture")
                if sub == "/Form":
                    for key in ("/OPI", "/PS", "/Ref", "/Group", "/SMask"):
                        self.need("A-2 6.2.9", key not in o, key + " in a form")
                    self.need("A-2 6.2.2", "/Resources" in o, "a form without resources")
                    self.content(o, "a form", marked=False)
            if isinstance(o, pikepdf.Dictionary):
                self.need("A-2 6.2.10", "/SMask" not in o and "/ca" not in o and "/CA" not in o, "transparency")

    def color(self):
        intents = self.pdf.Root.get("/OutputIntents", [])
        self.need("A-2 6.2.3", len(intents) == 1, "output intents")
        for i in intents:
            self.need("A-2 6.2.3", i.get("/S") == "/GTS_PDFA1" and "/OutputConditionIdentifier" in i, "output intent")
            profile = i.get("/DestOutputProfile")
            if profile is None:
                self.need("A-2 6.2.3", False, "no profile")
                continue
            data = profile.read_bytes()
            if profile.get("/N") != 3 or len(data) < 128:
                self.need("A-2 6.2.3", False, "profile")
                continue
            self.need("A-2 6.2.3", profile.get("/N") == 3 and data[12:20] == b"mntrRGB " and data[36:40] == b"acsp", "profile")
            # A library of color takes it, and finds the colors of sRGB as it knows them.
            ours, theirs = ImageCms.getOpenProfile(io.BytesIO(data)), ImageCms.createProfile("sRGB")
            image = Image.new("RGB", (9 ** 3, 1))
            image.putdata([(r * 255 // 8, g * 255 // 8, b * 255 // 8) for r in range(9) for g in range(9) for b in range(9)])
            other = ImageCms.profileToProfile(image, ours, theirs)
            off = max(abs(a - b) for p, q in zip(image.getdata(), other.getdata()) for a, b in zip(p, q))
            self.need("A-2 6.2.3", off <= 1, "the profile is not sRGB: off by %d of 255" % off)

    def fonts(self):
        self.letters = {}
        for o in self.pdf.objects:
            if not isinstance(o, pikepdf.Dictionary) or o.get("/Subtype") != "/Type0":
                continue
            below = o.DescendantFonts[0]
            described = below.FontDescriptor
            self.need("A-2 6.2.11.4.1", "/FontFile2" in described, "letters are not embedded")
            self.need("A-2 6.2.11.3.2", isinstance(below.get("/CIDToGIDMap"), pikepdf.Stream), "no map to glyphs")
            self.need("A-2 6.2.11.3.3", o.Encoding == "/Identity-H", "encoding")
            named = set()
            if "/ToUnicode" in o:
                text = o.ToUnicode.read_bytes().decode("ascii")
                for block in re.findall(r"beginbfchar\n(.*?)endbfchar", text, re.S):
                    for code, to in re.findall(r"<(\w{4})> <(\w{4})>", block):
                        self.need("A-2 6.2.11.7.2", int(to, 16) not in (0, 0xFEFF, 0xFFFE), "maps to U+" + to)
                        named.add(int(code, 16))
            glyphs = below.CIDToGIDMap.read_bytes()
            widths, list_ = {}, list(below.W)
            for code, row in zip(list_[::2], list_[1::2]):
                for k, w in enumerate(row):
                    widths[int(code) + k] = float(w)
            if "/FontFile2" in described:
                self.measure(described.FontFile2.read_bytes(), glyphs, widths)
            self.letters[o.objgen] = (named, glyphs)

    def measure(self, font, glyphs, widths):
        tables = {}
        for i in range(struct.unpack(">H", font[4:6])[0]):
            tag, _, at, long = struct.unpack(">4sIII", font[12 + 16 * i:28 + 16 * i])
            tables[tag] = font[at:at + long]
        em = struct.unpack(">H", tables[b"head"][18:20])[0]
        many = struct.unpack(">H", tables[b"hhea"][34:36])[0]
        for code, width in widths.items():
            g = min(struct.unpack(">H", glyphs[2 * code:2 * code + 2])[0], many - 1)
            real = struct.unpack(">H", tables[b"hmtx"][4 * g:4 * g + 2])[0] * 1000 / em
            self.need("A-2 6.2.11.5", abs(real - width) <= 1, "width of %04X: %g, in the font %g" % (code, width, real))
            self.count("letters")

    def metadata(self):
        root, info = self.pdf.Root, self.pdf.trailer.get("/Info", {})
        if "/Metadata" not in root:
            self.need("A-2 6.6.2.1", False, "no metadata")
            return
        raw = root.Metadata.read_raw_bytes()
        self.need("A-2 6.6.2.1", re.match(rb'<\?xpacket begin="\xef\xbb\xbf" id="W5M0MpCehiHzreSzNTczkc9d"\?>', raw), "head of the metadata")
        tree = ET.fromstring(raw)
        def value(tag):
            found = tree.find(".//" + tag)
            if found is None:
                return None
            inner = found.find(".//" + RDF + "li")
            return (found if inner is None else inner).text or ""
        self.need("A-2 6.6.4", value(PDFAID + "part") == "2" and value(PDFAID + "conformance") == "U", "which standard")
        for tag, key in ((DC + "title", "/Title"), (DC + "description", "/Subject"), (XMP + "CreatorTool", "/Creator"),
                         (PDF + "Producer", "/Producer")):
            self.need("A-2 6.6.2.3", value(tag) == str(info.get(key, "")), key + " is said in two ways")
        self.need("14.3.3", str(info.get("/Title", "")) != "", "no title")
        self.need("12.2", root.get("/ViewerPreferences", {}).get("/DisplayDocTitle") is True, "the title is not shown")
        self.need("14.9.2", str(root.get("/Lang", "")) == "en-US", "no language")

    def page(self, number, page):
        for clause, key in (("A-2 6.3", "/Annots"), ("A-2 6.5", "/AA"), ("A-2 6.10", "/PresSteps"), ("A-2 6.2.10", "/Group")):
            self.need(clause, key not in page.obj, "%s on page %d" % (key, number))
        self.need("A-2 6.2.2", "/Resources" in page.obj, "page %d has no resources of its own" % number)
        long = [float(v) for v in page.MediaBox]
        self.need("A-2 6.1.13", all(3 <= v <= 14400 for v in (long[2] - long[0], long[3] - long[1])), "size of page %d" % number)
        marks = self.content(page.obj, "page %d" % number, marked=True)
        self.count("pages")
        if marks:
            self.need("14.7.4.4", "/StructParents" in page.obj, "page %d does not lead to elements" % number)
        self.owners(page.obj, marks)

    def content(self, holder, name, marked):
        """Reads a content stream, and gives the numbers of its marked stretches in order."""
        deep, open_, marks, font, size = 0, [], [], None, 0
        fonts = holder.Resources.Font if "/Resources" in holder else {}
        for operands, operator in pikepdf.parse_content_stream(holder):
            op = str(operator)
            self.need("A-2 6.2.2", op in OPERATORS, "%s: operator %s" % (name, op))
            if op == "q":
                deep += 1
                self.need("A-2 6.1.13", deep <= 28, name + ": states within states")
            elif op == "Q":
                deep -= 1
            elif op in ("BDC", "BMC"):
                self.need("14.6.1", not open_, name + ": a stretch within a stretch")
                open_.append(op)
                if op == "BDC":
                    marks.append(int(operands[1].MCID))
            elif op == "EMC":
                self.need("14.6.1", open_, name + ": the end of no stretch")
                open_ = open_[:-1]
            elif op == "Tf":
                font, size = fonts[str(operands[0])], float(operands[1]) / 72 * 25.4
            elif op == "Tj":
                named, glyphs = self.letters.get(font.objgen, (set(), b""))
                text = bytes(operands[0])
                if size < LEAST - 0.005:
                    self.small.append("%s: %s" % (name, text.decode("utf-16-be")))
                for code in struct.unpack(">%dH" % (len(text) // 2), text):
                    self.need("A-2 6.2.11.7.2", code in named, "%s: U+%04X has no character" % (name, code))
                    self.need("A-2 6.2.11.8", glyphs[2 * code:2 * code + 2] > b"\0\0", "%s: U+%04X has no glyph" % (name, code))
            if marked and op in PAINTING:
                self.need("14.8.2.2", open_, name + ": something is neither of an element nor an artifact")
        self.need("8.4.2", deep == 0 and not open_, name + " does not end what it began")
        self.need("14.7.4.2", marks == list(range(len(marks))), name + ": numbers of stretches")
        return marks

    def owners(self, page, marks):
        if not marks or "/StructParents" not in page or "/StructTreeRoot" not in self.pdf.Root:
            return
        if not hasattr(self, "parents"):
            nums = list(self.pdf.Root.StructTreeRoot.ParentTree.Nums)
            self.parents = {int(k): v for k, v in zip(nums[::2], nums[1::2])}
        list_ = list(self.parents[int(page.StructParents)])
        self.need("14.7.4.4", len(list_) == len(marks), "elements of the stretches of a page")
        for m, element in zip(marks, list_):
            own = [k for k in kids(element) if isinstance(k, int)]
            self.need("14.7.4.4", m in own and element.Pg.objgen == page.objgen, "a stretch leads to another element")

    def structure(self):
        root = self.pdf.Root
        self.need("14.7.1", root.get("/MarkInfo", {}).get("/Marked") is True and "/StructTreeRoot" in root, "not tagged")
        if "/StructTreeRoot" not in root:
            return
        self.level = 0
        tree = root.StructTreeRoot
        for k in kids(tree):
            self.element(k, tree, "")

    def element(self, e, parent, above):
        kind = str(e.S)[1:]
        self.count(kind)
        self.need("14.7.2", e.P.objgen == parent.objgen, kind + " has another parent")
        self.need("14.8.4", kind in ("Document", "Div", "H1", "H2", "H3", "P", "Figure", "Table", "TR", "TH", "TD"), kind)
        if re.fullmatch("H[1-6]", kind):
            self.need("14.8.4.3.2", int(kind[1]) <= self.level + 1, "%s after a heading of level %d" % (kind, self.level))
            self.level = int(kind[1])
        if kind == "Figure":
            self.need("14.9.3", str(e.get("/Alt", "")).strip() != "", "a figure without words")
        self.need("14.8.4.3.4", {"TR": above == "Table", "TH": above == "TR", "TD": above == "TR"}.get(kind, True), kind + " in " + above)
        inner = [k for k in kids(e) if not isinstance(k, int)]
        if kind == "Table":
            wide = {len(kids(r)) for r in inner}
            self.need("14.8.4.3.4", len(wide) == 1, "rows of %s cells in a table" % sorted(wide))
        for k in inner:
            self.element(k, e, kind)


def kids(e):
    list_ = e.get("/K", pikepdf.Array())
    list_ = list(list_) if isinstance(list_, pikepdf.Array) else [list_]
    return [k if isinstance(k, pikepdf.Object) else int(k) for k in list_]


def first(pdf, kind):
    return next(o for o in pdf.objects if isinstance(o, pikepdf.Dictionary) and o.get("/S") == kind)


def font(pdf):
    return next(o for o in pdf.objects if isinstance(o, pikepdf.Dictionary) and o.get("/Subtype") == "/Type0")


def spoil(pdf, name):
    """Breaks one thing; without a name it gives all names."""
    root = pdf.Root
    page = pdf.pages[0].obj
    change = {
        "id": lambda: pdf.trailer.__delitem__("/ID"),
        "intent": lambda: root.__delitem__("/OutputIntents"),
        "profile": lambda: root.OutputIntents[0].DestOutputProfile.write(
            root.OutputIntents[0].DestOutputProfile.read_bytes().replace(b"\0\2\x66\x66", b"\0\1\x66\x66")),
        "metadata": lambda: root.__delitem__("/Metadata"),
        "title": lambda: pdf.trailer.Info.__setitem__("/Title", "Another"),
        "shown": lambda: root.__delitem__("/ViewerPreferences"),
        "language": lambda: root.__delitem__("/Lang"),
        "embedded": lambda: font(pdf).DescendantFonts[0].FontDescriptor.__delitem__("/FontFile2"),
        "unicode": lambda: font(pdf).__delitem__("/ToUnicode"),
        "glyph": lambda: font(pdf).DescendantFonts[0].CIDToGIDMap.write(bytes(1 << 17)),
        "width": lambda: font(pdf).DescendantFonts[0].W[1].__setitem__(0, 1234),
        "annotation": lambda: page.__setitem__("/Annots", pikepdf.Array()),
        "group": lambda: page.__setitem__("/Group", pikepdf.Dictionary()),
        "operator": lambda: page.Contents.write(page.Contents.read_bytes() + b"\n/Name sh\n"),
        "loose": lambda: page.Contents.write(page.Contents.read_bytes() + b"\n0 0 m 9 9 l S\n"),
        "owner": lambda: root.StructTreeRoot.ParentTree.Nums[1].__setitem__(0, first(pdf, "/TR")),
        "marked": lambda: root.__delitem__("/MarkInfo"),
        "heading": lambda: first(pdf, "/H1").__setitem__("/S", pikepdf.Name("/H3")),
        "alt": lambda: first(pdf, "/Figure").__delitem__("/Alt"),
        "cell": lambda: first(pdf, "/TR").K.__delitem__(0),
        "row": lambda: first(pdf, "/TR").__setitem__("/S", pikepdf.Name("/P")),
    }
    if not name:
        return sorted(change)
    change[name]()


def main(args):
    spoiled = args[0] == "--spoil"
    for path in args[1 if spoiled else 0:]:
        with open(path, "rb") as f:
            raw = f.read()
        for name in spoil(pikepdf.open(io.BytesIO(raw)), "") if spoiled else [""]:
            pdf = pikepdf.open(io.BytesIO(raw))
            if name:
                spoil(pdf, name)
            d = Document(pdf, raw, first=spoiled)
            try:
                d.check()
            except Found:
                pass
            print(json.dumps({"file": path, "spoiled": name, "faults": d.faults[:20], "counts": d.counts,
                              "small": d.small}))


main(sys.argv[1:])
