"""Whose list of allergens a label follows, what each is called there, and the words around them.

Reads staples/allergens.yml and staples/allergen_laws.yml, which name their sources. Leaves out what
a recipe holds: allergens.py.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from typing import Literal

from stillroom.core.words.data_files import read_data

List = Literal["eu", "us", "ca", "anz", "other"]
LISTS: tuple[List, ...] = ("eu", "us", "ca", "anz")


@dataclass(frozen=True)
class Allergen:
    """One allergen: its id, how a label says it, its heading in each law ("" where it has none).

    `us_say` is its name in the United States, `ca_say` and `fr` are its names in Canada, `anz_say`
    the required one in Australia and New Zealand, where they differ.
    """

    name: str
    say: str
    eu: str = ""
    us: str = ""
    ca: str = ""
    anz: str = ""
    us_say: str = ""
    ca_say: str = ""
    anz_say: str = ""
    fr: str = ""

    def heading(self, law: List) -> str:
        """Return its heading in the law's list, "" when that law does not list it."""
        if law == "other":
            return self.eu or self.ca
        return {"eu": self.eu, "us": self.us, "ca": self.ca, "anz": self.anz}[law]


@dataclass(frozen=True)
class Said:
    """A piece of the sentence that tells of allergens; the names are to be set strongly."""

    text: str
    strong: bool = False


@cache
def all_allergens() -> dict[str, Allergen]:
    """Return every allergen by id."""
    return {name: Allergen(name, **row) for name, row in read_data("allergens.yml").items()}


@cache
def law_of(country: str) -> List:
    """Return whose list a country's book uses.

    >>> law_of("GB"), law_of("US"), law_of("CA"), law_of("NZ"), law_of("JP")
    ('eu', 'us', 'ca', 'anz', 'other')
    """
    for law in LISTS:
        if country in read_data("allergen_laws.yml")[law]["countries"]:
            return law
    return "other"


def list_used(law: List) -> str:
    """Say which list it is, by its law."""
    return str(read_data("allergen_laws.yml")[law]["says"])


def say_allergen(allergen: Allergen, law: List) -> str:
    """Name an allergen as its law wants it, with its heading where they differ.

    >>> wheat, almond = all_allergens()["wheat"], all_allergens()["almond"]
    >>> [say_allergen(wheat, law) for law in ("eu", "us", "ca", "anz")]
    ['gluten (wheat)', 'wheat', 'wheat / blé', 'wheat, gluten']
    >>> [say_allergen(almond, law) for law in ("eu", "us", "ca", "anz")]
    ['nuts (almond)', 'tree nuts (almond)', 'almonds / amandes', 'almond']
    """
    if law == "ca":
        return f"{allergen.ca_say or allergen.say} / {allergen.fr}"
    if law == "anz":
        return allergen.anz_say or allergen.say
    if law == "us" and allergen.us_say:
        return allergen.us_say
    heading = allergen.heading(law)
    if heading in ("nuts", "tree nuts") and allergen.name not in ("nuts", "other-nuts"):
        return f"{heading} ({allergen.say})"
    if heading == "cereals containing gluten":
        return f"gluten ({allergen.say})"
    return allergen.say


def say_in_list(allergen: Allergen, law: List) -> str:
    """Name an allergen as it stands in the list of contents: the cereal and the nut by themselves.

    >>> [say_in_list(all_allergens()["soya"], law) for law in ("eu", "us", "ca", "anz")]
    ['soya', 'soy', 'soy', 'soy']
    """
    if law in ("us", "ca", "anz") and allergen.name == "soya":
        return "soy"
    return allergen.say


def _word(law: List, name: str) -> str:
    laws = read_data("allergen_laws.yml")
    return str(laws[law].get(name, laws["words"][name]))


def say_of_allergens(
    law: List,
    contains: Iterable[str],
    may_contain: Iterable[str],
    unknown: Iterable[str],
    packets: Iterable[str] = (),
) -> tuple[Said, ...]:
    """Return the sentence that stands where a label tells of allergens, in pieces; none if empty.

    >>> pieces = say_of_allergens("eu", ["milk"], [], ["moon dust"])
    >>> "".join(piece.text for piece in pieces)
    'Contains milk; not known: moon dust – its allergens could not be checked'
    """
    said: list[Said] = []
    groups = {"contains": contains, "may_contain": may_contain}
    for name, words in (groups | {"packet": packets, "unknown": unknown}).items():
        names = tuple(words)
        if not names:
            continue
        lead = _word(law, name)
        said.append(Said(f"; {lead[:1].lower()}{lead[1:]}" if said else lead))
        for place, one in enumerate(names):
            said += [Said(", ")] if place else []
            said.append(Said(one, strong=True))
        said += [Said(_word(law, "unchecked"))] if name == "unknown" else []
    return tuple(said)
