"""What is in it, in descending weight at the time of use, compounds opened, allergens marked.

Articles 18 to 21 and Annex VII of Regulation (EU) No 1169/2011. What is strained out is said to
have been infused, never to be contained; its allergens are marked all the same. Uses contents.py
for weights. Leaves out type and paper.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction

from stillroom.core.allergens.laws import List, all_allergens, say_in_list
from stillroom.core.allergens.of_foods import Known
from stillroom.core.amounts.units import convert, size_of
from stillroom.core.batch.bottling import finished_density
from stillroom.core.batch.contents import content_of, contents_by_place, contents_of
from stillroom.core.label.heft import about_weighs
from stillroom.core.label.listed_beside import listed_beside
from stillroom.core.label.strained import (
    goes_into_the_liquid,
    is_made_cold,
    is_strained_off,
    poured_off,
    salt_is_rinsed_off,
)
from stillroom.core.larder.food_reading import FoodReading, read_food
from stillroom.core.larder.packet_parts import read_part
from stillroom.core.larder.shelves import common_larder
from stillroom.core.larder.words import normal_form
from stillroom.core.lines.ingredient import Ingredient, read_ingredient
from stillroom.core.lines.ingredient_food import food_of, name_of, parts_of
from stillroom.core.lines.staple_table import staple_of
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex
from stillroom.core.words.problems import Unreadable

_WATER_NAMED_FROM = Fraction(5, 100)
# worked into a drink rather than steeped in it
_FEEDS_THE_BREW = frozenset({"yeast", "nutrient"})
# dissolve or are beaten in, and cannot be strained out
_STIRRED_IN = _FEEDS_THE_BREW | frozenset(
    {"water", "sugar", "honey", "syrup", "salt", "egg", "dairy", "gelatine", "sulphites"}
)

# passes through every cloth: "instant coffee", "cocoa", "milk powder"
_AS_A_POWDER = clause_regex(
    r"\b(?:instant|cocoa(?! (?:nibs?|beans?))|powder(?:ed)?|cacao en poudre|en poudre|in polvere"
    r"|en polvo|lösliche\w*)\b|\w(?:pulver|poeder)\b",
    re.IGNORECASE,
)
_FATS = frozenset({"oil", "fat", "butter", "nut-oil"})
# "vanilla pod if you have one", "extra flour for dusting": how a cook speaks, and no part of a name
_IF_THERE_IS = clause_regex(
    r",? \(?(?:if (?:you|using|used|liked|desired|wanted|needed|necessary|required|available"
    r"|possible|wished)\b|optional\b|to taste\b|as (?:needed|required|desired)\b"
    r"|for (?:dusting|greasing|rolling|sprinkling|brushing|frying|coating|the tin)\b).*$",
    re.IGNORECASE,
)
_SOME_MORE = clause_regex(
    r"^(?:(?:a (?:little|bit of)|a little bit of|some|more"
    r"|extra(?! (?:virgin|dry|fine|old|strong|mature|thick|hot|large))"
    r"|(?:(?:firmly|lightly|loosely|tightly|well) )?packed) )+",
    re.IGNORECASE,
)

_OR_ELSE = clause_regex(
    r"(?P<or>or|oder|ou|o|oppure|of|eller) (?:else |auch |bien |anche |use |with )?(?P<other>\S.*)",
    re.IGNORECASE,
)
# "or vegan", "oder pflanzliche Alternative": another sort, though no name says which
_ANOTHER_SORT = clause_regex(
    r"\b(?:vegan\w*|veget(?:al|arian)\w*|végétal\w*|plant|plantaardig\w*|växtbaser\w*|pflanzlich\w*"
    r"|free|substitut\w*|alternativ\w*|replacer|ersatz|\w+ersatz|\w+frei\w*)\b",
    re.IGNORECASE,
)
_NO_FOOD = frozenset(
    {"or", "more", "less", "fewer", "so", "oder", "mehr", "ou", "o", "of", "eller"}
)
_NOTE_PARTS = clause_regex(r"[();]|,\s")

# an ingredient, its grams (None when unknown), whether it stays in what is given
_Row = tuple[Known, Fraction | None, bool]


@dataclass(frozen=True)
class ContentsEntry:
    """One piece of the list; the pieces are set with commas between. Allergens are emphasised.

    `lead` and `tail` stand about what may be emphasised: "marzipan (" before almonds.
    """

    text: str
    emphasised: bool = False
    lead: str = ""
    tail: str = ""

    @property
    def whole(self) -> str:
        """Return all its words: "marzipan (almonds"."""
        return f"{self.lead}{self.text}{self.tail}"


def list_contents(recipe: Recipe, known: Iterable[Known], law: List) -> tuple[ContentsEntry, ...]:
    """Return the list of contents.

    An ingredient that is counted out by the container is weighed for one container of a batch; one
    without a weight stands last, in the recipe's order.
    """
    poured = poured_off(recipe)
    weights = _weights(recipe, bool(poured) or salt_is_rinsed_off(recipe))
    places = {id(ingredient): place for place, ingredient in enumerate(recipe.ingredients)}

    def weigh(ingredient: Ingredient) -> Fraction | None:
        place = places.get(id(ingredient))
        if place is not None:
            return weights[place]
        told = content_of(recipe, ingredient)  # what only the method names
        return told.grams if told else None

    rows: list[_Row] = [
        (one, weigh(one.ingredient), _stays(recipe, one))
        for one in known
        if not _stays_on_the_table(recipe, one) and places.get(id(one.ingredient)) not in poured
    ]
    rows = _one_row_each(rows)
    rows, soap = _turned_into_soap(recipe, rows)
    rows = _without_steam(recipe, rows)
    pressed = recipe.kind.is_("put up")  # a jelly holds the juice of what was strained out
    staying = [(one, grams, stays) for one, grams, stays in rows if stays or pressed]
    strained = [(one, grams, stays) for one, grams, stays in rows if not stays and not pressed]
    entries: list[ContentsEntry] = []
    for one, _, stays in _by_weight(staying):
        first, *rest = _open(one, law)
        entries += [first if stays else replace(first, lead=f"juice of {first.lead}"), *rest]
    for place, (one, _, _) in enumerate(_by_weight(strained)):
        opening = "infused with " if place == 0 else ""
        first, *rest = _open(one, law)
        entries += [replace(first, lead=opening + first.lead), *rest]
    return tuple([*entries, *soap])


def _turned_into_soap(recipe: Recipe, rows: list[_Row]) -> tuple[list[_Row], list[ContentsEntry]]:
    """Take the lye of a soap out of what it holds: the fats have used it up, and it is said so."""
    lye = [one for one, _, _ in rows if any("lye" in food.tags for food in one.staples)]
    fats = any(_FATS & food.tags for one, _, _ in rows for food in one.staples)
    if recipe.kind.is_eaten or not lye or not fats:
        return rows, []
    names = " and ".join(_called(one) for one in lye)
    left = [row for row in rows if row[0] not in lye]
    return left, [ContentsEntry(f"the fats turned into soap with {names}")]


def _with_its_part(known: Known, name: str) -> str:
    """Return the name of a food of which only a part goes in: "orange peel" for its peel only."""
    reading = food_of(known.ingredient)
    whole = read_food(name, reading.larder).food
    taken = reading.food
    if whole is None or taken is None or len(reading.foods) > 1:
        return name
    if taken.name not in {f"{whole.name} {part}" for part in ("juice", "peel", "zest", "rind")}:
        return name
    spoken = set(normal_form(name).split())
    is_english = reading.larder.language[:2] == "en" and set(whole.name.split()) <= spoken
    return taken.name if is_english else f"{name} ({known.ingredient.note})"


def _called(known: Known) -> str:
    """Return what an ingredient is called in a list: cold water and hot are water.

    >>> _IF_THERE_IS.sub("", "vanilla pod if you have one"), _SOME_MORE.sub("", "a little flour")
    ('vanilla pod', 'flour')
    """
    name = _with_its_part(known, name_of(known.ingredient))
    if name.casefold().endswith(" water") and all(food.name == "water" for food in known.staples):
        return "water"
    bare = _SOME_MORE.sub("", _IF_THERE_IS.sub("", name)) or name
    if listed := listed_beside(known.ingredient):
        return f"{bare}, {listed}"
    return bare + _other_choice(known.ingredient)


def _other_choice(ingredient: Ingredient) -> str:
    """Return the food that a note offers in the place of its own: "milk (or oat milk)" is either.

    Without it the list would name the allergen of a food that it does not name. So is one that no
    book knows: "butter (or vegan block)".
    """
    reading = food_of(ingredient)
    unknown = {word for left in reading.leftover for word in left.split()} - _NO_FOOD
    for part in _NOTE_PARTS.split(ingredient.note):
        found = _OR_ELSE.match(part.strip())
        if found is None:
            continue
        said = set(normal_form(found["other"]).split())
        if len(reading.foods) > 1 or said & unknown or _ANOTHER_SORT.search(found["other"]):
            return f" {found['or']} {_IF_THERE_IS.sub('', _without_amount(found['other']))}"
    return ""


def _without_amount(words: str) -> str:
    try:
        return read_ingredient(words, "metric").item
    except Unreadable:
        return words


def _weights(recipe: Recipe, poured: bool) -> tuple[Fraction | None, ...]:
    """Return the grams of each line by its place, of one container where it is counted out so.

    How much salt stays behind when its brine is poured off nobody can say.
    """
    counted = recipe.makes.amount.middle if recipe.makes.each else Fraction(1)
    weights = []
    for ingredient, content in zip(recipe.ingredients, contents_by_place(recipe), strict=True):
        grams = content.grams if content else None
        if grams is None:
            grams = about_weighs(ingredient, content, recipe)
        staple = staple_of(ingredient)
        if poured and staple and "salt" in staple.tags:
            grams = None
        each = ingredient.scales == "per container"
        weights.append(grams * counted if grams is not None and each else grams)
    return tuple(weights)


def _one_row_each(rows: list[_Row]) -> list[_Row]:
    """Put lines of the same words into one row with the sum of what is known of their weights."""
    found: dict[tuple[object, ...], _Row] = {}
    for one, grams, stays in rows:
        key = (_called(one).casefold(), one.contains, one.ingredient.parts, stays)
        before = found.get(key, (one, None, stays))
        known = [weight for weight in (before[1], grams) if weight is not None]
        found[key] = (before[0], sum(known, Fraction(0)) if known else None, stays)
    return list(found.values())


def _without_steam(recipe: Recipe, rows: list[_Row]) -> list[_Row]:
    """Count added water by what is left of it when the food is finished: Annex VII A 1.

    Of food that is boiled or baked and weighed when done, what was lost was water. Below 5 % it
    need not be named. Where nobody says what the food weighs, water stands last. Of what is
    strained off only the juice is in it: what stays in the bag is no steam.
    """
    if not recipe.kind.is_("loses water") or is_made_cold(recipe):
        return rows
    finished = _finished_g(recipe)
    strained = is_strained_off(recipe)
    shares = [goes_into_the_liquid(one) if strained else Fraction(1) for one, _, _ in rows]
    weights = [grams * share for (_, grams, _), share in zip(rows, shares, strict=True) if grams]
    total = sum(weights, Fraction(0))
    left: list[_Row] = []
    for one, grams, stays in rows:
        if not _is_water(one) or grams is None:
            left.append((one, grams, stays))
        elif finished is None:
            left.append((one, None, stays))
        elif grams - (total - finished) > finished * _WATER_NAMED_FROM:
            left.append((one, min(grams, grams - (total - finished)), stays))
    return left


def _is_water(known: Known) -> bool:
    return any("water" in staple.tags for staple in known.staples)


def _finished_g(recipe: Recipe) -> Fraction | None:
    """Return the grams of the finished batch, from what the recipe says it makes."""
    made = recipe.makes.total
    size = size_of(made.unit)
    if size == "mass":
        return convert(made.middle, made.unit, "g")
    density = finished_density(recipe)
    if size == "volume" and density:
        return convert(made.middle, made.unit, "ml") * density
    return None


def _stays_on_the_table(recipe: Recipe, known: Known) -> bool:
    """Whether it is a tool of a craft: needed once for the batch, and not given away."""
    return not recipe.kind.is_eaten and known.ingredient.scales == "per batch"


def _is_pickled(recipe: Recipe, known: Known) -> bool:
    """Whether it lies in a ferment of vegetables, without yeast, which nobody strains."""
    things = [staple_of(ingredient) for ingredient in recipe.ingredients]
    brewed = any(staple and "yeast" in staple.tags for staple in things)
    own_word = known.ingredient.left_in is not None
    return recipe.kind.is_("living") and not brewed and not own_word


def _stays(recipe: Recipe, known: Known) -> bool:
    """Liquids and what dissolves stay in a strained thing; leaves, fruit and pods do not."""
    if recipe.stays_in(known.ingredient) or _is_pickled(recipe, known):
        return True
    if any(_FEEDS_THE_BREW & staple.tags for staple in known.staples):
        return True
    if known.ingredient.left_in is False:
        return False
    held = [c for c in contents_of(recipe) if c.ingredient == known.ingredient]
    tags = {tag for staple in known.staples for tag in staple.tags}
    if _AS_A_POWDER.search(known.ingredient.item):
        return True
    return any(content.liquid or content.dissolves for content in held) or bool(tags & _STIRRED_IN)


def _by_weight(rows: Iterable[_Row]) -> list[_Row]:
    return sorted(rows, key=lambda row: -(row[1] if row[1] is not None else Fraction(-1)))


def _open(known: Known, law: List) -> list[ContentsEntry]:
    """Name an ingredient; a compound's parts follow in brackets, each marked for itself."""
    ingredient = known.ingredient
    item = _called(known)
    readings: tuple[FoodReading, ...]
    if ingredient.parts:
        readings = parts_of(ingredient)
        held = [_allergens_in(reading) for reading in readings]
    else:
        usual = known.staples[0].parts if len(known.staples) == 1 else ()
        readings = tuple(read_part(part, common_larder()) for part in usual)
        # the yeast extract of most stock powders is not the spread, which is of barley
        held = [_allergens_in(reading) & known.contains for reading in readings]
    if not readings:
        return [_entry(item, known.contains, law)]
    pairs = zip(readings, held, strict=True)
    entries = [_entry(reading.text, names, law) for reading, names in pairs]
    shown = frozenset().union(*held)
    hidden = _hidden(known.contains - shown, " ".join((item, *(e.text for e in entries))), law)
    last = entries[-1]
    if hidden and not last.emphasised:
        last = ContentsEntry(hidden, True, f"{last.text}) (contains ", ")")
    elif hidden:
        last = replace(last, text=f"{last.text}) (contains {hidden}", tail=")")
    entries[-1] = last if hidden else replace(last, tail=")")
    entries[0] = replace(entries[0], lead=f"{item} ({entries[0].lead}")
    return entries


def _entry(item: str, allergens: Iterable[str], law: List) -> ContentsEntry:
    """Add the allergen in brackets where the name does not say it: "fine semolina (wheat)"."""
    held = _listed(allergens, law)
    missing = [say for say in held if not _says(item.lower(), say)]
    return ContentsEntry(f"{item} ({', '.join(missing)})" if missing else item, bool(held))


def _allergens_in(reading: FoodReading) -> frozenset[str]:
    return frozenset(name for food in (*reading.foods, *reading.hinted) for name in food.allergens)


def _listed(names: Iterable[str], law: List) -> list[str]:
    wanted = set(names)
    return [
        say_in_list(allergen, law)
        for allergen in all_allergens().values()
        if allergen.name in wanted and allergen.heading(law)
    ]


def _says(words: str, allergen: str) -> bool:
    stem = allergen.lower().rstrip("s")
    return re.search(rf"\b{re.escape(stem)}", words) is not None


def _hidden(missing: Iterable[str], written: str, law: List) -> str:
    """Name allergens that the compound has and none of its written parts shows."""
    names = [say for say in _listed(missing, law) if not _says(written.lower(), say)]
    return ", ".join(names)
