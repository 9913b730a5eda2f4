"""The oven and other temperatures of a recipe, as a reader in any country sees them.

°F: NIST SP 811, F = 1.8 C + 32. Gas marks: ovens.yml (common practice, no published source).
"""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from stillroom.core.reading.loading import load_recipe, read_recipe
from stillroom.core.size.ovens import heat_lines, read_heats, show_degrees

RECIPES = Path(__file__).resolve().parents[3] / "recipes"


def lines_of(oven: str = "", step: str = "Mix.", units: str = "metric") -> dict[str, str]:
    text = (
        f'---\ntitle: A bake\nkind: bake\nmakes: 12 biscuits\nunits: {units}\noven: "{oven}"\n'
        f"ingredients:\n  - 100 g sugar\n---\n\n## Method\n\n1. {step}\n"
    )
    return {line.name: line.text for line in heat_lines(read_recipe(text, "bake.md", "bake"))}


@pytest.mark.parametrize(
    ("oven", "units", "text"),
    [
        ("160 C", "metric", "160 °C, 325 °F, gas mark 3"),
        ("160", "metric", "160 °C, 325 °F, gas mark 3"),
        ("350", "us", "175 °C, 350 °F, gas mark 4"),
        ("gas mark 6", "imperial", "200 °C, 400 °F, gas mark 6"),
        ("425 °F", "us", "220 °C, 425 °F, gas mark 7"),
        ("170 C", "metric", "170 °C, 350 °F, gas mark 3–4"),
        ("85 °C", "metric", "85 °C, 185 °F"),
        ("a low oven", "metric", "a low oven"),
        ("gas mark ½", "metric", "120 °C, 250 °F, gas mark ½"),
        ("Gas 1/4", "metric", "110 °C, 225 °F, gas mark ¼"),
        ("gas mark four", "metric", "180 °C, 350 °F, gas mark 4"),
        ("180 degrees Celsius", "metric", "180 °C, 350 °F, gas mark 4"),
        ("350 degrees Fahrenheit", "us", "175 °C, 350 °F, gas mark 4"),
        ("180º C", "metric", "180 °C, 350 °F, gas mark 4"),
        ("180˚C", "metric", "180 °C, 350 °F, gas mark 4"),
        ("180℃", "metric", "180 °C, 350 °F, gas mark 4"),
        ("350℉", "us", "175 °C, 350 °F, gas mark 4"),
        ("150 deg. C", "metric", "150 °C, 300 °F, gas mark 2"),
        ("180C/350F/gas 4", "metric", "180 °C, 350 °F, gas mark 4"),
        ("350°F (180°C, gas mark 4)", "metric", "175 °C, 350 °F, gas mark 4"),
    ],
)
def test_oven_in_all_three(oven: str, units: str, text: str) -> None:
    assert lines_of(oven, units=units) == {"Oven": text}


def test_oven_is_told_once_and_with_its_fan() -> None:
    step = "Heat the oven to 160 C (140 C with a fan)."
    assert lines_of("160 C", step) == {
        "Oven": "160 °C, 325 °F, gas mark 3; with a fan 140 °C, 275 °F"
    }


def test_an_oven_that_only_the_method_names() -> None:
    assert lines_of(step="Bake them at 180 C.") == {"Oven": "180 °C, 350 °F, gas mark 4"}


def test_what_a_thermometer_reads_is_no_oven() -> None:
    """149 °C is 300.2 °F; 4.5 C above boiling is a difference and is left alone."""
    step = "Boil it to 149 C, which is 49 C above boiling water."
    assert lines_of(step=step) == {"Other temperatures": "149 °C is 300.2 °F"}


@pytest.mark.parametrize(
    ("step", "celsius"),
    [
        ("Fire it at 1,180 °C.", ["1180"]),
        ("Fire it between 1,100 and 1,180 °C.", ["1100", "1180"]),
        ("Fire it at 1 180 °C.", ["1180"]),
        ("Cuire à 1\u202f180 °C.", ["1180"]),
        ("Bei 1'180 °C brennen.", ["1180"]),
        ("Brennen bei 1.180 °C.", ["1180"]),
        ("Bake at gas mark 1 140 °C.", ["140"]),
        ("Bake at Gas 1 140 °C.", ["140"]),
        ("Nr. 3 180 °C", ["180"]),
        ("Bake 20 180 °C.", ["180"]),
        ("Auf 37,5 °C erwärmen.", ["37.5"]),
        ("Die Milch auf 92,5°C und 35,5–37,5 °C erhitzen.", ["92.5", "35.5", "37.5"]),
        ("Heat to 37.5 °C.", ["37.5"]),
        ("Bake at 160,180 °C.", []),
        ("Turn the oven, 180 °C, on.", ["180"]),
        ("Bake 12, then at 180 °C.", ["180"]),
    ],
)
def test_a_number_of_degrees_is_read_whole(step: str, celsius: list[str]) -> None:
    heats = [end for heat in read_heats(step) for end in (heat.low, heat.high)]
    assert list(dict.fromkeys(heats)) == [Fraction(one) for one in celsius]


