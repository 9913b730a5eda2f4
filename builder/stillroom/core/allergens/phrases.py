"""The thing itself in what somebody says of it: "no nuts please!", "my son is allergic to eggs".

What stands round it and changes nothing is taken away by phrases.yml. Leaves out what the words
mean: avoiding.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from typing import Any

from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import late_regex

_IN_BRACKETS = late_regex(r"\s*[(\[]([^)\]]*)[)\]]?\s*")
_SEVERAL = late_regex(
    r"\s*(?:[,;/&+]|\b(?:and|or|nor|und|oder|sowie|et|ou|ni|né|y|o|e|en|of|plus|och|eller"
    r"|samt|og|noch(?!\s+(?:immer|nicht|nie|vegan|halal)\b))\b(?=\s))\s*"
)
_LOUD = late_regex(r"[!?…*\"“”]+|\.(?=\s|$)|(?<=\b\w)\.(?=\w\b)")
_EATING = late_regex(r"\b(?:diet|diät|régime|dieta|dieet|family)\b", re.IGNORECASE)
_DASH = late_regex(r"\s+[-–—:]\s+")
# what allows something again: then what was said is not all left out
_ALLOWS = late_regex(
    r"^only\b|\b(?:but|except|unless|apart from|other than|ok|okay|fine|allowed|can|may|loves?|aber"
    r"|außer|nur|sauf|(?<!kein )(?<!keinen )(?<!gegen )(?<!ohne )(?<!auf )(?<!und )(?<!oder )"
    r"(?<!geen )mais(?=\s)|seulement|salvo|excepto|pero|solo|tranne"
    r"|ma(?! (?:alergi|uczuleni|nietoleranc|celiaki|cukrzyc|nadci))|maar|behalve|alleen)\b",
    re.IGNORECASE,
)
_DENIED = late_regex(
    r"(?:\b(?:not|never)|n't) (?:reacts? to|(?:at all )?(?:allergic|intolerant|sensitive) to)\b"
    r"|\bno (?:known )?(?:allergy|reactions?|intolerance) to\b"
    r"|\b(?:no|any) (?:problems?|trouble|issues?|difficulty) with\b|\bkeine? probleme? mit\b"
    r"|\b(?:pas de|aucun) problèmes? avec\b|\b(?:no tienen? (?:ningún )?|sin )problemas? con\b"
    r"|\b(?:non ha(?:nno)? |nessun )problem[ai] con\b|\bgeen (?:probleem|problemen|moeite) met\b"
    r"|\b(?:inga|inget|ingen|ikke) problem(?:er)? med\b"
    r"|(?:\b(?:not|nicht|pas|non|no|niet|inte|ikke)|n't) (?:(?:get|feel|sta|se pone|ziek|est) )?"
    r"(?:ill|sick|poorly|krank|schlecht|malade|male|mal|ziek|sjuk|dålig|syg|syk)"
    r" (?:from|of|von|avec|con|van|av|af)\b"
    r"|\b(?:nicht|keine?)(?: mehr)? (?:allergisch|allergie|intolerant) (?:auf|gegen)\b"
    r"|\b(?:pas|plus) (?:allergique|intolérante?|d'allergie) (?:à|aux?)\b"
    r"|\bno es (?:alérgic[oa]s?|intolerante) a\b|\bnon è (?:più )?(?:allergic[oa]|intollerante) a"
    r"|\bniet (?:meer )?(?:allergisch|intolerant) voor\b"
    r"|\b(?:inte|ikke|ej) (?:(?:längre|længere|lenger) )?(?:allergisk|intolerant) (?:mot|over)\b",
    re.IGNORECASE,
)
_BEHIND = late_regex(r"\b(?:for|in|as an?|as|because of|due to|when|while|during)\b(.*)$")
_CANNOT = late_regex(r"\b(?:can|may) ?(?:not|.t)\b|\bcan.t\b", re.IGNORECASE)
_NOTHING_NEW = (
    r"(?!(?:and|or|nor|no|not|but|also|plus|without|und|oder|kein\w*|et|ou|pas|y|o|e|ni|en|of|geen|och|eller|og|men)"
    r"\b)[\w'-]+"
)
_MOST = 12
# "Tom", "Tom and Ann", "the little one", "one of the boys": a name is written with a capital
_NAME = (
    r"(?:(?:aunt(?:ie|y)?|uncle|gran(?:ny|dma|dpa|pa)?|nan(?:a|ny)?|cousine?|mrs?|ms|dr|miss|tante"
    r"|onkel|oncle|tonton|tatie|t[ií][oa]|zi[oa]|oom|oma|opa|omi|opi|mamie|pap[iy]|nonn[oa]"
    r"|abuel[oa]|moster|faster|mormor|farmor|morfar|farfar|frau|herr|mme|se[nñ]ora?|signora?"
    r"|mevrouw|meneer|fru)\.? )?"
    r"(?-i:[A-ZÀ-ÖØ-Þ][\w'’-]+)"
)
_WHO = (
    rf"(?:{_NAME}(?:(?:,? (?:and|&|und|et|y|e|en)|,) {_NAME}){{0,3}}"
    r"|(?:the|our|my|his|her|their) (?:(?:little|small|big|elder|eldest|older|oldest|younger"
    r"|youngest|middle|other) )?(?:ones?|twins?|boys?|girls?|kids|children|parents|in-laws"
    r"|neighbours?|eldest|youngest)|(?:one|two|both|all) of (?:the|our|my|their|them|us)(?: \w+)?"
    r"|gran(?:ny|dma|dpa|dad)?|nan(?:a|ny)?|grandmother|grandfather|mum|mom|dad|mummy|daddy)"
)
_DOES = (
    r"(?:is|are|was|has|have|had|gets?|can.?t|cannot|can not|doesn.?t|does not|don.?t|do not"
    r"|won.?t|will not|mustn.?t|must not|may not|should.?n.?t|hates?|dislikes?|loathes?|detests?"
    r"|avoids?|reacts?|never|eats? no|drinks? no|ist|sind|hat|haben|darf|mag|verträgt|reagiert"
    r"|isst kein\w*|trinkt kein\w*|bekommt|est|sont|ne|n'a|a une|réagit|es|son|tiene|no|è|sono|ha"
    r"|non|heeft|mag|eet geen|drinkt geen|verdraagt|reageert|är|har|tål|er|tåler|reagerar|reagerer"
    r"|a (?:du|de la|de l.|le|la)|fait|souffre|soffre|padece|sufre|leidet|lijdt|lider|lebt|ernährt"
    r"|(?:isst|eet|äter|spiser) (?:vegan|vegetari)\w*"
    r"|(?:dricker|drikker) (?:inte|ikke|aldri\w?|in\w+)|kan niet"
    r"|é|são|tem|têm|está|espera|não|sofre|jest|ma|nie|choruje|spodziewa"
    r"|allergic|intolerant|coeliac|celiac|vegan|vegetarian|veggie|diabetic)\b"
)
_SOMEBODY = late_regex(
    rf"^(?P<before>{_WHO})(?:\s*[:–—-]\s+|'s (?=allergic)|\s+(?={_DOES})|\s*[(\[])"
    r"(?P<rest>.+?)[)\]]?$"
    r"|^(?P<first>.+?)(?:\s*[:–—-]\s+|,?\s+for\s+|,\s+(?=\S+ (?:is|has)\b))"
    rf"(?P<behind>{_WHO})"
    r"(?: (?:is|has)(?: an?)?(?: severe(?:ly)?)?(?: allerg\w+| intoleran\w+)?)?\W*$",
    re.IGNORECASE,
)


_BENDS = late_regex(r"\b(?:mit|von|bei|gegenüber|aus|nach)\s", re.IGNORECASE)
# "doesn't eat or drink dairy": one verb of both, and no word of what is in a glass
_EATS_OR_DRINKS = late_regex(
    r"\b(eats?|have|has|touch|isst|eet|äter|spiser|come|mangia|mange) "
    r"(?:or|nor|oder|of|eller|ni|né|ou|o)"
    r" (?:drinks?|trinkt|drinkt|dricker|drikker|bebe|beve|(?:ne )?boit)"
    r"(?=\s+(?!(?:and|or|und|oder|et|ou|y|o|e|en|of|och|eller|og)\b)[^\W\d_])",
    re.IGNORECASE,
)


@cache
def _phrases() -> dict[str, Any]:
    return dict(read_data("phrases.yml", "allergens"))


@cache
def _patterns() -> tuple[re.Pattern[str], re.Pattern[str], re.Pattern[str]]:
    rows = _phrases()
    before = "|".join(rows["before"])
    behind = "|".join(rows["behind"]).replace("WORD", _NOTHING_NEW)
    return (
        re.compile(rf"^(?:{before})[\s,:-]*", re.IGNORECASE),
        re.compile(rf"(?:{behind})[\s,:-]*$", re.IGNORECASE),
        re.compile(rf"(?:{rows['brackets']})", re.IGNORECASE),
    )


def in_plain_words(text: str) -> str:
    """Return a text whose turns of speech, that name no food, are said in words that are known.

    >>> in_plain_words("isst kein Schwein und trinkt nicht"), in_plain_words("in dolce attesa")
    ('isst kein Schwein und no alcohol', 'pregnant')
    >>> in_plain_words("trinkt nicht gern Milch"), in_plain_words("ne boit pas de lait")
    ('trinkt nicht gern Milch', 'ne boit pas de lait')
    """
    plain = _EATS_OR_DRINKS.sub(r"\1", text.replace("’", "'"))
    for means, pattern in _turns():
        plain = pattern.sub(means, plain)
    return plain if plain != text.replace("’", "'") else text


@cache
def _turns() -> tuple[tuple[str, re.Pattern[str]], ...]:
    return tuple(
        (means, re.compile(rf"(?<![\w'-])(?:{'|'.join(rows)})(?={_END})", re.IGNORECASE))
        for means, rows in _phrases()["turns"].items()
    )


_END = (
    r"\s*(?:$|[.,;:!()–-]|\b(?:and|or|nor|because|since|due|for|with|und|oder|weil|et|ou|ni|y|o|e|en"
    r"|of|och|eller|og|seit|depuis|desde|da|sinds|sedan|siden|in|im|i|på|pour|voor)\b)"
)


def without_brackets(word: str) -> tuple[str, str]:
    """Return what is said outside of brackets, and within them where that may say more.

    >>> without_brackets("nuts (severe)"), without_brackets("dairy (and soya)")
    (('nuts', ''), ('dairy', 'and soya'))
    """
    plain = " ".join(word.lower().replace("’", "'").split())
    outside = " ".join(_IN_BRACKETS.sub(" ", plain).split())
    inside = ", ".join(part.strip(" .!") for part in _IN_BRACKETS.findall(plain))
    if not outside:
        return inside, ""
    return outside, "" if _patterns()[2].fullmatch(inside) else inside


def without_somebody(word: str) -> tuple[str, str]:
    """Return who must not have a thing, where a name says it, and what is said of them.

    >>> without_somebody("Tom is allergic to nuts"), without_somebody("nut allergy: Ann")
    (('Tom', 'is allergic to nuts'), ('Ann', 'nut allergy'))
    >>> without_somebody("nuts")
    ('', 'nuts')
    """
    found = _SOMEBODY.match(" ".join(word.replace("’", "'").split()))
    if found is None:
        return "", word
    who = found["before"] or found["behind"]
    return who, (found["rest"] or found["first"]).strip()


def bare_forms(said: str) -> Iterator[str]:
    """Yield words with ever less of what stands round the thing itself.

    >>> list(bare_forms("No nuts please!"))
    ['no nuts please', 'nuts please', 'nuts']
    >>> list(bare_forms("Nussallergie"))
    ['nussallergie', 'nuss']
    >>> list(bare_forms("hat Probleme mit Eiern"))[-1]
    'eier'
    """
    before, behind, _ = _patterns()
    bare = " ".join(_LOUD.sub("", _DASH.sub(" ", said)).lower().split())
    seen: dict[str, None] = {}
    while bare and bare not in seen and len(seen) < _MOST:
        seen[bare] = None
        less = before.sub("", bare, count=1).strip()
        bare = less if less and less != bare else behind.sub("", bare).strip() or bare
    # "Probleme mit Nüssen", "von Eiern": German bends the word behind these
    if bare.endswith("n") and _BENDS.search(said):
        seen[bare.removesuffix("n")] = None
    for end in _phrases()["ends"]:
        if bare.endswith(end) and len(bare) > len(end) + 1:
            seen[bare.removesuffix(end).rstrip("- ")] = None
    yield from seen


def is_compound(word: str) -> bool:
    """Whether a word says in one that something is left out: "Nussallergie", "glutenfritt".

    >>> is_compound("nussallergie"), is_compound("allergie"), is_compound("nuss")
    (True, False, False)
    """
    return any(word.endswith(end) and len(word) > len(end) + 1 for end in _phrases()["ends"])


def parts_said(said: str) -> list[str]:
    """Return the several things of one line: "gluten/dairy free" is two.

    >>> parts_said("no pork or shellfish"), parts_said("gluten/dairy free")
    (['no pork', 'shellfish'], ['gluten', 'dairy free'])
    """
    return [part for part in _SEVERAL.split(_LOUD.sub("", said)) if part.strip()]


def behind_of(said: str) -> str:
    """Return what stands behind "for", "in" and the like: who it is for, where a thing hides.

    >>> behind_of("no nuts for the Jains"), behind_of("sulphites in wine"), behind_of("nuts")
    ('the jains', 'wine', '')
    """
    found = _BEHIND.search(said.lower())
    return found[1].strip() if found else ""


_OF_EATING = late_regex(
    r"\b(?:no|not|never|without|free|eats?|eating|cooked|raw|hates?|loathes?|dislikes?|likes?|taste"
    r"|keen|fan|allergic|allergy|to eat|keine?[nrs]?|ohne|isst|mag|allergisch|sans|pas d['’e]"
    r"|n.aime|mange|sin|nada de|come|senza|niente|mangia|geen|zonder|eet|ingen|utan|äter|gillar)\b"
)


def is_of_eating(said: str) -> bool:
    """Whether a part of the body is said as what somebody eats or does not.

    >>> is_of_eating("no liver"), is_of_eating("bad liver"), is_of_eating("liver")
    (True, False, False)
    """
    return bool(_OF_EATING.search(said.lower()))


def is_way_of_eating(said: str) -> bool:
    """Whether a diet is named, or a family of plants: what stands before it is not all of it."""
    return bool(_EATING.search(said))


def denies_it(said: str) -> bool:
    """Whether somebody does not react to a thing: it is not left out.

    >>> denies_it("does not react to nuts"), denies_it("reacts badly to nuts")
    (True, False)
    """
    return bool(_DENIED.search(said.replace("’", "'")))


def allows_again(said: str) -> bool:
    """Whether something is allowed in the same breath: "no meat but fish", "nuts unless cooked"."""
    return bool(_ALLOWS.search(_CANNOT.sub(" ", said)))
