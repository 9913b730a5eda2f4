"""Dates that are a kind's say so, and where the method differs that is said with what to write."""

from __future__ import annotations

from datetime import date

import pytest
from click.testing import CliRunner

from stillroom.cli import main
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.kind_dates import dates_of_kind, warn_of_dates
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.stage_dates import lay_out

RECIPE = """---
title: Plum gin
kind: {kind}
makes: 800 ml
ingredients:
  - 700 ml gin, 40% vol
  - 350 g plums, halved and stoned
{more}---

## Method

1. Put {{plums}} in a jar and pour in {{gin}}.
2. {step}
"""


def recipe(step: str, kind: str = "infusion", more: str = "") -> Recipe:
    return read_recipe(RECIPE.format(step=step, kind=kind, more=more), "recipes/gin.md", "gin")


# kind, step, the lines offered; none where the method agrees or says nothing
DIFFERS = [
    ("infusion", "Leave to steep for 3 weeks, shaking daily.", ["shake: every day for 3 weeks"]),
    ("infusion", "Leave to infuse for 24 hours.", ["infuse: 24 hours"]),
    ("infusion", "It is ready after four weeks.", ["usable from: 4 weeks"]),
    # near the kind's own two months, and yet strained then and not in the eighth
    ("infusion", "Leave to infuse for 10 weeks in a dark place.", ["infuse: 10 weeks"]),
    (
        "infusion",
        "Leave for two months, then strain.",
        ["rest: 2 months", "strain and bottle: 45 minutes"],
    ),
    ("infusion", "Leave for two years.", ["rest: 2 years"]),
    ("preserve", "Leave to mature for 6 weeks before eating.", ["mature: 6 weeks"]),
    ("craft", "Leave the soap to cure for four weeks.", ["cure: 4 weeks"]),
    ("bake", "Leave in the tin to mature for a month.", ["mature: 1 month"]),
]
AGREES = [
    ("infusion", "Strain and bottle."),
    ("preserve", "Boil for 20 minutes and fill the jars."),
    ("preserve", "Leave to drip overnight."),
    ("preserve", "It keeps for a year."),
    ("bake", "Bake for 25 minutes."),
]


@pytest.mark.parametrize(("kind", "step", "lines"), DIFFERS)
def test_where_the_method_differs_the_line_is_offered(
    kind: str, step: str, lines: list[str]
) -> None:
    found = dates_of_kind(recipe(step, kind))
    assert found is not None
    assert [line for line in found.offer if line in lines] == lines
    # the kind's own work stays: a jar is filled on some day, whatever it rests
    assert found.offer[0].startswith("prepare: ")
    (warning,) = warn_of_dates(recipe(step, kind))
    assert warning.line == 13
    listed = ", ".join(f'"- {line}"' for line in found.offer)
    assert warning.mend == f'Write "timeline:" and below it {listed}.'
    assert step.rstrip(".") in found.text


@pytest.mark.parametrize(("kind", "step", "lines"), DIFFERS)
def test_what_is_offered_mends_it(kind: str, step: str, lines: list[str]) -> None:
    offered = dates_of_kind(recipe(step, kind))
    assert offered is not None
    written = "".join(f"  - {line}\n" for line in offered.offer)
    mended = recipe(step, kind, "timeline:\n" + written)
    assert dates_of_kind(mended) is None
    assert warn_of_dates(mended) == ()
    assert sum(stage.hands_on_minutes for stage in mended.stages) > 0


@pytest.mark.parametrize(("kind", "step"), AGREES)
def test_where_the_method_agrees_only_the_kind_is_named(kind: str, step: str) -> None:
    found = dates_of_kind(recipe(step, kind))
    assert found is not None
    assert (found.differs, found.offer) == ("", ())
    assert found.text.startswith(f"These dates are those of any {kind}, not of this recipe")
    assert warn_of_dates(recipe(step, kind)) == ()


# kind, step, days to "can be given" at least; None where the kind's own dates stay
LONGER = [
    ("craft", "Unmould after 24 hours and cure for 4-6 weeks, turning the bars weekly.", 42),
    ("bake", "Leave in the tin to mature for a month.", 28),
    ("preserve", "Leave to mature for 6 weeks before eating.", 42),
    ("infusion", "Leave for two years.", 730),
    ("infusion", "Leave to infuse for 24 hours.", None),
    ("infusion", "Leave to soak overnight, then strain when it tastes right.", None),
    ("infusion", "Strain and bottle.", None),
    ("bake", "It keeps for a month in a tin.", None),
    ("preserve", "Leave in jars; it keeps a year.", None),
]


@pytest.mark.parametrize(("kind", "step", "days"), LONGER)
def test_a_longer_wait_of_the_method_is_waited_for(kind: str, step: str, days: int | None) -> None:
    found = recipe(step, kind)
    start = date(2027, 3, 1)
    told = dates_of_kind(found)
    assert told is not None
    if days is None:
        assert found.stages == found.stages_of_kind
        assert told.whose.startswith("These dates are those of any")
    else:
        assert (lay_out(found.stages, start).usable - start).days >= days
        assert told.whose.startswith("This recipe states no dates. These are read from its method")
        assert told.differs == ""