def test_what_was_written_in_fahrenheit_stands_first() -> None:
    """234 °F, the soft ball of American candy books, is 112.2 °C: (234 - 32) x 5/9."""
    assert lines_of(step="Boil it to 234 F.") == {"Other temperatures": "234 °F is 112 °C"}
    assert lines_of(step="Cook it to 234-238 F.") == {
        "Other temperatures": "234–238 °F is 112–114 °C"
    }


def test_what_is_no_temperature() -> None:
    assert read_heats("Stir 3 Cups for 20 minutes; vitamin C; 250 g Flour.") == ()
    assert read_heats("2 celery sticks, 3 figs, 12 cm, a gas hob, 4 cloves, 5 fl oz") == ()
    assert read_heats("Between 62 to 64 C.")[0].high == Fraction(64)


def test_degrees_in_a_step() -> None:
    assert show_degrees("At 90 to 100 C, or 212 F.") == "At 90 to 100\u00a0°C, or 212\u00a0°F."
    assert show_degrees("At 90 °C with 3 Cups.") == "At 90\u00a0°C with 3 Cups."


@pytest.mark.parametrize(
    ("slug", "names"),
    [
        ("almond-shortbread", ["Oven"]),
        ("sea-buckthorn-curd", ["Other temperatures"]),
        ("vanilla-sugar", []),
    ],
)
def test_demo_recipes(slug: str, names: list[str]) -> None:
    assert [line.name for line in heat_lines(load_recipe(RECIPES / f"{slug}.md"))] == names


# USDA Guide 7, as restated: 220 °F at sea level, 216 at 2,000 ft, 212 at 4,000 ft
@pytest.mark.parametrize(("metres", "sets"), [(610, "102.2"), (1219, "100")])
def test_sugar_is_ready_sooner_higher_up(metres: int, sets: str) -> None:
    jelly = load_recipe(RECIPES / "bramble-jelly.md")
    told = {line.name: line.text for line in heat_lines(jelly, metres)}
    assert f"jam sets at about {sets} °C" in told[f"At {metres} m"]


def test_by_the_sea_and_without_sugar_nothing_is_said_of_altitude() -> None:
    for slug, metres in (("bramble-jelly", 20), ("sea-buckthorn-curd", 1500)):
        told = heat_lines(load_recipe(RECIPES / f"{slug}.md"), metres)
        assert not [line for line in told if line.name.startswith("At ")]


@pytest.mark.parametrize(
    ("said", "celsius"),
    [
        ("Bake at gas mark one half.", [120]),
        ("Bake at gas mark a quarter.", [110]),
        ("Bake at Regulo 4.", [180]),
        ("Bei 180 Grad backen.", [180]),
        ("Cuire au four à 180 degrés.", [180]),
        ("Bake at 350 degrees.", [177]),
        ("Bake at 180 degrees.", []),  # could be either
        ("Grade the 350 apples.", []),
    ],
)
def test_an_oven_in_other_words(said: str, celsius: list[int]) -> None:
    assert [round(heat.low) for heat in read_heats(said)] == celsius


def test_a_range_of_gas_marks() -> None:
    assert [(heat.low, heat.high) for heat in read_heats("Bake at gas mark 2-3.")] == [(150, 160)]


@pytest.mark.parametrize(
    ("step", "text"),
    [
        (
            "Bake in a moderate oven for an hour.",
            "moderate oven is about 180 °C, 350 °F, gas mark 4",
        ),
        ("Dry in a very slow oven.", "very slow oven is about 120 °C, 250 °F, gas mark ½"),
        ("Bake in a hot oven at 210 °C.", ""),
        ("Put it in the oven.", ""),
    ],
)
def test_what_cooks_call_an_oven(step: str, text: str) -> None:
    said = lines_of(step=step).get("Oven", "")
    assert (said if "about" in said else "") == text


@pytest.mark.parametrize(
    ("step", "oven"),
    [
        # as German, French, Spanish, Italian, Dutch and Swedish recipes say it (from memory)
        ("Bei 175 °C Ober-/Unterhitze 12-15 Min. backen.", "175 °C, 350 °F, gas mark 4"),
        ("Den Backofen auf 180 °C vorheizen.", "180 °C, 350 °F, gas mark 4"),
        (
            "Bei 180 °C Ober-/Unterhitze (160 °C Umluft) backen.",
            "180 °C, 350 °F, gas mark 4; with a fan 160 °C, 325 °F",
        ),
        (
            "Ofen auf 200 °C Ober-/Unterhitze, Umluft 180 °C heizen.",
            "200 °C, 400 °F, gas mark 6; with a fan 180 °C, 350 °F",
        ),
        ("Bei 160 °C Umluft 20 Minuten backen.", "with a fan 160 °C, 325 °F"),
        ("Cuire 20 minutes au four à 180 °C.", "180 °C, 350 °F, gas mark 4"),
        ("Enfourner à 180 °C chaleur tournante.", "with a fan 180 °C, 350 °F"),
        ("Hornear a 180 °C durante 20 minutos.", "180 °C, 350 °F, gas mark 4"),
        ("Infornare a 180 °C per 20 minuti.", "180 °C, 350 °F, gas mark 4"),
        ("Bak ze 12 minuten in de oven op 180 °C.", "180 °C, 350 °F, gas mark 4"),
        ("Grädda i ugnen i 175 °C.", "175 °C, 350 °F, gas mark 4"),
    ],
)
def test_an_oven_of_another_language_is_one(step: str, oven: str) -> None:
    assert lines_of(step=step) == {"Oven": oven}


