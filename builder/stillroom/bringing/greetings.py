"""How a letter begins: the address and the day above its greeting, the greeting, a few words.

All of it was for one person: it is left out and told, but for a title among it and for how much it
says is made. Leaves out the farewell: farewell.py, and heads of e-mail: quoting.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from stillroom.bringing.found import Recipe, Row
from stillroom.bringing.heads import SENTENCE_ENDS, plain, section_of, words
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.sorting import is_ingredient, is_passed, is_sentence, is_told, makes_of
from stillroom.bringing.tails import does_something
from stillroom.core.larder.shelves import common_larder
from stillroom.core.lines.staple_table import staples_named
from stillroom.core.method.keeping_said import may_say_keeping
from stillroom.core.method.reading import named_in

_CALLED: Final = re.compile(r"[^\W\d]+(?: [^\W\d]+){0,2},")  # "Dear Ann, here is my recipe."
_MY: Final = re.compile(
    r"^(?:my|our|meine?|unsere?|ma|mon|mes|mi[ae]?|mis|miei|mie|mijn|min|mina)\s+(?=[^\W\d])",
    re.IGNORECASE,
)
_MOST_ABOVE: Final = 9
_MOST_OF_A_LINE: Final = 8
_FEW: Final = 5
_MOST_CHAT: Final = 3
"""Paragraphs behind a greeting that may lead to the recipe."""
_SHOWN: Final = 80
_MOST_NEWS: Final = 4
_MONTH: Final = (
    r"jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?"
    r"|januar|februar|märz|mai|juni|juli|oktober|dezember|janvier|février|mars|avril|juin|juillet|août|septembre|octobre|novembre"
    r"|décembre|gennaio|febbraio|marzo|aprile|maggio|giugno|luglio|agosto|settembre|ottobre|dicembre|enero|febrero|abril|mayo"
    r"|junio|julio|septiembre|octubre|noviembre|diciembre|januari|februari|maart|mei|augustus|augusti|maj"
)
_WEEKDAY: Final = (
    r"(?:mon|tues|wednes|thurs|fri|satur|sun)day|(?:mon|diens|donners|frei|sams|sonn)tag|mittwoch|sonnabend|lundi|mardi|mercredi"
    r"|jeudi|vendredi|samedi|dimanche|luned[iì]|marted[iì]|mercoled[iì]|gioved[iì]|venerd[iì]|sabato|domenica|lunes|martes|miércoles"
    r"|jueves|viernes|sábado|domingo|(?:maan|dins|woens|donder|vrij|zater|zon)dag|(?:mån|tis|ons|tors|fre|lör|sön)dag"
)
_DATED: Final = re.compile(
    rf"(?=.*\d).*\b(?:{_MONTH}|{_WEEKDAY})\b.*|(?:{_WEEKDAY})(?:,?\s[^\W\d]+)?|.*\b\d{{1,2}}\s?[./-]\s?\d{{1,2}}(?:[\s./-]+\d{{2,4}})?\.?"
    r"|(?:christmas\s(?:eve|day)|boxing\sday|new\syear['’]s\s(?:eve|day)|heiligabend|silvester|julafton)(?:,?\s\d{4})?|(?:19|20)\d\d",
    re.IGNORECASE,
)
# where somebody lives
_ADDRESS: Final = re.compile(
    r".*\b(?:cottage|house|farm(?:house)?|lodge|villa|manor|hall|barn|mill|vicarage|rectory|street|st|road|rd|lane|avenue|ave|close"
    r"|drive|crescent|terrace|court|row|square|gardens|laan|gracht|plein|kade|allee|platz|haus|hof)\.?(?:\s\d+\w?)?(?:,.*)?"
    r"|(?:\d+\s?\w?,?\s)?(?:rue|chemin|boulevard|allée|impasse|place|via|viale|piazza|vicolo|calle|plaza|avenida|paseo|camino|flat|apt)\b.*"
    r"|.*[^\W\d](?:straße|strasse|str\.|weg|gasse|platz|allee|straat|laan|gracht|plein|kade|dijk|gatan|vägen|gränd|torget)(?:\s\d+\s?\w?)?(?:,.*)?"
    r"|(?:[A-Z]{1,2}-)?\d{4,5}(?:\s?[A-Z]{2})?\s+(?-i:[A-ZÀ-Ý]).*|.*\b(?-i:[A-Z]{1,2}\d{1,2}[A-Z]?\s\d[A-Z]{2})",
    re.IGNORECASE,
)
# what one says to another: thanks, news, that a recipe follows
_SAID_TO_ONE: Final = re.compile(
    r"\b(?:thank(?:s|\syou)|hope|lovely\sto|nice\sto|good\sto|great\sto|so\sglad|glad\syou|sorry|miss(?:ed)?\syou|how\s(?:is|are)|how['’]s|you\sasked|you\s(?:wanted|said|liked)"
    r"|as\s(?:promised|you\sasked)|promised|here\s(?:is|are|it\sis|you\sare|comes)|here['’]s|your\s(?:letter|note|card|birthday|visit)|weekend"
    r"|recipe|sends?\b.{0,20}\blove|regards\sto|say\shello|see\syou|don['’]t\sforget|looking\sforward|come\sand\ssee|here\sgoes|let\sme\sknow|birthday"
    r"|danke|hoffe|hoffentlich|freu\w*|schön,?\s(?:dass|euch|dich)|wie\sgeht|gefragt|wolltest|wolltet|gewünscht|versprochen|hier\s(?:ist|kommt|sind|das|die|het|is|komt)|anbei"
    r"|rezept|grüß\w*|wochenende|bis\sbald|merci|j['’]espère|espérons|comment\s(?:vas|allez|ça)|demandé|voulais|vouliez|promise?|voil[aà]|voici|recette|week-end"
    r"|grazie|spero|speriamo|come\s(?:stai|state|va)|chiesto|volevi|promesso|ecco|ricetta|ti\smando|vi\smando|gracias|espero|cómo\s(?:estás|está|estáis|va)|qué\stal"
    r"|pediste|pedido|prometí|prometid[oa]|aquí\s(?:está|tienes|va|te)|te\s(?:mando|paso|envío)|receta|bedankt|dank|hoop|hoe\sgaat|vroeg|wilde|gevraagd"
    r"|beloofd|recept\w*|leuk|gezellig|tack|hoppas|hur\s(?:mår|är)|frågade|hälsa|saluta|saluti|recuerdos|groeten|bad\som|lovat|lovade|utlovat|här\s(?:är|kommer|har))\b",
    re.IGNORECASE,
)
_TO_ONE: Final = re.compile(
    r"\b(?:you|your|du|dich|dir|dein\w*|ihr|euch|euer\w*|tu|te|toi|ton|ta|tes|vous|votre|vos|ti|tuo|tua|voi|vi|vostr\w|tú|vosotr[oa]s|os|usted"
    r"|je|jij|jou|jouw|jullie|dig|er|din)\b",
    re.IGNORECASE,
)
_MEASURED: Final = re.compile(
    r"\d\s*(?:k?g|gr|ml|cl|dl|l|lbs?|oz|cups?|pints?|litr\w+|liter\w*|min\w*|hours?|stunden?|heures?|°)\b"
    r"|\b(?:pounds?|ounces?|pints?|gallons?|cups?|spoonfuls?|teaspoons?|tablespoons?)\b",
    re.IGNORECASE,
)


def greets(text: str) -> bool:
    """Whether a line greets somebody: "Dear Ann", "Dear Ann, here is my recipe."."""
    text = _MY.sub("", text.strip())
    said = plain(text).split(" ")
    called = _CALLED.match(text)
    begun = {said[0], " ".join(said[:2])}  # "Guten Morgen Ina,"
    return bool(begun & words("greeting")) and (len(text.split()) <= _FEW or called is not None)


@dataclass(frozen=True)
class Begun:
    """The rows of a paper without the head of a letter, and what is to be told of that."""

    rows: tuple[Row, ...]
    headed: bool = False
    doubted: str = ""

    def tell(self, recipe: Recipe) -> None:
        """Say that the letter's head is left out, or that one line of it may be none."""
        if self.headed:
            what = "The letter's head is left out: where and when it was written."
            recipe.doubt("title", what, "If a line of it is the title, write that.")
        if self.doubted and recipe.title == self.doubted:
            what = f'"{self.doubted}" stands above the greeting, and is taken for the title.'
            recipe.doubt("title", what, "If it is where the letter was written, write a title.")


