"""Parcels: by which service and day they are posted, what they weigh and cost, what is refused.

Last days and postage are the list's own figures. What the list does not say is not known: a day
that nobody stated is no promise, a weight that nobody stated has no postage. What carriers refuse
and what borders let in is posting.yml, each row with its source.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from functools import cache
from importlib.resources import files
from typing import Any

import yaml

from stillroom.core.allergens.sentences import avoided_by_name
from stillroom.core.care.finished_strength import finished_percent
from stillroom.core.method.keeping_said import kept_at
from stillroom.core.words.countries import country_name
from stillroom.core.words.day_words import say_day
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.problems import Problem
from stillroom.giving.facts import GiftFacts
from stillroom.giving.kept_cold import is_kept_cold
from stillroom.giving.model import GivingList, Household, Service
from stillroom.giving.plan_model import Reason
from stillroom.giving.reading import ReadList

_HELD = ("contains", "not known")  # a trace is stopped at no border
_NO_WAY = "No service under posting reaches"
_IN_GLASS = ("jar", "bottle", "vial", "phial", "flask")


@dataclass(frozen=True)
class Parcel:
    """How a household's baskets are posted: to which country, by which service, until which day.

    `service` is None where none of the list's is known to reach, `day` None where nobody says.
    """

    country: str
    abroad: bool
    service: Service | None
    day: date | None

    @property
    def heaviest(self) -> Fraction | None:
        """Return the grams that the service carries at most; None when nobody says."""
        return self.service.bands[-1][0] if self.service and self.service.bands else None

    def postage(self, grams: Fraction | None) -> Fraction | None:
        """Return what so much weight costs to post; None where weight or price is not known."""
        bands = self.service.bands if self.service else ()
        if grams is None:
            return None
        return next((price for most, price in bands if grams <= most), None)


def parcel_of(giving: GivingList, household: Household, home: str) -> Parcel | None:
    """Return how a household's baskets are posted; None for one that is given them by hand."""
    if household.delivery != "by post":
        return None
    country = household.country[0] if household.country else home
    reach = services_to(giving, country, home)
    if household.service:
        reach = [one for one in reach if _plain(one.service) == _plain(household.service)]
    # the service that may be posted last; one whose day nobody says comes after all others
    service = max(reach, key=lambda one: one.last_day or date.min, default=None)
    return Parcel(country, country != home, service, service.last_day if service else None)


def services_to(giving: GivingList, country: str, home: str) -> list[Service]:
    """Return the services of the list that reach a country."""
    return [one for one in giving.posting if country in (one.to or (home,))]


def _plain(words: str) -> str:
    return " ".join(words.lower().split())


def due_of(giving: GivingList, parcel: Parcel | None) -> date:
    """Return the day on which a household's baskets leave the house."""
    if parcel is None or parcel.day is None:
        return giving.giving_day
    return min(parcel.day, giving.giving_day)


def weight_of(weights: Sequence[Fraction | None], empty: Fraction | None) -> Fraction | None:
    """Return the grams of a parcel; None as soon as one thing's weight is not known."""
    if empty is None or any(one is None for one in weights):
        return None
    return sum((one for one in weights if one is not None), empty)


@cache
def _rows() -> tuple[dict[str, Any], ...]:
    text = (files("stillroom.giving") / "posting.yml").read_text(encoding="utf-8")
    return tuple(yaml.safe_load(text))


def _applies(
    row: Mapping[str, Any], parcel: Parcel, home: str, facts: GiftFacts, container: str
) -> bool:
    if row.get("from", home) != home or home in row.get("not_from", ()):
        return False
    if row.get("abroad", parcel.abroad) != parcel.abroad:
        return False
    if parcel.country not in row.get("to", (parcel.country,)):
        return False
    if facts.recipe.kind.name in row.get("not_kinds", ()):
        return False
    if row.get("elsewhere"):
        return parcel.abroad and parcel.country not in _borders_read()
    if "holds" in row:
        return any(facts.answer(avoided_by_name(word)) in _HELD for word in row["holds"])
    if "from_percent" in row:
        return _strong(row, facts)
    if row.get("fridge"):
        return is_kept_cold(facts.recipe.keeps.where) or kept_at(facts.recipe) != "room"
    if row.get("glass"):
        return any(word in container.lower().split(",")[0] for word in _IN_GLASS)
    return "kinds" not in row or facts.recipe.kind.name in row["kinds"]


