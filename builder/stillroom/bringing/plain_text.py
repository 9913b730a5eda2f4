"""Plain text and Markdown to rows: headings, items, numbered lines, the gaps between them.

What typing leaves in it (marks of stress, pictures, links) is taken out; the words stay. Leaves
out letters: letter.py.
"""

from __future__ import annotations

import codecs
import re
from collections.abc import Sequence
from typing import Final

from stillroom.bringing.afterwords import is_name
from stillroom.bringing.broken_lines import without_letters_for_signs
from stillroom.bringing.cells_on_lines import is_unit
from stillroom.bringing.found import Origin, Paper, Row
from stillroom.bringing.heads import AMOUNT_ALONE, STEP_WORD, section_of
from stillroom.bringing.in_facts import recipe_in_facts
from stillroom.bringing.makes_said import is_only_makes
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.sorting import is_ingredient, is_title
from stillroom.bringing.step_labels import labels_over_lists, parts_of
from stillroom.bringing.tables import heads_columns, is_table_line, rows_of_table, with_strokes
from stillroom.bringing.typed_marks import NAMED_LEAF, bare, pieces, without_marks
from stillroom.core.reading.facts_above import read_facts
from stillroom.core.reading.written_facts import NAMES

_HEADING: Final = re.compile(r"(#{1,6})\s*(\S.*?)\s*#*$")
_ITEM: Final = re.compile(
    r"(?:[-*+–—]\s+|[•·‣▪▫●○◦□■☐☑☒▢⬜✓✔✅♥❤★☆➢➤➔►▶▸◆◇❖∙⁃]\s*)(?:\[[ xX]?\]\s*)?(?=\S)"
)
_STEP: Final = re.compile(
    rf"\(?(?:{STEP_WORD}\s*)?\d{{1,2}}\s*[.):\]]{{1,2}}\s+(?=\S)",
    re.IGNORECASE,
)
# a number on a line of its own, as a page's numbers are copied: its words stand on the next
_NUMBER_ALONE: Final = re.compile(
    rf"\(?(?:{STEP_WORD}\s*\d{{1,2}}\s*[.):]?|\d{{1,2}}\s*[.)])",
    re.IGNORECASE,
)
# a sign on a line of its own, as a page's items are copied: its words stand on the next
_SIGN_ALONE: Final = frozenset({"-", "*", "•", "·", "–", "○", "●"})
_ONLY_STEP: Final = re.compile(rf"{STEP_WORD}\s*1\s*[.):]?", re.IGNORECASE)
_GLUED_ITEM: Final = re.compile(r"^(?P<indent>\s*)[-–—](?=[^\W\d_]|[\d½¼¾⅓⅔⅛])")
_RULE: Final = re.compile(r"(?:[-*_=~]\s*){3,}$")
# "[Recette :] Gelée de coings"
_TAGGED: Final = re.compile(
    r"\[(?:recipe|rezept|recette|ricetta|receta|recept)\s*:?\s*\]\s*:?\s*(?=\S)", re.IGNORECASE
)
# a row of one sign as long as the words above it: those are a heading
_UNDERLINE: Final = re.compile(r"([#*=~^+\"'`.:_-])\1{2,}$")
_OWN: Final = re.compile(r"^(?:kind|ingredients|materials)\s*:", re.MULTILINE)
_PARTS: Final = (
    "title",
    "makes",
    "yield",
    "yields",
    "servings",
    "serves",
    "author",
    "source",
    "url",
)
# what it is, in a few words above a page
_TELLS: Final = ("description", "summary")
_APART: Final = re.compile(r"\s{3,}")
_COUNTED: Final = re.compile(r"\s{0,12}(\d{1,2})[.)\]]\s+\S")
_GLUED_NUMBER: Final = re.compile(r"\s{0,12}(\d{1,2})[.)](?=[^\W\d_]{2})")
# "80          600 MISCELLANEOUS VALUABLE RECEIPTS.", "PICKLES AND PRESERVES      211"
_RUNNING_HEAD: Final = re.compile(
    r"\d{1,4}\s{4,}(?:\d{1,4}\s)?[A-ZÀ-Ý][A-ZÀ-Ý'’&,]*(?:\s[A-ZÀ-Ý'’&,]+){1,7}\.?"
    r"|[A-ZÀ-Ý][A-ZÀ-Ý'’&,]*(?:\s[A-ZÀ-Ý'’&,]+){1,7}\.?\s{4,}\d{1,4}"
)
_FAR_APART: Final = re.compile(r"\s{8,}")
_WHOLE: Final = re.compile(r"\S\s+\S*[^\W\d_]{2}")
_SERVED: Final = frozenset({"servings", "serves"})
_TITLES: Final = frozenset(
    {"titel", "tittel", "titre", "titolo", "título", "titulo", "tytuł", "název"}
    | {"name", "naam", "nom", "nome", "nombre", "navn", "namn", "nazwa"}
    | {"recipe", "recipe name", "recipe_name"}
)
# Markdown's own signs meant as they stand: "Evt. atamon\\*", "1\\. Boil"
_ESCAPED: Final = re.compile(r"\\(?=[*_\[\]#`~>|.()!+-])")
# how Markdown ends a line within a paragraph
_BREAK: Final = re.compile(r"(?<=\S)\\[ \t]*\n|<br ?/?>\n?", re.IGNORECASE)
# what no keyboard types, as text_files.py refuses it in a recipe
_UNPRINTABLE: Final = re.compile(
    "[\x00-\x08\x0b\x0e-\x1f\x7f-\x84\x86-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufffe\uffff]"
)


