"""How words are set on cards, read from the PDFs as a reader of them hears and sees them."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise
from typing import Any

import pypdfium2
import pytest

from letters import open_letters
from stillroom.core.label.contents_list import ContentsEntry
from stillroom.core.label.labelling import UsageCard
from stillroom.core.recipe.model import Recipe
from stillroom.looks.card_designs import choose_design, designs_of
from stillroom.looks.card_pictures import CardPicture
from stillroom.printing.cards import CardJob, SheetOptions, print_cards

from .conftest import MM, open_pdf
from .paragraphs import Paragraph, paragraphs_of
from .test_cards_pdf import LARDER

NAMES = {"to": "Merrin, Dov and very small Ottilie", "sender": "Morwen and Ansgar"}
# paper on which a design is printed besides white, for its contrast: 4.5 to 1, WCAG 2.2, 1.4.3
PAPERS = {"brown-card": "#c8a678"}
LEAST_CONTRAST = 4.5

CardOf = Callable[..., UsageCard]


@pytest.fixture(scope="module")
def made(recipes: tuple[Recipe, ...], card_of: CardOf) -> dict[tuple[str, str], bytes]:
    """Return the twenty cards in a few designs and sizes, one with names.

    None with a border: its thousands of curves are slow to read, and words are set alike.
    """

    def of(name: str, size: str, **words: str) -> bytes:
        design = choose_design(name)
        jobs = [
            CardJob(card_of(one, **words), one) for one in recipes
        ]  # no drawings: words are read
        return print_cards(jobs, size, SheetOptions(design=design))

    return {
        ("plain", "90x65"): of("plain", "90x65"),
        ("plain", "folded-a6"): of("plain", "folded-a6"),
        ("own-drawing", "90x65"): of("own-drawing", "90x65", **NAMES),
    }


@pytest.fixture(scope="module")
def read(made: dict[tuple[str, str], bytes]) -> dict[tuple[str, str], list[Paragraph]]:
    found = {}
    for which, pdf in made.items():
        with open_letters(pdf) as opened:
            found[which] = paragraphs_of(opened)
    return found


def running(read: dict[tuple[str, str], list[Paragraph]]) -> list[Paragraph]:
    """Return all paragraphs of several lines."""
    found = [one for every in read.values() for one in every if len(one.lines) > 1]
    assert len(found) > 150
    return found


def test_no_last_line_is_one_word(read: dict[tuple[str, str], list[Paragraph]]) -> None:
    alone = [
        one.said
        for one in running(read)
        if len(one.said[-1].split()) == 1
        and not one.kind.startswith("H")  # a title may: its lines are even
        and not one.text.startswith("thistledown-lane.")
    ]
    assert alone == []


def test_no_last_line_is_a_stump(read: dict[tuple[str, str], list[Paragraph]]) -> None:
    """A fifth of the longest line at least, however many words that is."""
    short = [
        one.said
        for one in running(read)
        if one.width(-1) < 0.17 * max(one.width(at) for at in range(len(one.lines)))
    ]
    assert short == []


_FIGURE = re.compile(r"[\d½⅓⅔¼¾⅛⅜⅝⅞]$")
_UNIT = re.compile(
    r"(?:g|kg|mg|ml|cl|l|cm|mm|m|%|°\w?|C|F|vol|pH|oz|lb|months?|years?|weeks?|days?|hours?|minutes?"
    r"|January|February|March|April|May|June|July|August|September|October|November|December)\b"
)


def test_no_amount_date_or_unit_is_parted(read: dict[tuple[str, str], list[Paragraph]]) -> None:
    seen = 0
    for one in running(read):
        for before, after in pairwise(one.said):
            seen += 1
            parted = _FIGURE.search(before) and _UNIT.match(after)
            month_from_year = re.search(r"[A-Z][a-z]+$", before) and re.match(
                r"(19|20)\d\d\b", after
            )
            assert not parted, (before, after)
            assert not month_from_year, (before, after)
    assert seen > 300


def test_no_allergen_is_parted_from_the_food_it_is_of(
    read: dict[tuple[str, str], list[Paragraph]],
) -> None:
    """Both words of "nuts (almond)" and "flour (wheat)" stand on one line."""
    seen = [
        one for every in read.values() for one in every if re.search(r"[a-z] \([a-z]+\)", one.text)
    ]
    assert len(seen) > 10
    for one in seen:
        for before, after in pairwise(one.said):
            assert not (before[-1:].isalpha() and re.match(r"\([a-z]+\)", after)), (before, after)


@pytest.mark.parametrize("size", ["a7", "folded-a6"])
@pytest.mark.parametrize("name", ["plain", "own-drawing", "large-type"])
def test_no_rule_stands_over_nothing(
    recipes: tuple[Recipe, ...], card_of: CardOf, name: str, size: str
) -> None:
    """A craft bears no date: only where the day it was made is said has it a foot, and a rule."""
    craft = next(one for one in recipes if one.slug == "felted-bauble")

    def rules(**said: Any) -> int:
        card = replace(card_of(craft), **said)
        job = CardJob(card, craft, picture=CardPicture(""))
        options = SheetOptions(design=choose_design(name), cut_lines=False)
        with open_pdf(print_cards([job], size, options)) as opened:
            return sum(line["width"] > 100 for page in opened.pages for line in page.lines)

    folds = rules(made_on_text="")
    assert rules(made_on_text="Made on 12 November 2026") == folds + 1
    assert folds == 0


def test_for_and_from_are_two_paragraphs(read: dict[tuple[str, str], list[Paragraph]]) -> None:
    said = [one.text for one in read["own-drawing", "90x65"]]
    assert said.count(f"for {NAMES['to']}") == said.count(f"from {NAMES['sender']}") == 20
    assert not [text for text in said if NAMES["to"] in text and NAMES["sender"] in text]


def test_all_of_a_front_is_centred(read: dict[tuple[str, str], list[Paragraph]]) -> None:
    """Every line of a front, allergens too: the middle of its words is its card's middle."""
    middles = (15 + 45, 15 + 90 + 45)  # of the two columns of A4, mm
    lines = 0
    for one in read["own-drawing", "90x65"]:
        if one.page % 2 == 0:
            continue  # backs are set from the left
        if re.match(r"Made on|Best before|Use by", one.text):
            continue  # the two dates stand side by side
        for at in range(len(one.lines)):
            left, right = one.ends(at)
            middle = (left + right) / 2 / MM
            assert min(abs(middle - own) for own in middles) < 0.6, (one.said, middle)
            lines += 1
    assert lines > 100


