"""The log's file: read with the line of every mistake, and a line put to its end.

`log.yml` lies beside the giving list and serves every list of its folder. A line is added as one
line; notes that somebody wrote between the lines, and their order, stay as they are.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any, Final

from pydantic import ValidationError
from ruamel.yaml.comments import CommentedMap
from ruamel.yaml.scalarfloat import ScalarFloat

from stillroom.core.amounts.units import System
from stillroom.core.private.shapes import GIVING_LOG_KEY
from stillroom.core.words.frontmatter import read_yaml
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable, say_written
from stillroom.core.words.text_files import clean, read_text
from stillroom.giving.log import LogLine, ReadLog, log_kinds, read_bought, read_kind
from stillroom.giving.reading import ReadList
from stillroom.saving.yaml_files import change_yaml

LOG_FILE: Final = "log.yml"
_BEGUN: Final = (
    "# What happened, newest last: stillroom note writes a line, and so may you.\n"
    "# Private, like the list beside it.\n"
    f"{GIVING_LOG_KEY}:\n"
)
_FIELDS: Final = {
    field.alias or name
    for name, field in LogLine.model_fields.items()
    if name not in ("kind", "name", "line")
}
_ASK: Final = {
    "number": 'Say how many: "number: 7".',
    "amount": 'Say how much: "amount: 5 kg".',
    "things": 'Say what was in it: "things: [quince-chutney]".',
    "of": 'Say of which recipe: "of: quince-chutney".',
    "words": 'Say what: "words: a jar of plums".',
    "day": 'Say on which day: "day: 2027-06-03".',
}
_WRONG: Final = "is not right"


def log_beside(giving_list: Path) -> Path:
    """Return where the log of a giving list lies."""
    return giving_list.parent / LOG_FILE


def load_log(giving_list: Path, read: ReadList, country: str) -> ReadLog:
    """Read the log beside a list, its own season of it; an empty one where there is none."""
    path = log_beside(giving_list)
    if not path.exists():
        return ReadLog(str(path))
    giving = read.giving
    text = read_text(path, str(path))
    log = read_log(text, str(path), giving.currency, giving.language, country, read.units)
    return log.of_list(giving.giving_list, giving.follows)


def read_log(
    text: str,
    name: str,
    currency: str = "GBP",
    language: str = "en_GB",
    country: str = "GB",
    units: System = "metric",
) -> ReadLog:
    """Read a log from its text; raises ProblemsFound with everything wrong in it."""
    located = read_yaml(clean(text, name), name, decimals=False)
    said = located.data
    if not isinstance(said, dict) or set(said) != {GIVING_LOG_KEY}:
        mend = f'Begin it with "{GIVING_LOG_KEY}:", and a dash before every line below.'
        raise ProblemsFound([Problem(name, 1, "This is not the log of a season.", mend)])
    rows = [] if said[GIVING_LOG_KEY] is None else said[GIVING_LOG_KEY]
    if not isinstance(rows, list):
        what = "The log is a list: one thing that happened a line, each after a dash."
        raise ProblemsFound([Problem(name, located.lines.get(GIVING_LOG_KEY, 1), what)])
    context = {"currency": currency, "language": language, "country": country, "units": units}
    lines: list[LogLine] = []
    problems: list[Problem] = []
    for place, row in enumerate(rows):
        here = f"{GIVING_LOG_KEY}/{place}"
        at = located.lines.get(here, 1)
        try:
            lines.append(read_line(row, context, at))
        except _WrongLine as wrong:
            line = located.lines.get(f"{here}/{wrong.key}", at)
            problems.append(Problem(name, line, wrong.what, wrong.mend))
    if problems:
        raise ProblemsFound(problems)
    return ReadLog(name, tuple(lines))


class _WrongLine(Unreadable):
    """What is wrong in one line of the log, and under which word of it."""

    def __init__(self, what: str, mend: str = "", key: str = "") -> None:
        super().__init__(what, mend)
        self.key = key


def read_line(row: Any, context: Mapping[str, str], at: int = 0) -> LogLine:
    """Return one line as it is meant; raises Unreadable with what to write instead."""
    if not isinstance(row, dict):
        mend = 'Write "{day: 2027-06-03, begun: quince-ratafia}".'
        raise _WrongLine(f"{say_written(row)} is no line of the log.", mend)
    if "in" in row and "container" not in row:  # as `stillroom note --in` has it
        row = {("container" if key == "in" else key): value for key, value in row.items()}
    word, kind = _kind_of(row)
    name = row[word]
    # "yes" and "no" are no names, and would else be read as a program's words for them
    if not isinstance(name, str | int) or isinstance(name, bool) or not str(name).strip():
        raise _WrongLine(f'What was "{word}" is not said.', f"As in: {kind.example}", word)
    allowed = ("day", *kind.must, *kind.may)
    for key in row:
        if key != word and key not in allowed:
            mend = did_you_mean(str(key), allowed)
            raise _WrongLine(f'"{key}" has no place beside "{kind.kind}".', mend, str(key))
    for key in ("day", *kind.must):
        if row.get(key) in (None, "", []):
            raise _WrongLine(f'Beside "{kind.kind}: {name}" there is no "{key}".', _ASK[key], word)
    said = {str(key): value for key, value in row.items() if key != word}
    for key in ("words", "container", "amount"):
        if isinstance(said.get(key), int | float):
            said[key] = str(said[key])
    said |= {"kind": kind.kind, "name": " ".join(str(name).split()), "line": at}
    said["units"] = context.get("units", "metric")
    try:
        line = LogLine.model_validate(
            said,
            context=dict(context),
        )
    except ValidationError as error:
        raise _wrong(error) from None
    if line.amount:
        try:
            read_bought(line.amount, line.units)
        except Unreadable as wrong:
            raise _WrongLine(wrong.what, wrong.mend, "amount") from None
    return line


def _kind_of(row: Mapping[Any, Any]) -> tuple[str, Any]:
    words = [str(key) for key in row if key not in _FIELDS]
    for word in words:
        try:
            return word, read_kind(word)
        except Unreadable as wrong:
            if len(words) == 1:
                raise _WrongLine(wrong.what, wrong.mend, word) from None
    known = ", ".join(log_kinds())
    raise _WrongLine("What happened is not said.", f"It may be: {known}.")


def _wrong(error: ValidationError) -> _WrongLine:
    detail = error.errors()[0]
    key = str(detail["loc"][0])
    wrong = detail.get("ctx", {}).get("error")
    if isinstance(wrong, Unreadable):
        return _WrongLine(f'"{key}": {wrong.what}', wrong.mend, key)
    mend = _ASK.get(key, "It is a whole number." if "int" in detail["type"] else "")
    return _WrongLine(f'"{key}" {_WRONG}: {say_written(detail["input"])}.', mend, key)


def add_row(text: str, name: str, row: Mapping[str, Any]) -> str:
    """Return the log's text with one line more at its end; an empty text begins the log."""

    def change(said: Any) -> None:
        new = CommentedMap({key: _as_day(value) for key, value in row.items()})
        new.fa.set_flow_style()
        if said.get(GIVING_LOG_KEY) is None:
            said[GIVING_LOG_KEY] = [new]
        else:
            said[GIVING_LOG_KEY].append(new)

    return change_yaml(text if text.strip() else _BEGUN, name, change)


def _as_day(value: Any) -> Any:
    """Return a day as a day, so that it stands without quotes."""
    whole = isinstance(value, str) and re.fullmatch(r"\d{4}-\d{2}-\d{2}", value)
    return date.fromisoformat(value) if whole else value


def plain_value(text: Any) -> Any:
    """Return a number that was typed as the number, anything else as it stands."""
    said = str(text)
    if re.fullmatch(r"\d{1,9}", said):
        return int(said)
    if re.fullmatch(r"\d{1,9}\.\d{1,2}", said):  # 5.10 stays 5.10
        return ScalarFloat(float(said), width=len(said), prec=said.index("."))
    return text
