"""A slip in one fact neither hides a danger in the rest of a recipe nor makes one up."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
import yaml

from care_cases import Case, load_cases
from stillroom.core.book import BookSettings, place_book
from stillroom.core.checking import check_files
from stillroom.core.words.problems import ProblemsFound

UNSAFE = "cannot be published as safe"
# what is typed in place of "title: ..." -> what is told of that line
SLIPS = {
    "titel: {}": 'A recipe has no "titel:".',
    'title: "{}': "never closed",
    "title = {}": "not quite how a fact is written",
    "title: {}\nauthr: Us": 'A recipe has no "authr:".',
}
REFUSED = [case for case in load_cases() if case.get("refuse") and "kind" in case["recipe"]][::2]
INNOCENT = [case for case in load_cases() if not case.get("refuse")][::12]


def written(case: Case) -> str:
    facts = {key: value for key, value in case["recipe"].items() if key != "method"}
    facts.setdefault("title", "It")
    facts.setdefault("makes", "1 l")
    head = yaml.safe_dump(facts, sort_keys=False, allow_unicode=True, width=900)
    steps = [f"{place}. {step}" for place, step in enumerate(case["recipe"].get("method", []), 1)]
    return "---\n" + head + "---\n\n## Method\n\n" + "\n".join(steps or ["1. Make it."]) + "\n"


def told(text: str, case: Case, folder: Path) -> list[str]:
    book = place_book(folder, BookSettings(), "pages", "site")
    stated = {key: case[key] for key in ("country", "altitude_m") if key in case}
    book = replace(book, settings=BookSettings(**stated))
    path = folder / "typed.md"
    path.write_text(text, encoding="utf-8")
    try:
        check_files([path], book, folder)
    except ProblemsFound as found:
        return [f"{problem.what} {problem.mend}" for problem in found.problems]
    return []


@pytest.mark.parametrize("case", [*REFUSED, *INNOCENT], ids=lambda case: case["name"])
def test_a_slip_changes_nothing_that_is_dangerous(case: Case, tmp_path: Path) -> None:
    text = written(case)
    plain = [said for said in told(text, case, tmp_path) if UNSAFE in said]
    for slip, message in SLIPS.items():
        title = str(case["recipe"].get("title", "It"))
        [line] = re.findall(r"^title: .*$", text, re.MULTILINE)[:1]
        broken = text.replace(line, slip.format(title), 1)
        said = told(broken, case, tmp_path)
        assert [one for one in said if UNSAFE in one] == plain
        assert any(message in one for one in said)


def test_there_are_dangers_to_hide() -> None:
    assert len(REFUSED) > 40
    assert len(INNOCENT) > 15
