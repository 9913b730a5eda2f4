"""Sentences as data: each said once, alike in Python and in the browser, in any language."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
import yaml

from said_twice import pieces_of_scripts
from stillroom.core.words import said
from stillroom.core.words.said import (
    OWN,
    Said,
    choose,
    plural_category,
    read_room,
    said_file,
)
from stillroom.publish.scripts import SPEAKING

# what stands in scripts and is no sentence of the book's: names in the data, of styles and
# of the calendar's own grammar (RFC 5545), and what only a maker of the book can ever see
NO_SENTENCES = re.compile(
    r"with the batch|per container|use by|best before(?: end)?|(?:plain|small) gift|back cover"
    r"|(?:mass volume|volume mass|count mass)|text/calendar|input, select|svg\.when-picture"
    r"|(?:entry|often|every)_\{\}|ready\{\}\{\}|\{\}_one|[A-Z-]+[:{].*|stillroom[-:].*"
    r"|\{\}(?:mm|pt)|text/markdown|\{\}\.md|keeps: \{\}|no_\{\}|form\.send"
    r"|0 \{\}mm|\{\}mm 0|M9 .*|\(prefers-color-scheme.*|data-md-color-\{\}|http://www\.w3\.org/.*|\{\}"
    r"|-//Stillroom//Stillroom book//EN"
    # names of steps of type and of arrangements
    r"|large (?:card|folded|\{\})|, large|, turned|not known|:checked|(?:bare|portrait) gift"
    r"|A fraction cannot divide by nothing\.|\"\{\}\" (?:is not a fraction|wants \{\})\."
    r"|No sentence is named \{\}\."
)
SENTENCES = [
    (room, group, name, phrase)
    for room in SPEAKING.values()
    for group, phrases in read_room(room, OWN).items()
    for name, phrase in phrases.items()
]


def test_no_sentence_stands_in_a_script() -> None:
    scripts = pieces_of_scripts()
    assert len(scripts) > 30, "strings are found at all"
    left = {piece: where for piece, where in scripts.items() if not NO_SENTENCES.fullmatch(piece)}
    assert left == {}


def texts_of(phrase: Any) -> Iterator[str]:
    if isinstance(phrase, str):
        yield phrase
    else:
        for part in phrase.values() if isinstance(phrase, dict) else phrase:
            yield from texts_of(part)


def test_there_are_some_three_hundred_sentences() -> None:
    assert len(SENTENCES) > 250
    names = [(room, group, name) for room, group, name, _ in SENTENCES]
    assert len(names) == len(set(names))


@pytest.mark.parametrize(
    "forms", [row for row in SENTENCES if isinstance(row[3], dict) and "other" in row[3]],
    ids=lambda row: row[2],
)  # fmt: skip
def test_forms_are_those_that_unicode_names(forms: tuple[str, str, str, dict[str, str]]) -> None:
    wanted = {plural_category(Fraction(number), OWN) for number in range(200)}
    named = {name for name in forms[3] if not name.startswith("=")}
    assert "other" in named
    assert named <= wanted | {"other"}


def test_every_sentence_that_code_asks_for_is_there() -> None:
    """What a module asks of its own group by name, in Python and in the scripts."""
    root = Path(said.__file__).parents[2]
    asked = 0
    for path in root.rglob("*.py"):
        text = path.read_text(encoding="utf-8")
        speaking = dict(re.findall(r'^(\w+)(?:: Final)? = Said\("[\w.]+", "(\w+)"\)', text, re.M))
        rooms = dict(re.findall(r'^(\w+)(?:: Final)? = Said\("([\w.]+)", "\w+"\)', text, re.M))
        for name, group in speaking.items():
            known = read_room(rooms[name], OWN)[group]
            for word in re.findall(rf'\b{name}(?:\.refuse)?\(\s*"(\w+)"', text):
                asked += 1
                assert word in known, f"{path.name}: {word}"
    assert asked > 60
    asked = 0
    for path in (root / "publish" / "assets" / "js").rglob("*.js"):
        text = path.read_text(encoding="utf-8")
        files = dict(re.findall(r'^import (\w+) from "[./]+data/said/([\w-]+)\.js"', text, re.M))
        for name, held in re.findall(r"^const (\w+) = speaker\((\w+)\)", text, re.M):
            short, _, group = files[held].partition("-")
            known = read_room(SPEAKING[short], OWN)[group]
            for word in re.findall(rf'\b{name}(?:\.refuse)?\("(\w+)"', text):
                asked += 1
                assert word in known, f"{path.name}: {word}"
    assert asked > 120


def test_a_wrong_name_or_a_missing_blank_is_an_error() -> None:
    say = Said("stillroom.core.words", "words")
    with pytest.raises(KeyError):
        say("no_such_sentence")
    with pytest.raises(KeyError):
        say("and", others="a")


@pytest.fixture
def another_language(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """Put files of Polish beside the English ones: its plurals have forms that English lacks."""
    for room in SPEAKING.values():
        groups: dict[str, Any] = json.loads(json.dumps(read_room(room, OWN)))
        for phrases in groups.values():
            for name, phrase in phrases.items():
                phrases[name] = in_polish(phrase)
        place = tmp_path / room / "pl.yml"
        place.parent.mkdir()
        place.write_text(yaml.safe_dump(groups, allow_unicode=True), encoding="utf-8")

    def file_of(room: str, language: str) -> Any:
        return tmp_path / room / "pl.yml" if language == "pl" else said_file(room, language)

    monkeypatch.setattr(said, "said_file", file_of)
    monkeypatch.setattr(said, "_spoken", "pl")
    yield tmp_path
    read_room.cache_clear()


def in_polish(phrase: Any) -> Any:
    """Mark a phrase as another language's, with a form for each category that Polish has."""
    if isinstance(phrase, str):
        return f"«{phrase}»"
    if isinstance(phrase, dict) and "other" in phrase:
        forms = {name: f"«{name} {phrase['other']}»" for name in ("one", "few", "many", "other")}
        return forms | {name: f"«{text}»" for name, text in phrase.items() if name[0] == "="}
    parts = phrase.items() if isinstance(phrase, dict) else enumerate(phrase)
    marked = {name: in_polish(part) for name, part in parts}
    return marked if isinstance(phrase, dict) else list(marked.values())


# Polish in CLDR 44: one 1; few 2-4, 22-24 ...; many 0, 5-21, 25-31 ...; other fractions
POLISH = {0: "many", 1: "one", 2: "few", 4: "few", 5: "many", 12: "many", 22: "few", 25: "many"}


def test_another_language_needs_no_other_code(another_language: Path) -> None:
    from stillroom.core.when.spans import Span
    from stillroom.core.words.joining import join_and

    assert join_and(["a", "b", "c"]) == "«a«, »b and c»"
    for count, form in POLISH.items():
        if count:
            assert str(Span(count, count, "week")) == f"«{form} {count} weeks»"
    assert choose({"few": "f", "many": "m", "other": "o"}, "3/2", "pl") == "o"
    assert str(Said("stillroom.core.size", "size").refuse("no_tin")).startswith("«This recipe")
