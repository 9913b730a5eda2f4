"""What of the season is done: baskets that went, what was paid, who gave what back and is thanked.

Out of the log alone. Leaves out what is still to do (this_week.py).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from stillroom.core.words.day_words import say_day_and_month
from stillroom.giving.log import LogLine, read_bought
from stillroom.giving.log_names import IN
from stillroom.giving.money.shopping import show_size
from stillroom.giving.standing import numbered
from stillroom.giving.worked_out import Pack


def title_of(pack: Pack, key: str) -> str:
    """Return the title of what a basket held."""
    slug = key.partition(IN)[0]
    recipe = pack.offering.recipes.get(slug)
    return recipe.title if recipe else slug


def gone_data(pack: Pack) -> list[dict[str, Any]]:
    """Return every basket that went: its number, whose, when, how, with what."""
    return [
        {
            "number": number,
            "household": household,
            "day": say_day_and_month(gone.day),
            "how": "posted" if gone.posted else "given",
            "things": [title_of(pack, thing) for thing in gone.things],
            "words": gone.words,
        }
        for number, household, nth in numbered(pack.offering.giving)
        if (gone := pack.season.has_gone(household, nth))
    ]


def spent_data(pack: Pack) -> dict[str, Any]:
    """Return what was paid so far, line by line; what was paid without saying how much is said."""
    lines = [line for line in pack.season.lines if line.kind in ("bought", "posted")]
    paid = [line for line in lines if line.paid is not None]
    open_ones = [line for line in lines if line.kind == "bought" and line.paid is None]
    total = sum((line.paid for line in paid if line.paid is not None), Fraction(0))
    return {
        "total": pack.money(total, not open_ones) if lines else "",
        "rows": [_paid_row(pack, line) for line in lines],
    }


def _paid_row(pack: Pack, line: LogLine) -> dict[str, str]:
    what = f"{_much(line)} {line.name}" if line.kind == "bought" else f"Postage, {line.name}"
    cost = pack.money(line.paid) if line.paid is not None else "not said"
    return {"day": say_day_and_month(line.day), "what": what, "cost": cost}


def _much(line: LogLine) -> str:
    """Say how much was bought as one says it; the log keeps it as it was noted."""
    amount = read_bought(line.amount, line.units)
    exact = amount.unit in ("g", "ml") and amount.low >= 1000
    return show_size(amount.low, amount.unit) if exact else line.amount


def thanks_data(pack: Pack) -> list[dict[str, Any]]:
    """Return every household: when theirs went, what they said of it, what to thank them for."""
    season = pack.season
    rows = []
    for household in pack.offering.giving.households:
        own = [line for line in season.lines if line.name == household.name]
        went = [line for line in own if line.kind in ("given", "posted")]
        thanked = [line.day for line in own if line.kind == "thanked"]
        back = [line for line in own if line.kind == "gave back"]
        owed = [line.words for line in back if not any(day >= line.day for day in thanked)]
        rows.append(
            {
                "household": household.name,
                "went": ", ".join(say_day_and_month(line.day) for line in went),
                "said": [_said(pack, line) for line in own if line.kind in ("liked", "disliked")],
                "back": [line.words for line in back],
                "owed": owed,
                "thanked": ", ".join(say_day_and_month(day) for day in thanked),
            }
        )
    return rows


def _said(pack: Pack, line: LogLine) -> str:
    things = ", ".join(title_of(pack, slug) for slug in line.of)
    words = f": “{line.words}”" if line.words else ""
    return f"{'liked' if line.kind == 'liked' else 'did not like'} {things}{words}"


def to_change_data(pack: Pack) -> list[dict[str, str]]:
    """Return what is to be done otherwise next time, and of what."""
    return [
        {"of": ", ".join(title_of(pack, slug) for slug in line.of), "words": line.name}
        for line in pack.season.of_kind("change")
    ]
