"""The words with which a method ends: what it says last of where the finished thing stands.

Steps that only serve it, or that say how long it keeps and not where, speak of what stands before
them. Leaves out what the words say: keeping_said.py.
"""

from __future__ import annotations

from stillroom.core.method.keeping_claims import KEEPS, first_span
from stillroom.core.method.keeping_opened import without_opened
from stillroom.core.method.sentences import split_sentences
from stillroom.core.recipe.model import Recipe
from stillroom.core.recipe.waits_elsewhere import keeps_elsewhere
from stillroom.core.when.spans import SPAN_PATTERN
from stillroom.core.words.patterns import clause_regex

FREEZER = clause_regex(r"\b(freezer?|frozen)\b")
# "keep cold", and no "cold, dry place"
_KEEP_COLD = (
    r"(?:keep|kept|stored?)(?: (?:it|them|this|these|very|always))* cold\b"
    r"(?!,? (?:and |but )?(?:dry|dark|airy|room|place|cellar|larder|pantry|cupboard|water|spot))"
)
_SOME_DAYS = r"(?=[^.;]*\b(?:days?|weeks?|months?|fortnight)\b)(?:an? |one )?" + SPAN_PATTERN
_ABOUT = (
    r"(?:for|about|roughly|around|ca|max|maximum|at (?:the )?most|up to|ok|okay|fine|good|lasts?)"
)
FRIDGE = clause_regex(
    rf"\b(?:fridge|refrigerat\w*|chilled|(?:ahead|in advance)\b[^;]{{0,40}}\bchill|{_KEEP_COLD})\b"
)
PUT_AWAY = clause_regex(
    r"\b(?:keeps?|kept|stored?|storing|stays?|lasts?|lives?|holds?)\b(?! stirring)[^.;]{0,240}"
    r"\b(?:fridge|refrigerator|freezer|frozen|refrigerated|chilled)\b"
    r"|\b(?:fridge|refrigerator)\b[^.;]{0,240}"
    r"\b(?:keeps|will keep|lasts?|stays? good|good for|life)\b"
    r"|\b(?:fridge|refrigerator|freezer|refrigerated?|freeze|frozen)\b[^.;]{0,240}"
    r"\b(?:for up to|up to|within|use by|at once)\b[^.;]{0,240}\b(?:days?|weeks?|months?)\b"
    r"|\b(?:must|should|needs?|has|have|always|best) (?:to )?(?:be )?(?:kept )?"
    r"(?:refrigerated|chilled)\b"
    r"(?![^.;]{0,240}"
    r"\b(?:minutes?|hours?|overnight|until|till|to (?:set|firm|chill)|before|then)\b)"
    rf"|\b{_KEEP_COLD}"
    r"|\brefrigerate\b"
    r"(?![^.;]{0,240}\b(?:minutes?|hours?|overnight|until|till|to (?:set|firm|chill)|then)\b)"
    r"|\b(?:chill|leave|put|place|rest|cure|stand)\b[^.;]{0,240}\b(?:fridge|refrigerator)\b"
    r"[^.;]{0,240}\b(?:weeks?|months?)\b"
    # "let it marinate for a week or two in the refrigerator"
    r"|\b(?:let|leave|stand|rest|cure|marinate|steep|infuse|macerate|mature)\b[^.;]{0,60}"
    r"\b(?:weeks?|months?)\b[^.;]{0,40}\bin (?:the |your |a )?(?:fridge|refrigerator)\b"
    # "refrigerate for a week before opening", "refrigerate until ready to serve", and what is made
    # "up to 3 days ahead. Cover and chill."
    r"|\brefrigerate\b(?![^.;]{0,240}\bthen\b)[^.;]{0,240}\b(?:weeks?|months?)\b"
    r"|\b(?:refrigerate|chill|fridge|refrigerator)\b[^.;]{0,240}\b(?:until|till)"
    r"(?: you are| it is| they are)? (?:ready (?:to|for)|needed|required|wanted|serving|use\b|used"
    r"|eaten|given|gift|opened|opening)"
    r"|\b(?:ahead|in advance)\b[^;]{0,40}\b(?:refrigerate|chill)\b"
    # nothing but a place and a time: "Fridge, 2 weeks", "Two weeks in the fridge"
    rf"|(?:^|(?<=[.(,;] ))\W*(?:in |into )?(?:the |my |your |a )?(?:fridge|refrigerator|freezer)\W+"
    rf"(?:{_ABOUT}\W+)*{_SOME_DAYS}\W*(?=$|[.,;)])"
    rf"|(?:^|(?<=[.(,;] ))\W*(?:{_ABOUT}\W+)*{_SOME_DAYS}\W+(?:{_ABOUT}\W+)*"
    r"(?:in|at) (?:the |my |your |a )?"
    r"(?:fridge|refrigerator|freezer)\W*(?=$|[.,;)])"
    r"|\bfreeze\b(?![^.;]{0,240}\b(?:minutes?|hours?|overnight|solid|machine|churn"
    r"|until(?! (?:it is |they are )?(?:used?|needed|wanted|required|eaten|given|ready to))))"
)
ON_THE_SHELF = clause_regex(
    r"\b(?:cupboard|pantry|larder|shel(?:f(?![- ]life)|ves)|cellar|room temperature"
    r"|co(?:ol|ld),? (?:and )?(?:dark |dry )?(?:place|spot)"
    r"|co(?:ol|ld),? (?:and )?(?:dark|dry)|(?:dark|dry),? (?:and )?co(?:ol|ld))\b"
)
_ONLY_SERVES = clause_regex(
    r"\b(?:when|once) (?:it is |they are )?(?:served|serving)|\bto serve\b|^\W*(?:serve|garnish"
    r"|decorate|label|tie|give|enjoy|spread it on|eat)\b"
    r"|^\W*(?:to (?:make|mix|drink) (?:the|a|an|your) (?:[\w-]+ )?(?:cocktails?|drinks?|spritz\w*"
    r"|lattes?|mocha|toddy|float|punch|glass|cup|mug)\b"
    r"|use (?:it|this|them|these)\b|(?:i|we) (?:like|love|enjoy|serve|use|eat|drink)\b"
    r"|(?:it is |it['’]s |this is |they are )?(?:lovely|delicious|great|wonderful|excellent)\b"
    r"|(?:serviere\w*|servir\w*|servez|serveer\w*|servera\w*|genie(?:ß|ss)en|déguster))"
)
# what is cut and eaten from where it lay: cured fish, a terrine
_ONLY_CUTS = clause_regex(
    r"^\W*(?:(?:with|using) an? (?:very )?(?:sharp|long|thin) [^,.;]{1,20}, |after [^,.;]{1,30}, )?"
    r"(?:cut|slice|carve|unwrap|unmould|turn out|scrape|wipe|pat|remove|rinse|take)\b"
    r"(?!.*\b(?:jars?|bottles?|fill|pack|oil|tins?|boil|bake|cook|fry|shelf|cupboard|pantry)\b)"
)
# "if a jar has not sealed, refrigerate it": of one that failed, and not of what is given
_UNSEALED = clause_regex(
    # "with the lid upside down so that it does not seal" is done to every jar
    r"(?<!\bdo )(?<!\bso it does )(?<!\bso that it does )(?<!\bso they do )(?<!\bso as )"
    r"\b(?:unsealed|(?:not|never|un)[ -]?(?:been |properly |yet |well )*seal(?:ed)?"
    r"|fail(?:s|ed)? to seal|seals? (?:has |have |is |are )?(?:not|broken|fails?|failed))\b"
    r"|n['’]t (?:been |properly )*seal"
    r"|\b(?:seal|pop|vacuum)\w*\b[^.;!?]{0,80}\b(?:otherwise|or else"
    r"|if (?:not|they do not|it does not|they don['’]t|it doesn['’]t))\b"
    r"|\b(?:ohne|kein|utan|zonder|ikke|sans|sin|senza) (?:vaku?um|vacu[uü]m|vide|vacío)\b"
    r"|\bnicht (?:richtig |ganz |fest |gut )?(?:dicht|verschlossen\w*|geschlossen\w*)\b"
    r"|\b(?:pas|mal) (?:bien )?(?:scellée?s?|fermée?s?)\b"
    r"|\b(?:scell|ferm|vide)\w*\b[^.;!?]{0,80}\bsinon\b"
    r"|\bnon (?:si (?:è|sono) |sono |è |ben )?(?:sigillat\w|chius\w)\b"
    r"|\bno (?:se )?(?:ha |han |hayan? |estén? |están? )?(?:bien )?(?:sellad\w+|cerrad\w+)\b"
    r"|\bniet (?:goed )?(?:gesloten|dicht|vacuüm)\b|\binte (?:har )?(?:slutit|förslut\w*|tät\w*)\b"
)
# what is still to be baked keeps otherwise than what is given
_OF_DOUGH = clause_regex(r"\b(?:dough|batter|teig|pâte crue|impasto|deeg)\b[^,.;]*")


