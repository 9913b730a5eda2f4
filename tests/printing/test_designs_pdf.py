"""Every design on paper, measured and read from the PDF: sizes, type, inks, setting."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import groupby, pairwise
from typing import Any

import pytest
import zxingcpp

from letters import open_letters
from sampling import is_whole
from stillroom.core.book import Book
from stillroom.core.label.labelling import ContentsEntry
from stillroom.core.paper.contrast import LEAST
from stillroom.core.paper.tag_shapes import tag_shape
from stillroom.looks.card_designs import choose_design, designs_of
from stillroom.looks.card_pictures import card_picture
from stillroom.printing.apart import run_here
from stillroom.printing.cards import (
    CardJob,
    SheetOptions,
    fit_cards,
    print_cards,
    print_cards_alike,
    print_tags,
)

from .conftest import MM, open_pdf
from .design_figures import figures_of
from .test_cards_pdf import edges, rasterise

DESIGNS = tuple(designs_of())
SIZES = {"90x65": (90, 65), "folded-a6": (210, 148)}
# large type takes a larger card
CUT = [
    (name, size) for name in DESIGNS for size in SIZES
    if size != "90x65" or not choose_design(name).large
]  # fmt: skip
FEW = DESIGNS if is_whole() else ("plain", "leaves")  # the others differ by numbers only


@pytest.mark.parametrize(("name", "size"), CUT)
def test_every_card_of_every_design_is_cut_at_its_true_size(
    jobs: list[CardJob], name: str, size: str
) -> None:
    design = choose_design(name)
    few = [job for job in jobs if job.recipe.slug == "rosemary-salt"]
    xs, ys = edges(print_cards(few, size, SheetOptions(design=design)))
    wide, high = SIZES[size]
    assert [after - before for before, after in pairwise(xs)] == pytest.approx(
        [wide] * (len(xs) - 1), abs=0.2
    )
    assert [after - before for before, after in pairwise(ys)] == pytest.approx(
        [high] * (len(ys) - 1), abs=0.2
    )


# 1.2 mm of x-height (theme.typ); issue 17: 12 points in large type, for every design
LEAST_PT = {False: 8.5, True: 12}


@pytest.mark.sampled
@pytest.mark.parametrize("name", DESIGNS if is_whole() else ("winter",))
def test_codes_type_and_contrast_of_a_design_hold(jobs: list[CardJob], name: str) -> None:
    some = jobs if is_whole() else jobs[:4]
    for design in (choose_design(name), choose_design(name).made_large()):
        found = figures_of(design, some)
        assert found.unread == {300: [], 150: []}, name
        assert min(found.least_pt.values()) >= LEAST_PT[design.large] - 0.01, found
        assert found.contrast >= LEAST, found


def words_on(made: bytes) -> list[dict[str, Any]]:
    with open_letters(made) as pdf:
        return [char for page in pdf.pages for char in page.chars if char["text"].strip()]


@pytest.mark.parametrize("name", FEW)
def test_large_type_is_black_and_never_under_twelve_points(jobs: list[CardJob], name: str) -> None:
    design = choose_design(name).made_large()
    options = SheetOptions(design=design)
    (made,), taken = print_cards_alike([jobs[:2]], "90x65", options, run_here, grows=True)
    assert taken in ("a7", "folded-a6")
    chars = words_on(made)
    assert min(char["size"] for char in chars) >= 11.99
    for char in chars:
        colour = char["non_stroking_color"]
        assert all(float(part) == pytest.approx(0, abs=0.001) for part in colour), char["text"]


@pytest.mark.parametrize("name", FEW)
def test_the_tags_of_a_basket_have_their_titles_in_one_size(jobs: list[CardJob], name: str) -> None:
    made = print_tags(jobs[:5], tag_shape("rectangle"), SheetOptions(design=choose_design(name)))
    first = {job.card.title.split()[0]: job.card.title for job in jobs[:5]}
    with open_letters(made) as pdf:
        words = [
            word
            for page in pdf.pages
            for word in page.extract_words(extra_attrs=["size"])
            if word["text"] in first
        ]
    largest = {
        text: max(word["size"] for word in found)
        for text, found in groupby(sorted(words, key=lambda w: w["text"]), lambda w: w["text"])
    }
    assert len(largest) >= 4
    assert max(largest.values()) - min(largest.values()) < 0.01, largest


def lines_of(made: bytes) -> list[list[str]]:
    """Return the words of every line of every column, as a reader sees them."""
    with open_letters(made) as pdf:
        return [
            line["text"].split()
            for page in pdf.pages
            for line in page.extract_text_lines(return_chars=False, x_tolerance=1.5)
        ]


def one_by_one(jobs: list[CardJob], size: str, name: str) -> list[tuple[CardJob, bytes]]:
    options = SheetOptions(design=choose_design(name))
    return [(job, print_cards([job], size, options)) for job in jobs]


_TIED = re.compile(
    r"(\d)\s(g|kg|ml|l|months?|years?|weeks?|days?|hours?|minutes?|January|February|March|April"
    r"|May|June|July|August|September|October|November|December|%)\b"
)


def test_no_amount_date_or_unit_is_parted_at_the_end_of_a_line(jobs: list[CardJob]) -> None:
    for job, made in one_by_one(jobs[:6], "90x65", "plain"):
        lines = [" ".join(line) for line in lines_of(made)]
        for before, after in pairwise(lines):
            first = after.split(" ")[0]
            assert not _TIED.fullmatch(f"{before[-1:]} {first.strip('.,')}"), (
                job.card.title, before, after,
            )  # fmt: skip


def test_no_last_line_of_use_or_keeping_is_one_word(jobs: list[CardJob]) -> None:
    """Read from the folded card, whose inside is two plain columns."""
    checked = 0
    for job, made in one_by_one(jobs[:6], "folded-a6", "plain"):
        with open_letters(made) as pdf:
            page = pdf.pages[1]
            column = page.crop((page.width / 2, 0, page.width, page.height))
            lines = [
                line["text"].split()
                for line in column.extract_text_lines(return_chars=False, x_tolerance=1.5)
            ]
        ends = [line for line in lines if line[-1].endswith((".", "!"))]
        for text in (job.card.use, job.card.keep):
            words = text.split()
            if len(words) < 5 or len(words[-1]) + len(words[-2]) > 18:
                continue
            last = [line for line in ends if line[-1] == words[-1]]
            checked += len(last)
            assert all(len(line) > 1 for line in last), (job.card.title, lines)
    assert checked > 5


def test_straight_quotes_are_curled_by_language(jobs: list[CardJob]) -> None:
    said = replace(jobs[0].card, message='He said "more" of Ana\'s')
    for language, wanted in (("en_GB", "“more”"), ("de_DE", "„more“")):
        made = print_cards(
            [replace(jobs[0], card=said)], "folded-a6", SheetOptions(language=language)
        )
        text = "".join(char["text"] for char in words_on(made))
        assert wanted in text
        assert "Ana’s" in text
        assert '"' not in text


def test_capitals_are_spaced(jobs: list[CardJob]) -> None:
    apart = {}
    for word in ("NATO", "nato"):
        said = replace(jobs[0].card, message=f"for {word} only")
        made = print_cards([replace(jobs[0], card=said)], "folded-a6", SheetOptions())
        # one sign may stand for two letters: "fi"
        chars = [char for char in words_on(made) for _ in char["text"]]
        text = "".join(char["text"] for char in words_on(made))
        at = text.index(f"for{word}only") + 3
        letters = chars[at : at + 4]
        apart[word] = min(after["x0"] - before["x1"] for before, after in pairwise(letters))
    assert apart["NATO"] > apart["nato"]


def test_allergens_are_centred_where_all_is(jobs: list[CardJob]) -> None:
    job = next(one for one in jobs if one.recipe.slug == "almond-shortbread")
    made = print_cards([job], "90x65", SheetOptions(design=choose_design("own-drawing")))
    with open_letters(made) as pdf:
        lines = pdf.pages[0].extract_text_lines(return_chars=False)
    middle = [(line["x0"] + line["x1"]) / 2 for line in lines]
    assert max(middle) - min(middle) < 3


@pytest.mark.parametrize("name", FEW)
def test_the_address_stands_in_words_under_its_code(jobs: list[CardJob], name: str) -> None:
    made = print_cards(jobs[:1], "folded-a6", SheetOptions(design=choose_design(name)))
    with open_letters(made) as pdf:
        words = pdf.pages[0].extract_words(extra_attrs=["size"])
    # an address may be broken behind its hyphens and strokes
    told = [word | {"text": word["text"].replace("\u200b", "")} for word in words]
    address = [word for word in told if word["text"].startswith("thistledown-lane.example")]
    assert address
    assert min(word["size"] for word in address) >= 8
    codes = zxingcpp.read_barcodes(rasterise(made, 200)[0])
    assert jobs[0].card.url in [code.text for code in codes]


def test_there_are_lines_for_a_hand_and_the_familys_mark(jobs: list[CardJob]) -> None:
    options = SheetOptions(hand=True, mark_words="R & T")
    with open_pdf(print_cards(jobs[:1], "folded-a6", options)) as pdf:
        page = pdf.pages[0]
        text = page.extract_text()
        drawn = [*page.lines, *page.rects]
        strokes = [one for one in drawn if one["height"] < 1 and 80 < one["width"] < 250]
    assert "for" in text
    assert "from" in text
    assert re.search(r"[rR] ?& ?[tT]", text)
    assert len(strokes) >= 2


def boxes(made: bytes, page: int) -> list[tuple[float, float]]:
    """Return the breadth and height in mm of what is filled with one colour on a page."""
    with open_pdf(made) as pdf:
        return [
            (one["width"] / MM, one["height"] / MM)
            for one in pdf.pages[page].rects
            if one["fill"] and one["width"] > 15 * MM
        ]


def test_its_own_drawing_has_the_front_to_itself(pictured: list[CardJob]) -> None:
    """On a plate of more than half the front, and nothing but the title under it."""
    few = [job for job in pictured if job.recipe.slug in ("rosemary-salt", "lavender-sugar")]
    made = print_cards(few, "90x65", SheetOptions(design=choose_design("own-drawing")))
    (wide, high), *others = boxes(made, 0)
    assert (wide, high) == pytest.approx((80.8, 46), abs=3)
    assert len(others) == 1  # one to a card
    assert wide * high > 0.55 * 90 * 65
    with open_letters(made) as pdf:
        front, back = (" ".join(page.extract_text().split()) for page in pdf.pages)
    assert front == " ".join(job.card.title for job in few)
    for job in few:
        assert set(job.card.what.split()) <= set(back.split())
        assert job.recipe.kind.spoken.lower() in back.lower()
        assert job.card.date_mark.text in back


def test_a_card_too_full_for_that_keeps_its_foot_on_the_front(pictured: list[CardJob]) -> None:
    made = print_cards(pictured, "90x65", SheetOptions(design=choose_design("own-drawing")))
    with open_letters(made) as pdf:
        front = pdf.pages[0].extract_text()
    assert front.count("Made on") == 8
    assert min(high for _, high in boxes(made, 0)) > 27.9


def test_a_tag_of_a_design_of_pictures_has_one_beside_its_words(pictured: list[CardJob]) -> None:
    few = pictured[:2]
    for name, wide in (("own-drawing", 26), ("plain", None)):
        made = print_tags(few, tag_shape("rectangle"), SheetOptions(design=choose_design(name)))
        plates = [side for box in boxes(made, 0) for side in box if box[0] < 60]
        assert plates == pytest.approx([wide] * 4 if wide else [], abs=0.3)


def heights_of(page: Any, left: float, right: float) -> list[float]:
    """Return where the lines of the text face stand between two mm from the left, in mm."""
    found = {
        round(char["matrix"][5] / MM, 1)
        for char in page.chars
        if left * MM < char["x0"] < right * MM and "Garamond" in char["fontname"]
    }
    return sorted(found, reverse=True)


@pytest.mark.parametrize("name", FEW)
def test_the_inside_of_a_fold_stands_on_one_grid_and_is_filled(
    pictured: list[CardJob], name: str
) -> None:
    """Left and right the first lines stand at the same heights; what is set reaches the foot."""
    few = [job for job in pictured if job.recipe.slug == "quince-chutney"]
    made = print_cards(few, "folded-a6", SheetOptions(design=choose_design(name)))
    with open_pdf(made) as pdf:
        inside = pdf.pages[1]
        contents, using = heights_of(inside, 0, 105), heights_of(inside, 105, 210)
        drawn = [one for one in (*inside.curves, *inside.rects) if one["x0"] > 105 * MM]
    assert len(contents) > 4
    assert len(using) > 4
    steps = [above - below for above, below in pairwise(using)]
    assert max(steps) == pytest.approx(2 * min(steps), abs=0.15)  # one line left blank
    assert contents[0] == using[0]
    for height in (*contents[:-2], *using):  # the foot of the left panel is set closer
        assert (using[0] - height) % min(steps) == pytest.approx(0, abs=0.25) or (
            using[0] - height
        ) % min(steps) == pytest.approx(min(steps), abs=0.25)
    lowest = max(one["bottom"] for one in drawn)
    assert lowest > (148 - 9 - 2) * MM  # the drawing that closes it stands on the lower edge
    assert (using[0] - using[-1]) + (drawn and 38) > 0.6 * (148 - 18)


def test_the_giver_s_own_words_have_lines_inside(pictured: list[CardJob]) -> None:
    made = print_cards(pictured[:1], "folded-a6", SheetOptions(hand=True))
    with open_pdf(made) as pdf:
        ruled = [
            one
            for one in (*pdf.pages[1].lines, *pdf.pages[1].curves)
            if one["x0"] > 105 * MM and one["width"] > 80 * MM and one["width"] < 90 * MM
        ]
    heights = sorted(one["top"] / MM for one in ruled)
    assert [below - above for above, below in pairwise(heights)] == pytest.approx([9, 9], abs=0.1)


def test_the_small_drawing_of_a_kind_is_not_blown_up(jobs: list[CardJob]) -> None:
    """Of few lines, it would be coarse: 34 mm at most, where a recipe's own fills the cover."""
    made = print_cards(jobs[:1], "folded-a6", SheetOptions())
    with open_pdf(made) as pdf:
        drawn = [one for one in pdf.pages[0].curves if one["x0"] > 110 * MM]
    high = max(one["bottom"] for one in drawn) - min(one["top"] for one in drawn)
    assert 20 < high / MM <= 34.5


