"""Fresh plants left to stand in oil out of the fridge are refused, whatever is said of keeping.

NCHFP, Freezing Garlic-in-Oil (40 °F or lower, no more than 4 days); Penn State, Preserving
foods in oil ("Do not store at room temperature").
Written before the rule: the family, and what is dried, strained out, drained or cold.
"""

from __future__ import annotations

import pytest

from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.reading.loading import read_recipe

GARLIC = ("500 ml olive oil", "1 head garlic")
BASIL = ("400 ml olive oil", "50 g fresh basil")
CHILLI = ("500 ml sunflower oil", "6 fresh red chillies")
ROSEMARY = ("500 ml olive oil", "4 sprigs rosemary")
COLD = "Keeps 4 days in the fridge."

WARM = [
    (GARLIC, f"Leave on the windowsill for 3 weeks. {COLD}"),
    (GARLIC, f"Bottle it. Leave at room temperature for 10 days, shaking daily. {COLD}"),
    (GARLIC, f"Bash the cloves and cover with the oil. Let it sit out overnight. {COLD}"),
    (GARLIC, f"Keep at room temperature for 10 days. {COLD}"),
    (GARLIC, f"Leave in a dark cupboard for a fortnight, then strain. {COLD}"),
    (GARLIC, f"Put {{garlic}} into a bottle with {{olive oil}}. Leave for 3 weeks. {COLD}"),
    (GARLIC, f"Put both into a bottle and leave for 3 weeks. Drizzle the oil over pizza. {COLD}"),
    (BASIL, f"Stand in a sunny window for 2 weeks, then strain. {COLD}"),
    (BASIL, f"Steep on the counter for 5 days and strain. {COLD}"),
    (CHILLI, f"Stand in a sunny window until it is hot enough. {COLD}"),
    (CHILLI, f"Slit the chillies and cover with oil. Leave for a few weeks. {COLD}"),
    (ROSEMARY, f"Leave to infuse for 2 weeks. {COLD}"),
    (ROSEMARY, f"Steep for 1 week in the larder, then move it to the fridge. {COLD}"),
    (GARLIC, "Leave it out for three weeks, shaking. Keep in the freezer for up to 6 months."),
    (GARLIC, f"Knoblauch ins Öl legen. 2 Wochen auf der Fensterbank ziehen lassen. {COLD}"),
    (GARLIC, f"Laisser macérer 15 jours à température ambiante. {COLD}"),
]
NOT_WARM = [
    (GARLIC, f"Cover with the oil and put into the fridge at once. {COLD}"),
    (GARLIC, "Steep in the fridge for 2 days, then strain. Keeps 2 days in the fridge."),
    (GARLIC, f"Put it into the fridge. Leave for 2 days. {COLD}"),
    (GARLIC, f"Warm the oil and the garlic for 20 minutes, cool for 2 hours, strain. {COLD}"),
    (GARLIC, f"Warm gently for 20 minutes, strain the garlic out. Leave for a week. {COLD}"),
    (GARLIC, f"Cover with the oil. Never leave it at room temperature overnight. {COLD}"),
    (GARLIC, f"Keep cold; leave it at room temperature for 20 minutes before you use it. {COLD}"),
    (BASIL, f"Dry the leaves on a sunny windowsill for a week. Cover with the oil. {COLD}"),
    (("500 ml olive oil", "2 aubergines"),
     f"Salt the aubergines and leave overnight. Drain, grill, cover with the oil. {COLD}"),
    (("500 ml olive oil", "2 aubergines"),
     f"Salt the {{aubergines}} and leave overnight. Drain, cover with {{olive oil}}. {COLD}"),
    (("500 ml olive oil", "4 tbsp dried rosemary"), f"Leave on the windowsill for 3 weeks. {COLD}"),
    (("500 ml sunflower oil", "2 tbsp dried chilli flakes"), f"Leave for 2 weeks. {COLD}"),
    (("100 g garlic, chopped", "300 ml water", "9 g citric acid", "500 ml olive oil"),
     "Dissolve the acid in the water and soak the garlic in it for 24 hours. Drain and cover with "
     "the oil. Leave for 2 weeks. Keeps 4 days in the fridge."),
    (("500 ml vodka", "1 head garlic"), f"Leave on the windowsill for 3 weeks. {COLD}"),
]  # fmt: skip


def _refused(lines: tuple[str, ...], method: str, more: str = "") -> bool:
    listed = "".join(f"  - {line}\n" for line in lines)
    head = f"---\ntitle: A bottle\nkind: infusion\nmakes: 500 ml\n{more}ingredients:\n{listed}---\n"
    recipe = read_recipe(f"{head}\n## Method\n\n1. {method}\n", "recipes/a.md", "a")
    box = assess_safety(recipe, BookSettings())
    return bool({one.rule for one in box.refusals} & {"oil-left-warm", "low-acid-in-oil"})


@pytest.mark.parametrize(("lines", "method"), WARM)
def test_what_stands_in_oil_out_of_the_fridge_is_refused(
    lines: tuple[str, ...], method: str
) -> None:
    assert _refused(lines, method)


@pytest.mark.parametrize(("lines", "method"), NOT_WARM)
def test_what_is_dried_strained_or_cold_is_not(lines: tuple[str, ...], method: str) -> None:
    assert not _refused(lines, method)


@pytest.mark.parametrize(
    ("stage", "refused"),
    [
        ("rest: 3 days", True),
        ("steep: 2 days in the dark", True),
        ("shake: every day for 3 days", True),
        ("steep: 3 days in the fridge", False),
        ("chill: 2 days", False),
        ("prepare: 30 minutes", False),
    ],
)
def test_a_timeline_says_so_as_well(stage: str, refused: bool) -> None:
    more = f"keeps: 4 days in the fridge\ntimeline:\n  - {stage}\n"
    assert _refused(GARLIC, "Cover the garlic with the oil.", more) is refused
