"""A staple: one food or material, and what is known of it, each figure with its source."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from stillroom.core.amounts.units import counted_nouns, nouns_of_several
from stillroom.core.larder.acidity import Acidity, acidity_by_tags
from stillroom.core.words.nearest import did_you_mean

FIGURES = ("density", "each", "composition", "solid_density", "soak_uptake", "strength")
SOURCED = (*FIGURES, "acidity")
KEYS = frozenset(
    {
        "also",
        "kinds",
        "section",
        "allergens",
        "may_contain",
        "allergen_source",
        "from",
        "vegan",
        "tags",
    }
    | {"parts", "note", *SOURCED}
)
GLUTEN_CEREALS = frozenset({"wheat", "barley", "rye", "oats"})
ANIMAL_BUT_VEGETARIAN = frozenset({"milk", "egg", "honey", "beeswax", "wool"})
NOT_ANIMAL = frozenset({"plant", "mineral", "fungus"})
# what holds one of these allergens is of that animal
_ANIMAL_OF: Mapping[str, str] = {
    "milk": "milk",
    "eggs": "egg",
    "fish": "fish",
    "crustaceans": "crustacean",
    "molluscs": "mollusc",
}
# what such foods may hold is dust or catch beside them, and nothing that a maker put in
_TRACES_ONLY = frozenset({"seaweed", "spirit"})


@dataclass(frozen=True)
class Composition:
    """Grams in 100 g; None where no source gives a figure."""

    water: Fraction | None = None
    sugar: Fraction | None = None
    alcohol: Fraction | None = None
    acid: Fraction | None = None
    fat: Fraction | None = None


@dataclass(frozen=True)
class Staple:
    """One thing a recipe may use. Every figure has its source under its own name in `sources`.

    `density` in g per ml as it lies in the spoon; `solid_density` in g per ml without the air
    between pieces; `each_g` in g of what `each_of` says ("one clove"); `soak_uptake` in ml of
    liquid kept back per g; `strength` in % vol as usually sold. `acidity` is None when it is not
    known. `animal` names where it comes from. `parts` opens a compound, in
    descending order. `vegan_note` is "" unless only the maker can tell. `kind_of` names the food
    whose facts it has, when it has none of its own.
    """

    name: str
    section: str
    also: tuple[str, ...] = ()
    kind_of: str = ""
    density: Fraction | None = None
    solid_density: Fraction | None = None
    each_g: Fraction | None = None
    each_of: str = ""
    composition: Composition | None = None
    strength: Fraction | None = None
    soak_uptake: Fraction | None = None
    allergens: tuple[str, ...] = ()
    may_contain: tuple[str, ...] = ()
    animal: tuple[str, ...] = ("plant",)
    vegan_note: str = ""
    tags: frozenset[str] = frozenset()
    acidity: Acidity | None = None
    parts: tuple[str, ...] = ()
    note: str = ""
    sources: Mapping[str, str] = field(default_factory=dict)

    def __hash__(self) -> int:
        """Return the sum of its name: two foods of one name are told apart by what they are."""
        return hash(self.name)

    def one_weighs(self, noun: str = "") -> Fraction | None:
        """Return the grams of one as it is counted; None where its figure is of something else.

        A clove of garlic has a figure: a bulb has none, nor has a bunch, a bag or a slice.
        """
        one = counted_nouns().get(noun, (noun, ""))[0]
        said = self.each_of.replace(",", " ").split()
        if one in said:
            return self.each_g
        # "2 garlic bulbs" are a kind of garlic, whose figure is of a clove
        last = self.name.rpartition(" ")[2]
        several = last in nouns_of_several() and last not in said and bool(self.kind_of)
        many = several or one in nouns_of_several() or "slice" in said
        return None if many else self.each_g

    @property
    def gluten(self) -> str:
        """Say "contains", "may contain" or "none"."""
        if GLUTEN_CEREALS & set(self.allergens):
            return "contains"
        return "may contain" if GLUTEN_CEREALS & set(self.may_contain) else "none"

    @property
    def vegan(self) -> bool | None:
        """Whether nothing of it is from an animal; None when only the maker can tell."""
        return self.comes_from(NOT_ANIMAL)

    @property
    def vegetarian(self) -> bool | None:
        """Whether no animal was killed for it; None when only the maker can tell."""
        return self.comes_from(NOT_ANIMAL | ANIMAL_BUT_VEGETARIAN)

    def comes_from(self, allowed: Collection[str]) -> bool | None:
        """Whether all of it is of these origins; None when only the maker can tell.

        A bought food that some makers put milk, egg or fish in (dark chocolate, bread, marzipan) is
        not known until its packet is read.
        """
        if not {*self.animal, *_animals(self.allergens)} <= set(allowed):
            return False
        perhaps = set() if self._may_hold_traces_only else _animals(self.may_contain)
        return True if not self.vegan_note and perhaps <= set(allowed) else None

    @property
    def _may_hold_traces_only(self) -> bool:
        powder = "cacao" in self.tags and not self.tags & {"chocolate", "confectionery", "liqueur"}
        return powder or bool(_TRACES_ONLY & self.tags)


def _animals(allergens: Collection[str]) -> set[str]:
    return {_ANIMAL_OF[name] for name in allergens if name in _ANIMAL_OF}


def read_staple(file: str, name: str, row: Mapping[str, Any], section: str) -> Staple:
    """Read one row of a staples file; raises ValueError for a key that means nothing here."""
    for key in row:
        if key not in KEYS:
            raise ValueError(f'{file}: {name}: "{key}" is no key. {did_you_mean(key, KEYS)}')
    sources: dict[str, str] = {key: row[key]["source"] for key in SOURCED if key in row}
    if "allergen_source" in row:
        sources["allergens"] = row["allergen_source"]
    composition = _read_composition(row.get("composition"))
    tags = frozenset(row.get("tags", ()))
    own = row["acidity"]["is"] if "acidity" in row else None
    return Staple(
        name=name,
        section=row.get("section", section),
        also=tuple(row.get("also", ())),
        density=_figure(row, "density", "g_per_ml"),
        solid_density=_figure(row, "solid_density", "g_per_ml"),
        each_g=_figure(row, "each", "g"),
        each_of=row["each"].get("of", "") if "each" in row else "",
        composition=composition,
        strength=_figure(row, "strength", "abv"),
        soak_uptake=_figure(row, "soak_uptake", "ml_per_g"),
        allergens=tuple(row.get("allergens", ())),
        may_contain=tuple(row.get("may_contain", ())),
        animal=tuple(row.get("from", ("plant",))),
        vegan_note=row.get("vegan", ""),
        tags=tags,
        acidity=own or acidity_by_tags(tags, composition.water if composition else None),
        parts=tuple(row.get("parts", ())),
        note=row.get("note", ""),
        sources=sources,
    )


def _figure(row: Mapping[str, Any], key: str, unit: str) -> Fraction | None:
    return Fraction(str(row[key][unit])) if key in row else None


def _read_composition(row: Mapping[str, Any] | None) -> Composition | None:
    if row is None:
        return None
    return Composition(
        **{key: Fraction(str(value)) for key, value in row.items() if key != "source"}
    )