def test_straight_quotes_are_curled_by_language(jobs: list[CardJob]) -> None:
    said = replace(jobs[0].card, message='He said "more" of Ana\'s')
    for language, wanted in (
        ("en_GB", "“more”"),
        ("de_DE", "„more“"),
        ("fr_FR", "«\u00a0more\u00a0»"),
    ):
        pdf = print_cards([replace(jobs[0], card=said)], "90x65", SheetOptions(language=language))
        text = heard(pdf)
        assert wanted in text, text
        assert "Ana’s" in text
        assert '"' not in text


def heard(pdf: bytes) -> str:
    with open_letters(pdf) as opened:
        return "\n".join(
            "".join(char["text"] for char in line)
            for one in paragraphs_of(opened)
            for line in one.lines
        )


def test_capitals_are_spaced(jobs: list[CardJob]) -> None:
    apart = {}
    for word in ("MINIMUM", "minimum"):
        said = replace(jobs[0].card, message=f"a {word} of it")
        pdf = print_cards([replace(jobs[0], card=said)], "90x65", SheetOptions())
        with open_letters(pdf) as opened:
            one = next(one for one in paragraphs_of(opened) if word in one.text)
        line = one.lines[0]
        at = "".join(char["text"] for char in line).index(word)
        letters = line[at : at + len(word)]
        gaps = [after["x0"] - before["x1"] for before, after in pairwise(letters)]
        apart[word] = sum(gaps) / len(gaps) / letters[0]["size"]
    assert apart["minimum"] == pytest.approx(0, abs=0.01)
    assert apart["MINIMUM"] == pytest.approx(0.05, abs=0.015)


# where these may be parted: the syllables of Duden and of Merriam-Webster, from memory
GERMAN = "Weih-nachts-ge-würz-mi-schungs-löf-fel-chen"
ENGLISH = "coun-ter-rev-o-lu-tion-ar-ies"


@pytest.mark.parametrize(("language", "parts"), [("de_DE", GERMAN), ("en_GB", ENGLISH)])
def test_long_words_are_parted_as_their_language_parts_them(
    jobs: list[CardJob], language: str, parts: str
) -> None:
    word = parts.replace("-", "")
    said = replace(jobs[0].card, use=f"Ein {word} mit dem {word} und von {word} in {word}.")
    pdf = print_cards([replace(jobs[0], card=said)], "90x65", SheetOptions(language=language))
    with open_letters(pdf) as opened:
        one = next(one for one in paragraphs_of(opened) if "mit dem" in one.text)
    assert one.parted, one.said
    syllables = parts.split("-")
    allowed = {"".join(syllables[:at]) for at in range(1, len(syllables))}
    assert set(one.parted) <= allowed, one.said


def test_no_short_word_of_ours_is_parted(
    read: dict[tuple[str, str], list[Paragraph]], jobs: list[CardJob]
) -> None:
    said = " ".join(
        f"{job.card.title} {job.card.what} {job.card.use} {job.card.keep} {job.card.once_opened} "
        f"{' '.join(job.card.cautions)} {' '.join(entry.whole for entry in job.card.contents)} "
        f"{''.join(words.text for words in job.card.allergen_words)} {job.card.url}"
        for job in jobs
    )
    hyphened = set(re.findall(r"[\w./:-]*-", said))
    for one in running(read):
        for end in one.parted:
            assert any(whole.endswith(f"{end}-") for whole in hyphened), one.said


