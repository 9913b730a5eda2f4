"""How long a thing keeps for its card: the recipe's own word, or shorter published guidance.

The published times are staples/keeping.yml. Leaves out dates: date_marks.py.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

from stillroom.core.batch.strength import strength_of
from stillroom.core.care.finished_strength import finished_percent
from stillroom.core.care.keeping_limits import (
    Keeps,
    limits_of_guidance,
    rows_for_card,
    usual_limit,
)
from stillroom.core.care.safety_facts import SafetyFacts, gather_facts
from stillroom.core.care.safety_rules import judge
from stillroom.core.care.stood import days_stood
from stillroom.core.label.date_marks import NOT_KNOWN, Term
from stillroom.core.label.how_long import planned_span
from stillroom.core.method.keeping_said import (
    claimed_elsewhere,
    keeping_of_method,
    opened_in_method,
    vaguely_kept,
)
from stillroom.core.recipe.keeps import OWN_PRACTICE, Keeping
from stillroom.core.recipe.kind_dates import feeds_yeast_untimed
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.spans import Span
from stillroom.core.words.joining import join_and

# above this strength a drink carries no best-before date: Reg. (EU) 1169/2011 Annex X 1(d)
EXEMPT_FROM_ABV = 10
_NO_DATE_NEEDED = (
    "A drink of 10 % vol or more needs no best-before date (Reg. (EU) 1169/2011 Annex X); "
)
_AT_LEAST = "the least that the recipe’s own words can mean, which name no number"


@dataclass(frozen=True)
class Kept:
    """How long, where and by whose word; `notes` say where published guidance was shorter."""

    unopened: Span | None
    opened: Span | None
    where: str
    source: str
    term: Term
    why: str
    notes: tuple[str, ...] = ()


def decide_keeping(recipe: Recipe, facts: SafetyFacts) -> Kept:
    """Weigh the recipe's keeping time against published guidance for what it is.

    The shorter of the two goes on the card, unless the recipe gives a reason; guidance about
    poison outweighs any reason.
    """
    keeps = recipe.keeps
    unopened, opened, source, where = keeps.unopened, keeps.opened, keeps.source, keeps.where
    notes: list[str] = []
    mark = ""
    for row in rows_for_card(facts, judge):
        if row.card == "no figure":
            continue
        binding = row.card == "always"
        mark = row.mark or mark
        for name, own, published in (
            ("unopened", unopened, row.unopened),
            ("opened", opened, row.opened),
        ):
            published = _left_of(published, recipe) if published and row.in_all else published
            if not published or not _longer(own, published):
                continue
            if own and keeps.reason and not binding:
                notes.append(
                    f"{row.source} says {published}; the maker keeps it {own}: {keeps.reason}"
                )
                continue
            in_all = ", counted from the making" if row.in_all and days_stood(recipe) else ""
            notes.append(_shortened(name, own, published, row) + in_all)
            source = row.source
            where = (row.where or where) if binding else where
            unopened, opened = (published, opened) if name == "unopened" else (unopened, published)
    term, why = _term(recipe, facts, mark)
    return Kept(unopened, opened, where, source, term, why, tuple(notes))


def _left_of(published: Span, recipe: Recipe) -> Span:
    """Return what is left, when it is filled, of a time counted from its making; a day at least.

    What has stood longer than that is refused.
    """
    stood = days_stood(recipe)
    if not stood:
        return published
    days = max(published.minutes() // (24 * 60) - stood, 1)
    return Span(days, days, "day")


def keeping_of_guidance(recipe: Recipe) -> Keeping:
    """Return the keeping of a recipe that states none: its method's word, else the book's own.

    Words without a number ("several weeks") shorten the book's own, and never stand for it.
    """
    if own := keeping_of_method(recipe):
        return own
    found = _of_the_book(recipe)
    found = replace(found, opened=found.opened or opened_in_method(recipe))
    vague = vaguely_kept(recipe)
    told = filter(None, (claimed_elsewhere(recipe), vague))
    said = min(told, key=Span.minutes, default=None)
    if said and found.unopened and said.minutes() < found.unopened.minutes():
        return replace(found, unopened=said, source=_source_of(said), by="method")
    return replace(found, vaguely=vague)


def _source_of(said: Span) -> str:
    return _AT_LEAST if said.loosely else OWN_PRACTICE


def _of_the_book(recipe: Recipe) -> Keeping:
    keeps = recipe.keeps
    facts = gather_facts(recipe, finished_percent(recipe), ())
    limits = [*limits_of_guidance(facts, judge)]
    # what ferments for nobody knows how long keeps for nobody knows how long
    untimed = feeds_yeast_untimed(recipe)
    if not untimed and (usual := usual_limit(facts, judge)):
        limits.append(usual)
    if any(thing.unknown for thing in facts.things):
        return keeps
    rows = rows_for_card(facts, judge)
    if any(row.card == "no figure" for row in rows):
        return keeps
    if not untimed:
        limits += [row.limit for row in rows if row.limit and row.card != "always"]
    if not limits:
        return keeps
    limit = min(limits, key=lambda one: one.longest.minutes())
    found = replace(keeps, unopened=limit.longest, source=limit.source, by="book")
    return found if keeps.where else replace(found, where=limit.where, where_of_book=True)


@lru_cache(maxsize=4096)
def _on_card(recipe: Recipe) -> Kept:
    return decide_keeping(recipe, gather_facts(recipe, finished_percent(recipe), ()))


def span_on_card(recipe: Recipe) -> Span | None:
    """Return how long it keeps by its card: the recipe's own word, or shorter guidance."""
    own, card = recipe.keeps.unopened, _on_card(recipe).unopened
    return card if card and _longer(own, card) else own


