"""Where a method brings spirit and heat together: in one sentence, or one after the other.

What has gone cold, stood for hours or was only hot water for washing is no heat. Leaves out how
strong it is and how much: the rules.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from functools import lru_cache

from stillroom.core.method.said_elsewhere import in_english_too
from stillroom.core.words.patterns import clause_regex

_HOT = clause_regex(r"\b(warm|heat\w*|hot|boil\w*|simmer\w*|hob|stove|flame|oven)\b", re.IGNORECASE)
_HEATS = clause_regex(
    r"\b(?:warm|heat|boil|simmer|melt|bake|cook|caramelise|bring|flame|hob|stove)\w*\b",
    re.IGNORECASE,
)
# heat that meets no spirit: for washing, for jars, a place to stand
_ELSEWHERE = clause_regex(
    r"\b(?:hand[- ]hot|hot|warm|boiling|boiled) (?:soapy )?water\b(?! bath)"
    r"|\b(?:warm|hot) (?:place|spot|room|corner|cupboard|day|summer)\w*|\bpre-?heat\w*[^,.;]*"
    r"|\b(?:boil|scald|heat|steam|sterilis|warm)\w*\s+(?:(?:the|your|a|clean|empty|filled|washed"
    r"|glass)\s+)*"
    r"(?:jars?|bottles?|lids?|muslin|cloths?|funnel|jelly bag|tins?)\b",
    re.IGNORECASE,
)
# the same elsewhere, in the place where it stands: "lasciar raffreddare ed unire l'alcool"
_COOL_ELSEWHERE = (
    r"raffredd\w*|fredd[oaie]|(?:ab|aus)(?:ge|zu)?kühl\w*|erkalte\w*|kalte[nmrs]?|refroidi\w*"
    r"|tiédi\w*"
    r"|enfri\w*|frí[oa]s?|afkoel\w*|afgekoeld\w*|svalna\w*|kallna\w*"
)
_COOLS = clause_regex(
    r"\b(?:cool\w*|cold|chill(?!i)\w*|overnight|hours?|days?|weeks?|months?|next day|lukewarm"
    rf"|strain\w*|{_COOL_ELSEWHERE})\b",
    re.IGNORECASE,
)
# in one sentence with what was hot: "boil the syrup, cool, add the rum"; straining alone cools none
_COOLED = clause_regex(
    r"\b(?:cool\w*|cold|chill(?!i)\w*|overnight|next day|lukewarm|room temperature"
    rf"|{_COOL_ELSEWHERE})\b",
    re.IGNORECASE,
)
# heat without a word of what stands in it: all there is, where no spirit is named anywhere
_BARE_HEAT = clause_regex(
    r"^\W*(?:then )?(?:gently |slowly )?(?:simmer|boil|cook|heat|warm|bring)"
    r"(?: (?:it|gently|slowly|for|until|over|on|together|to (?:a|the)|through|hard)\b|[.,;]|$)",
    re.IGNORECASE,
)
# "add the vanilla to the spirit; then combine the cooled syrup with it": what was hot meets it cold
_MET_COLD = clause_regex(
    r"\b(?:cooled|cold|chilled) (?:\w+ ){0,3}"
    r"(?:syrup|mixture|mix|liquid|coffee|tea|juice|infusion|custard)\b",
    re.IGNORECASE,
)
_MIXES = clause_regex(r"\b(?:mix|combine|add|stir in|pour in)\b", re.IGNORECASE)
# what spirit is called once things have stood in it: "do gorącego syropu wlać nalewkę"
_MADE_OF_IT = clause_regex(
    r"\b(?:infusion|maceration|tincture|infused \w+|macerat\w*|macér\w*|mazerat\w*|ansatz(?:es)?"
    r"|auszug(?:s|es)?"
    r"|infus[oi]|infusione|macerad[oa]s?|infusión|infusão|tintura|tinktur|nalew\w*|maceraat"
    r"|aftreksel|uttrekk\w*|udtræk\w*)\b",
    re.IGNORECASE,
)
_ADDS = clause_regex(
    r"\b(?:add|stir|pour|tip|mix|top up|whisk|splash|deglaze|beat|put|blend)\w*\b", re.IGNORECASE
)
_ALL = clause_regex(
    r"\b(?:everything|all(?!['’])(?: together| the ingredients)?|them all|the lot)\b", re.IGNORECASE
)
# the filled jar itself stands in hot water
_IN_ITS_JAR = clause_regex(
    r"\b(?:water[- ]bath|sous[- ]vide|slow cooker|pressure cooker|instant pot|pan of (?:hot "
    r"|simmering |boiling )?water|bain[- ]marie|immersion circulator)\b",
    re.IGNORECASE,
)
# heat that takes alcohol away, and not only a warm syrup that it is stirred into
DRIVES_OFF = clause_regex(
    r"\b(?:boil(?!ed water)\w*|simmer\w*|cook(?!ed)\w*|bubbl\w*|reduc\w*|flamb\w*|alight|ignit\w*"
    r"|koch\w*|köchel\w*|bouill\w*|mijot\w*|boll\w*|hierv\w*)\b",
    re.IGNORECASE,
)
_COLD_BATH = clause_regex(r"\b(?:ice|iced|cold) (?:water )?bath\b", re.IGNORECASE)
# what said_elsewhere.py sets behind a sentence
_ITS_ENGLISH = clause_regex(r" \([a-zé\- ]+(?: / [a-zé\- ]+)*\)$")
_PLAIN = frozenset({"dark", "white", "high", "proof", "red", "dry", "sweet", "still"})


@lru_cache(maxsize=256)
def _any_of(words: frozenset[str]) -> re.Pattern[str]:
    # "vodkan", "rommen": Swedish sets "the" behind
    either = "|".join(map(re.escape, sorted(words)))
    return re.compile(rf"\b(?:{either})(?:n|en|men|et|t)?\b", re.IGNORECASE)


def _places(finds: Callable[[str], object], sentences: Sequence[str]) -> frozenset[int]:
    """Return which sentences, counted from 0, hold what is sought."""
    return frozenset(place for place, one in enumerate(sentences) if finds(one))


def _is_hot_from(sentence: str, start: int) -> bool:
    """Whether heat stands in a sentence from a place on; the English behind it has no place."""
    if not start:
        return bool(_HOT.search(sentence))
    return bool(_HOT.search(in_english_too(_ITS_ENGLISH.sub("", sentence)[start:])))


@lru_cache(maxsize=64)  # one rule asks after another
def spirit_meets_heat(sentences: tuple[str, ...], names: frozenset[str]) -> tuple[str, ...]:
    """Return the sentences in which a spirit of these names stands in or goes into heat."""
    words = {"spirit", "alcohol"} | {word for word in names if len(word) > 2 and word not in _PLAIN}
    spirit = _any_of(frozenset(words))
    named_in = _places(spirit.search, sentences)
    first = min(named_in, default=len(sentences))
    named_in |= {one for one in _places(_MADE_OF_IT.search, sentences) if one > first}
    last_named = max(named_in, default=-1)
    last_mixed = max(
        _places(_ALL.search, sentences) | _places(_MIXES.search, sentences), default=-1
    )
    found: list[str] = []
    hot = poured = False
    for place, sentence in enumerate(sentences):
        plain = _ELSEWHERE.sub(" ", sentence)
        named = place in named_in
        where = spirit.search(plain) or (named and _MADE_OF_IT.search(plain))
        cold_there = named and any(map(_MET_COLD.search, sentences[place:]))
        if cold_there or (where and _COOLS.search(plain[: where.start()])):
            hot = False
        later = last_named > place
        whole = bool(_ALL.search(plain) and _HEATS.search(plain)) and not later
        bare = not named_in and last_mixed <= place and _BARE_HEAT.search(plain)
        whole |= bool(bare)
        bath = poured and not later and bool(_IN_ITS_JAR.search(_COLD_BATH.sub(" ", plain)))
        cooled = [one.end() for one in _COOLED.finditer(sentence) if named]
        start = max(
            (
                end
                for end in cooled
                if spirit.search(sentence, end) or _MADE_OF_IT.search(sentence, end)
            ),
            default=0,
        )
        warmed = named and (_is_hot_from(sentence, start) or (hot and _ADDS.search(plain)))
        if warmed or whole or bath:
            found.append(sentence)
        poured = poured or named or bool(_ALL.search(plain))
        if _COOLS.search(plain):
            hot = False
        elif _HEATS.search(plain):
            hot = True
    return tuple(found)
