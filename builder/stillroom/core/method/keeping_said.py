"""What a recipe says of its own keeping: under "keeps", else in the last words of its method.

Only words that put the finished thing away count: "leave in the fridge for two hours" sets it,
"keep in a dark place for three months" makes it. Leaves out what guidance says: keeping_limits.py.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from typing import Literal

from stillroom.core.method.chilled_last import is_chilled_last, never_leaves_the_cold
from stillroom.core.method.keeping_claims import (
    KEEPS,
    claimed_in,
    days_of,
    first_span,
    may_be_claimed_in,
)
from stillroom.core.method.keeping_opened import opened_in, without_opened
from stillroom.core.method.last_words import (
    FREEZER,
    FRIDGE,
    ON_THE_SHELF,
    PUT_AWAY,
    cut_from_where_it_lay,
    is_of_a_failed_seal,
    last_step,
    last_words,
)
from stillroom.core.method.sentences import affirmed_clauses, split_sentences
from stillroom.core.method.words import method_words
from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.keeps import OWN_PRACTICE, Keeping
from stillroom.core.recipe.model import Recipe
from stillroom.core.recipe.rhythms import is_tended
from stillroom.core.recipe.waits_elsewhere import keeps_elsewhere
from stillroom.core.when.spans import SPAN_PATTERN, Span
from stillroom.core.words.patterns import clause_regex
from stillroom.core.words.problems import Problem

Place = Literal["room", "fridge", "freezer"]
PLACE_WORDS: Mapping[Place, str] = {
    "room": "at room temperature",
    "fridge": "in the fridge",
    "freezer": "frozen",
}

_ONCE_OPENED = clause_regex(r"[^,.;]*\b(?:once|when|after|if) open(?:ed|ing)\b[^,.;]*")
# out there it does not stand
_NOT_THERE = clause_regex(
    r"\b(?:out of|outside(?: of)?|not in|never in|off) (?:the |a |your )?"
    r"(?:fridge|refrigerator|freezer)\b"
)
# as warm as it is eaten, and not where it stands
_WARMED = clause_regex(
    r"\b(?:bring|brought|come|comes|coming|return|warm|soften|let)\b[^.;]{0,40}\b(?:to|at|up to)"
    r" room temperature\b"
)
# "keeps a week in a jar, or freeze it": who keeps it in the jar is not helped by the freezer
_OR_FROZEN = clause_regex(
    r"\b(?:or|alternatively|otherwise|also|can|may|could)\b[^.;]{0,240}\b(?:freez\w*|frozen)\b[^.;]{0,240}"
    r"|\b(?:oder|auch|ou|oppure|anche|o|también|of|ook)\b[^.;]{0,240}\b(?:einfrieren|eingefroren|einzufrieren"
    r"|tiefgefrier\w*|cong[eé]l\w*|surgel\w*|invriezen|ingevroren)\b[^.;]{0,240}"
    r"|\bfreeze (?:it |them |some )?(?:for (?:longer|long[- ]term|up)|if you)\b[^.;]{0,240}",
    re.IGNORECASE,
)
# put there and left: nothing is done with it afterwards
_LEFT_COLD = clause_regex(
    r"\b(?:(?:pop|put|place|goes|transfer|move|straight|then|off)\b[^.;]{0,240}\b(?:in|into|to)|then)"
    r" (?:the |your )?(?:fridge|refrigerator)\b"
    r"(?!.{0,400}\b(?:minutes?|hours?|overnight|until|till|to (?:set|firm|chill|cool)|then|before"
    r"|fill"
    r"|pour|bottle|pot|cut|dip|roll|remove|take|stir|mix|whisk|strain|sieve|spoon|ladle|jars?)\b)",
    re.DOTALL,
)
# days of curing in the cold, out of which it is cut and eaten
_CURED = clause_regex(
    r"\b(?:refrigerate|refrigerated|(?:chill|leave|put|place|rest|cure|stand)\b[^.;]{0,240}\b(?:fridge|refrigerator))\b"
    r"[^.;]{0,240}\b(?:(?:24|36|48|60|72|96) ?(?:-|to)? ?\d* ?(?:hours|hrs?)|days?)\b"
    r"|\b(?:leave|put|place|rest|cure|stand)\b[^.;]{0,60}\b(?:[2-9]|1\d|two|three|four|five|six|seven|ten)"
    r" (?:or more )?days\b[^.;]{0,40}\b(?:fridge|refrigerator)\b"
)
# the same in German, French, Italian, Spanish, Dutch and Swedish: kept cold, not for some hours
_COLD_ELSEWHERE: Mapping[Place, re.Pattern[str]] = {
    "fridge": clause_regex(
        r"kühlschrank|\bréfrigérateur|\bfrigo|\bnevera|\brefrigerador|\bheladera|koelkast|ijskast"
        r"|\bfrigor[ií]fico|\bgeladeira|\bkøleskab|\bkjøleskap|\blodów[ck]|\bledni[cč]"
        r"|\bkyl(?:en|skåp\w*)?\b|\bgekühlt (?:auf|ge)?(?:bewahr|lager|halt)"
    ),
    "freezer": clause_regex(
        r"tiefkühl|gefrier(?:fach|schrank|truhe)|\bcongélateur|\bcongelador|\bcongelatore|vriezer"
        r"|diepvries|\bfrysen?\b"
    ),
}
_KEPT_ELSEWHERE = clause_regex(
    r"aufbewahr|aufheben|\bgekühlt|\balmacen|\blager|haltbar|\bhält\b|\bhalten\b|\bconserv|\bgard(?:er|ez|ons)\b"
    r"|\bse garde|\bguard(?:ar|e|en|a|amos)\b|bewaar|bewaren|houdbaar|\bblijft? (?:lang )?goed"
    r"|\bförvara|\bhåller\b|\bhållbar|\bstår sig|\bholder (?:sig|seg)\b|\bholde\b|\bop(?:p)?bevar"
    r"|\bprzechow|\bvydrž|\bskladov|\buchováv"
    r"|\b(?:stell\w*|mett(?:re|ez|ere|ete)|plac(?:er|ez)|ripo(?:rre|nete|ni)|pon(?:er|ga)|meter|zet"
    r"|zetten|ställ\w*)\b"
)
_LENGTH_ELSEWHERE = clause_regex(
    r"\b(?:tage?n?|wochen?|monate?n?|jours?|semaines?|mois|días?|semanas?|mes(?:es|i|e)?|giorn[oi]"
    r"|settiman[ae]|dag(?:en)?|we(?:ek|ken)|maand(?:en)?|schrank|placard|despensa|dispensa|kast)\b"
)
# "up to two weeks" is how long it keeps, where "till it sets" is a wait
_UP_TO_DAYS = clause_regex(
    r"\b(?:bis(?: zu)?|jusqu['’]à|fino a|hasta|tot(?: wel)?) (?:(?:ca|max|etwa|environ|circa) )?"
    r"[\w-]+"
    r"(?: (?:oder|ou|o|à|a|bis|of|tot) [\w-]+)? (?:tage?n?|wochen?|monate?n?|jahre?n?|jours?"
    r"|semaines?|mois|ans?|días?|semanas?|mes(?:es|i|e)?|años?|giorn[oi]|settiman[ae]|ann[oi]|dag(?:en)?"
    r"|we(?:ek|ken)|maand(?:en)?|jaar)\b|\bjusqu['’]au lendemain|\bhasta el día siguiente"
    r"|\bbis zum (?:nächsten|folge)\s?tag|\bfino al giorno (?:dopo|successivo|seguente)"
)
# "einfrieren" is put away by itself
_FROZEN_ELSEWHERE = clause_regex(
    r"\b(?:einfrieren|einzufrieren|frier\w+ [^.;,]{0,40}\bein|eingefroren|tiefgefrier\w*"
    r"|tiefgekühlt|congelez|congeler|surgeler|surgelez|congelar|congele|congelare|congelate"
    r"|surgelare|invriezen|ingevroren|frys(?:a|es)? in)\b"
)
_NOT_KEPT_ELSEWHERE = clause_regex(
    r"\b(?:nicht|kein\w*|pas|jamais|non|senza|no|sin|niet|geen|tills|bis|jusqu\w*|fino|hasta|tot|vor|avant"
    r"|prima|antes|voor|minut\w*|stunden?|heures?|or[ae]|horas?|uur|uren|nacht|nuit|notte|noche)\b"
    r"|geöffnet|öffnen|angebroch|anbruch|opening|ouverture|apertura|\bouvert|\bapert|\babiert|geopend|aangebroken"
)
# "deja que se enfríe antes de almacenarlo en la nevera": what comes first is no end of it
_BEFORE_IT_IS_KEPT = clause_regex(
    r"\b(?:antes de|avant de|prima di|alvorens|voordat|innan|bevor)\b"
    r"(?=[^,.;]*(?:almacen|guard|conserv|aufbewahr|lager|bewaar|bewaren|förvara|gard))"
)
_KEEPING_VERB = clause_regex(
    r"\b(?:keeps?|kept|lasts?|stays?|stores?|stored|good|best|used?|eat|eaten|drink|drunk|consumed?"
    r"|enjoy|refrigerate|freeze|put away|pack|shelf[- ]life)\b"
)
# of two places the warmer: "at room temperature for 3 days or in the fridge for 3 weeks"
_EITHER_PLACE = clause_regex(
    r"\b(?:room temperature|cupboard|pantry|larder|counter|shelf|cellar)\b[^.;,]*\bor\b[^.;,]*"
    r"\b(?:fridge|refrigerator)\b"
)
_HEADED = clause_regex(r"\b(?:storage|storing|store|keeping|keeps|shelf life)\b", re.IGNORECASE)


@once_a_recipe  # asked by the rules, the label and its card
def kept_at(recipe: Recipe) -> Place:
    """Return where the unopened thing is kept: what "keeps" says, else what its last step says.

    A place that only the book named makes nothing safe: what the recipe leaves open is the shelf.
    """
    where = "" if recipe.keeps.where_of_book else recipe.keeps.where
    words = _ONCE_OPENED.sub("", where.lower())
    if not words.strip():
        # whole, since "a cool, dark place, but not the fridge" is one place and no fridge
        last = " . ".join(
            ", ".join(affirmed_clauses(one)) for one in split_sentences(_last_words(recipe))
        )
        last = _without_the_freezer(_WARMED.sub(" ", _NOT_THERE.sub(" ", last)))
        away = (*PUT_AWAY.finditer(last), *_LEFT_COLD.finditer(last))
        words = " . ".join(found[0] for found in away) or _claimed_cold(recipe, last)
        words = words or " . ".join(found[0] for found in _CURED.finditer(_lay_in(recipe)))
        # "chill for a week, then keep in the cupboard": the shelf is where it ends
        if _ends_on_the_shelf(last):
            words = ""
    if FRIDGE.search(words):
        return "fridge"
    if FREEZER.search(words):
        return "freezer"
    cold = is_chilled_last(recipe, _last_words(recipe)) or never_leaves_the_cold(recipe)
    if not where and cold:
        return "fridge"
    if where:
        told = [part for part in re.split(r"[,;.]", words) if not _NOT_KEPT_ELSEWHERE.search(part)]
        elsewhere = _COLD_ELSEWHERE.items()
        return next((place for place, named in elsewhere if any(map(named.search, told))), "room")
    return _kept_elsewhere(_without_the_freezer(_last_words(recipe)))


def _without_the_freezer(words: str) -> str:
    """Return words without a freezer that is only one of two places, where another has its time.

    >>> _without_the_freezer("keeps a week, or freeze it."), _without_the_freezer("freeze it.")
    ('keeps a week, .', 'freeze it.')
    """
    rest = _OR_FROZEN.sub("", words)
    timed = re.search(SPAN_PATTERN, rest) or _LENGTH_ELSEWHERE.search(rest)
    return rest if timed or ON_THE_SHELF.search(rest) else words


def _lay_in(recipe: Recipe) -> str:
    step = cut_from_where_it_lay(recipe)
    return "" if ON_THE_SHELF.search(step) else step


def _ends_on_the_shelf(words: str) -> bool:
    """Whether the last place that words name is a shelf; "a week on the shelf, then the fridge"."""
    if _EITHER_PLACE.search(words):
        return True
    shelf, cold = (
        max((found.start() for found in place.finditer(words)), default=-1)
        for place in (ON_THE_SHELF, FRIDGE)
    )
    return shelf > cold


def _kept_elsewhere(text: str) -> Place:
    """Return where the last step keeps it, told in another language; the shelf where none is told.

    >>> _kept_elsewhere("In Flaschen füllen und im Kühlschrank aufbewahren.")
    'fridge'
    >>> _kept_elsewhere("Über Nacht im Kühlschrank lagern."), _kept_elsewhere("Kühl lagern.")
    ('room', 'room')
    """
    for sentence in split_sentences(text.lower()):
        sentence = _BEFORE_IT_IS_KEPT.sub(" ", _UP_TO_DAYS.sub(" ", sentence))
        if _FROZEN_ELSEWHERE.search(sentence) and not _NOT_KEPT_ELSEWHERE.search(sentence):
            return "freezer"
        if _KEPT_ELSEWHERE.search(sentence) and not _NOT_KEPT_ELSEWHERE.search(sentence):
            for place, named in _COLD_ELSEWHERE.items():
                if named.search(sentence):
                    return place
    return "room"


def _claimed_cold(recipe: Recipe, last: str) -> str:
    """Return a sentence that says plainly that the finished thing keeps in the fridge.

    It may stand earlier: "This will keep in the fridge for a fortnight", then how jars are washed.
    """
    if _ends_on_the_shelf(last):
        return ""
    for sentence in last.split(" . "):
        if FRIDGE.search(sentence) and claimed_in(sentence, recipe):
            return sentence
    meant = _words_for_it(recipe)
    for step in reversed(recipe.method):
        for sentence in map(without_opened, split_sentences(step.text.lower())):
            cold = FRIDGE.search(sentence) and first_span(sentence, (KEEPS,))
            if cold and _speaks_of_it(sentence, meant):
                return ", ".join(affirmed_clauses(sentence))
    return ""


def claimed_in_method(recipe: Recipe) -> Span | None:
    """Return how long the last step says that it keeps; None where it does not say plainly."""
    last = _last_words(recipe)
    claimed = claimed_in(last, recipe)
    if claimed and (either := _EITHER_PLACE.search(last)):
        # "3 days at room temperature or 3 weeks in the fridge": the warmer has the shorter
        beside = last[either.start() :].split(".")[0]
        named = [span for found in re.finditer(SPAN_PATTERN, beside) if (span := days_of(found[0]))]
        claimed = min([claimed, *named], key=Span.minutes)
    return claimed


def keeping_of_method(recipe: Recipe) -> Keeping | None:
    """Return the keeping by the method's own word; None where it does not say plainly.

    "Several weeks" names no number: whatever stood on a card for it, nobody said it.
    """
    claimed = _claimed_in_last_step(recipe)
    if claimed is None or claimed.loosely:
        return None
    opened = recipe.keeps.opened or opened_in_method(recipe)
    return replace(recipe.keeps, unopened=claimed, opened=opened, source=OWN_PRACTICE, by="method")


def vaguely_kept(recipe: Recipe) -> Span | None:
    """Return the least that the last step can mean by words without a number; else None."""
    claimed = _claimed_in_last_step(recipe)
    return claimed if claimed and claimed.loosely else None


def _claimed_in_last_step(recipe: Recipe) -> Span | None:
    return claimed_in_method(recipe) or _claimed_in_its_language(recipe)


def opened_in_method(recipe: Recipe) -> Span | None:
    """Return how long the last step says that it keeps once it is opened; None of none."""
    return opened_in(split_sentences(last_step(recipe)))


def _claimed_in_its_language(recipe: Recipe) -> Span | None:
    """Return how long the last step says in another language that the unopened thing keeps."""
    told = split_sentences(last_step(recipe))
    spans = [span for one in told if (span := keeps_elsewhere(without_opened(one)))]
    return min(spans, key=Span.minutes) if spans else None


def claimed_elsewhere(recipe: Recipe) -> Span | None:
    """Return the shortest time that any other words of the recipe say the finished thing keeps.

    They may speak of a part of it, or in another language of one that is opened: so they shorten
    what the book would say, and never lengthen it.
    """
    card = recipe.card
    meant = _words_for_it(recipe)
    texts = [step.text for step in recipe.method]
    texts += [recipe.summary, recipe.intro, card.what, card.use, card.keep]
    texts += [section.text for section in recipe.sections]
    spans = []
    for sentence in (one for text in texts for one in _told(text)):
        if span := keeps_elsewhere(without_opened(sentence)):
            spans.append(span)
        low = without_opened(sentence).lower()
        if _speaks_of_it(low, meant):
            spans += filter(None, [claimed_in(low, recipe)])
    for section in filter(lambda one: _HEADED.search(one.heading), recipe.sections):
        spans += filter(None, map(_plain_span, _told(section.text)))
    return min(spans, key=Span.minutes) if spans else None


def _words_for_it(recipe: Recipe) -> frozenset[str]:
    """Return the words before "keeps" that mean what is made: "they", "the jars", its name."""
    own = re.compile(r"[^\W\d_]+").findall(f"{recipe.title} {recipe.kind.name}".lower())
    return frozenset(method_words("before_keeps") | {word.removesuffix("s") for word in own})


def _speaks_of_it(sentence: str, meant: frozenset[str]) -> bool:
    """Whether a sentence in small letters says how the finished thing keeps, and unopened."""
    verb = _KEEPING_VERB.search(sentence)
    if verb is None or _ONCE_OPENED.search(sentence):
        return False
    before = re.findall(r"[^\W\d_]+", sentence[: verb.start()])
    return all(word in meant or word.removesuffix("s") in meant for word in before)


def _plain_span(sentence: str) -> Span | None:
    """Return the days that a line below "Storage" names, of what is neither opened nor frozen."""
    if _ONCE_OPENED.search(sentence.lower()) or FREEZER.search(sentence.lower()):
        return None
    found = re.search(SPAN_PATTERN, sentence.lower())
    return days_of(found[0]) if found else None


def _told(text: str) -> list[str]:
    """Return the sentences of a text; each line of one in Markdown begins another."""
    sentences = (one for line in text.splitlines() for one in split_sentences(line))
    return [one for one in sentences if not is_of_a_failed_seal(one)]


def may_say_keeping(text: str) -> tuple[str, Span] | None:
    """Return the sentence of a text that may say how long a thing keeps, and how long; else None.

    It may speak of one that is opened, or of a part of it: whoever wrote it is to be asked.

    >>> found = may_say_keeping("Lovely on toast. It keeps in a tin for about 3 weeks.")
    >>> found[0], str(found[1])
    ('It keeps in a tin for about 3 weeks.', '3 weeks')
    >>> may_say_keeping("Keep it warm for two hours."), may_say_keeping("Keep stirring for a day.")
    (None, None)
    """
    for sentence in _told(text):
        if span := keeps_elsewhere(sentence) or may_be_claimed_in(sentence):
            if is_tended(sentence):
                continue  # "Store it in the dark and shake it daily for a week" is a wait
            return sentence.strip(), span
    return None


def ask_of_keeping(recipe: Recipe) -> tuple[Problem, ...]:
    """Return a question where the method says in another language how long it keeps.

    Which state is meant is not read there, so that nothing is taken from it unasked.
    """
    if recipe.keeps.unopened is not None and recipe.keeps.by not in ("book", "method"):
        return ()
    for step in recipe.method:
        for sentence in split_sentences(step.text):
            if span := keeps_elsewhere(sentence):
                what = f'How long it keeps may stand here: "{sentence.strip()}"'
                return (Problem(recipe.file, step.line, what, how_to_say_it(span)),)
    return ()


def how_to_say_it(span: Span) -> str:
    """Return how a length that may be of keeping is written as such; one nobody said, by no figure.

    >>> how_to_say_it(Span(3, 3, "week", loosely=True))
    'It names no number: write the longest that you know of under "keeps".'
    """
    if span.loosely:
        return 'It names no number: write the longest that you know of under "keeps".'
    return f'If that is of one unopened, write "keeps: {span} unopened" above.'


@once_a_recipe
def _last_words(recipe: Recipe) -> str:
    return last_words(recipe)