def test_a_full_front_makes_no_small_back(jobs: list[CardJob]) -> None:
    """Each side stands in the largest type that it holds."""
    options = SheetOptions(design=choose_design("leaves"))
    (job,) = [job for job in jobs if job.recipe.slug == "quince-ratafia"]
    full = replace(job, card=replace(job.card, to="Merrin and Dov", sender="the Lane"))
    (one,) = fit_cards([full], "90x65", options)
    assert one["back"] < one["level"], one
    with open_letters(print_cards([full], "90x65", options)) as pdf:
        body = [char["size"] for char in pdf.pages[1].chars if "Garamond" in char["fontname"]]
    assert min(body) > 9


@pytest.mark.parametrize("name", DESIGNS)
def test_no_title_hangs_into_the_rule_under_it(jobs: list[CardJob], name: str) -> None:
    """Where neither a sentence nor a name stands between, its descenders do."""
    design = choose_design(name)
    bare = [
        replace(job, card=replace(job.card, title="Jugged figgy jelly", what=""))
        for job in jobs
        if job.recipe.slug == "quince-chutney"
    ]
    options = SheetOptions(design=design, cut_lines=False)
    made = (
        print_cards_alike([bare], "90x65", options, run_here, grows=True)[0][0]
        if design.large
        else print_cards(bare, "90x65", options)
    )
    with open_pdf(made) as pdf:
        page = pdf.pages[0]
        largest = max(char["size"] for char in page.chars)
        titles = [char for char in page.chars if char["size"] == largest]
        rules = [
            one
            for one in (*page.lines, *page.curves)
            if one["height"] < 1 and one["width"] > 60 * MM
        ]
    baseline = min(char["matrix"][5] for char in titles)
    tops = [page.height - one["top"] for one in rules]
    under = [top for top in tops if top < baseline]
    # the descenders of EB Garamond go 0.29 em below (its hhea table)
    assert all(baseline - top > 0.3 * largest for top in under), (baseline, under, largest)
    assert under or design.sides == "two"


