"""What the pack's pages say, as plain data for the templates (HTML) and the papers (Typst).

Leaves out looks (templates/) and files (pack.py).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from stillroom.core.amounts.quantities import show_decimal, show_number
from stillroom.core.recipe.kind_dates import dates_of_kind
from stillroom.core.words.day_words import say_day, say_day_short, say_minutes
from stillroom.giving.basket_sheets import (
    IN_THE_HOUSE,
    NOTHING_TO_PAY,
    basket_data,
    filling_data,
)
from stillroom.giving.batches import Batch
from stillroom.giving.explaining import say_how_good
from stillroom.giving.money.shopping import month_words, say_taken, show_size
from stillroom.giving.noticing import notices
from stillroom.giving.parcel_papers import parcels_data
from stillroom.giving.replanning import say_changes
from stillroom.giving.season_pages import gone_data, spent_data, thanks_data, to_change_data
from stillroom.giving.this_week import week_data
from stillroom.giving.who_pages import checked_data, matrix_data, unchecked_data
from stillroom.giving.worked_out import Pack
from stillroom.giving.written import ALL_OF_A_MONTH
from stillroom.giving.year_steps import steps_by_month
from stillroom.giving.years import years_data


def pack_data(pack: Pack) -> dict[str, Any]:
    """Return all that the templates show."""
    giving = pack.offering.giving
    return {
        "title": giving.giving_list,
        "sender": giving.from_,
        "giving_day": say_day(giving.giving_day),
        "planned_on": say_day(pack.offering.today),
        "households": len(giving.households),
        "baskets": [basket_data(pack, basket) for basket in pack.offering.problem.baskets],
        "filling": filling_data(pack),
        "parcels": parcels_data(pack),
        "thanks": thanks_data(pack),
        "to_change": to_change_data(pack),
        "years": years_data(giving, {r.slug: r.title for r in pack.offering.recipes.values()}),
        "complaints": pack.complaints,
        "notices": (*notices(pack.offering, pack.plan, pack.making), *say_taken(pack.rows)),
        "shelf_notes": (*pack.standing.notes, *pack.offering.shelf.notes),
        "changes": say_changes(pack),
        "before": say_day(pack.kept.planned_on) if pack.kept and pack.kept.planned_on else "",
        "week": week_data(pack),
        "gone": gone_data(pack),
        "spent": spent_data(pack),
        "objective": _objective(pack),
        "matrix": matrix_data(pack),
        "unchecked": unchecked_data(pack),
        "checked": checked_data(pack),
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
        "year": steps_by_month(pack.making, pack.offering.giving.giving_day),
        "costs": _costs(pack),
    }


def _points(value: Fraction) -> str:
    """Return points as a page has them: "10,063.5", or "10.063,5" where a comma is the point."""
    shown = show_decimal(value, 2)
    mark = "," if "," in shown else "."
    whole, _, part = shown.partition(mark)
    grouped = f"{int(whole):,}".replace(",", "." if mark == "," else ",")
    return f"{grouped}{mark}{part}" if part else grouped


def _objective(pack: Pack) -> dict[str, Any]:
    plan = pack.plan
    return {
        "terms": [
            {
                "words": term.words,
                "amount": show_decimal(term.amount, 2),
                "each": show_decimal(Fraction(term.points_each), 6),
                "points": _points(term.points),
            }
            for term in plan.terms
        ],
        "points": _points(plan.points),
        "bound": _points(plan.bound),
        "near": say_how_good(plan),
        "proof": plan.proof,
    }


def _batch(pack: Pack, batch: Batch) -> dict[str, Any]:
    timeline = batch.timeline
    return {
        "name": batch.name,
        "title": batch.recipe.title,
        "count": batch.count,
        "times": show_number(batch.amount),
        "makes": batch.scaled.makes,
        "start": say_day(timeline.start),
        "made": say_day(timeline.made),
        "best": say_day(timeline.best),
        "keep": say_day(timeline.keep_until) if timeline.keep_until else "not known",
        "verdict": timeline.verdict.text,
        "whose_dates": found.text if (found := dates_of_kind(batch.recipe)) else "",
        "minutes": say_minutes(batch.minutes),
        "cost": pack.cost(
            pack.costs.batches.get(batch.name, Fraction(0)),
            batch.name not in pack.costs.open_batches,
            IN_THE_HOUSE,
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
        "to_change": [
            line.name for line in pack.season.of_kind("change") if batch.recipe.slug in line.of
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
    hours = show_decimal(weeks[week], 1)
    word = "hour" if hours == "1" else "hours"
    return f"The fullest week is that of {say_day(week)}: {hours} {word}."


def _months(pack: Pack) -> list[dict[str, str]]:
    hours: dict[tuple[int, int], Fraction] = {}
    for batch in pack.plan.batches:
        for month, spent in batch.choice.hours.items():
            hours[month] = hours.get(month, Fraction(0)) + spent * batch.count
    limits = pack.offering.problem.hours or {}
    given = {month: hours for month, hours in limits.items() if hours < ALL_OF_A_MONTH}
    return [
        {
            "month": month_words(month),
            "hours": show_decimal(spent, 1),
            "given": show_decimal(given[month], 1) if month in given else "",
        }
        for month, spent in sorted(hours.items())
    ]


def _costs(pack: Pack) -> dict[str, Any]:
    sheet, money = pack.costs, pack.money
    priced = not sheet.unpriced
    posted = sheet.postage
    open_households = {
        basket.household
        for basket in pack.offering.problem.baskets
        if basket.number in sheet.open_baskets | sheet.open_empty
    }
    return {
        "paid": money(sheet.paid, sheet.whole),
        "postage": money(posted.total, not posted.open) if posted.of_baskets else "",
        "spares": money(sheet.spares, priced),
        "left_over": money(sheet.left_over, priced),
        "empty": money(sheet.empty_baskets, not sheet.open_empty, "price not known"),
        "given": money(sum(sheet.presents.values(), Fraction(0)), priced),
        "shop": money(sheet.shop),
        "shop_known": sheet.shop_known,
        "presents": len(pack.making.presents),
        # what was kept cannot be told while something has no price
        "saved": money(sheet.shop - sheet.paid) if sheet.whole else "",
        "households": [
            {"name": name, "cost": pack.cost(cost, name not in open_households, NOTHING_TO_PAY)}
            for name, cost in sheet.households.items()
        ],
        "unpriced": sheet.unpriced,
        "of_kin": sheet.of_kin,
    }
