"""The seventy-odd households of tests/golden/giving held against its presents, two-sided.

Needs are the words both tables use; what they mean is told in the tables themselves.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from care_cases import recipe_of
from giving.lists import TODAY, read_dict, small_list
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.plain_yaml import read_plain
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.facts import facts_of
from stillroom.giving.model import Household
from stillroom.giving.rules import why_refused

FOLDER = Path(__file__).parents[1] / "golden" / "giving"
# what only the packet of a bought food tells is any allergen, and not known for any diet
ALLERGENS = frozenset(
    {"milk", "lactose", "eggs", "wheat", "gluten", "oats", "barley", "nuts", "tree nuts", "almond"}
    | {"hazelnut", "walnut", "cashew", "peanut", "soya", "sesame", "mustard", "celery", "fish"}
    | {"crustaceans", "molluscs", "lupin", "sulphites"}
)
NUTS = frozenset({"almond", "hazelnut", "walnut", "cashew", "peanut"})


@dataclass(frozen=True)
class Outcome:
    """What came out for one household and one present."""

    household: str
    present: str
    wrong: str
    reasons: tuple[str, ...]


def rows(name: str) -> list[dict[str, Any]]:
    """Return the rows of one of the two tables."""
    found: list[dict[str, Any]] = read_plain((FOLDER / name).read_text("utf-8"))
    return found


@cache
def presents() -> dict[str, tuple[dict[str, Any], Recipe]]:
    """Return every present of the table and its recipe, by its id."""
    words = ("id", "refuse", "may", "packet")
    return {
        row["id"]: (row, recipe_of({k: v for k, v in row.items() if k not in words}))
        for row in rows("presents.yml")
    }


def household_of(row: dict[str, Any]) -> Household:
    """Read a household as the reader of lists does; raises ProblemsFound."""
    words = ("source", "never", "easy", "pet")
    own = {key: value for key, value in row.items() if key not in words}
    written = {"basket": "small", **own}
    return read_dict(small_list(households=[written])).giving.households[0]


def expected(household: dict[str, Any], present: dict[str, Any]) -> str:
    """Return "no", "yes" or "either"."""
    never = set(household["never"])
    if not household.get("pet"):
        never.add("no pets")
    wary = bool(never - {"no pets"})
    no, may = set(present["refuse"]), set(present.get("may", ()))
    if never & no or ("anything" in no and wary and not household.get("pet")):
        return "no"
    # a trace of nuts of no sort is a trace of each
    may |= NUTS if "nuts" in may else set()
    soft = may | (ALLERGENS if present.get("packet") else set())
    easy = set(household.get("easy", ()))
    if never & soft or easy & (no | soft) or "anything" in may:
        return "either"
    return "either" if "anything" in no and household.get("pet") else "yes"


def outcomes() -> Iterator[Outcome]:
    """Yield what came out for every household and present; the wrong ones say how."""
    for row in rows("households.yml"):
        try:
            household = household_of(row)
        except ProblemsFound as found:
            yield Outcome(row["name"], "", "unread", (str(found),))
            continue
        for name, (present, recipe) in presents().items():
            reasons = tuple(r.one for r in why_refused(household, facts_of(recipe), TODAY))
            want = expected(row, present)
            wrong = ""
            if want == "no" and not reasons:
                wrong = "unsafe"
            elif want == "yes" and reasons:
                wrong = "refused for nothing"
            yield Outcome(row["name"], name, wrong, reasons)


if __name__ == "__main__":
    from collections import Counter

    found = list(outcomes())
    for one in found:
        if one.wrong:
            print(f"{one.wrong:20} {one.household:22} {one.present:18} {'; '.join(one.reasons)}")
    print(Counter(one.wrong or "right" for one in found))
