"""Every message of the program stands in one table, and a cook understands each.

The table is tests/data/messages.tsv, written by make_messages.py beside it.
"""

from __future__ import annotations

import importlib.util
import re
from pathlib import Path

from stillroom.core.words.data_files import read_data

DATA = Path(__file__).parent / "data"
_SPEC = importlib.util.spec_from_file_location("make_messages", DATA / "make_messages.py")
assert _SPEC
assert _SPEC.loader
make_messages = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(make_messages)

# words of those who make programs; none may stand in what a cook is told
BANNED = (
    "front matter|yaml|token|tuple|mapping|mappings|key|keys|scalar|block|parser|parse|parsed|null"
    "|boolean|regex|regular expression|utf-?8|unicode|json|string|traceback|integer|exception"
    "|syntax|encoding|plugin|solver|locale|validation|invalid|schema|byte|bytes|char|chars|float|dict|iterable|index|enum"
)
# the one such word that a menu has, with what to do about it beside it
EXPLAINED = (
    'Open it where you write, choose "Save as", and there "UTF-8", which is how letters are kept.'
)


def test_the_table_is_what_the_program_says() -> None:
    written = (DATA / "messages.tsv").read_text(encoding="utf-8")
    assert written == make_messages.table(), "run: python tests/data/make_messages.py"


def test_no_message_speaks_as_programs_do() -> None:
    messages = [row[1] for row in make_messages.messages()]
    assert len(messages) > 400
    banned = re.compile(rf"(?i)(?<![\w-])(?:{BANNED})(?![\w-])")
    assert [said for said in messages if said != EXPLAINED and banned.search(said)] == []


def test_what_is_asked_of_a_kind_speaks_plainly_too() -> None:
    table = read_data("kind_words.yml")
    asked = [row["ask"] for group in ("either", "own") for row in table[group]]
    asked += [row["mend"] for row in read_data("recipe_words.yml")["says"]]
    for text in asked:
        assert not re.search(rf"(?i)\b(?:{BANNED})\b", text), text
        assert text.endswith(".")


def test_the_banned_words_are_found_where_they_stand() -> None:
    assert re.search(rf"(?i)(?<![\w-])(?:{BANNED})(?![\w-])", 'The YAML "a" has no key.')
