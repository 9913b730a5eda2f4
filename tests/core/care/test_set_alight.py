"""However spirit is set alight, it is heard; light cream and a candle at the table are not.

"Set light to the brandy" told of nothing before 1 December 2026. The cautions are those of the
rules (fire services and cookery schools on flambéing); the ways to say it, common English.
"""

from __future__ import annotations

import pytest

from care_cases import rules_of_text


def rules_of(step: str) -> frozenset[str]:
    return rules_of_text(
        "---\ntitle: A pudding\nkind: bake\nmakes: 1 kg\ningredients:\n  - 200 g raisins\n"
        "  - 100 g plain flour\n  - 100 ml brandy\n---\n\n## Method\n\n"
        f"1. Bake the pudding for 2 hours.\n2. {step}\n"
    )


@pytest.mark.parametrize(
    "step",
    [
        "Pour the brandy over and set light to it.",
        "Warm the brandy, pour over and set light to it.",
        "Pour over the brandy and set it on fire.",
        "Pour over the brandy and set the pudding ablaze.",
        "Pour over the brandy and put a lighted match to it.",
        "Pour over the brandy and touch a match to the edge.",
        "Pour the brandy over, hold a long match to it and carry it in.",
        "Pour the brandy over, igniting it at the table.",
        "Set fire to the brandy and pour it over.",
    ],
)
def test_spirit_that_is_set_alight_is_heard(step: str) -> None:
    assert {"flaming", "spirit-heated"} <= rules_of(step)


@pytest.mark.parametrize(
    "step",
    [
        "Set light cream beside it, and feed it with the brandy.",
        "Light a candle, and feed it with the brandy.",
        "Stir in the brandy with a light hand and set to one side.",
        "Feed it with brandy and cut matchsticks of peel to put over it.",
    ],
)
def test_what_only_sounds_so_is_not(step: str) -> None:
    assert "flaming" not in rules_of(step)