def test_figures_are_those_of_their_face(made: dict[tuple[str, str], bytes]) -> None:
    """Figures in words are as high as small letters, those of dates as high as capitals.

    Told by the boxes of the glyphs themselves: an old-style 1 is 0.4 em high in EB Garamond, a
    lining one 0.65; Alegreya Sans has 0.62 for its lining figures.
    """
    heights: dict[str, set[float]] = {"EBGaramond": set(), "AlegreyaSans": set()}
    document = pypdfium2.PdfDocument(made["plain", "90x65"])
    with open_letters(made["plain", "90x65"]) as opened:
        faces = [
            [(char["text"], char["fontname"], char["size"]) for char in page.chars]
            for page in opened.pages
        ]
    for number, letters in enumerate(faces):
        text = document[number].get_textpage()
        ones = [at for at in range(text.count_chars()) if text.get_text_range(at, 1) == "1"]
        own = [letter for letter in letters if letter[0] == "1"]
        assert len(ones) == len(own)
        for at, (_, face, size) in zip(ones, own, strict=True):
            _, bottom, _, top = text.get_charbox(at)
            name = face.partition("+")[2].partition("-")[0]
            heights[name].add(round((top - bottom) / size, 2))
    assert heights["EBGaramond"]
    assert heights["AlegreyaSans"]
    assert max(heights["EBGaramond"]) < 0.5
    assert min(heights["AlegreyaSans"]) > 0.55


def luminance(colour: tuple[float, ...]) -> float:
    """Return the relative luminance of a colour, by WCAG 2.2's own sum (read)."""
    parts = (colour[0],) * 3 if len(colour) == 1 else colour
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: float, other: float) -> float:
    light, dark = max(one, other), min(one, other)
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("name", designs_of())
def test_every_letter_is_readable_on_its_paper_and_from_a_grey_printer(
    jobs: list[CardJob], name: str
) -> None:
    few = [replace(jobs[0], card=replace(jobs[0].card, **NAMES))]
    pdf = print_cards(few, "folded-a6", SheetOptions(design=choose_design(name)))
    with open_letters(pdf) as opened:
        inks = {
            tuple(float(part) for part in char["non_stroking_color"])
            for page in opened.pages
            for char in page.chars
            if char["text"].strip()
        }
    assert inks
    paper = PAPERS.get(name, "#ffffff")
    light = luminance(tuple(int(paper[at : at + 2], 16) / 255 for at in (1, 3, 5)))
    for ink in inks:
        assert contrast(luminance(ink), light) >= LEAST_CONTRAST, (ink, paper)
        assert contrast(luminance((grey(ink),)), 1.0) >= LEAST_CONTRAST, ink


def grey(colour: tuple[float, ...]) -> float:
    """Return what a grey printer makes of a colour: its luma (ITU-R BT.601, from memory)."""
    if len(colour) == 1:
        return colour[0]
    return 0.299 * colour[0] + 0.587 * colour[1] + 0.114 * colour[2]


def test_a_card_is_read_whole(read: dict[tuple[str, str], list[Paragraph]]) -> None:
    """The reader of these tests misses nothing: each title is a heading on its card."""
    titles = [one.text for one in read["plain", "90x65"] if one.kind.startswith("H")]
    assert len(titles) == len(set(titles)) == 20
    marks: list[Any] = [one for one in read["plain", "90x65"] if one.text.startswith("Made on")]
    assert len(marks) == 20


def test_all_words_of_a_title_stand_as_far_apart(jobs: list[CardJob]) -> None:
    """A stranger's "in '68, for you, 1/2 for me" had half a space behind each comma."""
    title = """Fudge, "no fail" since '68, for two: for you, for me; for all, for ever"""
    named = [replace(jobs[0], card=replace(jobs[0].card, title=title))]
    gaps = []
    with open_letters(print_cards(named, "folded-a6", SheetOptions())) as opened:
        (head,) = [one for one in paragraphs_of(opened) if one.kind.startswith("H")]
        for line in head.lines:
            seen = [char for char in line if char["text"].strip()]
            words = [(one, other) for one, other in pairwise(seen) if other["x0"] - one["x1"] > 1]
            gaps += [(other["x0"] - one["x1"]) / one["size"] for one, other in words]
    assert len(gaps) == len(title.split()) - len(head.lines)
    # what is left are pairs of letters that the face draws nearer: "v" and a stop, quotes
    assert max(gaps) - min(gaps) < 0.06


@pytest.mark.parametrize("many", range(4, 12))
def test_a_short_last_part_of_a_list_stands_beside_another(jobs: list[CardJob], many: int) -> None:
    """A stranger's cocoa ended in "cornflour), / salt." on its card."""
    parts = [ContentsEntry(name, False) for name in (*LARDER[:many], "salt")]
    job = next(one for one in jobs if one.recipe.slug == "lavender-sugar")
    card = replace(job.card, contents=tuple(parts), strength_text="")
    for size in ("90x65", "folded-a6"):
        with open_letters(print_cards([replace(job, card=card)], size, SheetOptions())) as pdf:
            words = [word for page in pdf.pages for word in page.extract_words()]
        (last,) = [word for word in words if word["text"] == "salt."]
        beside = [
            word for word in words
            if word is not last and abs(word["bottom"] - last["bottom"]) < 1
            and 0 < last["x0"] - word["x1"] < 8
        ]  # fmt: skip
        assert beside, (many, size)
