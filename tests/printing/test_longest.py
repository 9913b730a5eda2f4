"""The longest realistic inputs on every card and tag: whole and readable, or refused by name.

Nothing is ever clipped: what is printed has all its words, inside its box, at a readable size;
what is refused names the recipe and the part that is too long.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import replace
from pathlib import Path

import pypdfium2
import pytest
import zxingcpp

from letters import open_letters
from sampling import is_whole
from stillroom.core.book import Book
from stillroom.core.label.contents_list import ContentsEntry
from stillroom.core.label.labelling import UsageCard
from stillroom.core.paper.sheets import CARD_SIZES, PAPERS
from stillroom.core.paper.tag_shapes import SHAPES, TagShape, tag_shape
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import Unreadable
from stillroom.looks.card_designs import choose_design, designs_of
from stillroom.looks.card_pictures import CardPicture, card_picture
from stillroom.printing.cards import CardJob, SheetOptions, print_cards, print_tags

from .conftest import MM, open_pdf, words_of
from .test_cards_pdf import FOURTEEN, LARDER
from .test_print_commands import make_font

LEAST_SERIF, LEAST_PLAIN = 9, 8.5  # points: templates/theme.typ, maker's own

TITLE_OF_60 = "Bitter-orange and slow winter marmalade of the far island xx"
GERMAN = "Holunderblütenquittengeleezubereitungsanleitung"  # a compound made up here
WELSH = "Llanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogoch"  # a place, from memory
HEBREW, ARABIC, HAN = "שרה ומרים", "سارة ومريم", "数馬と花子"
OWN_LETTERS = f"{HEBREW}{ARABIC}{HAN}"

CONTENTS = tuple(ContentsEntry(name, place % 3 == 0) for place, name in enumerate(LARDER))
LONGEST = {
    "60-character title": {"title": TITLE_OF_60},
    "25 ingredients": {"contents": CONTENTS},
    "14 allergens": {"allergens": FOURTEEN},  # Regulation (EU) No 1169/2011, Annex II
    "14 traces": {"may_contain": FOURTEEN},
    "German words": {"title": f"{GERMAN} nach alter Art", "to": f"Tante {GERMAN}"},
    "German ingredient": {"contents": (*CONTENTS[:5], ContentsEntry(GERMAN, True))},
    "Welsh title": {"title": f"Jam o {WELSH}"},
    "Welsh name": {"to": f"Nain {WELSH}"},
    "right to left": {"to": HEBREW, "sender": ARABIC},
    "Han": {"to": HAN},
    "Han title": {"title": HAN * 3},
    "all at once": {
        "title": TITLE_OF_60, "contents": CONTENTS, "allergens": FOURTEEN,
        "to": f"Nain {WELSH}", "sender": f"{GERMAN} und {HAN}",
    },
}  # fmt: skip
# what goes on no face of a size; a longer card, a folded one or another shape holds it
REFUSED_ON: dict[str, tuple[str, ...]] = {
    "id-1": ("all at once",),
    "rectangle": ("all at once",),
    "luggage": ("all at once",),
    "round": ("all at once",),
}


def in_turn(sizes: Iterable[str]) -> list[tuple[str, str]]:
    """Return each input with each second size, in turn, and wherever it is refused.

    All with all when the whole is asked.
    """
    return [
        (name, size)
        for number, name in enumerate(LONGEST)
        for place, size in enumerate(sizes)
        if is_whole() or (number + place) % 2 == 0 or name in REFUSED_ON.get(size, ())
    ]


TAGS = {shape: tag_shape(shape, lid_mm=62, bottle_mm=52, wall_mm=70) for shape in SHAPES}


@pytest.fixture(scope="module")
def letters(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a folder with a font for the names that the book's faces have no letters for."""
    folder = tmp_path_factory.mktemp("fonts")
    make_font(folder, "".join(sorted(set(OWN_LETTERS) - {" "})))
    return folder


@pytest.fixture(scope="module")
def salt(recipes: tuple[Recipe, ...]) -> Recipe:
    return next(one for one in recipes if one.slug == "rosemary-salt")


