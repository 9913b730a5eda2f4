"""A recipe from elsewhere in the book's own form: its lines as they were written, and questions.

The draft is read by the book's own reader, so that what the check would say is asked here already.
Each question stands in the draft as a note that begins "# ?", above the line it is about, and in
a list beside it. Nothing is made up: a fact that was not said is left out and asked for.
"""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from typing import Final

from stillroom.beginning.recipe import LONGEST_TITLE, slug_of
from stillroom.beginning.unanswered import ASKED
from stillroom.beginning.written import fact, item
from stillroom.bringing.checked import NOT_A_FOOD, checked, is_asked_by_name, place_of
from stillroom.bringing.decimals import write_own_decimals, write_plain_measures
from stillroom.bringing.doubted import HOW_TO_ANSWER, asked_of, doubted_steps
from stillroom.bringing.found import SERVES, BroughtRecipe, Origin, Paper, Question, Recipe
from stillroom.bringing.heads import plain, says_otherwise, words
from stillroom.bringing.keeping import (
    A_WAIT,
    keeping_of,
    kept_cold_beside,
    sentences_of_keeping,
    vaguely_kept,
)
from stillroom.bringing.labelled_spans import may_say_it_keeps, waits_beside
from stillroom.bringing.measured import asked_beside
from stillroom.bringing.naming import guess_kind, title_of
from stillroom.bringing.one_line import is_plainly_parted, things_on
from stillroom.bringing.plain_text import tidy
from stillroom.bringing.set_apart import set_apart
from stillroom.bringing.several_in_steps import asked_of_several
from stillroom.bringing.title_parts import named_alone
from stillroom.bringing.told_beside import questions_beside
from stillroom.bringing.typed_marks import pieces
from stillroom.bringing.whose_measures import coffee_spoons, whose_measures
from stillroom.bringing.whose_words import asked_of_name, asked_of_words, source_of
from stillroom.core.care.safety import NOT_SAFE
from stillroom.core.larder.shelves import Larder
from stillroom.core.method.keeping_said import how_to_say_it
from stillroom.core.reading.markup import find_markup
from stillroom.core.recipe.settings import BookSettings
from stillroom.core.when.spans import Span

_RULE: Final = "---"
_LONGEST_ITEM: Final = 900
"""Shorter than facts_above.py takes for one line: what is longer is told and cut."""
_LONGEST_NAME: Final = 120
_LONGEST_QUESTION: Final = 2_000
# of any recipe until somebody writes how much it makes
_LEFT_EMPTY: Final = re.compile(
    r"(?:serves |for )?1 ?(?:servings?|portion(?:en)?|person(?:en|n?e|as?|er)?|people|porzione"
    r"|porción|portie|porção|pessoa|porcja|osoba)|todo|tbd|n/?a|none|unknown|varies|several|many|\?+|-+",
    re.IGNORECASE,
)
_MIXED: Final = re.compile(r"^\W*\d+\s*\+\s*(?:\d+\s*/\s*\d+|[½⅓⅔¼¾⅛])")  # "1 + 2/3 cups"
_BRACKETS: Final = re.compile(r"\([^()]*\)")
_TWO_THINGS: Final = re.compile(r"(?<!^\d)(?<!^\d\s)[;+]\s*(?:\d|[½¼¾])")
_ADDED: Final = re.compile(
    r"(?:.*\b(?:to be added|once (?:gifted|given))\b"
    r"|to (?:make|cook|prepare|serve|finish|bake)|additional|you(?:'|’)?ll also|you will also|"
    r"at serving|for serving|(?:the )?(?:recipient|cook) adds)\b(?!.*\bmix\b)",
    re.IGNORECASE,
)


@dataclass
class _Draft:
    """The lines of a draft, and what is asked at each: by the place of the line, from 0."""

    rows: list[str] = field(default_factory=list)
    asked: list[tuple[int, str, str]] = field(default_factory=list)

    def add(self, *rows: str) -> int:
        """Add lines, and return the place of the first of them."""
        place = len(self.rows)
        self.rows += [line for row in rows for line in row.split("\n")]
        return place

    def ask(self, place: int, what: str, mend: str) -> None:
        if (what, mend) not in {(said, then) for _, said, then in self.asked}:
            self.asked.append((place, what, mend))