def last_words(recipe: Recipe) -> str:
    """Return the sentences of the last step that do not speak of it once it is opened.

    "When cool, store it in the fridge", and in the next step "Keeps for a month", is one: the
    length stands where the thing does.
    """
    steps = _of_the_end(recipe)
    if len(steps) > 1 and not _names_a_place(steps[-1]) and _tells_only_how_long(steps[-1]):
        steps = [*steps[:-2], f"{steps[-2]} {steps[-1]}"]
    sentences = split_sentences(steps[-1]) if steps else []
    sentences = [one for one in sentences if not is_of_a_failed_seal(one)]
    if not _OF_DOUGH.search(f"{recipe.title} {recipe.kind.called}".lower()):
        sentences = [_OF_DOUGH.sub("", one) for one in sentences]
    return " . ".join(filter(None, map(without_opened, sentences)))


def is_of_a_failed_seal(sentence: str) -> bool:
    """Whether a sentence speaks of a jar that did not seal, and not of what is given.

    >>> is_of_a_failed_seal("Refrigerate any unsealed jars."), is_of_a_failed_seal("Seal the jars.")
    (True, False)
    >>> is_of_a_failed_seal("Put the lid on upside down so it does not seal tightly.")
    False
    >>> is_of_a_failed_seal("They should pop and seal, if not, chill and use within 2 weeks.")
    True
    >>> is_of_a_failed_seal("Gläser ohne Vakuum innerhalb von 2 Wochen verbrauchen.")
    True
    >>> is_of_a_failed_seal("Seal the jars and use within 2 weeks, or 4 if they stand cold.")
    False
    """
    return bool(_UNSEALED.search(sentence.lower()))


