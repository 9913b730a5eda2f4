"""What somebody says to one other in a letter: a greeting, thanks, news, that a recipe follows.

Told from the words of a line alone, in the languages of words.yml and those that stand here. Leaves
out where in a letter that stands: greetings.py, farewell.py.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.bringing.heads import SENTENCE_ENDS, plain, words
from stillroom.bringing.tails import does_something
from stillroom.core.larder.shelves import common_larder
from stillroom.core.method.keeping_said import may_say_keeping
from stillroom.core.method.reading import named_in

CALLED: Final = re.compile(r"[^\W\d]+(?: [^\W\d]+){0,2},")  # "Dear Ann, here is my recipe."
MY: Final = re.compile(
    r"^(?:my|our|meine?|unsere?|ma|mon|mes|mi[ae]?|mis|miei|mie|mijn|min|mina)\s+(?=[^\W\d])",
    re.IGNORECASE,
)
_MOST_NEWS: Final = 4
_FEW: Final = 5
# what one says to another: thanks, news, that a recipe follows
_SAID_TO_ONE: Final = re.compile(
    r"\b(?:thank(?:s|\syou)|hope|lovely\sto|nice\sto|good\sto|great\sto|so\sglad|glad\syou|sorry|miss(?:ed)?\syou|how\s(?:is|are)|how['’]s|you\sasked|you\s(?:wanted|said|liked)"
    r"|as\s(?:promised|you\sasked)|promised|here\s(?:is|are|it\sis|you\s(?:are|go|have)|comes)|here['’]s|your\s(?:letter|note|card|birthday|visit)|weekend"
    r"|recipe|sends?\b.{0,20}\blove|regards\sto|say\s(?:hello|hi)|see\syou|don['’]t\sforget|looking\sforward|come\sand\ssee|here\sgoes|let\sme\sknow|birthday"
    r"|danke|hoffe|hoffentlich|freu\w*|schön,?\s(?:dass|euch|dich)|wie\sgeht|gefragt|wolltest|wolltet|gewünscht|versprochen|hier\s(?:ist|kommt|sind|das|die|het|is|komt|hast|habt|bitte|heb|hebben)|anbei"
    r"|rezept|grüß\w*|wochenende|bis\sbald|merci|j['’]espère|espérons|comment\s(?:vas|allez|ça)|demandé|voulais|vouliez|promise?|voil[aà]|voici|recette|week-end"
    r"|grazie|spero|speriamo|come\s(?:stai|state|va)|chiesto|volevi|promesso|ecco|ricetta|ti\smando|vi\smando|gracias|espero|cómo\s(?:estás|está|estáis|va)|qué\stal"
    r"|pediste|pedido|prometí|prometid[oa]|aquí\s(?:está|tienes|va|te)|te\s(?:mando|paso|envío)|receta|bedankt|dank|hoop|hoe\sgaat|vroeg|wilde|gevraagd"
    r"|beloofd|recept\w*|leuk|gezellig|tack|hoppas|hur\s(?:mår|är)|frågade|hälsa|saluta|saluti|recuerdos|groeten|bad\som|lovat|lovade|utlovat|här\s(?:är|kommer|har)|as\sI\shave\sit|obiecał[ae]m|przesyłam|wysyłam|przepis|prosiłaś|prosiłeś|chciałaś|dziękuję|dzięki|pamiętasz"
    r"|prometi|prometid[oa]|aqui\s(?:está|vai|tens|tem)|receita|pediste|obrigad[oa]|som\slov(?:et|ede)|her\s(?:er|kommer|har|får)|vær\s?så\s?god|værsgo|varsågod|proszę|tutaj\smasz|tiens,|tieni|tenez|aí\s(?:vai|tens|tem)|opskrift(?:en)?|oppskrift(?:en)?"
    r"|takk?|håber|håper|spurgte|spurte|slíbil[ay]?|posílám|děkuj[iu]|díky|doufám|ahí\s(?:va|tienes)|tal\scual|te\s(?:la|lo)\s(?:copio|mando|paso|envío))\b",
    re.IGNORECASE,
)
_TO_ONE: Final = re.compile(
    r"\b(?:you|your|du|dich|dir|dein\w*|ihr|euch|euer\w*|tu|te|toi|ton|ta|tes|vous|votre|vos|ti|tuo|tua|voi|vi|vostr\w|tú|vosotr[oa]s|os|usted"
    r"|je|jij|jou|jouw|jullie|dig|er|din|ciebie|tobie|cię|ci|wam|was|ti|você|vocês|teu|tua|deg|dere|jer|tě|ti|vám)\b",
    re.IGNORECASE,
)
MEASURED: Final = re.compile(
    r"\d\s*(?:k?g|gr|ml|cl|dl|l|lbs?|oz|cups?|pints?|litr\w+|liter\w*|min\w*|hours?|stunden?|heures?|°)\b"
    r"|\b(?:pounds?|ounces?|pints?|gallons?|cups?|spoonfuls?|teaspoons?|tablespoons?)\b",
    re.IGNORECASE,
)


def greets(text: str) -> bool:
    """Whether a line greets somebody: "Dear Ann", "Dear Ann, here is my recipe."."""
    text = MY.sub("", text.strip())
    said = plain(text).split(" ")
    called = CALLED.match(text)
    begun = {said[0], " ".join(said[:2])}  # "Guten Morgen Ina,"
    return bool(begun & words("greeting")) and (len(text.split()) <= _FEW or called is not None)


def leads_on(text: str) -> bool:
    """Whether words begin as one leads to a recipe, or tells news: "here it is as I have it"."""
    first = SENTENCE_ENDS.split(text)[0]
    return bool(_SAID_TO_ONE.search(first)) and not MEASURED.search(first)


def speaks_to_one(text: str) -> bool:
    """Whether a paragraph begins as one that leads to a recipe, and says to whom: "you asked"."""
    first = SENTENCE_ENDS.split(text)[0]
    return bool(_TO_ONE.search(first) and _SAID_TO_ONE.search(first)) and not MEASURED.search(first)


def is_said_to_one(text: str) -> bool:
    """Whether a paragraph was for one person alone, each sentence of it.

    >>> is_said_to_one("Lovely to see you both. You asked how he made his mead, so here it is.")
    True
    >>> is_said_to_one("Thank you for the honey. Warm half of it in a pan.")
    False
    """
    told = _sentences(text)
    return bool(told) and not may_say_keeping(text) and all(map(_is_for_one, told))


def is_news(text: str) -> bool:
    """Whether a paragraph at a letter's end is news or a question, and nothing of the recipe.

    >>> is_news("Jean sends her love."), is_news("Kommt Ihr im Mai? Papa holt Euch ab.")
    (True, True)
    >>> is_news("Serve it to your guests."), is_news("Would it keep for 2 years?")
    (False, False)
    """
    told = _sentences(text)
    if not text.rstrip(' "”’)').endswith((".", "!", "?", "…")) or may_say_keeping(text):
        return False
    return 0 < len(told) <= _MOST_NEWS and _is_for_one(told[0]) and not any(map(is_done, told))


def _sentences(text: str) -> list[str]:
    return [one for one in SENTENCE_ENDS.split(text) if re.search(r"[^\W\d_]", one)]


def _is_for_one(sentence: str) -> bool:
    asks = sentence.rstrip(' "”’)').endswith("?") and _TO_ONE.search(sentence)
    return bool(asks or _SAID_TO_ONE.search(sentence)) and not _is_of_recipe(sentence)


def is_done(sentence: str) -> bool:
    """Whether a sentence measures or does something, as one of a recipe does."""
    return _is_of_recipe(sentence) or does_something(sentence)


def _is_of_recipe(sentence: str) -> bool:
    """Whether a sentence measures something or does it, and is no greeting sent: "Give my love"."""
    begun = plain(sentence).split(" ")[0]
    sent = bool(re.match(r"(?:let me|give my|say (?:hi|hello))\b", sentence, re.IGNORECASE))
    bids = begun in words("told_first") or begun in words("told_last")
    led = bool(re.search(r":\s+(?:\S+\s+){4}", sentence))  # "Here is how: warm half of the honey"
    done = bool(_SAID_TO_ONE.search(sentence)) and not names_food(sentence)
    return (
        led
        or bool(MEASURED.search(sentence))
        or (not sent and (bids or (does_something(sentence) and not done)))
    )


def names_food(sentence: str) -> bool:
    """Whether a sentence names a food that any book knows."""
    return any(True for _ in named_in(sentence, common_larder()))