def draft(
    recipe: Recipe, origin: Origin, settings: BookSettings, larder: Larder | None = None
) -> BroughtRecipe:
    """Return a recipe in the book's form, with a question at whatever was not understood."""
    set_apart(recipe)
    write_own_decimals(recipe, settings.language)
    write_plain_measures(recipe)
    title = _cut(title_of(_cut(named_alone(recipe, origin))))
    made = _Draft()
    slug = slug_of(title)
    _add_facts(made, recipe, title, origin, settings)
    _add_keeping(made, recipe, origin, settings, larder)
    end = made.add(_RULE)
    method = _add_body(made, recipe, origin)
    _ask_of_waits(made, recipe, method)
    for beside in list(asked_beside(made.rows, recipe, settings, larder)):
        made.ask(*beside)
    if origin.others or recipe.address:
        made.ask(method, *asked_of_words(recipe, origin))
    for asked in questions_beside(recipe, origin, [what for _, what, _ in made.asked]):
        made.ask(method, *asked)
    _ask_the_book(made, slug, settings, larder)
    return _with_questions(made, end, title or "A recipe", slug)


def draft_own(paper: Paper, settings: BookSettings, larder: Larder | None = None) -> BroughtRecipe:
    """Return a recipe that is in the book's form already: its text as it is, and what is wrong."""
    rows = paper.own_form.removesuffix("\n").split("\n")
    kept = [row for row in rows if not row.lstrip().startswith(ASKED)]
    made = _Draft(kept)
    named = re.search(r"^title:\s*[\"']?(.+?)[\"']?\s*$", paper.own_form, re.MULTILINE)
    title = named[1] if named else ""
    slug = slug_of(title)
    _ask_the_book(made, slug, settings, larder)
    end = next((at for at, row in enumerate(kept[1:], 1) if row.strip() == _RULE), len(kept) - 1)
    return _with_questions(made, end, title or "A recipe", slug)


def _add_facts(
    made: _Draft, recipe: Recipe, title: str, origin: Origin, settings: BookSettings
) -> None:
    made.add(_RULE)
    at = {"title": made.add(fact("title", title)) if title else made.add("title:")}
    if not title:
        made.ask(at["title"], "No title was found.", 'Write what it is called: "title: Plum gin".')
    elif len(title) > LONGEST_TITLE:
        made.ask(at["title"], "The title is too long.", f"{LONGEST_TITLE} letters are the most.")
    guess = guess_kind(replace(recipe, title=title))
    at["kind"] = made.add(fact("kind", guess.word) if guess.word else "kind:")
    if guess.what:
        made.ask(at["kind"], guess.what, guess.mend)
    makes = re.sub(r"^(\d+)(?=[^\W\d_]{3})", r"\1 ", _cut(recipe.makes.strip(" .")))
    makes = re.sub(r"^(about|approx\.?|ca\.?)(?=\d)", r"\1 ", makes, flags=re.IGNORECASE)
    makes = re.sub(r"(?<![\d/])(\d+)[-–](?=[1-7]/[2-8]\b)", r"\1 ", makes)  # "2-1/2 pounds"
    if left := _LEFT_EMPTY.fullmatch(makes):
        makes = ""
    at["makes"] = made.add(fact("makes", makes) if makes else "makes:")
    if not makes:
        said = f'"{left[0]}" is what pages say that nobody filled in' if left else "It does not say"
        what = f"{said}{', and not' if left else ''} how much it makes."
        made.ask(at["makes"], what, 'Write "makes: 6 jars of 200 ml", or "makes: 24 biscuits".')
    elif SERVES.search(_BRACKETS.sub("", makes)) and guess.pours:
        what = f'"{makes}" does not say how much of it there is to fill into bottles.'
        made.ask(at["makes"], what, 'Write "makes: 1 litre", or "makes: 3 bottles of 350 ml".')
    elif re.fullmatch(r"(?:about |ca\.? )?[\d\s–-]+", makes):
        made.ask(at["makes"], f'It makes "{makes}", and does not say what.', "Write what they are.")
    listed = "materials" if guess.word == "craft" else "ingredients"
    at["ingredients"] = made.add(f"{listed}:") if recipe.ingredients else len(made.rows) - 1
    group = ""
    for head, row in recipe.ingredients:
        if head != group and head:
            made.add(f"  - {_heading(head)}")
        group = head
        things = things_on(_cut(row))
        place = len(made.rows)
        for thing in things:
            made.add(f"  {'  ' if head else ''}- {item(thing)}")
        if len(things) > 1 and not is_plainly_parted(row, things):
            what = f"{len(things)} things stood on one line, and have one each now: {things[0]} …"
            made.ask(place, what, "Look whether they were parted where you would.")
        if len(row) > _LONGEST_ITEM:
            what = f'The line "{row[:40]} …" was too long, and is cut.'
            made.ask(place, what, "Write one ingredient a line.")
        elif len(things) == 1 and _TWO_THINGS.search(_BRACKETS.sub("", _MIXED.sub("", row))):
            made.ask(place, f'Two things may stand on "{row}".', "Write each on a line of its own.")
        if _ADDED.match(head):
            what = f'"{head.strip(" :")}": this may be added by whoever is given it.'
            made.ask(place, what, "If so, take it out of the list and say it in the method.")
    _ask_of_measures(made, recipe, settings, at["ingredients"])
    if writer := recipe.writer or origin.writer:
        at["author"] = made.add(fact("author", _cut(writer, _LONGEST_NAME)))
        if not origin.others:  # who published it has put the name there
            made.ask(at["author"], *asked_of_name(_cut(writer, _LONGEST_NAME), recipe))
    if recipe.season:
        at["season"] = made.add(fact("season", recipe.season))
    for name, what, mend in recipe.doubts:
        made.ask(at.get(name, 1), what, mend)


