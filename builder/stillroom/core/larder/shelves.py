"""The larder itself: foods by name, the book's own before all others.

A `Larder` is frozen: two books in one process each hold their own. Leaves out how a phrase is read
into names: food_reading.py.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cache, cached_property, lru_cache
from typing import cast

from stillroom.core.larder.acidity import Acidity, acidity_by_tags
from stillroom.core.larder.data import read_larder_data
from stillroom.core.larder.index import load_index, split_list
from stillroom.core.larder.index_file import LANGUAGES
from stillroom.core.larder.staple import Staple, read_staple
from stillroom.core.larder.words import normal_form
from stillroom.core.words.patterns import late_regex

TABLE_SECTION = "other"
_NORWEGIAN = {"no": "nb", "nn": "nb"}
_UNDOTTED = late_regex(r"([aou])e(?![aeiou])")
_UNSAID = "what it is made of is not stated"


@cache
def staple_named(name: str) -> Staple:
    """Return the staple of exactly this name; raises KeyError."""
    row = load_index()["rows"][name]
    if isinstance(row, str):
        return replace(staple_named(row), name=name, also=(), kind_of=row)
    if isinstance(row, list):
        return _from_table(name, row)
    facts = {key: value for key, value in row.items() if key not in ("file", "section")}
    return read_staple(row["file"], name, facts, row["section"])


def _from_table(name: str, row: list[str]) -> Staple:
    also, animal, allergens, may_contain, tags, parts, acidity, source, like = row[1:]
    # figures of the hand-made staple that bears this name as an alias; its facts are its own
    base = staple_named(like) if like else Staple(name, TABLE_SECTION)
    own = frozenset(split_list(tags)) | base.tags
    said = cast("Acidity | None", acidity or None)
    # an origin that is not known is asked of the packet; it is not an animal
    origins = split_list(animal)
    known = tuple(origin for origin in origins if origin != "unknown")
    return replace(
        base,
        name=name,
        also=tuple(split_list(also)),
        allergens=tuple(split_list(allergens)),
        may_contain=tuple(split_list(may_contain)),
        animal=known or ("plant",),
        vegan_note="" if known == tuple(origins) and known else _UNSAID,
        tags=own,
        acidity=said or base.acidity or acidity_by_tags(own, None),
        parts=tuple(split_list(parts)),
        sources={**base.sources, "allergens": source},
    )


@lru_cache(maxsize=4096)  # each name that a phrase holds is asked
def is_hand_made(food: Staple) -> bool:
    """Whether a food is one of the staples with figures of their own, or a kind of one."""
    rows = load_index()["rows"]
    row = rows.get(food.kind_of or food.name)
    return isinstance(row, dict) and food.name in rows and staple_named(food.name) is food


@cache
def all_staples() -> dict[str, Staple]:
    """Return every staple by name, some thousands: ask `staples_tagged` for a few of them."""
    return {name: staple_named(name) for name in load_index()["rows"]}


@cache
def staples_tagged(tag: str) -> tuple[Staple, ...]:
    """Return the staples that carry a tag, without reading the rest."""
    names = load_index()["tagged"]
    return tuple(staple_named(name) for name in names.get(tag, ()))


@lru_cache(maxsize=2048)
def is_named_elsewhere(item: str) -> bool:
    """Whether the end of an item is a food's name in another language and none in English.

    >>> [is_named_elsewhere(item) for item in ("Eigelb", "æggeblomme", "large eggs", "oddments")]
    [True, True, False, False]
    """
    index = load_index()
    words = normal_form(item).split()
    for start in range(len(words)):
        form = " ".join(words[start:])
        if form in index["names"]:
            return False
        if any(form in table for table in index["foreign"].values()):
            return True
        if any(form in names_elsewhere(one) for one in read_larder_data("names_elsewhere.yml")):
            return True
    return False


_VESSELS = frozenset({"pan"})
"""What is food in another language, and in English holds it: Spanish bread."""


@dataclass(frozen=True, eq=True)
class Larder:
    """Every food that one book knows: its own (`own`) and all that the program brings.

    `language` is the book's ("de", or "de_AT"): of foods that two languages call alike, its own
    is meant.
    """

    own: tuple[Staple, ...] = ()
    language: str = "en"

    @cached_property
    def _hash(self) -> int:
        return hash((self.own, self.language))

    def __hash__(self) -> int:
        return self._hash

    @cached_property
    def _own_names(self) -> dict[str, Staple]:
        named: dict[str, Staple] = {}
        for staple in self.own:
            named.setdefault(normal_form(staple.name), staple)
        for staple in self.own:
            for other in staple.also:
                named.setdefault(normal_form(other), staple)
        return named

    def named(self, form: str) -> Staple | None:
        """Return the food of exactly this name in its normal form (words.py), or None.

        In a French book "citron" is a lemon; elsewhere the English name goes first. In a book of
        the United States "apple cider" is juice.
        """
        own = self._own_names.get(form)
        if own is not None:
            return own
        if self.language == "en_US" and form in _american_names():
            return staple_named(_american_names()[form])
        index = load_index()
        language = self.language.partition("_")[0]
        if language == "en" and form in _VESSELS:
            return None
        first = names_in(language)
        # a name of "" in its own language stands for several foods, and for none of another's
        known = first[form] if form in first else index["names"].get(form) or _foreign(form)
        if not known and language == "de":  # typed without dots: "Kuemmel", "Nuesse"
            known = first.get(_UNDOTTED.sub(r"\1", form))
        if not known and language == "nl" and form.endswith("je"):  # "sjalotje", "wortelt je"
            small = (form.removesuffix(end) for end in ("etje", "tje", "pje", "je"))
            known = next((first[one] for one in small if first.get(one)), None)
        return staple_named(known) if known else None

    def is_several(self, words: Sequence[str]) -> bool:
        """Whether a name stands for several foods in the book's language: German "Paprika"."""
        language = self.language.partition("_")[0]
        table = names_in(language)
        form = " ".join(words)
        return form not in self._own_names and table.get(form) == ""

    def names(self) -> Iterable[str]:
        """Return every English name and the book's own, in their normal form."""
        yield from self._own_names
        yield from load_index()["names"]


