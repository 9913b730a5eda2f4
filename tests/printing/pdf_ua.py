"""What of PDF/UA-1 (ISO 14289-1:2014) a reader of the file can check, by the clause it stands in.

The clauses and their numbers are those of an open validator's rules for PDF/UA-1, in our words (its
profile, read); what the tags are is ISO 32000-1, 14.8.4. Left out is what our files have none of:
forms, sound, film, embedded files, encryption, optional content.
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from itertools import pairwise
from typing import Any

import pypdf
from pypdf.generic import ContentStream

_TAGS = """Document Part Art Sect Div BlockQuote Caption TOC TOCI Index NonStruct Private P H H1 H2
H3 H4 H5 H6 L LI Lbl LBody Table TR TH TD THead TBody TFoot Span Quote Note Reference BibEntry Code
Link Annot Ruby RB RT RP Warichu WT WP Figure Formula Form Title"""
STANDARD = frozenset(_TAGS.split())
INSIDE = {
    "TR": {"Table", "THead", "TBody", "TFoot"},
    "THead": {"Table"},
    "TBody": {"Table"},
    "TFoot": {"Table"},
    "TH": {"TR"},
    "TD": {"TR"},
    "LI": {"L"},
    "LBody": {"LI"},
    "TOCI": {"TOC"},
}
ONLY = {
    "Table": {"TR", "THead", "TBody", "TFoot", "Caption"},
    "TR": {"TH", "TD"},
    "L": {"L", "LI", "Caption"},
    "LI": {"Lbl", "LBody"},
    "TOC": {"TOC", "TOCI", "Caption"},
}


def faults_of(made: bytes) -> list[str]:
    """Return every fault as its clause and where it is; none for a file that keeps the rules."""
    reader = pypdf.PdfReader(io.BytesIO(made))
    of_tags = [*_of_document(made, reader), *_of_tags(reader)]
    return [*of_tags, *_of_content(reader), *_of_fonts(reader)]


def _is_true(holder: Any, name: str) -> bool:
    return str(holder.get(name, "")).lower() == "true"


def _of_document(made: bytes, reader: pypdf.PdfReader) -> Iterator[str]:
    root = reader.trailer["/Root"]
    if not re.match(rb"%PDF-1\.[0-7][\r\n]", made):
        yield "6.1 the file does not begin with %PDF-1.n"
    marks = root.get("/MarkInfo", {})
    if not _is_true(marks, "/Marked") or _is_true(marks, "/Suspects"):
        yield "6.2, 7.1-11 the file is not marked as tagged, or as suspect"
    if "/StructTreeRoot" not in root:
        yield "7.1-11 there is no tree of tags"
    data = root["/Metadata"].get_data().decode() if "/Metadata" in root else ""
    if not re.search(r"pdfuaid:part[=>\"']+1", data):
        yield "5-1 the file does not say that it is PDF/UA-1"
    if "dc:title" not in data:
        yield "7.1-9 the metadata have no title"
    if not _is_true(root.get("/ViewerPreferences", {}), "/DisplayDocTitle"):
        yield "7.1-10 the title is not shown"
    if not re.fullmatch(r"[a-z]{2,3}(-[A-Za-z]{2,4})?", str(root.get("/Lang", ""))):
        yield "7.2-34 the language is not said"
    if "/Encrypt" in reader.trailer:
        yield "7.16 the file is encrypted"
    for number, page in enumerate(reader.pages, start=1):
        if "/Annots" in page and page.get("/Tabs") != "/S":
            yield f"7.18.3 page {number} does not go from link to link in the order of its tags"
        for note in page.get("/Annots", ()):
            link = note.get_object()
            if not link.get("/Contents") and "/StructParent" not in link:
                yield f"7.18.5 a link of page {number} is in no tag and says nothing"


def _of_tags(reader: pypdf.PdfReader) -> Iterator[str]:
    tree = reader.trailer["/Root"]["/StructTreeRoot"]
    roles = {str(k)[1:]: str(v)[1:] for k, v in tree.get("/RoleMap", {}).items()}
    levels: list[int] = []
    for tag, node, parent in _walk(tree.get("/K"), "", roles):
        if tag not in STANDARD:
            yield f"7.1-5 {tag} is no tag of the standard"
        if tag in INSIDE and parent not in INSIDE[tag]:
            yield f"7.2 {tag} stands in {parent}"
        kids = [_role(kid, roles) for kid in _kids(node.get("/K")) if _role(kid, roles)]
        if wrong := [kid for kid in kids if tag in ONLY and kid not in ONLY[tag]]:
            yield f"7.2 {tag} holds {wrong[0]}"
        if tag in ("Figure", "Formula") and not str(node.get("/Alt", node.get("/ActualText", ""))):
            yield "7.3-1 a figure has no words"
        if tag == "TH" and not any("/Scope" in one.get_object() for one in _kids(node.get("/A"))):
            yield "7.5-1 a head of a table does not say what it is the head of"
        if tag == "Note" and not node.get("/ID"):
            yield "7.9-1 a note has no name"
        if tag == "H":
            yield "7.4.4 a heading has no level"
        if re.fullmatch(r"H[1-6]", tag):
            levels.append(int(tag[1]))
    if levels and levels[0] != 1:
        yield f"7.4.2-1 the first heading is H{levels[0]}"
    for before, after in pairwise(levels):
        if after > before + 1:
            yield f"7.4.2-1 H{after} follows H{before}"


def _kids(found: Any) -> list[Any]:
    found = found.get_object() if hasattr(found, "get_object") else found
    if found is None:
        return []
    return [one for one in found] if isinstance(found, list) else [found]


def _role(kid: Any, roles: dict[str, str]) -> str:
    node = kid.get_object() if hasattr(kid, "get_object") else kid
    name = str(node.get("/S", ""))[1:] if isinstance(node, dict) else ""
    return roles.get(name, name)


def _walk(found: Any, parent: str, roles: dict[str, str]) -> Iterator[tuple[str, Any, str]]:
    for kid in _kids(found):
        node = kid.get_object() if hasattr(kid, "get_object") else kid
        if isinstance(node, dict) and "/S" in node:
            tag = _role(node, roles)
            yield tag, node, parent
            # what only groups others is looked through, as a reader's own voice does
            within = parent if tag in ("NonStruct", "Div", "Sect", "Part") else tag
            yield from _walk(node.get("/K"), within, roles)


_SHOWS = {b"Tj", b"TJ", b"'", b'"', b"f", b"F", b"f*", b"B", b"B*", b"b", b"b*", b"S", b"s", b"Do",
          b"sh", b"BI", b"INLINE IMAGE"}  # fmt: skip


def _of_content(reader: pypdf.PdfReader) -> Iterator[str]:
    """Find what is drawn or written and is neither in a tag nor marked as an ornament."""
    for number, page in enumerate(reader.pages, start=1):
        depth, loose, inside = 0, 0, []
        for _operands, operator in ContentStream(page.get_contents(), reader).operations:
            if operator in (b"BDC", b"BMC"):
                mark = str(_operands[0])
                if mark == "/Artifact" and any(one != "/Artifact" for one in inside):
                    yield f"7.1-1 page {number}: an ornament within what is read"
                inside.append(mark)
                depth += 1
            elif operator == b"EMC":
                inside.pop()
                depth -= 1
            elif operator in _SHOWS and depth == 0:
                loose += 1
        if loose:
            yield f"7.1-3 page {number}: {loose} things stand in no tag and are no ornament"


def _of_fonts(reader: pypdf.PdfReader) -> Iterator[str]:
    seen = set()
    for page in reader.pages:
        fonts = page.get("/Resources", {}).get("/Font", {})
        for name in fonts:
            font = fonts[name].get_object()
            base = str(font.get("/BaseFont"))
            if base in seen:
                continue
            seen.add(base)
            own = font["/DescendantFonts"][0].get_object() if "/DescendantFonts" in font else font
            holder = own.get("/FontDescriptor", {})
            if not any(f"/FontFile{end}" in holder for end in ("", "2", "3")):
                yield f"7.21.4.1 the face {base} is not in the file"
            if "/ToUnicode" not in font:
                yield f"7.21.7 the face {base} does not tell its letters"
            else:
                told = font["/ToUnicode"].get_object().get_data()
                if re.search(rb"<(0000|FEFF|FFFE)>\s*$", told, re.MULTILINE):
                    yield f"7.21.7-2 the face {base} has letters that are none"
