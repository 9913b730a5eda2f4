"""A giving list as a cook writes it at the first try, brought into the form the model reads.

Other words for the same thing (list_words.yml), a household by its name alone, "by post: yes",
"avoid: nuts and dairy". What it does not know it leaves for the reader to tell. Pure: data and the
lines of its names in, the same out.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from stillroom.core.allergens.clauses import says_none
from stillroom.core.words.nearest import nearest
from stillroom.core.words.patterns import OUTSIDE_BRACKETS
from stillroom.giving.baskets_said import baskets_said
from stillroom.giving.left_empty import filled_parts, said_of
from stillroom.giving.list_words import near_key, plain_key, words_by_part
from stillroom.giving.needs_written import needs_said
from stillroom.giving.stock_written import stock_written
from stillroom.giving.who import TELLS_AGE, count_said
from stillroom.giving.written import ALL_OF_A_MONTH

Lines = dict[str, int]
_NOTHING = frozenset(
    {"", "-", "--", "none known", "all fine", "anything goes", "nein", "non", "nee"}
)
_POST = re.compile(r"^(?:by |in the |via )?(?:post|mail|parcel|courier)(?:ed)?$", re.IGNORECASE)
_HAND = re.compile(r"^(?:by |in |we )?(?:hand|person|bring it|bring|hand over)$", re.IGNORECASE)
# "2 to eat and 1 drink", "2 zum Essen, 1 zum Trinken"
_ROOM = re.compile(
    r"(\d+)\s*(?:x\s*)?([^\W\d_][^\W\d_ ]*(?: [^\W\d_]+)*?)"
    r"(?=\s*(?:,|;|\+|&|\b(?:and|und|et|y|e|en|och|og)\b|$))",
    re.IGNORECASE,
)
_SIZE = r"(?P<size>\d[\d.,/]*\s*(?:(?:k?g|m?l|cl|lbs?|oz|litres?|kilos?|pints?|grams?)\b)?)"
_SIZED = re.compile(rf"^{_SIZE}\s*(?:of |von |de )?(?P<item>[^\W\d].*)$", re.IGNORECASE)
_SIZE_FIRST = re.compile(
    rf"^{_SIZE}\s*(?:of )?(?P<item>[^\W\d].*?)(?:\s+(?:for|für)\s+|\s*[:=]\s*)(?P<price>\S*\d.*)$",
    re.IGNORECASE,
)
_ITEM_FIRST = re.compile(r"^(?P<item>[^\W\d][^\d:=]*?)\s*[,:=]?\s+(?P<pack>[^\w\s]?\d.*)$")
# between two children; a lone "y" or "e" stands so as well
_AND = r"(?:and|und|et|y|e|en)"
_BARE_PRICE = re.compile(r"[^\d\s]{0,3}\s*\d[\d.,'’]*\s*\S{0,4}")
_HOURS_OF = {"every week": "hours a week", "every day": "hours a day"}
NUMBERS = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "none": 0, "nobody": 0}


def _row_of(path: str) -> str:
    """Return the row in which a path lies: "households/3" of "households/3/name"."""
    return "/".join(path.split("/", 2)[:2])


class _Tidied:
    """The data as it is brought into form, and where each name of it stands."""

    def __init__(self, lines: Lines) -> None:
        self.lines: Lines = {}
        self._rows: dict[str, list[str]] = {}
        for path, line in lines.items():
            self._put(path, line)

    def _put(self, path: str, line: int) -> None:
        if path not in self.lines:
            self.lines[path] = line
            self._rows.setdefault(_row_of(path), []).append(path)

    def move(self, old: str, new: str) -> None:
        """Let what stood under one path stand under another; only the row it is in is gone through.

        A list of thousands of rows would else be gone through for every key of it.
        """
        if old == new:
            return
        there = self._rows.get(_row_of(old), []) if "/" in old else self.lines
        for path in list(there):
            if path == old or path.startswith(f"{old}/"):
                self._put(new + path[len(old) :], self.lines[path])

    def keys(self, part: str, data: Any, path: str) -> Any:
        """Return a part of the list with its keys called as the model calls them."""
        if not isinstance(data, dict):
            return data
        named: dict[str, Any] = {}
        for word, value in data.items():
            key = str(words_by_part()[part].get(plain_key(word), word))
            key = word if key in named or (key != word and key in data) else key
            self.move(f"{path}/{word}".lstrip("/"), f"{path}/{key}".lstrip("/"))
            named[key] = value
        return named

    def listed(self, data: Any, path: str, name: str, bare: Callable[[Any], Any], part: str) -> Any:
        """Return a list of parts from a list, or from "name: what is said of it"."""
        if isinstance(data, str):
            data = [one.strip() for one in re.split(r"[,;\n]", data) if one.strip()]
        if isinstance(data, dict):
            rows = []
            for place, (word, said) in enumerate(data.items()):
                self.move(f"{path}/{word}", f"{path}/{place}")
                rows.append({name: word, **said} if isinstance(said, dict) else {name: word} | (
                    bare(said) if said is not None else {}))  # fmt: skip
            return rows
        if isinstance(data, list):
            return [
                {name: one} if isinstance(one, str) else _named(one, part, name, bare)
                for one in data
            ]
        return data


def tidy_list(data: dict[str, Any], lines: Lines) -> tuple[dict[str, Any], Lines]:
    """Return a giving list in the model's form, and the line of every name in it."""
    tidied = _Tidied(lines)
    found = filled_parts(tidied.keys("list", data, ""))
    if "baskets" in found:
        found["baskets"] = _baskets(tidied, found["baskets"])
    if "makes" in found:
        rows = tidied.listed(
            found["makes"], "makes", "recipe", lambda said: {"container": said}, "make"
        )
        rows = _each(tidied, "make", rows, "makes")
        found["makes"] = [_make(row) for row in rows] if isinstance(rows, list) else rows
    if "households" in found:
        kinds = list(found["baskets"]) if isinstance(found.get("baskets"), dict) else []
        rows = tidied.listed(
            found["households"],
            "households",
            "name",
            lambda said: _said_of(said, kinds),
            "household",
        )
        rows = _each(tidied, "household", rows, "households")
        if isinstance(rows, list):
            rows = [_household(tidied, row, kinds, f"households/{n}") for n, row in enumerate(rows)]
        found["households"] = rows
    if "prices" in found:
        found["prices"] = _prices(tidied, found["prices"])
    _hours(tidied, found)
    if "posting" in found:
        rows = tidied.listed(
            found["posting"], "posting", "service", lambda said: {"last day": said}, "service"
        )
        found["posting"] = _each(tidied, "service", rows, "posting")
    if isinstance(found.get("stock"), list):
        tidied.move("stock", "stock/ingredients")
        found["stock"] = {"ingredients": found["stock"]}
    if isinstance(found.get("stock"), dict):
        found["stock"] = stock_written(found["stock"], tidied.move)
    return found, tidied.lines


