"""A clause that names foods among ordinary words: "milk brings her out in hives".

Everything named in it is left out, where every other word is known to change nothing
(plain_words.yml); with one word more, or one that turns it round, it is not read so.
"""

from __future__ import annotations

from functools import cache

from stillroom.core.allergens.avoiding import is_why, known_by_name
from stillroom.core.allergens.near import is_name
from stillroom.core.allergens.phrases import bare_forms, is_compound
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import late_regex

_WORD = late_regex(r"[^\W_]+(?:['-][^\W_]+)*")
_TIED = late_regex(r"(?<!n)'(?:s|re|ve|m|ll|d)\b")
_ELIDED = late_regex(r"\b([cdjlmnst]|qu)'(?=[^\W\d_]{2})|\bn'(?=a\b)")  # "d'alcool", "n'a"
# "has no allergy to nuts", "doesn't react to nuts", "nuts are no problem"
_TURNED = late_regex(
    r"\bno (?:problems?|issues?|trouble|worr\w+|bother|reactions?|allerg\w*|intoleran\w*)\b"
    r"|(?:\b(?:not|never|no longer)|n't) (?:\w+ )?"
    r"(?:react|allergic|intolerant|sensitive|suffer|cause|upset|hurt|hates?|dislikes?|avoid|bother)"
    # "nicht mehr allergisch", "n'est plus allergique", "ya no es alérgico", "inte längre allergisk"
    r"|\b(?:nicht|plus|no|non|niet|inte|ikke|ej|pas)\b(?: \w+){0,2}"
    r" (?:allerg|alérg|intol|sensib|empfind|känslig)"
    r"|\b(?:keine?n?|aucune|ninguna|nessuna|geen|ingen) (?:\w+ )?(?:allerg|alerg|intol)"
)
# "Olive is allergic": a name that is a food as well
_MAY_BE_SOMEBODY = late_regex(r"^[A-Z][\w-]+ (?:is|has|can|will|does|hates|loves|cannot|gets)\b")
_LONGEST = 3  # words of a name


def named_plainly(text: str) -> tuple[str, ...]:
    """Return what a clause names, where all else in it is ordinary words; else none.

    >>> named_plainly("milk brings her out in hives"), named_plainly("they've gone vegan")
    (('milk',), ('vegan',))
    >>> named_plainly("eats nothing but rice"), named_plainly("nuts and zorple")
    ((), ())
    """
    words = words_of(text)
    if not words or _turns(words) or _TURNED.search(text.lower().replace("’", "'")):
        return ()
    if _MAY_BE_SOMEBODY.match(text) and _name_at(words, 0):
        return ()
    names, place = [], 0
    while place < len(words):
        name = _name_at(words, place)
        if not name and not (_is_plain(words[place]) or is_why(words[place])):
            return ()
        if name and not is_why(name):
            names.append(name)
        place += len(name.split()) if name else 1
    # "we eat halal" leaves out what a diet does, "we eat nuts" nothing
    if _only_eats(words) and not all(map(_is_diet, names)):
        return ()
    return tuple(dict.fromkeys(names))


def is_plain(text: str) -> bool:
    """Whether a clause is ordinary words alone, and none of them turns anything round.

    >>> is_plain("cross contamination matters"), is_plain("cooked is fine"), is_plain("no zorple")
    (True, False, False)
    """
    words = words_of(text)
    turned = _turns(words) or _only_eats(words)
    return bool(words) and not turned and all(map(_is_plain, words))


def only_eaten(text: str) -> bool:
    """Whether a few words begin with what somebody eats or likes, and leave nothing out.

    >>> only_eaten("mag Nüsse"), only_eaten("eats meat"), only_eaten("mange des noix")
    (True, True, True)
    >>> only_eaten("mag keine Nüsse"), only_eaten("eats vegan"), only_eaten("eats gluten-free")
    (False, False, False)
    """
    words = words_of(text)
    told = " ".join(words)
    behind = next((told[len(verb) + 1 :] for verb in _eaters() if told.startswith(f"{verb} ")), "")
    if not behind or not _only_eats([*words, "eat"]) or _FREE.search(text.lower()):
        return False
    return not any(_is_diet(one) for word in behind.split() for one in bare_forms(word))


_FREE = late_regex(r"\b(?:free|gf|df|low|reduced)\b")


@cache
def _eaters() -> tuple[str, ...]:
    return tuple(read_data("plain_words.yml", "allergens")["eaters"])


def is_ordinary(word: str) -> bool:
    """Whether a word is one that may stand round a name and change nothing."""
    return word in _plain()


def tells_more(text: str) -> bool:
    """Whether what a thing does to somebody, or that they must not, is told among other words.

    >>> tells_more("wheat kills him oats"), tells_more("other nuts")
    (True, False)
    """
    told = (_listed("words", "does") | _listed("words", "ill")) - _listed("allow")
    return bool(set(words_of(text)) & told)


def words_of(text: str) -> list[str]:
    """Return the words of a text, what is tied to a pronoun left away: "they've" is "they"."""
    plain = _TIED.sub(" ", text.lower().replace("’", "'"))
    return _WORD.findall(_ELIDED.sub(lambda found: f"{found[1] or 'n'} ", plain))


def _name_at(words: list[str], place: int) -> str:
    """Return the longest name that begins at a word; an ordinary word alone is none.

    A name may be one half of a word: "Koemelkallergie", "laktosintolerant".
    """
    for length in range(min(_LONGEST, len(words) - place), 0, -1):
        part = words[place : place + length]
        name = " ".join(part)
        if length > 1 and known_by_name(name):  # "fruits de mer", whatever "mer" is elsewhere
            return name
        if part[0] in _plain() or part[-1] in _plain():
            continue
        if is_name(name) or is_why(name):
            return name
    return next((one for one in bare_forms(words[place]) if is_name(one)), "")


def _turns(words: list[str]) -> bool:
    """Whether a word turns it round."""
    # "ma mère", and not "ma" as an Italian says "but"
    said = set(words[1:] if words[:1] == ["ma"] else words)
    return bool(said & _listed("turns"))


def _only_eats(words: list[str]) -> bool:
    """Whether it tells what is eaten, and nothing that is left out."""
    said = set(words)
    left_out = said & _listed("leaves_out") or any(map(is_compound, words))
    return bool(said & _listed("words", "eats")) and not left_out


def _is_diet(name: str) -> bool:
    """Whether a name says how somebody eats: "vegan", "halal"."""
    found = known_by_name(name)
    return found is not None and found.of_somebody


def _is_plain(word: str) -> bool:
    """Whether a word changes nothing; a number tells since when: "vegan sedan 2015"."""
    return word in _plain() or word.isdecimal()


@cache
def _plain() -> frozenset[str]:
    rows = read_data("plain_words.yml", "allergens")["words"]
    return frozenset(word for said in rows.values() for word in said.split())


@cache
def _listed(key: str, part: str = "") -> frozenset[str]:
    row = read_data("plain_words.yml", "allergens")[key]
    return frozenset((row[part] if part else row).split())
