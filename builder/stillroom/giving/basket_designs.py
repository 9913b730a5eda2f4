"""Which design the papers of each basket have: cards, tags, labels and its sheet alike.

The household's own, else that of its sort of basket, else the list's, else the book's. Leaves out
how they are set (designed_papers.py).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from stillroom.core.book import Book
from stillroom.core.words.problems import Problem, Unreadable
from stillroom.giving.model import GivingList
from stillroom.giving.reading import ReadList
from stillroom.giving.worked_out import Pack
from stillroom.looks.card_designs import USUAL, Design, choose_design


def basket_designs(pack: Pack, book: Book | None) -> Mapping[int, Design]:
    """Return the design of each basket that is still to be filled, by its number.

    Without a book only Stillroom's own designs are known, and the plain one stands for others.
    """
    giving, usual = pack.offering.giving, pack.settings.design
    found = {}
    for basket in pack.offering.problem.baskets:
        household = pack.offering.households[basket.number]
        own = household.design or giving.baskets[basket.kind].design
        name = own or giving.design or usual
        found[basket.number] = _chosen(name, book)
    return found


def _chosen(name: str, book: Book | None) -> Design:
    if book is not None:
        return choose_design(name, book)
    try:
        return choose_design(name)
    except Unreadable:
        return choose_design(USUAL)


def design_problems(read: ReadList, book: Book) -> Iterator[Problem]:
    """Yield every design that the list names and that is none of the book's, at its line."""
    for name, path in _designs_named(read.giving):
        try:
            choose_design(name, book)
        except Unreadable as wrong:
            yield read.problem(path, wrong.what, wrong.mend)


def _designs_named(giving: GivingList) -> Iterator[tuple[str, tuple[str | int, ...]]]:
    if giving.design:
        yield giving.design, ("design",)
    for kind, basket in giving.baskets.items():
        if basket.design:
            yield basket.design, ("baskets", kind, "design")
    for n, household in enumerate(giving.households):
        if household.design:
            yield household.design, ("households", n, "design")