def _named(row: Any, part: str, name: str, bare: Callable[[Any], Any]) -> Any:
    """Return "- Mrs Finch: no nuts" as what it says of one that is called so.

    A key of the part, or one that is misspelt, is no name.
    """
    if not isinstance(row, dict) or len(row) != 1:
        return row
    ((word, said),) = row.items()
    if near_key(part, str(word), name):
        return row
    if isinstance(said, dict):
        return {name: word, **said}
    return {name: word} | (bare(said) if said is not None else {})


def _hours(tidied: _Tidied, found: dict[str, Any]) -> None:
    """Read "hours: {every week: 5}" and "5 a week" as hours a week, a bare number as a month's."""
    for within, key in _HOURS_OF.items():
        if isinstance(found.get(key), str):
            found[key] = _hours_in(found[key]).get(within, found[key])
    if isinstance(found.get("hours"), int | float | str):
        found["hours"] = _hours_in(found["hours"])
    said = found.get("hours")
    if not isinstance(said, dict):
        return
    kept: dict[Any, Any] = {}
    for word, hours in said.items():
        span = words_by_part()["span"].get(plain_key(str(word)), word)
        plain = plain_key(str(word))
        whole = _HOURS_OF.get(str(span)) or words_by_part()["list"].get(plain, "")
        if whole in _HOURS_OF.values() and whole not in found:
            tidied.move(f"hours/{word}", whole)
            found[whole] = hours
        else:
            kept[word if span in said and span != word else span] = hours
            tidied.move(f"hours/{word}", f"hours/{span}")
    weekly = any(key in found for key in _HOURS_OF.values())
    if weekly and kept and "every month" not in kept:
        kept["every month"] = ALL_OF_A_MONTH  # the week or the day is what limits it
    found["hours"] = kept


