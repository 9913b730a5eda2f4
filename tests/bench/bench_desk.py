"""What a pause in typing costs at the desk: the server's own time, and all of it in a browser.

Run: python tests/bench/bench_desk.py [pauses]. Each pause changes one step of one recipe. The
server's figures are milliseconds of the processor; the browser's are by its own clock from the
last key to the page that is changed, the wait for a pause (100 ms) included. It asserts nothing:
times belong to a machine.
"""

from __future__ import annotations

import statistics
import sys
import tempfile
import time
from pathlib import Path

TESTS = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(TESTS), str(TESTS.parent / "builder")]

from playwright.sync_api import sync_playwright  # noqa: E402

from browser.conftest import FLAGS, find_chromium  # noqa: E402
from desk.conftest import open_on, small_book  # noqa: E402
from stillroom.desk.desk import Desk  # noqa: E402
from stillroom.desk.place import Place  # noqa: E402
from stillroom.desk.write_room import _form, _try, files_of  # noqa: E402

RECIPE = "quince-chutney"
STEP = "\nStir it again for {} minutes."
SEEN = """(said) => new Promise((done) => {
  const look = () => {
    const leaf = document.getElementById("page").contentDocument.querySelector("article.leaf");
    leaf && leaf.textContent.includes(said) ? done(performance.now()) : requestAnimationFrame(look);
  };
  look();
})"""


def served(folder: Path, pauses: int) -> list[float]:
    """Return what each pause takes of the processor."""
    desk = Desk(Place(folder), folder / ".aside", lambda: None)
    files = files_of(desk, RECIPE)
    form, took = _form(files.now.raw, RECIPE), []
    for count in range(pauses + 1):
        begun = time.process_time()
        changed = form | {"method": form["method"] + STEP.format(count + 2)}
        tried = _try(desk, RECIPE, files_of(desk, RECIPE), changed)
        assert tried.look.recipe is not None, tried.look.wrong
        desk.show(RECIPE, tried.look.recipe)
        took.append(1000 * (time.process_time() - begun))
    return took[1:]


def seen(folder: Path, pauses: int) -> list[float]:
    """Return how long it takes from the last key until the page beside is changed."""
    opened, thread = open_on(folder)
    took = []
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=find_chromium(), args=FLAGS)
        page = browser.new_page()
        page.goto(opened.first)
        page.goto(f"{opened.origin}/write/{RECIPE}")
        page.frame_locator("#page").locator("stillroom-scale").first.wait_for(timeout=60_000)
        page.locator("#method").press("Control+End")
        for count in range(pauses + 1):
            said = f"pause number {count + 100}"
            page.keyboard.insert_text(f"\nWait for the {said}")
            begun = page.evaluate("performance.now()")
            page.keyboard.insert_text(".")
            took.append(page.evaluate(SEEN, f"{said}.") - begun)
        browser.close()
    opened.ask("/stop", "POST")
    thread.join(20)
    return took[1:]


if __name__ == "__main__":
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 30
    for name, measure in (("the server's processor", served), ("in Chromium, by the clock", seen)):
        with tempfile.TemporaryDirectory() as folder:
            took = measure(small_book(Path(folder) / "book"), count)
        first, last = statistics.median(took[:5]), statistics.median(took[-5:])
        print(
            f"{name}: middle {statistics.median(took):.0f} ms, least {min(took):.0f}, "
            f"first five {first:.0f}, last five {last:.0f}"
        )
