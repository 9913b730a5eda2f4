"""How words are set on cards and in the book in six languages, read from the PDFs.

What is not to be parted was written down before the code was looked at; where long words may be is
each language's own, from memory.
"""

from __future__ import annotations

import re
from copy import deepcopy
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Any

import pytest

from letters import open_letters
from stillroom.core.label.labelling import ContentsEntry
from stillroom.printing.cards import CardJob, SheetOptions, print_cards
from stillroom.printing.family_book import print_book

from .paragraphs import Paragraph, paragraphs_of


@dataclass(frozen=True)
class Told:
    """A sentence, what in it stays on one line, its quotes, and a long word by its syllables."""

    words: str
    whole: tuple[str, ...]
    quoted: str
    long: str


TOLD = {
    "en_GB": Told(
        'Take 250 g with 3 tablespoons of oil by 12 November 2026 and say "good" at 25 % of it.',
        ("250 g", "3 tablespoons", "12 November 2026", "25 %"),
        "“good”", "coun-ter-rev-o-lu-tion-ar-ies",
    ),
    "de_DE": Told(
        'Nimm 250 g mit 3 EL Öl, z. B. am 12. November 2026, und sag dann "gut" bei 25 % davon.',
        ("250 g", "3 EL", "z. B.", "12. November 2026", "25 %"),
        "„gut“", "Weih-nachts-ge-würz-mi-schungs-löf-fel-chen",
    ),
    "fr_FR": Told(
        'Prends 250 g et 3 cuillères ; le 12 novembre 2026 dis "bon" : 25 % est-ce assez ? Oui !',
        ("250 g", "3 cuillères ;", "12 novembre 2026", "25 %", "assez ?", "Oui !", "bon » :"),
        "« bon »", "an-ti-cons-ti-tu-tion-nel-le-ment",
    ),
    "it_IT": Told(
        "Prendi 250 g con 3 cucchiai e il 12 novembre 2026 dirai \"buono\" per il 25 % solo.",
        ("250 g", "3 cucchiai", "12 novembre 2026", "25 %"),
        "«buono»", "pre-ci-pi-te-vo-lis-si-me-vol-men-te",
    ),
    "es_ES": Told(
        'Toma 250 g con 3 cucharadas de aceite; el 12 de noviembre de 2026 di "bueno" al 25 % ya.',
        ("250 g", "3 cucharadas", "12 de noviembre de 2026", "25 %"),
        "«bueno»", "des-pro-por-cio-na-da-men-te",
    ),
    "nl_NL": Told(
        'Neem 250 g met 3 eetlepels olie; zeg op 12 november 2026 daarvan "goed" en 25 % ook.',
        ("250 g", "3 eetlepels", "12 november 2026", "25 %"),
        "“goed”", "ver-ze-ke-rings-maat-schap-pij",
    ),
}  # fmt: skip
SHIFTS = 12
"""As many cards, each with some letters more before: lines end everywhere in the sentence."""


def with_use(job: CardJob, use: str) -> CardJob:
    return replace(job, card=replace(job.card, use=use))


@pytest.fixture(scope="module")
def set_in(jobs: list[CardJob]) -> dict[str, list[Paragraph]]:
    """Return, by language, the paragraphs of the sentence on cards, each begun otherwise."""
    found = {}
    for language, told in TOLD.items():
        shifted = [with_use(jobs[0], f"{'x' * (at + 1)} {told.words}") for at in range(SHIFTS)]
        pdf = print_cards(shifted, "90x65", SheetOptions(language=language))
        with open_letters(pdf) as opened:
            found[language] = [one for one in paragraphs_of(opened) if told.whole[0] in one.text]
    return found


@pytest.mark.parametrize("language", TOLD)
def test_what_belongs_together_stands_on_one_line(
    set_in: dict[str, list[Paragraph]], language: str
) -> None:
    said = set_in[language]
    assert len(said) == SHIFTS
    ends = set()
    for one in said:
        ends |= {" ".join(before.split()[-2:]) for before, _ in pairwise(one.said)}
        for whole in TOLD[language].whole:
            assert any(whole in line for line in one.said), (whole, one.said)
    assert len(ends) >= 4  # lines end in many places


@pytest.mark.parametrize("language", TOLD)
def test_quotes_and_last_lines_are_those_of_the_language(
    set_in: dict[str, list[Paragraph]], language: str
) -> None:
    assert len(set_in[language]) == SHIFTS
    for one in set_in[language]:
        assert TOLD[language].quoted in one.text.replace("\u00a0", " ")
        assert len(one.said[-1].split()) > 1, one.said
        assert '"' not in one.text


def may_end(parts: str) -> set[str]:
    syllables = parts.split("-")
    return {"".join(syllables[:at]) for at in range(1, len(syllables))}


@pytest.mark.parametrize("language", TOLD)
def test_long_words_are_parted_as_the_language_parts_them(
    jobs: list[CardJob], language: str
) -> None:
    parts = TOLD[language].long
    word = parts.replace("-", "")
    shifted = [
        with_use(jobs[0], f"{'x' * (at + 1)} {word} yy {word} zz {word}.") for at in range(SHIFTS)
    ]
    pdf = print_cards(shifted, "90x65", SheetOptions(language=language))
    with open_letters(pdf) as opened:
        parted = [end for one in paragraphs_of(opened) if "yy" in one.text for end in one.parted]
    assert len(parted) > 3
    assert set(parted) <= may_end(parts)


