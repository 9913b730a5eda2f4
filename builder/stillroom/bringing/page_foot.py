"""What a page sets around a recipe by its own words: buttons, labels, by whom and when it was put.

In the languages of words.yml, each line read alone. A day of posting is asked for apart: by it a
page's title is told from its site's name. Leaves out menus and ways back:
outside_recipe.py.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final

from stillroom.bringing.heads import plain, words
from stillroom.bringing.season_said import month_names
from stillroom.core.words.patterns import late_regex

_LONGEST: Final = 120
_MOST_OF_A_LABEL: Final = 10
_MOST_OF_A_BYLINE: Final = 4
_MOST_OF_A_PIECE: Final = 2
_MOST_OF_A_NAME: Final = 6
_MONTHLY: Final = (
    r"\d{1,2}(?:st|nd|rd|th|er|\.|º|°)?\s(?:de\s|of\s)?(?P<month>[^\W\d_]{3,12})\.?,?\s(?:de\s|del\s)?(?:19|20)\d\d"
    r"|(?P<first>[^\W\d_]{3,12})\.?\s\d{1,2}(?:st|nd|rd|th)?,?\s(?:19|20)\d\d"
)
_DATE: Final = late_regex(
    rf"(?:{_MONTHLY}|\b\d{{1,2}}[./-]\d{{1,2}}[./-](?:19|20)?\d\d\b|\b(?:19|20)\d\d[./-]\d\d[./-]\d\d\b)(?!\d)"
)
_HOUR: Final = late_regex(r"\d{1,2}\s?[:.h]\s?\d\d(?:\s?[ap]\.?m\.?)?", re.IGNORECASE)
_BETWEEN: Final = late_regex(r"\s*[|·•/,;–—-]\s*|\s(?=\d)")
_COUNTED: Final = late_regex(
    r"(?:\d+|no|keine?|aucun|nessun|sin|geen|inga|ingen|sem|brak)\s"
    r"(?:comments?|commentaires?|kommentare?r?|comentarios?|comentários?|comment[io]|reacties?|komentarz\w*"
    r"|min\w*(?:\sread)?|views?|likes?|shares?)(?:\s\[\d+\])?"
    r"|(?:comments?|commentaires?|kommentare?r?|comentarios?|commenti|reacties?)\s[\[(]\d+[\])].{0,12}",
    re.IGNORECASE,
)
_LABELLED: Final = late_regex(r"(?P<head>[^\W\d][^:]{1,30}?)\s?:\s+(?P<value>\S.*)")
_ARCHIVE: Final = late_regex(r"[▼►▶▸▾]\s?[^()]{2,60}(?:\(\d+\))?")
_CREDITED: Final = late_regex(
    r"(?:(?:crédits?|credits?|créditos|crediti)\s(?:photos?|fotos?|foto|images?)|fot\.|zdjęci[ae]|foto)\s?:?\s\S.{1,60}",
    re.IGNORECASE,
)
# "Note : 4,5/5", "Bewertung: 4,5 von 5"
_RATED: Final = late_regex(
    r"(?P<head>[^\W\d_]{3,14})\s?:?\s\d(?:[.,]\d+)?\s?(?:/|[^\W\d_]{1,3})\s?(?:5|10)(?:[.,]0)?(?:\s?\(\d+\))?"
)
# what a weblog's form says below a page, in its languages
_FORM: Final = late_regex(
    r".{0,80}\b(?:icon|icône|icon[oa]|icoon|pictogram|ikon[aęu]?|ícone)\b.{0,60}"
    r"\b(?:log ?in|einzuloggen|connecter|sesión|accesso|accedere|inloggen|loggen|logga in|logge"
    r"|zalogować|sessão|přihlásit)\b.{0,10}"
    r"|.{0,60}\b(?:commenting|kommentierst|commentez|comentando|commentando|comentar|reageert)\b"
    r".{0,60}\b(?:account|konto|compte|cuenta|conta)\b.{0,30}"
    r"|.{0,60}\b(?:kommenterar|kommenterer|komentujesz)\b.{0,60}\bkont[oa]\b.{0,30}"
    r"|[^.!?]{0,60}\b(?:newsletters?|nyhetsbrev\w*|nyhedsbrev\w*|nieuwsbrief|infolettre|newslettera)\b[^.!?]{0,40}[.!]?"
    r"|\(?\s?log ?out\s?/\s?change\s?\)?|connecting to %s",
    re.IGNORECASE,
)
_NAMES: Final = late_regex(
    r"[A-ZÀ-ÝŁŚŻ][\w'’.-]+(?:\s(?:d[aeiu]|van|von|de la|le)?\s?[A-ZÀ-ÝŁŚŻ][\w'’.-]+){1,3}"
)


@lru_cache(maxsize=4096)
def is_of_page(text: str) -> bool:
    """Whether a line is what a page sets around a recipe, and nobody's words of it.

    >>> said = ("Recept afdrukken", "Kategori: Sylt", "Læs også: Æblegele", "previous | next |")
    >>> [is_of_page(one) for one in said]
    [True, True, True, True]
    >>> said = ("Print the label.", "Category 1 plums", "See also: dry it.", "Next: boil it.")
    >>> [is_of_page(one) for one in said]
    [False, False, False, False]
    """
    bare = " ".join(text.split())
    if not bare or len(bare) > _LONGEST:
        return False
    pieces = [one for one in re.split(r"\s[|·•]\s?|\s?\|\s|\s?\|$", bare) if one.strip()]
    if pieces and all(map(_is_button, pieces)):
        return True
    if (rated := _RATED.fullmatch(bare)) and plain(rated["head"]) in words("page_ratings"):
        return True
    if _FORM.fullmatch(bare) or _names_all(bare):
        return True
    return bool(_ARCHIVE.fullmatch(bare) or _CREDITED.fullmatch(bare))


def _names_all(text: str) -> bool:
    """Whether a few words lead to all that a page has of somebody: "Alle Rezepte von Anna"."""
    said = plain(text)
    begun = any(said.startswith(f"{one} ") for one in words("all_recipes"))
    named = text.split()[-1][:1].isupper() and not text.rstrip().endswith((".", ":"))
    return begun and named and len(said.split()) <= _MOST_OF_A_NAME


def _is_button(text: str) -> bool:
    """Whether words are a button of a page, or a label of it with its value."""
    said = plain(text)
    if said in words("page_buttons"):
        return True
    labelled = _LABELLED.fullmatch(text.strip())
    if labelled is None:
        return False
    head, value = plain(labelled["head"]), labelled["value"]
    if head in words("kinds_of_work"):  # "Cooking method: bake", and no step behind its head
        return len(value.split()) <= _MOST_OF_A_PIECE
    if head in words("page_turns"):  # "Next: Plum gin", and never "Next: boil it"
        bids = plain(value).split(" ")[0] in words("told_first") | words("told_last")
        return value[:1].isupper() and not bids and not value.endswith(".")
    whole = not value.rstrip().endswith((".", "!", "?")) and len(value.split()) <= _MOST_OF_A_LABEL
    return whole and (head in words("page_labels") or head in words("reads_on"))


@lru_cache(maxsize=4096)
def is_posted(text: str) -> bool:
    """Whether a line says when a page was put up, or by whom at what hour, and nothing else.

    >>> said = ("2. März 2023 von Redaktion", "Lagt op af Anna kl. 10:12", "March 3, 2011")
    >>> [is_posted(one) for one in said]
    [True, True, True]
    >>> is_posted("Bottled 3 March 2011, drunk in June."), is_posted("Ready at 10:12")
    (False, False)
    """
    dated = _DATE.search(text)
    if dated and not _is_a_date(dated):
        dated = None
    hour = _HOUR.search(text)
    when = dated or hour
    if len(text) > _LONGEST:
        return False
    if when is None:  # "Pubblicato il", whose day was not copied
        return bool(text.strip()) and _says_posted(text) and _leads_to_date(text)
    before, behind = text[: when.start()].strip(), text[when.end() :].strip()
    if not dated and not _says_posted(before):
        return False
    return _leads_to_date(before) and all(map(_is_beside_date, _pieces(behind)))


def poster_of(text: str) -> str:
    """Return whose name such a line gives whole; "" for a first name, an office, or none.

    >>> poster_of("Posted on March 3, 2011 by Anna Berg"), poster_of("3. Mai 2020 von Anna")
    ('Anna Berg', '')
    """
    if not is_posted(text):
        return ""
    found = re.search(
        r"\b(?:by|von|par|da|por|door|av|af|przez)\s(?P<who>[^\d|·•/,;–—]{3,40})",
        text,
        re.IGNORECASE,
    )
    who = found["who"].strip() if found else ""
    return who if _NAMES.fullmatch(who) and plain(who) not in words("nobodys") else ""


def _is_a_date(found: re.Match[str]) -> bool:
    month = found["month"] or found["first"]
    return month is None or month.lower().rstrip(".") in month_names()


def _says_posted(text: str) -> bool:
    said = plain(text)
    return any(said == one or said.startswith(f"{one} ") for one in words("posted"))


def _leads_to_date(text: str) -> bool:
    """Whether words before a date say that something was posted then, and by whom."""
    said = plain(text)
    for one in sorted(words("posted"), key=len, reverse=True):
        if said == one or said.startswith(f"{one} "):
            said = said[len(one) :].strip()
            break
    left = said.split()
    if left and left[0] in words("posted_by"):
        return len(left) <= _MOST_OF_A_BYLINE + 1
    known = words("posted_on") | words("day_words")
    return all(one in known for one in left)


def _pieces(text: str) -> list[str]:
    return [one.strip() for one in _BETWEEN.split(text) if one and one.strip()]


def _is_beside_date(piece: str) -> bool:
    """Whether a piece behind a date is an hour, who wrote, how many answered, or a short label."""
    said = [one for one in plain(_HOUR.sub("", piece)).split() if one not in words("posted_on")]
    if not said or _COUNTED.fullmatch(piece) or plain(piece) in words("page_buttons"):
        return True
    if said[0] in words("posted_by"):
        return len(said) <= _MOST_OF_A_BYLINE + 1
    if all(one in words("day_words") for one in said):
        return True
    return len(said) <= _MOST_OF_A_PIECE and piece[:1].isupper() and not piece.endswith((".", "!"))
