"""A book's own larder: larder.yml beside the recipes, where a cook says what a food is.

    elder vinegar:
      parts: [cider vinegar, elderflower]
      acidity: acid
      density: 1 cup weighs 240 g
      source: its label

Every mistake is told with its line. Leaves out prices beyond reading them: the book is public, so
only the giving half may ask for them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path
from typing import Any

from stillroom.core.amounts.packs import parse_pack
from stillroom.core.amounts.units import System
from stillroom.core.larder.food_reading import FoodReading, read_food
from stillroom.core.larder.own_facts import (
    KNOWN_ORIGINS,
    read_allergens,
    read_density,
    read_figure,
    read_strength,
)
from stillroom.core.larder.own_facts import read_acidity as _acidity
from stillroom.core.larder.packet_parts import read_part
from stillroom.core.larder.shelves import Larder, OwnLarder
from stillroom.core.larder.staple import Staple
from stillroom.core.larder.words import normal_form
from stillroom.core.words.frontmatter import Located, read_yaml
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable
from stillroom.core.words.text_files import clean, read_text

KEYS = (
    "also", "is", "from", "contains", "may contain", "parts", "acidity", "density", "one weighs",
    "strength", "price", "note", "source",
)  # fmt: skip
_FIGURES = ("acidity", "density", "one weighs", "strength")
SECTION = "the book's own"
_SINGLE = frozenset({"is", "density", "one weighs", "strength", "note", "source"})
_NO_PACKS = "The price is no list of packs."


def load_own_larder(
    path: Path, name: str, language: str, system: System, currency: str
) -> OwnLarder:
    """Read a larder.yml; raises ProblemsFound with all that is wrong in it."""
    return read_own_larder(read_text(path, name), name, language, system, currency)


def read_own_larder(
    text: str,
    file: str,
    language: str = "en",
    system: System = "metric",
    currency: str = "GBP",
) -> OwnLarder:
    """Read the text of a larder.yml, a cup as the book's `system` has it; raises ProblemsFound."""
    located = read_yaml(clean(text, file), file, only_words=True)
    rows = located.data if located.data is not None else {}
    if not isinstance(rows, dict):
        mend = "Write the name of a food and a colon, and below it, set in, what it is."
        raise ProblemsFound([Problem(file, 1, "No food is named here.", mend)])
    reader = _Reader(file, located, Larder(language=language), system, currency)
    foods = [reader.food(str(name), row) for name, row in rows.items()]
    if reader.problems:
        raise ProblemsFound(reader.problems)
    return OwnLarder(Larder(tuple(food for food in foods if food), language), tuple(reader.prices))


def _is_nothing(value: Any) -> bool:
    """Say whether nothing stands behind a key, or nothing behind any dash of its list."""
    rows = value if isinstance(value, list) else [value]
    return all(one in (None, "", [], {}) for one in rows)


_FEW = 100
"""Among so many foods all are looked through."""


