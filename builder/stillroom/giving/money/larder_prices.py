"""Prices that stand in the book's own larder, brought to the giving list that asks for them.

The book is public and never reads them; a price in the giving list itself goes before one here.
"""

from __future__ import annotations

from collections.abc import Iterable

from stillroom.core.amounts.packs import parse_pack
from stillroom.giving.model import Price
from stillroom.giving.reading import ReadList


def with_larder_prices(
    read: ReadList, prices: Iterable[tuple[str, str, int]], language: str = "en_GB"
) -> ReadList:
    """Return the giving list with the prices of larder.yml behind its own.

    `prices` are the name of a food, its pack as written and its line; they were read when the
    larder was, in the `language` of the book, so that a wrong one has been told already.
    """
    own = {price.item.lower() for price in read.giving.prices}
    packs: dict[str, list[str]] = {}
    for name, text, _ in prices:
        if name.lower() not in own:
            packs.setdefault(name, []).append(text)
    added = tuple(
        Price.model_construct(
            item=name,
            packs=tuple(
                parse_pack(text, read.giving.currency, read.units, language) for text in texts
            ),
            section="",
        )
        for name, texts in packs.items()
    )
    giving = read.giving.model_copy(update={"prices": (*read.giving.prices, *added)})
    return read.model_copy(update={"giving": giving})