@cache
def _american_names() -> dict[str, str]:
    rows: dict[str, str] = read_larder_data("phrases.yml")["american_names"]
    return rows


@cache
def names_in(language: str) -> Mapping[str, str]:
    """Return what a language calls foods in books in it alone; "" for what is several foods."""
    return {**load_index()["foreign"].get(language, {}), **names_elsewhere(language)}


@cache
def names_elsewhere(language: str) -> dict[str, str]:
    """Return the names that only a language's own books give; "" for what is several foods."""
    rows = read_larder_data("names_elsewhere.yml").get(_NORWEGIAN.get(language, language), {})
    return {
        normal_form(name): "" if food == "?" else food
        for food, names in rows.items()
        for name in names
    }


def languages_elsewhere() -> tuple[str, ...]:
    """Return the languages that have names for their own books alone."""
    return tuple(read_larder_data("names_elsewhere.yml"))


@lru_cache(maxsize=2**14)  # most words of a line are no food's name in any language
def _foreign(form: str) -> str | None:
    """Return the food of a name that no two languages give to different foods.

    Swedish, with far fewer readers here, does not make a German name doubtful: "Öl" is oil.
    """
    foreign = load_index()["foreign"]
    found = {foreign[one][form] for one in LANGUAGES if one != "sv" and form in foreign[one]}
    found = found or {foreign["sv"][form]} if form in foreign["sv"] else found
    return found.pop() if len(found) == 1 else None


@cache
def common_larder() -> Larder:
    """Return the larder of a book that adds nothing of its own."""
    return Larder()


@dataclass(frozen=True)
class OwnLarder:
    """What larder.yml says: the larder with its foods, and prices as written, each with its line.

    Prices are for the giving half alone.
    """

    larder: Larder
    prices: tuple[tuple[str, str, int], ...] = field(default=(), repr=False)
