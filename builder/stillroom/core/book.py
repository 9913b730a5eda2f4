"""The settings of a book, as they stand in mkdocs.yml under the plugin's name.

The command and the plugin read the same ones here. Leaves out MkDocs: the file is read as
plain YAML, and tags that only MkDocs understands are passed over.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path
from typing import Annotated, Any

import yaml
from babel import Locale, UnknownLocaleError
from pydantic import AfterValidator, BaseModel, ConfigDict, Field, ValidationError

from stillroom.core.day_words import MONTH_NAMES
from stillroom.core.giving_days import find_day
from stillroom.core.loading import load_recipes
from stillroom.core.problems import Problem, ProblemsFound, Unreadable, did_you_mean
from stillroom.core.recipe import Recipe
from stillroom.core.recipes_folder import recipe_files
from stillroom.core.units import System


def _known_locale(text: str) -> str:
    try:
        Locale.parse(text)
    except (UnknownLocaleError, ValueError):
        raise ValueError('it is not a language such as "en_GB" or "en_US"') from None
    return text


class GivingDay(BaseModel):
    """One day of the year on which baskets go out: its name and the rule of its date."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    name: Annotated[str, Field(min_length=1)]
    day: Annotated[str, Field(min_length=1)]


class BookSettings(BaseModel):
    """What holds for the whole book.

    `country` (ISO 3166 alpha-2) chooses which food-safety authority is deferred to, `altitude_m`
    the processing times, `units` how spoons, cups and pints are read, `language` the wording of
    dates, `currency` (ISO 4217) the giver's money. Folders are relative to mkdocs.yml.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")

    title: str = "A stillroom book"
    site_url: str = ""
    recipes: str = "recipes"
    pictures: str = "pictures"
    units: System = "metric"
    country: Annotated[str, Field(pattern="^[A-Z]{2}$")] = "GB"
    altitude_m: Annotated[int, Field(ge=-430, le=6000)] = 0
    language: Annotated[str, AfterValidator(_known_locale)] = "en_GB"
    currency: Annotated[str, Field(pattern="^[A-Z]{3}$")] = "GBP"
    giving_days: tuple[GivingDay, ...] = (
        GivingDay(name="Christmas", day="the Saturday before Christmas"),
    )


@dataclass(frozen=True)
class Book:
    """Where a book lies, its settings, and the folders of its recipes and pictures."""

    root: Path
    settings: BookSettings
    recipes_dir: Path
    pictures_dir: Path
    site_dir: Path
    docs_dir: Path

    def recipe_files(self) -> list[Path]:
        """Every recipe file of the book, in order."""
        return recipe_files(self.recipes_dir)

    def require_recipes(self) -> None:
        """Raise ProblemsFound when the folder of recipes holds none."""
        if not self.recipe_files():
            what = f'There are no recipes in "{self.settings.recipes}".'
            mend = 'Put recipe files (".md") there, or set "recipes:" to their folder.'
            raise ProblemsFound([Problem("mkdocs.yml", 1, what, mend)])

    def load(self) -> tuple[Recipe, ...]:
        """Read every recipe; raises ProblemsFound with all problems of the book."""
        self.require_recipes()
        return load_recipes(self.recipe_files(), self.root, self.settings.units, self.pictures_dir)


class _AnyTag(yaml.SafeLoader):
    """Safe YAML in which MkDocs' own tags (!ENV, !!python/name) read as nothing."""


_AnyTag.add_multi_constructor("", lambda loader, suffix, node: None)


_MENDS = {
    "site_url": 'Write the whole address: "https://book.example/".',
    "recipes": 'Write the name of a folder beside mkdocs.yml: "recipes".',
    "pictures": 'Write the name of a folder among the pages: "pictures".',
    "units": 'Write "metric", "us" or "imperial".',
    "country": 'Write its two capitals: "GB".',
    "altitude_m": "Write whole metres from -430 to 6000.",
    "language": 'Write a language and country: "en_GB".',
    "currency": 'Write its three capitals: "GBP".',
    "giving_days": 'Write each as "- {name: Christmas, day: 24 December}".',
}
_ANY_YEAR = date(2024, 1, 1)
"""Whether a rule can be read hangs on no year; a leap year knows 29 February."""


