"""Texts a hand, a clipboard or an enemy might leave in a file: right ones, mangled.

The mangling hangs on one number only, so that what fails can be had again. Leaves out what reads
the texts: readers.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from random import Random

NUMBERS = (
    "0", "-1", "1/0", "0/0", "1..2", "1.2.3", "1e999999999", "1e-999999999", "9" * 40, "9" * 5000,
    "0.0000000000000000001", "1/99999999999999999", "½", "1½", "½½", "①", "²", "٣", "１", "Ⅳ",
    "1,5", "1.000", "1 000", "3-1", "4-5-6", "1/2/3", "+3", "--3", "∞", "NaN", "inf", "0x10",
    "1_000", "a dozen", "half a", "one", "a few", "many", "2 x", "x 2", "1 1/2", "1⁄2", "⅓-⅔",
)  # fmt: skip
SIGNS = (
    "\x00", "\x07", "\x1b[31m", "\u2028", "\u202e", "\ufeff", "\u00a0", "\u200b", "\ud800",
    "\uffff", "\r", "\r\n", "\n\n", "\t", "  ", "---", "–", "—", ":", ": ", "#", " # ", "-", "- ",
    "*a", "&a ", "!x ", "!!python/object:os.system ", "|", ">", "%", "@", "`", "{", "}", "[", "]",
    "{{", "}}", "{}", "[]", "'", '"', "\\", "\\u0000", "<", ">", "<script>alert(1)</script>",
    "<!--", "-->", "&lt;", "&amp;", "$", "${x}", "{% raw %}", "(", ")", "((", "/", "../..",
    "\\\\", "~", "null", "NO", "yes", "true", "?", "? ", "=", "==", "+", ";", ",", ", ,", "|a|b|",
    "## ", "# ", "### Method", "1. ", "![x](y)", "[a](javascript:x)", "http://x", "£", "€", "🍋",
    "e\u0301", "ﬁ", "İ", "ß", "ǆ", "中文", "א", "a" * 300, "a " * 300, "(" * 200, "[" * 200,
    "{" * 200, "-" * 200, "1 " * 200, "1/" * 200,
)  # fmt: skip
WORDS = (
    "l", "ml", "g", "kg", "oz", "cup", "tsp", "pinch", "to taste", "to fill", "per", "of", "or",
    "and", "x", "jar", "bottle", "sugar", "vodka, 40% vol", "vodka, 400% vol", "0% vol", "egg",
    "garlic", "oil", "every day for", "every", "weeks", "0 days", "99999 years", "until", "from",
    "at 180 C", "gas mark 4", "-40 F", "for 2 hours", "in the dark", "title", "kind", "makes",
    "ingredients", "method", "item", "amount", "was", "card", "keeps", "season", "timeline",
    "vessel", "picture", "infusion", "bake", "craft", "9999-12-31", "0001-01-01", "2027-02-30",
    "29 February", "the Saturday before Christmas", "100000 weeks before Easter",
)  # fmt: skip
TOKEN = re.compile(r"\d+(?:[.,/]\d+)*|\w+|[^\w\s]|\n")

SORTS = ("number", "word", "put", "cut", "line", "drop", "twice", "swap", "indent", "end")
SAID = (*NUMBERS, *SIGNS, *WORDS)


def mangled(seeds: Sequence[str], most: int, chance: Random) -> str:
    """Return one of these texts, changed in up to `most` places."""
    text = chance.choice(seeds)
    for _ in range(chance.randint(1, most)):
        sort = chance.choice(SORTS)
        if sort == "end" and chance.random() < 0.8:
            sort = "number"  # a text cut off says little of what stands below
        place, other = chance.random(), chance.random()
        text = _edited(text, sort, place, other, chance.choice(SAID), chance.choice(NUMBERS))
    return text


def _edited(text: str, sort: str, at: float, to: float, said: str, number: str) -> str:
    if sort in ("number", "word"):
        pattern = re.compile(r"\d+") if sort == "number" else TOKEN
        found = list(pattern.finditer(text))
        if not found:
            return text + said
        one = found[int(at * len(found))]
        return text[: one.start()] + (number if sort == "number" else said) + text[one.end() :]
    if sort in ("put", "cut", "end"):
        place = int(at * (len(text) + 1))
        if sort == "end":
            return text[:place]
        if sort == "put":
            return text[:place] + said + text[place:]
        return text[:place] + text[place + int(to * 40) :]
    lines = text.split("\n")
    place, other = int(at * len(lines)), int(to * len(lines))
    if sort == "drop":
        del lines[place]
    elif sort == "twice":
        lines.insert(other, lines[place])
    elif sort == "swap":
        lines[place], lines[other] = lines[other], lines[place]
    elif sort == "indent":
        lines[place] = f"  {lines[place]}" if to < 0.5 else lines[place].lstrip()
    else:
        head, colon, _ = lines[place].partition(":")
        lines[place] = f"{head}{colon} {said}" if colon else said
    return "\n".join(lines)