@dataclass
class _Reader:
    """Reads one food after another; a food may be made of those above it."""

    file: str
    located: Located
    larder: Larder
    system: System
    currency: str
    problems: list[Problem] = field(default_factory=list)
    above: dict[str, list[tuple[frozenset[str], Staple]]] = field(default_factory=dict)
    """Each food above by every one of its names, under the first word of it."""
    prices: list[tuple[str, str, int]] = field(default_factory=list)

    def food(self, name: str, row: Any) -> Staple | None:
        if not isinstance(row, dict) or not row:
            mend = 'Say "is:", "parts:" or "contains:" below it, set in by two spaces.'
            self._tell(name, "", f'Nothing is said of "{name}".', mend)
            return None
        before = len(self.problems)
        for key, value in row.items():
            if _is_nothing(value) and key in KEYS:
                # left empty it says nothing, and nothing said is not "contains: nothing"
                what = f'Nothing stands behind "{key}" of "{name}".'
                self._tell(name, str(key), what, "Say it, or take the line out.")
            if key not in KEYS:
                what = f'"{key}" is nothing that can be said of a food.'
                self._tell(name, str(key), what, did_you_mean(str(key), KEYS))
            elif key in _SINGLE and isinstance(value, list | dict) and value:
                what = f'"{key}" of "{name}" is one thing, and a list stands here.'
                self._tell(name, str(key), what, "Write the one, without brackets or dashes.")
        if len(self.problems) > before:
            return None
        row = {key: value for key, value in row.items() if not _is_nothing(value)}
        staple = self._read(name, row)
        for problem in self._unsaid(name, row):
            self.problems.append(problem)
        if "price" in row:
            self._prices(name, row["price"])
        if len(self.problems) > before:
            return None
        self.larder = replace(self.larder, own=(*self.larder.own, staple))
        for form in map(normal_form, (staple.name, *staple.also)):
            words = form.split()
            self.above.setdefault(words[0] if words else "", []).append((frozenset(words), staple))
        return staple

    def _prices(self, name: str, written: Any) -> None:
        """Keep the packs of a food as written, once it is sure that they can be read."""
        for text in written if isinstance(written, list) else [written]:
            if isinstance(text, dict | list):
                self._tell(name, "price", _NO_PACKS, 'Write: ["700 ml for 14.50", "12 for 7.20"].')
                continue
            read = partial(parse_pack, text, self.currency, self.system, self.larder.language)
            self._tried(name, "price", read, None)
            self.prices.append((name, str(text), self._line(name, "price")))

    def _read(self, name: str, row: Mapping[str, Any]) -> Staple:
        base = self._counts_as(name, row)
        parts = self._words(name, row, "parts")
        inside = [food for part in parts for food in self._part(name, part)]
        held = base.allergens if base else ()
        traces = base.may_contain if base else ()
        own = self._tried(name, "contains", lambda: read_allergens(row.get("contains")), ())
        may = self._tried(name, "may contain", lambda: read_allergens(row.get("may contain")), ())
        held = (*held, *(a for f in inside for a in f.allergens))
        if held and "contains" in row and not own:
            what = f'"{name}" cannot contain nothing: what it is or is made of holds {held[0]}.'
            self._tell(name, "contains", what, 'Take the line "contains" out, or "is" or the part.')
        origin = self._origin(name, row, base, inside)
        found = replace(base, name=name) if base else Staple(name, SECTION)
        found = replace(
            found,
            also=tuple(self._words(name, row, "also")),
            allergens=tuple(dict.fromkeys((*held, *own))),
            may_contain=tuple(
                dict.fromkeys((*traces, *may, *(a for f in inside for a in f.may_contain)))
            ),
            animal=origin,
            vegan_note="" if origin else "what it is made of is not stated",
            tags=_opened(found.tags, row)
            | frozenset(tag for food in inside for tag in food.tags & _TELLS),
            parts=tuple(parts) or found.parts,
            note=str(row.get("note", found.note)),
        )
        return self._figures(name, row, found)

    def _figures(self, name: str, row: Mapping[str, Any], found: Staple) -> Staple:
        given = {
            "acidity": ("acidity", lambda: _acidity(row["acidity"])),
            "density": ("density", lambda: read_density(str(row["density"]), self.system)),
            "one weighs": ("each_g", lambda: read_figure(str(row["one weighs"]))),
            "strength": ("strength", lambda: read_strength(str(row["strength"]))),
        }
        source = str(row.get("source", ""))
        for key, (attribute, read) in given.items():
            if key in row:
                value = self._tried(name, key, read, None)
                sources = {**found.sources, {"one weighs": "each"}.get(key, key): source}
                found = replace(found, **{attribute: value, "sources": sources})
        if "one weighs" in row:
            found = replace(found, each_of="")
        if found.strength and "strength" in row:
            found = replace(found, tags=found.tags | {"alcohol"})
        return found

    def _counts_as(self, name: str, row: Mapping[str, Any]) -> Staple | None:
        if "is" not in row:
            return None
        reading = self._first_known(str(row["is"]), read_food)
        if reading.known:
            return reading.food
        what = f'"{row["is"]}" is not known either.'
        near = reading.nearest
        mend = f'Did you mean "{near[0]}"?' if near else 'Say "contains:" and "from:" instead.'
        self._tell(name, "is", what, mend)
        return None

    def _first_known(self, text: str, read: Callable[[str, Larder], FoodReading]) -> FoodReading:
        """Read a food by those above whose names its words hold, by all of them where none is it.

        To look among all for every food takes the square of their number.
        """
        if len(self.larder.own) <= _FEW:
            return read(text, self.larder)
        asked = frozenset(normal_form(text).split())
        near = dict.fromkeys(
            staple for word in asked for form, staple in self.above.get(word, ()) if form <= asked
        )
        reading = read(text, replace(self.larder, own=tuple(near)))
        return reading if reading.known else read(text, self.larder)

    def _part(self, name: str, part: str) -> tuple[Staple, ...]:
        reading = self._first_known(part, read_part)
        if not reading.known:
            mend = "Say what it is in this file too, above this food."
            self._tell(name, "parts", f'The part "{part}" is not known.', mend)
        return reading.foods

    def _origin(
        self, name: str, row: Mapping[str, Any], base: Staple | None, inside: list[Staple]
    ) -> tuple[str, ...]:
        said = self._words(name, row, "from")
        for word in said:
            if word not in KNOWN_ORIGINS:
                mend = did_you_mean(word, KNOWN_ORIGINS)
                self._tell(name, "from", f'Nothing is known to come from "{word}".', mend)
        if said:
            return tuple(said)
        origins = tuple(dict.fromkeys(word for food in inside for word in food.animal))
        return origins or (base.animal if base else ())

    def _unsaid(self, name: str, row: Mapping[str, Any]) -> Iterator[Problem]:
        line = self._line(name, "")
        if not {"is", "contains", "parts"} & set(row):
            what = f'What "{name}" holds is not said.'
            mend = 'Write "contains: nothing", or the allergens that it holds.'
            yield Problem(self.file, line, what, mend)
        figures = [key for key in _FIGURES if key in row]
        if figures and not row.get("source"):
            what = f'Nobody is named who says the {figures[0]} of "{name}".'
            mend = 'Add a line such as "source: its label".'
            yield Problem(self.file, self._line(name, figures[0]), what, mend)

    def _words(self, name: str, row: Mapping[str, Any], key: str) -> list[str]:
        value = row.get(key)
        if value is None:
            return []
        if isinstance(value, dict) or (
            isinstance(value, list) and any(isinstance(one, dict | list) for one in value)
        ):
            self._tell(name, key, f'"{key}" of "{name}" is no list.', "Write: [one, another].")
            return []
        rows = value if isinstance(value, list) else str(value).split(",")
        said = (str(one).strip() for one in rows if one is not None)  # an empty place says nothing
        return [one for one in said if one]

    def _tried(self, name: str, key: str, read: Any, otherwise: Any) -> Any:
        try:
            return read()
        except Unreadable as wrong:
            self._tell(name, key, wrong.what, wrong.mend)
            return otherwise

    def _tell(self, name: str, key: str, what: str, mend: str) -> None:
        self.problems.append(Problem(self.file, self._line(name, key), what, mend))

    def _line(self, name: str, key: str) -> int:
        lines = self.located.lines
        return lines.get(f"{name}/{key}") or lines.get(name, 1)


def _opened(tags: frozenset[str], row: Mapping[str, Any]) -> frozenset[str]:
    """Return the tags of a food; once a cook says what is in it, its packet has been read."""
    return tags - {"read-its-packet"} if {"contains", "parts"} & set(row) else tags


# what must be told even when it only stands among the parts of a bought compound
_TELLS = frozenset(
    {"honey", "alcohol", "sulphites", "caffeine", "liquorice", "grapefruit", "xylitol"}
    | {"toxic", "grave", "cyanide-kernel"}
)
