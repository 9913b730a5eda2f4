"""Sugar in a preserve against the published minimum, by the weight of what is finished.

Sources: at least 60 % soluble dry matter, Jam and Similar Products (England) Regulations 2003;
Codex CXS 296-2009, section 3.2: 60 to 65 % (from memory). These are rules for what is sold as jam;
for a cook they say whether it keeps. What is no jam keeps by other means and is left out: chutneys,
curds, pickles, cordials, what is dried, salted or made of milk or meat.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.amounts.units import convert, size_of
from stillroom.core.batch.bottling import makes_ml
from stillroom.core.batch.contents import Content, contents_of, figure
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.joining import join_and
from stillroom.core.words.patterns import late_regex

SOURCE = "Jam and Similar Products (England) Regulations 2003"
LEAST_PERCENT = 60
_JAM = late_regex(
    r"\b(?:jams?|jell(?:y|ies)|marmalades?|preserves|conserves?|fruit (?:spread|paste)|quince paste"
    r"|(?:damson|quince|fruit|plum|apple) cheese|confitures?|gelées?|marmelades?|gelei"
    r"|mermeladas?|jaleas?|confituras?|(?:dulce|carne) de membrillo|marmellat[ae]|confettur[ae]"
    r"|(?!hummus\b)\w*(?:konfitüren?|marmeladen?|gelees?|aufstrich|mus|powidl|sylt|marmelad|gelé))\b",
    re.IGNORECASE,
)
_OF_A_JAR = late_regex(r"\b(?:jam|jelly) (?=jars?\b|babies|beans?\b)", re.IGNORECASE)
_NO_JAM = frozenset({"vinegar", "meat", "fish", "shellfish", "dairy", "cheese"})
_SWEET = frozenset({"beverage", "syrup", "sugar", "fruit", "dried-fruit", "confectionery", "jam"})
_SWEET_FROM = 5  # g in 100 g
_LITTLE = Fraction(2, 100)  # of what is finished


@dataclass(frozen=True)
class SolubleSolids:
    """Sugar in 100 g of what is finished, and whether it reaches the published least."""

    percent: float
    reaches: bool
    text: str
    source: str = SOURCE
    uncertainty: str = (
        "Reckoned from the sugars of the ingredients and the stated yield, so as good as that "
        "yield; a refractometer at 20 °C measures it."
    )


def solids_of(recipe: Recipe) -> SolubleSolids | None:
    """Return the soluble solids of a preserve, or None for other kinds and unknown yields.

    What is strained out of a jelly is taken to leave its sugar behind in the juice.
    """
    if not recipe.kind.is_("put up") or not _is_called_jam(recipe):
        return None
    held = contents_of(recipe)
    finished = finished_g(recipe)
    if any(_keeps_otherwise(content) for content in held):
        return None
    sugar = sum((content.grams_of("sugar") for content in held), Fraction(0))
    if not finished or not sugar:
        return None
    percent = min(float(100 * sugar / finished), 100.0)
    hidden = [content.ingredient.item for content in held if _hides_sugar(content, finished)]
    if hidden and percent < LEAST_PERCENT:
        named = join_and(list(dict.fromkeys(hidden)))
        text = f"at least {percent:.0f} % sugar; how much more is in the {named} is not known"
        return SolubleSolids(percent, reaches=False, text=text)
    reaches = percent >= LEAST_PERCENT
    how = "reaches" if reaches else "stays below"
    text = (
        f"about {percent:.0f} % sugar, which {how} the {LEAST_PERCENT} % asked of jam that is sold"
    )
    return SolubleSolids(percent, reaches, text)


def _hides_sugar(content: Content, finished: Fraction) -> bool:
    """Tell whether so much of it goes in, and nobody knows how sweet it is or how much that is."""
    staple = content.staple
    if staple and not content.liquid and content.grams is None and not staple.composition:
        return bool(staple.tags & _SWEET)
    sugary = staple and staple.composition and (staple.composition.sugar or 0) > _SWEET_FROM
    if content.grams is None and not content.volume_ml:
        return bool(sugary)
    known = staple is not None and staple.composition is not None
    weight = content.grams or content.volume_ml
    sweet = staple is None or bool(staple.tags & _SWEET)
    return not known and sweet and weight > finished * _LITTLE


def _is_called_jam(recipe: Recipe) -> bool:
    """Whether its title or its kind says that it is a jam, a jelly or the like.

    >>> from types import SimpleNamespace
    >>> said = lambda title: SimpleNamespace(title=title, kind=SimpleNamespace(spoken="preserve"))
    >>> [_is_called_jam(said(title)) for title in ("Zwetschgenmus", "Jam jar salad", "Gherkins")]
    [True, False, False]
    """
    named = f"{recipe.title} . {recipe.kind.spoken}"
    return bool(_JAM.search(_OF_A_JAR.sub(" ", named)))


def _keeps_otherwise(content: Content) -> bool:
    """Whether vinegar, eggs, milk or meat make it no jam, to which the rule does not speak."""
    staple = content.staple
    if staple is None:
        return "vinegar" in content.ingredient.item.lower()
    return bool(staple.tags & _NO_JAM) or "egg" in staple.animal


def finished_g(recipe: Recipe) -> Fraction | None:
    """Return the grams one batch of a preserve comes to, or None when nobody says."""
    total = recipe.makes.total
    if size_of(total.unit) == "mass":
        return convert(total.middle, total.unit, "g")
    volume = makes_ml(recipe)
    return volume * figure("finished_density", recipe.kind.name) if volume else None
