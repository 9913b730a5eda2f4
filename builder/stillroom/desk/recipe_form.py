"""A recipe's file as boxes to fill, in the order in which a cook thinks.

Each list is one box, a line to each. A heading ends with a colon, a blank line ends what stands
under it. In the steps an amount stands as ‹plums›, without braces to type. Leaves out how a box
goes back into the file: recipe_writing.py.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, Final

from stillroom.beginning.questions import questions
from stillroom.core.words.problems import ProblemsFound
from stillroom.desk.boxes import headings_shown, step_lines
from stillroom.desk.recipe_rows import Laid, Row, lay_out

OPEN, CLOSE = "‹", "›"
MORE: Final = " …"
"""Ends a line of which the file says more than stands in the box."""
WORDS: Final = (
    "title",
    "kind",
    "makes",
    "summary",
    "oven",
    "picture",
    "picture_alt",
    "picture_focus",
    "author",
    "units",
)
LISTS: Final = ("timeline", "vessels", "containers", "season", "cautions")
CARD: Final = ("what", "use", "keep", "net")
KEEPS: Final = ("unopened", "opened", "where", "source", "mark", "reason")
ACIDITY: Final = ("ph", "source")
UNDER: Final[Mapping[str, tuple[str, ...]]] = {"card": CARD, "keeps": KEEPS, "acidity": ACIDITY}
"""Facts with lines of their own below them."""
FILE_ONLY: Final[Mapping[str, str]] = {
    "overrides": "switches a rule of safety off: on purpose in the file, with its reason beside it",
    "was": "the desk keeps a recipe's address as it is; only whoever renames files needs it",
    "date": "the day it was written down: the file's own day, where nobody says another",
    "vessel": "another word for vessels",
    "materials": "another word for ingredients, in a craft",
}
"""Facts of a recipe without a box, and why."""
FIELDS: Final = (
    *WORDS,
    "ingredients",
    "method",
    *LISTS,
    *(f"{group}_{name}" for group, names in UNDER.items() for name in names),
    "intro",
    "after",
)
Form = Mapping[str, str]


def as_boxes(raw: str) -> str:
    r"""Return a recipe's file as its boxes read, one below another; as it is where it has none.

    >>> as_boxes("---\ntitle: Gin\nmakes: 1 l\n---\n\n## Method\n\n1. Cut.\n")
    'What is it called? Gin\nHow much does it make? 1 l\n\nWhat you do:\nCut.'
    """
    try:
        form = form_of(lay_out(raw, "it.md"))
        form["after"] = headings_shown(form["after"])
    except ProblemsFound:
        return raw
    rows: list[str] = []
    for box, one in questions().items():
        words = form.get(box, "").strip()
        end = "" if one.words.endswith("?") else ":"
        if words and one.rows:
            rows += ["", f"{one.words}{end}", words]
        elif words:
            rows.append(f"{one.words}{end} {words}")
    return "\n".join(rows)


def empty_form() -> dict[str, str]:
    """Return the boxes of a recipe of which nothing is said yet."""
    return dict.fromkeys(FIELDS, "")


def form_of(laid: Laid) -> dict[str, str]:
    """Return what stands in the boxes for a file."""
    form = empty_form()
    for name in WORDS:
        if name in laid.facts:
            form[name] = _words(laid.facts[name].value)
    for name in LISTS:
        if name in laid.facts:
            form[name] = _box_of(laid.facts[name].rows) or _unlisted(laid.facts[name].value)
    rows = laid.ingredients()
    form["ingredients"] = _box_of(rows)
    if not rows and "ingredients" in laid.facts:
        form["ingredients"] = _unlisted(laid.facts["ingredients"].value)
    form["method"] = steps_box(laid.steps)
    for group in ("card", "acidity"):
        said = laid.data.get(group)
        for name in UNDER[group]:
            form[f"{group}_{name}"] = _words(said.get(name)) if isinstance(said, dict) else ""
    keeps = laid.data.get("keeps")
    if isinstance(keeps, dict):
        for name in KEEPS:
            form[f"keeps_{name}"] = _words(keeps.get(name))
    else:
        form["keeps_unopened"] = _words(keeps)
    form["intro"] = _lines(laid, *laid.intro)
    form["after"] = _lines(laid, *laid.after)
    return form


def _lines(laid: Laid, first: int, last: int) -> str:
    return "".join(laid.lines[first:last]).replace("\r\n", "\n").strip("\n")


def _words(value: Any) -> str:
    if value is None or isinstance(value, dict):
        return ""
    return ", ".join(str(one) for one in value) if isinstance(value, list) else str(value)


def _unlisted(value: Any) -> str:
    values = value if isinstance(value, list) else [value]
    return "\n".join(shown(one) for one in values if one is not None)


def _box_of(rows: Iterable[Row]) -> str:
    """Return rows as the lines of a box."""
    lines: list[str] = []
    grouped = False
    for row in rows:
        if row.is_heading:
            lines += [""] if lines else []
            grouped = True
        elif row.depth == 0 and grouped:
            lines.append("")
            grouped = False
        lines.append(f"{shown(row.value)}:" if row.is_heading else shown(row.value))
    return "\n".join(lines)


def shown(value: Any) -> str:
    """Return one row's words; of an ingredient that says more, its name, amount and note.

    >>> shown({"item": "vanilla pods", "amount": "205 g", "tolerance": "2%"})
    'vanilla pods, 205 g …'
    >>> shown({"rest": "4 weeks"})
    'rest: 4 weeks'
    """
    if not isinstance(value, dict):
        return "" if value is None else str(value)
    if "item" in value:
        said = [str(value[name]) for name in ("item", "amount", "note") if value.get(name)]
        return ", ".join(said) + MORE
    return ", ".join(
        f"{word}: {'' if said is None else said}".strip() for word, said in value.items()
    )


def steps_box(rows: Sequence[Row]) -> str:
    """Return steps as the lines of a box, amounts marked.

    Where the lines alone would be read as other steps, each has its number.
    """
    plain = _step_box(rows, numbered=False)
    read = [(line.text, line.is_heading) for line in step_lines(plain)]
    same = read == [(marked(" ".join(str(row.value).split())), row.is_heading) for row in rows]
    return plain if same else _step_box(rows, numbered=True)


def _step_box(rows: Iterable[Row], *, numbered: bool) -> str:
    lines: list[str] = []
    number = 0
    for row in rows:
        if row.is_heading:
            lines += ([""] if lines else []) + [f"{row.value}:"]
        else:
            number += 1
            lines.append(f"{number}. " * numbered + marked(str(row.value)))
    return "\n".join(lines)


def marked(step: str) -> str:
    """Return a step of the file as the box shows it.

    >>> marked("Stir {plums} in."), braced("Stir ‹plums› in.")
    ('Stir ‹plums› in.', 'Stir {plums} in.')
    """
    return step.replace("{", OPEN).replace("}", CLOSE)


def braced(step: str) -> str:
    """Return a step of the box as the file has it."""
    return step.replace(OPEN, "{").replace(CLOSE, "}")
