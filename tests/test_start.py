"""What a command waits for, told by the modules it loads and not by a clock."""

from __future__ import annotations

import inspect
import json
import subprocess
import sys
from pathlib import Path

import click
import pytest

from stillroom.cli import COMMANDS, main

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


@pytest.mark.parametrize("name", COMMANDS)
def test_the_list_of_commands_says_what_each_says_of_itself(name: str) -> None:
    command = main.get_command(click.Context(main), name)
    assert command is not None
    first = inspect.cleandoc(command.help or "").split("\n\n")[0].replace("\n", " ")
    assert COMMANDS[name].help == first
    assert command.name == name
