"""Whole packs at the least price: hand-worked, by trying all, and published instances."""

from __future__ import annotations

import random
import time
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from giving.brute_force import cheapest_by_counting
from stillroom.core.amounts.packs import parse_pack
from stillroom.core.words.problems import Unreadable
from stillroom.giving.mip import Mip
from stillroom.giving.money.buying import PackOffer, buy_cheapest


def offers(*rows):
    return [PackOffer(Fraction(size), Fraction(price), *least) for size, price, *least in rows]


BOTTLES = offers((1, "0.95"), (12, "7.20"), (1, "0.48", 50))
# need, packs, price, what each buys. Worked by hand; bottles "in bulk at some tens of pence" is
# common practice, no published source.
BY_HAND = [
    (7, BOTTLES, "6.65", (7, 0, 0)),  # 7 x 0.95 = 6.65 < 7.20
    (8, BOTTLES, "7.20", (0, 1, 0)),  # 8 x 0.95 = 7.60 > 7.20
    (14, BOTTLES, "9.10", (2, 1, 0)),  # 7.20 + 2 x 0.95
    (36, BOTTLES, "21.60", (0, 3, 0)),  # 3 x 7.20 < 50 x 0.48 = 24.00
    (40, BOTTLES, "24.00", (0, 0, 50)),  # 3 x 7.20 + 4 x 0.95 = 25.40 > 24.00
    (53, BOTTLES, "25.44", (0, 0, 53)),
    (1000, offers((700, "14.50"), (1000, "18.00")), "18.00", (0, 1)),
    (1400, offers((700, "14.50"), (1000, "18.00")), "29.00", (2, 0)),
    (0, BOTTLES, "0", (0, 0, 0)),
]


@pytest.mark.parametrize(("need", "packs", "price", "counts"), BY_HAND)
def test_by_hand(need, packs, price, counts):
    bought = buy_cheapest(Fraction(need), packs)
    assert (bought.price, bought.counts) == (Fraction(price), counts)


pack = st.builds(
    PackOffer,
    st.fractions(1, 9, max_denominator=3),
    st.integers(10, 900).map(lambda pence: Fraction(pence, 100)),
    st.sampled_from([1, 1, 1, 2, 4]),
)


@settings(max_examples=150, deadline=None)
@given(st.fractions(0, 14, max_denominator=4), st.lists(pack, min_size=1, max_size=3))
def test_no_other_counts_are_cheaper(need, packs):
    bought = buy_cheapest(need, packs)
    assert bought.bought >= need
    assert bought.price == cheapest_by_counting(need, packs)
    assert bought.price == sum(n * p.price for n, p in zip(bought.counts, packs, strict=True))
    assert all(n == 0 or n >= p.at_least for n, p in zip(bought.counts, packs, strict=True))


POUND, OUNCE = Fraction(45359237, 100000), Fraction(45359237, 1600000)
KITCHEN_SIZES = [*map(Fraction, (100, 125, 250, 340, 500, 1000)), POUND, 4 * OUNCE, 8 * OUNCE]


@pytest.mark.parametrize("seed", range(40))
def test_grams_and_pounds_side_by_side_agree_with_trying_all(seed):
    """Ten needs each: "250 g" and "1 lb" are whole only in hundredths of a milligram."""
    dice = random.Random(seed)
    for _ in range(10):
        packs = [
            PackOffer(
                dice.choice(KITCHEN_SIZES),
                Fraction(dice.randint(30, 900), 100),
                dice.choice([1, 1, 1, 1, 3]),
            )
            for _ in range(dice.randint(1, 3))
        ]
        need = Fraction(dice.randint(1, 2000))
        bought = buy_cheapest(need, packs)
        assert bought.bought >= need
        assert bought.price == cheapest_by_counting(need, packs)
        assert all(n == 0 or n >= p.at_least for n, p in zip(bought.counts, packs, strict=True))


def test_a_hundred_kilograms_in_packs_of_four_units_are_bought_at_once():
    packs = offers((250, "2.19"), (POUND, "3.79"), (1000, "7.99"), (OUNCE, "0.37"), (340, "2.83"))
    begun = time.process_time()
    found = buy_cheapest(Fraction(100_000), packs)
    assert time.process_time() - begun < 2
    assert found.bought >= 100_000


def test_of_equal_prices_the_one_that_leaves_least():
    packs = offers((500, "2.00"), (300, "1.00"), (550, "2.00"))
    assert buy_cheapest(Fraction(520), packs).counts == (0, 0, 1)
    assert buy_cheapest(Fraction(580), packs).counts == (0, 2, 0)


@pytest.mark.parametrize("seed", range(12))
def test_large_needs_agree_with_the_solver(seed):
    dice = random.Random(seed)
    packs = offers(*((dice.randint(3, 40), Fraction(dice.randint(50, 900), 100)) for _ in range(4)))
    need = dice.randint(500, 5000)
    mip = Mip()
    counts = [mip.variable(p.price, whole=True) for p in packs]
    mip.row([(n, p.size) for n, p in zip(counts, packs, strict=True)], low=need)
    assert float(buy_cheapest(Fraction(need), packs).price) == pytest.approx(
        mip.solve(30, 0).objective, abs=1e-6
    )


