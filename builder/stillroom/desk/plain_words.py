"""What the book's commands and files say, in the words of the desk: no option, no command, no file.

The terminal may be told what to type there; whoever cooks at the desk presses buttons and fills
boxes. Where a message has no such words for the desk, the sentence that only a terminal
understands is left out, and what is wrong stays.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Final

PRINT_BOXES: Final[Mapping[str, str]] = {
    "count": "How many of each",
    "size": "Size of the cards",
    "design": "How cards and tags look",
    "shape": "Shape of the tags",
    "lid": "For a round one, the lid across in mm",
    "bottle": "For one round a bottle, the bottle across in mm",
    "wall": "and its straight wall in mm",
    "used": "Places of the first sheet that are gone",
    "label-sheet": "On which sheets",
    "to": "For whom",
    "from": "From",
    "message": "A line of your own",
    "for": "The household a book is made for",
    "dedication": "Words for them, before the book’s own",
    "gsm": "Weight of the book’s paper in g/m², for the spine of its cover",
    "paper": "Paper",
    "large": "Large type: cards, tags, the kitchen sheet",
}
"""What an option of printing is called where it is filled in (templates/paper.html)."""
_SAID: Final = (
    ("Measure the lid across: --lid 62.", "Measure the lid across, and fill it in."),
    ("Measure the bottle: --bottle 52 --wall 70.", "Measure the bottle, and fill it in."),
    (', or measure 100 leaves in mm and divide by 100: "--leaf 0.11"', ""),
    ("Staple a thinner one (print book --booklet)", "Staple a thinner one"),
    ("Name the recipes you will make, as files after the command.", "Tick those you will make."),
    (", or name a folder of fonts that have it with --fonts", ""),
    (
        'Say what was in it: --of "quince chutney", once for each.',
        "Say what was in it under “Of which recipe, or what was in it”.",
    ),
    (
        'What else left the shelf is "used", with "--number 1".',
        "What else left the shelf is “used”, with 1 under “How many”.",
    ),
    (
        'Delete it, or plan with "--afresh".',
        "Tick “and plan from the beginning” beside “Work it out”.",
    ),
    (", or begin anew from the demo book's mkdocs.yml", ""),
    (
        'write "site_url: https://…" in mkdocs.yml',
        "write it under “The book”, as “Its address, once it is published”",
    ),
    ('Keep its measures in mkdocs.yml, under "labels".', "Keep its measures under “The book”."),
    ("a folder beside mkdocs.yml", "a folder of the book"),
    ("mkdocs.yml", "the book’s settings"),
    ("larder.yml", "your own foods"),
)
"""What is said to whoever types commands, and in its place at the desk."""
_OPTION: Final = re.compile(rf'"?--({"|".join(map(re.escape, PRINT_BOXES))})\b(?:[ =]\d+)?"?')
_TYPED: Final = re.compile(r"`|\bstillroom [a-z]|(?<![\w-])--[a-z]|\bterminal\b")
"""What only means something where commands are typed."""
_SENTENCE: Final = re.compile(r"(?<=[.!?])\s+(?=[A-Z“\"`])")
_PLACE: Final = re.compile(
    r"^(?:warning: |note: )?(?:.*?[/\\])?(?P<name>[^/\\:]+)\.(?P<kind>md|ya?ml)(?::\d+)?: "
)
FILES: Final = {
    "mkdocs": "The book’s settings",
    "larder": "Your own foods",
    "index": "The first page",
    "about": "About this book",
}
"""What the book's own files are called, by their names without an ending."""


def said_here(text: str) -> str:
    """Return a message without what is typed in a terminal, or looked for in a file.

    >>> said_here('"x" is not a number. Write "--count 3".')
    '"x" is not a number. Write “How many of each”.'
    >>> said_here("The day is past. `stillroom close-year` begins the next list.")
    'The day is past.'
    """
    for said, here in _SAID:
        text = text.replace(said, here)
    text = _OPTION.sub(lambda found: f"“{PRINT_BOXES[found[1]]}”", text)
    if not _TYPED.search(text):
        return text
    return " ".join(one for one in _SENTENCE.split(text) if not _TYPED.search(one))


def told_here(lines: Iterable[str], names: Mapping[str, str]) -> tuple[str, ...]:
    """Return the lines that a command said: of which recipe, and in no file at no line.

    `names` are the titles of the recipes by their files. What is said of a list needs no place: it
    is told beside that list.
    """

    def placed(found: re.Match[str]) -> str:
        name = found["name"]
        if found["kind"] == "md":
            return f"{names.get(name) or FILES.get(name, name)}: "
        return f"{FILES[name]}: " if name in FILES else ""

    lines = (said_here(_PLACE.sub(placed, line)).strip() for line in lines)
    return tuple(line for line in lines if line)


def called_here(file: str, names: Mapping[str, str]) -> str:
    """Return what a file of the book is called at the desk.

    >>> called_here("mkdocs.yml", {}), called_here("recipes/fudge.md", {"fudge": "Old fudge"})
    ('The book’s settings', 'Old fudge')
    """
    stem = re.split(r"[/\\]", file)[-1].rpartition(".")[0]
    return names.get(stem) or FILES.get(stem, "")