def _ask_of_measures(made: _Draft, recipe: Recipe, settings: BookSettings, place: int) -> None:
    """Ask whose cups and pints are meant, where the book's own are not the American ones."""
    if spoons := coffee_spoons(recipe):
        made.ask(place, *spoons)
    if settings.units != "us" and (asked := whose_measures(recipe)):
        if asked.american:
            made.add("units: us")
        made.ask(place, asked.what, asked.mend)


def _add_keeping(
    made: _Draft, recipe: Recipe, origin: Origin, settings: BookSettings, larder: Larder | None
) -> None:
    """Write how long its method plainly says that it keeps, or ask about the words that may."""
    steps = [step for _, step in recipe.steps]
    told = sentences_of_keeping(steps)
    beside = [row for head, rows in recipe.notes if head != "Equipment" for row in rows]
    if not told and (cold := kept_cold_beside(beside)):
        _add_cold_keeping(made, *cold)
        return
    if not told:  # it may be said loosely in the last step; above it that may be a wait
        _ask_how_long(made, len(made.rows) - 1, steps[-1:])
        _ask_of_vague(made, len(made.rows) - 1, steps[:-1])
        return
    trial = _Draft(list(made.rows))
    trial.add(_RULE)
    _add_body(trial, recipe, origin)
    kept = keeping_of(trial.rows, steps, settings, larder) if "kind:" not in made.rows else None
    if kept is None:
        _ask_how_long(made, len(made.rows) - 1, [said for said, _ in told])
        return
    place = made.add("keeps:", f"  unopened: {kept.unopened}")
    if kept.opened:
        made.add(f"  opened: {kept.opened}")
    made.add(f"  {fact('source', _cut(kept.source))}")
    if kept.is_asked:
        what = f'"{kept.said}" is taken for how long it keeps unopened.'
        made.ask(place, what, "If that is of one opened, say it as how long it keeps then.")


def _add_cold_keeping(made: _Draft, said: str, span: Span) -> None:
    """Write how long it keeps in the fridge by a note beside the method, and ask about it."""
    place = made.add("keeps:", f"  unopened: {span}", "  where: in the fridge")
    made.add(f"  {fact('source', _cut(f'the recipe as it was brought in: {said}'))}")
    what = f'"{said}" is taken for how long it keeps unopened.'
    made.ask(place, what, "If that is of one opened, say it as how long it keeps then.")


def _heading(words_of: str) -> str:
    """Return a heading within the list: "For the icing:", with its lines below it."""
    bare = re.sub(r"[:#\"'\[\]{}]", "", words_of)
    return f"{textwrap.shorten(bare, 58, placeholder=' …') or 'And'}:"


def _cut(text: str, most: int = _LONGEST_ITEM) -> str:
    return " ".join(tidy(text)[:most].split())


def _add_body(made: _Draft, recipe: Recipe, origin: Origin) -> int:
    """Add what stands below the facts; return the place of the heading of the method."""
    made.add("")
    intro = [] if origin.others else list(dict.fromkeys(recipe.intro))
    first = len(made.rows)
    for paragraph in intro:
        made.add(_prose(paragraph), "")
    _ask_how_long(made, first, recipe.intro)  # also of one that is left out, as others' words
    method = made.add("## Method", "")
    group = ""
    for number, (head, step) in enumerate(recipe.steps, 1):
        if head != group and head:
            if number > 1:
                made.add("")
            made.add(f"### {_in_method(head)}", "")
        group = head
        made.add(f"{number}. {_prose(step)}")
    listed = [row for _, row in recipe.ingredients]
    told = [_prose(step) for _, step in recipe.steps]
    doubted = doubted_steps(told, listed, {_prose(one) for one in recipe.numbered})
    if asked := asked_of(doubted):
        made.ask(method, asked, HOW_TO_ANSWER)
    if several := asked_of_several(
        recipe, [one for _, one in recipe.steps if _prose(one) in doubted]
    ):
        made.ask(method, *several)
    if not recipe.steps:
        made.ask(method, "No method was found.", 'Write its steps here: "1. Wash the jar."')
    notes: dict[str, list[str]] = {}
    for head, rows in recipe.notes:
        kept = [row for row in rows if not recipe.address or row.strip("<>. ") != recipe.address]
        if kept:  # its address stands in the draft's own source
            notes.setdefault(_note_head(head), []).extend(kept)
    for head, rows in notes.items():
        _add_note(made, head, rows)
    if source := source_of(recipe, origin):
        made.add("", "## Source", "", _prose(source))
    return method


