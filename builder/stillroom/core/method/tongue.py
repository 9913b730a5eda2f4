"""In which language a method is written, by its smallest words: a German page in an English book.

What it denies there is told too. Leaves out what it says: said_elsewhere.py, heat_elsewhere.py.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache

from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import any_word, clause_regex

_WORD = clause_regex(r"[^\W\d_]+")
_FEWEST = 2
_PLAINLY = 3
_SMALL = (
    r"(?:(?:von|de[rmns]?|die|das|eine[rms]?|du|la|les?|los|las|el|lo|gli|il|della|di|het|een|\d+|k?g|ml)"
    r" |d[eu]? ?l?['’]|l['’])*"
)
# "statt Butter Mandelmus nehmen": what stands behind the one that is not taken is
_INSTEAD = clause_regex(
    r"\b(?:(?:an)?statt|anstelle|au lieu|en lugar|en vez|invece|in plaats van)\b"
    r"(?: d(?:e[sl]?|u|i|el\w*)\b| d(?=['’]))?\s?"
    rf"(?:['’]?(?:utiliser|usare?|prendre|poner|mettre|mettere) )?{_SMALL}['’]?[^\W\d_]+"
    rf"(?: (?:und|oder|et|ou|y|o|e|en|of) {_SMALL}[^\W\d_]+)*",
    re.IGNORECASE,
)

# "ohne Öl die Mandeln rösten": it is the oil that is left out, and the almonds are roasted
_AN_ARTICLE = r"(?:die|den|das|der|les?|la|las|los|el|il|lo|gli|i|het|l(?=['’]))"
# "sans œuf mais avec du lait"
_BUT_WITH = (
    r"(?:(?:mais|aber|dafür|sondern|maar|ma|pero|sino)|(?:(?:und|et|en|e|y) )?(?:mit|avec|met|con))"
)
_THEN_DONE = clause_regex(
    # a verb governs all that stands behind it: "sans ajouter le lait"
    r"\s+(?:(?!\w+(?:er|ir|re|ar|rlo|rla|rlos|rlas)\b)(?!(?:te|zu)\b)[^\W\d_]+"
    r"|eier|zucker|butter|pfeffer|wasser|ingwer|körner|blätter|beurre|sucre|poivre|gingembre"
    r"|levure|azúcar|boter|suiker|water|peper)"
    rf"(?: (?:und|oder|et|ou|ni|y|e|o|né|en|of) (?!(?:{_AN_ARTICLE}|mit|avec|met|con)\b)[^\W\d_]+)*"
    rf" (?P<done>(?:{_AN_ARTICLE}|{_BUT_WITH})\b.+)",
    re.IGNORECASE,
)


@lru_cache(maxsize=2048)
def tongue_of(text: str) -> str:
    """Return a text's language by its code, "" for English or too few words.

    >>> tongue_of("Die Zwiebeln mit dem Honig mischen."), tongue_of("Mix the onions with honey.")
    ('de', '')
    >>> tongue_of("Sand in the mould, de luxe"), tongue_of("Verser le lait dans les pots.")
    ('', 'fr')
    >>> tongue_of("Miód i masło włożyć, a gdy się rozpuści, dodać mąkę i ostudzić.")
    ''
    """
    told = _told_by(text)
    english = told.pop("en")
    found = max(told, key=lambda name: told[name])
    others = max(count for name, count in told.items() if name != found)
    sure = told[found] >= _FEWEST and told[found] > english and told[found] > others
    return found if sure and found not in _unspoken() else ""


def is_english(text: str) -> bool:
    """Whether a text is plainly English, by words enough of it.

    >>> is_english("Mix the onions with honey and leave it."), is_english("Verser dans les pots.")
    (True, False)
    """
    told = _told_by(text)
    return told["en"] >= _PLAINLY and told["en"] > max(
        count for name, count in told.items() if name != "en"
    )


def _told_by(text: str) -> dict[str, int]:
    words = _WORD.findall(text.lower())
    # a letter alone counts once: Swedish "i" is in half of all Polish sentences
    words = [word for word in words if len(word) > 1] + list({one for one in words if len(one) < 2})
    by_word, told = _spoken_by(), dict.fromkeys((*_small_words(), *_unspoken()), 0)
    for word in words:
        for name in by_word.get(word, ()):
            told[name] += 1
    return told


def speaks_no_english(text: str) -> bool:
    """Whether a text has none of English's smallest words, and more than one word.

    >>> speaks_no_english("Milch mit Zucker aufkochen."), speaks_no_english("Stir in the milk.")
    (True, False)
    """
    english, count = _small_words()["en"], 0
    for found in _WORD.finditer(text.lower()):  # most texts tell by one of the first
        if found[0] in english:
            return False
        count += 1
    return count > 1


def denied_in(sentence: str) -> str:
    """Return a sentence without the clauses that deny something in its own language.

    >>> denied_in("Ohne Zwiebeln mischen, dann bei 170 °C backen.")
    ' dann bei 170 °C backen.'
    >>> denied_in("Den Zucker ohne Rühren schmelzen.")
    'Den Zucker ohne Rühren schmelzen.'
    >>> denied_in("Die Mandeln (ohne Schale) zugeben."), denied_in("Statt Butter Mandelmus nehmen.")
    ('Die Mandeln () zugeben.', '  Mandelmus nehmen.')
    >>> denied_in("Ohne Öl die Mandeln rösten."), denied_in("Sans ajouter le lait.")
    (' die Mandeln rösten.', '')
    >>> denied_in("Ohne Butter die Nüsse rösten."), denied_in("Sin aceite los cacahuetes.")
    (' die Nüsse rösten.', ' los cacahuetes.')
    >>> denied_in("Zonder ei en met melk.")
    ' en met melk.'
    """
    if not (
        _denials().search(sentence) or _without().search(sentence) or _INSTEAD.search(sentence)
    ):
        return sentence
    kept = [_affirmed(part) for part in sentence.split(",")]
    return ",".join(part for part in kept if part.strip())


def _affirmed(part: str) -> str:
    """Return what a part brings in: all before its "without", nothing where it forbids."""
    part = _INSTEAD.sub(" ", part)
    told = _harmless().sub(lambda found: " " * len(found[0]), part)
    if _denials().search(told):
        return ""
    if not (found := _without().search(told)):
        return part
    before, behind = part[: found.start()], part[found.end() :]
    if before.rfind("(") > before.rfind(")") and ")" in behind:
        return before + behind[behind.index(")") :]
    done = _THEN_DONE.match(behind)
    return f"{before} {done['done']}" if done else before


@cache
def _small_words() -> dict[str, frozenset[str]]:
    table: dict[str, list[str]] = read_data("tongues.yml", "method")["small_words"]
    return {name: frozenset(words) for name, words in table.items()}


@cache
def _unspoken() -> dict[str, frozenset[str]]:
    """Return the smallest words of languages in which no method is read: what is theirs is told."""
    table: dict[str, list[str]] = read_data("tongues.yml", "method")["small_words_elsewhere"]
    return {name: frozenset(words) for name, words in table.items()}


@cache
def _spoken_by() -> dict[str, tuple[str, ...]]:
    """Return each of the smallest words with the languages that have it."""
    spoken: dict[str, tuple[str, ...]] = {}
    for name, small in (_small_words() | _unspoken()).items():
        for word in small:
            spoken[word] = (*spoken.get(word, ()), name)
    return spoken


@cache
def _denials() -> re.Pattern[str]:
    return any_word(read_data("tongues.yml", "method")["denials"])


@cache
def _without() -> re.Pattern[str]:
    return any_word(read_data("tongues.yml", "method")["without"])


@cache
def _harmless() -> re.Pattern[str]:
    return any_word(read_data("tongues.yml", "method")["deny_nothing"])
