"""What is chilled last of all and then served, or kept cool though it spoils, is in the fridge.

"Chill at least an hour before serving" ends the making of a salsa or an eggnog, and no word of it
says a shelf. "Kühl lagern", "au frais" and "en frío" are a cellar for jam, and the fridge for what
holds egg, milk or cream. Leaves out plainer words of a place: keeping_said.py.
"""

from __future__ import annotations

import re

from stillroom.core.lines.staple_table import staple_of
from stillroom.core.method.keeping_opened import without_opened
from stillroom.core.method.last_words import FREEZER, FRIDGE, ON_THE_SHELF
from stillroom.core.method.sentences import affirmed_clauses, split_sentences
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex

_SPOILS = frozenset({"perishable", "egg", "pasteurised-egg"})
# a salsa, a relish, a salad; fruit and sugar are a jam, whatever their method leaves out
_FLESH = frozenset({"fish", "meat", "mushroom"})
_RAW = frozenset({"vegetable", "low-acid-vegetable", "fresh-herb"})
_RAW_THINGS = frozenset({"fruit", "citrus", "vegetable", "low-acid-vegetable", "fresh-herb"})
_KEPT_OTHERWISE = frozenset({"alcohol", "fish", "meat", "shellfish"})
_SERVED_COLD = clause_regex(
    r"\b(?:refrigerat\w*|chill(?:ed)?|fridge|refrigerator)\b[^;]*"
    r"\b(?:before|until) (?:you (?:serve|eat|drink)|serving|eating|drinking)\b"
    r"|(?:kalt|kühl) ?(?:ge)?stell\w*[^;]*\bvor dem (?:servieren|essen|trinken|genuss)"
    r"|\bvor dem (?:servieren|essen|trinken|genuss)[^;]*"
    r"(?:kalt ?stell|kühl ?stell|kühlen|kühlschrank)"
    r"|(?:kühlschrank|\bau (?:frais|froid)"
    r"|\b(?:réfrigérateur|frigo|nevera|refrigerador|koelkast|kylen)\b"
    r"|\b(?:réfrigér|refriger|enfri)\w*)[^;]*"
    r"\b(?:vor dem servieren|avant (?:de servir|dégustation|de déguster)"
    r"|antes de (?:servir|consumir)|prima di (?:servir\w*|gustar\w*)"
    r"|voor het serveren|före servering)"
)
# the end of what is done, with no "then" and no setting of something that is cut or dipped
_CHILLED = clause_regex(
    r"^\W*(?:cover(?:ed)?,? (?:and |tightly )?|cool,? (?:then |and )?|seal and )?"
    r"(?:refrigerate|chill)(?: (?:it|them|the \w+|in the fridge|covered|well))*,? (?:for )?"
    r"(?:at least|several|a few)\b(?:(?! to set| until| till| then| before)[^;])*$"
)
_AS_WARM = clause_regex(r"\b(?:cool\w*|come|comes|down) (?:\w+ )?to room temperature\b")
# a pickle of the fridge: boiled, left there for a day and then eaten
_COLD = (
    r"(?:kühlschrank|\b(?:réfrigérateur|frigo|nevera|refrigerador|frigorifero|koelkast"
    r"|kyl(?:en|skåp\w*)?)\b)"
)
_WHILE = r"\b(?:hours?|hrs?|overnight|days?|weeks?)\b"
_WHILE_ELSEWHERE = (
    r"(?:stunden|tage?n?|heures|jours?|horas|días?|giorn[oi]|uur|dag(?:ar|en)?|dygn|nacht|nuit|noche"
    r"|notte|natt)\b"
)
_LEFT_COLD = clause_regex(
    rf"\b(?:refrigerate|chill|(?:in|into|to) (?:the |your )?(?:fridge|refrigerator))\b[^;]*{_WHILE}"
    rf"|{_WHILE}[^;]*\bin (?:the |your )?(?:fridge|refrigerator)\b"
    rf"|{_WHILE_ELSEWHERE}[^;]*{_COLD}|{_COLD}[^;]*\b{_WHILE_ELSEWHERE}"
)
# it sets or cools there, and something is done with it afterwards
_GOES_ON = clause_regex(
    r"\b(?:to (?:set|cool|firm|chill)|until|till|then|fill\w*|pour\w*|boil\w*|cook\w*|bake|dry"
    r"|dehydrate|smoke|strain|drain|cut|slice|remove|tills|bis|füll\w*|koch\w*)\b"
)
# boiled in its jar, or said to be a thing for the shelf
_PROCESSED = clause_regex(
    r"(?i)\b(?:process(?:ed)? (?:\w+ ){0,3}(?:for \d+|jars?|\d+ ?min\w*)"
    r"|(?:water|boiling)[- ](?:water )?bath|canners?"
    r"|canning(?! (?:jars?|lids?|rings?|salt|funnel|tongs|weights?))"
    r"|stérilis\w*|esteriliz\w*|baño maría"
    r"|bagnomaria|bain[- ]marie|weck\w*|einkoch\w*|einweck\w*)\b"
)
# a terrine stands in water in its oven, and no jar is boiled
_IN_THE_OVEN = clause_regex(
    r"\bfour\b[^.;]{0,60}\bbain[- ]marie\b|\bbain[- ]marie\b[^.;]{0,60}\bfour\b"
)
# "transfer garlic and oil to an airtight container and chill": the end, and no setting in a tin
_CLOSED_AND_CHILLED = clause_regex(
    r"\b(?:containers?|jars?|tubs?|bottles?|pots?)\b[^.;]{0,40}"
    r"\b(?:and|then) (?:chill|refrigerate)\W*$"
)
# put up for the shelf: sealed, or boiled as a jam is
_SEALED = clause_regex(
    r"(?i)\b(?:process\w*|water[- ]?bath|canner|canning (?!jars?|lids?|salt)|seal\w*"
    r"|sterili[sz]\w*|boil\w*|simmer\w*"
    r"|cook\w*|stérilis\w*|esteriliz\w*|baño maría|bagnomaria|weck\w*|ein(?:koch|weck)\w*|koch\w*"
    r"|köchel\w*|bouill\w*|cui(?:re|sez|sson)|mijot\w*|herv\w*|hierv\w*|coc(?:er|ed|in\w*)|boll\w*"
    r"|cuoc\w*|ko(?:ok|ken)|sudder\w*)\b"
)  # fmt: skip
# heat, drying, smoke: it is not raw any more, or the cold was a stage on the way
_MADE_FIT = clause_regex(
    r"\b(?:boil|simmer|cook|heat|bak|roast|steril|pasteur|process|dry|dri|dehydrat|smok|hang|hung|ferment)\w*"
    r"|\b(?:oven|canner|water[- ]bath|scald\w*|melt\w*|hot)\b"
)
# in the fridge to set or cool it is only on its way
_PUT_COLD = clause_regex(
    r"^(?![^;]*\b(?:minutes?|hours?|overnight|until|till|before|fill\w*"
    r"|to (?:cool|set|firm|chill))\b)"
    r"[^;]*\b(?:put|place|set|pop|keep|store|stand|leave|transfer|move)\b[^;]{0,80}"
    r"\b(?:in|into|to) (?:the |your |a )?(?:fridge|refrigerator)\b"
    r"|^\W*(?:cover(?:ed)? and |seal and |then |and )?refrigerate\b[^;]{0,80}\b(?:days?|weeks?)\b"
)
_KEPT_COOL = clause_regex(
    r"\b(?:kühl|kalt|gekühlt) (?:ge)?(?:lager|aufbewahr|aufheb|stell|halt)|\b(?:kalt|kühl)stell"
    r"|\b(?:conserv|gard|réserv)\w* (?:\w+ )?au (?:frais|froid)\b"
    r"|\b(?:conserv|tener|ripor)\w* (?:\w+ )?(?:al fresco|al freddo|in fresco)\b"
    r"|\b(?:conserv|guard|reserv|manten|almacen)\w* (?:\w+ )?en frío\b"
    r"|\b(?:koel|gekoeld|koud) (?:bewar|bewaar|weg)"
    r"|\b(?:förvara\w*|håll\w*) (?:\w+ )?(?:kallt|svalt|kylt)\b"
)
# from the firm ball on (112 °C and more a sweet is boiled sugar: common knowledge, no source read)
_AS_A_CARAMEL = clause_regex(r"\b1(?:1[2-9]|[2-6]\d) ?(?:°|grad|c\b)", re.IGNORECASE)
_ELSEWHERE = clause_regex(
    r"dunkel|trocken|keller|speisekammer|\b(?:ort|platz|raum|stelle)\b|\b(?:endroit|lieu|cave|sec|noir|cellier"
    r"|luogo|cantina|asciutto|buio|lugar|sitio|seco|oscuro|despensa|plaats|plek|kelder|droog|donker"
    r"|plats|mörkt|torrt|källare|skafferi)\b"
)


