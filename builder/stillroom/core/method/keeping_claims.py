"""How long words say that the finished thing keeps, as "Keeps 3 weeks" or "Fridge 3 months" does.

Only words about what is finished count: "leave in the fridge for two days" makes it. Leaves out
where in a recipe they stand, and where the thing is kept: keeping_said.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from stillroom.core.recipe.model import Recipe
from stillroom.core.when.spans import LOOSELY, SPAN_PATTERN, Span, as_loosely, parse_span
from stillroom.core.words.patterns import clause_regex
from stillroom.core.words.problems import Unreadable

_LONG = (
    r"(?:about |roughly |around |a good |at least |up to |(?:well )?over |more than )?"
    rf"({SPAN_PATTERN})"
)
# between the verb and its time: what says that it is still being made, or is about something else
_NOT_YET = (
    r"(?:(?!\b(?:after|before|until|till|from|over|once|stirring|improv\w*|matur\w*|getting|warm|hot"
    r"|simmer\w*|boil\w*|cooking|turning|shaking|infus\w*|steep\w*|ferment\w*|leave|stand|soak\w*"
    r"|cur(?:e|ing)|macerat\w*)\b)[^.;]){0,160}?"
)
_AND_THEN = (
    r"(?!\s*(?:,\s*)?(?:before|until|till|then"
    r"|to (?:mature|infuse|steep|mellow|develop|set|let|allow)))"
)
KEEPS = clause_regex(
    # "biscuits keep", "they keep"; "Keep two weeks before eating" is a wait
    r"\b(?:keeps|(?:they|these|it|(?!always)[a-z]{2,}s) keep"
    r"|(?:will|should|can|may|ll)(?: \w+ly)? keep"
    r"|(?:not|cannot|never|\w+n['’]t) (?:keep|last)|lasts"
    r"|(?:will|should|can|may|ll|that|this|these|those|they) last"
    r"|[a-z]{3,}s last|lives?(?: \w+ly)?|fridge life"
    r"|(?:stays?|remains?) (?:good|fresh|crisp|delicious|tasty|edible|usable)"
    r"|(?:is|are|be) good for|^\W*good for|best within|(?:can|may|could) be (?:kept|stored)"
    rf"|(?:shelf[- ]life|life[- ]?span))\b{_NOT_YET}\b{_LONG}{_AND_THEN}"
)
_IS_WELL = r"(?:is|are|be|remains?|stays?|they['’]re|it['’]s)"
_IN_THE_MAKING = (
    r"(?:matur|steep|infus|ferment|leav|left|stand|soak|cur(?:e|ing)|macerat|age|rest|wait|brew|dry|shak"
    r"|stir|boil|simmer|cook|bak)\w*"
)
_WELL = r"(?:good|fine|ok|okay|safe|fresh|edible|crisp|perfect)"
# "the chutney can be prepared 2 weeks ahead"
_AHEAD = clause_regex(
    r"\b(?:can|may|could) (?:also )?be (?:made|prepared|baked|cooked|assembled|done)\b"
    rf"[^.;]*?\b{_LONG} "
    r"(?:ahead|in advance|beforehand|before (?:serving|giving|using|you need))\b"
)
_SURE = (
    KEEPS,
    _AHEAD,
    # "they are ready after a week, and keep for a month"
    clause_regex(
        r"\b(?:is|are|be) ready\b[^.;]{0,60}\b(?:and|but|then) (?:will |should )?keeps?\b"
        rf"{_NOT_YET}\b{_LONG}"
    ),
    # "store in the pantry for 3 months unopened"
    clause_regex(
        rf"\b(?:keep|store|stored|kept)\b[^.;]*?\bfor {_LONG},? (?:if |while |when )?"
        r"(?:un-?opened|sealed)\b"
        rf"|\bun-?opened\b[^.;]*?\bfor {_LONG}"
    ),
    clause_regex(
        r"\b(?:use|eat|eaten|drink|drunk|consumed?|enjoy|used)\b[^.;]*?"
        rf"\b(?:within|inside|in under)\s+{_LONG}"
    ),
    clause_regex(
        r"\b(?:keep|store|stored|kept|refrigerated?|freeze)\b[^.;]*?"
        rf"\b(?:up to|no (?:longer|more) than|as long as|a maximum of|at most)\s+{_LONG}"
    ),
    # "fine in the fridge for 3 weeks", "it holds for", "best before 3 months", "at most 3 months"
    clause_regex(
        rf"(?:\b{_IS_WELL} {_WELL}|(?:^|(?<=[.] ))\W*{_WELL})\b"
        rf"{_NOT_YET}\b(?:for|up to)\s+{_LONG}{_AND_THEN}"
        r"|\b(?:stores|holds|(?:will|should) hold)(?: (?:well|up|happily|nicely))?(?: for)?\s+"
        rf"{_LONG}{_AND_THEN}"
        rf"|\b(?:use|best|eat|consume) (?:by|before)\s+{_LONG}(?! (?:after|from|before))"
        rf"|(?:^|(?<=[.] ))(?![^.]*\b{_IN_THE_MAKING})[^.]*?"
        rf"\b(?:max|maximum|at (?:the )?most)\b[.:]?\s+{_LONG}"
    ),
)
_COLD = r"(?:fridge|refrigerator|refrigerated?|chilled|cold)"
_DRY = r"(?:tins?|air-?tight|cupboard|pantry|larder|sealed|box|container|room temperature)"
_BESIDE = (
    r"(?:in|the|an?|your|my|and|at|of|dry|dark|cool|closed|lidded|clean|biscuit|cookie|cake|glass|jars?"
    r"|place|for|up to|about|max|maximum|most|ok|okay|fine|good|life|storage|shelf|they|it|these)"
)
_OR_FROZEN = r"(?:\W+(?:or\W+)?(?:freezer|frozen|freeze)\b.*)?"


def _no_more_than(words: str, place: str) -> str:
    """Return the pattern of a sentence of these words and a time alone, a place among them."""
    some = rf"(?:{words})"
    return (
        rf"(?:^|(?<=[.] )|(?<=[(]))(?=[^.]*\b{place}\b)\W*(?:{some}\W+)*?({SPAN_PATTERN})"
        rf"(?:\W+{some})*{_OR_FROZEN}\W*(?=$| [.] )"
    )


# of what is steeped or lives they may be how it is made: "3 weeks in a dark cupboard"
_ON_ITS_OWN = (
    clause_regex(_no_more_than(rf"{_BESIDE}|{_COLD}|stored?|keep|kept", _COLD)),
    clause_regex(_no_more_than(rf"{_BESIDE}|{_DRY}", _DRY)),
    clause_regex(_no_more_than(rf"{_BESIDE}|{_COLD}|{_DRY}", r"(?:storage|shelf[- ]life)")),
    clause_regex(
        rf"(?<!to )\b(?:use|eat|finish)(?: (?:it|them|this|these|all))*(?: up)? in\s+{_LONG}"
    ),
    clause_regex(
        r"\b(?:discard|throw (?:out|away)|bin)"
        r"(?: (?:it|them|any\w*|left\w*|what(?:ever)?|is|the rest))*"
        rf" after\s+{_LONG}"
    ),
)
# bottled and not left again, it is finished: "Bottle it. Fridge, 2 weeks."
_FINISHED = clause_regex(
    rf"\b(?:bottled?|decant\w*|pour (?:it )?into|fill)\b(?!.*\b{_IN_THE_MAKING}\b)", re.DOTALL
)
# where another sentence says when it is ready, "Keep 2 months in the fridge" is no wait for that
_READY = clause_regex(
    r"\bready (?:to (?:eat|drink|use|serve|enjoy)|in|after|within|at once|straight away|now)\b"
    r"|\b(?:can|may) be (?:eaten|drunk|used|served|enjoyed)\b[^.;]*\b(?:after|straight away|at once"
    r"|immediately|right away|from the)\b|\b(?:eat|drink|use|serve|best|good) after\b"
)
_THE_SAME_DAY = clause_regex(
    r"\b(?:eat|eaten|use|used|drink|drunk|enjoy|enjoyed|serve|served|best)\b[^.;]*"
    r"\b(?:(?:on )?the (?:same )?day(?! (?:after|before))|same[- ]day"
    r"|within (?:24|twenty-four) hours)\b"
)
_PUT_AWAY_FOR = (
    clause_regex(
        r"\b(?:stored?|keep|kept|put away)\b[^.;]*?"
        r"\b(?:fridge|refrigerator|freezer|refrigerated|frozen)\b"
        rf"{_NOT_YET}\bfor\s+{_LONG}{_AND_THEN}"
    ),
)
# what is put up stands in its jar to be ready, too
_IN_ITS_TIN = (
    clause_regex(
        r"\b(?:store|keep|put away|pack)\b[^.;]*?"
        r"\b(?:air-?tight|sealed|lidded|closed|tin|box|container)\b"
        rf"{_NOT_YET}\bfor\s+{_LONG}{_AND_THEN}"
    ),
)
# "Pot hot. Keep 6 months in a cupboard": the cook's word, unless it may be how the thing is made
_KEEP_SO = clause_regex(
    rf"(?:^|(?<=[.] ))\W*(?:keep|store)\b(?![^.]*\b(?:before|until|then|brine|{_IN_THE_MAKING})\b)"
    rf"{_NOT_YET}\b{_LONG}{_AND_THEN}"
)
_LEAST_SO = 7  # days; of what is put up in jars, which may stand there to be ready, three months
_LEAST_PUT_UP = 90
# looser: it asks, and is never taken for granted
_MAY_CLAIM = clause_regex(
    r"\b(?:keeps?|kept|stor(?:es?|ed|ing)|lasts?|good|(?:use|eat|drink|finish|consume)d?\b[^.;]*?"
    rf"\bwithin)\b{_NOT_YET}\b{_LONG}"
)
# "3+ months", "3 or more months"
_OR_MORE = clause_regex(r"(?<=\d)\+|(?<=\d) or more(?= (?:day|week|month|year))")
# loose words at the least that they can mean, since what is shorter is safe
_LOOSELY: Mapping[str, str] = {
    r"\b(?:an?|one) (?:full|whole|entire|good) (?=day|week|month|year)": "1 ",
    r"\b(?:an? )?couple (?:of )?(?=day|week|month|year)": "2 ",
    r"\b(?:an? )?(?:good )?few (?:more )?(?=day|week|month|year)": f"2{LOOSELY} ",
    r"\bseveral (?=day|week|month|year)": f"3{LOOSELY} ",
    r"\ball (?:week|the week)\b": "for 1 week",
    r"\b(?:an?|one) (day|week|month|year) or (?:two|so)\b": r"1 \1",
    r"\b(?:one|1) or (?:two|2) (day|week|month|year)s\b": r"1 \1",
}
# "refrigerate 24 hours" ends the making; nobody keeps a thing for hours
_WAITS_COLD = clause_regex(
    r"\b(?:refrigerate|chill)\b(?![^.]*\b(?:up to|no (?:longer|more)|within|at most|maximum)\b)"
)
# "in the freezer 6 months or in the fridge 3 weeks": whoever is given it may have it in the fridge
_FROZEN = clause_regex(r"\bfr(?:eez\w*|ozen)\b")
_TWO_PLACES = clause_regex(r"[,;(]| (?:or|and|but|else)\b")
_THAWED = clause_regex(r"\b(?:thaw|defrost)\w*")
_FROZEN_FOR = clause_regex(
    rf"\s*\b(?:in(?:to)? )?(?:the |a |your )?fr(?:eez\w*|ozen)\b.{{0,60}}?{SPAN_PATTERN}"
    rf"|\s*(?:\b(?:for )?(?:up to )?){SPAN_PATTERN}.{{0,60}}?\bfr(?:eez\w*|ozen)\b"
)
_LONGEST_CLAIM = 400
_A_DAY = 24 * 60
_A_WEEK = 7 * _A_DAY


def claimed_in(words: str, recipe: Recipe) -> Span | None:
    """Return how long plain words of a recipe say that it keeps; None where they do not."""
    kind = recipe.kind
    best = dict(kind.timeline).get("best from", "")
    ages = best and parse_span(best).minutes() >= _A_WEEK
    if ages or kind.is_("steeped") or kind.is_("living"):
        cold = _ON_ITS_OWN[:1] if _FINISHED.search(words) else ()
        return first_span(words, (*_SURE, *cold)) or _kept_when_ready(words)
    tins = () if kind.is_("put up") else _IN_ITS_TIN
    found = first_span(words, (*_SURE, *_PUT_AWAY_FOR, *tins, *_ON_ITS_OWN))
    kept = first_span(words, (_KEEP_SO,)) if kind.is_eaten else None
    least = _LEAST_PUT_UP if kind.is_("put up") else _LEAST_SO
    if not found and kept and kept.minutes() >= least * _A_DAY:
        return kept
    return found or (parse_span("1 day") if _THE_SAME_DAY.search(words) else None)


def _kept_when_ready(words: str) -> Span | None:
    """Return how long it is kept once it is ready, where a sentence of its own says when it is.

    >>> str(_kept_when_ready("keep 2 months in the fridge . ready in 2 days"))
    '2 months'
    >>> _kept_when_ready("keep 2 months in the fridge . then strain")
    >>> _kept_when_ready("keep it in the dark for 2 months . it is ready in 2 months")
    """
    sentences = re.split(r"[.;]", words.lower())
    ready = [one for one in sentences if _READY.search(one)]
    if not ready:
        return None
    kept = " . ".join(one for one in sentences if one not in ready)
    found = first_span(kept, (*_PUT_AWAY_FOR, _KEEP_SO, *_ON_ITS_OWN[:1]))
    told = [days_of(span[0]) for one in ready for span in re.finditer(SPAN_PATTERN, one)]
    sooner = all(found and span.minutes() < found.minutes() for span in told if span)
    return found if sooner else None


def may_be_claimed_in(words: str) -> Span | None:
    """Return how long words may say that something keeps, to be asked about."""
    return first_span(words, (*_SURE, *_PUT_AWAY_FOR, *_IN_ITS_TIN, _MAY_CLAIM))


def plainly_claimed_in(words: str) -> Span | None:
    """Return how long words say of any thing that it keeps, and no wait of it; else None.

    >>> str(plainly_claimed_in("It can be kept for up to 3 months."))
    '3 months'
    >>> plainly_claimed_in("Keep in a dark place for three months.")
    """
    return first_span(words, _SURE)


def first_span(words: str, patterns: Iterable[re.Pattern[str]]) -> Span | None:
    """Return the time that the first of the patterns finds in words; None of less than a day."""
    words = _OR_MORE.sub("", words.lower())
    for loose, least in _LOOSELY.items():
        words = re.sub(loose, least, words)
    words = _without_the_frozen(words)
    for pattern in patterns:
        if found := pattern.search(words):
            span = days_of(next(filter(None, found.groups())))
            if span is None or span.unit != "hour" or not _WAITS_COLD.search(found[0]):
                return span
    return None


def _without_the_frozen(words: str) -> str:
    """Return words without the freezer's time, in a sentence that has another place's beside it.

    >>> _without_the_frozen("store frozen for 6 months or in the fridge for 3 weeks . stir.")
    'store or in the fridge for 3 weeks . stir.'
    >>> _without_the_frozen("store in the freezer for 6 months, or give it away.")
    'store in the freezer for 6 months, or give it away.'
    """
    if not _FROZEN.search(words):
        return words
    return ".".join(map(_of_the_warmer_place, words.split(".")))


def _of_the_warmer_place(sentence: str) -> str:
    if len(sentence) > _LONGEST_CLAIM:
        return sentence
    marks = [found[0] for found in _TWO_PLACES.finditer(sentence)]
    parts = _TWO_PLACES.split(sentence)
    timed = (part for part in parts if re.search(SPAN_PATTERN, part))
    if _THAWED.search(sentence) or all(map(_FROZEN.search, timed)):
        return sentence
    told = (_FROZEN_FOR.sub("", part) if _FROZEN.search(part) else part for part in parts)
    return "".join(part + mark for part, mark in zip(told, [*marks, ""], strict=True))


def days_of(text: str) -> Span | None:
    """Return a time of a day or longer; None of what is shorter or no time."""
    try:
        span = parse_span(text)
    except Unreadable:
        return None
    return as_loosely(span, text) if span.minutes() >= _A_DAY else None
