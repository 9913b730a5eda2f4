"""Every page and what becomes of it in use, for everyone: by axe, by finger, by keyboard, enlarged.

There are eight ways to look: Chromium or Firefox, by day or by night, on a telephone or at a desk.
In every run each page and each state is looked at in one way of Chromium, in turn, so that a
new page is looked at too, and each fourth one in a way of Firefox; of the recipes' own pages,
which one template makes, an eighth is. When the whole is asked each is looked at in all eight.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from sampling import is_whole, share

from .looking import INJECT, MARK_ALIKE, WAYS, Looker
from .test_firefox import leads_on, pages_of


def _type(field: str, words: str) -> str:
    return f"""() => {{
      const field = document.querySelector({json.dumps(field)});
      field.focus();
      field.value = {json.dumps(words)};
      for (const name of ["input", "keyup", "change"]) {{
        field.dispatchEvent(new Event(name, {{ bubbles: true }}));
      }}
      return true;
    }}"""


OPEN = "() => document.querySelectorAll('details').forEach((one) => { one.open = true; }) ?? true"
RATAFIA = "r/quince-ratafia/"
ROOM = "print-room/"
READY = "document.querySelector('.how-much-buttons button')?.getClientRects().length"
LAID = "document.querySelector('.print-room-preview .sheet-page')"
SEARCH = "() => { document.querySelector('.masthead__search').click(); return true; }"
# where, what must be there first, what is done, and what is there then
STATES: dict[str, tuple[str, str, tuple[str, ...], str]] = {
    "another size": (f"{RATAFIA}?makes=3+l&units=us", READY, (OPEN,), "true"),
    "a day to give": (f"{RATAFIA}?give=2027-12-18", READY, (OPEN,), "true"),
    "a day too soon": (f"{RATAFIA}?give=2020-12-18", READY, (), "true"),
    "asked wrongly": (
        RATAFIA, READY, (_type("[name=makes]", "1,5 of nonsense"),),
        "document.querySelector('.blank-wrong')?.getClientRects().length",
    ),
    "a card with a name": (
        "r/layered-soup-mix/", "!document.querySelector('.card-form').hidden",
        (_type(".card-form [name=from]", "Zebedee Quillfeather"),), "true",
    ),
    "a folded card": (
        "r/layered-soup-mix/", "!document.querySelector('.card-form').hidden",
        (_type(".card-form [name=size]", "folded-a6"),), "true",
    ),
    "searched": (
        "", "!document.querySelector('.masthead__search').hidden",
        (SEARCH, _type("[name=query]", "quince")),
        "document.querySelector('.md-search-result__item')"
        " && document.getAnimations().every((one) => one.playState !== 'running')",
    ),
    "searched in vain": (
        "", "!document.querySelector('.masthead__search').hidden",
        (SEARCH, _type("[name=query]", "zzxqv")),
        "document.getAnimations().every((one) => one.playState !== 'running')",
    ),
    "sifted": ("browse/?kind=preserve", "true", (), "true"),
    "nothing left": ("browse/?kind=ferment&free=sulphites&start=best", "true", (), "true"),
    "another year": (
        "year/", "true", (_type("[name=begin]", "2027-09-01"), _type("[name=give]", "2027-12-18")),
        "true",
    ),
    "sheets of cards": (f"{ROOM}?recipe=quince-ratafia&count=8", LAID, (OPEN,), "true"),
    "sheets of tags": (
        f"{ROOM}?recipe=quince-ratafia&count=8", LAID, (_type("[name=thing]", "luggage"), OPEN),
        LAID,
    ),
    "sheets of round labels": (
        f"{ROOM}?recipe=rosemary-salt&count=8", LAID, (_type("[name=thing]", "round"), OPEN), LAID,
    ),
    "a recipe with doubts": (
        "send/", "!document.querySelector('form.send').hidden",
        (_type("#box-ingredients", "1,5 kg plums"), OPEN,
         "() => document.querySelector('form.send [value=whole]').click() ?? true"),
        "document.querySelector('.send__wrong:not(:empty)')",
    ),
    "what does not fit": (
        f"{ROOM}?recipe=quince-ratafia&count=8", LAID,
        (_type("[name=thing]", "round"), _type("[name=lid]", "26")), "true",
    ),
}  # fmt: skip


def look_at(looker: Looker, address: str, state: str) -> list[str]:
    """Bring a page into a state and return what is wrong with it then."""
    path, before, acts, after = STATES[state]
    looker.go(f"{address}/{path}")
    looker.wait_for(before)
    for act in acts:
        looker.ask(act)
    looker.wait_for(after)
    wrong = looker.faults()
    looker.ask("() => sessionStorage.clear() ?? true")  # what would be there in the next state
    return wrong


def looked_at(site: Path) -> list[str]:
    paths = [path for path in pages_of(site) if not leads_on(site / path)]
    recipes = [path for path in paths if path.startswith("r/")]
    others = [path for path in paths if path not in recipes]
    return [*others, "404.html", *recipes[:: share(8, 1)], *STATES]


@pytest.mark.sampled
@pytest.mark.parametrize(
    ("called", "first", "each"), [("chromium_ways", 0, 1), ("firefox_ways", 1, 4)]
)
def test_every_page_and_state(
    called: str,
    first: int,
    each: int,
    request: pytest.FixtureRequest,
    built_book: Path,
    book_address: str,
    searched_address: str,
) -> None:
    ways: Callable[[str, int], Looker] = request.getfixturevalue(called)
    found = {}
    for turn, (scheme, width) in enumerate(WAYS):
        looker = ways(scheme, width)
        asked = looked_at(built_book)[:: 1 if is_whole() else each]
        for what in asked if is_whole() else asked[(turn + first) % 4 :: 4]:
            if what in STATES:
                searched = SEARCH in STATES[what][2]
                wrong = look_at(looker, searched_address if searched else book_address, what)
            else:
                looker.go(f"{book_address}/{what}")
                wrong = looker.faults()
            if wrong:
                found[f"{what} {scheme} {width}"] = wrong
    assert found == {}


def test_a_page_that_only_leads_on_says_so_to_everyone(built_book: Path) -> None:
    leading = [path for path in pages_of(built_book) if leads_on(built_book / path)]
    assert leading
    for path in leading:
        page = BeautifulSoup((built_book / path / "index.html").read_text("utf-8"), "html.parser")
        assert page.html
        assert page.html["lang"]
        assert page.select_one("main h1").text
        assert page.select_one("main a[href]").text


def test_what_is_wrong_is_found(chromium_ways: Callable[[str, int], Looker]) -> None:
    looker = chromium_ways("light", 320)
    looker.go(
        "data:text/html,<title>a</title><p style='overflow:hidden;height:1em;width:9em'>some words"
        "<button style='width:9px;height:9px;padding:0'></button><img src=a>"
    )
    wrong = " ".join(looker.faults())
    assert "image-alt" in wrong
    assert "no name" in wrong
    assert "small" in wrong
    assert "some words" in wrong


# one that many share, one that a place in its list has, one that a colour far above it makes
SPOILED = """
.ingredients li { color: #999 !important }
.steps li:nth-child(2) { color: #aaa !important }
.take-care { background: #777 !important }
.take-care p { font-size: 9px !important; color: #767676 !important }
.when { opacity: 0.4 !important }
"""
CONTRAST = """() => axe.run({ runOnly: ["color-contrast"] }).then((found) =>
  found.violations.flatMap((one) => one.nodes.map(({ any: [{ data }] }) =>
    `${data.fgColor} ${data.bgColor} ${data.fontSize} ${data.fontWeight}`)))"""


def test_contrast_is_missed_nowhere_though_words_set_alike_are_asked_twice(
    chromium_ways: Callable[[str, int], Looker], book_address: str
) -> None:
    """What a look finds of words set alike are all colours that asking every word finds."""
    looker = chromium_ways("light", 1280)
    looker.go(f"{book_address}/{RATAFIA}")
    looker.wait_for(READY)
    looker.ask(
        f"""() => {{ const sheet = new CSSStyleSheet(); sheet.replaceSync({json.dumps(SPOILED)});
          document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet]; return true; }}"""
    )
    looker.ask(INJECT)
    every = looker.ask(CONTRAST)
    looker.ask(MARK_ALIKE)
    some = looker.ask(CONTRAST)
    assert len(set(every)) >= SPOILED.count("!important")
    assert set(some) == set(every)
    assert len(some) < len(every)


def test_what_is_on_a_sheet_stands_beside_it_in_words(
    chromium_ways: Callable[[str, int], Looker], book_address: str
) -> None:
    looker = chromium_ways("light", 320)
    looker.go(f"{book_address}/{ROOM}?recipe=quince-ratafia&count=2")
    looker.wait_for(LAID)
    looker.ask(_type(".print-room-form [name=to]", "Zebedee"))
    said = looker.ask("() => document.querySelector('.print-room-words').textContent")
    shown = looker.ask(
        """() => [...document.querySelector(".print-room-preview .sheet-place").parentElement
            .querySelectorAll(".card-title, .card-to, dd, .card-allergens, .card-date")]
            .map((one) => one.textContent.replaceAll(/\\s+/g, " ").trim()).filter(Boolean)"""
    )
    assert len(shown) > 4
    assert [words for words in shown if words not in said] == []
