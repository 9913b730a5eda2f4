"""One sentence, one form: Python and the browser choose and fill every phrase alike."""

from __future__ import annotations

import json
import re
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser

from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.plurals import plural_tables, singular_word
from stillroom.core.words.said import OWN, Said, choose, plural_category, read_room
from stillroom.publish.scripts import SPEAKING

# languages whose plurals have two, three, four and six forms, and one that has a single form
LANGUAGES = ("en", "fr", "pl", "ru", "cs", "sl", "ar", "ja", "lt", "ga", "da", "he")
NUMBERS = ["0", *map(str, range(1, 130)), "1000", "1000000", "1/4", "1/2", "3/2", "5/2", "21/10"]


def test_the_same_category_in_a_dozen_languages(browser: Browser, scripts_address: str) -> None:
    page = browser.new_page()
    page.goto(f"{scripts_address}/js/words/said.js")
    asked = [[language, number] for language in LANGUAGES for number in NUMBERS]
    shown = page.evaluate(
        """async (asked) => {
          const { category } = await import("/js/words/said.js");
          const value = (text) => { const [n, d = 1] = text.split("/"); return n / d; };
          return asked.map(([language, number]) =>
            category(value(number), new Intl.PluralRules(language)));
        }""",
        asked,
    )
    page.close()
    apart = [
        (language, number, ours, theirs)
        for (language, number), theirs in zip(asked, shown, strict=True)
        if (ours := plural_category(Fraction(number), language)) != theirs
    ]
    assert apart == []
    assert set(shown) == {"zero", "one", "two", "few", "many", "other"}


def blanks_of(phrase: Any) -> list[str]:
    return sorted(set(re.findall(r"\{(\w+)\}", json.dumps(phrase))) - {"count"})


@pytest.mark.parametrize("short", SPEAKING)
def test_every_sentence_is_said_alike(browser: Browser, scripts_address: str, short: str) -> None:
    page = browser.new_page()
    page.goto(f"{scripts_address}/js/words/said.js")
    room, asked, ours = SPEAKING[short], [], []
    for group, phrases in read_room(room, OWN).items():
        say = Said(room, group)
        for name, phrase in phrases.items():
            blanks = {blank: f"<{blank}>" for blank in blanks_of(phrase)}
            nested = isinstance(phrase, dict) and "other" not in phrase
            words = isinstance(phrase, list) and len(phrase) != 2
            if nested or words or name in ("turns",):  # read as they stand
                continue
            for count in ("0", "1", "2", "3", "7"):
                filled = {**blanks, "count": count}
                refused = isinstance(phrase, list)
                asked.append([f"{short}-{group}", name, filled, refused])
                ours.append(str(say.refuse(name, **filled)) if refused else say(name, **filled))
    shown = page.evaluate(
        """async (asked) => {
          const { speaker } = await import("/js/words/said.js");
          const said = [];
          for (const [file, name, blanks, refused] of asked) {
            const say = speaker((await import(`/data/said/${file}.js`)).default);
            said.push(refused ? say.refuse(name, blanks).message : say(name, blanks));
          }
          return said;
        }""",
        asked,
    )
    page.close()
    assert shown == ours
    assert ours


def test_the_same_singulars(browser: Browser, scripts_address: str) -> None:
    table = (Path(__file__).parents[1] / "data" / "one_and_many.tsv").read_text(encoding="utf-8")
    words = [word for line in table.splitlines()[1:] for word in line.split("\t")]
    assert len(words) > 1200
    page = browser.new_page()
    page.goto(f"{scripts_address}/js/words/said.js")
    shown = page.evaluate(
        """async ([words, rules]) => {
          const { singular } = await import("/js/size/scale-targets.js");
          return words.map((word) => singular(word, { one_and_many: rules }));
        }""",
        [words, plural_tables()],
    )
    page.close()
    assert shown == [singular_word(word) for word in words]


# misspelt words, and what is known: of units, of ingredients, of nothing near
MISSPELT = [
    ("cupp", ["cup", "clove", "cups"]), ("mll", ["ml", "l", "millilitre", "cl"]),
    ("vanila", ["vanilla pod", "vanilla", "sugar"]), ("dragons", ["gramos", "grams", "gallons"]),
    ("suger", ["sugar", "caster sugar", "Sugar"]), ("xyzzy", ["title", "kind"]), ("", ["a", "b"]),
    ("ab", ["ba", "aab", "abb"]), ("Zucker", ["zucchini", "sugar"]), ("aaaa", ["aa", "aaa"]),
    ("peel of lemon", ["lemon peel", "orange peel", "lemons"]), ("tin", [*map(str, range(40))]),
    ("quinze", ["quinces", "quince", "quinine"]), ("crème fraiche", ["crème fraîche", "cream"]),
]  # fmt: skip


def test_the_same_word_is_meant(browser: Browser, scripts_address: str) -> None:
    page = browser.new_page()
    page.goto(f"{scripts_address}/js/words/said.js")
    shown = page.evaluate(
        """async (asked) => {
          const { didYouMean } = await import("/js/words/nearest.js");
          return asked.map(([word, known]) => didYouMean(word, known));
        }""",
        MISSPELT,
    )
    page.close()
    assert shown == [did_you_mean(word, known) for word, known in MISSPELT]
    assert len({words.split('"')[0] for words in shown}) >= 3


def test_forms_are_chosen_by_the_very_number_first() -> None:
    forms = {"=2": "twice", "one": "once", "other": "{count} times"}
    assert [choose(forms, count, "en") for count in (1, 2, "5")] == [
        "once",
        "twice",
        "{count} times",
    ]
