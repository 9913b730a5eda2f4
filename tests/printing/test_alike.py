"""One basket, one design: its cards are arranged alike, and what is too small grows for all.

Where words stand is read from the PDFs. Which cards could not be alike was seen before: on ID-1 the
demo's leaves had three arrangements, and days stood now beside, now below each other.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

import pytest

from letters import open_letters
from stillroom.core.paper.sheets import CARD_SIZES, PAPERS, Size, impose, label_sheet
from stillroom.core.paper.tag_shapes import TagShape, tag_shape
from stillroom.core.words.problems import Unreadable
from stillroom.looks.card_designs import choose_design
from stillroom.printing.apart import run_here
from stillroom.printing.cards import (
    CardJob,
    SheetOptions,
    fit_cards,
    print_cards_alike,
    print_large_tags,
)

from .conftest import MM

ANNEX = (
    "gluten", "crustaceans", "egg", "fish", "peanut", "soya", "milk", "nuts", "celery", "mustard",
    "sesame", "sulphites", "lupin", "molluscs",
)  # fmt: skip
"""Regulation (EU) No 1169/2011, Annex II."""


def days_of(made: bytes, box: Size) -> Iterator[bool]:
    """Yield for each card whether the day it was made and its date stand on one line."""
    grid = impose(PAPERS["a4"], box)
    with open_letters(made) as pdf:
        for page in pdf.pages:
            words = page.extract_words(x_tolerance=1.2, extra_attrs=["fontname"])
            for place in (grid.place(index) for index in range(grid.per_page)):
                left, top = float(place.x_mm) * MM, float(place.y_mm) * MM
                wide, high = float(grid.box.width_mm) * MM, float(grid.box.height_mm) * MM
                own = [
                    word
                    for word in words
                    if left < word["x0"] < left + wide and top < word["top"] < top + high
                ]
                made_on = [one["top"] for one, two in pairwise(own)
                           if (one["text"], two["text"]) == ("Made", "on")]  # fmt: skip
                date = [word["top"] for word in own if word["fontname"].endswith("Sans-Bold")]
                if made_on and date:
                    yield abs(made_on[0] - date[0]) < 2


@pytest.mark.parametrize(
    ("name", "size"), [("plain", "90x65"), ("leaves", "90x65"), ("winter", "a7")]
)
def test_days_stand_alike_on_all_cards_of_a_basket(
    jobs: list[CardJob], name: str, size: str
) -> None:
    options = SheetOptions(design=choose_design(name), cut_lines=False)
    (made,), taken = print_cards_alike([jobs], size, options, run_here, grows=False)
    found = list(days_of(made, CARD_SIZES[taken]))
    assert len(found) > 10
    assert len(set(found)) == 1


def test_days_would_stand_otherwise_card_by_card(jobs: list[CardJob]) -> None:
    """What is set alike by the test above is not so by chance."""
    options = SheetOptions(design=choose_design("leaves"), cut_lines=False)
    found = [fit_cards([job], "90x65", options)[0]["below"] for job in jobs]
    assert set(found) == {True, False}


def test_cards_that_no_arrangement_holds_alike_take_a_larger_size(jobs: list[CardJob]) -> None:
    options = SheetOptions(design=choose_design("leaves"))
    small = fit_cards(jobs, "id-1", options)
    assert all(one["fits"] for one in small)
    assert len({tuple(one["sides"]) for one in small}) > 1
    _, taken = print_cards_alike([jobs], "id-1", options, run_here, grows=False)
    assert taken == "90x65"
    assert len({tuple(one["sides"]) for one in fit_cards(jobs, taken, options)}) == 1
    # one alone is as it was asked for
    assert print_cards_alike([jobs[:1]], "id-1", options, run_here, grows=False)[1] == "id-1"


def full(job: CardJob) -> CardJob:
    """Return the same with a long title (soorganic.com), names, a line and all allergens."""
    words = {
        "title": "Green tomato chutney with apples, sultanas and eight red chillies",
        "to": "Great-aunt Wilhelmina",
        "sender": "the children",
        "message": "With love, and a happy Christmas to all of you",
    }
    return replace(job, card=replace(job.card, allergens=ANNEX, may_contain=(), **words))


TAGS = {
    # what large type is asked for -> what it takes for two words and a date, and for the fullest
    "rectangle": ((75, 50), (90, 65), "rectangle"),
    "luggage": ((95, 50), (115, 65), "luggage"),
    "round": ((56, 56), (90, 65), "rectangle"),
}


@pytest.mark.parametrize("name", ["rectangle", "luggage", "round"])
def test_a_tag_in_large_type_takes_a_larger_shape_by_itself(jobs: list[CardJob], name: str) -> None:
    shape = tag_shape(name, lid_mm=62 if name == "round" else 0)  # type: ignore[arg-type]
    options = SheetOptions(design=choose_design("large-type"))
    salt = next(job for job in jobs if job.recipe.slug == "rosemary-salt")
    short = replace(
        salt, card=replace(salt.card, allergens=(), may_contain=(), unknown=(), packets=())
    )
    least, most, grown = TAGS[name]
    for job, wanted in ((short, (*least, name)), (full(salt), (*most, grown))):
        (made,), taken = print_large_tags([[job]], shape, options, run_here)
        assert (taken.width_mm, taken.height_mm, taken.name) == wanted
        with open_letters(made) as pdf:
            chars = [char for page in pdf.pages for char in page.chars]
        assert min(char["size"] for char in chars) >= 11.99
        said = "".join(char["text"] for char in chars)
        assert all(one in said for one in job.card.allergens)


def test_a_bought_label_is_as_large_as_it_is(jobs: list[CardJob]) -> None:
    grid = label_sheet(
        PAPERS["a4"], tag_shape("rectangle").box, columns=2, rows=5,
        left_mm=10, top_mm=10, pitch_x_mm=80, pitch_y_mm=50,
    )  # fmt: skip
    options = SheetOptions(design=choose_design("large-type"), grid=grid)
    with pytest.raises(Unreadable, match="do not fit on a rectangle tag"):
        print_large_tags([[full(jobs[0])]], TagShape("rectangle", 75, 50), options, run_here)
