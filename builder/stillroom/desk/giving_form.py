"""A giving list as boxes, and back into its file with the smallest change.

Each sort of row is a table of facts with what each box asks; what a file says beside these stays.
What is wrong is told by the list's own reader before anything is written.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from stillroom.core.words.patterns import OUTSIDE_BRACKETS
from stillroom.desk.giving_lines import change_lines, plain_value, shown
from stillroom.desk.giving_rows import (
    NEEDED,
    add_row,
    fact_of,
    in_part,
    part_key,
    put_fact,
    row_to_change,
    rows_in,
    take_out,
)
from stillroom.giving.as_written import ages_said
from stillroom.saving.yaml_files import put


@dataclass(frozen=True)
class Ask:
    """One box: the fact in the file, what is asked, how it is written, a hint.

    `more` boxes are folded away until they are wanted.
    """

    key: str
    words: str
    sort: str = "text"
    hint: str = ""
    more: bool = False


TOP: Final = (
    Ask("giving list", "What this giving is called", hint="Christmas 2027"),
    Ask("giving day", "The day the baskets go out", "date", "2027-12-18"),
    Ask("from", "Who the cards are from"),
    Ask("message", "A word on every card that has none of its own"),
    Ask("design", "How cards and tags look", "design"),
    Ask("address", "Your address, for parcels", hint="3 Net Lane, Skerrow", more=True),
    Ask("currency", "What things cost, in; else as the book", "currency", more=True),
    Ask("language", "How prices are written; else as the book", "language", more=True),
    Ask("hours a week", "The most hours of work in a week", "number", "6", more=True),
    Ask("hours a day", "The most hours in a day", "pairs", "2; or every day 2; saturday 6", True),
    Ask("days off", "Days on which nothing is done", "words", "2 August to 14 August", True),
)
ROWS: Final[Mapping[str, tuple[Ask, ...]]] = {
    "households": (
        Ask("name", "Who"),
        Ask("to", "Name on the card"),
        Ask("basket", "Basket", "basket", "small, or: small 2, large 1"),
        Ask("avoid", "Must not have", "words", "nuts, gluten, alcohol, meat"),
        Ask("avoid ingredients", "Nor these foods", "words"),
        Ask("traces are fine", "Traces of these are fine", "words"),
        Ask("adults", "Adults", "number"),
        Ask("children", "Children’s ages", "ages", "6, 18 months"),
        Ask("pregnant", "Somebody is pregnant", "yes"),
        Ask("pets", "Animals live there", hint="dog, cat; or yes"),
        Ask("delivery", "How it goes", "delivery"),
        Ask("likes", "Likes", "words"),
        Ask("must have", "Must have", "words"),
        Ask("never", "Never again", "words"),
        Ask("opens", "The day they open it, if later", "date", "25 December 2027", True),
        Ask("days left", "Days all of it must still keep then", "number", more=True),
        Ask("country", "Country it is posted to; else yours", hint="France", more=True),
        Ask("service", "Posted by; else by any that reaches", hint="second class", more=True),
        Ask("address", "Their address, for the parcel", hint="1 High Street, Oban", more=True),
        Ask("budget", "The most its contents may cost", "number", more=True),
        Ask("message", "A word on their card", more=True),
        Ask("design", "How their papers look", "design", more=True),
    ),
    "makes": (
        Ask("recipe", "Recipe", "recipe"),
        Ask("container", "In what", hint="bottle, 100 ml"),
        Ask("sort", "Counts as", "sort"),
        Ask("per batch", "How many a batch gives", "number"),
        Ask("batches", "At most so many batches", "number"),
        Ask("by post", "May go by post", "yes"),
        Ask("weighs", "One weighs, with its jar", hint="350 g", more=True),
        Ask("at a time", "At most so many batches at a time", "number", more=True),
        Ask("in parts", "Less than a batch may be made", "yes", more=True),
        Ask("shop price", "A like thing in a shop costs", "number"),
        Ask("cost", "What one costs you", "number"),
    ),
    "baskets": (
        Ask("eat", "Things to eat", "number"),
        Ask("drink", "Drinks", "number"),
        Ask("craft", "Things made by hand", "number"),
        Ask("cost", "The empty basket costs", "number"),
        Ask("weighs", "The empty basket weighs", hint="300 g", more=True),
        Ask("containers", "Only what is in these goes in", "holders", "jar, 200 ml", True),
        Ask("design", "How these papers look", "design", more=True),
    ),
    "posting": (
        Ask("service", "Service", hint="second class parcel"),
        Ask("to", "Countries it reaches; else only yours", "words", "France, Germany"),
        Ask("last day", "The last day to post by it", "date", "18 December 2027"),
        Ask("bands", "What a parcel costs, by its weight", "pairs", "1 kg 3.70; 2 kg 5.60"),
    ),
    "batches": (
        Ask("recipe", "Recipe", "recipe"),
        Ask("started", "Begun on", "date"),
        Ask("batches", "How many times the recipe", "number"),
        Ask("tended", "Tended on", "words"),
        Ask("made on", "Filled on", "date"),
        Ask("number", "How many it gave", "number"),
        Ask("container", "In what"),
        Ask("given", "Given away since", "number"),
        Ask("notes", "Notes"),
    ),
}

HEADINGS: Final[Mapping[str, str]] = {
    "households": "Who",
    "baskets": "Baskets",
    "makes": "What is made",
    "posting": "Ways to post",
    "batches": "Batches you began before anything was noted here",
}
"""What stands above the rows of each sort, in the order of the page."""


FILE_ONLY: Final[Mapping[str, Mapping[str, str]]] = {
    "list": {"follows": "close-year writes it into the next year's list"},
    "household": {
        "had": "close-year writes it, from what was really given",
        "said": "close-year writes it, from the log",
    },
}
"""Facts of the list without a box, and why; the boxes of lines hold prices, hours and stock."""


_NAMED: Final = re.compile(r"[^\W\d]")
_NEW: Final = re.compile(r"new\d{0,4}$")
_BETWEEN: Final = re.compile(rf"\s*[,;]\s*{OUTSIDE_BRACKETS}(?:and\s+)?")


def value_of(text: str, ask: Ask) -> Any:
    """Return what a box says as the file has it; None where it says nothing.

    >>> value_of("nuts, 6", Ask("a", "", "words")), value_of("small 2", Ask("a", "", "basket"))
    (['nuts', 6], {'small': 2})
    >>> value_of("nuts (walnuts, pecans), and milk", Ask("a", "", "words"))
    ['nuts (walnuts, pecans)', 'milk']
    >>> value_of("3 and 7", Ask("a", "", "ages"))
    [3, 7]
    """
    text = " ".join(text.split())
    if not text:
        return None
    if ask.sort == "words":
        return [plain_value(one) for one in _BETWEEN.split(text) if one]
    if ask.sort == "ages":
        return [plain_value(one) for one in ages_said(text)]
    if ask.sort == "basket":
        parts = [part.strip() for part in text.split(",") if part.strip()]
        counted = [re.fullmatch(r"(.+?)\s+(\d{1,2})", part) for part in parts]
        if any(counted):
            return {
                found[1] if found else part: int(found[2]) if found else 1
                for part, found in zip(parts, counted, strict=True)
            }
        return text if len(parts) == 1 else dict.fromkeys(parts, 1)
    if ask.sort == "pairs":
        return _pairs(text)
    if ask.sort == "holders":  # "jar, 200 ml; bottle": a comma belongs to its size
        held = [one for one in re.split(r"\s*;\s*", text) if one]
        return held if len(held) > 1 else text
    if ask.sort == "yes":
        return {"yes": True, "no": False}.get(text.lower(), text)
    return plain_value(text) if ask.sort in ("number", "date") else text


def _pairs(text: str) -> Any:
    """Return "1 kg 3.70; 2 kg 5.60" as names with amounts, and a number alone as itself.

    >>> _pairs("1 kg 3.70; 2 kg 5,60"), _pairs("2"), _pairs("as usual")
    ({'1 kg': 3.7, '2 kg': '5,60'}, 2, 'as usual')
    """
    parts = [one for one in re.split(r"\s*;\s*|,\s+", text) if one]
    found = [re.fullmatch(r"(.+?)\s*[:=\s]\s*(\S*\d\S*)", part) for part in parts]
    if len(parts) > 1 or (found[0] and _NAMED.search(found[0][1])):
        if not all(found):
            return text
        return {one[1].strip(): plain_value(one[2]) for one in found if one}
    return plain_value(text)


def rows_of(said: Any, part: str) -> list[tuple[str, dict[str, str]]]:
    """Return the rows of a part of the list: where each stands, and what is in its boxes."""
    return [
        (at, {ask.key: boxed(ask, fact_of(part, row, ask.key)) for ask in ROWS[part]})
        for at, row in rows_in(said, part)
    ]


def top_of(said: Any) -> list[tuple[Ask, str]]:
    """Return the boxes above all rows, and what is in each."""
    return [(ask, boxed(ask, in_part(said, ask.key))) for ask in TOP]


def boxed(ask: Ask, value: Any) -> str:
    """Return a fact of the file as its box shows it.

    >>> boxed(Ask("bands", "", "pairs"), {"1 kg": 3.7}), boxed(Ask("a", "", "pairs"), {"a": 1.5})
    ('1 kg 3.70', 'a 1.5')
    >>> boxed(Ask("a", "", "holders"), ["jar, 1 l", "bottle"])
    'jar, 1 l; bottle'
    """
    if ask.sort == "pairs" and isinstance(value, dict):
        is_price = ask.key == "bands"
        counts = {
            name: f"{count:.2f}" if is_price and isinstance(count, float) else shown(count)
            for name, count in value.items()
        }
        return "; ".join(f"{name} {count}" for name, count in counts.items())
    if ask.sort == "holders" and isinstance(value, list | tuple):
        return "; ".join(shown(one) for one in value)
    return shown(value)


def box_name(part: str, at: str, key: str) -> str:
    """Return how a box is called in what a browser sends.

    >>> box_name("makes", "3", "by post")
    'makes|3|by post'
    """
    return f"{part}|{at}|{key}"


def change_list(said: Any, sent: Mapping[str, str]) -> None:
    """Put into a list what the boxes say."""
    for ask in TOP:
        if ask.key in sent and _is_other(sent[ask.key], ask, in_part(said, ask.key)):
            put(said, [part_key(said, ask.key)], value_of(sent[ask.key], ask))
    for part in ROWS:
        _change_rows(said, part, sent)
    change_lines(said, sent)


def _is_other(text: str, ask: Ask, value: Any) -> bool:
    return " ".join(text.split()) != boxed(ask, value)


def _change_rows(said: Any, part: str, sent: Mapping[str, str]) -> None:
    gone = []
    for at, row in rows_in(said, part):
        if sent.get(box_name(part, at, "gone")):
            gone.append(at)
            continue
        for ask in ROWS[part]:
            text = sent.get(box_name(part, at, ask.key))
            if text is not None and _is_other(text, ask, fact_of(part, row, ask.key)):
                put_fact(part, row_to_change(said, part, at), ask.key, value_of(text, ask))
    if gone:
        take_out(said, part, gone)
    for at in new_places(part, sent):
        new = {
            ask.key: value_of(sent.get(box_name(part, at, ask.key), ""), ask) for ask in ROWS[part]
        }
        row = {key: value for key, value in new.items() if value is not None}
        if name := " ".join(sent.get(box_name(part, at, NEEDED[part]), "").split()):
            add_row(said, part, {**row, NEEDED[part]: name})


def new_places(part: str, sent: Mapping[str, str]) -> list[str]:
    """Return the new rows of a part in which something is said, in the order of their forms.

    >>> new_places("makes", {"makes|new10|recipe": "a", "makes|new2|of": "b", "makes|new|of": ""})
    ['new2', 'new10']
    """
    found = [box.split("|") for box, text in sent.items() if text.strip()]
    places = {box[1] for box in found if box[0] == part and len(box) == 3 and _NEW.match(box[1])}
    return sorted(places, key=lambda at: int(at[3:] or 1))
