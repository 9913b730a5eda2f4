"""What a command waits for, told by the modules it loads and not by a clock."""

from __future__ import annotations

import ast
import gc
import importlib
import inspect
import json
import pkgutil
import subprocess
import sys
from fractions import Fraction
from pathlib import Path

import click
import pytest
from babel import Locale
from babel.numbers import get_decimal_symbol, get_group_symbol

from stillroom.cli import COMMANDS, main
from stillroom.core.lines.numbers import marks_of
from stillroom.core.recipe.settings import (
    _NO_COUNTRIES,
    _countries,
    _money_of_today,
    _with_money,
)
from stillroom.core.words.patterns import LateRegex
from stillroom.core.words.said import plural_category

ROOT = Path(__file__).resolve().parents[1]
RECIPE = str(ROOT / "recipes" / "bitter-orange-spirit.md")
PAPER_AND_PLANS = {"typst", "highspy", "numpy", "mkdocs", "jinja2", "icalendar", "material"}


def loaded_by(*words: str) -> set[str]:
    code = (
        "import json, sys\n"
        "from stillroom.cli import main\n"
        f"main({list(words)!r}, standalone_mode=False)\n"
        "print(json.dumps(sorted(sys.modules)), file=sys.stderr)\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, encoding="utf-8", check=False
    )
    assert done.returncode == 0, done.stderr
    return set(json.loads(done.stderr.splitlines()[-1]))


@pytest.mark.parametrize("word", ["--version", "--help"])
def test_help_and_version_load_nothing_of_a_book(word: str) -> None:
    code = (
        "import sys\n"
        "from stillroom.cli import main\n"
        f"try: main([{word!r}])\n"
        "except SystemExit: pass\n"
        "print(*sorted(sys.modules), file=sys.stderr)\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, encoding="utf-8", check=True
    )
    loaded = set(done.stderr.split())
    assert {name for name in loaded if name.startswith("stillroom")} == {
        "stillroom",
        "stillroom.cli",
    }
    assert loaded & {"yaml", "pydantic", "babel", "dateutil", "holidays"} == set()


@pytest.mark.parametrize(
    ("words", "others"),
    [
        (["scale", RECIPE], {"stillroom.core.when.season", "stillroom.commands.dates"}),
        (["dates", RECIPE, "--give", "2027-12-18"], {"stillroom.commands.scale"}),
        (["strength", RECIPE], {"stillroom.commands.dates", "stillroom.commands.scale"}),
        (["schema"], {"stillroom.commands.dates"}),
    ],
    ids=lambda value: value[0] if isinstance(value, list) else "",
)
def test_a_question_waits_for_no_paper_no_plan_and_no_other_question(
    words: list[str], others: set[str]
) -> None:
    loaded = loaded_by(*words)
    assert {name.split(".")[0] for name in loaded} & PAPER_AND_PLANS == set()
    assert loaded & others == set()
    assert not any(name.startswith(("stillroom.publish", "stillroom.giving")) for name in loaded)


# what reading a recipe that says how long it keeps does without, in a book of English
_NOT_ASKED = {
    "holidays", "segno", "babel.dates", "babel.numbers",
    "stillroom.core.care.safety_rules", "stillroom.core.care.processes",
    "stillroom.core.allergens.avoiding", "stillroom.core.method.heat",
    "stillroom.core.label.keeping", "stillroom.core.paper.qr_mask",
    "stillroom.core.larder.own", "stillroom.core.amounts.packs", "stillroom.core.amounts.money",
}  # fmt: skip
_MADE = (
    "import gc, sys\n"
    "from stillroom.cli import main\n"
    "from stillroom.core.words.patterns import LateRegex\n"
    "main({words!r}, standalone_mode=False)\n"
    "gc.unfreeze()\n"
    "late = [one for one in gc.get_objects() if isinstance(one, LateRegex)]\n"
    "print(len(late), sum('search' in vars(one) for one in late), file=sys.stderr)\n"
)


@pytest.mark.parametrize(
    "words", [["scale", RECIPE, "--times", "2"], ["strength", RECIPE]], ids=lambda words: words[0]
)
def test_one_recipe_is_answered_without_care_feasts_and_money(words: list[str]) -> None:
    assert loaded_by(*words) & _NOT_ASKED == set()


