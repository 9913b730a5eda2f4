"""Which lines of a recipe are cooked through by its method: what was in the pot when heat came.

Steps are read in order. What goes in after the last heat stays raw, and so does what is kept apart
for an icing. What cannot be told counts as raw. Heat on the card, or told to whoever is given a dry
mix, cooks nothing that is given. Leaves out how hot it gets: the rules say that.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache

from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.method.custard import thickens_on_the_heat
from stillroom.core.method.first_named import first_named_later
from stillroom.core.method.foods_in_method import foods_in_method
from stillroom.core.method.heat_elsewhere import (
    How,
    bakes_elsewhere,
    cooks_elsewhere,
    eggs_elsewhere,
    is_apart_elsewhere,
    is_everything_elsewhere,
    is_liquor,
    is_sour,
    without_its_end,
)
from stillroom.core.method.sentences import affirmed_clauses, is_for_whoever, split_sentences
from stillroom.core.method.tag_words import before_and_on_the_tag
from stillroom.core.method.words import method_words
from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex
from stillroom.core.words.plurals import singular_word

_HEAT = clause_regex(
    r"\b(bak(?:e[ds]?|ing)|boil\w*|simmer\w*|cook(?!ie)\w*|fry|fried|frying|roast(?:ed|ing)?"
    r"|scald\w*|toast(?:ed|ing)?|stew(?:ed)?|poach\w*|steam(?:ed|ing)?|braise\w*|in(?:to)? the oven"
    # "heat for ten minutes until thick": an egg that thickens is cooked
    r"|(?:over (?:a (?:pan|bowl|saucepan) of )?hot water|heat(?:ed|ing)?)\b"
    r"(?=[^.;]*\b(?:until|till)\b[^.;]*\b(?:thick\w*|coats?)\b)"
    r"|stir\w* con(?:stant|tinuous)ly\b(?=[^.;]*\b(?:un)?till?\b[^.;]*\b(?:thick\w*|coats?)\b)"
    r"|(?:over|on) (?:a |an )?(?:low|gentle|medium|moderate|high|the) (?:heat|hob|stove)"
    r"|(?:to|at|reaches|reading) (?:7[1-9]|[89]\d|1\d\d|2\d\d) ?°? ?c\b"
    r"|(?:to|at|reaches|reading) (?:1[6-9]\d|[234]\d\d) ?°? ?f\b|gas mark)",
    re.IGNORECASE,
)
_NOT_COOKING = clause_regex(
    r"\b(?:pre-?heat\w*[^,.;]*|boiled water|boiling water bath|baking (?:tray|sheet|tin"
    r"|paper|parchment|powder|soda"
    r"|dish|beans)|bake ?ware|simmering (?:gently )?until needed|cooked? (?:jars?"
    r"|bottles?)|toasting fork"
    r"|(?:boil|scald|heat|steam|sterilis)\w*\s+(?:(?:the|your|a|clean|empty|filled|washed"
    r"|glass)\s+)*(?:jars?|bottles?|lids?|muslin|cloths?|funnel|jelly bag|tins?)"
    # what dries at 55 °C is not cooked
    r"|in(?:to)? the oven (?:\w+ ){0,4}?(?:at|to) (?:[3-6]\d ?°? ?c|1[0-5]\d ?°? ?f))\b",
    re.IGNORECASE,
)
_HOT_WATER = clause_regex(
    r"\b(?:over|with|in|of) (?:a pan of |a bowl of |just-?|freshly )*(?:simmering|boiling) water",
    re.IGNORECASE,
)
_EVERYTHING = clause_regex(
    r"\b(?:all(?!['’]| the (?!ingredients))|everything|(?:other|remaining|dry|wet) ingredients"
    r"|the rest(?! of))\b",
    re.IGNORECASE,
)
_OVEN = clause_regex(r"\b(?:bak\w+|oven|gas mark|deep[- ]?fr\w+)\b", re.IGNORECASE)
_FIRST = clause_regex(
    r"^\W*(?:(?:then|and|now|gently|slowly|lightly|finally) )*(\w+)", re.IGNORECASE
)
_WITHOUT_OBJECT = clause_regex(
    r"\s+(?:in|with|over|on|at|for|until|till|to|slowly|gently|hard|briefly|together|again)\b",
    re.IGNORECASE,
)
# what cooks for hours is all there is, though the step names only the fat it lies in
_FOR_HOURS = clause_regex(
    r"^\W*(?:\w+ly )?(?:cook|simmer|braise|stew|poach)\w*\b[^.]*\b(?:\d+|an?|one|two"
    r"|three|four|several) hours?\b",
    re.IGNORECASE,
)
# "the whites" are the egg's, "white chocolate" is not
_OF_THE_EGG = clause_regex(
    r"\b(white|yolk)s?\b(?! (?:sugar|chocolate|wine|vinegar|flour|pepper|rum"
    r"|bread|onions?|fish|sauce"
    r"|cabbage|rice|beans?|pearl))",
    re.IGNORECASE,
)
_EGG_PART = clause_regex(r"\beggs?[- ](?=(?:white|yolk)s?\b)", re.IGNORECASE)
# what was kept back goes in raw, though the same line went into the oven before
_KEPT_BACK = clause_regex(
    r"\b(?:rest of|remaining|reserved|kept back|dust\w*|sprinkl\w*)\b"
    r"|\b(?:fill|top|spread|sandwich|decorat|pipe|cover|serve)\w*\b[^.]*\b(?:whipped|beaten|fresh"
    r"|raw|uncooked)\b",
    re.IGNORECASE,
)
_APART = clause_regex(
    r"\b(?:icing|frosting|buttercream|to decorate|decoration|mousse|to finish)\b", re.IGNORECASE
)
_EGGS = frozenset({"egg", "egg white", "egg yolk"})
_PARTS = frozenset({"egg white", "egg yolk"})
_FLESH = frozenset({"meat", "fish", "shellfish"})
# a part of the egg that is first named behind the oven is not what was baked: an icing, a glaze
_RAW_BEHIND = clause_regex(
    r"\b(?:whisk|whip|beat|fold|pip(?:e[ds]?|ing)|brush|glaz|ic(?:e[ds]?|ing)|spread|stir|mix)\w*\b",
    re.IGNORECASE,
)
_COOKED_ALREADY = clause_regex(
    r"\b(?:hard|firm)[- ]?(?:boiled|cooked)\b|\bheat[- ]treated\b", re.IGNORECASE
)
_BAKED_WHOLE = clause_regex(r"\b(?:granola|(?:baked|crunchy) muesli|knuspermüsli)", re.IGNORECASE)
_TOASTED = clause_regex(r"\b(toast|bak|roast|heat|cook|dry-fr)\w*", re.IGNORECASE)


def cooked_places(recipe: Recipe) -> frozenset[int]:
    """Return the lines that heat surely reached, by their place in the list.

    Foods that only the method names go on from its end.
    """
    if recipe.kind.is_("dry"):
        return _toasted(recipe)
    used: list[set[int]] = [set()]
    apart: set[int] = set()
    cooked = _cooked_on_the_list(recipe)
    names = _all_names(recipe)
    everything = set(range(len(names)))
    group = recipe.method[0].group if recipe.method else ""
    heated = baked = False
    to_come = _still_to_come(recipe, names)
    custard = thickens_on_the_heat(said for one in recipe.method for said, _ in _told_by(one.text))
    parts: set[str] = set()
    in_oven = False
    for step in recipe.method:
        if step.group != group:
            used.append(set())
            group = step.group
        icing = _is_apart(step.group)
        for clause, elsewhere in _told_by(step.text):
            here = _named(_HOT_WATER.sub(" ", clause), names)
            if _EVERYTHING.search(clause) or is_everything_elsewhere(clause):
                here |= everything - cooked
            now = bool(next(custard) or elsewhere) or _heat_of(clause)
            if not now and (icing or _is_apart(clause)):
                apart |= here - cooked
            so_far = everything - next(to_come)
            together = set().union(*used)
            if elsewhere:
                eggs = set() if elsewhere == "thickens" else _eggs(names)
                if elsewhere == "thickens":  # "bis die Creme dick wird" names what comes of it
                    here = _named(without_its_end(clause), names)
                now_hot = _reached_elsewhere(clause, here, together, apart, eggs, so_far)
                cooked |= now_hot - _raw_beside(clause, recipe, here, together)
            elif now:
                now_hot = _reached(clause, here, together, apart, so_far)
                cooked |= now_hot - _raw_beside(clause, recipe, here, together)
            elif _KEPT_BACK.search(clause):
                cooked -= here
            elif baked:  # an egg that is named again after the oven may be another one
                cooked -= here & _eggs(names)
            elif in_oven and _RAW_BEHIND.search(clause):
                new = _spoken(clause) & _PARTS - parts
                cooked -= {place for place in here & _eggs(names) if names[place] & new}
            if now and _takes_all(clause, elsewhere):
                cooked |= _never_named(recipe, elsewhere)
                baked = baked or bool(elsewhere)
            heated = heated or now
            in_oven = in_oven or bool(now and _OVEN.search(clause))
            parts |= _spoken(clause) & _PARTS
            used[-1] |= here
    if not heated and recipe.oven and not _NOT_COOKING.search(f"in the oven at {recipe.oven}"):
        cooked = everything - apart
    return frozenset(cooked)


def _is_apart(words: str) -> bool:
    return bool(_APART.search(words)) or is_apart_elsewhere(words)


def _takes_all(clause: str, elsewhere: How) -> bool:
    """Whether heat takes also what no clause named: it lies in the dough, or cooks for hours."""
    if elsewhere:
        return bakes_elsewhere(clause)
    return bool(_OVEN.search(clause) or _FOR_HOURS.search(clause))


def _eggs(names: Sequence[frozenset[str]]) -> set[int]:
    """Return the lines that are egg, in whatever language: their food is."""
    return {place for place, own in enumerate(names) if own & _EGGS}


def _raw_beside(clause: str, recipe: Recipe, here: set[int], together: set[int]) -> set[int]:
    """Return the meat and fish that no clause of a liquor cooks: "boil the brine, let it cool".

    Nor does vinegar that boils before they lie in any pan with it.
    """
    liquor = is_liquor(clause)
    things = enumerate(_all_things(recipe) if liquor or is_sour(clause) else ())
    flesh = {place for place, one in things if any(_FLESH & f.tags for f in food_of(one).foods)}
    return flesh - here if liquor else flesh - here - together


def _reached_elsewhere(
    clause: str, here: set[int], used: set[int], apart: set[int], eggs: set[int], so_far: set[int]
) -> set[int]:
    """Return what one clause in another language cooks.

    Which verb takes which noun is not read there: a pan cooks what its clause names, and an egg
    only then; an oven takes all that lay together. Where nothing was named so far it is all that
    no later clause brings in: "Faire cuire à feu doux 4 heures".
    """
    if bakes_elsewhere(clause):
        return (used | here) - apart
    return (here or (used or so_far) - eggs) - apart


def _cooked_on_the_list(recipe: Recipe) -> set[int]:
    """Return the lines that say themselves that it is cooked: "6 eggs, hard-boiled"."""
    return {
        place
        for place, one in enumerate(_all_things(recipe))
        if _COOKED_ALREADY.search(f"{one.item} {one.note}")
    }


def _still_to_come(recipe: Recipe, names: Sequence[frozenset[str]]) -> Iterator[set[int]]:
    """Yield for each clause the lines that are first named in a later one."""
    clauses = (clause for step in recipe.method for clause in _clauses_of(step.text))
    yield from first_named_later([_named(clause, names) for clause in clauses])


def _all_things(recipe: Recipe) -> tuple[Ingredient, ...]:
    return (*recipe.ingredients, *(one.ingredient for one in foods_in_method(recipe)))


@once_a_recipe
def _all_names(recipe: Recipe) -> tuple[frozenset[str], ...]:
    """Return the words by which the method may call each thing, those of the list first.

    Where whole eggs stand beside whites or yolks, "the egg" is the whole one, and "the eggs" all
    of them where no step speaks of a part.
    """
    names = tuple(_name_words(ingredient) for ingredient in _all_things(recipe))
    parted = any(_OF_THE_EGG.search(step.text) for step in recipe.method)
    if parted and any("egg" in own and own & _PARTS == _PARTS for own in names):
        names = tuple(own if own & _PARTS == _PARTS else own - _only_egg(own) for own in names)
    return names


def _only_egg(own: frozenset[str]) -> frozenset[str]:
    return frozenset({"egg"}) if own & _PARTS else frozenset()


def _never_named(recipe: Recipe, elsewhere: How = "") -> set[int]:
    """Return the lines that no clause names: they are in the dough that goes into the oven.

    In another language an egg may be in the icing by a name that is not known.
    """
    names = _all_names(recipe)
    spoken = {
        place
        for step in recipe.method
        for sentence in split_sentences(step.text)
        for place in _named(sentence, names)
    }
    unsaid = set(range(len(names))) - spoken
    if elsewhere and any(_is_apart(words) for step in recipe.method for words in step.text.split()):
        return unsaid - _eggs(names)
    return unsaid


def _heat_of(words: str) -> bool:
    return bool(_HEAT.search(_NOT_COOKING.sub(" ", words)) or _HOT_WATER.search(words))


def _reached(
    clause: str, here: set[int], used: set[int], apart: set[int], everything: set[int]
) -> set[int]:
    """Return what one heated clause cooks: what it names, with what already lies together.

    "Boil the sugar" boils the sugar alone, "add the sugar and boil" all that is in the pan; what is
    baked goes into the oven whole.
    """
    if here and _heats_what_it_names(clause) and not _OVEN.search(clause):
        return here
    together = (used | here) - apart
    return together or (everything - apart)  # "Mix. Bake." names nothing because it means all


def _heats_what_it_names(clause: str) -> bool:
    """Whether heat is done to what is named: "boil the sugar", not "cook in the fat"."""
    first = _FIRST.match(clause)
    if first is None or _HEAT.fullmatch(first[1]) is None:
        return False
    return _WITHOUT_OBJECT.match(clause[first.end() :]) is None


def boiled_apart(recipe: Recipe) -> Mapping[str, frozenset[int]]:
    """Return each clause that heats only the lines it names, and their places."""
    names = _all_names(recipe)[: len(recipe.ingredients)]
    found: dict[str, frozenset[int]] = {}
    for step in recipe.method:
        for clause in _clauses_of(step.text):
            here = _named(clause, names)
            if here and not _EVERYTHING.search(clause) and _heats_what_it_names(clause):
                found[clause] = frozenset(here)
    return found


def named_later(recipe: Recipe) -> Mapping[str, frozenset[int]]:
    """Return for each clause the lines that are first named in a later one: not yet in the pan."""
    names = _all_names(recipe)[: len(recipe.ingredients)]
    clauses = [clause for step in recipe.method for clause in _clauses_of(step.text)]
    behind = first_named_later([_named(clause, names) for clause in clauses])
    found: dict[str, frozenset[int]] = {}
    for clause, later in zip(clauses, behind, strict=True):
        found[clause] = found.get(clause, frozenset(later)) & later
    return found


def _toasted(recipe: Recipe) -> frozenset[int]:
    """Return what a dry mix names as toasted or baked before it is given; all of a granola."""
    names, found = _all_names(recipe), set[int]()
    whole = set(range(len(names))) if _BAKED_WHOLE.search(recipe.title) else set()
    for step in recipe.method:
        for clause in _clauses_of(step.text):
            if _TOASTED.search(_NOT_COOKING.sub(" ", clause)):
                found |= whole or _named(clause, names)
    return frozenset(found)


@lru_cache(maxsize=256)
def _clauses_of(text: str) -> tuple[str, ...]:
    """Return the affirmed clauses of a step, without what is only told to whoever is given it."""
    return tuple(
        clause
        for sentence in split_sentences(before_and_on_the_tag(text)[0])
        if not is_for_whoever(sentence)
        for clause in affirmed_clauses(sentence)
    )


@lru_cache(maxsize=256)  # what thickens is sought in all of a method before the rest is
def _told_by(text: str) -> tuple[tuple[str, How], ...]:
    """Return the clauses of a step, each with how it cooks in another language's words.

    A sentence goes on behind the stop of "ca. 12 Min. backen".
    """
    whole: list[list[str]] = []
    for sentence in split_sentences(before_and_on_the_tag(text)[0]):
        if not whole or sentence[:1].isupper():
            whole.append([])
        whole[-1].append(sentence)
    return tuple(
        (clause, cooks_elsewhere(clause, " ".join(parts)))
        for parts in whole
        for sentence in parts
        if not is_for_whoever(sentence)
        for clause in affirmed_clauses(sentence)
    )


def _name_words(ingredient: Ingredient) -> frozenset[str]:
    """Return the words by which a method may call an ingredient."""
    text = ingredient.item
    if ingredient.found and ingredient.found.food:
        text += f" {ingredient.found.food.name}"
    words = re.findall(r"[^\W\d_]{3,}", text.lower())
    own = [word for word in words if word not in method_words("plain_words_of_food")] or words
    if "egg" in words or "eggs" in words:
        own += [f"egg {word.removesuffix('s')}" for word in words if _OF_THE_EGG.fullmatch(word)]
        own += ["egg white", "egg yolk"] if {singular_word(word) for word in own} == {"egg"} else []
    single = [singular_word(word) for word in own]
    # "brown the meat" is of the beef, "poach the fish" of the salmon
    found = ingredient.found.food if ingredient.found else None
    sort = [name for name in ("meat", "fish") if found and name in found.tags]
    return frozenset((*single, *sort, *filter(None, map(_tail, single))))


def _tail(word: str) -> str:
    """Return the last part of a compound name by which a method may call it; "" for none."""
    return next(
        (end for end in method_words("tails_of_food") if word.endswith(end) and word != end), ""
    )


def _named(words: str, names: Sequence[frozenset[str]]) -> set[int]:
    spoken = _spoken(words)
    return {place for place, own in enumerate(names) if not own.isdisjoint(spoken)}


@lru_cache(maxsize=2048)
def _spoken(words: str) -> frozenset[str]:
    """Return the words of a clause by which it may name an ingredient."""
    # "the egg white" names no whole egg
    plain = _EGG_PART.sub(" ", words.lower())
    single = {singular_word(word) for word in re.findall(r"[^\W\d_]{3,}", plain)}
    eggs = {f"egg {part.lower()}" for part in _OF_THE_EGG.findall(words)}
    return frozenset(single | eggs | eggs_elsewhere(words))
