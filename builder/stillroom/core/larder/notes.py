"""What a note behind a comma, or in brackets, makes of the food before it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

from stillroom.core.larder.data import read_larder_data
from stillroom.core.larder.done_with import done_with, foods_behind
from stillroom.core.larder.harmless import all_harmless, harmless_run
from stillroom.core.larder.made_from import is_beside, made_from, source_in
from stillroom.core.larder.matching import hint, match_name
from stillroom.core.larder.parts_elsewhere import food_of_part, tells_a_part
from stillroom.core.larder.phrases import (
    Words,
    forms,
    phrase_words,
    split_joined,
    split_tail,
    without_taste,
)
from stillroom.core.larder.shelves import Larder
from stillroom.core.larder.staple import Staple
from stillroom.core.larder.two_foods import (
    avoided_in,
    brings_more,
    named_apart,
    own_words,
    turned_round,
)
from stillroom.core.larder.words import normal_form
from stillroom.core.words.patterns import late_regex

_SHORT = 3
_MOST_BEFORE = 5
_SENTENCE = 5
"""Words from which on a note is a sentence of its own."""
# before the sort that its writer means: "neutral oil (such as peanut)", "oil (I use peanut)"
FOR_EXAMPLE = (
    ("such", "as"), ("e", "g"), ("eg",), ("like",), ("preferably",), ("ideally",), ("try",),
    ("for", "example"), ("for", "instance"), ("i", "use"), ("i", "used"), ("i", "like"),
    ("i", "prefer"), ("we", "use"), ("including",), ("namely",),
    ("t", "ex"), ("z", "b"), ("zb",), ("zum", "beispiel"), ("p", "ex"), ("par", "exemple"),
    ("por", "ejemplo"), ("por", "exemplo"), ("ad", "esempio"), ("bijv",), ("bijvoorbeeld",),
    ("f", "ek"), ("np",),
)  # fmt: skip
_ENGLISH = frozenset({"or", "and", "plus"})
_SPOONS = frozenset({"tl", "el", "gestr", "gestrichener", "geh", "gehaufter", "msp"})
_UNIT: Final = late_regex(r"\d*\s?(?:k?g|grams?|m?l|cl|dl|ozs?|lbs?|tbsps?|tsps?|pts?)")
_OF = frozenset({"of", "de", "d", "di", "von", "van", "av"})
_CUPS = frozenset({"cup", "pint", "pound", "ounce", "gram", "tablespoon", "teaspoon"})
_ALSO = frozenset({"use", "try", "to", "also", "auch", "meme", "aussi", "anche", "tambien", "ook"})
_PRAISE = frozenset({"best", "well", "good", "fine"})


@dataclass(frozen=True)
class Effect:
    """Another food that the note makes it, further foods it names, words that leave it unknown."""

    food: Staple | None = None
    others: tuple[Words, ...] = ()
    leftover: tuple[str, ...] = ()


def read_note(head: Words, note: Words, food: Staple | None, larder: Larder) -> Effect:
    """Read one note of a phrase whose head is `head`, read as `food`.

    What it names with an allergen, alcohol or an animal that nothing else in the phrase has is a
    food beside it.
    """
    source = source_in(note) if food else ()
    if food and source:
        made, brought = made_from(head, source, (food,), larder)
        if brought and is_beside(note):
            return Effect(others=(source,))
        if brought:
            return Effect(made) if made else Effect(None, (source,), forms(note))
    effect = _effect_of(head, note, food, larder)
    if food is None or effect.leftover or (effect.others and joins_more(note)):
        return effect
    if named_apart(head, note, food, effect.food, larder):
        return Effect(others=(own_words(note),))
    own = own_words(note)
    others = (match_name(words, larder).food for words in effect.others)
    beside = (effect.food or food, *(one for one in others if one))
    if brings_more(own, beside, larder) and not turned_round(head, own, food, effect.food, larder):
        return replace(effect, others=(*effect.others, own))
    return effect


def _effect_of(head: Words, note: Words, food: Staple | None, larder: Larder) -> Effect:
    """Read what a note does to the food before it.

    A note is read as if it stood with the name ("chocolate, white"). Where that names no food, only
    words count that make another food, or that name one: "from the tree, then dried", "milk, oat".
    """
    if len(note) > 1 and note[-1].form == "of":
        note = note[:-1]  # "limes, juice and zest of"
    if forms(note[:2]) == ("size", "of"):  # "butter, the size of an egg"
        return Effect()
    if note[-1].form == "free":  # "unsalted, and xylitol-free"; "breadcrumbs, gluten free"
        without = match_name((*note, *head), larder).food
        return Effect(food=without if without != food else None)
    if food and tells_a_part(note):
        return Effect(food=food_of_part(note, food, larder))
    note = _before_the_other(note)
    if food and len(note) == 2 and note[0].form in phrase_words("taken_out"):
        if (name := _free_of(note[1].form)) and not _is_it(food, name):
            return Effect(food=_freed(name, food, larder))
        if name:
            return Effect()  # butter has milk, whatever is said of it
    if note[0].form in ("no", "without") and len(note) > 1:  # "peanut butter (no xylitol)"
        return Effect()
    if phrase_words("packet_says").intersection(forms(note)):
        held = foods_behind(note[1:], food, larder) if note[0].form.startswith("contain") else []
        # "may contain traces of peanut" leaves it open
        return Effect(others=tuple(held)) if held else Effect(leftover=(" ".join(forms(note)),))
    if joins_more(note):
        more = _more(head, note[1:], food, larder, note[0].form)
        # "or use cranberries soaked in port"
        beside = done_with(head, note[1:], food, larder) if len(note) > 1 else ()
        return replace(more, others=(*more.others, *beside))
    if food and (listed := _list_to_taste(note, food, larder)):
        return listed
    if sorts := _sorts_named(head, note, food, larder):
        return Effect(others=sorts)  # "neutral oil (such as peanut)"
    core, tail = split_tail(note)
    if tail and tail[0].form == "in":
        core = note
    if note[0].form in phrase_words("ends") or phrase_words("denials") & set(forms(core)):
        return Effect()
    if beside := done_with(head, note, food, larder):
        # "apricots, dried and soaked in tea" are dried ones
        return Effect(food=_changed(head, note, food, larder).food, others=beside)
    named = match_name(core, larder).food if food and core else None
    if food and named == food:
        return Effect()  # "sultanas (golden raisins)": its other name
    akin = food and named and (named.section == food.section or named.tags & food.tags)
    if akin and _stands_alone(head, core, larder):
        return Effect(others=(core,))  # "courgettes (zucchini)", "pecans (walnuts)": both count
    if food and _is_parts(core, food):
        return Effect()  # "lemons, juice and zest only": the lemon is all of it
    joined = split_joined(core) if food else []
    if food and len(joined) > 1 and all(_is_named_apart(one, food, larder) for one in joined):
        return Effect(others=tuple(joined))  # "apricots, sugar, puff-paste or short crust"
    core = core[1:] if len(core) > 1 and core[0].form == "very" else core
    alone = bool(core) and core[-1].form == "only"  # "lemon, finely grated zest only"
    if len(core) - bool(alone) <= _SHORT and note[0].form not in phrase_words("prose"):
        return _qualified(head, core, food, larder)
    return _changed(head, core, food, larder)


def _free_of(word: str) -> str:
    """Return how English says that a food is without it: "gluten" makes it gluten-free."""
    table: dict[str, list[str]] = read_larder_data("phrases.yml")["free_from"]
    return next((name for name, words in table.items() if word in words), "")


def _is_it(food: Staple, name: str) -> bool:
    """Whether a food is itself of what a note takes out: butter of milk, an egg of egg."""
    return bool(food.tags & ({"dairy", "butter"} if name.startswith("dairy") else {"egg", "eggs"}))


def _freed(name: str, food: Staple, larder: Larder) -> Staple | None:
    """Return the food without what a note takes out of it, where one is known."""
    names = (f"{name} {one}" for one in (food.name, food.kind_of) if one)
    return next(filter(None, (larder.named(normal_form(one)) for one in names)), None)


def _before_the_other(note: Words) -> Words:
    """Leave out what a note denies behind what it says: "soaked in rum rather than water"."""
    ends = (place for place, word in enumerate(note) if word.form in ("rather", "instead"))
    return note[: next(ends, 0) or len(note)]


def joins_more(note: Words) -> bool:
    """Whether a note begins as one that names a further food: "or lard", "oder Nüsse"."""
    first = note[0].form
    if first not in phrase_words("joins") or forms(note[:2]) == ("e", "g"):
        return False
    return first in phrase_words("either") | {"and", "plus"} or len(note) <= _SHORT


def _list_to_taste(note: Words, food: Staple, larder: Larder) -> Effect | None:
    """Read "Senf und Sellerie nach Belieben" behind salt: what none knows leaves all of it open."""
    listed = without_taste(note)
    pieces = split_joined(listed)
    if listed == note or len(pieces) < 2:
        return None
    known = [match_name(piece, larder).food for piece in pieces]
    left = tuple(
        " ".join(forms(piece))
        for piece, one in zip(pieces, known, strict=True)
        if one is None and _not_harmless(piece, food)
    )
    others = tuple(piece for piece, one in zip(pieces, known, strict=True) if one)
    return Effect(others=others, leftover=left)


def _sorts_named(
    head: Words, note: Words, food: Staple | None, larder: Larder
) -> tuple[Words, ...]:
    """Return the sorts of a food that its note names, of those that bring an allergen with them."""
    plain = forms(note)
    start = next((len(one) for one in FOR_EXAMPLE if plain[: len(one)] == one), 0)
    start = start or _behind_who_uses(plain)
    praised = plain[-1] in _PRAISE and len(plain) > _SHORT
    if not start and not praised:
        return ()
    named = note[start:] if start else note[:-2]
    found = []
    for piece in split_joined(named):
        if praised and all_harmless(forms(piece)):
            continue  # "hearts, rinsed and drained well" praises nothing
        for words in ((*piece, head[-1]), piece):
            sort = match_name(words, larder).food
            if sort is not None:
                if food is None or _brings_more(sort, food):
                    found.append(words)
                break
    return tuple(found)


def _behind_who_uses(said: tuple[str, ...]) -> int:
    """Return where what a writer says to use begins: behind "I actually use"; 0 for none."""
    verb = 0
    if said[0] in phrase_words("who_uses"):
        near = range(1, min(_MOST_BEFORE, len(said)))
        verb = next((at for at in near if said[at] in phrase_words("uses")), 0)
        denied = {*phrase_words("denials"), *phrase_words("not_of_it"), "t", "dont", "pas", "nie"}
        if not verb or denied.intersection(said[1:verb]):
            return 0
    elif said[0] not in phrase_words("uses_alone"):
        return 0
    behind = (
        at for at in range(verb + 1, len(said)) if said[at] not in phrase_words("before_sort")
    )
    return next(behind, 0)


def _brings_more(sort: Staple, food: Staple) -> bool:
    """Whether a sort holds, or may hold, what its food is not said to."""
    held = {*food.allergens, *food.may_contain}
    return not (avoided_in(sort) <= avoided_in(food) and set(sort.may_contain) <= held)


def _is_named_apart(words: Words, food: Staple, larder: Larder) -> bool:
    """Whether several words name another food, and one with an allergen that this one has not."""
    named = match_name(words, larder).food if len(words) > 1 else None
    return named is not None and named != food and _brings_more(named, food)


def _stands_alone(head: Words, note: Words, larder: Larder) -> bool:
    """Whether a note makes no other food of the name: "chocolate, milk" is milk chocolate."""
    return not any(match_name(both, larder).food for both in ((*note, *head), (*head, *note)))


def _is_parts(note: Words, food: Staple) -> bool:
    """Whether a note names several parts of the food before it: "grated rind and juice only"."""
    pieces = [
        set(harmless_run(forms(piece), food, True)) - {"only"} for piece in split_joined(note)
    ]
    return len(pieces) > 1 and all(piece and piece <= phrase_words("turns") for piece in pieces)


def _more(head: Words, words: Words, food: Staple | None, larder: Larder, first: str) -> Effect:
    """Read "or margarine" as a further food, "or to taste" as nothing.

    "Vinegar (cider, malt, or wine)" is wine vinegar, and no wine. `first` is the joining word: of
    another language it may begin any sentence, "ou ce que vous aimez".
    """
    if set(forms(words)) <= phrase_words("or_nothing"):
        return Effect()
    words = _without_its_spoon(words)
    if words[0].form in _OF and len(words) > 1:  # "or 2 pounds of pears": the pounds are left out
        words = words[1:]
    measured = _UNIT.fullmatch(words[0].form) or words[0].form in _CUPS
    if measured and len(words) > 1:  # "or 50g margarine", "or 3 tbsp of oil"
        words = words[2:] if words[1].form == "of" and len(words) > 2 else words[1:]
    elif measured:
        return Effect()  # "1 cup sugar or 200g"
    core, _ = split_tail(words)
    if len(core) > 1 and core[0].form in _ALSO:
        core = core[
            1:
        ]  # "alternativ auch Zuckerguss", "or 1 to 2 tablespoons" (without its numbers)
    holds = phrase_words("holds") | _SPOONS
    while len(core) > 1 and core[0].form in holds and core[1].form != "of":
        core = core[1:]  # "or 4 teaspoons pumpkin pie spice", "oder 1 gestr. TL Backpulver"
    if len(core) > 1 and core[0].form in _OF:
        core = core[1:]  # "ou 4 sachets de sucre vanillé"
    others = []
    for piece in split_joined(core):
        if food and not harmless_run(forms(piece), food, True):
            continue
        if set(forms(piece)) <= phrase_words("measures"):  # "ou 120 g pour ..."
            continue
        if piece[0].form not in phrase_words("prose"):
            sort = match_name((*piece, head[-1]), larder).food
            alone = match_name(piece, larder).food
            of_it = len(piece) == 1 and sort is not None and sort not in (alone, food)
            of_it = of_it and sort is not None and sort.section == (food and food.section)
            if alone or of_it or first in _ENGLISH or len(piece) == 1 or any(hint(piece, larder)):
                others.append((*piece, head[-1]) if of_it else piece)
    return Effect(others=tuple(others))


def _without_its_spoon(words: Words) -> Words:
    """Return what a spoon or a cup is of: "cuillère à café de gingembre"; the rest as it is."""
    for size in range(min(3, len(words) - 1), 0, -1):
        if " ".join(forms(words[:size])) in phrase_words("spoons"):
            return words[size:]
    return words


def _qualified(head: Words, note: Words, food: Staple | None, larder: Larder) -> Effect:
    telling = note
    if food:  # "lemon, grated zest": what is grated tells nothing
        left = _not_harmless(note, food)
        telling = tuple(word for word in note if word.form in left)
        if not set(left) <= phrase_words("turns") | phrase_words("changes"):
            telling = note  # "fennel, trimmed fronds reserved" is all of it
    for words in (note, telling) if telling and telling != note else (note,):
        # "oranges, dried peel": how the part is stays in front of what it is a part of
        part = words[:-1] if words[-1].form == "only" else words
        around = ((*part[:-1], *head, part[-1]),) if food and len(part) > 1 else ()
        for together in ((*words, *head), (*head, *words), *around):
            match = match_name(together, larder)
            if match.food:
                return Effect(food=match.food if match.food != food else None)
    if food is None:
        return Effect()
    pieces = split_joined(note)
    if all(set(forms(piece)) <= phrase_words("turns") | {"only"} for piece in pieces):
        return Effect()
    left = tuple(word for piece in pieces for word in _not_harmless(piece, food))
    own = frozenset(forms(head))
    other = tuple(word for word in left if _is_another(word, food, own, larder))
    if left and not other and _is_named_apart(note, food, larder):
        return Effect(leftover=(" ".join(forms(note)),))  # "black pepper, plain crust"
    return Effect(leftover=other)


def _not_harmless(note: Words, food: Staple) -> tuple[str, ...]:
    """Return what is left over of a note: what may stand before a name may stand in its note."""
    left = harmless_run(forms(note), food, True)
    return harmless_run(left, food, False) if left else left


def _is_another(word: str, food: Staple, own: frozenset[str], larder: Larder) -> bool:
    """Whether a word of a note makes it another food, or names one."""
    if word in own or (word in phrase_words("turns_elsewhere") and larder.language[:2] != "en"):
        return False
    named = larder.named(word)
    if named is not None and named.name == "eggs" and "egg" in food.animal:
        return False  # "75 g egg whites (3 eggs)"
    stranger = named is not None and named != food and not named.tags & {"craft", "water"}
    return stranger or word in phrase_words("changes")


def _changed(head: Words, note: Words, food: Staple | None, larder: Larder) -> Effect:
    """Fold each word that makes another food into the name; what finds none is left over."""
    changing = tuple(
        word
        for word in note
        if word.form in phrase_words("changes") and word.form not in forms(head)
    )
    if not changing:
        return Effect()
    for words in (changing, *((word,) for word in changing)):
        match = match_name((*words, *head), larder)
        if match.food:
            return Effect(food=match.food if match.food != food else None)
    if food is None:
        return Effect()
    told = len(note) >= _SENTENCE
    own = tuple(
        word for word in changing if not (told and _of_another(note, word.start, food, larder))
    )
    return Effect(leftover=harmless_run(forms(own), food, True))


def _of_another(note: Words, start: int, food: Staple, larder: Larder) -> bool:
    """Whether a word of a long note is of another food, which brings nothing with it.

    "salt (her recipe has garlic powder, which I leave out)": no salt is a powder for that.
    """
    at = next(place for place, word in enumerate(note) if word.start == start)
    for pair in (note[max(at - 1, 0) : at + 1], note[at : at + 2]):
        named = match_name(pair, larder).food if len(pair) > 1 else None
        if named is not None and named != food and not _brings_more(named, food):
            return True
    return False
