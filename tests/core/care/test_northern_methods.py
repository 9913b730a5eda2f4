"""Danish and Norwegian methods: what is baked, potash that is no lye, "laken" that is no salmon."""

from __future__ import annotations

import pytest

from stillroom.core.book import BookSettings
from stillroom.core.care.safety import SafetyBox, assess_safety
from stillroom.core.larder.shelves import Larder
from stillroom.core.reading.loading import read_recipe

CUCUMBERS = ("1 kg agurk", "5 dl eddik", "2 dl sukker", "1 ss salt")


BAKED = [
    ("da_DK", ("250 g hvedemel", "1 æg"), "Ælt mel og æg. Bag ved 200 grader i 8-10 minutter."),
    ("da_DK", ("250 g hvedemel", "1 æg"), "Tænd ovnen. Ælt alle ingredienser. Bages midt i ovnen."),
    ("nb_NO", ("250 g hvetemel", "1 egg"), "Kna mel og egg. Stekes ved 175 grader i 12 minutter."),
]
RAW = [
    ("da_DK", ("4 æg", "100 g sukker"), "Pisk æggene med sukker, må ikke koge."),
    ("da_DK", ("4 æg", "100 g sukker"), "Pisk æg og sukker. Stil det bag komfuret."),
    ("nb_NO", ("4 egg", "100 g sukker"), "Pisk egg og sukker. Kok glassene."),
]


def _refused(
    lines: tuple[str, ...], method: str, language: str, kind: str = "preserve"
) -> set[str]:
    return {one.rule for one in _said(lines, method, language, kind).refusals}


def _said(lines: tuple[str, ...], method: str, language: str, kind: str) -> SafetyBox:
    listed = "".join(f"  - {line}\n" for line in lines)
    head = f"---\ntitle: Noget\nkind: {kind}\nmakes: 500 g\ningredients:\n{listed}---\n"
    larder = Larder(language=language)
    text = f"{head}\n## Method\n\n1. {method}\n"
    recipe = read_recipe(text, "recipes/a.md", "a", larder=larder, language=language)
    return assess_safety(recipe, BookSettings(language=language))


@pytest.mark.parametrize(("language", "lines", "method"), BAKED)
def test_what_is_baked_holds_no_raw_egg(language: str, lines: tuple[str, ...], method: str) -> None:
    rules = {one.rule for one in _said(lines, method, language, "biscuits").cautions}
    assert not rules & {"raw-egg", "raw-flour"}


@pytest.mark.parametrize(("language", "lines", "method"), RAW)
def test_what_no_heat_surely_reaches_stays_raw(
    language: str, lines: tuple[str, ...], method: str
) -> None:
    assert "raw-egg" in {one.rule for one in _said(lines, method, language, "biscuits").cautions}


@pytest.mark.parametrize(
    ("language", "line"),
    [
        ("da_DK", "7 g potaske"),
        ("nb_NO", "1 ts potaske"),
        ("sv_SE", "1 tsk pottaska"),
        ("de_DE", "5 g Pottasche"),
        ("en_GB", "1 tsp potash"),
        ("en_GB", "5 g potassium carbonate"),
    ],
)
def test_potash_in_biscuits_is_no_lye(language: str, line: str) -> None:
    assert "alkali-in-food" not in _refused((line, "500 g flour"), "Bake.", language, "bake")


def test_lye_in_food_still_is() -> None:
    assert "alkali-in-food" in _refused(
        ("20 g potash lye", "500 g flour"), "Bake.", "en_GB", "bake"
    )


def test_norwegian_brine_is_no_salmon() -> None:
    method = "Kok opp eddik, sukker og salt til en lake. Hell laken over agurkene på glass."
    assert _refused(CUCUMBERS, method, "nb_NO") == set()


def test_salmon_is_still_found_by_its_ending() -> None:
    assert "animal-food-sealed" in _refused(CUCUMBERS, "Legg laksen på glass med laken.", "nb_NO")


def test_brine_of_water_that_is_poured_off_thins_no_vinegar() -> None:
    lines = (*CUCUMBERS, "5 dl vann")
    method = (
        "La agurkene ligge i vann og salt. Hell av laken. Kok opp eddik og sukker. "
        "Hell det over agurkene på glass."
    )
    assert "low-acid-sealed" not in _refused(lines, method, "nb_NO")
