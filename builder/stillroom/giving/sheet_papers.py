"""The sheets to tick off on paper: this week, the day of filling, one a basket.

Plain data for templates/paper/sheets.typ, out of what the pages say.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any


def _tick(words: str, strong: str = "", small: str = "", done: bool = False) -> dict[str, Any]:
    return {"words": words, "strong": strong, "small": small, "done": done}


def _part(
    heading: str,
    ticks: list[dict[str, Any]] | None = None,
    lines: list[tuple[str, str]] | None = None,
) -> dict[str, Any]:
    said = [{"strong": strong, "words": words} for strong, words in lines or []]
    return {"heading": heading, "ticks": ticks or [], "lines": said}


def _sheet(
    heading: str,
    parts: list[dict[str, Any]],
    names: str = "",
    caution: str = "",
    message: str = "",
    look: Mapping[str, Any] | None = None,
) -> dict[str, Any]:
    return {
        "heading": heading,
        "look": look,
        "names": names,
        "caution": caution,
        "message": message,
        "parts": parts,
    }


def _paper(
    data: dict[str, Any], title: str, sheets: list[dict[str, Any]], paper: str, sizes: list[float]
) -> dict[str, Any]:
    """Return the data of sheets; each takes the first of the sizes at which it is one page."""
    foot = f"{data['title']} · private"
    named = f"{data['title']}: {title}"
    return {"title": named, "foot": foot, "sheets": sheets, "paper": paper, "sizes": sizes}


def week_paper(data: dict[str, Any]) -> dict[str, Any]:
    """Return the week's list for the door of the fridge, large enough to read standing."""
    week = data["week"]
    parts = []
    if week["late"]:
        parts.append(_part("Not noted yet", [_tick(row["words"]) for row in week["late"]]))
    parts += [
        _part(day["day"], [_tick(row["words"], done=row["done"]) for row in day["tasks"]])
        for day in week["days"]
    ]
    if not parts:
        parts = [_part("", lines=[("", f"Nothing wants doing this week. {week['next']}")])]
    sheet = _sheet("This week", parts, f"{week['title']}.")
    return _paper(data, "this week", [sheet], "a4", [14])


def filling_paper(data: dict[str, Any]) -> dict[str, Any]:
    """Return the checklist for the day of filling."""
    filling = data["filling"]
    ready = [_tick(f"Baskets: {', '.join(filling['baskets'])}")]
    ready.append(
        _tick(f"{filling['cards']} cards, {filling['tags']} basket tags, string, scissors")
    )
    if filling["cold"]:
        ready.append(_tick(f"Last of all, out of the fridge: {', '.join(filling['cold'])}"))
    fetch = [
        _tick(f"{row['title']}, {row['container']}", f"{row['count']} ×", row["from"])
        for row in filling["fetch"]
    ]
    fill = [
        _tick(
            f"{basket['to']}: {', '.join(one['title'] for one in basket['presents'])}",
            str(basket["number"]),
            f"not: {'; '.join(basket['avoid'])}" if basket["avoid"] else "",
        )
        for basket in data["baskets"]
    ]
    parts = [_part("Put ready", ready), _part("Fetch", fetch), _part("Fill", fill)]
    sheet = _sheet("The filling day", parts, f"Baskets go out on {data['giving_day']}.")
    return _paper(data, "the filling day", [sheet], "a4", [11])


def baskets_paper(data: dict[str, Any], looks: Mapping[int, Mapping[str, Any]]) -> dict[str, Any]:
    """Return one sheet a basket, half a page of A4 each, in the basket's own design."""
    sheets = [_basket(basket, looks[basket["number"]]) for basket in data["baskets"]]
    return _paper(data, "the baskets", sheets, "a5", [10.5, 10, 9.5, 9])


def _basket(basket: dict[str, Any], look: Mapping[str, Any]) -> dict[str, Any]:
    presents = basket["presents"]
    ticks = [
        _tick(one["container"], f"{one['title']},", f"from {one['from']}, made {one['made_on']}")
        for one in presents
    ]
    cards = "its card" if len(presents) == 1 else f"{len(presents)} cards"
    ticks.append(_tick(f"{cards} and the basket’s tag"))
    parts = [_part("In it", ticks)]
    if basket["aloud"]:
        parts.append(_part("Say when you give it", lines=[("", one) for one in basket["aloud"]]))
    said = [(one["title"], _card(one)) for one in presents]
    parts += [_part("What the cards say", lines=said)] if said else []
    caution = f"Must not get: {'; '.join(basket['avoid'])}." if basket["avoid"] else ""
    if basket["empty"]:
        caution = f"{caution} Still to find: {basket['empty']}.".strip()
    names = f"{basket['household']} · {basket['kind']} · {basket['delivery']}"
    heading = f"{basket['number']}  {basket['to']}"
    return _sheet(heading, parts, names, caution, basket["message"], look)


def _card(one: dict[str, Any]) -> str:
    mark = f"{one['date_mark']}." if one["date_mark"] else ""
    words = (one["what"], one["use"], one["keep"], mark, *one["cautions"])
    return " ".join(part for part in words if part)
