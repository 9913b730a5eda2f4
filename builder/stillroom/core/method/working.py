"""Whether a ferment makes alcohol: the safety box and a giving list ask the same, and get the same.

Yeast makes it, brought in or wild; a culture that lives on sweet tea or juice may make some, and
nobody can say how much. Leaves out what is poured in, and how strong it gets.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.core.method.sentences import affirmed_clauses, split_sentences
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex

Tags = frozenset[str]

# drinks that yeast makes, whoever brought it in
_WORKS_BY_NAME = clause_regex(
    r"\b(?:ciders?|perry|mead|melomel|metheglin|wines?|champagne|beers?|ales?|hooch|kvass|tepache"
    r"|pulque|chicha|toddy|sima|boza|fizz|ginger bug|root beer|lemonade|soda|pop"
    # the same in German, French, Spanish, Italian and Dutch
    r"|met|\w*wein|\w*bier|most|hydromels?|cidres?|bières?|vins?|sidra|cerveza|vino|hidromiel"
    r"|idromele|birra|sidro|\w*wijn|mede)\b",
    re.IGNORECASE,
)
# of these a culture makes little alcohol, and now and then a good deal
_LIVING_DRINK = clause_regex(
    r"\b(?:kombucha|jun|\w*k[eé]fir|tibicos?|scoby|lemonade|soda|pop|fizz)\b", re.IGNORECASE
)
_CULTURES: Final = ("kombucha", "jun", "kefir", "kéfir", "tibico", "tibicos", "scoby")
# a drink that was filed as an infusion or a syrup, and that its own words set to work
_LEFT_TO_WORK = clause_regex(
    r"\b(?:leave|left|let|allow\w*|stand|begin\w*|start\w*|continue|set aside)\b[^.;]*\bferment\w*"
    r"|\bferment(?:s|ed|ing)? (?:it |them |the \w+ )?(?:for|in|at|until|another|further|\d|two"
    r"|three|four|five|six|seven|ten)\b"
    r"|\b(?:vergären|gären|fermenter|fermentar|fermentare|vergisten|gisten)\b",
    re.IGNORECASE,
)
_SAYS_IT_WORKS = clause_regex(
    r"ferment|\b(?:air-?lock|yeast|bubbl\w*|froth\w*|fizz\w*|gär\w*|vergär\w*|gist\w*|hefe|levure"
    r"|levadura|lievito)\b",
    re.IGNORECASE,
)
_ONLY_A_WARNING = clause_regex(
    r"\b(?:if|should|discard|throw|pour away|stops?|prevent\w*|wenn|falls|si|als)\b", re.IGNORECASE
)
# "strain before it begins to ferment": said of what is done first, and no wait for it
_BEFORE_IT_DOES = clause_regex(
    r"\blest\b(?!.*\b(?:again|continue|go on|keep)\b).*"
    r"|\b(?:or|else|otherwise) (?:it|they|the \w+) (?:will|may|might|could|can|would)\b"
    r"(?! (?:continue|go on|keep)\b).*"
    r"|\b(?P<done>(?:strain|sieve|filter|decant|drain|drink|use|refrigerat|chill|fridge|cool"
    r"|boil|heat|freez)\w*\b(?:(?!\b(?:leave|let|stand|days?|weeks?)\b)[^.;])*?)"
    r" before (?:(?:it|they|this|the \w+) (?:\w+ ){0,3}?"
    r"(?:begins?|starts?|can|could|ferments?)\b"
    r"|(?:the |any )?ferment\w* (?:begins|starts|sets in)).*"
    r"|\bkeep\w* (?:it|them|the \w+) from ferment\w*",
    re.IGNORECASE,
)
_VINEGAR = clause_regex(r"\b(?:vinegar|\w*essig|vinaigre|vinagre|aceto|\w*azijn)\b", re.IGNORECASE)
_SWEET: Final = frozenset({"sugar", "honey", "syrup"})
_SALTED: Final = frozenset({"pulse", "cooked-pulse", "dairy"})


def works_by_itself(recipe: Recipe, tags: Tags) -> str:
    """Return the words of a ferment that wild yeasts work: no yeast is among what goes in.

    `tags` are those of all that goes in.
    """
    named = _named(recipe)
    if not recipe.kind.is_("living"):
        return _works_all_the_same(recipe, tags)
    if "yeast" in tags or _VINEGAR.search(named) or _steeps_in_what_was_bought(recipe, tags):
        return ""
    living = _LIVING_DRINK.search(named)
    cultured = "live-culture" in tags or (living and living[0].lower().endswith(_CULTURES))
    if (found := _WORKS_BY_NAME.search(named)) and not (cultured and living):
        return found[0]
    sugared = tags & _SWEET and "water" in tags and not cultured and not _in_brine(tags)
    return "sugar and water, left to work" if sugared else ""


def may_make_alcohol(recipe: Recipe, tags: Tags) -> str:
    """Return the words of a living drink that may make some alcohol, "" where that is not so."""
    if not recipe.kind.is_("living") or "yeast" in tags or works_by_itself(recipe, tags):
        return ""
    if _VINEGAR.search(_named(recipe)) or _steeps_in_what_was_bought(recipe, tags):
        return ""
    if found := _LIVING_DRINK.search(_named(recipe)):
        return found[0]
    sweet = tags & _SWEET and not _in_brine(tags)
    if sweet and tags & {"tea", "beverage", "water"} and "live-culture" in tags:
        return "a living culture in something sweet"
    # its own juice is the water: cherries in sugar, left in the sun until they stop bubbling
    return (
        "fruit in sugar, left to work" if sweet and "fruit" in tags and "salt" not in tags else ""
    )


def makes_alcohol(recipe: Recipe, tags: Tags) -> bool:
    """Whether yeast works in it, brought in or wild."""
    yeast = recipe.kind.is_("living") and "yeast" in tags
    return yeast or bool(works_by_itself(recipe, tags))


def _works_all_the_same(recipe: Recipe, tags: Tags) -> str:
    """Return what ferments in a drink of another kind: an elderflower champagne as an infusion."""
    sweet = tags & {*_SWEET, "fruit"} and tags & {"water", "beverage", "fruit", "tea"}
    kind = recipe.kind.is_("steeped") or recipe.kind.is_("put up")
    if not (kind and recipe.kind.edible and sweet) or "alcohol" in tags or _in_brine(tags):
        return ""
    if _VINEGAR.search(_named(recipe)):
        return ""
    if "yeast" in tags and tags & _SWEET:
        return "yeast in something sweet"
    if "salt" in tags or ("water" not in tags and tags & {"vegetable", "low-acid-vegetable"}):
        return ""
    for step in recipe.method:
        for sentence in split_sentences(step.text):
            for clause in affirmed_clauses(sentence):
                found = _LEFT_TO_WORK.search(_BEFORE_IT_DOES.sub(r"\g<done>", clause))
                if found and not _ONLY_A_WARNING.search(sentence):
                    return found[0]
    return ""


def _steeps_in_what_was_bought(recipe: Recipe, tags: Tags) -> bool:
    """Whether a "wine" is leaves or fruit in bought wine or spirit, of which nothing works."""
    if "alcohol" not in tags or tags & {"water", "live-culture"}:
        return False
    return not any(_SAYS_IT_WORKS.search(step.text) for step in recipe.method)


def _in_brine(tags: Tags) -> bool:
    """Whether it is food to eat: turmeric in honey and water, without salt, is a drink."""
    return bool(tags & _SALTED) or {"low-acid-vegetable", "salt"} <= tags


def _named(recipe: Recipe) -> str:
    return f"{recipe.title} {recipe.kind.called}"
