"""Further forms of a giving list at the desk: somebody else, another basket, another thing made.

As many as are wanted stand one behind the other and are kept with one press. The script
(assets/further.js) adds a form by itself; without it a press brings the page with one more.
"""

from __future__ import annotations

from collections.abc import Mapping

from stillroom.desk.giving_form import ROWS, box_name, new_places
from stillroom.desk.giving_rows import NEEDED

NewRow = tuple[str, dict[str, str]]


def new_rows(part: str, sent: Mapping[str, str], further: str = "") -> list[NewRow]:
    """Return the forms of a part for new rows: by what name each is sent, and what is in it.

    What was sent with a name is a row of the list by now; what has none is still a form.

    >>> [at for at, _ in new_rows("makes", {"makes|new3|container": "jar"}, "makes")]
    ['new3', 'new4']
    """
    nameless = [at for at in new_places(part, sent) if not _name(part, at, sent)]
    keys = {*(ask.key for ask in ROWS[part]), NEEDED[part]}
    rows = [(at, {key: sent.get(box_name(part, at, key), "") for key in keys}) for at in nameless]
    if not rows or further == part:
        at = f"new{int(nameless[-1][3:] or 1) + 1}" if nameless else "new"
        rows.append((at, dict.fromkeys(keys, "")))
    return rows


def _name(part: str, at: str, sent: Mapping[str, str]) -> str:
    return sent.get(box_name(part, at, NEEDED[part]), "").strip()
