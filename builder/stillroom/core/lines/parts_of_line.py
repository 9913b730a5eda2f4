"""What a line is read into, and where its food ends and its note begins.

"butter, softened", "coriander (cilantro) leaves", "salt, to taste". Leaves out amounts:
line_amounts.py.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cache

from stillroom.core.amounts.quantities import Amount, Unmeasured
from stillroom.core.lines.amounts import Measured
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

_OF = late_regex(r"\s*(?:[-x×]\s+)?(?:of\s+(?:the\s+|a\s+|an\s+)?)?", re.IGNORECASE)
_OF_ELSEWHERE = late_regex(
    r"\s*(?:d['’]\s?|(?:de|du|des|di|do|da|dos|das|del|dei|della|van)\s+(?:l['’]\s?|la\s+|las\s+|los\s+)?|dell['’]\s?)"
    r"(?=\w)",
    re.IGNORECASE,
)
_CUT = late_regex(
    # begins with one of these signs, which is quickly told
    r"(?=[\s,;.(\[—-])\s*(?:,(?!(?<=\d,)\d)|;|\s[-–—]\s|\(|\[|\s+plus\s+(?:extra|more|another)\b|\splus\s(?=[0-9½¼¾])"
    r"|\s+[+]\s+(?:extra|more)\b|\s+(?=(?:weighing|including|stirred|made\s+with|diluted|depending\s+on)\b)"
    r"|\s+(?=(?:mixed|dissolved|blended|combined|whisked|beaten|soaked|diluted)\s+(?:with|in|into)\b)"
    r"|\s+(?=(?:opløst|oppløst|udrørt|utrørt|rørt\s+ut|rørt\s+ud|upplöst|utrörd|utblandad|aufgelöst|verrührt|angerührt"
    r"|dissoute?s?|délayée?s?|disuelt[oa]s?|diluid[oa]s?|sciolt[oaie]|stemperat[oaie]|opgelost)\s+(?:i|in|dans|en|nel|nell|med|mit|met|con)\b)"
    r"|\s+(?=(?:or|OR)\s+(?:[0-9½⅓⅔¼¾⅛]|(?:one|two|three|four|five|six|eight|ten|twelve)\b))"
    r"|\s+(?=for\s+\w+ing\b)|\s*—\s*|\s+--+\s+|\s*-;\s*|\s+:\s+"
    r"|\s+(?=@\s|(?:preferably|such\s+as)\s)|(?<!\byou)(?<!\bwe)(?<!\bI)\s+(?=like\s)|\s+(?=(?:(?:about|of)\s+)?(?:the\s+)?size\s+of\s+(?:an?\s|(?:egg|walnut|hazelnut|nut|nutmeg|pea|bean)\b))"
    r"|(?<=[a-z]{3})-\s+(?=[a-z])(?!(?:to|or|and|und|oder|bis|ou|et|o|e|y|en|of|och|eller)\s)"
    r"|\s+(?=(?:about|approx\.?|approximately|around)\s+[0-9½¼¾])"
    r"|\s+(?=after\s+\w+ing\b)|\s+[*†‡]+\s+(?=[a-z])"
    # "malt vinegar. Don't be tempted by another": a word to the cook
    r"|\.\s+(?=(?:Don['’]t|Do\s+not|Use|You|If|I|It|This|These|Make\s+sure|We|Any|Not|See|Add|Keep|Choose|Try"
    r"|Adjust|Substitute|Omit|Si|Vous|Ne|On|Wenn|Man|Ich|Sie|Nicht|Se|Io|Non|Yo|No|Puedes|Als|Je|Ik|Niet)\s)"
    # "quinces for about 1 l juice"
    r"|\s+(?=(?:for|für|pour|per|para|voor)\s+(?:(?:about|ca\.?|circa|etwa|environ|unos|ongeveer)\s+)?\d)"
    r"|\s+(?=(?:cut|broken|torn|divided|separated)\s+(?:in|into)\s)"
    # what it is for, and what stands in its place, in other languages
    r"|\s+(?=z(?:um|ur)\s+[A-ZÄÖÜ]|für\s+(?:die|das|den)\s|pour\s+(?:l[ae]s?\s|l['’]|[a-zé]+er\b|servir)"
    r"|para\s+(?:la|el|los|las|[a-z]+[aei]r)\b|voor\s+(?:de|het)\s|om\s+te\s"
    r"|per\s+(?:la|il|lo|le|[a-z]+[aei]re)\b)"
    r"|\s+(?=[aà]\s+temp[eé]ratur[ae]\s)"
    r"|\s+(?=(?:oder|ou|o)\s+[0-9½⅓⅔¼¾⅛]))"
)
_MARKS = late_regex(r"(?<=[\w)\s])[*†‡]+(?=$|[\s,;)])")  # of a note below: "1 cup lime*"
_SHORTENED = {
    "lg": "large", "lge": "large", "lrg": "large", "sm": "small", "med": "medium", "md": "medium",
    "kl": "kleine", "mittl": "mittlere",
}  # fmt: skip
_ITS_SIZE = late_regex(rf"(?:{'|'.join(_SHORTENED)})\.?\s+(?=[A-Za-z])", re.IGNORECASE)
_SHARED = late_regex(
    r"\s*(?P<more>(?:[a-z-]+(?:\s[a-z-]+)?,\s*)*[a-z-]+(?:\s[a-z-]+)?,?\s+(?:or|and)\s+"
    r"[a-z][a-z -]*)(?:$|[,;(])",
    re.IGNORECASE,
)
# words that cannot be a food alone: the food stands behind the next comma
_NO_FOOD = late_regex(
    r"(?:(?:[a-z-]+(?<!se)(?<!we)ed|[a-z]+less|and|or|not|too|but|very|finely|roughly|freshly|lightly|firmly|loosely"
    r"|thinly|coarsely|well|sized?|medium-size|fresh|frozen|dry|cold|hot|warm|raw|ripe|firm|young|good|quality|large|medium|small"
    r"|medium-small|medium-large"
    r"|big|thick|thin|fat|lean|plump|tender|soft|hard|whole|free-range|boned"
    r"|(?:bone|skin)[ -](?:in|on|off|out))\b[\s]*)+",
    re.IGNORECASE,
)
_TRAILING = late_regex(r"\s+-?(?:or|and|plus|with)-?$", re.IGNORECASE)


@dataclass(frozen=True)
class LineReading:
    """What one line says; `spans` gives the characters (start, end) of each part by its name."""

    amount: Amount | Unmeasured | None
    item: str
    note: str = ""
    also: tuple[Amount, ...] = ()
    each: Amount | None = None
    fullness: str = ""
    spans: Mapping[str, tuple[int, int]] = field(default_factory=dict, hash=False)


@cache
def line_words() -> dict[str, list[str]]:
    """Return the words of a line beside its units, by what they are."""
    found: dict[str, list[str]] = read_data("line_words.yml")
    return found


def either(words: list[str]) -> str:
    """Return the pattern of any of these words, the longest tried first."""
    ordered = sorted(words, key=len, reverse=True)
    return "|".join(re.escape(word).replace(r"\ ", r"\s+") for word in ordered)


_CLOSES = late_regex(r"[)\]]")


@cache
def unmeasured_words() -> re.Pattern[str]:
    """Return the pattern of words that leave an amount to the cook: "to taste"."""
    return late_regex(
        rf"(?:^|[\s,(]+)(?P<words>{either(line_words()['unmeasured'])})(?!\w)", re.IGNORECASE
    )


@cache
def vague_words() -> re.Pattern[str]:
    """Return the pattern of amounts that are no number: "a few", "some"."""
    words = either(line_words()["vague"]).replace("'", "['’]")  # "un peu d'eau"
    return late_regex(rf"(?P<words>{words})(?:(?<=['’])\s*(?!\d)|\s+(?!\d)|$)", re.IGNORECASE)


def after_of(text: str, at: int, measured: bool = False) -> int:
    """Return where the food begins behind "of", after a unit or a noun also "de", "di", "van"."""
    of = _OF.match(text, at)
    at = of.end() if of else at
    elsewhere = _OF_ELSEWHERE.match(text, at) if measured else None
    return elsewhere.end() if elsewhere else at


_ARTICLE = late_regex(r"an?\s+(?=[A-Za-z])", re.IGNORECASE)


def past_article(text: str, at: int, measured: Measured) -> int:
    """Return where the food begins behind the article of a part of one: "½ a lemon"."""
    own = measured.amount
    counted = own.high < 1 and not (own.unit or own.noun or measured.each)
    article = _ARTICLE.match(text, at) if counted else None
    return article.end() if article else at


def with_measured(text: str, reading: LineReading, measured: Measured) -> LineReading:
    """Return a reading with all that was measured; raises Unreadable for nothing at all."""
    if isinstance(measured.amount, Amount) and measured.amount.low <= 0:
        raise Unreadable(f'"{text.strip()}" is nothing at all.', "Write an amount above 0.")
    return replace(
        reading,
        amount=measured.amount,
        also=measured.also,
        each=measured.each,
        fullness=measured.fullness,
        spans={**reading.spans, "amount": (measured.start, measured.end)},
    )


def split_food(text: str, at: int, amount: Amount | Unmeasured | None) -> LineReading:
    """Split what follows the amount into the food and what is said of it."""
    cut = _first_cut(text, at)
    bracket = cut and cut[0].strip() in ("(", "[")
    end = cut.start() if cut else len(text)
    item, note = _tidy(_TRAILING.sub("", text[at:end].strip(" ."))), ""
    if bracket and cut and not item:  # "1 pound (2 large) firm, tart apples"
        closed = _CLOSES.search(text, cut.end())
        rest = split_food(text, closed.end(), amount) if closed else None
        if closed and rest and rest.item:
            said = text[cut.end() : closed.start()].strip()
            return replace(rest, note=", ".join(part for part in (said, rest.note) if part))
    if cut:
        note_at = (
            cut.end() if cut[0].strip(" -") in (",", ";", ".", "–", "—", ":", "") else cut.start()
        )
        note = text[note_at:].strip(" ,;")
        if bracket:
            item, note, end = _open_bracket(text, at, cut, item)
    wanted = unmeasured_words().search(item)
    if wanted and wanted.start() > 0 and wanted["words"].lower() != "to":
        note = ", ".join(part for part in (item[wanted.start() :].strip(" ,"), note) if part)
        item = item[: wanted.start()].strip()
        end = at + len(item)
    begin = at + len(text[at:end]) - len(text[at:end].lstrip())
    spans = {"food": (begin, begin + len(item))} if item else {}
    if note:
        place = text.rfind(note)
        spans["note"] = (place, place + len(note)) if place >= 0 else (end, len(text))
    return LineReading(amount, item, note, spans=spans)


def _tidy(item: str) -> str:
    """Take the mark of a note below from a food, and write its size out."""
    bare = _MARKS.sub("", item).strip(" .")
    size = _ITS_SIZE.match(bare)
    return f"{_SHORTENED[size[0].strip(' .').lower()]} {bare[size.end() :]}" if size else bare


def _shares_its_noun(text: str, at: int, cut: re.Match[str]) -> int:
    """Return where a list ends whose foods share a last word: "beef, chicken or vegetable stock".

    0 where a comma parts no such foods.
    """
    if cut[0].strip() != ",":
        return 0
    more = _SHARED.match(text, cut.end())
    first = text[at : cut.start()].lower().split()
    if more is None or not first:
        return 0
    last = more["more"].lower().split()
    heads, alone = line_words()["shared_heads"], line_words()["never_share"]
    shares = (
        last[-1] in heads
        and last[-2] not in ("or", "and")
        and first[-1] not in alone
        and not set(first) & set(heads)
        and not _NO_FOOD.fullmatch(" ".join(last[:-1]))
        and (not first[-1].endswith("s") or first[-1] in ("citrus", "hibiscus"))
    )
    return more.start("more") + len(more["more"].rstrip()) if shares else 0


def _is_no_food(words: str) -> bool:
    """Whether words only say how large or how good what follows is: "large", "belles", "store"."""
    return bool(_NO_FOOD.fullmatch(words)) or set(words.lower().split()) <= _words_of_size()


@cache
def _words_of_size() -> frozenset[str]:
    return frozenset((*line_words()["sizes"], *line_words()["fullness"]))


def _first_cut(text: str, at: int) -> re.Match[str] | None:
    """Find where the food ends: not at a comma between words of which none is a food."""
    listed = at
    for cut in _CUT.finditer(text, at):
        named = text[at : cut.start()].strip(" ,")
        bare = named.replace(",", " ")
        if cut.start() < listed:  # "vanilla, almond, or peppermint extract": the same list
            continue
        if end := _shares_its_noun(text, at, cut):
            listed = end
            continue
        if cut[0].strip() in ("(", "[") or not named or not _is_no_food(bare):
            return cut
    return None


_SAID_BEHIND = late_regex(
    r"\s*(?=(?:preferably|such\s+as|or|plus|optional|weighing|cut\s+in(?:to)?|at)\s)", re.IGNORECASE
)


def _open_bracket(text: str, at: int, cut: re.Match[str], item: str) -> tuple[str, str, int]:
    """Put what stands in brackets into the note; the food may go on behind them."""
    close = _CLOSES.search(text, cut.end())
    inner = text[cut.end() : close.start() if close else len(text)].strip()
    after = text[close.end() :] if close else ""
    comma = re.search(r"[,;(\[]|\.\s+(?=[A-Z])", after)
    said = _SAID_BEHIND.match(after)
    comma = said or comma
    more = after[: comma.start()] if comma else after
    note_rest = after[comma.start() :].strip(" ,;.") if comma else ""
    if more.strip():  # "coriander (cilantro) leaves", "1 inch (2.5 cm) cubes"
        item = _tidy(f"{item} {more.strip()}")
    note = ", ".join(part for part in (inner, note_rest) if part)
    return item, note, cut.start()
