"""Every printed thing as a screen reader hears it: headings, paragraphs and lists, no loose words.

PDF/UA-1 (ISO 14289-1) asks that content stands in tags of its meaning; the names of the tags are
those of ISO 32000-1, 14.8.4 (both from memory).
"""

from __future__ import annotations

import io
import re
from collections import Counter
from pathlib import Path
from typing import Any

import pypdf
import pytest
from click.testing import CliRunner

from stillroom.cli import main

from .conftest import ROOT
from .pdf_ua import faults_of

MEANING = {
    "/P",
    "/Title",
    "/Reference",
    "/H1",
    "/H2",
    "/H3",
    "/Lbl",
    "/LBody",
    "/Figure",
    "/Caption",
    "/TH",
    "/TD",
}
RATAFIA, CHUTNEY = "recipes/quince-ratafia.md", "recipes/quince-chutney.md"
MADE = ("--made-on", "2026-11-25")
# what is printed -> its command, and the least of each tag that it must have
PRINTED: dict[str, tuple[tuple[str, ...], dict[str, int]]] = {
    "cards": (("cards", RATAFIA, CHUTNEY, *MADE), {"/H1": 2, "/P": 12, "/Figure": 2}),
    "folded": (("cards", CHUTNEY, "--size", "folded-a6", *MADE), {"/H1": 1, "/P": 8}),
    "tags": (("tags", RATAFIA, CHUTNEY, *MADE), {"/H1": 2, "/P": 6}),
    "lids": (("tags", RATAFIA, "--shape", "round", "--lid", "62", *MADE), {"/H1": 1, "/P": 3}),
    "year": (("year", "--from", "2027-03-01"), {"/H1": 1, "/H2": 12, "/L": 12, "/LI": 24}),
    "cuts": (("cuts", "--lid", "70", "--box", "80,60,40,20"), {"/H1": 3, "/P": 3}),
    "sheet": (("sheet", CHUTNEY, "--start", "2026-11-28"), {"/H1": 1, "/H2": 3, "/LI": 10}),
    "book": (("book",), {"/H1": 8, "/H2": 20, "/LI": 200, "/P": 300}),
    "wall": (("year", "--paper", "a3", "--from", "2027-03-01"), {"/H1": 1, "/H2": 12, "/LI": 24}),
    "large": (("sheet", CHUTNEY, "--large", "--times", "2"), {"/H1": 1, "/H2": 3, "/LI": 10}),
    "photograph": (
        ("cards", "recipes/felted-bauble.md", "--design", "photograph", *MADE), {"/H1": 1},
    ),
    "winter, folded": (
        ("cards", RATAFIA, "--design", "winter", "--size", "folded-a6", *MADE), {"/H1": 1, "/P": 8},
    ),
    "leaves, large tags": (("tags", RATAFIA, "--design", "leaves", "--large", *MADE), {"/H1": 1}),
    "test sheet": (("test-sheet",), {"/H1": 1, "/P": 6}),
    "cover": (("cover", "--pages", "160"), {"/H1": 1, "/P": 2, "/Figure": 2}),
}  # fmt: skip


def heard(made: bytes) -> tuple[Counter[str], list[str]]:
    """Return how often each tag stands in a PDF, and the way to all that stands in none."""
    tags: Counter[str] = Counter()
    loose: list[str] = []

    def walk(node: Any, held: bool, way: str) -> None:
        node = node.get_object() if hasattr(node, "get_object") else node
        if isinstance(node, list):
            for one in node:
                walk(one, held, way)
        elif isinstance(node, int) or node.get("/Type") == "/MCR":
            loose.extend([] if held else [way])
        elif "/K" in node:
            tag = node.get("/S", "")
            tags[tag] += 1
            walk(node["/K"], held or tag in MEANING, way + tag)

    walk(pypdf.PdfReader(io.BytesIO(made)).trailer["/Root"]["/StructTreeRoot"]["/K"], False, "")
    return tags, loose


@pytest.mark.parametrize("name", PRINTED)
def test_all_words_stand_in_headings_paragraphs_and_lists(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    command, least = PRINTED[name]
    monkeypatch.chdir(ROOT)
    out = tmp_path / "made.pdf"
    done = CliRunner().invoke(main, ["print", *command, "--out", str(out)])
    assert done.exit_code == 0, done.output
    tags, loose = heard(out.read_bytes())
    assert loose == []
    assert {tag: count for tag, count in least.items() if tags[tag] < count} == {}, tags
    assert faults_of(out.read_bytes()) == []


def test_what_breaks_a_rule_is_found(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Each rule is broken once in a copy of a sheet, so that none of them can only pass."""
    monkeypatch.chdir(ROOT)
    command, _ = PRINTED["sheet"]
    done = CliRunner().invoke(main, ["print", *command, "--out", str(tmp_path / "made.pdf")])
    assert done.exit_code == 0, done.output
    printed = (tmp_path / "made.pdf").read_bytes()
    assert faults_of(printed) == []
    breaks: dict[str, tuple[bytes, bytes]] = {
        "7.1-10": (b"/DisplayDocTitle true", b"/DisplayDocTitle null"),
        "6.2": (b"/Marked true", b"/Marked null"),
        "7.2-34": (b"/Lang(en-GB)", b"/Lang(?????)"),
        "5-1": (b"pdfuaid:part>1", b"pdfuaid:part>2"),
        "7.3-1": (b"/Alt", b"/Alx"),
        "7.4.2-1": (b"/S/H1", b"/S/H3"),
        "7.21.7": (b"/ToUnicode", b"/ToUnicodx"),
        "7.21.4.1": (b"/FontFile", b"/FontFilx"),
        "7.2 LI stands": (b"/S/L/", b"/S/P/"),
    }
    for clause, (found, wrong) in breaks.items():
        spaced = re.sub(re.escape(found).replace(rb"/", rb"\s*/"), wrong, printed)
        assert spaced != printed, clause
        assert [fault for fault in faults_of(spaced) if fault.startswith(clause)], clause
