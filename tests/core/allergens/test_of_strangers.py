"""Allergens of what strangers write, in lists and in methods: of_strangers.yml."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from care_cases import recipe_of
from stillroom.core.allergens.of_foods import contains, know_recipe, law_of, may_contain
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.words.plain_yaml import read_plain

ROWS = read_plain(Path(__file__).with_name("of_strangers.yml").read_text("utf-8"))


@pytest.mark.parametrize("row", ROWS, ids=[row["name"] for row in ROWS])
def test_all_that_is_in_it_and_nothing_else(row: dict[str, Any]) -> None:
    written = {word: row[word] for word in ("kind", "ingredients", "method")}
    recipe = recipe_of({"title": "Something", **written})
    known, law = know_recipe(recipe), law_of(row["country"])
    held = {one.name for one in contains(known, law)}
    perhaps = {one.name for one in may_contain(known, law)}
    assert set(row["contains"]) <= held
    assert set(row.get("either", ())) <= held | perhaps
    allowed = {*row["contains"], *row["may"], *row.get("either", ())}
    assert held | perhaps <= allowed
    box = assess_safety(recipe, BookSettings(country=row["country"]))
    spoken = {one.rule for one in (*box.cautions, *box.refusals)}
    assert set(row.get("caution", ())) <= spoken
    assert spoken.isdisjoint(row.get("silent", ()))