def test_dates_ask_how_long_it_keeps_but_for_no_feast_and_no_money() -> None:
    loaded = loaded_by("dates", RECIPE, "--give", "2027-12-18")
    assert loaded & {"holidays", "segno", "babel.dates"} == set()
    assert not loaded & {"stillroom.core.paper.qr_mask", "stillroom.core.amounts.money"}


@pytest.mark.parametrize(
    "words",
    [["scale", RECIPE, "--times", "2"], ["dates", RECIPE, "--give", "2027-12-18"]],
    ids=lambda words: words[0],
)
def test_a_pattern_is_made_once_it_is_asked(words: list[str]) -> None:
    done = subprocess.run(
        [sys.executable, "-c", _MADE.format(words=words)],
        capture_output=True, text=True, encoding="utf-8", check=True,
    )  # fmt: skip
    known, made = map(int, done.stderr.split())
    # of 203 that scaling loads 127 were made on the day this was written
    assert known > 150
    assert made < 0.68 * known


def test_what_is_loaded_is_not_looked_through_for_what_may_go() -> None:
    code = (
        "import gc, sys\n"
        "from stillroom.cli import main\n"
        f"main({['scale', RECIPE]!r}, standalone_mode=False)\n"
        "looked = [one['collections'] for one in gc.get_stats()]\n"
        "print(gc.isenabled(), gc.get_freeze_count() > 50_000, *looked, file=sys.stderr)\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, encoding="utf-8", check=True
    )
    enabled, frozen, *looked = done.stderr.split()
    assert (enabled, frozen) == ("True", "True")
    # a few while the command itself is loaded, and hardly one while it answers
    assert sum(map(int, looked)) < 60, looked


def test_no_module_makes_a_pattern_while_it_is_loaded() -> None:
    made = []
    for path in sorted((ROOT / "builder" / "stillroom" / "core").rglob("*.py")):
        if "private" in path.parts:  # the wall asks for nearly all that it knows
            continue
        for part in ast.parse(path.read_text(encoding="utf-8")).body:
            if not isinstance(part, ast.FunctionDef | ast.ClassDef):
                calls = (one for one in ast.walk(part) if isinstance(one, ast.Call))
                made += [
                    f"{path.name}:{one.lineno}"
                    for one in calls
                    if ast.unparse(one.func) == "re.compile"
                ]
    assert made == []


def test_every_pattern_that_waits_can_be_made() -> None:
    core = importlib.import_module("stillroom.core")
    for found in pkgutil.walk_packages(core.__path__, "stillroom.core."):
        importlib.import_module(found.name)
    gc.unfreeze()  # a command that another test gave has put away all that was loaded by then
    late = [one for one in gc.get_objects() if isinstance(one, LateRegex)]
    assert len(late) > 300
    for one in late:
        assert one.pattern == one.words


@pytest.mark.parametrize("language", ["en", "en_GB", "en_US"])
def test_what_is_known_of_english_is_what_babel_knows(language: str) -> None:
    marks = (get_decimal_symbol(language), get_group_symbol(language))
    assert (marks_of(language).decimal, marks_of(language).group) == marks
    for number in (Fraction(0), Fraction(1, 2), Fraction(1), Fraction(3, 2), Fraction(2)):
        size = float(number) if number > 1 or number == 0 else 1
        assert plural_category(number, "en") == Locale("en").plural_form(size)


def test_countries_and_money_told_quickly_are_those_that_babel_knows() -> None:
    assert _with_money() - {*_NO_COUNTRIES} <= set(_countries().values())
    assert _money_of_today() <= set(Locale("en").currencies)
    assert len(_with_money()) > 240
    assert len(_money_of_today()) > 140


@pytest.mark.parametrize("name", COMMANDS)
def test_the_list_of_commands_says_what_each_says_of_itself(name: str) -> None:
    command = main.get_command(click.Context(main), name)
    assert command is not None
    first = inspect.cleandoc(command.help or "").split("\n\n")[0].replace("\n", " ")
    assert COMMANDS[name].help == first
    assert command.name == name