@pytest.mark.parametrize("language", TOLD)
def test_the_book_parts_long_words_as_the_language_parts_them(
    data: dict[str, Any], language: str
) -> None:
    """In prose, where a line would be left much too short; never in a title."""
    parts = TOLD[language].long
    word = parts.replace("-", "")
    changed = deepcopy(data)
    changed["language"], changed["region"] = language.split("_")
    chapter = changed["chapters"][0]
    changed["chapters"] = [{**chapter, "recipes": chapter["recipes"][:1]}]
    (recipe,) = changed["chapters"][0]["recipes"]
    step = recipe["steps"][0]["runs"]
    recipe["title"] = f"{word} {word} yy"
    # one word of no language fills most of a line: ours is parted, or the line is half empty
    recipe["steps"] = [
        {**recipe["steps"][0], "runs": [{**step[0], "text": f"{'x' * at} {word} yy {word}"}]}
        for at in range(26, 44)
    ]
    slugs = {recipe["slug"]}
    for key in ("safety", "ingredient_index"):
        changed[key] = [one for one in changed[key] if slugs >= set(one["slugs"])]
    changed["month_index"] = []
    changed["writers"] = []
    with open_letters(print_book(changed)) as opened:
        found = [one for one in paragraphs_of(opened) if "yy" in one.text]
    assert any(one.kind.startswith("H") for one in found)
    parted = [end for one in found for end in ends_within(word, one)]
    assert [one.said for one in found if one.kind.startswith("H") and ends_within(word, one)] == []
    assert len(parted) > 1
    assert set(parted) <= may_end(parts)


def ends_within(word: str, one: Paragraph) -> list[str]:
    """Return what of a word stands before a line's end; its hyphen is no letter to a reader."""
    pairs = ((a.split()[-1].rstrip("-"), b.split()[0].rstrip(".,")) for a, b in pairwise(one.said))
    return [head for head, rest in pairs if head + rest == word]


def test_no_ordinary_line_of_the_book_ends_in_a_parted_word(printed: bytes) -> None:
    """Set ragged, English needs it nowhere: a hyphen at a line's end is the word's own."""
    with open_letters(printed) as opened:
        running = [one for one in paragraphs_of(opened) if len(one.lines) > 1]
    parted = [end for one in running for end in one.parted]
    own = {"product", "still", "use", "food", "candle", "single", "half", "cold", "wide", "sand"}
    assert [end for end in parted if not re.fullmatch(r"[a-z]+", end) or end not in own] == []
    lines = sum(len(one.lines) - 1 for one in running)
    assert lines > 500
    alone = [one.said for one in running if len(one.said[-1].split()) == 1]
    assert len(alone) < 0.06 * len(running)


def test_a_title_s_words_stay_whole_where_a_line_holds_them(jobs: list[CardJob]) -> None:
    title = "Elisenlebkuchen mit Haselnüssen, Mandeln und Orangeat nach Großmutters Weihnachtsbuch"
    named = replace(jobs[0], card=replace(jobs[0].card, title=title))
    for size in ("90x65", "folded-a6"):
        with open_letters(print_cards([named], size, SheetOptions(language="de_DE"))) as opened:
            (head,) = [one for one in paragraphs_of(opened) if one.kind.startswith("H")]
        assert len(head.lines) > 1
        assert head.text == title


def test_no_sign_begins_a_line_of_a_french_title(jobs: list[CardJob]) -> None:
    """As people write them, with a space before the sign; the fraction is one sign."""
    named = [
        replace(jobs[0], card=replace(jobs[0].card, title=f"Qui veut {'x' * (at + 1)} {end}"))
        for at in range(SHIFTS)
        for end in ("du nougat ? Voilà !", "des dragées : 1 1/2 livre « maison »")
    ]
    with open_letters(print_cards(named, "90x65", SheetOptions(language="fr_FR"))) as opened:
        heads = [one for one in paragraphs_of(opened) if one.kind.startswith("H")]
    assert len(heads) == len(named)
    assert sum(len(head.lines) > 1 for head in heads) > SHIFTS
    for head in heads:
        assert not any(line.startswith(tuple("?!:»")) for line in head.said), head.said
        assert not any(line.endswith("«") for line in head.said), head.said
        assert "1/2" not in head.text
    assert sum("1½ livre" in head.text for head in heads) == SHIFTS


def test_no_part_of_a_word_ends_a_list_and_no_allergen_is_parted(jobs: list[CardJob]) -> None:
    """German bakers' lists (leafymag.de, ruprecht.de) that ended in "Va-nillezucker." alone."""
    lists = (
        "Mehl|kalte Butter|Zucker|Eier|gemahlene Mandeln|Backpulver|Vanillezucker",
        "Zwetschgen|Apfelessig|Orangensaft|gemahlener Kardamom|Wacholderbeeren|Lorbeerblätter",
    )
    contents = [ContentsEntry(one, emphasised=False) for words in lists for one in words.split("|")]
    cut = len(lists[0].split("|"))
    cards = []
    for part in (contents[:cut], contents[cut:]):
        for at in range(len(part)):
            made = replace(
                jobs[0].card, contents=tuple(part[at:]), unknown=("Mandelplättchen",) * (at % 2)
            )
            cards.append(replace(jobs[0], card=made))
    options = SheetOptions(language="de_DE")
    said = []
    for size in ("90x65", "folded-a6"):
        with open_letters(print_cards(cards, size, options)) as pdf:
            said += paragraphs_of(pdf)
    lists_set = [one for one in said if one.text.startswith("What is in it")]
    named = [one for one in said if "Mandelplättchen" in one.text]
    assert len(lists_set) >= 2 * len(cards)
    assert len(named) >= len(cards) - 2
    for one in lists_set:
        assert one.said[-1].endswith(("Vanillezucker.", "Lorbeerblätter.")), one.said
    for one in named:
        assert not one.parted