def last_step(recipe: Recipe) -> str:
    """Return the last step as it is written, those behind it left out that only serve it."""
    steps = [step.text for step in recipe.method]
    return steps[len(_of_the_end(recipe)) - 1] if steps else ""


def _of_the_end(recipe: Recipe) -> list[str]:
    """Return the steps in small letters, without those at the end that only serve it."""
    steps = [step.text.lower() for step in recipe.method]
    while len(steps) > 1 and _ONLY_SERVES.search(steps[-1]) and not _stands(steps[-1]):
        steps.pop()  # "lay a leaf on it when it is served" says nothing of where it stood
    return steps


def cut_from_where_it_lay(recipe: Recipe) -> str:
    """Return the step before a last one that only cuts and serves the thing, "" of any other."""
    steps = [step.text.lower() for step in recipe.method]
    while len(steps) > 1 and (_ONLY_CUTS.search(steps[-1]) or _ONLY_SERVES.search(steps[-1])):
        steps.pop()
    return steps[-1] if 0 < len(steps) < len(recipe.method) else ""


def _stands(step: str) -> bool:
    """Whether a step says where the thing stands, or for how long."""
    told = PUT_AWAY.search(step) or ON_THE_SHELF.search(step) or first_span(step, (KEEPS,))
    return bool(told) or any(map(keeps_elsewhere, split_sentences(step)))


def _names_a_place(step: str) -> bool:
    return any(place.search(step) for place in (FRIDGE, FREEZER, ON_THE_SHELF))


def _tells_only_how_long(step: str) -> bool:
    """Whether the first sentence of a step says how long it keeps: nothing is done in it."""
    first, *_ = split_sentences(step) or [""]
    return bool(first_span(first, (KEEPS,)) or keeps_elsewhere(first))
