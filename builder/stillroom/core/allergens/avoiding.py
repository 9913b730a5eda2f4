"""What somebody means by what they avoid: "lactose", "vegan", "pork", "cashews", "no nuts please".

A word stands for a family of allergens.yml and avoided.yml, or for a food of the larder with all
that is kin to it. Leaves out whether a whole recipe holds it: allergens.py, and the planner's own
second reading.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from functools import cache, lru_cache
from typing import Any

from stillroom.core.allergens.avoided import Avoided
from stillroom.core.allergens.laws import all_allergens
from stillroom.core.allergens.phrases import (
    allows_again,
    bare_forms,
    behind_of,
    denies_it,
    is_of_eating,
    is_way_of_eating,
    parts_said,
    without_brackets,
    without_somebody,
)
from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.index import load_index
from stillroom.core.larder.staple import Staple
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.plurals import singular

ANY_NUT = "nuts"  # of no sort that is told
_PACKET = "read-its-packet"
_KEYS = frozenset(
    {"word", "also", "allergens", "diet", "tags", "from", "named", "perhaps", "perhaps_tags"}
    | {
        "perhaps_from",
        "ask",
        "of",
        "but",
        "little",
        "traces",
        "savoury",
        "packets",
        "cautions",
        "told",
    }
    | {"means", "cannot", "source", "read", "of_somebody", "of_the_body", "why"}
)
_WORD = late_regex(r"[^\W_]+")
_MOST_WORDS = 12  # no food has a longer name
_WHOSE = late_regex(r"^\s*(?:(?:his|her|their|my|our|bad|poor|weak)\s+)+")
_PREPARED = late_regex(r"[:,;(]|\s[-–—]\s")


@lru_cache(maxsize=1024)
def read_phrase(word: str) -> Avoided | None:
    """Return what a few words mean, or None when they are neither a family nor a food.

    A sentence of several clauses is for sentences.py.

    >>> sorted(read_phrase("gluten-free").allergens)
    ['barley', 'oats', 'rye', 'wheat']
    >>> sorted(read_phrase("allergic to cashews").allergens)
    ['cashew']
    >>> read_phrase("glutten") is None
    True
    """
    if of_somebody := _of_somebody(word):
        return of_somebody
    outside, inside = without_brackets(word)
    found = _read_words(word, outside)
    if found and not found.ask and inside and (more := _adds(found, inside)):
        listed = ", ".join((outside, more))
        return Avoided(word, ask=f'Write each by itself: "avoid: [{listed}]".')
    return found or _asked_about(word, f"{outside} {inside}")


def _of_somebody(word: str) -> Avoided | None:
    """Return what is said of one of a household: "Tom is allergic to nuts"; else None.

    Olive and Rosemary are foods as well: what begins with one is asked about as before.
    """
    said = said_of(word)
    found = read_phrase(said) if said != word else None
    return replace(found, word=word) if found and not found.ask else None


def said_of(word: str) -> str:
    """Return what is said of one of a household, without who it is; all of it where none is named.

    >>> said_of("Tom reacts to nuts"), said_of("Olive reacts to nuts")
    ('reacts to nuts', 'Olive reacts to nuts')
    """
    who, said = without_somebody(word)
    names = re.findall(r"[^\W\d_][\w'-]*", who.lower())
    somebody = names and not any(name in _families() or known(name) for name in names)
    return said if somebody else word


def known(name: str) -> Avoided | None:
    """Return what a name of a family, an allergen or a food means; None for any other word."""
    return known_by_name(name) or _as_food(name, name)


def says_of_somebody(text: str) -> Avoided | None:
    """Return the first family named in words that says more of somebody than any food beside it.

    >>> says_of_somebody("in the Jain way").meant, says_of_somebody("for her birthday")
    ('hindu', None)
    """
    said = _plain(text)
    rows = (one for name, one in _plain_families() if one.of_somebody and name in said)
    return next(rows, None)


def _plain(text: str) -> str:
    """Return the words of a text with a space about each; "Crohn's" and "latex-fruit" are two."""
    return f" {' '.join(_WORD.findall(text.lower()))} "


@cache
def _plain_families() -> tuple[tuple[str, Avoided], ...]:
    return tuple((_plain(name), family) for name, family in _families().items())


def known_by_name(word: str) -> Avoided | None:
    """Return what a family or an allergen of exactly this name means, the asked about left out."""
    found = _families().get(word) or (_as_allergen(word) if len(word) > 3 else None)
    return found if found and not found.ask else None


def known_exactly(name: str) -> str:
    """Return the family whose word this is, asked about or not; "" for none."""
    return _families()[name].word if name in _families() else ""


def is_of_the_body(text: str) -> bool:
    """Whether words are an organ and no more, which may be a food or an illness: "his liver".

    >>> is_of_the_body("his liver"), is_of_the_body("his liver and nuts"), is_of_the_body("salt")
    (True, False, False)
    """
    families = (_families().get(bare) for bare in bare_forms(_WHOSE.sub("", text.lower())))
    return any(one.of_the_body and one.ask for one in families if one)


def is_why(name: str) -> bool:
    """Whether a word is only the reason why foods are left out: "migraine"."""
    return name in _families() and _families()[name].why


def family_names() -> tuple[str, ...]:
    """Return every word of every family, those asked about as well."""
    return tuple(_families())


def _read_words(word: str, said: str) -> Avoided | None:
    """Return what words mean, with whatever stands round them that changes nothing."""
    if denies_it(said):
        return None
    if allows_again(said):  # such a phrase means what it is known for, and no part of it
        known = _families().get(said)
        return replace(known, word=word) if known else None
    if lost := says_of_somebody(behind_of(said)):
        return replace(lost, word=word) if lost.ask else None
    for bare in bare_forms(said):
        if found := _families().get(bare) or _as_allergen(bare):
            # "liver" is an illness as well, "no liver" is eaten by others
            eaten = _as_food(word, bare) if found.of_the_body and is_of_eating(said) else None
            return eaten or replace(found, word=word)
    parts = parts_said(said)
    if len(parts) > 1:
        each = [_read_words(part, part) for part in parts]
        whole = tuple(one for one in each if one and not one.ask)
        return Avoided(word, of=whole) if len(whole) == len(parts) else None
    if is_way_of_eating(said):  # "kidney diet" is no diet without kidney
        return None
    return next((found for bare in bare_forms(said) if (found := _as_food(word, bare))), None)


def _adds(found: Avoided, inside: str) -> str:
    """Return what is said in brackets beside the thing itself; "" where that adds nothing."""
    if found.said_in(inside) == "contains":
        return ""
    for said in (inside, *inside.split()):
        other = _read_words(said, said)
        if (
            other
            and not other.why
            and not is_of_the_body(said)
            and (other.ask or not is_part_of(other, found))
        ):
            return said
    return ""


def is_part_of(other: Avoided, found: Avoided) -> bool:
    """Whether what is named is left out already: hazelnuts with the nuts."""
    if other.of:
        return all(is_part_of(one, found) for one in other.of)
    plain = not (other.diet or other.tags or other.animals)
    within = plain and bool(other.allergens) and other.allergens <= found.allergens
    return within or other.meant == found.meant


def _asked_about(word: str, said: str) -> Avoided | None:
    """Return the question about a word that stands among others: "takes warfarin"."""
    words = _plain(said)
    asked = [(name, one) for name, one in _plain_families() if one.ask and name in words]
    _, family = max(asked, key=lambda row: len(row[0]), default=("", None))
    return replace(family, word=word) if family else None


def asked_in(text: str) -> tuple[Avoided, ...]:
    """Return every family named in words that is always asked about."""
    said = _plain(text)
    return tuple(one for name, one in _plain_families() if one.ask and name in said)


def sought_by_name(word: str) -> Avoided:
    """Return a thing that nobody knows, to be sought by its name alone."""
    return Avoided(word, named=_named(word.strip()))


def avoid_words() -> tuple[str, ...]:
    """Return every word of a family or an allergen, for messages."""
    families = {row.word for row in _families().values() if not row.ask}
    return tuple(sorted({*families, *all_allergens()}))


@cache
def _families() -> dict[str, Avoided]:
    found: dict[str, Avoided] = {}
    for row in read_data("avoided.yml"):
        if unknown := set(row) - _KEYS:
            raise ValueError(f"avoided.yml: {row['word']}: {', '.join(sorted(unknown))}")
        family = _read_row(row, found)
        for word in (row["word"], *row.get("also", ())):
            if word in found:
                raise ValueError(f"avoided.yml: {word} stands there twice.")
            found[word] = family
    return found


def _read_row(row: Mapping[str, Any], before: Mapping[str, Avoided]) -> Avoided:
    """Read one row; what it is made of stands above it in the table."""
    return Avoided(
        row["word"],
        allergens=frozenset(row.get("allergens", ())),
        diet=row.get("diet", ""),
        tags=frozenset(row.get("tags", ())),
        animals=frozenset(row.get("from", ())),
        named=_pattern(row, "named"),
        perhaps=_pattern(row, "perhaps"),
        perhaps_tags=frozenset(row.get("perhaps_tags", ())),
        perhaps_animals=frozenset(row.get("perhaps_from", ())),
        ask=row.get("ask", ""),
        meant=row["word"],
        told=row.get("told", ""),
        of=tuple(before[word] for word in row.get("of", ())),
        but=frozenset(row.get("but", ())),
        little=frozenset(row.get("little", ())),
        traces=row.get("traces", True),
        savoury=row.get("savoury", ""),
        packets=_pattern(row, "packets"),
        cautions=frozenset(row.get("cautions", ())),
        means=row.get("means", ""),
        cannot=row.get("cannot", ""),
        source=row.get("source", ""),
        of_somebody=row.get("of_somebody", False),
        of_the_body=row.get("of_the_body", False),
        why=row.get("why", False),
    )


def _pattern(row: Mapping[str, Any], key: str) -> re.Pattern[str] | None:
    return re.compile(row[key]) if key in row else None


def allergens_called(word: str) -> frozenset[str]:
    """Return the ids of the allergens, or of all under the heading, that a law calls so."""
    return _by_what_is_called().get(word, frozenset()) if word else frozenset()


@cache
def _by_what_is_called() -> Mapping[str, frozenset[str]]:
    called: dict[str, frozenset[str]] = {}
    for one in all_allergens().values():
        names = {one.name, one.name.replace("-", " "), one.say.lower(), one.eu, one.us, one.ca}
        called |= {name: called.get(name, frozenset()) | {one.name} for name in names}
    return called


def _as_allergen(word: str) -> Avoided | None:
    """Return what a label calls so, in one or in many: "almonds" is what "almond" is."""
    ids = allergens_called(word) or allergens_called(singular(word)) or _nuts_called(word)
    return Avoided(word, ids, meant=word) if ids else None


def _nuts_called(word: str) -> frozenset[str]:
    bare = word.removesuffix(" nuts").removesuffix(" nut")
    return allergens_called(bare) if bare != word else frozenset()


def _as_food(word: str, bare: str) -> Avoided | None:
    """Return a food of the larder with what is kin to it.

    A food that is no compound brings its allergens along: whoever avoids cashews must not have
    "mixed nuts" either, and whoever avoids cream avoids milk. But who drinks no red wine may have
    raisins, in which sulphites only may be.
    """
    # behind a colon or a dash stands how a food of a recipe is prepared, and here another need
    too_much = _PREPARED.search(bare) or len(bare.split()) > _MOST_WORDS
    read = None if too_much else read_food(bare)
    # of "zorple and eggs" the eggs are read, and nobody knows what a zorple is
    if read is None or read.food is None or read.leftover or len(read.foods) > 1:
        return None
    food = read.food
    family = known_by_name(food.name)
    if family and not family.of_the_body:  # "raw egg" is what "eggs" is
        return replace(family, word=word)
    tags = group_called(food, bare)
    if tags:  # "mushrooms", "herbs": all that is called so, and not the word's own food alone
        return Avoided(word, tags=tags, named=_named(bare, food.name), foods=(food,), meant=bare)
    plain = not food.parts and _PACKET not in food.tags and food.allergens
    allergens = frozenset(food.allergens if plain else ())
    if ANY_NUT in allergens:  # "chopped nuts" are nuts of every sort
        allergens |= _families()[ANY_NUT].allergens
    return Avoided(
        word,
        allergens=allergens,
        traces=set(food.allergens) != {"sulphites"},
        named=_named(bare, food.name),
        foods=(food,),
        meant=bare,
        perhaps_foods=frozenset({food.kind_of} - {""}),
    )


def _named(*names: str) -> re.Pattern[str]:
    said = "|".join(sorted({re.escape(singular(name.lower())) for name in names}))
    return re.compile(rf"\b(?:{said})")


def group_called(food: Staple, bare: str) -> frozenset[str]:
    """Return the tags of a group by its name: "herbs" are herb, fresh-herb and dried-herb."""
    names = {singular(name.lower()).replace(" ", "-") for name in (bare, food.name)}
    known = set(load_index()["tagged"])
    if names.isdisjoint(known):
        return frozenset()
    ends = tuple(f"-{name}" for name in names)
    return frozenset(tag for tag in known if tag in names or tag.endswith(ends))
