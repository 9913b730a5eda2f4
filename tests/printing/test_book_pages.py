"""How recipes lie on the family book's pages, and that nothing their own pages say is left out."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from copy import deepcopy
from typing import Any

import pypdf
import pypdfium2

from letters import read_letters
from stillroom.core.book import Book
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.labelling import label_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.ovens import heat_lines
from stillroom.printing.epub_book import make_epub
from stillroom.printing.family_book import print_book

from .conftest import epub_words

LEAST_FILL = 0.25  # of the height between head and foot: the part of a page that is used


def outline_of(made: bytes) -> list[tuple[int, str, int]]:
    """Every bookmark as its level, its words and its page counted from 1."""
    reader = pypdf.PdfReader(io.BytesIO(made))

    def walk(items: Any, level: int) -> Iterator[tuple[int, str, int]]:
        for item in items:
            if isinstance(item, list):
                yield from walk(item, level + 1)
            else:
                number = reader.get_destination_page_number(item)
                assert number is not None
                yield level, str(item.title), number + 1

    return list(walk(reader.outline, 1))


def spans_of(made: bytes, titles: set[str]) -> dict[str, tuple[int, int]]:
    """Return the first page of each recipe, and that on which the next bookmark begins."""
    entries = outline_of(made)
    return {
        title: (page, entries[place + 1][2])
        for place, (_level, title, page) in enumerate(entries)
        if title in titles
    }


def fill_of(made: bytes) -> list[float]:
    """How far down each page is used, as a share of the height between its head and foot."""
    shares = []
    for page in pypdfium2.PdfDocument(made):
        grey = page.render(scale=1).to_pil().convert("L")
        top, bottom = round(45 / 595 * grey.height), round(552 / 595 * grey.height)
        ink = grey.crop((0, top, grey.width, bottom)).point(lambda value: 255 * (value < 200))
        box = ink.getbbox()
        shares.append((box[3] / (bottom - top)) if box else 0.0)
    return shares


def only_box(text: str) -> bool:
    """Whether a page holds nothing but a safety box below its running head."""
    body = [line for line in text.splitlines() if line.strip()][1:]
    return bool(body) and body[0].startswith("Take care")


def to_fill_in(text: str) -> bool:
    """Whether a page is for the hand of its household, below its running head."""
    return any(words in text for words in ("What we made of these", "One of our own"))


def test_no_page_number_stands_on_a_line_of_its_own(pages: list[str]) -> None:
    seen = 0
    for page in pages:
        head, *lines = [line.strip() for line in page.splitlines() if line.strip()]
        if not head.startswith(("Index by", "Who wrote")):
            continue
        seen += 1
        # the last line is the number of the page itself
        assert [line for line in lines[:-1] if re.fullmatch(r"\d+(?:, \d+)*", line)] == [], page
    assert seen >= 3


def test_what_is_ready_at_once_is_not_said_to_be_so_from_then(pages: list[str]) -> None:
    said = " ".join(" ".join(pages).replace("\u00a0", " ").split())
    assert "Usable at once" in said
    assert "from at once" not in said


def test_every_recipe_takes_one_page_or_two_that_face_each_other(
    printed: bytes, pages: list[str], recipes: tuple[Recipe, ...]
) -> None:
    spans = spans_of(printed, {recipe.title for recipe in recipes})
    assert len(spans) == len(recipes)
    for title, (first, after) in spans.items():
        taken = [n for n in range(first, after) if not to_fill_in(pages[n - 1])]
        assert len(taken) <= 2, (title, taken)
        if len(taken) == 2:
            assert taken[0] % 2 == 0, title  # left-hand pages are even
            assert taken[1] == taken[0] + 1


def test_no_page_is_nearly_empty_or_holds_only_a_safety_box(
    printed: bytes, pages: list[str]
) -> None:
    shares = fill_of(printed)
    assert min(shares) >= LEAST_FILL, [n + 1 for n, s in enumerate(shares) if s < LEAST_FILL]
    assert not [number for number, text in enumerate(pages, start=1) if only_box(text)]


def test_no_type_in_the_book_is_under_the_stated_size(printed: bytes) -> None:
    least: dict[str, float] = {"EBGaramond": 99, "AlegreyaSans": 99}
    for page in read_letters(printed).pages:

        def note(text: str, _cm: Any, tm: list[float], font: Any, size: float) -> None:
            if text.strip() and font:
                face = str(font["/BaseFont"]).partition("+")[2]
                name = "AlegreyaSans" if face.startswith("Alegreya") else "EBGaramond"
                least[name] = min(least[name], round(abs(size * (tm[3] or tm[1])), 2))

        page.extract_text(visitor_text=note)
    assert 9 <= least["EBGaramond"] < 12, least
    assert 8.5 <= least["AlegreyaSans"] < 12, least


def facts_of(book: Book, recipe: Recipe) -> Iterator[str]:
    """Everything that a recipe's file and its page on the screen say, but for scaled amounts."""
    yield from (recipe.title, recipe.summary, recipe.intro, recipe.author)
    for ingredient in recipe.ingredients:
        yield from (ingredient.item, ingredient.note)
    yield from (vessel.words for vessel in recipe.vessels)
    for container in recipe.containers:
        yield from (container.name, container.closure)
    for stage in recipe.stages:
        yield from (stage.say, stage.text)
    yield from (recipe.card.what, recipe.card.use)
    keeps = recipe.keeps
    yield from (str(keeps.unopened or ""), str(keeps.opened or ""))
    yield from recipe.cautions
    yield from (section.text for section in recipe.sections)
    for step in recipe.method:
        yield from (step.group, re.sub(r"\{[^}]*\}", " ", step.text))
    yield from (line.text for line in heat_lines(recipe))
    label = label_recipe(recipe, book.settings, None)
    yield from (label.strength_text, label.date_mark.text, label.keep_how, label.once_opened)
    yield from (*label.allergens, *label.may_contain, label.keeping.source)
    yield from (entry.whole for entry in label.contents)
    box = assess_safety(recipe, book.settings)
    for caution in box.cautions:
        yield from (caution.title, caution.to_maker, caution.to_receiver)
    for aside in box.overrides:
        yield from (aside.caution.title, aside.caution.to_maker, aside.why)
    yield box.deference


