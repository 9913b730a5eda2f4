"""The pages of the demo book's guide that are made of what the program itself knows.

mkdocs.yml of the demo book names this file under `hooks:`; no other book has it. The other pages of
the guide are written by hand, in pages/guide.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from html import escape
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

import click
import yaml

from stillroom.beginning.questions import questions
from stillroom.cli import main
from stillroom.core.reading.editor_schema import front_matter_schema
from stillroom.core.recipe.settings import BookSettings
from stillroom.core.words.data_files import read_data

if TYPE_CHECKING:
    from mkdocs.config.defaults import MkDocsConfig
    from mkdocs.structure.files import Files

FIELDS: Final = Path(__file__).parent / "fields.yml"
GIVING: Final = Path(__file__).parent / "write-a-giving-list.md"
GRAVITIES: Final = {
    "refuse": "Not published",
    "danger": "Someone could be badly hurt",
    "caution": "Something goes wrong if it is not minded",
    "notice": "Worth knowing",
}
HAD: Final = {
    "read": "read there",
    "restated": "as others restate it",
    "reference.md": "from the project's own collection of sources",
    "memory": "from memory, not looked up",
}
LIST_PARTS: Final = {
    "giving list": "what it is called, such as Christmas 2027",
    "giving day": "when the baskets go out",
    "from": "who gives, for the cards",
    "baskets": "how much to eat and to drink is in each sort, and what an empty one costs",
    "makes": "which recipes are made, how many jars a batch fills, whether it may be posted",
    "households": "who is given one: the basket, what to keep from them, children's ages, by post",
    "prices": "what foods cost, by the pack; what has no price is never taken for nothing",
}
"""The parts of the example in GIVING. A whole one is refused among the pages, as a private list."""


def on_files(files: Files, config: MkDocsConfig) -> Files:
    """Add the pages that are made here."""
    from mkdocs.structure.files import File, InclusionLevel

    for name, text in made_pages().items():
        uri = f"guide/{name}"
        files.append(File.generated(config, uri, content=text, inclusion=InclusionLevel.NOT_IN_NAV))
    return files


def made_pages() -> dict[str, str]:
    """Return each page that is made here by its name."""
    return {
        "fields.md": "\n".join(_fields()),
        "commands.md": "\n".join(_commands()),
        "rules.md": "\n".join(_rules()),
        "giving-list.md": giving_page(),
    }


def _head(title: str, description: str) -> Iterator[str]:
    yield from (
        "---",
        f"title: {title}",
        f"description: {description}",
        "---",
        "",
        f"# {title}",
        "",
    )


def _cell(words: object) -> str:
    """Return words as they may stand in a table's cell."""
    plain = escape(" ".join(str(words).split()), quote=False)
    return re.sub(r"([|*_{}\[\]])", r"\\\1", plain)


def _fields() -> Iterator[str]:
    schema = front_matter_schema()
    yield from _head(
        "Every word that a recipe may state", "Each fact of a recipe, and each setting of a book."
    )
    yield "A recipe's facts stand above its method, one to a line; *title*, *kind*, *makes* and "
    yield "*ingredients* are needed. [Write a recipe](../writing.md) shows each in use."
    yield ""
    asked, told = questions(), _told()
    for name in schema["properties"]:
        said = told["recipe"][name]
        by_desk = asked[name].words if name in asked else ""
        yield from (f"`{name}`", f":   {_cell(said['says'])}")
        yield from ((f"    *The desk: {_cell(by_desk)}*",) if by_desk else ())
        yield from _example(said["example"])
    for part, heading in (
        ("Card", "The card"),
        ("Acidity", "Acidity"),
        ("Override", "A rule set aside"),
    ):
        yield from ("", f"## {heading}", "")
        rows = told["parts"][part]
        keys = schema["$defs"][part]["properties"]
        yield from (f"- `{key}`: {_cell(rows[key])}" for key in keys)
    yield from _settings(told["settings"])


def _told() -> dict[str, Any]:
    return dict(yaml.safe_load(FIELDS.read_text(encoding="utf-8")))


def _example(lines: str) -> Iterator[str]:
    """Yield an example below the words of a fact, as it stands in a file."""
    yield ""
    yield from (f"        {line}" for line in lines.rstrip().split("\n"))
    yield ""


