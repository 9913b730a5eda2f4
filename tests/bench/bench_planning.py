"""How long planning takes for 12, 60 and 500 households: figures, no assertions on time.

Run: python tests/bench/bench_planning.py [seconds allowed for each]
"""

from __future__ import annotations

import random
import sys
from datetime import date
from fractions import Fraction

from stillroom.giving.money.buying import PackOffer
from stillroom.giving.plan_model import (
    Basket,
    Brew,
    Offer,
    PlanProblem,
    Purchase,
    Reason,
    StartChoice,
)
from stillroom.giving.planning import plan_gifts

REFUSED = (Reason("contains an allergen", "contain an allergen"),)


def large_problem(households: int, seed: int = 1) -> PlanProblem:
    """Return a list of so many households over 20 recipes, one in six refusals, half with likes."""
    dice = random.Random(seed)
    offers, brews = [], []
    for n in range(20):
        recipe = f"recipe-{n}"
        sort = ("eat", "eat", "drink", "craft")[n % 4]
        per_batch = dice.randint(6, 12)
        offers.append(
            Offer(
                recipe,
                recipe,
                recipe,
                sort,
                "jar",
                Fraction(1, per_batch),
                Fraction(dice.randint(80, 450), 100),
                needs={("bottle" if sort == "drink" else "jar"): Fraction(1)},
            )
        )
        choices = tuple(
            StartChoice(
                date(2027, month, 1),
                True,
                {(2027, month): Fraction(dice.randint(2, 6), 4), (2027, 11): Fraction(1, 2)},
            )
            for month in sorted(dice.sample(range(1, 12), 3))
        )
        needs = {dice.choice(["sugar", "vodka", "flour"]): Fraction(dice.randint(3, 10) * 100)}
        brews.append(Brew(recipe, recipe, max(3, households // 10), choices, needs))
    baskets = tuple(
        Basket(n, f"household {n}", *dice.choice(_KINDS)) for n in range(1, households + 1)
    )
    pairs = [(b.number, o.recipe) for b in baskets for o in offers]
    return PlanProblem(
        baskets,
        tuple(offers),
        tuple(brews),
        purchases=_PURCHASES,
        refused={pair: REFUSED for pair in pairs if dice.random() < 1 / 6},
        years_since_had={pair: dice.randint(1, 2) for pair in pairs if dice.random() < 1 / 8},
        liked=frozenset(pair for pair in pairs if dice.random() < 1 / 10),
    )


_KINDS = [("small", {"eat": 2, "drink": 1}), ("large", {"eat": 3, "drink": 1, "craft": 1})]


def _packs(*rows: tuple[int, str, int]) -> tuple[PackOffer, ...]:
    return tuple(PackOffer(Fraction(size), Fraction(price), least) for size, price, least in rows)


_PURCHASES = (
    Purchase("sugar", _packs((500, "0.95", 1), (1000, "1.60", 1), (5000, "6.90", 1))),
    Purchase("vodka", _packs((700, "14.50", 1), (1000, "18.00", 1))),
    Purchase("flour", _packs((1500, "1.10", 1))),
    Purchase("bottle", _packs((1, "0.95", 1), (12, "7.20", 1), (1, "0.48", 50))),
    Purchase("jar", _packs((1, "0.80", 1), (24, "11.50", 1), (1, "0.36", 100))),
)


def main() -> None:
    """Print a line for each size."""
    allowed = float(sys.argv[1]) if len(sys.argv) > 1 else 60
    for households in (12, 60, 500):
        plan = plan_gifts(large_problem(households), allowed)
        print(
            f"{households:4} households: {plan.seconds:6.1f} s, {float(plan.points):8.2f} points, "
            f"gap {float(plan.gap):.2%}, {plan.proof}, empty places {sum(plan.empty.values())}"
        )


if __name__ == "__main__":
    main()
