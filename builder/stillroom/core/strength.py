"""How strong the finished thing is: alcohol of an infusion or liqueur, of a mead, fold of vanilla.

By mass: every liquid, the water of fresh fruit and the sugar are put together with the published
densities (mixtures.py), whatever is strained out keeps some of that mixture back and changes no
strength. Uses contents.py. Leaves out the label: labelling.py words it.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from stillroom.core import spirit_density
from stillroom.core.bottling import estimate_yield, makes_ml
from stillroom.core.contents import Content, contents_of
from stillroom.core.drinks import Pour, pour
from stillroom.core.extracts import Fold, fold_of
from stillroom.core.mixtures import Mixture, mix, spirit, water
from stillroom.core.musts import must_of
from stillroom.core.recipe import Recipe
from stillroom.core.spirit_density import WATER_DENSITY

_NEGLIGIBLE = 0.5  # % vol: below it nothing is said
_TEASPOON = ("a teaspoon", Fraction(5))
# A single measure of spirits, a small glass of wine: NHS, alcohol units (from memory).
_SPIRIT_GLASS = ("a small glass", Fraction(25))
_WINE_GLASS = ("a small glass of wine", Fraction(125))
_LEAST_UNITS = 0.05  # what would be shown as 0.0 says nothing


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

    @property
    def text(self) -> str:
        """Say it no finer than it is known: whole percents, but halves as a must gives them.

        >>> Strength(33.94, 32.0, 34.5, "", "", "").text
        'about 34 % vol'
        """
        halves = self.abv_percent * 2
        shown = halves / 2 if halves == round(halves) else round(self.abv_percent)
        return f"about {shown:g} % vol"


def strength_of(recipe: Recipe) -> Strength | None:
    """Return the strength of the finished recipe, or None when there is no alcohol to speak of.

    Baked, boiled and set things are left out: alcohol leaves them by as much as nobody can say.
    """
    held = contents_of(recipe)
    if recipe.kind.name == "ferment" and not any(abv_of(content) for content in held):
        return _ferment(recipe, held)
    if recipe.kind.name not in ("infusion", "ferment"):
        return None
    likely = mix(_parts(held, fruit_share=1.0))
    if likely.abv < _NEGLIGIBLE:
        return None
    least_water = mix(_parts(held, fruit_share=0.5))
    doubt = "kitchen measures are good to a few percent"
    if any(content.fresh and not content.dissolves for content in held):
        doubt = "fruit differs in juice and gives it up slowly"
    # A bottle's own strength may be off by 0.3 % vol (Reg. (EU) 1169/2011 Annex XII), the volumes
    # of the kitchen by a percent or two.
    low = likely.abv * 0.97
    high = least_water.abv * 1.03
    return Strength(
        abv_percent=likely.abv,
        low=low,
        high=high,
        how="spirit, water, juice and sugar put together by weight, contraction included",
        source=spirit_density.SOURCE,
        uncertainty=f"Between {low:.0f} and {high:.0f} % vol: {doubt}.",
        pours=_pours(recipe, likely.abv),
    )


def abv_of(content: Content) -> float:
    """Return the % vol of a liquid ingredient: its own, or as it is usually sold; 0 for none."""
    if not content.liquid:  # wine yeast is sold by the strength it stands, and is no wine
        return 0.0
    own = content.ingredient.strength
    usual = content.staple.strength if content.staple else None
    found = own if own is not None else usual
    return float(found) if found is not None else 0.0


def _parts(held: tuple[Content, ...], fruit_share: float) -> list[Mixture]:
    return [_part(content, fruit_share) for content in held]


def _part(content: Content, fruit_share: float) -> Mixture:
    abv = abv_of(content)
    if content.liquid and abv:
        return spirit(float(content.volume_ml), abv)
    sugar = float(content.grams_of("sugar"))
    if content.liquid:
        own_water = float(content.grams_of("water"))
        if not own_water and not sugar:  # nothing known: as if it were water
            return water(float(content.volume_ml))
        return Mixture(0.0, own_water, sugar)
    if content.dissolves:
        return Mixture(0.0, float(content.grams_of("water")), sugar)
    if content.fresh:
        return Mixture(0.0, float(content.grams_of("water")) * fruit_share, sugar * fruit_share)
    return Mixture(0.0, 0.0)


def _ferment(recipe: Recipe, held: tuple[Content, ...]) -> Strength | None:
    sugar = sum(float(content.grams_of("sugar")) for content in held)
    mass = sum(
        float(content.grams or Fraction(0)) or float(content.volume_ml) * WATER_DENSITY
        for content in held
        if content.liquid or content.dissolves
    )
    if not sugar or not mass or 100 * sugar / mass > 65:
        return None
    must = must_of(sugar, mass)
    if must.value < _NEGLIGIBLE:
        return None
    return Strength(
        must.value,
        must.low,
        must.high,
        must.rule,
        must.source,
        must.uncertainty,
        _pours(recipe, must.value),
    )


def _pours(recipe: Recipe, abv: float) -> tuple[Pour, ...]:
    glass = _WINE_GLASS if recipe.kind.name == "ferment" else _SPIRIT_GLASS
    found = [pour(name, volume, abv) for name, volume in (_TEASPOON, glass)]
    first = recipe.filled_into[0]
    if first.size and first.size.unit in ("ml", "cl", "l"):
        volume = first.size.middle * {"ml": 1, "cl": 10, "l": 1000}[first.size.unit]
        found.append(pour(f"a {first.name} of {int(volume)} ml", volume, abv))
    return tuple(
        one for one in found if one.uk_units >= _LEAST_UNITS and one.us_drinks >= _LEAST_UNITS
    )


def fold_of_recipe(recipe: Recipe) -> Fold | None:
    """Return the vanilla fold of an infusion of pods by weight, or None when it is none.

    The extract is taken as the spirit poured in; pods by count use the weight of one.
    """
    held = contents_of(recipe)
    pods = [c for c in held if "vanilla" in c.ingredient.item.lower() and not c.liquid]
    spirits = [c for c in held if abv_of(c) >= 15]
    if recipe.kind.name != "infusion" or not spirits:
        return None
    grams = sum((c.grams or Fraction(0) for c in pods), Fraction(0))
    volume = sum((c.volume_ml for c in spirits), Fraction(0))
    others = [c for c in held if c not in pods and c not in spirits]
    if not grams or others:
        return None
    return fold_of(grams, volume, abv_of(spirits[0]))


def bottled_ml(recipe: Recipe) -> Fraction | None:
    """Return the ml to bottle of one batch: reckoned where it is strained, else as stated."""
    reckoned = estimate_yield(recipe)
    return reckoned.volume_ml if reckoned else makes_ml(recipe)