_LIGATURES: Final = {
    0xFB00: "ff", 0xFB01: "fi", 0xFB02: "fl", 0xFB03: "ffi", 0xFB04: "ffl",
    0xFB05: "st", 0xFB06: "st",
}  # fmt: skip
"""Letters that a printer joins, as copied out of a set page."""


def decode(data: bytes) -> str:
    """Return bytes as text whatever wrote them: what is no UTF-8 is an older Windows page.

    >>> decode("Crème".encode("cp1252")), decode("Crème".encode("utf-16"))
    ('Crème', 'Crème')
    """
    for mark, name in (
        (codecs.BOM_UTF8, "utf-8-sig"),
        (codecs.BOM_UTF16_LE, "utf-16"),
        (codecs.BOM_UTF16_BE, "utf-16"),
    ):
        if data.startswith(mark):
            return tidy(data.decode(name, errors="replace"))
    try:
        return tidy(data.decode("utf-8"))
    except UnicodeDecodeError:
        return tidy(data.decode("cp1252", errors="replace"))


def tidy(text: str) -> str:
    """Return text with plain line ends, and without what no keyboard types."""
    for end in ("\r\n", "\r", "\x0c", "\u2028", "\u2029", "\x85"):
        text = text.replace(end, "\n")
    text = _UNPRINTABLE.sub("", re.sub("[\u00ad\u200b-\u200d\u2060\ufeff]", "", text))
    text = text.translate(_LIGATURES)
    text = re.sub(r"(?<=\b[A-Za-z])[\u2018\u00b4`](?=[^\W\d_])", "\u2019", text)
    return re.sub("[\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]", " ", text)


def read_text(text: str, origin: Origin) -> Paper:
    """Return the rows of a text; one that is a recipe of the book's own form is kept as it is."""
    text = NAMED_LEAF.sub(r"\1", text) if "[[" in text else text
    lines = _BREAK.sub("\n", _ESCAPED.sub("", _without_notes(text))).expandtabs(4).split("\n")
    begin = next((place for place, line in enumerate(lines) if line.strip()), 0)
    front, below = _front(lines[begin:])
    if front and (stated := recipe_in_facts(front, below)):
        return Paper((), origin, (stated,))
    if front and _OWN.search("\n".join(front)):
        return Paper((), origin, own_form=text.strip("\n") + "\n")
    return Paper((*_said_above(front), *rows_of(below)), origin)


def _without_notes(text: str) -> str:
    """Return a text without what stands between the marks of HTML's notes."""
    kept, at = [], 0
    while (begin := text.find("<!--", at)) >= 0 and (end := text.find("-->", begin)) >= 0:
        kept.append(text[at:begin])
        at = end + 3
    return "".join([*kept, text[at:]])


def _front(lines: list[str]) -> tuple[list[str], list[str]]:
    """Return the facts between two lines of dashes at the head, and what stands below."""
    if lines and lines[0].strip() == "---":
        for place, line in enumerate(lines[1:60], 1):
            if line.strip() in ("---", "..."):
                return lines[1:place], lines[place + 1 :]
    return [], lines


def _said_above(front: list[str]) -> list[Row]:
    """Return what the facts above a page of Markdown say of a recipe, as lines of it."""
    data = read_facts(front, "", 1, NAMES | {*_PARTS, *_TELLS, *_TITLES}).data if front else {}
    data = {"title" if key in _TITLES else key: value for key, value in data.items()}
    said = {key: str(data[key]) for key in (*_PARTS, *_TELLS) if isinstance(data.get(key), str)}
    for key in _SERVED & said.keys():  # a bare number is of those who are served
        said[key] = f"{said[key]} servings" if said[key].strip().isdigit() else said[key]
    rows = [Row(said.pop("title"), "heading", 1)] if "title" in said else []
    told = [Row(said.pop(key), gap=True) for key in _TELLS if key in said]
    words = {"author": "By", "source": "Source:", "url": "Source:"}
    made = (Row(f"{words.get(key, 'Makes')} {value}") for key, value in said.items())
    return [*rows, *told, *made]


