"""The box of a book's own foods: what is typed there, set in as larder.yml wants it.

A cook writes the food and below it what it is; which lines belong to which food is seen by their
words. Leaves out what may be said of a food: core/larder/own.py reads it.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.core.larder.own import KEYS

_SAYS: Final = re.compile(rf"(?:{'|'.join(map(re.escape, KEYS))})\s*:(?:\s|$)")
_LONGEST: Final = 80
_NO_NAME: Final = re.compile(r"[^\w\s'’(),%&/-]+")


def set_in(text: str) -> str:
    r"""Return the lines of a box of foods with what is said of each food set in below it.

    >>> set_in("fig syrup\ncontains: nothing\nprice:\n- 1 l for 4")
    'fig syrup:\n  contains: nothing\n  price:\n  - 1 l for 4'

    What is set in already stays as it is, and so does every note.

    >>> set_in("fig syrup:\n  from: plant # ours\n")
    'fig syrup:\n  from: plant # ours\n'
    """
    lines = [line.expandtabs(2) for line in text.replace("\r\n", "\n").split("\n")]
    found: list[str] = []
    below = False
    for place, line in enumerate(lines):
        if _SAYS.match(line) and found:
            below = True
            line = f"  {line}"
        elif below and line.startswith("-"):
            line = f"  {line}"
        elif line.strip() and not line[0].isspace() and line[0] not in "#-":
            below = False
            follows = next((one for one in lines[place + 1 :] if one.strip()), "")
            if ":" not in line and _SAYS.match(follows.strip()):
                line = f"{line.rstrip()}:"
        found.append(line)
    return "\n".join(found)


def with_food(text: str, food: str) -> str:
    r"""Return the words of the box with a food named at its end that is not in it yet.

    >>> with_food("fig syrup:\n  from: plant\n", "samphire dust")
    'fig syrup:\n  from: plant\n\nsamphire dust:\n  '
    >>> with_food("fig syrup:\n  from: plant\n", "Fig syrup")
    'fig syrup:\n  from: plant\n'
    """
    name = " ".join(_NO_NAME.sub(" ", food).split())[:_LONGEST]
    named = {line.partition(":")[0].strip().lower() for line in text.split("\n")}
    if not name or name.lower() in named:
        return text
    return f"{text.rstrip()}\n\n{name}:\n  ".lstrip("\n")
