"""Every design on paper, measured in the PDF from outside."""

from __future__ import annotations

from itertools import pairwise

import pytest

from stillroom.looks.card_designs import choose_design, designs_of
from stillroom.printing.cards import CardJob, SheetOptions, print_cards

from .test_cards_pdf import edges

DESIGNS = tuple(designs_of())
SIZES = {"90x65": (90, 65), "folded-a6": (210, 148)}


@pytest.mark.parametrize("name", DESIGNS)
@pytest.mark.parametrize("size", SIZES)
def test_every_card_of_every_design_is_cut_at_its_true_size(
    jobs: list[CardJob], name: str, size: str
) -> None:
    design = choose_design(name)
    few = [job for job in jobs if job.recipe.slug == "rosemary-salt"]
    if design.large and size == "90x65":
        pytest.skip("large type takes a larger card")
    xs, ys = edges(print_cards(few, size, SheetOptions(design=design)))
    wide, high = SIZES[size]
    assert [after - before for before, after in pairwise(xs)] == pytest.approx(
        [wide] * (len(xs) - 1), abs=0.2
    )
    assert [after - before for before, after in pairwise(ys)] == pytest.approx(
        [high] * (len(ys) - 1), abs=0.2
    )