def keeping_words(recipe: Recipe) -> str:
    """Say how long it keeps, and what card and dates take where guidance is shorter."""
    keeps, planned = recipe.keeps, planned_span(recipe)
    card = _on_card(recipe).opened
    taken = [] if planned == keeps.unopened else [f"card and dates take {planned}"]
    if keeps.opened and card and _longer(keeps.opened, card):
        taken.append(f"the card takes {card} once opened")
    if not taken:
        return keeps.words
    return f"{keeps.words}; {join_and(taken)}, by published guidance"


def _shortened(name: str, own: Span | None, published: Span, row: Keeps) -> str:
    state = "unopened" if name == "unopened" else "once opened"
    said = f"the recipe says {own}" if own else "the recipe does not say"
    return f"{published} {state}: {row.source} ({said})"


def needs_no_date(recipe: Recipe) -> bool:
    """Tell whether it is a drink so strong that Annex X asks for no best-before date on it."""
    found = strength_of(recipe)
    strong = found is not None and found.abv_percent >= EXEMPT_FROM_ABV
    return strong and recipe.kind.is_eaten and recipe.kind.is_("drink")


def _longer(own: Span | None, published: Span) -> bool:
    """Whether a claim is none, or reaches past a published time: a range does at its long end."""
    return own is None or own.minutes() > published.minutes()


def _term(recipe: Recipe, facts: SafetyFacts, published_mark: str) -> tuple[Term, str]:
    """Return the right one of the terms, and why: Art. 24 and Annex X."""
    keeps = recipe.keeps
    if not recipe.kind.is_eaten:
        return "none", "It is not food."
    if keeps.unopened is None and not published_mark and feeds_yeast_untimed(recipe):
        return "not known", f"{NOT_KNOWN}: how long it ferments the recipe does not say."
    # the law asks for no date on it, and nobody says that its cream or egg keeps
    held = facts.tagged(["perishable", "egg", "pasteurised-egg", "dairy"])
    spoils = any(thing.tags.isdisjoint({"butter", "fat"}) for thing in held)
    exempt = _is_drink(facts) and (facts.strength or 0) >= EXEMPT_FROM_ABV and not spoils
    if keeps.unopened is None and not published_mark and exempt:
        return "none", _NO_DATE_NEEDED + "the recipe gives none."
    if keeps.unopened is None and not published_mark:
        return "not known", f"{NOT_KNOWN}: the recipe does not say."
    if published_mark == "use by":
        return "use by", "It spoils fast and can make ill: Reg. (EU) 1169/2011 Art. 24."
    if facts.place == "fridge" and facts.tagged(["perishable", "egg", "fish"]):
        return "use by", "It spoils fast and can make ill: Reg. (EU) 1169/2011 Art. 24."
    written = recipe.keeps.mark or recipe.kind.mark
    if not recipe.kind.edible and written == "best before":
        return "best before", "By the recipe's own word; it is no food for people."
    if written == "use by":
        return "use by", "By the recipe's own word."
    if written == "none":
        return "none", recipe.keeps.reason or "By the recipe's own word."
    said = f"this is {keeps.source}." if keeps.by == "book" else "the maker gives one all the same."
    if exempt:
        return "best before", _NO_DATE_NEEDED + said
    if keeps.by == "book":
        return "best before", f"The recipe does not say; {said}"
    return "best before", "It keeps; the date is for its quality: Reg. (EU) 1169/2011 Art. 24."


def _is_drink(facts: SafetyFacts) -> bool:
    return facts.recipe.kind.is_("drink") and bool(facts.tagged(["alcohol", "yeast"]))