def without_letter_head(rows: Sequence[Row]) -> Begun:
    """Return rows without what stands above a letter's greeting, which no title or list follows.

    >>> rows = [Row("Brook Cottage"), Row("14th October"), Row("Dear Tom,", gap=True)]
    >>> [row.text for row in without_letter_head([*rows, Row("Boil it.")]).rows]
    ['Dear Tom,', 'Boil it.']
    """
    near = rows[: _MOST_ABOVE + 1]
    at = next((place for place, row in enumerate(near) if _is_greeting(row)), None)
    if at is None or at + 1 >= len(rows):
        return Begun(tuple(rows))
    above = rows[:at]
    greeting = replace(rows[at], text=_stopped(rows[at].text))
    below = (greeting, replace(rows[at + 1], gap=True), *rows[at + 2 :])
    if not all(_may_head(row) for row in above):
        return Begun((*above, *below))
    if len(above) == 1 and not _is_of_head(above[0].text):
        return Begun((*above, *below), False, above[0].text)
    named = [row for row in above if says_its_kind(row.text) and not _is_of_head(row.text)]
    return Begun((*named, *below), len(named) < len(above))


def _is_greeting(row: Row) -> bool:
    """Whether a row is a greeting for certain: by its sign, or by nothing but names behind it."""
    text = row.text.strip()
    if row.shape not in ("line", "heading") or not greets(text):
        return False
    rest = _MY.sub("", text).split()[1:]
    named = all(
        re.fullmatch(r"[A-ZÀ-Ý][^\W\d]+|and|und|et|e|y|en|och|&|all|both", one) for one in rest
    )
    bare = named and len(rest) <= _FEW - 1 and not staples_named(text) and not says_its_kind(text)
    return bool(re.search(r"[,!:]$", text)) or _CALLED.match(text) is not None or bare


