"""Take the guide's pictures of the desk: a small book is begun and written in real Chromium.

Run when the desk looks otherwise, with the test extras installed and Chromium on the PATH:

    python site_demo/render_desk.py
"""

from __future__ import annotations

import io
import shutil
import tempfile
import threading
from pathlib import Path
from queue import Queue
from typing import Final

from PIL import Image, ImageOps
from playwright.sync_api import Page, sync_playwright

from stillroom.desk.serving import open_desk

GUIDE: Final = Path(__file__).parent / "pages" / "guide"
SIZE: Final = {"width": 1180, "height": 620}
WIDE: Final = {"width": 1560, "height": 1120}
"""Wide enough for the page to stand beside the boxes."""
SHADES: Final = 40
BOXES: Final = {
    "title": "Damson gin",
    "makes": "800 ml",
    "ingredients": "700 ml gin, 40% vol\n450 g damsuns\n200 g sugar",
    "method": "Prick the damsuns and put them in a jar.\nStir in the sugar and the gin.",
}


def keep(page: Page, name: str) -> None:
    """Keep what is seen as a picture of few shades."""
    shot = Image.open(io.BytesIO(page.screenshot())).convert("RGB")
    shot = ImageOps.expand(shot, border=2, fill="#d6cab4")
    shot.quantize(SHADES, dither=Image.Dither.NONE).save(GUIDE / f"{name}.png", optimize=True)


def take(page: Page, address: str) -> None:
    """Begin a book, write half a recipe, and look at what would be published."""
    page.goto(address)
    page.fill("#title", "The book of the mill")
    page.fill("#keeper", "Ann and Ola")
    keep(page, "desk-begin")
    page.click("main button")
    page.wait_for_selector(".spines")
    page.set_viewport_size(WIDE)
    page.goto(page.url.rstrip("/") + "/write/new")
    for box, words in BOXES.items():
        page.fill(f"#{box}", words)
    page.select_option("#kind", "infusion")
    page.wait_for_timeout(6000)  # the frame of the page is built meanwhile
    page.evaluate("window.scrollTo(0, 0)")
    page.wait_for_timeout(500)
    keep(page, "desk-write")
    page.set_viewport_size(SIZE)
    page.goto(page.url.split("/write/")[0] + "/publish")
    keep(page, "desk-publish")


def main() -> None:
    """Take all of them."""
    chromium = shutil.which("chromium") or shutil.which("google-chrome")
    said: Queue[str] = Queue()
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as driver:
        place = Path(folder, "book")
        desk = threading.Thread(target=open_desk, args=(place, 0, False, said.put))
        desk.start()
        browser = driver.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        page = browser.new_page(viewport=SIZE, color_scheme="light")
        take(page, said.get(timeout=30).split()[-1])
        page.click("text=Close the desk")
        desk.join(20)
        browser.close()


if __name__ == "__main__":
    main()
