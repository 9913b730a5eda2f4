"""What is over of a year, put into the file of the next: stock, presents, batches on their way.

A line whose amount did not change stays as it is written. An amount that did is rounded down, so
that closing a year never makes anything out of nothing.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from ruamel.yaml.comments import CommentedMap

from stillroom.core.amounts.quantities import show_decimal
from stillroom.giving.larder_stock import LarderStock, food_key
from stillroom.giving.list_words import said_key
from stillroom.giving.model import GivingList, LoggedBatch, container_words


def carry_stock(data: Any, before: GivingList, after: GivingList) -> None:
    """Put what is in the house into a list's file, and what is on the shelf."""
    key = said_key("list", data, "stock")
    if isinstance(data.get(key), list):
        data[key] = CommentedMap({"ingredients": data[key]})
    stock = data.get(key) if isinstance(data.get(key), dict) else CommentedMap()
    _containers(stock, after)
    _ingredients(stock, before, after)
    _made(stock, after)
    if stock:
        data[key] = stock


def _containers(stock: Any, after: GivingList) -> None:
    written = stock.get("containers")
    left = dict(after.stock.containers)
    for words in list(written or {}):
        count = left.pop(container_words(str(words)), 0)
        if not count:
            del written[words]
        elif written[words] != count:
            written[words] = count
    for words, count in left.items():
        if count:
            stock.setdefault("containers", CommentedMap())[words] = count


def _ingredients(stock: Any, before: GivingList, after: GivingList) -> None:
    old = LarderStock.of_list(before).foods
    new = {key: (held.amount, held.unit) for key, held in LarderStock.of_list(after).foods.items()}
    written = stock.get("ingredients") or []
    if not isinstance(written, list):
        written = stock["ingredients"] = [written]
    gone: list[int] = []
    done: set[str] = set()
    for place, (amount, item) in enumerate(before.stock.ingredients):
        key = food_key(item, amount.unit, old)
        if key not in new or (key in done and new[key][0] != old[key].amount):
            gone.append(place)
        elif new[key][0] != old[key].amount:
            line = _line(new[key], item)
            gone += [] if line else [place]
            written[place] = line or written[place]
        done.add(key)
    for place in reversed(gone):
        del written[place]
    for amount, item in after.stock.ingredients:
        key = food_key(item, amount.unit, new)
        if key not in done and (line := _line((amount.low, amount.unit), item)):
            written.append(line)
        done.add(key)
    if written:
        stock["ingredients"] = written
    else:
        stock.pop("ingredients", None)


def _line(held: tuple[Fraction, str], item: str) -> str:
    """Return so much of a food as it is written, rounded down: "3.11 kg quinces"; "" for none."""
    whole, unit = held[0].__floor__(), held[1]
    if whole >= 1000 and unit in ("g", "ml"):
        large = "kg" if unit == "g" else "l"
        return f"{show_decimal(Fraction(whole // 10, 100))} {large} {item}"
    return f"{whole} {unit} {item}".replace("  ", " ") if whole else ""


def _made(stock: Any, after: GivingList) -> None:
    """Put what was filled and is over beside what was on the shelf before."""
    rows = [
        (made.recipe, made.number, made.container, made.made_on) for made in after.stock.made
    ] + [
        (batch.recipe, batch.number - batch.given, batch.container, batch.made_on)
        for batch in after.batches
        if batch.made_on and batch.number is not None
        and (batch.recipe, batch.made_on) not in _counted(after)
    ]  # fmt: skip
    made = [_made_row(*row) for row in rows if row[1] > 0]
    if made:
        stock["made"] = made
    else:
        stock.pop("made", None)


def _counted(after: GivingList) -> set[tuple[str, Any]]:
    return {(made.recipe, made.made_on) for made in after.stock.made}


def _made_row(recipe: str, number: int, container: str, made_on: Any) -> CommentedMap:
    row = CommentedMap({"recipe": recipe, "number": number})
    if container:
        row["container"] = container
    row["made on"] = made_on
    row.fa.set_flow_style()
    return row


def carry_batches(data: Any, after: GivingList) -> None:
    """Leave in a list's file only the batches on their way, and those nobody counted."""
    key = said_key("list", data, "batches")
    waiting = [batch for batch in after.batches if batch.made_on is None or batch.number is None]
    if waiting:
        data[key] = [_batch_row(batch) for batch in waiting]
    elif key in data:
        data[key] = []


def _batch_row(batch: LoggedBatch) -> CommentedMap:
    row = CommentedMap({"recipe": batch.recipe, "started": batch.started})
    if batch.batches > 1:
        row["batches"] = batch.batches
    if batch.tended:
        row["tended"] = list(batch.tended)
    if batch.made_on:
        row["made on"] = batch.made_on
    if batch.container:
        row["container"] = batch.container
    if batch.given:
        row["given"] = batch.given
    if batch.notes:
        row["notes"] = batch.notes
    return row