def is_chilled_last(recipe: Recipe, last: str) -> bool:
    """Tell whether the last words of a method leave it in the cold, without saying "keep"."""
    if ON_THE_SHELF.search(_AS_WARM.sub(" ", last)) or not recipe.kind.is_eaten:
        return False
    told = [", ".join(affirmed_clauses(one)) for one in split_sentences(last)]
    before = recipe.method[-2].text.lower() if len(recipe.method) > 1 else ""
    if not (FRIDGE.search(last) or FREEZER.search(last) or ON_THE_SHELF.search(before)):
        # "I keep these in a jar so that I can shake them" says no place: the step before it does
        told = [*map(", ".join, map(affirmed_clauses, split_sentences(before))), *told]
    # a liqueur or a sealed jar that is chilled to be drunk or eaten stands on the shelf till then
    spoils = _holds(recipe, _SPOILS)
    jar = recipe.kind.is_("put up") and _holds(recipe, _RAW)
    jar = jar and not any(_SEALED.search(one.text) for one in recipe.method)
    cold = any(map(_SERVED_COLD.search, told)) or (bool(told) and _CHILLED.search(told[-1]))
    if cold and (jar or (spoils and recipe.kind.is_("drink"))):
        return True
    flesh = recipe.kind.is_("put up") and _holds(recipe, _FLESH)
    if (cold and flesh) or (recipe.kind.is_("put up") and _CLOSED_AND_CHILLED.search(last)):
        return not any(_is_processed(one.text) for one in recipe.method)
    # what egg and cream set in the cold is no pickle: whoever wrote it says where it stands
    if flesh or (not spoils and recipe.kind.is_("put up") and _holds(recipe, _RAW)):
        at = next((place for place, one in enumerate(told) if _LEFT_COLD.search(one)), None)
        if at is not None and not any(map(_GOES_ON.search, _behind(told, at))):
            return not any(_is_processed(one.text) for one in recipe.method)
    cool = any(_KEPT_COOL.search(one) and not _ELSEWHERE.search(one) for one in told)
    return cool and spoils and not _is_boiled_sweet(recipe)


