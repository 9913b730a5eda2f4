"""Boxes back into a recipe's file: nothing changes but what was changed, and it reads as typed."""

from __future__ import annotations

import difflib
from pathlib import Path

import pytest

from stillroom.desk.filled import filled, lost_of
from stillroom.desk.recipe_form import FIELDS, form_of
from stillroom.desk.recipe_rows import lay_out
from stillroom.desk.recipe_writing import differing, write_form

RECIPES = sorted((Path(__file__).resolve().parents[2] / "recipes").glob("*.md"))
MORE = {
    "ingredients": "\n100 g brown sugar",
    "timeline": "\nrest: 3 days",
    "method": "\nDo it: “so” # 3.",
    "after": "\n\n## More\n\nWords: more # so.",
    "intro": "\nWords: more # so.",
}

ODD = """---
# my grandmother's, from the blue book
title: Plum gin   # the purple one
kind:   infusion
makes: "800 ml"

ingredients:
# the best there is
- 700 ml gin, 40% vol   # any will do
- 350 g ripe plums, halved and stoned

# white, not brown
- 120 g caster sugar
card: {use: In a small glass.}
---

Worth it.

## Method

1. Put {plums} and {caster sugar} in a jar,
   pour in {gin}.
2. Shake it when you pass.
"""


def changed_lines(before: str, after: str) -> list[str]:
    rows = difflib.ndiff(before.splitlines(), after.splitlines())
    return [row for row in rows if row[0] in "+-"]


@pytest.mark.parametrize("ends", ["\n", "\r\n"], ids=["unix", "windows"])
@pytest.mark.parametrize("path", RECIPES, ids=lambda path: path.stem)
def test_what_was_not_touched_stays(path: Path, ends: str) -> None:
    raw = path.read_text(encoding="utf-8").replace("\n", ends)
    form = form_of(lay_out(raw, path.name))
    assert write_form(raw, path.name, form) == raw


