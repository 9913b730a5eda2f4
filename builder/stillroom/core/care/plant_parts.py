"""Which poisonous plant a line names by one of its parts: "fleurs de muguet", "Beeren der Eibe".

The larder knows plants by their names in English, Latin, German and French; a part "of" one in
another language than English stays unknown as a food, and its poison must not stay so.
"""

from __future__ import annotations

import re

from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.shelves import Larder
from stillroom.core.words.patterns import clause_regex

_PART = (
    # French, German, Spanish, Italian, Dutch: flower, leaf, root, berry, seed, bulb, stalk, bark
    r"fleurs?|feuilles?|racines?|baies?|graines?|bulbes?|tiges?|[ée]corces?|bourgeons?"
    r"|bl[üu]ten?|bl[äa]tter|bl[üu]tenbl[äa]tter|wurzeln?|beeren|samen|nadeln|zwiebeln?|knollen?|rinde"
    r"|flores|hojas|ra[íi]ces|bayas|semillas|bulbos"
    r"|fiori|foglie|radici|bacche|semi|bulbi|bloemen|bladeren|wortels?|bessen|zaden"
)
_PART_OF = clause_regex(
    rf"^(?:\w+ )?(?:{_PART})\s+(?:de la |de l['’]\s?|du |des |del |della |dell['’]\s?"
    r"|dei |degli |delle |de |d['’]\s?|di |vom |von der |von |der |van de |van )(?P<plant>.+)$",
    re.IGNORECASE,
)
# "green laburnum pods": a part of a plant does its harm as the plant does
_ENGLISH_PART = clause_regex(
    r"^(?:(?:green|unripe|ripe|young|fresh|dried|wild|tender|whole|few|crushed|chopped) )*"
    r"(?P<plant>.+?) (?:pods?|leaf|leaves|berry|berries|seeds?|roots?|bulbs?|flowers?|blossoms?"
    r"|petals?|bark|sap|twigs?|sprigs?|shoots?|stems?|stalks?|tips?|needles?|beans?)$",
    re.IGNORECASE,
)


# a garland of these poisons nobody
_NO_PLANT = clause_regex(
    r"\b(?:silk|artificial|paper|fabric|felt|plastic|faux|fake|crochet(?:ed)?|knitted|wooden|wax"
    r"|glass|(?:kunst|seiden|papier)\w*|en (?:soie|papier|tissu)|artificiel\w*|artificial\w*"
    r"|di (?:seta|carta)|de (?:seda|papel)|zijden|papieren)\b",
    re.IGNORECASE,
)


def is_no_plant(text: str) -> bool:
    """Whether a line says that its plant is made of silk, paper or the like.

    >>> is_no_plant("silk lily of the valley stems"), is_no_plant("lily of the valley stems")
    (True, False)
    """
    return bool(_NO_PLANT.search(text))


def poison_by_its_part(text: str, larder: Larder) -> frozenset[str]:
    """Return the tags of the poisonous plant that a part of is named; none for any other plant.

    Nor where it is made of silk or paper.
    """
    if is_no_plant(text):
        return frozenset()
    found = _PART_OF.match(text.strip()) or _ENGLISH_PART.match(text.strip())
    food = read_food(found["plant"], larder).food if found else None
    return food.tags if food and "toxic" in food.tags else frozenset()


_PEEL = clause_regex(
    r"\b(?:(?:peel(?!ed)|zest|rind|skin)s?|\w*schalen?|abrieb|zestes?|écorces?|scorz[ae]"
    r"|bucc(?:ia|e)|piel|cáscaras?|ralladura|\w*schil(?:len)?)\b"
)
_FLESH = clause_regex(
    r"\b(?:juice[ds]?|flesh|slice[ds]?|segments?|whole|halve[ds]|quarter\w*|\w*saft|\w*scheiben?"
    r"|jus|tranches?|rondelles?|zumo|jugo|rodajas?|succo|fett[ae]|\w*sap|schijf|schijfjes)\b"
)


def of_the_part(words: str, tags: frozenset[str]) -> frozenset[str]:
    """Return the tags of the part of a citrus fruit that goes in: peel alone holds no acid.

    >>> sorted(of_the_part("schil van 3 citroenen", frozenset({"citrus", "acid"})))
    ['citrus', 'citrus-peel']
    """
    if "citrus" not in tags or not _PEEL.search(words):
        return tags
    if _FLESH.search(words):
        return tags | {"citrus-peel"}
    return (tags | {"citrus-peel"}) - {"acid", "high-acid-fruit"}