def rows_of(lines: list[str]) -> list[Row]:
    """Return the rows of lines as they are typed."""
    rows: list[Row] = []
    gap = True
    number = ""
    marked = without_letters_for_signs(lines)
    whole = (part for line in marked for part in (parts_of(line) if line.strip() else [line]))
    headed = _with_series_below(_without_running_heads([*whole]))
    typed = _with_dashes_apart(without_marks(with_strokes(_with_numbers_apart(headed))))
    stages = labels_over_lists(typed)
    counted = _with_bare_numbers(typed)
    labelled = counted if stages else _without_one_step(counted)
    for line in _with_tables_whole(_with_crosses_as_dashes(labelled)):
        if isinstance(line, list):
            rows += rows_of_table(line)
            gap = True
            continue
        said = _TAGGED.sub("", line.strip())
        if said in _SIGN_ALONE:
            number = "-"
            continue
        if number and said and not _NUMBER_ALONE.fullmatch(said):
            # a number that nothing was typed behind counts no heading of what follows
            said, number = said if section_of(said) else f"{number} {said}", ""
        elif _NUMBER_ALONE.fullmatch(said) and said not in stages:
            number = re.sub(r"[^\d]", "", said) + "."
            continue
        if not said or heads_columns(said):
            gap = True
            continue
        if not gap and rows and (level := _underlines(said, rows[-1])):
            rows[-1] = Row(_named(rows), "heading", level, rows[-1].gap)
            gap = True
            continue
        if _RULE.fullmatch(said) or _UNDERLINE.fullmatch(said):
            gap = True
            continue
        if said.startswith(">") and rows and rows[-1].shape in ("item", "row") and not gap:
            rows.append(Row(bare(said.lstrip("> ")), "row", 0, False))  # said of that item
            continue
        for piece in _columns(said) or ([] if rows else _title_and_name(said)) or pieces(said):
            rows.append(_row(piece, len(line) - len(line.lstrip()), gap))
            gap = False
    return [row for row in rows if row.text]


def _with_numbers_apart(lines: list[str]) -> list[str]:
    """Return lines with "4.Let it stand" parted where others of them have "3. Stir".

    >>> _with_numbers_apart(["3. Stir.", "4.Let it stand."]), _with_numbers_apart(["2.Prise Salz"])
    (['3. Stir.', '4. Let it stand.'], ['2.Prise Salz'])
    """
    counted = {int(found[1]) for line in lines if (found := _COUNTED.match(line))}
    return [
        f"{line[: found.end()]} {line[found.end() :]}"
        if (found := _GLUED_NUMBER.match(line)) and int(found[1]) - 1 in counted
        else line
        for line in lines
    ]


def _without_running_heads(lines: list[str]) -> list[str]:
    """Return lines without the head of a printed page: its number, a gap and capitals, apart.

    >>> page = ["80          600 VALUABLE RECEIPTS.", "", "Plum Jam", "", "SALT      1 lb"]
    >>> _without_running_heads(page)
    ['', '', 'Plum Jam', '', 'SALT      1 lb']
    """
    return [
        ""
        if (at == 0 or not lines[at - 1].strip())
        and not "".join(lines[at + 1 : at + 2]).strip()
        and _RUNNING_HEAD.fullmatch(line.strip())
        else line
        for at, line in enumerate(lines)
    ]


def _with_series_below(lines: list[str]) -> list[str]:
    """Return lines with the head of a leaflet behind its title: "COUNTY SERVICE      Series 12".

    Two pieces far apart on the first line, and below them, alone, what the leaflet is called.

    >>> leaflet = ["COUNTY SERVICE          Food Series 12", "", "    Rose Jelly", "", "4 cups tea"]
    >>> _with_series_below(leaflet)[2:5]
    ['    Rose Jelly', '', 'Source: COUNTY SERVICE, Food Series 12']
    >>> card = ["Rose Jelly          Makes 8 jars", "", "Best of all", "", "4 cups tea"]
    >>> _with_series_below(card) == card
    True
    """
    said = [at for at, line in enumerate(lines) if line.strip()][:3]
    if len(said) < 3 or said[1] - said[0] < 2 or said[2] - said[1] < 2:
        return lines
    pieces_of = _FAR_APART.split(lines[said[0]].strip())
    named = is_title(lines[said[1]].strip()) and not says_its_kind(pieces_of[0])
    words = any(is_ingredient(one) or is_only_makes(one) or is_name(one) for one in pieces_of)
    if len(pieces_of) != 2 or words or not named:
        return lines
    source = f"Source: {', '.join(pieces_of)}"
    return [
        *lines[: said[0]],
        "",
        *lines[said[0] + 1 : said[1] + 1],
        "",
        source,
        *lines[said[2] - 1 :],
    ]


