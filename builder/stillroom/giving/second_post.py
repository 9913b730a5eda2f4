"""The second check of time and post: every basket of a plan gone through again, from its labels.

Days are counted forward from each batch's start, weights added up from the list's own figures, and
what no parcel takes is read in the words of the label: none of posting.py, of its table or of the
planner's windows is asked. What it finds is a fault of the program, and the pack is not written.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date, timedelta
from fractions import Fraction

from stillroom.core.amounts.quantities import show_decimal
from stillroom.core.label.labelling import STRENGTH_NOT_KNOWN, label_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.timeline import plan_forward
from stillroom.core.words.day_words import say_day
from stillroom.giving.label_words import words_showing
from stillroom.giving.model import Household, Make, Service
from stillroom.giving.offering import Offering
from stillroom.giving.plan_model import Basket, Plan

_FIGURE = re.compile(r"\d+(?:[.,]\d+)?")
# how long a thing must still be good once it is opened, and where nobody says how long it keeps
_GOOD_DAYS, _GOOD_DAYS_BY_POST = 7, 14
_UNTOLD_DAYS = 7
_HOT = Fraction(70)
_AS_SOLD = Fraction(
    60
)  # a drink of which nobody says how strong it is may be as strong as any sold
_FROM_BRITAIN_ABROAD = Fraction(24)


def find_late_and_heavy(offering: Offering, plan: Plan) -> Iterator[str]:
    """Yield every present that is late, too old, or in no parcel's way, and every heavy parcel."""
    for basket in offering.problem.baskets:
        household = offering.households[basket.number]
        posted = household.delivery == "by post"
        last = _last_day(offering, household) if posted else offering.giving.giving_day
        for key in plan.gifts[basket.number]:
            make = offering.makes[key]
            recipe = offering.recipes[make.recipe]
            said = f"{basket.label}: {recipe.title}"
            if (basket.number, key) not in plan.sources:
                yield f"{said}: nothing says which batch it comes from."
                continue
            made, until = _made(offering, plan, basket, key, recipe)
            if made > last:
                yield f"{said}: finished on {say_day(made)}, and it goes out on {say_day(last)}."
            good = _good_to(offering, household)
            if until is not None and until < good:
                yield f"{said}: keeps to {say_day(until)}, and must to {say_day(good)}."
            if posted:
                yield from (
                    f"{said}: {why}." for why in _no_parcel_takes(offering, household, make)
                )
        if posted and (heavy := _too_heavy(offering, plan, basket, household)):
            yield f"{basket.label}: {heavy}."


def _services(offering: Offering, household: Household) -> list[Service]:
    home = offering.settings.country
    country = household.country[0] if household.country else home
    there = [one for one in offering.giving.posting if country in (one.to or (home,))]
    wanted = " ".join(household.service.lower().split())
    return [one for one in there if wanted in ("", " ".join(one.service.lower().split()))]


def _last_day(offering: Offering, household: Household) -> date:
    """Return the last day on which any way of posting still goes; giving day where none says."""
    days = [one.last_day for one in _services(offering, household) if one.last_day]
    return min(max(days), offering.giving.giving_day) if days else offering.giving.giving_day


def _good_to(offering: Offering, household: Household) -> date:
    usual = _GOOD_DAYS_BY_POST if household.delivery == "by post" else _GOOD_DAYS
    days = usual if household.days_left is None else household.days_left
    return (household.opens or offering.giving.giving_day) + timedelta(days=days)


def _made(
    offering: Offering, plan: Plan, basket: Basket, key: str, recipe: Recipe
) -> tuple[date, date | None]:
    """Return the day a present is finished, and the last day it is good; None for ever."""
    source = plan.sources[basket.number, key]
    if source < 0:
        thing = [one for one in offering.shelf.things if one.key == key][-1 - source]
        made, until = thing.made_on, thing.keep_until
    else:
        batch = plan.batches[source].choice
        timeline = plan_forward(recipe, batch.start, batch.due or offering.giving.giving_day)
        made, until = timeline.made, timeline.keep_until
    if until is None and recipe.kind.edible:
        until = made + timedelta(days=_UNTOLD_DAYS)
    return made, until


def _no_parcel_takes(offering: Offering, household: Household, make: Make) -> Iterator[str]:
    """Yield why a label's words keep a thing out of a parcel."""
    recipe, home = offering.recipes[make.recipe], offering.settings.country
    label = label_recipe(recipe, offering.settings)
    if re.match(r"\W*(?:keep )?(?:it )?(?:in|into) (?:the|a) (?:fridge|refrigerator)\b(?! once)",
                label.keep_how, re.IGNORECASE):  # fmt: skip
        yield "it lives in the fridge"
    if not recipe.kind.is_eaten:
        return
    shown = any(words_showing("alcohol", entry.whole) for entry in label.contents)
    figures = [Fraction(one.replace(",", ".")) for one in _FIGURE.findall(label.strength_text)]
    unknown = _AS_SOLD if label.strength_text == STRENGTH_NOT_KNOWN else Fraction(0)
    percent = max(figures, default=unknown)
    if not (shown or percent):
        return
    abroad = bool(household.country) and household.country[0] != home
    if home == "US":
        yield "it holds alcohol, which the mail there does not take"
    elif percent > _HOT:
        yield f"it is of {show_decimal(percent, 0)} % vol"
    elif home == "GB" and abroad and percent >= _FROM_BRITAIN_ABROAD:
        strong = f"of {show_decimal(percent, 0)} % vol" if figures else "of a strength not known"
        yield f"it is {strong} and goes abroad"


def _too_heavy(offering: Offering, plan: Plan, basket: Basket, household: Household) -> str:
    """Say that a parcel is heavier than its service takes, as far as weights are stated."""
    ways = [one.bands for one in _services(offering, household) if one.bands]
    if not ways or len(ways) < len(_services(offering, household)):
        return ""
    weights = [offering.makes[key].weighs or Fraction(0) for key in plan.gifts[basket.number]]
    grams = sum(weights, offering.giving.baskets[basket.kind].weighs or Fraction(0))
    most = max(weight for bands in ways for weight, _ in bands)
    return f"{show_decimal(grams, 0)} g, and {show_decimal(most, 0)} g go" if grams > most else ""
