"""One thing that somebody avoids, and whether a food holds it.

Leaves out by which words it is said: avoiding.py and sentences.py.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from stillroom.core.larder.staple import ANIMAL_BUT_VEGETARIAN, NOT_ANIMAL, Staple
from stillroom.core.words.patterns import clause_regex, late_regex
from stillroom.core.words.plurals import singular

Held = Literal["contains", "may contain", "free"]
Diet = Literal["", "alcohol", "vegan", "vegetarian", "no meat", "source known"]
_OF_THE_SEA = frozenset({"fish", "crustacean", "mollusc"})
# where the food of each diet may come from
EATEN: Mapping[Diet, frozenset[str]] = {
    "vegan": NOT_ANIMAL,
    "vegetarian": NOT_ANIMAL | ANIMAL_BUT_VEGETARIAN,
    "no meat": NOT_ANIMAL | ANIMAL_BUT_VEGETARIAN | _OF_THE_SEA | {"calf rennet"},
    # meat, gelatine, rennet and insect colours: whose, and how it was slaughtered, nobody says
    "source known": NOT_ANIMAL | ANIMAL_BUT_VEGETARIAN | _OF_THE_SEA,
}
# what a bought thing's own name says of it, for whoever eats so or more strictly
_SAID_VEGAN = clause_regex(r"\bvegan\b|\bplant[- ]based\b", re.IGNORECASE)
_SAID_VEGETARIAN = late_regex(r"\bvegetarian\b", re.IGNORECASE)
_SAVOURY = frozenset({"meat", "cured-meat", "stock", "fish", "cheese", "fat"})
_FATS = frozenset({"fat", "cheese", "butter"})
# what a bottle of oil of no named plant may be pressed from
_OILS = (
    *("sunflower oil", "rapeseed oil", "canola oil", "soya oil", "soybean oil", "maize oil"),
    *("corn oil", "palm oil", "coconut oil", "peanut oil", "groundnut oil", "olive oil"),
    *("sesame oil", "rice bran oil", "grapeseed oil", "cottonseed oil", "mustard oil"),
)
# the allergens among them, and those of nuts that are pressed as well
IN_OILS = frozenset(
    {"soya", "peanut", "sesame", "mustard", "nuts", "other-nuts", "almond", "hazelnut", "walnut"}
    | {"macadamia", "pistachio", "pecan", "cashew", "brazil-nut", "pine-nut"}
)
# whole foods of which a colouring is made; of any other it holds none
_COLOURS = late_regex(
    r"beet|paprika|pepper|chil|turmeric|curcuma|carrot|grape|elder|hibiscus|saffron|spirulina"
    r"|seaweed|alga|tomato|annatto|cochineal|carmine|shellac|colou?r|gelatin|nightshade|potato"
    r"|spinach|nettle|berr|currant|caramel|sugar|maize|corn|glucose|syrup|additive|\be ?\d|cherry",
    re.IGNORECASE,
)


_MEATS = (
    r"(?:steaks?|sausages?|bacon|burgers?|mince|ham|salami|chorizo|meatballs?|beef|pork|veal|ox)"
)
_PLANT = (
    r"(?:veggie|vegetable|tofu|soya|seitan|cauliflower|mushroom|coconut|celeriac|aubergine)[- ]"
)
# what a thing is called that stands for meat; a "mushroom bacon quiche" and a "vegetable beef stew"
# hold plants beside meat
_INSTEAD_OF_MEAT = late_regex(
    r"\b(?:(?:vegan|vegetarian|plant[- ]based|meat[- ]free)[- ]\w+"
    rf"|veggie[- ](?!{_MEATS}\b)\w+"
    rf"|{_PLANT}(?:stock|shortening|rennet|suet|lard|gelatine?)\b|(?:coconut|soya)[- ]meat\b"
    rf"|{_PLANT}(?!beef|pork|veal|ox){_MEATS}"
    r"(?= *(?:slices|strips|rashers|pieces|chunks)? *(?:$|[^\w\s-])))",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class Avoided:
    """One thing avoided: the foods of a family, or one food; `ask` says why it is not understood.

    `named` and `perhaps` match words in the name of a food that holds it, or that may; `meant` is
    the family it was taken for. `of` are the rules it is made of ("halal": alcohol, pork).
    Foods of `but` hold none of it, those of `little` a trace; where `traces` is false, what may be
    there in traces does no harm; `savoury` is set where no meat, fish, fat or stock ever
    holds it ("none"), or those do but fats and cheeses of plants may ("only those of plants");
    `packets` match the names of the bought foods that alone may hold it without saying so.
    `cautions` are the safety box's rules that speak to it; `means`, `cannot` and `source` are what
    a page says of it. `of_somebody` is set where the word says more than any food beside it
    ("Jain"), `of_the_body` where it is an illness unless it is said as a food ("heart", but
    "no heart"), `why` where it is only the reason for them ("migraine"); `allowed` is what was
    said to be allowed again, and is left out all the same.
    """

    word: str
    allergens: frozenset[str] = frozenset()
    diet: Diet = ""
    tags: frozenset[str] = frozenset()
    animals: frozenset[str] = frozenset()
    named: re.Pattern[str] | None = None
    perhaps: re.Pattern[str] | None = None
    perhaps_tags: frozenset[str] = frozenset()
    perhaps_animals: frozenset[str] = frozenset()
    foods: tuple[Staple, ...] = ()
    perhaps_foods: frozenset[str] = frozenset()
    ask: str = ""
    meant: str = ""
    told: str = ""
    of: tuple[Avoided, ...] = ()
    but: frozenset[str] = frozenset()
    little: frozenset[str] = frozenset()
    traces: bool = True
    savoury: str = ""
    packets: re.Pattern[str] | None = None
    cautions: frozenset[str] = frozenset()
    means: str = ""
    cannot: str = ""
    source: str = ""
    of_somebody: bool = False
    of_the_body: bool = False
    why: bool = False
    allowed: tuple[str, ...] = ()

    @property
    def said(self) -> str:
        """The word with what it was taken for: "milk (lactose intolerant)", of a sentence all."""
        name = self.told or self.meant or self._each_said
        word = self.word.strip().lower()
        same = name in ("", word, singular(word)) or singular(name) == singular(word)
        return self.word if same else f"{name} ({self.word})"

    @property
    def _each_said(self) -> str:
        """What a sentence was read as; "" where it says no more than that itself."""
        each = list(dict.fromkeys(one.told or one.meant or one._each_said for one in self.of))
        names = ", ".join(each)
        plain = len(self.word.split()) <= len(names.split()) + 2
        return "" if plain and all(one in self.word.lower() for one in each) else names

    @property
    def is_ingredient(self) -> bool:
        """Whether foods themselves are looked at, beside allergens and the animals they are of."""
        return bool(self.tags or self.animals or self.named or self.foods)

    def packet_may_hold(self, food: Staple) -> bool:
        """Whether of a food of which only the packet tells all it is not known to be free of it.

        No sausage and no stock cube holds coffee or coconut, whatever its packet says; a fat or a
        cheese of plants may well be coconut; a chocolate bar hides no grapefruit.
        """
        if self.packets and not self.packets.search(food.name):
            return False
        if is_pressed(food):
            return any(self.said_in(oil) != "free" for oil in _OILS) or self._is_pressed_for_oil
        if "colouring" in food.tags and (self.savoury or self.foods):
            return bool(_COLOURS.search(f"{self.word} {self.meant}"))
        if "of plants" in self.savoury and food.tags & _FATS and "milk" not in food.animal:
            return True
        return not (self.savoury and food.tags & _SAVOURY)

    @property
    def _is_pressed_for_oil(self) -> bool:
        names = [food.name for food in self.foods]
        return any(singular(name) in oil or name in oil for name in names for oil in _OILS)

    def held_by(self, food: Staple) -> Held:
        """Say whether a food is, holds or may hold it, by the food's own facts and its name."""
        if food.name in self.but or food.kind_of in self.but:
            return "free"
        words = ", ".join((food.name, *food.parts))
        if food in self.foods or self.tags & food.tags or self.animals & set(food.animal):
            return "contains"
        if food.kind_of and any(food.kind_of == one.name for one in self.foods):
            return "contains"
        # "vegetable suet" is called after what it stands for; of a "beef stew" nobody knows it
        called_after = (
            self._is_meat() and set(food.animal) <= NOT_ANIMAL and food.vegetarian is True
        )
        if not called_after and (said := self.said_in(words)) != "free":
            return said
        perhaps = self.perhaps_tags & food.tags or self.perhaps_animals & set(food.animal)
        return "may contain" if perhaps or food.name in self.perhaps_foods else "free"

    def _is_meat(self) -> bool:
        return "gelatine" in self.animals | self.perhaps_animals

    def measures(self, food: Staple, names: frozenset[str]) -> Held:
        """Say whether a food holds one of these allergens, as much as matters to whoever avoids it.

        >>> from stillroom.core.allergens.avoiding import read_phrase
        >>> from stillroom.core.larder.food_reading import read_food
        >>> lactose, milk = read_phrase("lactose"), frozenset({"milk"})
        >>> [lactose.measures(read_food(name).food, milk) for name in ("cream", "butter", "ghee")]
        ['contains', 'may contain', 'free']
        """
        name = food.name if food.name in self.but | self.little else food.kind_of
        if name in self.but or not names & {*food.allergens, *food.may_contain}:
            return "free"
        if not names & set(food.allergens):
            return "may contain" if self.traces else "free"
        return "may contain" if name in self.little else "contains"

    def said_in(self, words: str) -> Held:
        """Say whether words name it, or what may hold it; "tofu steaks" name no beef."""
        if self._is_meat():
            words = _INSTEAD_OF_MEAT.sub("", words)
        if self.named and self.named.search(words.lower()):
            return "contains"
        if self.perhaps and self.perhaps.search(words.lower()):
            return "may contain"
        return "free"


def is_pressed(food: Staple) -> bool:
    """Whether a food is oil of no named plant: its bottle tells of which, and nothing else."""
    return "vegetable oil" in (food.name, food.kind_of)


def is_said_to_keep(words: str, diet: Diet) -> bool:
    """Whether the name of a bought thing says that it keeps a diet.

    >>> [is_said_to_keep(name, "vegan") for name in ("vegan dark chocolate", "vegetarian suet")]
    [True, False]
    """
    if diet == "alcohol":
        return False
    plants = bool(_SAID_VEGAN.search(words))
    return plants or (diet != "vegan" and bool(_SAID_VEGETARIAN.search(words)))
