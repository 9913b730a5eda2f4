"""What the pack's pages say, as plain data for the templates (HTML) and the papers (Typst).

Leaves out looks (templates/) and files (pack.py).
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from typing import Any

from stillroom.core.allergens.avoiding import avoided_by_name
from stillroom.core.amounts.money import show_money
from stillroom.core.amounts.quantities import show_decimal
from stillroom.core.book import BookSettings
from stillroom.core.care.unchecked import could_not_check
from stillroom.core.label.labelling import UsageCard, make_card
from stillroom.core.words.day_words import say_day, say_day_short, say_minutes
from stillroom.giving.batches import Batch, Making, Present
from stillroom.giving.money.costs import CostSheet
from stillroom.giving.money.shopping import Row, month_words, show_size
from stillroom.giving.offering import Offering
from stillroom.giving.plan_model import Basket, Plan, Reason


@dataclass(frozen=True)
class Pack:
    """Everything worked out for one giving list."""

    offering: Offering
    plan: Plan
    making: Making
    rows: tuple[Row, ...]
    costs: CostSheet
    settings: BookSettings
    complaints: tuple[str, ...]

    def money(self, value: Fraction, whole: bool = True) -> str:
        """Show money in the list's currency; a sum that is not `whole` lacks what has no price."""
        if not whole and not value:
            return "not known"
        said = show_money(value, self.offering.giving.currency, self.settings.language)
        return said if whole else f"at least {said}"


def card_of(pack: Pack, present: Present) -> UsageCard:
    """Make the personal card of a present."""
    giving, settings = pack.offering.giving, pack.settings
    household = pack.offering.households[present.basket]
    site = settings.site_url.rstrip("/")
    return make_card(
        present.recipe,
        settings,
        present.made_on,
        to=household.to or household.name,
        sender=giving.from_,
        message=household.message or giving.message,
        url=f"{site}/r/{present.recipe.slug}/" if site else "",
    )


def pack_data(pack: Pack) -> dict[str, Any]:
    """Return all that the templates show."""
    giving = pack.offering.giving
    return {
        "title": giving.giving_list,
        "sender": giving.from_,
        "giving_day": say_day(giving.giving_day),
        "planned_on": say_day(pack.offering.today),
        "households": len(giving.households),
        "baskets": [_basket(pack, basket) for basket in pack.offering.problem.baskets],
        "complaints": pack.complaints,
        "shelf_notes": pack.offering.shelf.notes,
        "objective": _objective(pack),
        "matrix": _matrix(pack),
        "unchecked": _unchecked(pack),
        "checked": _checked(pack),
        "batches": [_batch(pack, batch) for batch in pack.making.batches],
        "shopping": _shopping(pack),
        "weeks": [
            {
                "week": f"Week of {say_day_short(week)}",
                "hours": show_decimal(hours, 1),
                "bar": float(hours / (max(pack.making.hours_by_week.values()) or 1) * 100),
            }
            for week, hours in pack.making.hours_by_week.items()
        ],
        "fullest_week": _fullest_week(pack),
        "months": _months(pack),
        "year": _year(pack),
        "costs": _costs(pack),
    }


def _objective(pack: Pack) -> dict[str, Any]:
    plan = pack.plan
    return {
        "terms": [
            {
                "words": term.words,
                "amount": show_decimal(term.amount, 2),
                "each": term.points_each,
                "points": show_decimal(term.points, 2),
            }
            for term in plan.terms
        ],
        "points": show_decimal(plan.points, 2),
        "bound": show_decimal(plan.bound, 2),
        "gap": f"{show_decimal(plan.gap * 100, 2)} %",
        "proof": plan.proof,
    }


def _matrix(pack: Pack) -> dict[str, Any]:
    problem, plan = pack.offering.problem, pack.plan
    rows = []
    for basket in problem.baskets:
        cells = []
        for offer in problem.offers:
            reasons = problem.refused.get((basket.number, offer.key), ())
            given = offer.key in plan.gifts[basket.number]
            since = problem.years_since_had.get((basket.number, offer.recipe))
            cells.append(
                {
                    "mark": "given" if given else "no" if reasons else "had" if since else "free",
                    "why": "; ".join(reason.one for reason in reasons)
                    or (f"had {since} year{'s' if since != 1 else ''} ago" if since else ""),
                }
            )
        rows.append(
            {
                "number": basket.number,
                "household": basket.household,
                "kind": basket.kind,
                "cells": cells,
            }
        )
    offers = [
        {
            "title": offer.title,
            "sort": offer.sort,
            "count": plan.count_of(offer.key),
            "container": offer.container,
        }
        for offer in problem.offers
    ]
    return {"offers": offers, "rows": rows, "refusals": _refusals(pack)}