def _hours_in(said: Any) -> dict[str, Any]:
    """Return hours by the time that they are in: "6 Stunden im Monat", else in a month.

    >>> _hours_in("5 hours a week"), _hours_in(6)
    ({'every week': '5 hours'}, {'every month': 6})
    """
    if isinstance(said, str):
        for words, span in sorted(words_by_part()["span"].items(), key=lambda row: -len(row[0])):
            if said.strip().lower().endswith(f" {words}"):
                return {span: said.strip()[: -len(words)].strip()}
    return {"every month": said}


def _each(tidied: _Tidied, part: str, rows: Any, path: str) -> Any:
    if not isinstance(rows, list):
        return rows
    return [tidied.keys(part, row, f"{path}/{place}") for place, row in enumerate(rows)]


def _baskets(tidied: _Tidied, data: Any) -> Any:
    """Read "small: 2 to eat, 1 drink" beside "small: {eat: 2, drink: 1}"."""
    if not isinstance(data, dict):
        return data
    found: dict[str, Any] = {}
    for kind, said in _whole_rooms(data).items():
        room = said
        if isinstance(said, str) and (parts := _ROOM.findall(said)):
            named = [
                (words_by_part()["basket"].get(plain_key(word)), int(count))
                for count, word in parts
            ]
            room = {key: count for key, count in named} if all(k for k, _ in named) else said
        found[kind] = tidied.keys("basket", room, f"baskets/{kind}")
    return found


def _whole_rooms(data: dict[Any, Any]) -> dict[Any, Any]:
    """Return kinds of baskets with what a comma parted of them: "{small: 2 to eat, 1 to drink}".

    >>> _whole_rooms({"small": "2 to eat", "1 to drink": None, "large": "3 to eat"})
    {'small': '2 to eat, 1 to drink', 'large': '3 to eat'}
    """
    whole: dict[Any, Any] = {}
    for kind, said in data.items():
        last = next(reversed(whole), None)
        if said is None and last and isinstance(whole[last], str) and _ROOM.match(str(kind)):
            whole[last] = f"{whole[last]}, {kind}"
        else:
            whole[kind] = said
    return whole


def _said_of(said: Any, kinds: list[str]) -> dict[str, Any]:
    """Read "The Rowans: small" as their basket, "Mrs Finch: no nuts" as what they avoid."""
    is_basket = not isinstance(said, str) or nearest(plain_key(said), map(str, kinds), 0.75)
    if is_basket or len(kinds) != 1:
        return {"basket": said}
    return {"avoid": said}


def _household(tidied: _Tidied, row: Any, kinds: list[str], path: str) -> Any:
    if not isinstance(row, dict):
        return row
    found = said_of(row)
    if isinstance(adults := found.get("adults"), str):
        found["adults"] = NUMBERS.get(adults.strip().lower(), adults)
    if "basket" not in found and len(kinds) == 1:
        found["basket"] = kinds[0]
    elif isinstance(found.get("basket"), str):
        found["basket"] = baskets_said(found["basket"], kinds)
    if "by post" in found and "delivery" not in found:
        said = found.pop("by post")
        tidied.move(f"{path}/by post", f"{path}/delivery")
        said = answered(said)
        found["delivery"] = {True: "by post", False: "by hand"}.get(said, said)
    if isinstance(found.get("delivery"), str):
        found["delivery"] = _delivery(found["delivery"])
    if "avoid" in found:
        found |= needs_said(found["avoid"], several(found["avoid"]), found.get("pregnant"))
    for key in ("avoid ingredients", "likes", "never"):
        if key in found:
            found[key] = several(found[key])
    if isinstance(found.get("children"), str | bool | list):
        found["children"] = _ages_of(found["children"])
    return found


def _ages_in(row: Any) -> list[Any]:
    ages = ages_said(row) if isinstance(row, str) else [row]
    return ages if len(ages) > 1 and all(map(TELLS_AGE.search, ages)) else [row]


def _ages_of(said: str | bool | list[Any]) -> Any:
    """Return "Wren, 3, and Ash (5)" as a text a child, and none for "no" and "none"."""
    if isinstance(said, list):
        return [one for row in said for one in _ages_in(row)]
    if said is False or (isinstance(said, str) and not several(said)):
        return []
    # "2" may be two children as well as one of two years: it is left as it stands, and asked
    return said if said is True or said.strip().isdecimal() else ages_said(said)


def answered(said: Any) -> Any:
    """Return yes or no as a file holds it, in the languages of the list: "oui" is yes."""
    answer = words_by_part()["answer"].get(plain_key(said)) if isinstance(said, str) else None
    return said if answer is None else answer == "yes"


