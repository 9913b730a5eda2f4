"""Honey for babies, alcohol for children, spirit in flames, raw egg and poisons in ten languages.

Written on 30 November 2026 before the code: of 180 things that must be named 32 were silent and 59
more only "not known". The near misses were written beside the code.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
import yaml

from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.larder.shelves import common_larder
from stillroom.core.reading.loading import read_recipe

ROWS: list[dict[str, Any]] = yaml.safe_load(
    (Path(__file__).parent / "ten_languages.yml").read_text("utf-8")
)
NEAR: list[dict[str, Any]] = yaml.safe_load(
    (Path(__file__).parent / "ten_languages_near.yml").read_text("utf-8")
)
# what is made of which lines by which method, what must be said and what must not
SITUATIONS = [
    ("bake", "honey", "babies", {"honey-for-infants"}, set[str]()),
    ("infusion", "rum", "children", {"alcohol-for-children"}, set[str]()),
    ("infusion", "rum", "flamed", {"spirit-heated", "flaming"}, set[str]()),
    ("infusion", "rum", "heated", {"spirit-heated"}, set[str]()),
    ("infusion", "rum", "cold", {"alcohol"}, {"spirit-heated", "alcohol-for-children"}),
    ("confection", "eggs", "beaten", {"raw-egg"}, set[str]()),
    ("bake", "eggs", "baked", set[str](), {"raw-egg"}),
]
POISONS = {
    *("toxic-plant", "cyanide-kernels", "liver-herb", "coumarin", "thujone", "medicine-herb"),
}


def _said(language: str, title: str, kind: str, lines: list[str], method: str) -> set[str]:
    front = {"title": title, "kind": kind, "makes": "1 kg", "ingredients": lines}
    head = yaml.safe_dump(front, allow_unicode=True)
    text = f"---\n{head}---\n\n## Method\n\n1. {method}\n"
    larder = replace(common_larder(), language=language)
    name = f"{title.lower().replace(' ', '-')}-{language[:2]}"
    recipe = read_recipe(text, f"recipes/{name}.md", name, "metric", larder, language)
    box = assess_safety(recipe, BookSettings())
    return {one.rule for one in (*box.cautions, *box.refusals)}


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["language"])
@pytest.mark.parametrize("situation", SITUATIONS, ids=lambda one: one[2])
def test_it_is_heard_in_each_language(row: dict[str, Any], situation: tuple[Any, ...]) -> None:
    kind, lines, method, speaks, silent = situation
    said = _said(row["language"], method, kind, row[lines], row[method])
    assert speaks <= said
    assert not silent & said


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["language"])
def test_a_poison_is_known_by_its_name(row: dict[str, Any]) -> None:
    for poison in row["poisons"]:
        said = _said(row["language"], "cold", "infusion", [*row["rum"], poison], row["cold"])
        assert said & POISONS, poison


@pytest.mark.parametrize("case", NEAR, ids=lambda case: f"{case['language']}-{case['title']}")
def test_what_stands_near_it_is_not_meant(case: dict[str, Any]) -> None:
    lines, title = case["ingredients"], case["title"]
    said = _said(case["language"], title, case["kind"], lines, case["method"])
    assert set(case["speaks"]) <= said
    assert not set(case["silent"]) & said


@pytest.mark.parametrize(
    ("language", "lines", "method"),
    [
        # a word that German shares, under a method too short to tell its own language
        ("da_DK", ["100 g basilikum", "2 dl olivenolie", "4 fed hvidløg"], "Blend det hele."),
        ("nb_NO", ["100 g basilikum", "2 dl olivenolje", "4 fedd hvitløk"], "Bland alt."),
        ("pl_PL", ["20 g bazylii", "200 ml oliwy", "4 ząbki czosnku"], "Wszystko zmiksować."),
        ("pt_PT", ["20 g de manjericão", "200 ml de azeite", "4 dentes de alho"], "Triturar tudo."),
    ],
)
def test_a_short_method_is_in_its_books_language(
    language: str, lines: list[str], method: str
) -> None:
    said = _said(language, "green oil", "preserve", lines, method)
    assert "low-acid-in-oil" in said
    assert "unknown-refused" not in said