LONG = tuple(ContentsEntry(f"ingredient number {number}", False) for number in range(1, 24))


def test_a_fold_turns_its_foot_where_that_leaves_room(jobs: list[CardJob]) -> None:
    """Under what is in it, or beside it where that fills its panel; a hand keeps its lines."""
    (job,) = [job for job in jobs if job.recipe.slug == "quince-chutney"]
    full = replace(job, card=replace(job.card, contents=LONG))
    for one, hand, right in ((job, False, False), (full, False, True), (full, True, False)):
        made = print_cards([one], "folded-a6", SheetOptions(hand=hand, cut_lines=False))
        with open_pdf(made) as pdf:
            inside = pdf.pages[1]
            (at,) = [word["x0"] for word in inside.extract_words() if word["text"] == "Made"]
            rules = [
                row
                for row in (*inside.lines, *inside.curves)
                if row["height"] < 1 and 60 * MM < row["width"] < 95 * MM
            ]
            left = [char for char in inside.chars if char["x0"] < 105 * MM]
        assert (at > 105 * MM) is right
        if right:
            continue
        # nothing of the contents stands nearer than a line's room to the rule under them
        rule = max(page_top(row) for row in rules if row["x0"] < 105 * MM)
        above = [char["matrix"][5] for char in left if inside.height - char["matrix"][5] < rule]
        assert rule - (inside.height - min(above)) > 5.5 * MM


