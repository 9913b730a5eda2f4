"""What spoils is bought for the month in which it is used, not for the whole year at once.

Apples for September are not bought in February with those of another batch. What is not known to
keep is taken to spoil. What is in the house already is stored as it is, and needs no shop.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from stillroom.core.lines.staple_table import Staple
from stillroom.core.words.day_words import say_month
from stillroom.giving.money.costing import PriceBook
from stillroom.giving.plan_model import Brew, Month

# sections of a shop whose things lie in a cold shelf or a basket for days: common practice, no
# published source
_SPOILING = ("fruit and vegetables", "dairy and eggs", "meat and fish", "bakery")
_KEEPING_TAGS = frozenset({"dried", "dry", "sugar", "honey", "salt", "vinegar", "high-proof"})


def spoils(staple: Staple | None, section: str) -> bool:
    """Say whether something is bought near the day of its use; what nobody knows is.

    Of what is no food (jars, wool) nothing spoils.
    """
    if section in ("containers", "craft"):
        return False
    if staple is None:
        return section in ("", "other")
    if staple.tags & _KEEPING_TAGS:
        return False
    return staple.section in _SPOILING or "perishable" in staple.tags


def name_in(item: str, month: Month) -> str:
    """Return the name under which something is bought for a month."""
    return f"{item}, for {say_month(month[1])} {month[0]}"


def buy_near(
    brews: tuple[Brew, ...], prices: PriceBook, held: Mapping[str, Fraction]
) -> tuple[tuple[Brew, ...], dict[str, tuple[str, ...]]]:
    """Return the brews with what spoils among the needs of each start, and its names by item."""
    near = {
        entry.item
        for entry in prices.items
        if spoils(entry.staple, entry.section) and not held.get(entry.item)
    }
    names: dict[str, dict[str, None]] = defaultdict(dict)
    changed = []
    for brew in brews:
        own = {item: amount for item, amount in brew.needs.items() if item in near}
        if not own:
            changed.append(brew)
            continue
        choices = []
        for choice in brew.choices:
            month = (choice.start.year, choice.start.month)
            needs = {name_in(item, month): amount for item, amount in own.items()}
            for item in own:
                names[item][name_in(item, month)] = None
            choices.append(replace(choice, needs=needs))
        rest = {item: amount for item, amount in brew.needs.items() if item not in near}
        changed.append(replace(brew, needs=rest, choices=tuple(choices)))
    return tuple(changed), {item: tuple(own) for item, own in names.items()}
