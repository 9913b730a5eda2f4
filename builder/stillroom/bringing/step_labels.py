"""Steps that a page labels instead of numbering: "STEP 1" alone above what is done, or within it.

Copying glues a label to the sentence before it, or behind it. Leaves out "Step 1: peel the plums",
which is a number like any other: sorting.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from stillroom.bringing.found import Row, Shape
from stillroom.bringing.heads import STEP_WORD, section_of
from stillroom.bringing.sorting import is_ingredient, is_sentence

_LABEL: Final = re.compile(rf"{STEP_WORD}\s+(?P<number>\d{{1,2}})\s*[.:]?", re.IGNORECASE)
# ".STEP 2" at the end of a sentence, with or without what follows it; "as in step 2" is none
_WITHIN: Final = re.compile(
    r"(?:(?<=[.!?)])|^)\s*(?P<label>(?:STEP|Step|SCHRITT|Schritt|ÉTAPE|Étape|Etape|PASO|Paso|PASSO|Passo|PASSAGGIO|Passaggio"
    r"|FASE|Fase|STAP|Stap|STEG|Steg)\s*\d{1,2})(?:(?=[A-ZÀ-Ý][a-zà-ÿ])|\s*$|\n)"
)
# "Step One Put all dry things in a bowl", counted in words before what is done
_IN_WORDS: Final = re.compile(
    r"(?:STEP|Step|SCHRITT|Schritt|ÉTAPE|Étape|PASO|Paso|PASSO|Passo|STAP|Stap|STEG|Steg|TRIN|Trin)\s+"
    r"(?P<word>[^\W\d_]{2,9})\s*[.:–-]?\s+(?=[A-ZÀ-Ý])"
)
_DASHED: Final = re.compile(
    r"(?P<number>\d{1,2})\s+[-–—]\s+(?P<said>[A-ZÀ-Ý][^\W\d]+\s+\S.*)", re.DOTALL
)
_SIGNED: Final = re.compile(
    r"(?:\(?(?P<signed>\d{1,2})\s?(?:/|[°º]\s?[.)/–-]?)|\[(?P<squared>\d{1,2})\]|(?P<bare>\d{1,2})(?=\s[A-ZÀ-Ý]))"
    r"\s*(?P<said>[^\W\d].*|-)",
    re.DOTALL,
)
_MOST_OF_A_HEAD: Final = 8
_LEAST: Final = 2
_GLUED: Final = re.compile(r"(?P<number>\d{1,2})(?=[A-ZÄÖÜÉÈÀ][a-zà-ÿ])")


def with_labels_apart(rows: Sequence[Row]) -> list[Row]:
    """Return rows with what stands below each label as a step, and without the labels.

    >>> rows = [Row("STEP 1"), Row("Stone the plums.STEP 2"), Row("Boil them.")]
    >>> [(row.text, row.shape) for row in with_labels_apart(rows)]
    [('Stone the plums.', 'step'), ('Boil them.', 'step')]
    """
    parted = [
        replace(row, text=part)
        for row in rows
        for part in (parts_of(row.text) if row.shape != "heading" else [row.text])
    ]
    if counted_in_words := [row for row in parted if _IN_WORDS.match(row.text)]:
        words = [
            one["word"].lower() for row in counted_in_words if (one := _IN_WORDS.match(row.text))
        ]
        if len(set(words)) == len(words) >= _LEAST:  # no two of one number
            parted = [_without_number_word(row) for row in parted]
    labels = [one for row in parted if (one := _LABEL.fullmatch(row.text.strip()))]
    counted = [int(one["number"]) for one in labels]
    if len(labels) < _LEAST or counted != [*range(1, len(labels) + 1)]:
        return parted if counted_in_words else list(rows)
    if sum(_heads_a_list(parted, at) for at in range(len(parted) - 1)) >= _LEAST:
        return list(rows)  # stages, each with a list of its own
    found: list[Row] = []
    begins = False
    for row in parted:
        if _LABEL.fullmatch(row.text.strip()):
            begins = True
            continue
        told = row.shape in ("line", "item", "step")
        found.append(replace(row, shape="step", level=0) if begins and told else row)
        begins = begins and not told
    return found


def labels_over_lists(lines: Sequence[str]) -> frozenset[str]:
    """Return the labels right above things that go in: those of stages, and of no steps.

    >>> sorted(labels_over_lists(["Step 1:", "1 lb salt", "", "Mix.", "Step 2:", "", "2 eggs"]))
    ['Step 1:', 'Step 2:']
    >>> labels_over_lists(["Step 1", "Mix the salt.", "Step 2", "Keep it."])
    frozenset()
    """
    said = [line.strip() for line in lines if line.strip()]
    labels = [one for one in said if _LABEL.fullmatch(one)]
    found = {one for one, below in pairwise(said) if one in labels and _begins_a_list(below)}
    return frozenset(labels) if len(found) >= _LEAST else frozenset()


def _begins_a_list(text: str) -> bool:
    bare = text.lstrip("-*•–— ")
    return is_ingredient(bare) or section_of(bare) == "ingredients"


def _heads_a_list(rows: Sequence[Row], at: int) -> bool:
    """Whether a label stands above a list of things: "STEP 2", and "1 lb sugar" below it."""
    return _begins_a_list(rows[at + 1].text) and bool(_LABEL.fullmatch(rows[at].text.strip()))


def with_dashed_numbers_apart(rows: Sequence[Row]) -> list[Row]:
    """Return rows with "1 - Macération des figues" as heads or steps, where they count on.

    >>> rows = [Row("1 - Maceration of figs"), Row("Wash them."), Row("2 - Boil them for an hour.")]
    >>> [(row.text, row.shape) for row in with_dashed_numbers_apart(rows)][::2]
    [('Maceration of figs', 'heading'), ('Boil them for an hour.', 'step')]
    """
    found = [(at, one) for at, row in enumerate(rows) if (one := _DASHED.fullmatch(row.text))]
    counted = [int(one["number"]) for _, one in found]
    if len(counted) < _LEAST or counted != [*range(1, len(counted) + 1)]:
        return list(rows)
    apart = list(rows)
    for at, one in found:
        told = bool(re.search(r"[.!;]$", one["said"])) or len(one["said"].split()) > _MOST_OF_A_HEAD
        shape: Shape = "step" if told else "heading"
        apart[at] = replace(rows[at], text=one["said"], shape=shape, level=0 if told else 6)
    return apart


def _without_number_word(row: Row) -> Row:
    found = _IN_WORDS.match(row.text)
    if found is None or row.shape == "heading":
        return row
    return replace(row, text=row.text[found.end() :], shape="step")


def with_glued_numbers_apart(rows: Sequence[Row]) -> list[Row]:
    """Return rows as steps where a page glued their numbers to sentences: "1Stone", "2Boil".

    >>> [row.text for row in with_glued_numbers_apart([Row("1Peel it."), Row("2Boil it.")])]
    ['Peel it.', 'Boil it.']
    >>> [row.text for row in with_glued_numbers_apart([Row("1Ei"), Row("2Zitronen")])]
    ['1Ei', '2Zitronen']
    """
    found = list(rows)
    run: list[int] = []
    for at, row in enumerate([*rows, Row("")]):
        glued = _GLUED.match(row.text) if row.shape == "line" else None
        if glued and int(glued["number"]) == len(run) + 1:
            run.append(at)
            continue
        told = sum(rows[one].text.rstrip().endswith((".", "!")) for one in run)
        if len(run) >= _LEAST and told * 2 > len(run):
            for one in run:
                bare = rows[one].text.lstrip("0123456789")
                found[one] = replace(rows[one], text=bare, shape="step")
        run = [at] if glued and int(glued["number"]) == 1 else []
    return found


def with_signed_numbers_apart(rows: Sequence[Row]) -> list[Row]:
    """Return rows as steps where their numbers have another sign: "1/ Peel", "[2] Boil", "3° Pot".

    A bare number counts where sentences follow: "1 Peel them.", and never "1 Apple".

    >>> [row.text for row in with_signed_numbers_apart([Row("1/ Peel it"), Row("2/ Boil it")])]
    ['Peel it', 'Boil it']
    >>> [row.text for row in with_signed_numbers_apart([Row("1° Peel it"), Row("3° Boil it")])]
    ['1° Peel it', '3° Boil it']
    >>> [row.text for row in with_signed_numbers_apart([Row("1 Apple"), Row("2 Pears, cored.")])]
    ['1 Apple', '2 Pears, cored.']
    """
    found = list(rows)
    run: list[tuple[int, str]] = []
    sign = ""
    for at, row in enumerate([*rows, Row("1/ -")]):
        signed = _SIGNED.fullmatch(row.text) if row.shape in ("line", "item") else None
        if signed is None:
            continue
        kind = next(one for one in ("signed", "squared", "bare") if signed[one])
        number = int(signed[kind])
        if number == len(run) + 1 and (kind == sign or number == 1):
            run, sign = [*run, (at, signed["said"])], kind
        elif number == 1:
            told = sum(is_sentence(one) for _, one in run) * 2 > len(run)
            if len(run) >= _LEAST and (told or sign != "bare"):
                for one, text in run:
                    found[one] = replace(rows[one], text=text, shape="step", level=0)
            run, sign = [(at, signed["said"])], kind
    return found


def parts_of(text: str) -> list[str]:
    """Return a line, parted where a label is glued to a sentence of it.

    >>> parts_of("Boil it.STEP 2"), parts_of("Étape 1Laver."), parts_of("Boil it (see step 2).")
    (['Boil it.', 'STEP 2'], ['Étape 1', 'Laver.'], ['Boil it (see step 2).'])
    """
    found: list[str] = []
    begin = 0
    for one in _WITHIN.finditer(text):
        found += [text[begin : one.start()].strip(), one["label"].strip()]
        begin = one.end()
    return [part for part in (*found, text[begin:].strip()) if part] if found else [text]
