"""The boxes of a recipe as they were sent, and what of them a file could not say.

What belongs below the method is put there: words without a heading, and what a cook writes under
"To serve:" at the end of her steps, where it would end the method.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from stillroom.beginning.questions import questions
from stillroom.core.recipe.body import is_aside, read_body
from stillroom.core.words.text_files import typed_words
from stillroom.desk.boxes import headings_meant, headings_shown, is_heading
from stillroom.desk.recipe_form import FIELDS
from stillroom.desk.recipe_writing import differing

_HEADING: Final = "## "
_NUMBER: Final = re.compile(r"\s*\(?\d{1,2}[.)]\s")
_WITH_HEADING: Final = re.compile(r"#{1,6}\s")


@dataclass(frozen=True)
class Lost:
    """A box that a file would say otherwise: its name, what is asked there, the words."""

    box: str
    called: str
    words: str


def in_boxes(form: Mapping[str, str]) -> dict[str, str]:
    """Return the boxes as they are shown: below the method, too, a heading ends with a colon."""
    return {**form, "after": headings_shown(form.get("after", ""))}


def filled(posted: Mapping[str, str]) -> dict[str, str]:
    """Return the boxes as they were sent, without signs that no file of a recipe holds.

    Words below the method get a heading of their own.
    """
    form = {name: typed_words(posted[name]) for name in FIELDS if name in posted}
    after = headings_meant(form.get("after", "").strip())
    if after and not _stands_apart(after):
        after = f"{_HEADING}Notes\n\n{after}"
    if "method" in form:
        form["method"], aside = _without_aside(form["method"])
        after = f"{aside}\n\n{after}".strip()
    if "after" in form or after:
        form["after"] = after
    return form


def _stands_apart(after: str) -> bool:
    r"""Whether words below a method begin with a heading, so that no file takes them for steps.

    >>> [_stands_apart(words) for words in ("## Notes\n\nIt sets.", "It sets.")]
    [True, False]
    """
    lines = ["## Method", "", "1. Stir.", "", *after.split("\n")]
    read = read_body(lines, 1, "it", []) if _WITH_HEADING.match(after) else None
    return read is not None and [step.text for step in read.method] == ["Stir."]


def _without_aside(method: str) -> tuple[str, str]:
    r"""Part what stands under "To serve:" or "Notes:" behind the steps from them.

    >>> _without_aside("Stir.\nTo serve:\nDust with sugar.")
    ('Stir.', '## To serve\n\nDust with sugar.')
    """
    lines = method.split("\n")
    for place, line in enumerate(lines):
        words = line.strip().lstrip("#").strip()
        rest = "\n".join(lines[place + 1 :]).strip()
        above = "\n".join(lines[:place]).strip()
        if is_heading(words) and is_aside(words[:-1]) and rest and above:
            if _goes_on(above, rest):
                break  # a tip amid the steps: where it belongs is hers to say
            return above, "\n".join(map(_headed, [line, *lines[place + 1 :]])).strip()
    return method, ""


def _headed(line: str) -> str:
    """Return a line of an aside as a file has it; its own heading is a heading below the method."""
    words = line.strip().lstrip("#").strip()
    if is_heading(words) and is_aside(words[:-1]):
        return f"\n{_HEADING}{words[:-1].strip()}\n"
    return line.rstrip()


def _goes_on(above: str, rest: str) -> bool:
    """Whether steps follow behind an aside: numbers that go on, or another part of the making."""
    numbered = any(map(_NUMBER.match, above.split("\n")))
    for line in rest.split("\n"):
        words = line.strip()
        if (numbered and _NUMBER.match(line)) or (is_heading(words) and not is_aside(words[:-1])):
            return True
    return False


def lost_of(raw: str, name: str, form: Mapping[str, str]) -> list[Lost]:
    """Return the boxes whose words a file would say otherwise; `raw` is the file as written."""
    called = {box: one.words for box, one in questions().items()}
    return [
        Lost(box, called.get(box, box), words) for box, words in differing(raw, name, form).items()
    ]
