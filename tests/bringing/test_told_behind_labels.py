"""What stands behind a label beside a recipe: how long it keeps, how long it waits, its season.

"Shelf life: 6 months" was dropped with a page's cooking times, in ten languages; the labels are
those of ordinary recipe cards, written for this.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

THINGS = ["500 g plums", "250 g sugar"]
STEPS = ["Boil the plums with the sugar.", "Fill into jars.", "Label the jars."]
METHOD = "## Method\n\n" + "".join(f"{at}. {one}\n" for at, one in enumerate(STEPS, 1))
LIST = "".join(f"- {one}\n" for one in THINGS)


def paper(line: str, place: str) -> str:
    """Return a recipe with a line above its list, below the list, or below its method."""
    above, amid, below = (
        f"{line}\n\n" if place == one else "" for one in ("above", "amid", "below")
    )
    return f"Plum jam\n\n{above}{LIST}\n{amid}{METHOD}\n{below}"


@pytest.mark.parametrize("place", ["above", "amid", "below"])
@pytest.mark.parametrize(
    "line",
    [
        "Shelf life: 6 months",
        "Keeps: a year",
        "Keeps for: 2 weeks",
        "Storage time: 6 months",
        "Haltbar: 6 Monate",
        "Haltbarkeit: 6 Monate im Kühlschrank",
        "Se conserve : 6 mois",
        "Durata: 6 mesi",
        "Duración: 6 meses",
        "Houdbaarheid: 6-8 maanden",
        "Hållbarhet: 6 månader",
        "Holdbarhed: 3 måneder",
        "Validade: 6 meses",
        "Trwałość: 6 miesięcy",
        "Trvanlivost: 6 měsíců",
    ],
)
def test_how_long_it_keeps_is_not_lost_behind_a_label(line: str, place: str) -> None:
    (one,) = brought(paper(line, place))
    assert line in one.text.split("## Notes")[1]
    assert f'How long it keeps may stand here: "{line}"' in asked(one)
    assert (listed(one), steps(one)) == (THINGS, STEPS)


@pytest.mark.parametrize(
    "line", ["Ziehzeit: 4 Wochen", "Macération : 4 semaines", "Reposo: 4 semanas"]
)
def test_a_wait_that_no_step_names_is_asked_about(line: str) -> None:
    (one,) = brought(paper(line, "above"))
    assert f'How long it waits stands beside the method: "{line}"' in asked(one)
    assert (listed(one), steps(one)) == (THINGS, STEPS)


def test_a_wait_that_a_step_names_is_not_asked_about() -> None:
    text = paper("Ziehzeit: 4 Wochen", "above").replace(STEPS[1], "4 Wochen ziehen lassen.")
    (one,) = brought(text)
    assert "waits stands beside" not in asked(one)


@pytest.mark.parametrize(
    "line", ["Cook time: 20 min", "Prep time: 1 hour", "Total time: 3 days", "Gesamtzeit: 2 Tage"]
)
def test_a_pages_own_times_are_nowhere(line: str) -> None:
    (one,) = brought(paper(line, "above"))
    assert line not in one.text
    assert "waits" not in asked(one)


def test_a_label_above_its_length_is_read_as_one() -> None:
    (one,) = brought("Plum jam\n\nShelf life\n\n6 months\n\n" + LIST + "\n" + METHOD)
    assert 'How long it keeps may stand here: "Shelf life: 6 months"' in asked(one)


@pytest.mark.parametrize(
    ("line", "months"),
    [
        ("Season: September", "September"),
        ("Saison: September bis November", "September, October, November"),
        ("Saison : de juin à août", "June, July, August"),
        ("Temporada: agosto y septiembre", "August, September"),
        ("Säsong: juni-augusti", "June, July, August"),
        ("Sæson: august", "August"),
    ],
)
@pytest.mark.parametrize("place", ["above", "below"])
def test_a_season_in_months_is_the_recipes_own_and_asked(
    line: str, months: str, place: str
) -> None:
    (one,) = brought(paper(line, place))
    assert fact(one, "season") == months
    assert "when its main produce is to be had" in asked(one)
    assert line not in one.text.split("\n---\n")[1]


@pytest.mark.parametrize("line", ["Season: late summer", "Saison : été", "Season: all year"])
def test_a_season_without_months_is_a_note(line: str) -> None:
    (one,) = brought(paper(line, "above"))
    assert fact(one, "season") == ""
    assert line in one.text.split("## Notes")[1]


def test_seasoning_is_no_season() -> None:
    (one,) = brought(paper("Seasoning: March mustard", "above"))
    assert fact(one, "season") == ""