def _columns(said: str) -> list[str]:
    """Return the things of a line that lists two or three beside each other; [] for any other."""
    parts = _APART.split(said)
    apart = len(parts) > 1 and all(is_ingredient(one) and _WHOLE.search(one) for one in parts)
    # "Salt    0.75 tsp" is one, and so are "1    9-inch pie shell" and "Dash    Salt"
    return parts if apart and not any(AMOUNT_ALONE.fullmatch(part) for part in parts) else []


def _title_and_name(said: str) -> list[str]:
    """Return title and name of a paper's first line where blanks part them; [] for any other.

    >>> _title_and_name("Pickled Beets      Polly Birt"), _title_and_name("Plum jam   for Ann")
    (['Pickled Beets', 'Polly Birt'], [])
    """
    parts = _APART.split(said)
    return parts if len(parts) > 1 and is_title(parts[0]) and is_name(parts[-1]) else []


def _with_tables_whole(lines: list[str]) -> list[str | list[str]]:
    """Return lines with those of each typed table together."""
    found: list[str | list[str]] = []
    for line in lines:
        if not is_table_line(line):
            found.append(line)
        elif found and isinstance(found[-1], list):
            found[-1].append(line)
        else:
            found.append([line])
    return found


def _named(rows: Sequence[Row]) -> str:
    """Return what a line of signs sets off: the first of a paper, its title, without a colon."""
    text = rows[-1].text
    first = len(rows) == 1 and section_of(text) is None
    return text.rstrip(" :") if first else text


def _underlines(said: str, above: Row) -> int:
    """Return the level of the heading that a row of signs makes of the line above it, or 0."""
    if above.shape != "line" or not _UNDERLINE.fullmatch(said):
        return 0
    if set(said) <= {"=", "-"}:
        return 1 if "=" in said else 2
    return (1 if said[0] in "#*" else 3) if len(said) >= len(above.text.rstrip(" :")) else 0


def _with_crosses_as_dashes(lines: list[str]) -> list[str]:
    """Return lines with dashes where a page set a cross before each: "# 1 lb sugar", "# a lemon".

    Three such lines in a row, with nothing between, are a list and no headings.
    """
    crossed = [bool(re.match(r"\s*#\s+\S", line)) for line in lines]
    found = list(lines)
    for begin in range(len(lines)):
        if crossed[begin] and (begin == 0 or not crossed[begin - 1]):
            end = begin
            while end < len(lines) and crossed[end]:
                end += 1
            if end - begin >= 3:
                found[begin:end] = [re.sub(r"#", "-", line, count=1) for line in lines[begin:end]]
    return found


def _with_bare_numbers(lines: list[str]) -> list[str]:
    """Return lines with a stop behind numbers that stand alone and count on from 1, as pages do."""
    alone = [place for place, line in enumerate(lines) if re.fullmatch(r"\s*\d{1,2}\s*", line)]
    counted = [int(lines[place]) for place in alone]
    if len(alone) < 2 or counted != [*range(1, len(alone) + 1)]:
        return lines
    if any(is_unit(line.strip()) for place in alone for line in lines[place + 1 : place + 2]):
        return lines  # "1", "l", "Vinegar": amounts
    return [f"{line.strip()}." if place in alone else line for place, line in enumerate(lines)]


def _without_one_step(lines: list[str]) -> list[str]:
    """Return lines without a "Step 1" that no second step follows: all the steps stand below it."""
    alone = [place for place, line in enumerate(lines) if _ONLY_STEP.fullmatch(line.strip())]
    return (
        [line for place, line in enumerate(lines) if place not in alone]
        if len(alone) == 1
        else lines
    )


def _with_dashes_apart(lines: list[str]) -> list[str]:
    """Return lines with a blank behind the dash of each item, where several are typed without."""
    glued = [line for line in lines if _GLUED_ITEM.match(line)]
    if len(glued) < 2:
        return lines
    return [_GLUED_ITEM.sub(r"\g<indent>- ", line) for line in lines]


def _row(said: str, indent: int, gap: bool) -> Row:
    if found := _HEADING.match(said):
        return Row(bare(found[2]), "heading", len(found[1]), gap)
    stressed = re.fullmatch(r"(\*\*|__)([^*_]+)\1:?", said)
    if stressed and len(stressed[2]) <= 80:
        return Row(bare(stressed[2]), "heading", 5, gap)
    if _STEP.match(said):
        return Row(bare(said), "step", 0, gap, True, indent)
    if found := _ITEM.match(said):
        return Row(bare(said[found.end() :]), "item", 0, gap, True, indent)
    return Row(bare(said), "line", 0, gap, True, indent)
