"""What strangers' methods say of time, how often and how long: nothing more, nothing less.

The sentences of waits_of_strangers.tsv are of pages on damson gin, vanilla extract, raspberry
vinegar, soap, mead, mincemeat, Kräuterlikör, vin d'orange, nocino, pacharán and flädersaft, and of
E. Leslie, Directions for Cookery (Project Gutenberg 9624), The Closet of Sir Kenelm Digby (16441)
and C. Francatelli, A Plain Cookery Book (22114), cut down to the fact; the last of each sort are
ours. Of 120 that were fixed before the reader saw them 74 were read rightly; of 41 more (sloe gin,
limoncello, liqueur de cassis, jullikör) 30 at first.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from stillroom.core.recipe.method_times import times_in_method
from stillroom.core.recipe.model import MethodStep

with (Path(__file__).parent / "waits_of_strangers.tsv").open(encoding="utf-8", newline="") as file:
    ROWS = list(csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE))


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["text"][:60])
def test_waits_are_read_with_their_rhythm(row: dict[str, str]) -> None:
    said = times_in_method((MethodStep(row["text"], "", 7),))
    assert ("; ".join(one.as_written for one in said) or "-") == row["waits"]