# Instances that the package mknapsack 1.1.12 carries in its tests (after Martello and Toth,
# Knapsack Problems, 1990), with the optimum it states.
WEIGHTS = [18, 9, 23, 20, 59, 61, 70, 75, 76, 30]
PROFITS = [72, 35, 89, 36, 94, 75, 74, 100, 80, 16]
UNBOUNDED = [(190, 755), (380, 1512), (95_000, 379_996)]  # capacity, best total profit
CHANGE = [(190, 3), (380, 5), (95_000, 1250)]  # sum to make, fewest pieces


@pytest.mark.parametrize(("capacity", "best"), UNBOUNDED)
def test_published_unbounded_knapsack(capacity, best):
    mip = Mip()
    counts = [mip.variable(-profit, whole=True) for profit in PROFITS]
    mip.row(zip(counts, WEIGHTS, strict=True), high=capacity)
    assert mip.solve(30, 0).objective == pytest.approx(-best)


@pytest.mark.parametrize(("total", "fewest"), CHANGE)
def test_published_change_making(total, fewest):
    # at one price a piece, covering a sum never takes more pieces than making it exactly, and
    # the weight 76 shows that it cannot take fewer: ceil(total / 76)
    packs = offers(*((weight, 1) for weight in WEIGHTS))
    assert buy_cheapest(Fraction(total), packs).price == fewest == -(-total // 76)


# one pack in the ways of price tags, receipts and till rolls; common practice, no published source
WAYS = [
    ("1 kg for 1.15", 1, "kg", "1.15"), ("1 kg: 1.15", 1, "kg", "1.15"),
    ("1 kg £1.15", 1, "kg", "1.15"), ("1 kg @ £1.15", 1, "kg", "1.15"),
    ("700 ml at 14.50", 700, "ml", "14.50"), ("£2.50/kg", 1, "kg", "2.50"),
    ("2.50 per kg", 1, "kg", "2.50"), ("2.50 a kilo", 1, "kg", "2.50"),
    ("1.15 for 500 g", 500, "g", "1.15"), ("85p for 500 g", 500, "g", "0.85"),
    ("500 g for 85p", 500, "g", "0.85"), ("2 x 500 g for 1.80", 1000, "g", "1.80"),
    ("500 g bag for 2", 500, "g", "2"), ("half a kilo for 2", Fraction(1, 2), "kg", "2"),
    ("£4.20 a dozen", 12, "", "4.20"), ("a dozen for 3.20", 12, "", "3.20"),
    ("12 eggs for 3.20", 12, "", "3.20"), ("0.48 each", 1, "", "0.48"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "size", "unit", "price"), WAYS, ids=lambda value: str(value))
def test_a_pack_is_read_as_price_tags_write_it(text, size, unit, price):
    amount, paid, at_least = parse_pack(text)
    by_weight = text in ("£2.50/kg", "2.50 per kg", "2.50 a kilo")  # and so from no pack on
    assert (amount.low, amount.unit, paid) == (size, unit, Fraction(price))
    assert at_least == (0 if by_weight else 1)


# neither is what it seems: three and a half pieces, another money, pence with a point
@pytest.mark.parametrize(
    "text", ["3.50 for 6", "1 kg for $2", "1 kg for 2 EUR", "500 g for 1.15p", "2.50 kg", "0.85"]
)
def test_what_is_doubtful_of_a_pack_is_asked(text):
    with pytest.raises(Unreadable):
        parse_pack(text)


@pytest.mark.parametrize("text", ["for 3", "12 or more for 3", "3-4 for 2.00", "700 ml for 14.505"])
def test_not_a_pack(text):
    with pytest.raises(Unreadable, match=r"Write"):
        parse_pack(text)


# sizes and needs far beyond a kitchen's: what is bought still covers, at once
FAR = {
    "a pack of a million litres": (900, [(10**9, 14), (1, 1)]),
    "a million litres needed": (10**9, [(1, 1), (1000, 900)]),
    "two odd sizes": (10**12, [(999_983, 5), (10**6, 5)]),
    "next to nothing": (Fraction(1, 7), [(Fraction(1, 999_983), 1), (Fraction(1, 10**6), 1)]),
}


@pytest.mark.parametrize("case", FAR)
def test_odd_sizes_are_bought_at_once(case: str) -> None:
    need, packs = FAR[case]
    begun = time.process_time()
    found = buy_cheapest(Fraction(need), offers(*packs))
    assert time.process_time() - begun < 1
    assert found.bought >= need
    assert sum(found.counts) > 0


def test_many_price_breaks_are_weighed_at_once() -> None:
    breaks = offers(*((1, Fraction(100 - n, 100), n) for n in range(2, 22)))
    begun = time.process_time()
    assert buy_cheapest(Fraction(21), breaks).price == Fraction(21 * 79, 100)
    assert time.process_time() - begun < 1


@pytest.mark.parametrize(
    "text",
    [
        "1000000 l for 3",
        f"{'9' * 40} ml for 14.50",
        f"{'9' * 3000} for 1",
        "9999999 or more for 1 each",
    ],
)
def test_a_pack_that_no_shop_sells_is_told(text: str) -> None:
    with pytest.raises(Unreadable):
        parse_pack(text)


def test_a_plan_that_is_not_found_is_told_in_words() -> None:
    nothing = Mip()
    nothing.row([(nothing.yes_or_no(), 1)], low=2, high=3)
    with pytest.raises(Unreadable, match="No plan keeps to every limit"):
        nothing.solve(1, 0)