def _is_processed(text: str) -> bool:
    return bool(_PROCESSED.search(_IN_THE_OVEN.sub(" ", text)))


def never_leaves_the_cold(recipe: Recipe) -> bool:
    """Tell whether what is put up raw is put in the fridge, and no word takes it out again.

    "Put it into the refrigerator. Shake it daily for a week. Strain": vinegar on raw fruit, which
    nothing has made fit for a shelf. Spirit keeps it anywhere.
    """
    raw = _holds(recipe, _RAW_THINGS) and not _holds(recipe, _KEPT_OTHERWISE)
    if not recipe.kind.is_("put up") or not raw:
        return False
    cold = False
    for step in recipe.method:
        for sentence in split_sentences(step.text.lower()):
            told = ", ".join(affirmed_clauses(without_opened(sentence)))
            if _MADE_FIT.search(told):
                return False
            if ON_THE_SHELF.search(told):
                cold = False
            elif _PUT_COLD.search(told):
                cold = True
    return cold


def _is_boiled_sweet(recipe: Recipe) -> bool:
    """Whether a sweet is boiled so far that its cream spoils no more: cool is a cupboard then."""
    boiled = any(_AS_A_CARAMEL.search(step.text) for step in recipe.method)
    return recipe.kind.name == "confection" and boiled


def _behind(told: list[str], at: int) -> list[str]:
    """Return what is said behind the words of a place in its own sentence, and all that follows."""
    found = _LEFT_COLD.search(told[at])
    return [told[at][found.end() :] if found else "", *told[at + 1 :]]


def _holds(recipe: Recipe, tags: frozenset[str]) -> bool:
    foods = filter(None, map(staple_of, recipe.ingredients))
    return any(tags & food.tags for food in foods)