def _refusals(pack: Pack) -> list[dict[str, Any]]:
    """Return, household by household, what they cannot have and why."""
    problem, seen, found = pack.offering.problem, set(), []
    for basket in problem.baskets:
        if basket.household in seen:
            continue
        seen.add(basket.household)
        by_reason: dict[Reason, list[str]] = {}
        for offer in problem.offers:
            for reason in problem.refused.get((basket.number, offer.key), ())[:1]:
                by_reason.setdefault(reason, []).append(offer.title)
        if by_reason:
            found.append(
                {
                    "household": basket.household,
                    "lines": [_say_refused(titles, reason) for reason, titles in by_reason.items()],
                }
            )
    return found


def _unchecked(pack: Pack) -> list[dict[str, Any]]:
    """Return every make with a food that is not known, why, and who is given it all the same."""
    given: dict[str, list[str]] = {}
    for number, keys in pack.plan.gifts.items():
        household = pack.offering.households[number]
        there = ["children"] if household.children else []
        there += ["animals"] if household.pets else []
        who = f"{household.name} ({' and '.join(there)} there)" if there else household.name
        for key in keys:
            given.setdefault(pack.offering.makes[key].recipe, []).append(who)
    slugs = dict.fromkeys(make.recipe for make in pack.offering.makes.values())
    return [
        {
            "title": pack.offering.recipes[slug].title,
            "whys": could_not_check(pack.offering.recipes[slug]),
            "to": tuple(dict.fromkeys(given.get(slug, ()))),
        }
        for slug in slugs
        if slug in pack.offering.recipes and could_not_check(pack.offering.recipes[slug])
    ]


def _checked(pack: Pack) -> list[dict[str, Any]]:
    """Return what was looked for on whose behalf, and what that cannot promise."""
    found: dict[str, dict[str, Any]] = {}
    for household in pack.offering.giving.households:
        for word in household.avoid:
            avoid = avoided_by_name(word)
            if avoid.means:
                said = {"means": avoid.means, "cannot": avoid.cannot, "source": avoid.source}
                row = found.setdefault(avoid.meant, {"word": avoid.meant, "who": [], **said})
                row["who"].append(household.name)
    return list(found.values())


def _say_refused(titles: list[str], reason: Reason) -> str:
    if len(titles) == 1:
        return f"{titles[0]} {reason.one}"
    return f"{', '.join(titles[:-1])} and {titles[-1]} {reason.many}"


def _basket(pack: Pack, basket: Basket) -> dict[str, Any]:
    household = pack.offering.households[basket.number]
    presents = [_present(pack, present) for present in pack.making.of_basket(basket.number)]
    empty = [
        f"{count} {sort}"
        for (number, sort), count in pack.plan.empty.items()
        if number == basket.number
    ]
    return {
        "number": basket.number,
        "household": household.name,
        "to": household.to or household.name,
        "kind": basket.kind,
        "delivery": household.delivery,
        "message": household.message or pack.offering.giving.message,
        "avoid": [
            avoided_by_name(word).said for word in (*household.avoid, *household.avoid_ingredients)
        ],
        "presents": presents,
        "empty": ", ".join(empty),
        "cost": pack.money(
            pack.costs.baskets[basket.number], basket.number not in pack.costs.open_baskets
        ),
    }


def _present(pack: Pack, present: Present) -> dict[str, Any]:
    card = card_of(pack, present)
    offer = pack.offering.offer(present.key)
    return {
        "title": present.recipe.title,
        "container": offer.container,
        "made_on": say_day_short(present.made_on),
        "from": present.batch,
        "date_mark": card.date_mark.text,
        "cost": pack.money(
            pack.costs.presents[present.basket, present.key],
            present.batch not in pack.costs.open_batches,
        ),
        "card": card,
        "contents_heading": present.recipe.kind.contents_heading,
    }


