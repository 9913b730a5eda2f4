"""No allergen is lost on its way: each is planted by each route and looked for on the label.

The food that carries it is any of the larder's whose only allergen it is.
"""

from __future__ import annotations

import json
from dataclasses import replace

import pytest

from stillroom.core.allergens.of_foods import (
    PACKET,
    all_allergens,
    answer_avoid,
    law_of,
    say_allergen,
)
from stillroom.core.book import BookSettings
from stillroom.core.label.labelling import label_recipe, make_card
from stillroom.core.larder.own import read_own_larder
from stillroom.core.larder.shelves import Larder, all_staples
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.model import Recipe

SETTINGS = {
    country: BookSettings(country=country) for country in ("GB", "US", "CA", "AU", "NZ", "JP")
}
GENERIC = {"nuts", "other-nuts"}


def carrier(allergen: str) -> str:
    """Return a food of the larder with this allergen and no other, of the shortest name."""
    found = [
        name
        for name, food in all_staples().items()
        if food.allergens == (allergen,) and not food.parts and "craft" not in food.tags
    ]
    return min(found, key=lambda name: (len(name), name)) if found else ""


CARRIERS = {name: carrier(name) for name in all_allergens() if name not in GENERIC}
# Canada's list has neither: by every route for them under the European one
WIDEST = {name: "GB" if name in ("celery", "lupin") else "CA" for name in CARRIERS}


def recipe_of(*lines: object, larder: str = "") -> Recipe:
    items = "".join(f"  - {json.dumps(line)}\n" for line in ("200 g granulated sugar", *lines))
    text = (
        f"---\ntitle: A thing\nkind: bake\nmakes: 1 kg\ningredients:\n{items}---\n\n"
        "## Method\n\n1. Bake.\n"
    )
    own = read_own_larder(larder, "larder.yml").larder if larder else None
    return read_recipe(text, "recipes/a.md", "a", "metric", own)


def routes(allergen: str, food: str) -> dict[str, Recipe]:
    also = all_staples()[food].also
    said = all_allergens()[allergen].say
    routes = {
        "by name": recipe_of(f"50 g {food}"),
        "in capitals": recipe_of(f"50 g {food.upper()}"),
        "as a part": recipe_of({"item": "moon cake", "amount": "50 g", "parts": ["salt", food]}),
        "as a part in brackets": recipe_of(
            {"item": "moon cake", "amount": "50 g", "parts": [f"emulsifier ({food})"]}
        ),
        "when it is optional": recipe_of({"item": food, "amount": "50 g", "optional": True}),
        "as an alternative": recipe_of(f"50 g salt or {food}"),
        "as an alternative behind a comma": recipe_of(f"50 g salt, or {food}"),
        "as an alternative by a stroke": recipe_of(f"50 g salt/{food}"),
        "joined by and": recipe_of(f"50 g salt and {food}"),
        "by its staple": recipe_of({"item": "moon dust", "amount": "50 g", "staple": food}),
        "by the book's larder": recipe_of(
            "50 g moon dust", larder=f'moon dust:\n  contains: ["{said}"]\n  from: plant\n'
        ),
        "by the book's larder as a part": recipe_of(
            "50 g moon dust", larder=f'moon dust:\n  parts: ["{food}"]\n'
        ),
        "by the book's larder as the same": recipe_of(
            "50 g moon dust", larder=f'moon dust:\n  is: "{food}"\n'
        ),
        "strained out": recipe_of({"item": food, "amount": "50 g", "left in": False}),
    }
    return routes | ({"by another name": recipe_of(f"50 g {also[0]}")} if also else {})


def test_every_allergen_has_a_food() -> None:
    assert [name for name, food in CARRIERS.items() if not food] == []


@pytest.mark.parametrize("allergen", CARRIERS)
def test_an_allergen_reaches_the_label_by_every_route(allergen: str) -> None:
    one = all_allergens()[allergen]
    for route, recipe in routes(allergen, CARRIERS[allergen]).items():
        assert answer_avoid(recipe, allergen) == "contains", route
        # every law once; the wordiest of them by every route
        for country in SETTINGS if route == "by name" else (WIDEST[allergen],):
            settings = SETTINGS[country]
            law = law_of(country)
            label = label_recipe(recipe, settings)
            wanted = (say_allergen(one, law),) if one.heading(law) else ()
            assert label.allergens == wanted, f"{route}, {country}"
            card = make_card(recipe, settings)
            said = "".join(piece.text for piece in card.allergen_words)
            assert all(word in said for word in wanted), f"{route}, {country}"
            listed = [entry for entry in label.contents if entry.emphasised]
            assert bool(listed) == bool(wanted), f"{route}, {country}"


