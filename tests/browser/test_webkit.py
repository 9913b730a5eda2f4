"""What WebKit prints, measured: Debian's WebKitGTK, the engine of Safari's family on Linux."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pypdfium2
import pytest
import zxingcpp

from sampling import is_whole
from stillroom.looks.card_designs import designs_of

from .conftest import no_browser
from .test_designs import FEW, PAIRS, THINGS, sides_of
from .test_other_hands import widest_rule

PRINTER = Path(__file__).parent / "webkit_printer.py"
SYSTEM_PYTHON = "/usr/bin/python3"
HAS_BINDINGS = "import gi; gi.require_version('WebKit2', '4.1'); from gi.repository import WebKit2"
CHOOSE = """(() => {
  window.print = () => {};
  const form = document.querySelector(".print-room-form");
  form.elements.thing.value = "%s";
  form.elements.size.value = "%s";
  form.elements.design.value = "%s";
  form.elements.design.dispatchEvent(new Event("input", { bubbles: true }));
  form.requestSubmit();
  return true;
})()"""
SHOWN = "!!document.querySelector('.print-room-preview .sheet-page')"
READY = "document.querySelector('.print-room-form')?.hidden === false"
PRINTING = "document.body.classList.contains('printing-sheets')"
SHEET = """(() => { window.print = () => {};
  const paper = document.querySelector("[data-share=paper]");
  paper.value = [...paper.options].find((one) => one.label === "A4").value;
  paper.dispatchEvent(new Event("change", { bubbles: true }));
  [...document.querySelectorAll("button")]
    .find((one) => one.textContent.includes("Print the kitchen sheet")).click();
  return true; })()"""
SHEET_READY = """[...document.querySelectorAll("button")]
  .some((one) => one.textContent.includes("Print the kitchen sheet") && one.checkVisibility())"""


@pytest.fixture(scope="module")
def printed(tmp_path_factory: pytest.TempPathFactory) -> Any:
    """Return what prints a list of jobs with WebKit and gives each one's PDF."""
    if not sys.platform.startswith("linux"):
        pytest.skip("WebKitGTK is of Linux; Safari itself was never printed from here")
    asked = [SYSTEM_PYTHON, "-c", HAS_BINDINGS]
    if not shutil.which("xvfb-run") or subprocess.run(asked, capture_output=True).returncode:
        no_browser("WebKitGTK (gir1.2-webkit2-4.1, python3-gi and xvfb)")
    folder = tmp_path_factory.mktemp("webkit")

    def of(jobs: dict[str, dict[str, Any]]) -> dict[str, bytes]:
        told = [
            {"margin_mm": 0, **job, "out": str(folder / f"{number}.pdf")}
            for number, job in enumerate(jobs.values())
        ]
        (folder / "jobs.json").write_text(json.dumps(told), encoding="utf-8")
        # a root's sandbox needs rights that a build machine does not give
        environment = {**os.environ, "WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS": "1"}
        subprocess.run(
            ["xvfb-run", "-a", SYSTEM_PYTHON, str(PRINTER), str(folder / "jobs.json")],
            check=True, timeout=600, env=environment, capture_output=True,
        )  # fmt: skip
        return {name: Path(job["out"]).read_bytes() for name, job in zip(jobs, told, strict=True)}

    return of


def room_job(address: str, name: str, thing: str) -> dict[str, Any]:
    chosen, size, _ = THINGS[thing]
    return {
        "url": f"{address}/print-room/?recipe=rosemary-salt&count=2",
        "ready": f"{READY} && {SHOWN}",
        "script": CHOOSE % (chosen, size, name),
        "printing": PRINTING,
    }


@pytest.mark.sampled
def test_webkit_prints_every_design_at_its_true_size(printed: Any, book_address: str) -> None:
    """Within 0.3 mm, two sheets for what has two sides and no sheet between them."""
    asked = [
        (name, thing) for name, thing in (PAIRS if is_whole() else FEW)
        if not (designs_of()[name].large and thing == "card")  # it takes the fold
    ]  # fmt: skip
    made = printed({f"{one} {thing}": room_job(book_address, one, thing) for one, thing in asked})
    measured = {}
    for name, thing in asked:
        pdf, sides = made[f"{name} {thing}"], THINGS[thing][2]
        measured[f"{name} {thing}"] = found = sides_of(pdf, sides)
        assert found, (name, thing)
        for wide, high in found:
            assert (wide, high) == pytest.approx(sides, abs=0.3), (name, thing, found)
        pages = [*pypdfium2.PdfDocument(pdf)]
        assert len(pages) == (1 if thing == "tag" or (thing, name) == ("card", "plain") else 2)
        if thing != "tag":
            codes = {
                code.text.rstrip("/").rpartition("/")[2]
                for page in pages
                for code in zxingcpp.read_barcodes(page.render(scale=300 / 72).to_pil())
            }
            assert codes == {"rosemary-salt"}, (name, thing)
    print(measured)  # what a closing note cites: pytest -s


def test_webkit_shrinks_a_sheet_whose_paper_keeps_a_margin(printed: Any, book_address: str) -> None:
    """A page printed within margins is made smaller to fit: the print room says to have none."""
    job = room_job(book_address, "plain", "tag") | {"margin_mm": 6.35}
    (made,) = printed({"kept": job}).values()
    wide, _ = sides_of(made, (70, 47))[0]
    assert wide < 72


def test_webkit_prints_the_kitchen_sheet_at_its_true_size(printed: Any, book_address: str) -> None:
    """It takes no margins from the page: they are set where one prints, as the print room says."""
    job = {
        "margin_mm": 15,
        "url": f"{book_address}/r/quince-chutney/", "ready": SHEET_READY, "script": SHEET,
        "printing": "document.body.classList.contains('printing-kitchen-sheet')",
    }  # fmt: skip
    (made,) = printed({"sheet": job}).values()
    assert 1 <= len(pypdfium2.PdfDocument(made)) <= 2
    assert widest_rule(made) == pytest.approx(180, abs=0.5)