@cache
def _borders_read() -> frozenset[str]:
    """Return the countries of whose borders a row speaks."""
    return frozenset(country for row in _rows() for country in row.get("to", ()))


def _strong(row: Mapping[str, Any], facts: GiftFacts) -> bool:
    """Whether the finished present is as strong; what goes in stands where that is not known."""
    if facts.alcohol == "free" or not facts.recipe.kind.is_eaten:
        return False
    finished = finished_percent(facts.recipe)
    percent = facts.strength if finished is None else finished
    least, most = Fraction(str(row["from_percent"])), Fraction(str(row.get("to_percent", 100)))
    if percent == 0:  # how much alcohol it holds nobody knows: a drink may be as strong as any
        return least < 1 or (facts.alcohol == "contains" and facts.recipe.kind.is_("drink"))
    return least <= percent <= most


def why_not_posted(
    parcel: Parcel | None,
    home: str,
    facts: GiftFacts,
    container: str,
    today: date,
    by_post: bool | None = None,
) -> tuple[Reason, ...]:
    """Return why a present does not go into a parcel; `by_post` is the maker's own word of it."""
    if parcel is None:
        return ()
    reasons = [
        Reason(row["refuses"]["one"], row["refuses"]["many"])
        for row in _rows()
        if "refuses" in row
        and not (row.get("unless_asked") and by_post)
        and _applies(row, parcel, home, facts, container)
    ]
    if parcel.day is not None and parcel.day < today:
        words = f"can no longer be posted: the last day was {say_day(parcel.day)}"
        reasons.append(Reason(words, words))
    return tuple(reasons)


def to_ask(
    parcel: Parcel, home: str, gifts: Sequence[tuple[GiftFacts, str]]
) -> tuple[tuple[str, str], ...]:
    """Return what to ask the carrier of a parcel with these presents, each with its source."""
    found: dict[str, str] = {}
    for row in _rows():
        ask = row.get("ask", "").replace("{country}", country_name(parcel.country))
        if not ask or any(one.startswith(ask.split(":")[0]) for one in found):
            continue
        if any(_applies(row, parcel, home, facts, container) for facts, container in gifts):
            found[ask] = row["source"]
    return tuple(found.items())


def posting_problems(read: ReadList, home: str) -> Iterator[Problem]:
    """Yield what cannot be posted so: by a service not named, or one that goes elsewhere."""
    giving = read.giving
    named = [one.service for one in giving.posting]
    for n, household in enumerate(giving.households):
        parcel = parcel_of(giving, household, home)
        if household.opens and household.opens < due_of(giving, parcel):
            what = f"{household.name} cannot open it before it goes out."
            mend = "Write the day on which they open it."
            yield read.problem(("households", n, "opens"), what, mend)
        if parcel is None:
            continue
        if household.service and not any(_plain(one) == _plain(household.service) for one in named):
            what = f'"{household.service}" is not among the ways to post.'
            mend = did_you_mean(household.service, named) or ADD_IT
            yield read.problem(("households", n, "service"), what, mend)
        elif giving.posting and parcel.service is None:
            key = "country" if household.country else "delivery"
            by = f"{household.service} does not reach" if household.service else _NO_WAY
            what = f"{by} {country_name(parcel.country)}."
            mend = ADD_IT.replace('"to: FR"', f'"to: {parcel.country}"')
            yield read.problem(("households", n, key), what, mend)


ADD_IT = 'Add it under posting: "- service: parcel post", "to: FR", "last day: 10 December 2027".'