@pytest.mark.parametrize(
    "step", ["Auf 80 °C erhitzen.", "Heat to 80 °C for four minutes.", "Chauffer à 80 °C."]
)
def test_what_names_no_oven_is_none(step: str) -> None:
    assert "Oven" not in lines_of(step=step)


# as they are written in recipes of public repositories (searched 2026-11-30, before the code): the
# sentences about the oven, put shorter
IN_TURN = {
    "then at": (
        "Bake at 200°C for 15 minutes, then at 180°C for 30 minutes. Check at 35 minutes.",
        "200 °C, 400 °F, gas mark 6; then 180 °C, 350 °F, gas mark 4",
    ),
    "a range": (
        "Bake at 180°C for the first 20 minutes, then at 150-160°C for about 15 more minutes.",
        "180 °C, 350 °F, gas mark 4; then 150 °C, 300 °F, gas mark 2 to 160 °C, 325 °F, gas mark 3",
    ),
    "two degrees": (
        "Bake at 350 degrees, then reduce the oven temperature to 275 degrees.",
        "175 °C, 350 °F, gas mark 4; then 135 °C, 275 °F, gas mark 1",
    ),
    "no degree": (
        "Bake at 350 F. Then reduce the oven temperature to 250, and cool for 30 minutes.",
        "175 °C, 350 °F, gas mark 4; then 120 °C, 250 °F, gas mark ½",
    ),
    "a sign alone": (
        "Bake at 400°F (204°C) for 25 minutes. Turn the oven down to 375° and bake 30 minutes.",
        "205 °C, 400 °F, gas mark 6; then 190 °C, 375 °F, gas mark 5",
    ),
    "down to a range": (
        "Bake for 20 minutes at 200C then turn the oven down to 180-190C and bake for 40 minutes.",
        "200 °C, 400 °F, gas mark 6; then 180 °C, 350 °F, gas mark 4 to 190 °C, 375 °F, gas mark 5",
    ),
    "each with its fan": (
        "Bake at 220C/200C fan/gas 7 for 30 mins, then turn the oven down to 200C/180C fan/gas 6.",
        "220 °C, 425 °F, gas mark 7; with a fan 200 °C, 400 °F; then 200 °C, 400 °F, gas mark 6; "
        "with a fan 180 °C, 350 °F",
    ),
}


@pytest.mark.parametrize(("step", "text"), IN_TURN.values(), ids=IN_TURN)
def test_an_oven_that_is_turned_down_is_told_in_turn(step: str, text: str) -> None:
    assert lines_of(step=step) == {"Oven": text}


TWO = "200 °C, 400 °F, gas mark 6; then 160 °C, 325 °F, gas mark 3"
BESIDE = TWO.replace("then ", "")


@pytest.mark.parametrize(
    ("oven", "text"),
    [
        ("200 °C for 10 minutes, then 160 °C", TWO),
        ("200 °C, then 160", TWO),
        ("200 then 160", TWO),
        ("200 C → 160 C", TWO),
        ("200-160 C", TWO),
        ("200 degrees for 10 minutes, then 160 degrees", TWO),
        ("200 und 160 °C", TWO),
        ("gas 6, then gas 3", TWO),
        ("200/160", BESIDE),
        ("200 C / 160 C", BESIDE),
        ("200 C or 160 C", BESIDE),
        ("180 C fan 160 C", "180 °C, 350 °F, gas mark 4; with a fan 160 °C, 325 °F"),
        ("180, 160 with a fan", "180 °C, 350 °F, gas mark 4; with a fan 160 °C, 325 °F"),
        ("200 for 20 minutes", "200 °C, 400 °F, gas mark 6"),
        ("a hot oven, then a low one", "a hot oven, then a low one"),
    ],
)
def test_two_heats_of_the_box_are_both_told(oven: str, text: str) -> None:
    assert lines_of(oven) == {"Oven": text}


@pytest.mark.parametrize(
    "step",
    [
        "Bake 12 to 150 biscuits at 180 °C, and 50 more after that.",
        "Bake at 180 °C until golden, 25 to 30 minutes.",
        "Bake at 180 °C; sift over 50 g sugar, then 100 ml cream.",
        "Bake at 180 °C in a tin of 20 to 25 cm, and cut to 60 pieces.",
    ],
)
def test_no_other_number_beside_an_ovens_is_a_heat(step: str) -> None:
    assert lines_of(step=step) == {"Oven": "180 °C, 350 °F, gas mark 4"}