def read_settings(written: dict[str, Any], file: str = "mkdocs.yml") -> BookSettings:
    """Check settings as written; raises ProblemsFound with every mistake."""
    try:
        settings = BookSettings.model_validate(written)
    except ValidationError as error:
        problems = []
        for detail in error.errors():
            key = str(detail["loc"][0])
            if detail["type"] == "extra_forbidden" and len(detail["loc"]) == 1:
                what = f'"{key}" is not a setting of the book.'
                mend = did_you_mean(key, BookSettings.model_fields)
            else:
                what = f'The setting "{key}" is not right: {_say_value(written[key])}.'
                mend = _MENDS.get(key, "")
            problems.append(Problem(file, 1, what, mend))
        raise ProblemsFound(problems) from None
    wrong = [problem for day in settings.giving_days for problem in _faults(day, settings, file)]
    if wrong:
        raise ProblemsFound(wrong)
    return settings


def _say_value(value: Any) -> str:
    return f'"{value}"' if isinstance(value, str | int | float) else "it is not written as wanted"


def _faults(giving: GivingDay, settings: BookSettings, file: str) -> Iterator[Problem]:
    """Find a giving day whose rule is no day, or one that would come only once."""
    named = f'The giving day "{giving.name}" is not right:'
    try:
        day = find_day(giving.day, _ANY_YEAR, settings.country)
        again = find_day(giving.day, day + timedelta(days=1), settings.country)
    except Unreadable as wrong:
        yield Problem(file, 1, f"{named} {wrong.what}", wrong.mend)
        return
    if again <= day:
        mend = f'Write it without its year, as in "{day.day} {MONTH_NAMES[day.month - 1]}".'
        yield Problem(file, 1, f"{named} {giving.day} comes only once.", mend)


def find_book(start: Path) -> Path | None:
    """Return the nearest mkdocs.yml in `start` or above it."""
    folder = start.resolve()
    for candidate in (folder, *folder.parents):
        if (candidate / "mkdocs.yml").is_file():
            return candidate / "mkdocs.yml"
    return None


def open_book(config_file: Path) -> Book:
    """Open the book whose mkdocs.yml this is; raises ProblemsFound."""
    name = config_file.name
    try:
        written = yaml.load(config_file.read_text(encoding="utf-8"), Loader=_AnyTag)
    except (OSError, yaml.YAMLError) as error:
        raise ProblemsFound([Problem(name, 1, f"It cannot be read: {error}.")]) from None
    written = written if isinstance(written, dict) else {}
    options = _plugin_options(written.get("plugins"))
    if options is None:
        mend = 'Add "plugins:" with "  - stillroom".'
        raise ProblemsFound([Problem(name, 1, "The stillroom plugin is not switched on.", mend)])
    settings = read_settings(
        {"title": written.get("site_name", ""), "site_url": written.get("site_url") or ""}
        | options,
        name,
    )
    return place_book(
        config_file.resolve().parent,
        settings,
        docs_dir=written.get("docs_dir", "docs"),
        site_dir=written.get("site_dir", "site"),
    )


def place_book(root: Path, settings: BookSettings, docs_dir: str, site_dir: str) -> Book:
    """Put settings and folders together; the folders are relative to `root`."""
    docs = root / docs_dir
    return Book(
        root=root,
        settings=settings,
        recipes_dir=root / settings.recipes,
        pictures_dir=docs / settings.pictures,
        site_dir=root / site_dir,
        docs_dir=docs,
    )


def _plugin_options(plugins: Any) -> dict[str, Any] | None:
    rows = plugins if isinstance(plugins, list) else [plugins]
    for row in rows:
        if row == "stillroom":
            return {}
        if isinstance(row, dict) and "stillroom" in row:
            return dict(row["stillroom"] or {})
    return None
