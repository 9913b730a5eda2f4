"""The cases of tests/golden/care: how they are read, run and held against what they expect."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass, field
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import Any

import yaml

from stillroom.core.allergens.of_foods import contains, know_recipe, law_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import ProblemsFound

FOLDER = Path(__file__).parent / "golden/care"
# the loader written in C reads the cases in a tenth of the time, where there is one
LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
READ = ("read", "restated", "memory")
_BUNDLE = re.compile(r"^- `(\+[a-z]+)`: (.+)$", re.MULTILINE)
_BOOK_WORDS = ("country", "altitude_m")  # of the book a case stands in, not of its recipe

Case = dict[str, Any]


@dataclass(frozen=True)
class Outcome:
    """What a case got wrong; `unread` when the reader would not take the recipe at all."""

    missed: frozenset[str] = frozenset()
    false: frozenset[str] = frozenset()
    unknown: frozenset[str] = frozenset()
    unread: str = ""

    @property
    def right(self) -> bool:
        return not (self.missed or self.false or self.unknown or self.unread)


@dataclass
class Said:
    """What the book says of a recipe: the rules that speak or refuse, allergens, unknown foods."""

    cautions: frozenset[str]
    refusals: frozenset[str]
    allergens: frozenset[str] = field(default_factory=frozenset)
    unknown: frozenset[str] = field(default_factory=frozenset)


def rules_of_text(text: str) -> frozenset[str]:
    """Return every rule that speaks or refuses of a recipe file's text, in the default book."""
    box = assess_safety(read_recipe(text, "a.md", "a"), BookSettings())
    return frozenset(one.rule for one in (*box.refusals, *box.cautions))


@cache
def load_cases() -> tuple[Case, ...]:
    """Return every case of every area, in the order of the files, its area written into it."""
    rows: list[Case] = []
    for path in sorted(FOLDER.glob("*.yml")):
        read = yaml.load(path.read_text("utf-8"), Loader=LOADER)
        rows += [{"area": path.stem, **row} for row in read]
    return tuple(rows)


@cache
def rule_words() -> frozenset[str]:
    """Return every id that a table of RULES.md names in its first column."""
    text = (FOLDER / "RULES.md").read_text("utf-8")
    cells = [line.split("|")[1] for line in text.splitlines() if line.startswith("| ")]
    return frozenset(word for cell in cells for word in re.findall(r"[a-z][a-z-]+", cell))


@cache
def bundles() -> dict[str, tuple[str, ...]]:
    """Return the bundles of RULES.md by name."""
    text = (FOLDER / "RULES.md").read_text("utf-8")
    return {name: tuple(rest.split(", ")) for name, rest in _BUNDLE.findall(text)}


def open_out(rules: list[str]) -> frozenset[str]:
    """Return rules with each bundle opened."""
    return frozenset(one for rule in rules for one in bundles().get(rule, (rule,)))


def settings_of(case: Case) -> BookSettings:
    """Return the settings of the book that a case stands in."""
    given = {word: case["recipe"][word] for word in _BOOK_WORDS if word in case["recipe"]}
    return BookSettings(**given)


def recipe_of(written: dict[str, Any]) -> Recipe:
    """Read a case's recipe as the book reads a file; ProblemsFound when it cannot."""
    front = {"makes": "1 kg"} | {
        word: value for word, value in written.items() if word not in ("method", *_BOOK_WORDS)
    }
    steps = "\n".join(f"{place}. {step}" for place, step in enumerate(written["method"], 1))
    head = yaml.safe_dump(front, allow_unicode=True)
    text = f"---\n{head}---\n\n## Method\n\n{steps}\n"
    # a name of its own: recipes are cached by their names, and thousands of one name cost minutes
    name = f"case-{sha256(text.encode()).hexdigest()[:12]}"
    return read_recipe(text, f"recipes/{name}.md", name)


def ask(written: dict[str, Any], settings: BookSettings) -> Said:
    """Return what the book says of a recipe."""
    recipe = recipe_of(written)
    box = assess_safety(recipe, settings)
    known = know_recipe(recipe)
    return Said(
        frozenset(caution.rule for caution in box.cautions),
        frozenset(caution.rule for caution in box.refusals),
        frozenset(one.name for one in contains(known, law_of(settings.country))),
        frozenset(word.casefold() for one in known for word in one.unknown),
    )


def judge(case: Case) -> Outcome:
    """Hold what the book says against the whole set that a case expects."""
    asked = case.get("asked", "")
    try:
        said = ask(case["recipe"], settings_of(case))
    except ProblemsFound as found:
        # what could mean two things is asked, and a case may want just that
        return Outcome(unread="" if asked and asked in str(found) else str(found))
    if asked:
        return Outcome(missed=frozenset({f"to be asked: {asked}"}))
    expect, refuse = open_out(case["expect"]), open_out(case.get("refuse", []))
    may = open_out(case.get("may", []))
    allergens, perhaps = set(case["allergens"]), set(case.get("may_allergens", ()))
    if allergens:
        expect |= {"allergens"}
    elif perhaps:
        may |= {"allergens"}
    missed = (expect - may - said.cautions) | (refuse - may - said.refusals)
    false = (said.cautions - expect - may) | (said.refusals - refuse - may)
    if case["recipe"]["kind"] not in ("craft", "pet treat"):
        missed |= {f"allergen {one}" for one in allergens - perhaps - said.allergens}
        false |= {f"allergen {one}" for one in said.allergens - allergens - perhaps}
    named = {word.casefold() for word in case.get("unknown", ())}
    missed |= {f"could not check {word}" for word in named - said.unknown}
    extra = said.unknown - named if case["recipe"]["kind"] != "craft" else frozenset()
    return Outcome(missed, false, frozenset(extra))


def table_of(outcomes: list[tuple[Case, Outcome]]) -> str:
    """Lay out by area: cases, innocent, right, caught, missed, false alarm, unknown, unread."""
    heads = ("cases", "innocent", "right", "caught", "missed", "false", "unknown", "unread")
    sums: dict[str, Counter[str]] = {}
    for case, outcome in outcomes:
        wanted = len(open_out(case["expect"]) | open_out(case.get("refuse", [])))
        for area in (case["area"], "all"):
            row = sums.setdefault(area, Counter())
            row["cases"] += 1
            row["innocent"] += case["innocent"]
            row["right"] += outcome.right
            row["unread"] += bool(outcome.unread)
            row["caught"] += 0 if outcome.unread else max(0, wanted - len(outcome.missed))
            row["missed"] += len(outcome.missed)
            row["false"] += len(outcome.false)
            row["unknown"] += len(outcome.unknown)
    lines = [f"{'area':<18}" + "".join(f"{head:>10}" for head in heads)]
    order = [area for area in sums if area != "all"] + ["all"]
    return "\n".join(
        lines
        + [f"{area:<18}" + "".join(f"{sums[area][head]:>10}" for head in heads) for area in order]
    )