def bare(words: str) -> str:
    """Return words without spaces, hyphens and the marks that part a word or turn its direction."""
    return re.sub(r"[\s\-\u00ad\u2010\u200b\u200e\u200f]", "", words)


def holds(text: str, words: str) -> bool:
    """Tell whether a word is in a PDF's text, where one set right to left may stand turned."""
    return bare(words) in text or bare(words)[::-1] in text


def check_words(made: bytes, said: list[str]) -> None:
    text = bare(words_of(made))
    missing = [word for words in said for word in words.split() if not holds(text, word)]
    assert not missing


def check_type(
    made: bytes, boxes: Callable[[float, float], tuple[float, ...]], least: float = 0
) -> None:
    """Check that every letter is large enough and inside the box in which its middle lies."""
    with open_letters(made) as pdf:
        for page in pdf.pages:
            for char in page.chars:
                if not char["text"].strip():
                    continue
                plain = "AlegreyaSans" in char["fontname"]
                assert round(char["size"], 2) >= (
                    least or (LEAST_PLAIN if plain else LEAST_SERIF)
                ), char
                x, y = (char["x0"] + char["x1"]) / 2 / MM, (char["top"] + char["bottom"]) / 2 / MM
                left, top, right, bottom = boxes(x, y)
                assert left < char["x0"] / MM, char["text"]
                assert char["x1"] / MM < right, char["text"]
                # a line's box is a little taller than its letters
                assert top < y < bottom, char["text"]


def check_refusal(refusal: Unreadable, card: UsageCard) -> None:
    """Check that the message names the recipe and either the part or the word."""
    said = str(refusal)
    assert card.title in said
    assert re.search(r', \d+\.\d mm too much|the word ".+" is longer than a line', said), said


def one_box(
    left: float, top: float, width: float, height: float
) -> Callable[..., tuple[float, ...]]:
    return lambda x, y: (left, top, left + width, top + height)


@pytest.mark.sampled
@pytest.mark.parametrize(("name", "size"), in_turn(CARD_SIZES))
def test_a_card_is_whole_or_refused(
    salt: Recipe, card_of: Callable[..., UsageCard], letters: Path, name: str, size: str
) -> None:
    card = replace(card_of(salt), **LONGEST[name])
    options = SheetOptions(fonts=letters)
    if name in REFUSED_ON.get(size, ()):
        with pytest.raises(Unreadable) as refusal:
            print_cards([CardJob(card, salt)], size, options)
        check_refusal(refusal.value, card)
        return
    made = print_cards([CardJob(card, salt)], size, options)
    said = [card.title, card.what, card.use, card.keep, *card.cautions, card.date_mark.text]
    said += [*card.allergens, *card.may_contain]
    said += [*(entry.whole for entry in card.contents), card.to, card.sender]
    check_words(made, said)
    check_type(made, boxes_of(size))


DRESSED = [name for name in designs_of() if name != "plain"]
TRIED = [
    (design, size, name)
    for design in (DRESSED if is_whole() else DRESSED[:2])
    for size in (CARD_SIZES if is_whole() else ("90x65", "folded-a6"))
    for name in (LONGEST if is_whole() else ("60-character title", "14 traces", "all at once"))
]


@pytest.mark.sampled
@pytest.mark.parametrize(("design", "size", "name"), TRIED)
def test_a_card_of_any_design_is_whole_or_refused(
    salt: Recipe,
    card_of: Callable[..., UsageCard],
    book: Book,
    letters: Path,
    design: str,
    size: str,
    name: str,
) -> None:
    """With its picture and, in the next place, without one; every code is read."""
    card = replace(card_of(salt), **LONGEST[name])
    chosen = choose_design(design)
    options = SheetOptions(fonts=letters, design=chosen)
    jobs = [
        CardJob(card, salt, picture=card_picture(salt, book, chosen)),
        CardJob(card, salt, picture=CardPicture("")),
    ]
    try:
        made = print_cards(jobs, size, options)
    except Unreadable as refusal:
        # where a border or 12 points take the room; a fold holds whatever there is
        if size == "folded-a6" or not (name == "all at once" or chosen.large):
            raise
        check_refusal(refusal, card)
        return
    said = [card.title, card.what, card.use, card.keep, *card.cautions, card.date_mark.text]
    said += [*card.allergens, *card.may_contain]
    said += [*(entry.whole for entry in card.contents), card.to, card.sender]
    check_words(made, said)
    check_type(made, boxes_of(size), 12 if chosen.large else 0)
    for dpi in (300, 150):
        codes = [
            code.text
            for page in pypdfium2.PdfDocument(made)
            for code in zxingcpp.read_barcodes(page.render(scale=dpi / 72).to_pil().convert("L"))
        ]
        assert codes == [card.url] * 2, dpi