def _stopped(text: str) -> str:
    return text if re.search(r"[,!.?:]$", text.strip()) else f"{text.strip()},"


def _may_head(row: Row) -> bool:
    """Whether a row may stand in the head of a letter: short, and nothing of a recipe's list."""
    if row.shape not in ("line", "heading") or section_of(row.text) is not None:
        return False
    if is_sentence(row.text) or len(row.text.split()) > _MOST_OF_A_LINE:
        return False
    if makes_of(row.text) or is_passed(row.text):
        return bool(_is_of_head(row.text))
    return bool(_is_of_head(row.text)) or not (is_ingredient(row.text) and staples_named(row.text))


def _is_of_head(text: str) -> bool:
    return bool(_DATED.fullmatch(text.strip()) or _ADDRESS.fullmatch(text.strip()))


def without_greeting(rows: Sequence[Row], recipe: Recipe) -> list[Row]:
    """Return the rows of a letter that has no list without its greeting and what leads to it.

    How much is made is taken from what is left out, and that it is left out is told.
    """
    near = rows[: _MOST_ABOVE + 1]
    at = next((place for place, row in enumerate(near) if _is_greeting(row)), None)
    if at is None:
        return list(rows)
    above = [row for row in rows[:at] if not _is_chat(row)]
    called = _CALLED.match(_MY.sub("", rows[at].text))
    rest = _MY.sub("", rows[at].text)[called.end() :].strip() if called else ""
    kept = [replace(rows[at], text=f"{rest[:1].upper()}{rest[1:]}", gap=True)] if rest else []
    kept += rows[at + 1 :]
    for _ in range(_MOST_CHAT):
        if len(kept) < 2 or kept[0].shape != "line" or not is_said_to_one(kept[0].text):
            break
        recipe.say_makes(makes_of(kept.pop(0).text))
    if kept and kept[0].shape == "line":
        kept[0] = _without_first_sentences(kept[0])
        _ask_of_first(kept[0].text, recipe)
    tell_greeting(recipe)
    return [*above, *kept]


def _ask_of_first(text: str, recipe: Recipe) -> None:
    """Ask about a first step that may still be chat: it measures nothing and names no food."""
    bids = plain(text).split(" ")[0] in words("told_first") | words("told_last")
    if bids or is_told(text) or _MEASURED.search(text) or _names_food(text):
        return
    what = f'The first step may still be of the letter: "{text[:_SHOWN]}"'
    recipe.doubt("title", what, "If nothing is done in it, take it out of the method.")


def tell_greeting(recipe: Recipe) -> None:
    """Say that a greeting and what leads from it to the recipe is left out."""
    what = "What the letter says before its recipe is left out: it was written to one person."
    recipe.doubt("title", what, "Write a word of your own about it, if you like.")


def tell_beside(recipe: Recipe) -> None:
    """Say that a letter above or below the one with the recipe is left out."""
    what = "What was written beside the letter that holds the recipe is left out: it was for one."
    recipe.doubt("title", what, "If a word of it is of the recipe, write that.")


def _is_chat(row: Row) -> bool:
    return row.shape == "line" and is_said_to_one(row.text)


def _without_first_sentences(row: Row) -> Row:
    """Return a paragraph without the sentences at its beginning that were said to one person."""
    told = SENTENCE_ENDS.split(row.text)
    first = next((at for at, one in enumerate(told) if not is_said_to_one(one)), 0)
    return replace(row, text=" ".join(told[first:])) if first else row


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
    return 0 < len(told) <= _MOST_NEWS and _is_for_one(told[0]) and not any(map(_is_done, told))


def _sentences(text: str) -> list[str]:
    return [one for one in SENTENCE_ENDS.split(text) if re.search(r"[^\W\d_]", one)]


def _is_for_one(sentence: str) -> bool:
    asks = sentence.rstrip(' "”’)').endswith("?") and _TO_ONE.search(sentence)
    return bool(asks or _SAID_TO_ONE.search(sentence)) and not _is_of_recipe(sentence)


def _is_done(sentence: str) -> bool:
    return _is_of_recipe(sentence) or does_something(sentence)


def _is_of_recipe(sentence: str) -> bool:
    """Whether a sentence measures something or does it, and is no greeting sent: "Give my love"."""
    begun = plain(sentence).split(" ")[0]
    sent = bool(re.match(r"(?:let me|give my)\b", sentence, re.IGNORECASE))
    bids = begun in words("told_first") or begun in words("told_last")
    led = bool(re.search(r":\s+(?:\S+\s+){4}", sentence))  # "Here is how: warm half of the honey"
    done = bool(_SAID_TO_ONE.search(sentence)) and not _names_food(sentence)
    return (
        led
        or bool(_MEASURED.search(sentence))
        or (not sent and (bids or (does_something(sentence) and not done)))
    )


def _names_food(sentence: str) -> bool:
    return any(True for _ in named_in(sentence, common_larder()))
