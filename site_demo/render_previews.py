"""Render the demo book's drawings as the pictures that link previews show.

Programs that preview a link take no SVG. Run once when a drawing changes, with the test extras
installed (playwright, Pillow through pdfplumber) and Chromium on the PATH:

    python site_demo/render_previews.py
"""

from __future__ import annotations

import io
import shutil
from pathlib import Path

from PIL import Image
from playwright.sync_api import Browser, sync_playwright

PICTURES = Path(__file__).parent / "pages" / "pictures"
SIZE = {"width": 1200, "height": 630}  # the shape that previews are cut to (ogp.me practice)
SHADES = 48
LEAF = """<style>body {{ margin: 0; background: #f8f4ea }}
svg {{ display: block; margin: 30px auto; width: 1120px; height: 570px }}</style>{drawing}"""


def render(browser: Browser, drawing: Path) -> bytes:
    """Return one drawing on the book's paper as a PNG of few shades."""
    page = browser.new_page(viewport=SIZE, color_scheme="light")
    page.set_content(LEAF.format(drawing=drawing.read_text(encoding="utf-8")))
    shot = Image.open(io.BytesIO(page.screenshot())).convert("RGB")
    page.close()
    small = io.BytesIO()
    shot.quantize(SHADES, dither=Image.Dither.NONE).save(small, "PNG", optimize=True)
    return small.getvalue()


def main() -> None:
    """Render every recipe's drawing into pictures/previews."""
    folder = PICTURES / "previews"
    folder.mkdir(exist_ok=True)
    with sync_playwright() as driver:
        browser = driver.chromium.launch(
            executable_path=shutil.which("chromium"), args=["--no-sandbox", "--disable-gpu"]
        )
        for drawing in sorted(PICTURES.glob("*.svg")):
            picture = render(browser, drawing)
            (folder / f"{drawing.stem}.png").write_bytes(picture)
            print(f"{drawing.stem}: {len(picture) / 1000:.0f} kB")
        browser.close()


if __name__ == "__main__":
    main()