@pytest.mark.parametrize("way", ["more", "less", "turned", "other"])
@pytest.mark.parametrize("path", RECIPES, ids=lambda path: path.stem)
def test_each_box_alone_is_written_and_reads_as_typed(path: Path, way: str) -> None:
    raw = path.read_text(encoding="utf-8").replace("\n", "\r\n")
    form = form_of(lay_out(raw, path.name))
    for box in FIELDS:
        lines = form[box].split("\n")
        if way == "more":
            lines = (form[box] + MORE.get(box, " more: words")).split("\n")
        elif way == "less" and len(lines) > 2:
            del lines[1]
        elif way == "turned" and len(lines) > 2:
            lines[:2] = lines[1::-1]
        elif way == "other" and box != "after":
            lines[len(lines) // 2] = lines[len(lines) // 2].replace("a", "aa", 1)
        new = form | {box: "\n".join(lines)}
        if new == form:
            continue
        written = write_form(raw, path.name, new)
        assert differing(written, path.name, new) == {}, box
        assert written.count("\r\n") == written.count("\n")
        assert len(changed_lines(raw, written)) <= 14, box


@pytest.mark.parametrize(
    ("box", "old", "new", "expected"),
    [
        ("title", "Plum gin", "Damson gin", "title: Damson gin   # the purple one"),
        ("makes", "800 ml", "1 l", "makes: 1 l"),
        ("ingredients", "700 ml gin", "1 l gin", "- 1 l gin, 40% vol   # any will do"),
        ("ingredients", "120 g caster sugar", "130 g caster sugar", "- 130 g caster sugar"),
        ("method", "Shake it", "Turn it", "2. Turn it when you pass."),
    ],
)
def test_one_line_is_changed_and_notes_stay(box: str, old: str, new: str, expected: str) -> None:
    form = form_of(lay_out(ODD, "odd.md"))
    assert old in form[box]
    written = write_form(ODD, "odd.md", form | {box: form[box].replace(old, new)})
    rows = changed_lines(ODD, written)
    assert [row[2:] for row in rows if row[0] == "+"] == [expected]
    assert len(rows) == 2


def test_a_line_of_which_the_file_says_more_keeps_it() -> None:
    raw = next(path for path in RECIPES if "vanilla-extract" in path.stem).read_text("utf-8")
    form = form_of(lay_out(raw, "v.md"))
    assert "vanilla pods, 205 g per 1 l of vodka" in form["ingredients"]
    new = form["ingredients"].replace("205 g per", "210 g per")
    written = write_form(raw, "v.md", form | {"ingredients": new})
    assert [row for row in changed_lines(raw, written) if row[0] == "+"] == [
        "+     amount: 210 g per 1 l of vodka"
    ]


def test_a_new_file_says_what_was_typed() -> None:
    typed = {
        "title": 'The "best": jam',
        "kind": "preserve",
        "makes": "4 jars of 200 ml",
        "ingredients": "- 1 kg plums\nFor the top:\n2 tbsp brandy # a good one",
        "method": "1. Stone the plums,\nthen boil ‹plums›.\n2. Pour ‹brandy› over.",
        "keeps_unopened": "6 months",
        "keeps_source": "maker's own practice",
        "card_use": "On toast.",
    }
    written = write_form("", "jam.md", typed)
    assert differing(written, "jam.md", typed) == {}
    assert "{plums}" in written
    assert "‹" not in written


# what cooks type and paste into a method, with the steps that it says (expected by hand)
@pytest.mark.parametrize(
    ("typed", "steps"),
    [
        ("- rub the butter in\n- roll it out", ["rub the butter in", "roll it out"]),
        ("1. rub it in\n2. roll it out\n3) bake", ["rub it in", "roll it out", "bake"]),
        ("Rub it in\n\nbake for 12 minutes", ["Rub it in bake for 12 minutes"]),
        ("1. Rub it in. 2. Roll it. 3. Bake.", ["Rub it in.", "Roll it.", "Bake."]),
        ("Rub it in. 2. Roll it out", ["Rub it in.", "Roll it out"]),
        ("Soak for 1. Then 4. Stir.", ["Soak for 1. Then 4. Stir."]),
        ("Stir.\nServe with:", ["Stir.", "Serve with:"]),
        ("Make the icing:", ["Make the icing:"]),
        ("Stir {sugar} in.\nShake.", ["Stir {sugar} in.", "Shake."]),
        ("1. Make the icing:\n2. Ice it.", ["Make the icing:", "Ice it."]),
        ("# Stir it", ["# Stir it"]),
    ],
)
def test_steps_are_kept_however_they_are_typed(typed: str, steps: list[str]) -> None:
    form = {"title": "Jam", "makes": "4 jars", "ingredients": "1 kg sugar", "method": typed}
    written = write_form("", "jam.md", form)
    assert differing(written, "jam.md", form) == {}
    read = lay_out(written, "jam.md")
    assert [row.value for row in read.steps] == steps
    # opened and kept again with another name, no line of it changes
    again = write_form(written, "jam.md", form_of(read) | {"title": "Jelly"})
    assert [row for row in changed_lines(written, again) if row[0] == "+"] == ["+ title: Jelly"]
    assert differing(again, "jam.md", form_of(read) | {"title": "Jelly"}) == {}


@pytest.mark.parametrize(
    ("method", "after", "kept", "below"),
    [
        ("Stir.\nTo serve:\nDust it.", "", "Stir.", "## To serve\n\nDust it."),
        ("Stir.\n\nNotes:\n- It sets.", "", "Stir.", "## Notes\n\n- It sets."),
        (
            "Stir.\nTip:\nDust it.",
            "It sets.",
            "Stir.",
            "## Tip\n\nDust it.\n\n## Notes\n\nIt sets.",
        ),
        ("For the icing:\nStir.", "", "For the icing:\nStir.", ""),
        (
            *("Stir.\nTo serve:\nDust it.\nNotes:\nIt sets.", "", "Stir."),
            "## To serve\n\nDust it.\n\n## Notes\n\nIt sets.",
        ),
        ("1. Stir.\nTips:\n- Dust it.", "", "1. Stir.", "## Tips\n\n- Dust it."),
        ("Stir.\nTo serve:", "", "Stir.\nTo serve:", ""),
        ("Stir.", "#5 tin", "Stir.", "## Notes\n\n#5 tin"),
        ("Stir.", "**Tips**\n\nDust.", "Stir.", "## Notes\n\n**Tips**\n\nDust."),
        ("Stir.", "### Storage\n\nCool.", "Stir.", "### Storage\n\nCool."),
    ],
)
def test_what_is_no_step_goes_below(method: str, after: str, kept: str, below: str) -> None:
    form = filled({"title": "Jam", "makes": "4 jars", "method": method, "after": after})
    assert (form["method"], form["after"]) == (kept, below)
    written = write_form("", "jam.md", form)
    assert lost_of(written, "jam.md", form) == []


@pytest.mark.parametrize(
    "method",
    ["1. Stir.\nTip:\nA spoon will do.\n2. Bake.", "Stir.\nNote:\nSlowly.\nFor the icing:\nBeat."],
)
def test_a_tip_amid_the_steps_takes_none_of_them_along(method: str) -> None:
    form = filled({"title": "Jam", "makes": "4 jars", "method": method})
    assert form["method"] == method
    lost = lost_of(write_form("", "jam.md", form), "jam.md", form)
    assert [one.box for one in lost] == ["method"]


def test_words_that_a_file_would_take_for_something_else_are_named() -> None:
    form = filled({"title": "Jam", "intro": "Nan's.\n## Method", "method": "Stir."})
    lost = lost_of(write_form("", "jam.md", form), "jam.md", form)
    assert [(one.called, one.words) for one in lost] == [("Why it is worth making", "## Method")]
