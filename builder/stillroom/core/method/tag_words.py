"""Where a step begins to give the text of the present's tag: "Make a tag with the following: ...".

What stands there is done by whoever is given it, with what they have. A greeting is no such text.
Leaves out what the card makes of it: use_said.py.
"""

from __future__ import annotations

import re

from stillroom.core.words.patterns import clause_regex

_WORD = r"[\w'’]+"
# whose words follow behind a colon
_LEADS = clause_regex(
    r"(?:^|(?<=[.!?] ))\W{0,3}(?:"
    r"(?:(?:then|and|finally),? )?"
    r"(?:attach|tie|add|fix|stick|glue|pin|hang|include|make|write|print)"
    r" (?:\w+ ){0,4}?(?:tags?|labels?|cards?)(?: \w+){0,6}"
    r"|to the (?:gift )?(?:tag|label|card),? add(?: the following)?(?: \w+)?"
    r"|on (?:the|a|its) (?:gift )?(?:tag|label|card)(?:,? (?:write|say|put|print))?"
    r"|(?:(?:text )?for the |gift |recipe )?(?:tag|label|card)(?: text)?"
    # "Attach these directions:", "Instructions to attach to jar:"
    r"|(?:attach|tie on|include|enclose|give|write out|print|copy)"
    rf" (?:{_WORD} ){{0,3}}?(?:instructions?|directions?|recipe)(?: {_WORD}){{0,6}}"
    rf"|(?:{_WORD} ){{0,2}}?(?:instructions?|directions?|recipe) (?:to|for the)"
    rf" (?:attach|tie|include|go|give|tag|label|card|jar)\b(?: {_WORD}){{0,4}}"
    r"|(?:(?:auf|ans?|für) (?:das|dem|den|die) )?(?:etikett|anhänger|kärtchen)(?: schreiben)?"
    rf"|(?:schreib|kleb|häng|bind)\w* (?:{_WORD} ){{0,5}}?(?:etikett|anhänger|kärtchen|zettel)"
    rf"(?: {_WORD}){{0,5}}"
    r"|sur l['’]étiquette(?:,? (?:écrire|noter))?|étiquette"
    rf"|(?:coll|attach|accroch|écri|not)\w* (?:{_WORD} ){{0,5}}?(?:l['’])?étiquette"
    rf"(?: {_WORD}){{0,6}}"
    r"|en la etiqueta(?:,? escribir)?|sull['’]etichetta|op het (?:etiket|kaartje)"
    rf"|(?:peg|at|pon|escrib)\w* (?:{_WORD} ){{0,4}}?etiqueta(?: {_WORD}){{0,5}}"
    rf"|(?:attacc|leg|scriv|incoll)\w* (?:{_WORD} ){{0,4}}?(?:un['’]|l['’])?etichetta"
    rf"(?: {_WORD}){{0,5}}"
    rf"|(?:maak|schrijf|plak|hang|bind)\w* (?:{_WORD} ){{0,4}}?(?:etiket|kaartje|label)"
    rf"(?: {_WORD}){{0,5}}"
    r") ?: ?",
    re.IGNORECASE,
)
# "attach the following baking instructions to the jar.", "Instructions for baking": what stands
# behind it is the tag's, though no colon says so
_HANDED_ON = clause_regex(
    r"\b(?:attach|tie|add|fix|stick|glue|pin|hang|include|enclose|give|write|print|copy)\w*\b"
    rf"(?: {_WORD}){{0,6}}? (?:(?:following|these|those|baking|cooking|mixing|preparation|making)"
    rf" (?:{_WORD} ){{0,2}}?(?:instructions?|directions?|recipe)|this recipe)"
    rf"(?: {_WORD}){{0,8}}\W*$"
    r"|^\W*(?:baking |cooking |mixing |preparation )?(?:instructions|directions)"
    r"(?: (?:for|to) (?:the )?(?:baking|cooking|making|mixing|bake|cook|make|tag|label|card|jar))?"
    r"\W*$",
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


def before_and_on_the_tag(text: str) -> tuple[str, str]:
    """Return a step's words up to its tag's text, and that text: "" where it tells no use.

    >>> before_and_on_the_tag("Fill the jar. Make a tag with the following: Beat in 1 egg. Bake.")
    ('Fill the jar. ', 'Beat in 1 egg. Bake.')
    >>> before_and_on_the_tag("Tie on a label: Merry Christmas!")
    ('Tie on a label: Merry Christmas!', '')
    """
    found = _LEADS.search(text) if ":" in text else None
    if found and _TELLS_HOW.search(text, found.end()):
        return text[: found.start()], text[found.end() :]
    return text, ""


def hands_on(sentence: str) -> bool:
    """Whether a sentence only says that directions go with the present, which follow it.

    >>> hands_on("Cover and attach the following baking instructions to the jar.")
    True
    >>> hands_on("Follow the instructions of the packet."), hands_on("Instructions for baking")
    (False, True)
    """
    return bool(_HANDED_ON.search(sentence))


def tells_a_use(sentence: str) -> bool:
    """Whether words for a tag tell how a thing is used, as no greeting does.

    >>> tells_a_use("On the card: simmer it."), tells_a_use("Tie on a label: Merry Christmas!")
    (True, False)
    """
    return bool(_TELLS_HOW.search(sentence))