def page_top(one: dict[str, Any]) -> float:
    """Return how far from the top of its page something begins."""
    return float(one["top"])


def test_a_round_label_has_its_picture_close_over_its_words(pictured: list[CardJob]) -> None:
    """Whatever it says: a picture at the rim, far from the words, belongs to nothing."""
    shape = tag_shape("round", lid_mm=90)
    for job in pictured:
        with open_pdf(print_tags([job], shape, SheetOptions(cut_lines=False))) as pdf:
            page = pdf.pages[0]
            drawn = [
                one for one in (*page.curves, *page.images, *page.rects) if one["width"] < 60 * MM
            ]
            first = min(char["top"] for char in page.chars if char["text"].strip())
        assert drawn, job.card.title
        lowest = max(one["bottom"] for one in drawn)
        assert -0.5 < (first - lowest) / MM < 6, job.card.title


def test_one_ink_takes_the_drawing_named_like_the_recipe(
    book: Book, pictured: list[CardJob]
) -> None:
    """A cotton reel is no bauble: its kind stands for a photograph only where nothing is drawn."""
    (bauble,) = [job.recipe for job in pictured if job.recipe.slug == "felted-bauble"]
    shown = {name: card_picture(bauble, book, choose_design(name)) for name in DESIGNS}
    for name, picture in shown.items():
        assert picture.is_photograph is not choose_design(name).one_ink
        assert not picture.is_emblem
    without = bauble.model_copy(update={"slug": "no-drawing-of-it"})
    assert card_picture(without, book, choose_design("brown-card")).is_emblem


def test_the_mat_of_a_photograph_is_even(pictured: list[CardJob]) -> None:
    few = [job for job in pictured if job.recipe.slug == "felted-bauble"]
    made = print_cards(few, "90x65", SheetOptions(design=choose_design("own-drawing")))
    ((wide, high),) = boxes(made, 0)
    # the frame of a card's photograph is 3 to 2, and 1.6 mm stand all round it
    assert (wide - 3.2) / (high - 3.2) == pytest.approx(1.5, abs=0.03)