def boxes_of(size: str) -> Callable[[float, float], tuple[float, ...]]:
    """Return for a point the face it lies on; a back lies as far from the right as its front."""
    box, paper = CARD_SIZES[size], PAPERS["a4"]
    width, height = float(box.width_mm), float(box.height_mm)
    columns, rows = int(paper.width_mm // box.width_mm), int(paper.height_mm // box.height_mm)
    left = (float(paper.width_mm) - columns * width) / 2
    top = (float(paper.height_mm) - rows * height) / 2

    def box_at(x: float, y: float) -> tuple[float, ...]:
        column, row = (x - left) // width, (y - top) // height
        assert 0 <= column < columns, (x, y)
        assert 0 <= row < rows, (x, y)
        x0, y0 = left + column * width, top + row * height
        return x0, y0, x0 + width, y0 + height

    return box_at


@pytest.mark.sampled
@pytest.mark.parametrize(("name", "shape"), in_turn(SHAPES))
def test_a_tag_is_whole_or_refused(
    salt: Recipe, card_of: Callable[..., UsageCard], letters: Path, name: str, shape: str
) -> None:
    card = replace(card_of(salt), **LONGEST[name])
    chosen: TagShape = TAGS[shape]  # type: ignore[index]
    if name in REFUSED_ON.get(shape, ()):
        with pytest.raises(Unreadable) as refusal:
            print_tags([CardJob(card, salt)], chosen, SheetOptions(fonts=letters))
        check_refusal(refusal.value, card)
        return
    made = print_tags([CardJob(card, salt)], chosen, SheetOptions(fonts=letters))
    said = [card.title, card.date_mark.text, *card.allergens, *card.may_contain]
    check_words(made, [*said, card.to, card.sender])
    with open_pdf(made) as pdf:
        shapes = [one for one in (*pdf.pages[0].rects, *pdf.pages[0].curves) if one["stroke"]]
        outline = max(shapes, key=lambda one: one["width"])
        left, top = outline["x0"] / MM, outline["top"] / MM
    check_type(made, one_box(left, top, chosen.width_mm, chosen.height_mm))


def allergen_words(card: UsageCard) -> str:
    """Return the line of allergens as it stands on paper, "" for a recipe with none."""
    parts = []
    if card.allergens:
        parts.append(f"contains {', '.join(card.allergens)}")
    if card.may_contain:
        parts.append(f"may contain traces of {', '.join(card.may_contain)}")
    line = "; ".join(parts)
    return line[:1].upper() + line[1:]


@pytest.mark.parametrize("shape", SHAPES)
def test_every_tag_says_what_it_contains_and_may_contain(jobs: list[CardJob], shape: str) -> None:
    said = [(job, allergen_words(job.card)) for job in jobs]
    assert any("; may contain" in line for _, line in said)
    assert any(line.startswith("May contain") for _, line in said)
    text = bare(words_of(print_tags(jobs, TAGS[shape], SheetOptions())))  # type: ignore[index]
    # each tag's words stand between its own title and the next one's
    heads = [text.index(bare(job.card.title)) for job, _ in said]
    assert heads == sorted(heads)
    for (job, line), start, end in zip(said, heads, [*heads[1:], len(text)], strict=True):
        assert bare(line) in text[start:end], job.card.title
