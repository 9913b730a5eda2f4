"""Recipe files as ordinary cooks type them: read as they are meant, or told at the right line.

The files stand in tests/golden/typed; what must come of each was written before it was tried.
Every message is expected and no other may come, so that both too little and too much is found.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from stillroom.core.book import Book, BookSettings
from stillroom.core.checking import check_files
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.plain_yaml import read_plain
from stillroom.core.words.problems import Problem, ProblemsFound

TYPED = Path(__file__).parents[2] / "golden" / "typed"
CASES: dict[str, dict[str, Any]] = {
    name: case
    for path in sorted(TYPED.glob("*.yml"))
    for name, case in read_plain(path.read_text(encoding="utf-8")).items()
}
SAVED = {
    "crlf": lambda text: text.replace("\n", "\r\n"),
    "cr": lambda text: text.replace("\n", "\r"),
    "tabs": lambda text: text.replace("  - ", "\t- "),
    "nbsp": lambda text: text.replace(" ml", "\u00a0ml").replace("- ", "-\u00a0"),
    "bom": lambda text: f"\ufeff{text}",
}


def outcome(case: dict[str, Any], folder: Path) -> Recipe | tuple[Problem, ...]:
    """Return what `stillroom check` makes of a file: the recipe, or every message."""
    text, encoding = case["text"], "utf-8"
    for how in case.get("how", ()):
        if how == "latin":
            encoding = "latin-1"
        else:
            text = SAVED[how](text)
    (folder / "pictures").mkdir()
    path = folder / case.get("as", "typed.md")
    path.write_bytes(text.encode(encoding))
    inside = (folder, folder / "pictures", folder / "site", folder / "pages")
    book = Book(folder, BookSettings(), *inside)
    try:
        return check_files([path], book, folder)[0]
    except ProblemsFound as found:
        return found.problems


def fits(wanted: str, problem: Problem) -> bool:
    """Whether a message stands at its line and says each of the words between the bars."""
    line, _, words = wanted.partition(": ")
    said = f"{problem.what} {problem.mend}"
    return problem.line == int(line) and all(word.strip() in said for word in words.split(" | "))


@pytest.mark.parametrize("name", CASES)
def test_it_is_read_or_told(name: str, tmp_path: Path) -> None:
    case = CASES[name]
    came = outcome(case, tmp_path)
    if isinstance(came, Recipe):
        assert "reads" in case, "nothing was said"
        assert case["reads"] == {key: fact_of(came, key) for key in case["reads"]}
        return
    heard = [str(problem) for problem in came]
    assert "says" in case, heard
    left = list(came)
    for wanted in case["says"]:
        match = next((problem for problem in left if fits(wanted, problem)), None)
        assert match, f"not said: {wanted}\nbut: {heard}"
        left.remove(match)
    assert not left, f"said beside: {[str(problem) for problem in left]}"


def fact_of(recipe: Recipe, key: str) -> Any:
    """Return a fact of a recipe as the table writes it."""
    counted = {"ingredients": recipe.ingredients, "steps": recipe.method}
    if key in counted:
        return len(counted[key])
    if key == "kind":
        return recipe.kind.name
    if key == "people":
        return recipe.kind.edible
    return recipe.intro[: len("Our aunt's")] if key == "intro" else getattr(recipe, key)