# Each country's list names what its law names, and nothing else (sources: allergens.yml).
LISTS = {
    "GB": (14, {"celery", "lupin", "sulphites", "molluscs", "oats"}, {"pine-nut"}),
    "US": (9, {"sesame", "pine-nut"}, {"celery", "lupin", "sulphites", "molluscs", "oats"}),
    "CA": (12, {"mustard", "sulphites", "molluscs", "oats", "pine-nut"}, {"celery", "lupin"}),
    "AU": (22, {"lupin", "sulphites", "molluscs", "pine-nut"}, {"celery", "mustard"}),
    "NZ": (22, {"lupin", "sulphites", "molluscs", "pine-nut"}, {"celery", "mustard"}),
    "JP": (15, {"celery", "lupin", "mustard", "pine-nut"}, set()),
}


@pytest.mark.parametrize("country", LISTS)
def test_a_country_has_its_own_list(country: str) -> None:
    count, named, unnamed = LISTS[country]
    law = law_of(country)
    headings = {one.heading(law) for one in all_allergens().values()} - {""}
    assert len(headings) == count, headings
    assert all(all_allergens()[name].heading(law) for name in named)
    assert not any(all_allergens()[name].heading(law) for name in unnamed)


def test_canada_speaks_both_its_languages() -> None:
    card = make_card(recipe_of("50 g butter", "2 eggs", "5 g moon dust"), SETTINGS["CA"])
    said = "".join(piece.text for piece in card.allergen_words)
    assert said == (
        "Contains / Contient : eggs / œufs, milk / lait; not known / Inconnu : moon dust – its "
        "allergens could not be checked / allergènes non vérifiés"
    )


def test_australia_names_gluten_beside_wheat_and_each_nut() -> None:
    recipe = recipe_of("50 g plain flour", "50 g pearl barley", "50 g almonds")
    assert label_recipe(recipe, SETTINGS["AU"]).allergens == (
        "wheat, gluten",
        "gluten (barley)",
        "almond",
    )


def test_a_country_without_a_list_here_says_whose_is_used() -> None:
    label = label_recipe(recipe_of("50 g butter"), SETTINGS["JP"])
    assert "for want of this country's own list" in label.list_used
    assert "goes before it" in label.list_used


def test_flour_never_opens_the_list_without_its_cereal() -> None:
    for line in ("500 g plain flour", "500 g self-raising flour", "500 g fine semolina"):
        first = label_recipe(recipe_of(line), SETTINGS["GB"]).contents[0]
        assert "wheat" in first.text
        assert first.emphasised
    mix = {"item": "cake mix", "amount": "500 g", "parts": ["plain flour", "sugar"]}
    assert "plain flour (wheat)" in label_recipe(recipe_of(mix), SETTINGS["GB"]).contents[0].whole


@pytest.mark.parametrize(
    "line",
    ["5 g moon dust", {"item": "moonlets", "amount": "5 g", "parts": ["salt", "moon dust"]}],
    ids=["a line", "a part"],
)
def test_what_is_not_known_is_said_and_nothing_is_free(line: object) -> None:
    recipe = recipe_of(line)
    label = label_recipe(recipe, SETTINGS["GB"])
    said = "".join(piece.text for piece in label.allergen_words)
    assert said == "Not known: moon dust – its allergens could not be checked"
    assert label.free_from == ()
    for avoid in (*CARRIERS, "gluten", "nuts", "vegan", "vegetarian", "alcohol"):
        assert answer_avoid(recipe, avoid) == "not known", avoid


def test_what_only_its_packet_knows_is_never_free() -> None:
    staple = replace(all_staples()["plain flour"], name="moonlets", tags=frozenset({PACKET}))
    larder = Larder(own=(staple,))
    text = (
        "---\ntitle: A thing\nkind: bake\nmakes: 1 kg\ningredients:\n  - 200 g moonlets\n---\n\n"
        "## Method\n\n1. Bake.\n"
    )
    recipe = read_recipe(text, "recipes/a.md", "a", "metric", larder)
    assert answer_avoid(recipe, "wheat") == "contains"
    for avoid in ("milk", "nuts", "sesame", "vegan", "vegetarian", "cinnamon"):
        assert answer_avoid(recipe, avoid) == "not known", avoid
    label = label_recipe(recipe, SETTINGS["GB"])
    assert label.free_from == ()
    assert "".join(piece.text for piece in label.allergen_words) == (
        "Contains gluten (wheat); its packet may say more: moonlets"
    )


def test_what_is_known_is_not_said_to_be_unknown() -> None:
    label = label_recipe(recipe_of("50 g butter"), SETTINGS["GB"])
    assert "".join(piece.text for piece in label.allergen_words) == "Contains milk"
    assert label_recipe(recipe_of("1 g salt"), SETTINGS["GB"]).allergen_words == ()