def missing_words(facts: Iterator[str], text: str) -> set[str]:
    """Return the words that a text has not; case, dashes, halves and quotes are evened out."""
    there = _even(text).replace(" ", "")
    return {word for fact in facts for word in _even(fact).split() if word not in there}


def _even(text: str) -> str:
    text = re.sub(r"[*_`|\[\]]|\(\S*\.md\S*\)|^\s*#+|:?-{3,}:?", " ", text, flags=re.MULTILINE)
    text = re.sub(r"[\s\u00ad\u00a0\u2060]+", " ", text.lower())
    text = re.sub(r"(?<=\d) ?°? ?(?=[cf]\b)", "", text)  # "160 C" is printed "160 °C"
    text = text.replace("1/2", "½").replace("1⁄2", "½")  # typed, and set as one sign
    text = re.sub(r"(?<=\d)\.5\b", "½", text)  # a length of "2-2.5 hours" is printed "2–2½ hours"
    dashes = {ord("-"): None, ord("–"): None}
    return text.translate({**dashes, ord("’"): "'", ord("“"): '"', ord("”"): '"'})


def test_the_book_says_all_that_a_recipe_and_its_page_say(
    book: Book, recipes: tuple[Recipe, ...], printed: bytes, pages: list[str]
) -> None:
    spans = spans_of(printed, {recipe.title for recipe in recipes})
    for recipe in recipes:
        first, after = spans[recipe.title]
        text = " ".join(pages[first - 1 : after - 1])
        assert missing_words(facts_of(book, recipe), text) == set(), recipe.slug


def test_the_epub_says_all_that_a_recipe_and_its_page_say(
    book: Book, recipes: tuple[Recipe, ...], data: dict[str, Any]
) -> None:
    made = make_epub(data)
    for recipe in recipes:
        text = epub_words(made, f"OEBPS/{recipe.slug}.xhtml")
        assert missing_words(facts_of(book, recipe), text) == set(), recipe.slug


def _swell(data: dict[str, Any], steps: int, words: str) -> dict[str, Any]:
    """Return the same book in which the mead has so many steps more."""
    swollen = deepcopy(data)
    mead = next(r for c in swollen["chapters"] for r in c["recipes"] if r["slug"] == "heather-mead")
    mead["steps"] += [
        {"group": "", "runs": [{"text": words, "em": False, "strong": False}]}
    ] * steps  # fmt: skip
    return swollen


def test_a_recipe_too_long_for_a_spread_leaves_no_box_alone(data: dict[str, Any]) -> None:
    made = print_book(
        _swell(data, 30, "Stir it once more, taste it, and write down what you find.")
    )
    texts = [page.extract_text() for page in read_letters(made).pages]
    assert not [number for number, text in enumerate(texts, start=1) if only_box(text)]
    assert min(fill_of(made)) >= LEAST_FILL


def test_a_step_longer_than_a_page_flows_on_whole(data: dict[str, Any]) -> None:
    endless = " ".join(f"word{number}" for number in range(1200))
    made = print_book(_swell(data, 1, endless))
    text = " ".join(page.extract_text() for page in read_letters(made).pages)
    assert not [number for number in range(1200) if f"word{number}" not in text]
