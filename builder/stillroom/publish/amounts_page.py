"""What a recipe's page says of amounts: the list, the sentence with blanks, other sizes.

`show_amounts` is the context of fragments/how-much.html and fragments/ingredients.html. It also
tells what can be reckoned of the finished thing: strength, fold, sugar, what there is to bottle.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby

from stillroom.core.allergens.laws import law_of
from stillroom.core.amounts.quantities import show_amount, show_decimal, show_number
from stillroom.core.batch.bottling import HEADSPACE_SOURCE, headspace_inches, headspace_ml
from stillroom.core.batch.preserves import solids_of
from stillroom.core.batch.strength import not_told, strength_of
from stillroom.core.batch.strength_words import milder_text
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import gather_recipe_facts
from stillroom.core.label.keeping import needs_no_date
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.finished import Fact, facts_of_batch, fillable, plainly, size_means
from stillroom.core.size.scalable import Scalable, scalable_of
from stillroom.core.size.scaled_lines import Measures, ScaledLine, amount_text
from stillroom.core.size.scaling import (
    ScaledBatch,
    count_containers,
    makes_text,
    scale,
)
from stillroom.core.size.targets import ByFactor
from stillroom.core.size.what_stays import boiled_at_most
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.plurals import singular_word

_WORD = late_regex(r"[^\W\d_]{3,}")

_READY = (Fraction(1, 2), Fraction(1), Fraction(2), Fraction(4))


@dataclass(frozen=True)
class ListedLine:
    """One ingredient with its place in the recipe, as the list shows it."""

    place: int
    line: ScaledLine


@dataclass(frozen=True)
class ReadyMade:
    """Ready-made sizes for readers without scripts: what each makes, then a row an ingredient."""

    heads: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]


@dataclass(frozen=True)
class AmountsView:
    """Everything the two fragments show.

    `facts` are what the batch comes to and follow its size, `always` what is the same at any.
    """

    groups: tuple[tuple[str, tuple[ListedLine, ...]], ...]
    makes: str
    makes_plainly: str
    things: str
    container: str
    container_size: str
    can_fill: bool
    containers: str
    vessel: str
    tin: str
    choices: tuple[str, ...]
    main: str
    system: str
    can_change_measure: bool
    ready: ReadyMade
    facts: tuple[Fact, ...]
    always: tuple[Fact, ...]


def show_amounts(
    recipe: Recipe, settings: BookSettings, written: ScaledBatch | None = None
) -> AmountsView:
    """Return what the page shows of a recipe's amounts; `written` is one batch as it is written."""
    scalable = scalable_of(recipe)
    written = written or scale(scalable, ByFactor(Fraction(1)))
    listed = [ListedLine(place, line) for place, line in enumerate(written.lines)]
    first = recipe.filled_into[0]
    # of two lines of one food the cook has one heap
    choices = tuple(
        dict.fromkeys(
            line.item
            for line in scalable.lines
            if line.form != "words" and line.scales == "with the batch"
        )
    )
    vessel = recipe.vessel
    has_vessel = bool(scalable.stands_ml and vessel and vessel.capacity)
    return AmountsView(
        groups=tuple(
            (group, tuple(lines)) for group, lines in groupby(listed, lambda row: row.line.group)
        ),
        makes=written.makes,
        makes_plainly=plainly(written.makes),
        things=scalable.things,
        container=first.name,
        containers=scalable.container_many,
        container_size=show_amount(first.size) if first.size else "",
        can_fill=scalable.makes_ml is not None,
        vessel=show_amount(vessel.capacity) if has_vessel and vessel and vessel.capacity else "",
        tin=scalable.tin.words if scalable.tin else "",
        choices=choices,
        main=main_of(recipe.title, choices),
        system=recipe.system,
        can_change_measure=any(line.density for line in scalable.lines),
        ready=_ready_made(scalable, written),
        facts=facts_of_batch(recipe, written, settings.country),
        always=(
            *_strength(recipe, settings),
            *_always(recipe),
            *_no_date_asked(recipe, settings.country),
        ),
    )


def main_of(title: str, choices: Sequence[str]) -> str:
    """Return which of the foods a cook has some of: the one that the title names, else the first.

    >>> main_of("Damsons in brandy", ["brandy", "damsons", "cinnamon"])
    'damsons'
    >>> main_of("Quince ratafia", ["vodka", "quinces"]), main_of("Toffee", ["sugar", "milk"])
    ('quinces', 'sugar')
    """
    named = [one for one in _words_of(title) if any(one in _words_of(item) for item in choices)]
    if not named:
        return choices[0] if choices else ""
    return next(item for item in choices if named[0] in _words_of(item))


def _words_of(text: str) -> list[str]:
    """Return the words of a name as they are of one thing: "damsons" is damson."""
    return [singular_word(word) for word in _WORD.findall(text.lower())]


def _ready_made(recipe: Scalable, written: ScaledBatch) -> ReadyMade:
    most = boiled_at_most(recipe.kind) or _READY[-1]
    measures = Measures(recipe.system)
    factors = [(factor, count_containers(recipe, factor)) for factor in _READY if factor <= most]
    return ReadyMade(
        heads=tuple(
            written.makes if factor == 1 else makes_text(recipe, factor, measures)
            for factor, _ in factors
        ),
        rows=tuple(
            (
                line.item,
                tuple(
                    own.amount_text
                    if factor == 1
                    else amount_text(recipe, line, factor, containers, measures)
                    for factor, containers in factors
                ),
            )
            for line, own in zip(recipe.lines, written.lines, strict=True)
        ),
    )


def _no_date_asked(recipe: Recipe, country: str) -> tuple[Fact, ...]:
    """Say of a strong drink that the law of the European Union and Britain wants no date on it."""
    if law_of(country) != "eu" or not needs_no_date(recipe):
        return ()
    text = "the law asks for none on a drink of 10 % vol or more"
    return (Fact("Best-before date", text, "Reg. (EU) 1169/2011 Annex X 1(d)"),)


def _strength(recipe: Recipe, settings: BookSettings) -> tuple[Fact, ...]:
    """Say of a drink what nobody can work out of its strength: before it is boiled, or at all."""
    if why := not_told(recipe):
        return (Fact("Strength", "not known", why),)
    boiled = gather_recipe_facts(recipe, settings).boils_spirit()
    if not boiled or strength_of(recipe) is None:
        return ()
    return (Fact("Boiled", "weaker than that, and nobody can say by how much", boiled),)


def _always(recipe: Recipe) -> tuple[Fact, ...]:
    """Return what is the same at any size."""
    found = []
    strength = strength_of(recipe)
    milder = milder_text(strength.abv_percent) if strength else ""
    if strength and milder:
        how = f"as if unsweetened; keeping times are for it uncut ({strength.source})"
        found.append(Fact("Milder", milder, how))
    solids = solids_of(recipe)
    if solids:
        found.append(Fact("Sugar", solids.text, f"{solids.uncertainty} ({solids.source})"))
    inches, jars = headspace_inches(recipe), fillable(recipe)
    if inches and jars:
        there = jars[0].size_ml - (headspace_ml(recipe) or 0)
        text = (
            f"{show_decimal(inches * Fraction(254, 10), 0)} mm ({show_number(inches)} inch): "
            f"a {jars[0].one} that holds {jars[0].size} to its brim takes "
            f"{show_decimal(there, 0)} ml of it"
        )
        how = f"{size_means()} ({HEADSPACE_SOURCE}; of a neck of 57 mm, from memory)"
        found.append(Fact("Headspace", text, how))
    return tuple(found)
