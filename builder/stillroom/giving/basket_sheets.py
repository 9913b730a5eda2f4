"""One sheet a basket: for whom, what is in it, what its cards say, what to say when it is given.

And the checklist for the day of filling. Leaves out looks (templates/).
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from stillroom.core.allergens.avoided import Avoided
from stillroom.core.allergens.sentences import avoided_by_name
from stillroom.core.care.pets import harmful_to_pets
from stillroom.core.label.labelling import UsageCard
from stillroom.core.words.day_words import say_day_and_month, say_day_short
from stillroom.core.words.joining import join_and
from stillroom.core.words.plurals import counted, plural
from stillroom.giving.asked_back import leaves_out
from stillroom.giving.batches import Present
from stillroom.giving.kept_cold import is_frozen, is_kept_cold
from stillroom.giving.model import Household
from stillroom.giving.plan_model import Basket
from stillroom.giving.rules import limits_of
from stillroom.giving.worked_out import Pack, card_of

FROM_SHELF = "from the shelf, paid for before"
IN_THE_HOUSE = "all of it in the house"
NOTHING_TO_PAY = "nothing to pay"
"""What stands where a price would: of what was had before nobody says here what it once cost."""
_SORTS = {"eat": "thing to eat", "drink": "drink", "craft": "thing made by hand"}
_BASKETS = frozenset({"basket", "baskets", "hamper", "box", "parcel", "tin", "bag", "korb"})
"""A kind of basket that has one of these words in its name says what it is."""
_SOON_DAYS = 60
"""What keeps no longer than this after giving day is said to be eaten first."""


def basket_data(pack: Pack, basket: Basket) -> dict[str, Any]:
    """Return all that a basket's sheet, its slip and its cost say."""
    household = pack.offering.households[basket.number]
    own = pack.making.of_basket(basket.number)
    presents = [_present(pack, present) for present in own]
    empty = [
        _counted(count, _SORTS[sort])
        for (number, sort), count in pack.plan.empty.items()
        if number == basket.number
    ]
    return {
        "number": basket.number,
        "household": household.name,
        "to": household.to or household.name,
        "kind": kind_words(basket.kind),
        "delivery": household.delivery,
        "message": household.message or pack.offering.giving.message,
        "avoid": [
            *map(named_need, _words_avoided(household)),
            *limits_of(household),
        ],
        "presents": presents,
        "aloud": say_aloud(pack, own, household.pets),
        "kitchen": " ".join(_of_the_kitchen(pack, own)),
        "empty": " and ".join(empty),
        "postage": _postage(pack, basket.number),
        "cost": pack.cost(
            pack.costs.baskets[basket.number],
            basket.number not in pack.costs.open_baskets | pack.costs.open_empty,
            NOTHING_TO_PAY,
        ),
    }


def _words_avoided(household: Household) -> tuple[str, ...]:
    """Return what a household avoids, without what is only said beside it ("raw or cooked")."""
    words = (word for word in household.avoid if leaves_out(word))
    return (*words, *household.avoid_ingredients)


def named_need(word: str) -> str:
    """Return what a need leaves out, each by its name: no "must not get: no pork or alcohol"."""
    found = avoided_by_name(word)
    if found.meant or not found.of or found.said != found.word:
        return found.said
    return join_and(list(dict.fromkeys(_names_in(found))))


def _names_in(found: Avoided) -> Iterator[str]:
    if name := found.told or found.meant:
        yield name
    elif not found.of:
        yield found.said
    for one in () if name else found.of:
        yield from _names_in(one)


def kind_words(kind: str) -> str:
    """Return a kind of basket as it is said: "small basket", and never the word twice.

    >>> kind_words("small"), kind_words("Wicker Basket"), kind_words("hamper 2")
    ('small basket', 'Wicker Basket', 'hamper 2')
    """
    said = set(re.split(r"\W+", kind.casefold()))
    return kind if said & _BASKETS else f"{kind} basket"


def _postage(pack: Pack, number: int) -> str:
    """Return what a basket costs to post; nothing for one that is given by hand."""
    postage = pack.costs.postage
    if number not in postage.of_baskets:
        return ""
    return pack.money(postage.of_baskets[number], number not in postage.open)


def _counted(count: int, noun: str) -> str:
    """Return "1 drink" or "2 things to eat"."""
    if count == 1:
        return f"1 {noun}"
    first, _, rest = noun.partition(" ")
    return f"{count} {plural(first)} {rest}".strip()