def _in_method(head: str) -> str:
    """Return a heading among the steps; one that would begin another part is no heading there."""
    return f"For {head}" if plain(head) in words("aside") | words("ingredients") else _prose(head)


def _note_head(head: str) -> str:
    is_named = plain(head) in words("aside") or says_otherwise(head)
    named = head[:1].upper() + head[1:] if is_named else ""
    return named or "Notes"


def _add_note(made: _Draft, head: str, rows: list[str]) -> None:
    lines = [_prose(row) for row in rows]
    made.add("", f"## {head}", "")
    place = len(made.rows)
    for row in lines:
        made.add(row, "")
    made.rows.pop()
    _ask_how_long(made, place, lines)


def _ask_how_long(made: _Draft, place: int, lines: Sequence[str]) -> None:
    """Ask whether words beside the method say how long it keeps."""
    taken = next((row for row in made.rows if row.startswith("  source: ")), "")
    said_so = (one for one in map(may_say_it_keeps, lines) if one and one[0] not in taken)
    kept = (one for one in said_so if not A_WAIT.search(one[0]))
    if found := next(kept, None):
        said, span = found
        what = f'How long it keeps may stand here: "{said}"'
        made.ask(place, what, how_to_say_it(span))
    else:
        _ask_of_vague(made, place, lines)


def _ask_of_waits(made: _Draft, recipe: Recipe, method: int) -> None:
    """Ask about a length that stands behind a label alone: "Steeping time: 4 weeks"."""
    for said, span in waits_beside(recipe):
        what = f'How long it waits stands beside the method: "{said}"'
        made.ask(method, what, f'Say it in the step it is of: "Leave it for {span}."')


def _ask_of_vague(made: _Draft, place: int, lines: Iterable[str]) -> None:
    """Ask about words that say it keeps, and not how long."""
    if said := vaguely_kept(lines):
        what = f'It is said to keep, and not how long: "{_cut(said, _LONGEST_NAME)}"'
        made.ask(place, what, 'Write a length that you know of: "keeps: 6 months unopened".')


def _prose(text: str) -> str:
    """Return words as they may stand below the facts, a chapter's on lines that a file takes."""
    whole = " ".join(tidy(text).split())
    return "\n   ".join(filter(None, map(_prose_line, pieces(whole)))) or "-"


def _prose_line(said: str) -> str:
    """Return words without braces, mark-up and the signs of a heading."""
    said = said.replace("{", "(").replace("}", ")")
    for signs in ("<>", "![]"):
        if find_markup(said):
            said = said.translate({ord(sign): None for sign in signs})
    return re.sub(r"^(?:#+|>|[-*+](?=\s)|`{3,}|~{3,}|\||:?-{3,})\s*", "", said.strip()).strip()


def _ask_the_book(made: _Draft, slug: str, settings: BookSettings, larder: Larder | None) -> None:
    """Ask what the book's own check would say of the draft."""
    known = {place for place, _, _ in made.asked}
    found = checked(made.rows, slug, settings, larder)
    named = (one.what for one in found if NOT_A_FOOD in one.what)
    told = " ".join((*(what for _, what, _ in made.asked), *named))
    for problem in found:
        place, is_stated = place_of(problem, made.rows)
        if problem.what.startswith('"ingredients" is missing') and "ingredients" in told:
            continue
        stated = place in known and is_stated and not problem.what.startswith(NOT_SAFE)
        if stated or is_asked_by_name(problem.what, told):
            continue  # it was asked already, in words that know more
        made.ask(place, problem.what, problem.mend)


def _with_questions(made: _Draft, end: int, title: str, slug: str) -> BroughtRecipe:
    """Return the draft with each question above its line, or at the end of the facts."""
    above: dict[int, list[tuple[int, str, str]]] = {}
    for place, what, mend in made.asked:
        above.setdefault(min(place, end), []).append((place, what, mend))
    text: list[str] = []
    moved: dict[int, int] = {}
    for place, row in enumerate(made.rows):
        for _, what, mend in above.get(place, []):
            text.append(f"{ASKED} {question_line(what, mend)}")
        moved[place] = len(text) + 1
        text.append(row)
    questions = tuple(
        sorted(
            (Question(moved.get(place, 1), what, mend) for place, what, mend in made.asked),
            key=lambda one: one.line,
        )
    )
    return BroughtRecipe(title, slug, "\n".join(text) + "\n", questions)


def question_line(what: str, mend: str) -> str:
    """Return a question as it stands on its one line of a draft."""
    return textwrap.shorten(f"{what} {mend}", _LONGEST_QUESTION, placeholder=" …")