# step, days to "can be given"
SHORTER = [
    ("Leave for 3 weeks, shaking now and then. Strain.", 21),
    ("Shake daily for a month. Strain.", 28),
    ("Leave 2 weeks, strain, add the syrup and rest another week.", 21),
]
# what lies in the crock, and how long by its method; None where the kind's own dates stay
FERMENTS = {
    "1 kg white cabbage; 25 g sea salt; 1 tsp caraway": 21,
    "1 kg carrots; 30 g salt; 4 cloves garlic; 2 l water": 21,
    "1 kg white cabbage; 25 g salt; 1 sachet yeast": None,
    "2 kg pears; 4 l water": None,
    "1 pineapple; 200 g panela; 2 l water": None,
    "1 kg honey; 3 l water": None,
}


@pytest.mark.parametrize(("step", "days"), SHORTER)
def test_a_shorter_wait_of_what_is_steeped_is_its_own(step: str, days: int) -> None:
    start = date(2027, 3, 1)
    laid = lay_out(recipe(step).stages, start)
    assert days <= (laid.usable - start).days <= days + 4


@pytest.mark.parametrize("listed", FERMENTS)
def test_only_what_sours_in_salt_is_ready_when_its_method_says(listed: str) -> None:
    # what feeds yeast goes on working, and bursts its bottle
    lines = "".join(f"  - {one}\n" for one in listed.split("; "))
    head = f"---\ntitle: It\nkind: ferment\nmakes: 2 l\ningredients:\n{lines}---\n\n## Method\n\n"
    name = f"crock-{list(FERMENTS).index(listed)}"
    found = read_recipe(f"{head}1. Leave for 3 weeks.\n", f"recipes/{name}.md", name)
    start, days = date(2027, 3, 1), FERMENTS[listed]
    if days is None:
        assert found.stages == found.stages_of_kind
    else:
        assert (lay_out(found.stages, start).usable - start).days == days


# a wait and a keeping in one sentence: days to "can be given"
BESIDE_A_KEEPING = [
    ("Store for 2 months before eating, it will keep for a year.", 61),
    ("Leave 6 weeks before opening and it keeps 2 years.", 42),
    ("Mature for 6 weeks; it then keeps a year.", 42),
    ("It keeps for a year but leave it two months first.", 61),
]


@pytest.mark.parametrize(("step", "days"), BESIDE_A_KEEPING)
def test_a_keeping_beside_a_wait_is_no_wait(step: str, days: int) -> None:
    start = date(2027, 3, 1)
    laid = lay_out(recipe(step, "preserve").stages, start)
    assert days <= (laid.usable - start).days <= days + 3


def test_a_wait_beyond_its_keeping_is_not_taken() -> None:
    found = recipe("Leave to mature for 6 weeks.", "bake", "keeps: 2 weeks\n")
    assert found.stages == found.stages_of_kind
    told = dates_of_kind(found)
    assert told is not None
    assert "Its method says otherwise" in told.differs


def test_the_terminal_says_so(tmp_path, monkeypatch) -> None:
    monkeypatch.chdir(tmp_path)
    step = "Leave to steep for 2 days, shaking daily."
    (tmp_path / "gin.md").write_text(
        RECIPE.format(step=step, kind="infusion", more=""), encoding="utf-8"
    )
    checked = CliRunner().invoke(main, ["check", "gin.md"])
    assert checked.exit_code == 0
    assert "warning: gin.md:13: The dates are those of any infusion" in checked.stderr
    dated = CliRunner().invoke(main, ["dates", "gin.md", "--start", "2027-02-01"])
    assert "These dates are those of any infusion" in dated.stdout
    assert "step 2" in dated.stdout


# longer than the kind is usable, shorter than it is at its best: it still steeps on the kind's day
@pytest.mark.parametrize(
    ("step", "waits"),
    [
        ("Steep for 6 months, strain and bottle.", ("steep: 6 months",)),
        ("Leave for 3 months in the dark, then strain.", ("rest: 3 months",)),
        (
            "Steep two weeks and strain. Mature for nine months.",
            ("steep: 2 weeks", "mature: 9 months"),
        ),
        (
            "Steep for 2 months. Strain. Best after 8 months.",
            ("steep: 2 months", "strain and bottle: 45 minutes", "best from: 8 months"),
        ),
    ],
)
def test_what_still_steeps_is_not_usable(step: str, waits: tuple[str, ...]) -> None:
    """Forms of sloe gin pages read on 29 November 2026 (hkwriskmanagement.co.uk and others)."""
    stages = [f"{stage.word}: {stage.text}" for stage in recipe(step, "infusion").stages]
    assert [one for one in stages if one in waits] == list(waits)
    assert "usable from: 2 months" not in stages