def _batch(pack: Pack, batch: Batch) -> dict[str, Any]:
    timeline = batch.timeline
    return {
        "name": batch.name,
        "title": batch.recipe.title,
        "count": batch.count,
        "makes": batch.scaled.makes,
        "start": say_day(timeline.start),
        "made": say_day(timeline.made),
        "best": say_day(timeline.best),
        "keep": say_day(timeline.keep_until) if timeline.keep_until else "not known",
        "verdict": timeline.verdict.text,
        "minutes": say_minutes(batch.minutes),
        "cost": pack.money(
            pack.costs.batches.get(batch.name, Fraction(0)),
            batch.name not in pack.costs.open_batches,
        ),
        "fills": [
            {"words": f"{count} x {pack.offering.offer(key).container}", "count": count}
            for key, count in batch.fills.items()
        ],
        "spare": int(
            batch.spare
            / min((pack.offering.offer(k).share for k in batch.fills), default=Fraction(1))
        ),
        "lines": [
            {"amount": line.amount_text, "item": line.item_text} for line in batch.scaled.lines
        ],
        "warnings": batch.scaled.warnings,
        "stages": [
            {"name": row.name, "from": say_day_short(row.from_), "to": say_day_short(row.to)}
            for row in timeline.stages
        ],
    }


def _shopping(pack: Pack) -> list[dict[str, Any]]:
    months: dict[str, dict[str, list[dict[str, str]]]] = {}
    for row in pack.rows:
        section = months.setdefault(month_words(row.first), {}).setdefault(row.section, [])
        section.append(
            {
                "item": row.said,
                "need": "" if row.loose else show_size(row.need, row.unit),
                "there": show_size(row.there, row.unit) if row.there else "",
                "buy": row.to_buy,
                "price": pack.money(row.price) if row.bought and row.price else "",
                "left": row.left,
                "when": "; ".join(
                    f"{show_size(amount, row.unit)} in {month_words(month)}"
                    for month, amount in row.months
                )
                if len(row.months) > 1 and not row.loose
                else "",
            }
        )
    return [
        {
            "month": month,
            "sections": [{"name": name, "rows": rows} for name, rows in sections.items()],
        }
        for month, sections in months.items()
    ]


def _fullest_week(pack: Pack) -> str:
    """Name the week with the most hands-on hours; "" when nothing is to be made."""
    weeks = pack.making.hours_by_week
    if not weeks:
        return ""
    week = max(weeks, key=lambda monday: weeks[monday])
    return f"The fullest week is that of {say_day(week)}: {show_decimal(weeks[week], 1)} hours."


def _months(pack: Pack) -> list[dict[str, str]]:
    hours: dict[tuple[int, int], Fraction] = {}
    for batch in pack.plan.batches:
        for month, spent in batch.choice.hours.items():
            hours[month] = hours.get(month, Fraction(0)) + spent * batch.count
    given = pack.offering.problem.hours
    return [
        {
            "month": month_words(month),
            "hours": show_decimal(spent, 1),
            "given": show_decimal(given[month], 1) if given else "",
        }
        for month, spent in sorted(hours.items())
    ]


def _year(pack: Pack) -> list[dict[str, Any]]:
    """Return every dated thing to do, by month and day; a rhythm stands on its first day."""
    todo: list[tuple[date, str]] = []
    for batch in pack.making.batches:
        for row in batch.timeline.stages:
            if not row.dates:
                continue
            rhythm = f", {len(row.dates)} times to {say_day_short(row.dates[-1])}"
            often = rhythm if len(row.dates) > 1 else ""
            work = say_minutes(row.hands_on_minutes * batch.count) if row.hands_on_minutes else ""
            todo.append(
                (
                    row.dates[0],
                    f"{row.name}: {batch.recipe.title} ({batch.name}){often}"
                    + (f" · {work}" if work else ""),
                )
            )
    todo.append((pack.offering.giving.giving_day, "Give the baskets"))
    months: dict[str, list[dict[str, str]]] = {}
    for day, words in sorted(todo):
        rows = months.setdefault(month_words((day.year, day.month)), [])
        rows.append({"day": f"{say_day(day).split()[0][:3]} {day.day}", "words": words})
    return [{"month": month, "rows": rows} for month, rows in months.items()]


def _costs(pack: Pack) -> dict[str, Any]:
    sheet, money = pack.costs, pack.money
    priced = not sheet.unpriced
    open_households = {
        basket.household
        for basket in pack.offering.problem.baskets
        if basket.number in sheet.open_baskets
    }
    return {
        "paid": money(sheet.paid, priced),
        "spares": money(sheet.spares, priced),
        "left_over": money(sheet.left_over, priced),
        "empty": money(sheet.empty_baskets),
        "given": money(sum(sheet.presents.values(), Fraction(0)), priced),
        "shop": money(sheet.shop),
        "shop_known": sheet.shop_known,
        "presents": len(pack.making.presents),
        # what was kept cannot be told while something has no price
        "saved": money(sheet.shop - sheet.paid) if priced else "",
        "households": [
            {"name": name, "cost": money(cost, name not in open_households)}
            for name, cost in sheet.households.items()
        ],
        "unpriced": sheet.unpriced,
    }
