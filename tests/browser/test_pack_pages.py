"""The private pack on a telephone and at a desk: nothing wider than the screen, nothing unnamed."""

from __future__ import annotations

from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser

from browser.firefox import Firefox
from giving.lists import ROOT, TODAY, demo_book, demo_recipes
from stillroom.giving.pack import Effort, pack_files, work_out
from stillroom.giving.reading import load_giving_list

from .test_every_page import CUT_OFF, SPACED, STOPS

WIDER = "document.documentElement.scrollWidth - innerWidth"


@pytest.fixture(scope="module")
def pack_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("pack")
    read = load_giving_list(ROOT / "site_demo" / "giving" / "christmas-2027.yml")
    pack = work_out(read, demo_recipes(), demo_book().settings, TODAY, Effort(5, 0.1))
    for name, data in pack_files(pack).items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(data)
    return folder


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [320, 1280])
def test_every_page_of_the_pack(
    browser: Browser, pack_folder: Path, width: int, scheme: str
) -> None:
    size = {"width": width, "height": 800}
    page = browser.new_page(viewport=size, color_scheme=scheme)  # type: ignore[arg-type]
    for path in sorted(pack_folder.glob("*.html")):
        page.goto(path.as_uri())
        assert page.evaluate(WIDER) <= 0, path.name
        found = Axe().run(page).response["violations"]
        told = [(one["id"], [node["html"][:120] for node in one["nodes"][:3]]) for one in found]
        assert told == [], path.name
        assert page.evaluate(STOPS) == [], path.name
        page.evaluate(SPACED)
        assert page.evaluate(CUT_OFF) == [], path.name
    page.close()


def test_every_page_of_the_pack_in_firefox(firefox: Firefox, pack_folder: Path) -> None:
    firefox.resize(320, 800)
    for path in sorted(pack_folder.glob("*.html")):
        firefox.goto(path.as_uri())
        assert firefox.evaluate(WIDER) <= 0, path.name
