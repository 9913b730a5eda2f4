"""What is worked out, packed without what every process knows: foods and kinds go by their names.

A recipe of six foods would bring six foods along, each as large as its lines; and once read again,
a thousand recipes would hold as many copies of sugar. Small things of which a recipe holds dozens
go by their parts alone, without Python's asking each how it is made up.
"""

from __future__ import annotations

import copyreg
import io
import pickle
from collections.abc import Callable
from dataclasses import fields
from fractions import Fraction
from functools import lru_cache
from operator import attrgetter
from typing import Any, Final

from stillroom.core.larder.shelves import Larder, staple_named
from stillroom.core.larder.staple import Staple
from stillroom.core.recipe.kinds import Kind, find_kind
from stillroom.core.when.spans import Span
from stillroom.core.when.stage_dates import DatedStage
from stillroom.core.when.stages import Stage
from stillroom.core.when.timeline import Timeline
from stillroom.core.when.verdicts import Verdict


def pack_known(value: object) -> bytes:
    """Return a value as `pickle.loads` reads it again in this program."""
    packed = io.BytesIO()
    packer = pickle.Pickler(packed, protocol=5)
    packer.dispatch_table = _KNOWN
    packer.dump(value)
    return packed.getvalue()


@lru_cache(maxsize=4)
def _one_larder(own: tuple[Staple, ...], language: str) -> Larder:
    return Larder(own, language)


def _pack_larder(larder: Larder) -> tuple[Any, ...]:
    return _one_larder, (larder.own, larder.language)


def _pack_food(food: Staple) -> Any:
    """Return a food by its name; one of a book's own, or an egg of one size, as it is."""
    try:
        is_known = staple_named(food.name) is food
    except KeyError:
        is_known = False
    return (staple_named, (food.name,)) if is_known else food.__reduce_ex__(5)


def _pack_kind(kind: Kind) -> Any:
    return (find_kind, (kind.name,)) if find_kind(kind.name) is kind else kind.__reduce_ex__(5)


def _pack_fraction(number: Fraction) -> tuple[Any, ...]:
    return Fraction, (number.numerator, number.denominator)


def _by_parts(kind: Any) -> Callable[[Any], tuple[Any, ...]]:
    """Return what packs things of a kind by the arguments they were made with."""
    parts = attrgetter(*(field.name for field in fields(kind)))
    return lambda thing: (kind, parts(thing))


_KNOWN: Final[dict[type, Callable[[Any], Any]]] = {
    **copyreg.dispatch_table,
    Fraction: _pack_fraction,
    **{kind: _by_parts(kind) for kind in (DatedStage, Span, Stage, Timeline, Verdict)},
    Larder: _pack_larder,
    Staple: _pack_food,
    Kind: _pack_kind,
}