def _settings(told: dict[str, dict[str, str]]) -> Iterator[str]:
    yield from ("", "## The settings of a book", "")
    yield "At the desk they are boxes, under *The book*. In the file `mkdocs.yml` they stand below "
    yield "`stillroom:`, each a little further in. What you leave out is as said beside it."
    yield ""
    for name in BookSettings.model_fields:
        said = told[name]
        word = "site_name" if name == "title" else name
        yield f"`{word}`"
        yield f":   {_cell(said['says'])} Without it: {_cell(said['without'])}."
        yield from _example(said["example"])


def _commands() -> Iterator[str]:
    yield from _head(
        "Every command", "What each command of stillroom does, and every choice it takes."
    )
    for name, command in commands_of(main):
        context = click.Context(command, info_name=f"stillroom {name}")
        usage = command.collect_usage_pieces(context)
        yield from (f"## stillroom {name}", "", f"`stillroom {name} {' '.join(usage)}`", "")
        yield from (_cell(command.help or ""), "")
        for one in command.params:
            record = one.get_help_record(context)
            if record and record[0].startswith("-") and "--help" not in record[0]:
                yield f"- `{record[0]}` {_cell(record[1])}".rstrip()
        yield ""


def commands_of(group: click.Group, before: str = "") -> Iterator[tuple[str, click.Command]]:
    """Yield every command with its whole name, those of a group by themselves."""
    context = click.Context(group)
    for name in group.list_commands(context):
        command = group.get_command(context, name)
        if isinstance(command, click.Group):
            yield from commands_of(command, f"{before}{name} ")
        elif command is not None:
            yield f"{before}{name}", command


# what stands in a rule's blanks on a page, told for every page at once
BLANKS = {
    "items": "what it is",
    "allergens": "the allergens",
    "strength": ", with its strength",
    "vinegar": "",
    "salt": "What the recipe itself comes to.",
    "cure": "What the recipe itself comes to.",
    "book_keeps": "the time that guidance gives",
    "sterilise_minutes": "10",
    "altitude": "sea level, and longer higher up",
    "jam_process": "The guide's minutes for jam at the book's altitude, or that it has none.",
    "words": "what harms them",
    "process": "The guide's minutes for a tested recipe of these proportions, or that it has none.",
}


def _rules() -> Iterator[str]:
    yield from _head(
        "Every rule of the safety box", "Each caution that a page may carry, and who says so."
    )
    yield "These are looked for in every recipe. Your own country's food-safety authority has the "
    yield "last word."
    rules = read_data("hazards.yml")
    for gravity, words in GRAVITIES.items():
        yield from ("", f"## {words}", "")
        for rule in rules:
            if rule["gravity"] == gravity:
                yield from _rule(rule)


def _rule(rule: dict[str, Any]) -> Iterator[str]:
    yield from (f"### {_cell(rule['title'])}", "")
    for whom, key in (("", "to_maker"), ("To whoever is given it: ", "to_receiver")):
        if said := rule.get(key):
            yield from (f"{whom}{_cell(said.format_map(BLANKS))}", "")
    how = HAD[rule["read"]]
    yield from (f"*{_cell(rule['source'])}* ({how}; compared {rule['checked']})", "")


def giving_page() -> str:
    """Return the guide of the giving list with its parts in a table for the example."""
    text = GIVING.read_text(encoding="utf-8")
    rows = "\n".join(f"| `{name}` | {words} |" for name, words in LIST_PARTS.items())
    table = f"| part | what it says |\n| --- | --- |\n{rows}\n"
    where = (
        "`stillroom start` and the desk put one to write over into the folder `giving` of a new "
        "book. It is not shown here: the book refuses to publish whatever looks like one, and "
        "takes this guide for no exception. At the desk it is boxes to fill, under *Giving list*.\n"
    )
    text = re.sub(
        r"^```yaml\n.*?^```$", lambda _: f"{table}\n{where}", text, count=1, flags=re.M | re.S
    )
    text = text.replace("## A small whole one", "## Its parts")
    head = "\n".join(
        (
            "---",
            "title: Write a giving list",
            "description: Who is given a basket, what they must not have, what is made.",
            "---",
            "",
        )
    )
    return f"{head}\n{text}"
