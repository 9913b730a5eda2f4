"""From an empty folder to one's own published page with a photograph, by keyboard alone.

With STILLROOM_STILLS set to a folder, what is seen on the way is kept there, and how many keys were
pressed. The photograph is made here; its camera says where it was taken.
"""

from __future__ import annotations

import os
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Protocol

import pytest
from bs4 import BeautifulSoup
from PIL import Image, ImageDraw, ImageFilter
from playwright.sync_api import FileChooser, Page

from browser.firefox import Firefox
from desk.conftest import OpenDesk, open_on
from sampling import share

GPS, TURNED, MADE_BY = 0x8825, 0x0112, 0x010F
HOME = b"Sandgerd, the house by the pier"


def photograph(path: Path) -> Path:
    """Draw a jar on a table as a telephone held on its side keeps it, with its place in it."""
    image = Image.new("RGB", (1600, 2000), (214, 196, 160))
    pen = ImageDraw.Draw(image)
    for row in range(2000):
        pen.line((0, row, 1600, row), fill=(224 - row // 20, 206 - row // 18, 172 - row // 16))
    pen.rectangle((0, 1500, 1600, 2000), fill=(120, 84, 52))
    pen.rounded_rectangle((500, 700, 1100, 1640), 70, fill=(92, 38, 48))
    pen.rounded_rectangle((540, 820, 700, 1560), 40, fill=(128, 58, 66))
    pen.rounded_rectangle((470, 600, 1130, 760), 40, fill=(196, 166, 92))
    pen.rectangle((580, 1040, 1020, 1330), fill=(244, 238, 222))
    for line in range(3):
        pen.rectangle((640, 1110 + 70 * line, 960, 1126 + 70 * line), fill=(120, 90, 80))
    exif = Image.Exif()
    exif[MADE_BY], exif[TURNED] = HOME.decode(), 8
    exif.get_ifd(GPS).update({1: "N", 2: (58.0, 59.0, 12.5), 3: "W", 4: (2.0, 57.0, 30.0)})
    shaken = image.filter(ImageFilter.GaussianBlur(2)).rotate(-90, expand=True)
    shaken.save(path, "JPEG", exif=exif, quality=90)
    return path


class Hands(Protocol):
    """What a keyboard and an eye can do, in either browser."""

    def goto(self, address: str) -> None: ...
    def press(self, key: str) -> None: ...
    def write(self, words: str) -> None: ...
    def ask(self, expression: str) -> Any: ...
    def choose(self, path: Path) -> None: ...
    def picture(self) -> bytes: ...


@dataclass
class InChromium:
    """A keyboard in Chromium, whose window for choosing a file is listened for from the first.

    The driver does not wait until the browser knows that somebody listens: a key pressed at once
    after it (4 times in 80 on a page with nothing but the box) opens a window that no one sees, and
    a browser without a screen closes that one again.
    """

    page: Page
    choosing: list[FileChooser] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.page.on("filechooser", self.asked)

    def asked(self, window: FileChooser) -> None:
        self.choosing.append(window)

    def goto(self, address: str) -> None:
        self.page.goto(address)

    def press(self, key: str) -> None:
        self.page.keyboard.press(key)

    def write(self, words: str) -> None:
        self.page.keyboard.type(words)

    def ask(self, expression: str) -> Any:
        return self.page.evaluate(expression)

    def choose(self, path: Path) -> None:
        assert self.choosing == [], "nothing asked for a file before"
        with self.page.expect_file_chooser() as asked:
            self.page.keyboard.press("Space")
        assert self.choosing == [asked.value], "one key, one window"
        asked.value.set_files(path)

    def picture(self) -> bytes:
        return self.page.screenshot()


KEYS = {
    "Tab": "\ue004", "Enter": "\ue007", "\n": "\ue007", "Control": "\ue009", "Shift": "\ue008",
}  # fmt: skip


@dataclass
class InFirefox:
    firefox: Firefox

    def goto(self, address: str) -> None:
        self.firefox.goto(address)

    def press(self, key: str) -> None:
        if "+" in key:
            held, _, pressed = key.partition("+")
            down, up = ({"type": way, "value": KEYS[held]} for way in ("keyDown", "keyUp"))
            letter = [
                {"type": way, "value": KEYS.get(pressed, pressed)} for way in ("keyDown", "keyUp")
            ]
            source = {"type": "key", "id": "keyboard", "actions": [down, *letter, up]}
            self.firefox.asked("input.performActions", context=self.firefox.tab, actions=[source])
            return
        pressed = "document.activeElement.matches('button, summary')"
        if key == "Enter" and self.firefox.evaluate(pressed):
            # a window without a screen is never the active one, and only there they hear a key
            self.firefox.evaluate("(document.activeElement.click(), true)")
            return
        self.firefox.press(KEYS[key])

    def write(self, words: str) -> None:
        self.firefox.press(*(KEYS.get(letter, letter) for letter in words))

    def ask(self, expression: str) -> Any:
        return self.firefox.evaluate(expression)

    def choose(self, path: Path) -> None:
        """Say which file is meant, as the system's own window does: no page can see that one."""
        found = self.firefox.asked(
            "browsingContext.locateNodes",
            context=self.firefox.tab,
            locator={"type": "css", "value": "#picture_file"},
        )["nodes"][0]
        self.firefox.asked(
            "input.setFiles",
            context=self.firefox.tab,
            element={"sharedId": found["sharedId"]},
            files=[str(path)],
        )

    def picture(self) -> bytes:
        return self.firefox.screenshot()


@dataclass
class Walk:
    """One way through the desk with a keyboard alone; counts what is pressed."""

    hands: Hands
    name: str
    pressed: int = 0
    stills: list[str] = field(default_factory=list)

    def to(self, selector: str) -> None:
        """Go with the tabulator to what is meant."""
        for _ in range(150):
            self.hands.press("Tab")
            self.pressed += 1
            if self.hands.ask(f"document.activeElement.matches({selector!r})"):
                return
        pytest.fail(f"the keyboard never reaches {selector}")

    def back(self, selector: str) -> None:
        """Go back to what stands before."""
        for _ in range(20):
            self.hands.press("Shift+Tab")
            self.pressed += 1
            if self.hands.ask(f"document.activeElement.matches({selector!r})"):
                return
        pytest.fail(f"the keyboard never comes back to {selector}")

    def write(self, selector: str, words: str) -> None:
        self.to(selector)
        self.hands.write(words)
        self.pressed += len(words)

    def enter(self, selector: str = "") -> None:
        if selector:
            self.to(selector)
        self.hands.press("Enter")
        self.pressed += 1

    def wait(self, expression: str, seconds: float = 60) -> None:
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            try:
                if self.hands.ask(f"Boolean({expression})"):
                    return
            except Exception as error:  # the page is being left for another
                if "context" not in str(error) and "navigat" not in str(error):
                    raise
            time.sleep(0.1)
        pytest.fail(f"waited in vain for {expression}")

    def still(self, words: str) -> None:
        self.stills.append(words)
        if folder := os.environ.get("STILLROOM_STILLS"):
            name = f"{self.name}-{len(self.stills):02}-{words}.png"
            Path(folder, name).write_bytes(self.hands.picture())


PAGE = "document.getElementById('page').contentDocument.querySelector('article')"


def go(walk: Walk, desk: OpenDesk, photo: Path) -> None:
    """Go from the four questions to the folder that is published."""
    walk.hands.goto(desk.first)
    walk.write("#title", "The Heron Ferry book")
    walk.write("#keeper", "Ann and Ola")
    walk.still("four-questions")
    walk.enter("main button")
    walk.wait("document.querySelector('a[href=\"/write/new\"]')")
    walk.still("the-recipes")
    walk.enter("a[href='/write/new']")
    walk.wait("document.getElementById('makes')")
    walk.write("#title", "Plum and ginger chutney")
    walk.write("#makes", "6 jars of 200 ml")
    lines = "1 kg plums, stoned\n500 g cooking apples\n400 ml cider vinegar, 5% acidity\n"
    walk.write("#ingredients", f"{lines}300 g light muscovado sugar\n1½ tsp ground ginger")
    walk.wait("document.querySelectorAll('#read-ingredients .read--known').length === 5")
    walk.still("each-line-read-back")
    walk.write("#method", "Simmer the plums and cooking apples in the cider vinegar until soft.\n")
    walk.hands.write(
        "Stir in the sugar and ground ginger and boil until thick.\nFill the hot jars."
    )
    walk.pressed += 75
    walk.write("#keeps_unopened", "1 year")
    walk.write("#keeps_source", "maker's own practice")
    walk.write("#card_use", "With cheese.")
    walk.enter("#picture_file ~ *, details.more:not([open]) > summary")
    walk.write("#summary", "Dark, sharp and warm.")
    walk.to("#picture_file")
    walk.hands.choose(photo)
    walk.pressed += 2
    walk.enter("button[formaction^='/picture/']")
    walk.wait(
        "document.querySelector('img.taken') && document.querySelector('img.taken').naturalWidth"
    )
    walk.still("the-photograph-taken-in")
    assert walk.hands.ask("document.activeElement.id") == "picture_alt", "it goes on from there"
    assert "typed before" not in walk.hands.ask("document.querySelector('main').innerText")
    walk.hands.write("A jar of dark chutney")
    walk.pressed += 21
    walk.back("#picture_focus")
    walk.hands.write("50% 45%")
    walk.pressed += 7
    walk.wait(f"{PAGE} && {PAGE}.querySelector('figure.photograph img')")
    walk.wait(f"{PAGE}.innerText.includes('Plum and ginger chutney')")
    walk.still("the-page-beside-it")
    walk.hands.press("Control+s")
    walk.pressed += 2
    walk.wait("document.querySelector('.said')?.innerText.includes('Kept, and in the book.')")
    walk.still("kept")
    walk.enter("a[href='/publish']")
    walk.wait("document.querySelector('input[name=way]')")
    walk.still("what-is-public")
    walk.enter("main button")
    walk.wait("document.querySelector('.said')?.innerText.includes('lies in the folder')", 240)
    walk.still("published")


def proved(desk: OpenDesk) -> Path:
    """Look at what was published: the photograph is there, upright, and no place is in it."""
    site = desk.folder / "site"
    made = site / "r" / "plum-and-ginger-chutney" / "index.html"
    page = BeautifulSoup(made.read_text(encoding="utf-8"), "html.parser")
    shown = page.select_one("figure.photograph img")
    assert shown is not None
    assert shown["alt"] == "A jar of dark chutney"
    assert int(str(shown["height"])) > int(str(shown["width"])), "upright"
    assert "Ann and Ola" in page.get_text()
    with Image.open((made.parent / str(shown["src"])).resolve()) as opened:
        assert not opened.getexif().get_ifd(GPS)
    assert [path for path in site.rglob("*") if path.is_file() and HOME in path.read_bytes()] == []
    kept = [path for path in (desk.folder / "originals").iterdir()]
    assert [HOME in path.read_bytes() for path in kept] == [True], "the original stays as it is"
    return made


@pytest.fixture
def empty(tmp_path: Path) -> Iterator[OpenDesk]:
    opened, thread = open_on(tmp_path / "book")
    yield opened
    opened.ask("/stop", "POST")
    thread.join(20)


def _end(walk: Walk, made: Path, began: float) -> None:
    walk.hands.goto(made.as_uri())
    walk.still("her-page")
    if folder := os.environ.get("STILLROOM_STILLS"):
        words = f"{walk.name}: {walk.pressed} keys, {time.monotonic() - began:.0f} s by machine\n"
        Path(folder, f"{walk.name}.txt").write_text(words, encoding="utf-8")


@pytest.mark.sampled
@pytest.mark.parametrize("called", ["firefox", "chromium"][: share(1, 2)])
def test_own_page_with_a_photograph(
    called: str, request: pytest.FixtureRequest, empty: OpenDesk, tmp_path: Path
) -> None:
    """In Chromium a run goes the way from an empty folder in test_in_browsers.py."""
    opened = request.getfixturevalue("page" if called == "chromium" else called)
    hands: Hands = InChromium(opened) if called == "chromium" else InFirefox(opened)
    began, walk = time.monotonic(), Walk(hands, called)
    go(walk, empty, photograph(tmp_path / "jar.jpg"))
    _end(walk, proved(empty), began)
