"""What is answered for a first giving list, and how each answer is read.

Each reader raises Unreadable with what to write instead, so that it can be asked again. Today is an
argument.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from fractions import Fraction

from stillroom.core.allergens.avoiding import read_phrase
from stillroom.core.allergens.clauses import clauses
from stillroom.core.allergens.near import named_in
from stillroom.core.allergens.sentences import read_avoided
from stillroom.core.amounts.money import parse_money
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.days_spoken import own_rule
from stillroom.core.when.giving_days import find_day
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.problems import Unreadable, say_written
from stillroom.giving.as_written import NUMBERS, ages_said, several
from stillroom.giving.asked_back import asked_about, asked_about_all
from stillroom.giving.model import Sort
from stillroom.giving.names import plain_name
from stillroom.giving.needs_written import as_understood
from stillroom.giving.who import BREASTFEEDING, feeds_alone, read_age_months, read_pets
from stillroom.giving.written import OwnDays, read_day, read_hours, with_own_day

MOST_OF_A_SORT = 20
USUAL: Mapping[Sort, int] = {"eat": 2, "drink": 1, "craft": 1}
"""What a basket holds where nobody says more."""
_WHAT = (
    'Write a food ("coconut"), an allergen ("milk", "nuts") or a diet ("vegan", "halal"), '
    "with commas between them; or leave it empty."
)
_YES = frozenset({"yes", "y", "ja", "j", "oui", "o", "sí", "si", "s", "sì", "post", "by post"})
_NO = frozenset({"no", "n", "nein", "non", "nee", "hand", "by hand"})
_ALL = frozenset({"", "all", "alle", "all of them", "everything", "tous", "todos", "tutti"})


@dataclass(frozen=True)
class Needs:
    """What somebody must not have, each by a word that the list knows, and whether one expects."""

    avoid: tuple[str, ...] = ()
    pregnant: bool | str = False


@dataclass(frozen=True)
class Receiver:
    """Somebody who is given a basket, as it was answered."""

    name: str
    adults: int = 1
    children: tuple[str, ...] = ()
    needs: Needs = Needs()
    by_post: bool = False
    pets: tuple[str, ...] = ()


@dataclass(frozen=True)
class ListAnswers:
    """All that was answered; what is left empty is not limited."""

    title: str
    day: date
    keeper: str = ""
    recipes: tuple[str, ...] = ()
    room: Mapping[Sort, int] | None = None
    receivers: tuple[Receiver, ...] = ()
    hours: str = ""
    budget: str = ""
    likes: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    prices: tuple[tuple[str, str], ...] = ()


def read_giving_day(text: str, today: date, country: str, own: OwnDays = ()) -> date:
    """Return the day on which the baskets go out, the next one where no year is said.

    A day of the book's `own` goes before any other of its name.

    >>> read_giving_day("the Saturday before Christmas", date(2027, 1, 1), "GB")
    datetime.date(2027, 12, 18)
    >>> read_giving_day("24. Dezember", date(2027, 1, 1), "DE")
    datetime.date(2027, 12, 24)
    """
    said = with_own_day({"day": text}, own, country, "day")["day"]
    if isinstance(said, date):
        day = said
    else:
        rule = own_rule(text, own)
        day = _with_year(rule, today, country) or _next(rule, today, country)
    if day < today:
        raise Unreadable(f"{day.isoformat()} is past.", "Write a day that is still to come.")
    return day


def _with_year(text: str, today: date, country: str) -> date | None:
    for said in (text, f"{text} {today.year}", f"{text} {today.year + 1}"):
        try:
            day = read_day(said, country)
        except Unreadable:
            continue
        if said == text or day >= today:
            return day
    return None


def _next(text: str, today: date, country: str) -> date:
    try:
        return find_day(text, today, country)
    except Unreadable as unknown:
        if not any(sign.isdecimal() for sign in text):
            raise
        try:
            return read_day(text, country)
        except Unreadable as wrong:
            raise wrong from unknown


def read_count(text: str, most: int = MOST_OF_A_SORT) -> int:
    """Return a whole number, in figures or as a word.

    >>> read_count("2"), read_count("three"), read_count("none")
    (2, 3, 0)
    """
    plain = text.strip().lower()
    count = int(plain) if plain.isdecimal() and len(plain) < 4 else NUMBERS.get(plain)
    if count is None or count > most:
        raise Unreadable(
            f"{say_written(text)} is not a number up to {most}.",
            'Write a whole number: "2", or "0" for none.',
        )
    return count


def read_yes(text: str) -> bool:
    """Return whether an answer is yes, in the languages of the book.

    >>> read_yes("Ja"), read_yes("no")
    (True, False)
    """
    plain = text.strip().lower().rstrip(".!")
    if plain not in _YES | _NO:
        raise Unreadable(f"{say_written(text)} is neither yes nor no.", 'Write "yes" or "no".')
    return plain in _YES


def read_ages(text: str) -> tuple[str, ...]:
    """Return the age of each child as it is said; none for "no" and the like.

    >>> read_ages("Wren, 3, and a baby of 8 months"), read_ages("none")
    (('Wren, 3', 'a baby of 8 months'), ())
    """
    ages = tuple(ages_said(text)) if several(text) else ()
    for age in ages:
        read_age_months(age)
    return ages


def read_needs(text: str) -> Needs:
    """Return what must be kept from somebody; a word that is not known is refused.

    >>> read_needs("no nuts please, and dairy")
    Needs(avoid=('no nuts please', 'dairy'), pregnant=False)
    >>> read_needs("pregnant"), read_needs("nothing").avoid
    (Needs(avoid=(), pregnant=True), ())
    >>> read_needs("pregnant (no liver)")
    Needs(avoid=('no liver',), pregnant=True)
    >>> read_needs("Tom is coeliac, she hates ginger").avoid
    ('Tom is coeliac', 'she hates ginger')
    """
    found = Needs()
    for word in as_understood(text, several(text)):
        found = _with_word(found, word)
    if asked := asked_about_all(found.avoid, _WHAT):
        raise asked[0]
    return replace(found, avoid=tuple(dict.fromkeys(found.avoid)))


def read_animals(text: str) -> tuple[str, ...]:
    """Return the animals of a household as they are said; none for "no" and the like.

    >>> read_animals("a dog, two cats"), read_animals("keine")
    (('a dog', 'two cats'), ())
    """
    animals = tuple(several(text))
    read_pets(animals)
    return animals


def _with_word(needs: Needs, word: str) -> Needs:
    avoided = read_avoided(word)
    if avoided and avoided.meant == "pregnant":
        return _with_pregnancy(needs, word)
    if asked := asked_about(word, _WHAT):
        raise asked
    return replace(needs, avoid=(*needs.avoid, word))


def _with_pregnancy(needs: Needs, word: str) -> Needs:
    """Put to needs that somebody is pregnant, and whatever else is said in the same breath."""
    feeds = feeds_alone(word) and needs.pregnant is not True
    told = replace(needs, pregnant=BREASTFEEDING if feeds else True)
    for clause in clauses(word):
        found = read_phrase(clause.text)
        if found is None or found.meant != "pregnant":
            told = _with_word(told, clause.text)
        elif named_in(clause.text) and (asked := asked_about(clause.text, _WHAT)):
            raise asked  # "pregnant no nuts"
    return told


def read_recipes(text: str, recipes: Iterable[Recipe]) -> tuple[str, ...]:
    """Return the files' names of the recipes that an answer names, of all for "all"."""
    named: dict[str, str] = {}
    for recipe in recipes:
        for name in (recipe.title, recipe.slug):
            named.setdefault(plain_name(name), recipe.slug)
    if text.strip().lower() in _ALL:
        return tuple(dict.fromkeys(named.values()))
    found = []
    for name in (one.strip() for one in text.replace(";", ",").split(",")):
        if name and plain_name(name) not in named:
            mend = did_you_mean(name, set(named.values()))
            raise Unreadable(f"{say_written(name)} is not a recipe of the book.", mend)
        found += [named[plain_name(name)]] if name else []
    return tuple(dict.fromkeys(found))


def read_month_hours(text: str) -> str:
    """Return hours of a month as they are written in the list; nothing for no limit."""
    if not several(text):
        return ""
    plain = text.strip().lower()
    for word in ("hours", "hour", "stunden", "stunde", "heures", "h"):
        plain = plain.removesuffix(word).strip()
    read_hours({"every month": plain})
    return plain


def read_budget(text: str, currency: str, language: str) -> str:
    """Return the most that a basket may cost as it is said; nothing for no limit."""
    if not several(text):
        return ""
    if parse_money(text, currency, language) <= Fraction(0):
        raise Unreadable("Nothing can be made for nothing.", "Leave it empty for no limit.")
    return text.strip()
