"""How strong the finished thing is: alcohol of an infusion or liqueur, of a mead, fold of vanilla.

By mass: every liquid, the water of fresh fruit and the sugar are put together with the published
densities (mixtures.py), whatever is strained out keeps some of that mixture back and changes no
strength. Scale changes it only where amounts are rounded. Uses contents.py. Leaves out the label:
labelling.py words it. The browser's finished.js reckons the same.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.batch import spirit_density
from stillroom.core.batch.contents import (
    Content,
    contents_of,
    juicy_without_weight,
    liquids_without_size,
)
from stillroom.core.batch.drinks import Pour, pour
from stillroom.core.batch.extracts import Fold, fold_of
from stillroom.core.batch.ferments import must_in, sugar_not_known, turns_sour, yeast_works
from stillroom.core.batch.mixtures import Mixture, mix, spirit, water
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.joining import join_and
from stillroom.core.words.patterns import clause_regex
from stillroom.core.words.said import Said

_say = Said("stillroom.core.batch", "strength")

# The usual strength sold, as of the spirits in spirits.yml, where the name tells of no other.
USUAL_SPIRIT = 40
_STRONGER = clause_regex(
    r"\b(?:over[- ]?proof|high[- ](?:proof|strength)|(?:cask|barrel|navy|still)[- ]"
    r"(?:strength|proof)|full proof|absinthe|honey|flavou?red|cherry|apricot|everclear"
    r"|moonshine|schnapps|liqueur)\b",
    re.IGNORECASE,
)
_A_TRACE = Fraction(2, 100)  # of all that is poured: bitters and essences
_NEGLIGIBLE = 0.5  # % vol: below it nothing is said
_TEASPOON = ("a teaspoon", Fraction(5))
# A single measure of spirits, a small glass of wine: NHS, alcohol units (from memory).
_SPIRIT_GLASS = ("a small glass", Fraction(25))
_WINE_GLASS = ("a small glass of wine", Fraction(125))
LEAST_DRINKS = 0.05  # what would be shown as 0.0 says nothing
# A bottle's own strength may be off by 0.3 % vol (Reg. (EU) 1169/2011 Annex XII), the volumes of
# the kitchen by a percent or two.
LOW_SHARE, HIGH_SHARE = 0.97, 1.03


@dataclass(frozen=True)
class Strength:
    """Alcohol in % vol at 20 °C, most likely and from low to high, and how it was reckoned."""

    abv_percent: float
    low: float
    high: float
    how: str
    source: str
    uncertainty: str
    pours: tuple[Pour, ...] = ()
    proviso: str = ""

    @property
    def text(self) -> str:
        """Say it no finer than it is known: whole percents, but halves as a must gives them.

        >>> Strength(33.94, 32.0, 34.5, "", "", "").text
        'about 34 % vol'
        """
        return _say("strength", abv=shown_percent(self.abv_percent), proviso=self.proviso)


def shown_percent(abv: float) -> str:
    """Return % vol as page, card and rules all show it: whole, but halves as a must gives them.

    >>> shown_percent(9.5), shown_percent(33.94)
    ('9.5', '34')
    """
    halves = abv * 2
    return f"{halves / 2 if halves == round(halves) else round(abv):g}"


def _between(low: int, high: int, why: str) -> str:
    """Return between which two the strength lies; where they are one, about which.

    >>> _between(14, 14, "spoons differ")
    'About 14 % vol: spoons differ.'
    """
    if low == high:
        return _say("doubt_little", abv=low, why=why)
    return _say("doubt", low=low, high=high, why=why)


@dataclass(frozen=True)
class StrengthPart:
    """What the ingredient at `place` brings of ethanol, water, sugar and room, in one batch.

    `least` is with half the water of fresh fruit.
    """

    place: int
    likely: Mixture
    least: Mixture


def strength_of(recipe: Recipe, shares: Sequence[Fraction] = ()) -> Strength | None:
    """Return the strength of the finished recipe, or None when there is no alcohol to speak of.

    `shares` tells by how much of its exact amount each ingredient is taken, by its place (1 where
    nothing is rounded); without them it is as written. Baked, boiled and set things are left out:
    alcohol leaves them by as much as nobody can say.
    """
    held = contents_of(recipe)
    if not_told(recipe):
        return None
    if recipe.kind.is_("living") and not any(abv_of(content) for content in held):
        return _ferment(recipe, held)
    parts = strength_parts(recipe)
    if not parts:
        return None
    likely = mix(_taken(part.likely, shares, part.place) for part in parts)
    least_water = mix(_taken(part.least, shares, part.place) for part in parts)
    low, high = likely.abv * LOW_SHARE, least_water.abv * HIGH_SHARE
    return Strength(
        abv_percent=likely.abv,
        low=low,
        high=high,
        how="spirit, water, juice and sugar put together by weight, contraction included",
        source=spirit_density.SOURCE,
        uncertainty=_between(_whole(low), _whole(high), doubt_of(recipe)),
        pours=_pours(recipe, likely.abv),
        proviso=proviso_of(recipe),
    )


@once_a_recipe  # its strength is asked by the rules, the label, the amounts and the scripts
def strength_parts(recipe: Recipe) -> tuple[StrengthPart, ...]:
    """Return what each ingredient brings to the strength; () where none is reckoned by mixing."""
    held = contents_of(recipe)
    if not recipe.kind.is_("drink") or not any(map(abv_of, held)):
        return ()
    places = _places(recipe)
    parts = tuple(
        StrengthPart(places[content.ingredient], _part(content, 1.0), _part(content, 0.5))
        for content in held
    )
    return parts if mix(part.likely for part in parts).abv >= _NEGLIGIBLE else ()


def not_reckoned(recipe: Recipe) -> tuple[str, ...]:
    """Return what is poured in that nobody knows: reckoned as water, though it may be spirit."""
    return tuple(
        content.ingredient.item
        for content in contents_of(recipe)
        if content.liquid and content.staple is None and content.ingredient.strength is None
    )


@once_a_recipe  # asked by the label, the page and the rules
def not_told(recipe: Recipe) -> str:
    """Say why a drink with alcohol has a strength that nobody can work out; "" where none is so.

    Some bottle's size, fruit's weight or drink's strength is not written: none is guessed.
    """
    held = contents_of(recipe)
    drinks = [content for content in held if content.liquid and _is_alcohol(content)]
    works = recipe.kind.is_("living") and yeast_works(recipe)
    if not recipe.kind.is_("drink") or not (drinks or works):
        return ""
    if drinks and recipe.kind.is_("living") and turns_sour(recipe):
        return _say("sour")
    if without := liquids_without_size(recipe):
        named = join_and(list(without))
        return _say("no_size", named=named, first=without[0])
    if drinks and (juicy := juicy_without_weight(recipe)):
        return _say("no_weight", named=join_and(list(juicy)), first=juicy[0])
    poured = sum((content.volume_ml for content in held if content.liquid), Fraction(0))
    weighty = [one for one in drinks if one.volume_ml > _A_TRACE * poured and not abv_of(one)]
    if not weighty:
        sweet = sugar_not_known(recipe, held) if works and not drinks else ()
        return _say("no_sugar", named=join_and(list(sweet))) if sweet else ""
    named = join_and([content.ingredient.item for content in weighty])
    return _say("no_strength", named=named, first=weighty[0].ingredient.item)


def _is_alcohol(content: Content) -> bool:
    tags = content.staple.tags if content.staple else frozenset()
    return bool(abv_of(content)) or "alcohol" in tags


def proviso_of(recipe: Recipe) -> str:
    """Say under what proviso a strength holds: "" where everything poured in is known."""
    unknown = not_reckoned(recipe)
    return f", if there is no alcohol in the {join_and(list(unknown))}" if unknown else ""


def doubt_of(recipe: Recipe) -> str:
    """Say why a strength is a range."""
    unknown = not_reckoned(recipe)
    if unknown:
        be = "is" if len(unknown) == 1 else "are"
        return f"{join_and(list(unknown))} {be} not known and taken as water"
    if any(content.fresh and not content.dissolves for content in contents_of(recipe)):
        return "fruit differs in juice and gives it up slowly"
    return "kitchen measures are good to a few percent"


def _places(recipe: Recipe) -> dict[Ingredient, int]:
    """Return where each ingredient stands in a recipe, the first of those that are the same."""
    return {one: place for place, one in reversed([*enumerate(recipe.ingredients)])}


def _taken(part: Mixture, shares: Sequence[Fraction], place: int) -> Mixture:
    return part.share(to_float(shares[place])) if shares else part


def to_float(value: Fraction) -> float:
    """Return a fraction to the millionth: a float that the browser comes to as well."""
    return (value * 10**6 + Fraction(1, 2)).__floor__() / 10**6


def _whole(value: float) -> int:
    return math.floor(value + 0.5)


def abv_of(content: Content) -> float:
    """Return the % vol of a liquid ingredient: its own, or as it is usually sold; 0 for none."""
    if not content.liquid:  # wine yeast is sold by the strength it stands, and is no wine
        return 0.0
    own, staple = content.ingredient.strength, content.staple
    if own is not None or staple is None:
        return float(own or 0)
    if staple.strength is not None:
        return float(staple.strength)
    plain = "spirit" in staple.tags and not _STRONGER.search(
        f"{content.ingredient.item} {staple.name}"
    )
    return float(USUAL_SPIRIT) if plain else 0.0


def _part(content: Content, fruit_share: float) -> Mixture:
    abv = abv_of(content)
    if content.liquid and abv:
        return spirit(float(content.volume_ml), abv)
    sugar, own_water = float(content.grams_of("sugar")), float(content.grams_of("water"))
    if content.liquid and not own_water and not sugar and not content.rest_ml:
        return water(float(content.volume_ml))  # nothing known: as if it were water
    if content.liquid or content.dissolves:
        return Mixture(0.0, own_water, sugar, float(content.rest_ml))
    if content.fresh:
        return Mixture(0.0, float(content.juice_g) * fruit_share, sugar * fruit_share)
    return Mixture(0.0, 0.0)


def _ferment(recipe: Recipe, held: tuple[Content, ...]) -> Strength | None:
    found = must_in(recipe, held)
    if found is None or found[0].value < _NEGLIGIBLE:
        return None
    must, proviso = found
    return Strength(
        must.value,
        must.low,
        must.high,
        must.rule,
        must.source,
        must.uncertainty,
        _pours(recipe, must.value),
        proviso,
    )


def _pours(recipe: Recipe, abv: float) -> tuple[Pour, ...]:
    return tuple(pour(name, volume, abv) for name, volume in servings_of(recipe))


def servings_of(recipe: Recipe) -> tuple[tuple[str, Fraction], ...]:
    """Return what such a thing is poured by, and its ml: spoon, glass, the bottle given."""
    glass = _WINE_GLASS if recipe.kind.is_("living") else _SPIRIT_GLASS
    first = recipe.filled_into[0]
    if first.size and first.size.unit in ("ml", "cl", "l"):
        volume = first.size.middle * {"ml": 1, "cl": 10, "l": 1000}[first.size.unit]
        return (_TEASPOON, glass, (f"a {first.name} of {int(volume)} ml", volume))
    return (_TEASPOON, glass)


def fold_of_recipe(recipe: Recipe, shares: Sequence[Fraction] = ()) -> Fold | None:
    """Return the vanilla fold of an infusion of pods by weight, or None when it is none.

    The extract is taken as the spirit poured in; pods by count use the weight of one. `shares` as
    for strength_of.
    """
    brings = fold_parts(recipe)
    if brings is None:
        return None
    grams = sum((own * (shares[at] if shares else 1) for at, own in brings.pods), Fraction(0))
    volume = sum((own * (shares[at] if shares else 1) for at, own in brings.spirits), Fraction(0))
    return fold_of(grams, volume, brings.abv)


@dataclass(frozen=True)
class FoldParts:
    """Grams of pods and ml of spirit of one batch, each with its ingredient's place."""

    pods: tuple[tuple[int, Fraction], ...]
    spirits: tuple[tuple[int, Fraction], ...]
    abv: float


def fold_parts(recipe: Recipe) -> FoldParts | None:
    """Return the pods and the spirit of an infusion of vanilla alone; None for anything else."""
    held = contents_of(recipe)
    pods = [c for c in held if "vanilla" in c.ingredient.item.lower() and not c.liquid and c.grams]
    spirits = [c for c in held if abv_of(c) >= 15]
    others = [c for c in held if c not in pods and c not in spirits]
    if not recipe.kind.is_("steeped") or not pods or not spirits or others:
        return None
    places = _places(recipe)
    return FoldParts(
        tuple((places[c.ingredient], c.grams or Fraction(0)) for c in pods),
        tuple((places[c.ingredient], c.volume_ml) for c in spirits),
        abv_of(spirits[0]),
    )