def _present(pack: Pack, present: Present) -> dict[str, Any]:
    card = card_of(pack, present)
    offer = pack.offering.offer(present.key)
    return {
        "title": present.recipe.title,
        "container": offer.container,
        "made_on": say_day_short(present.made_on),
        "from": present.batch,
        "date_mark": card.date_mark.text,
        "what": card.what,
        "use": card.use,
        "keep": " ".join(f"{part.rstrip('.')}." for part in (card.keep, card.once_opened) if part),
        "cautions": card.cautions,
        "allergens": "".join(said.text for said in card.allergen_words),
        "cost": pack.cost(
            pack.costs.presents[present.basket, present.key],
            present.batch not in pack.costs.open_batches,
            FROM_SHELF if present.from_shelf else IN_THE_HOUSE,
        ),
        "card": card,
        "contents_heading": present.recipe.kind.contents_heading,
    }


def say_aloud(
    pack: Pack, presents: tuple[Present, ...], pets: frozenset[str] = frozenset()
) -> list[str]:
    """Return what to say when a basket is given: allergens, what is kept cold, what is eaten first.

    The label's own words; what is not known is said as that. Where animals live (`pets`, by kind),
    what would poison them.
    """
    said: list[str] = []
    cold: list[str] = []
    frozen: list[str] = []
    soon: list[tuple[Any, str]] = []
    for present in presents:
        card, title = card_of(pack, present), present.recipe.title
        allergens = _allergens(card)
        if allergens:
            said.append(f"{title}: {allergens[:1].lower()}{allergens[1:]}.")
        if is_frozen(card.keep):
            frozen.append(title)
            continue  # its date is for the freezer, and no day to have eaten it by
        if is_kept_cold(card.keep):
            cold.append(title)
        until = present.keep_until
        if until and (until - pack.offering.giving.giving_day).days <= _SOON_DAYS:
            soon.append((until, title))
    if frozen:
        said.append(
            f"Into the freezer at once: {', '.join(frozen)}. Thawed, ask how long it keeps."
        )
    if cold:
        said.append(f"Into the fridge at once: {', '.join(cold)}.")
    for until, title in sorted(soon):
        said.append(f"Eat soon: {title}, by {say_day_and_month(until)}.")
    return said + _keep_from(pets, presents) + _of_the_kitchen(pack, presents)


def _of_the_kitchen(pack: Pack, presents: tuple[Present, ...]) -> list[str]:
    """Return what to say of traces: which allergens the kitchen of this season uses, by name.

    A sentence that names none is no help to who is allergic, and one on every card would no longer
    be read: Food Standards Agency, Precautionary allergen labelling, for small food businesses
    (food.gov.uk, read 29 November 2026). So it is said once a basket, and names them.
    """
    if not any(one.recipe.kind.is_eaten for one in presents):
        return []
    used = {word for one in pack.making.presents for word in card_of(pack, one).allergens}
    uses = f" that uses {join_and(sorted(used))}" if used else ""
    return [f"All of it is made in a home kitchen{uses}: traces cannot be ruled out."]


def _keep_from(pets: frozenset[str], presents: tuple[Present, ...]) -> list[str]:
    """Return what to say where an animal lives: what of the basket would poison it."""
    held = {one.recipe.title: harmful_to_pets(one.recipe) for one in presents} if pets else {}
    told = [f"{title} ({', '.join(foods)})" for title, foods in held.items() if foods]
    one_kind = len(pets) == 1 and next(iter(pets))
    whom = f"the {one_kind}" if one_kind and one_kind != "other" else "their animals"
    return [f"Keep from {whom}: {'; '.join(told)}."] if told else []


def _allergens(card: UsageCard) -> str:
    told = "".join(words.text for words in card.allergen_words)
    return told if card.allergens or card.may_contain or card.unknown or card.packets else ""


def filling_data(pack: Pack) -> dict[str, Any]:
    """Return what the day of filling wants: from the shelf, from each batch, and what goes round.

    Counted out of the presents themselves.
    """
    fetched: Counter[tuple[str, str, str]] = Counter()
    for present in pack.making.presents:
        container = pack.offering.offer(present.key).container
        fetched[present.batch, present.recipe.title, container] += 1
    kinds = Counter(basket.kind for basket in pack.offering.problem.baskets)
    cold = sorted(
        {
            present.recipe.title
            for present in pack.making.presents
            if is_kept_cold(card_of(pack, present).keep)
        }
    )
    return {
        "fetch": [
            {"count": count, "title": title, "container": container, "from": batch}
            for (batch, title, container), count in sorted(
                fetched.items(), key=lambda row: (_batch_place(row[0][0]), row[0][1])
            )
        ],
        "baskets": [counted(n, kind_words(kind)) for kind, n in sorted(kinds.items())],
        "cards": len(pack.making.presents),
        "tags": len(pack.offering.problem.baskets),
        "cold": cold,
    }


def _batch_place(name: str) -> Fraction:
    number = name.rpartition(" ")[2]
    return Fraction(number) if number.isdecimal() else Fraction(0)
