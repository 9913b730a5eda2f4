"""What is done with it by whoever is given it, where only the method says so: "Attach a tag: ...".

Leaves out what a maker writes under "card: use", which goes before it.
"""

from __future__ import annotations

import re

from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex

# whose words follow behind a colon
_LEADS = clause_regex(
    r"(?:^|(?<=[.!?] ))\W{0,3}(?:"
    r"(?:(?:then|and|finally),? )?"
    r"(?:attach|tie|add|fix|stick|glue|pin|hang|include|make|write|print)"
    r" (?:\w+ ){0,4}?(?:tags?|labels?|cards?)(?: \w+){0,6}"
    r"|to the (?:gift )?(?:tag|label|card),? add(?: the following)?(?: \w+)?"
    r"|on (?:the|a|its) (?:gift )?(?:tag|label|card)(?:,? (?:write|say|put|print))?"
    r"|(?:(?:text )?for the |gift |recipe )?(?:tag|label|card)(?: text)?"
    r"|(?:(?:auf|ans?|für) (?:das|dem|den|die) )?(?:etikett|anhänger|kärtchen)(?: schreiben)?"
    r"|sur l['’]étiquette(?:,? (?:écrire|noter))?|étiquette"
    r"|en la etiqueta(?:,? escribir)?|sull['’]etichetta|op het (?:etiket|kaartje)"
    r") ?: ?",
    re.IGNORECASE,
)
# what tells how a thing is used, and no greeting does
_TELLS_HOW = clause_regex(
    r"\b(?:add|mix|stir|bake|boil|simmer|cook|pour|dissolve|sprinkle|empty|tip|melt|heat|brew|steep"
    r"|use(?! (?:within|by|before|up)\b)|serve|whisk|rub|soak|warm|spread|knead|beat"
    r"|\w*(?:geben|rühren|backen|kochen|mischen|gießen|auflösen|verrühren)|ajouter|mélanger|cuire"
    r"|verser|añadir|mezclar|hornear|cocer|aggiungere|mescolare|cuocere|voeg|bak|kook|roer)\b",
    re.IGNORECASE,
)
_QUOTES = "\"'“”‘’„«»* "


def use_of_method(recipe: Recipe) -> str:
    """Return what the method's own words for its tag say of the use, "" where there are none.

    What stands in braces is an amount that grows with the batch, and a tag says one for all.
    """
    for step in recipe.method:
        found = _LEADS.search(step.text)
        said = step.text[found.end() :].strip(_QUOTES) if found else ""
        if said and "{" not in said and _TELLS_HOW.search(said):
            return said[0].upper() + said[1:]
    return ""