def _make(row: Any) -> Any:
    """Return a make whose questions are answered by yes or no."""
    if not isinstance(row, dict):
        return row
    found = row | {key: answered(row[key]) for key in ("by post", "in parts") if key in row}
    if isinstance(sort := row.get("sort"), str):  # "essen" is what a basket's words call it too
        found["sort"] = words_by_part()["basket"].get(plain_key(sort), sort)
    return found


def _delivery(said: str) -> str:
    bare = said.strip()
    if _POST.match(bare):
        return "by post"
    return "by hand" if _HAND.match(bare) else bare


def several(said: Any) -> Any:
    """Return "nuts and dairy" as two words, and "nothing" as none."""
    if said is None or said is False:
        return []
    if not isinstance(said, str):
        return said
    if said.strip().lower() in _NOTHING or says_none(said):
        return []
    # "nuts (walnuts and pecans), gluten" is two things
    words = re.split(rf"(?:\s*[,;&\n]\s*|\s+and\s+){OUTSIDE_BRACKETS}", said.strip())
    return [re.sub(r"^(?:and|or|also)\s+", "", word) for word in words if word]


# "2 (4 and 7)", "zwei Kinder: 4 und 7": how many, and then as many ages
_SO_MANY_OF = re.compile(
    r"^(?P<count>[2-9]|[^\W\d]{2,7})(?: (?:kids|children|kinder|enfants|niñ[oa]s|hij[oa]s|figli"
    r"|bambini|kinderen|barn))?\s*[(:]\s*(?P<ages>[^()]+)\)?$",
    re.IGNORECASE,
)


def ages_said(said: str) -> list[str]:
    """Return "Wren, 3, and Ash (5)" as one text a child: a name belongs to the age behind it.

    >>> ages_said("2 (4 and 7)"), ages_said("two children: 8 months, 3")
    (['4', '7'], ['8 months', '3'])
    >>> ages_said("8 (nearly 9)")
    ['8 (nearly 9)']
    """
    if several := _SO_MANY_OF.match(said.strip()):
        each = ages_said(several["ages"])
        if len(each) > 1 and str(count_said(several["count"])) == str(len(each)):
            return each
    ages: list[str] = []
    name = ""
    for piece in re.split(rf"\s*[,;&\n]\s*(?:{_AND}\s+)?|\s+{_AND}\s+(?!a half)", said.strip()):
        name = f"{name}, {piece}" if name else piece
        if TELLS_AGE.search(piece):
            ages.append(name)
            name = ""
    return [*ages, name] if name else ages


def _prices(tidied: _Tidied, data: Any) -> Any:
    """Read "- sugar: 1 kg for 1.15" beside "- {item: sugar, packs: [1 kg for 1.15]}"."""
    if isinstance(data, dict):
        rows = tidied.listed(data, "prices", "item", lambda said: {"packs": said}, "price")
        return [_sized(row) for row in rows]
    if not isinstance(data, list):
        return data
    rows = []
    for place, row in enumerate(data):
        named = tidied.keys("price", _price_line(row), f"prices/{place}")
        if isinstance(named, dict) and len(named) == 1 and not {"item", "packs"} & set(named):
            ((item, packs),) = named.items()
            tidied.move(f"prices/{place}/{item}", f"prices/{place}/packs")
            named = {"item": item, "packs": packs}
        rows.append(_sized(named))
    return rows


def _price_line(row: Any) -> Any:
    """Read "sugar, 1 kg for 1.15" and "1 kg sugar for 1.15" written in one line."""
    if not isinstance(row, str):
        return row
    if found := _ITEM_FIRST.match(row.strip()):
        return {"item": found["item"], "packs": found["pack"]}
    if found := _SIZE_FIRST.match(row.strip()):
        return {"item": found["item"], "packs": f"{found['size']} for {found['price']}"}
    return row


def _sized(row: Any) -> Any:
    """Read "1 kg sugar: 1.15", the size of the pack before the name and the price alone."""
    if not isinstance(row, dict) or not isinstance(row.get("packs"), str | int | float):
        return row
    found = _SIZED.match(str(row.get("item", "")).strip())
    if not found or not _BARE_PRICE.fullmatch(str(row["packs"]).strip()):
        return row
    return row | {"item": found["item"], "packs": f"{found['size']} for {row['packs']}"}
