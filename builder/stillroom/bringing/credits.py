"""Whose a recipe is and where it stood, as pages and papers credit it in a line of its own.

Leaves out a line that says it in two words, "By Ann Sedge": titles.py.
"""

from __future__ import annotations

import re
from typing import Final

SENT_BY: Final = re.compile(
    r"(?:(?:recipe|contributed|submitted|shared|sent in|posted|written) by"
    r"|recipe from"
    r"|rezept von)\b",
    re.IGNORECASE,
)
"""Somebody who sent a recipe in, or wrote it."""
_CREDITED: Final = re.compile(
    r"(?:this\s+)?(?:recipe|rezept|recette|ricetta|receta|recept)\s+(?:is\s+|was\s+)?(?:(?:lightly|slightly)\s+)?"
    r"(?:adapted|taken|borrowed|inspired|courtesy|aus\s+dem|nach\s+einem|tirée|adaptée|tratta|adattata|adaptada|tomada|uit\s+het)\b"
    r"|(?:this|these)\s+recipes?\s+(?:is|are|was|were|comes?|came)\s+(?:taken\s+)?from\b"
    r"|(?:text|words|recipe|rezept|texte|testo|texto|tekst)\s*(?:by\b|:)[^.!?]{2,60}[|/·]\s*(?:photos?|fotos?|bild(?:er)?|images?)\b"
    r"|(?:this|the)\s[^.!?]{0,40}\brecipe\s(?:is|was)\s(?:kindly\s|generously\s)?"
    r"(?:contributed|submitted|shared|sent\sin|given|supplied)\sby\b"
    r"|with\s+(?:many\s+)?thanks\s+to\b|(?:many\s+)?thanks\s+to\b.*\b(?:recipe|sharing)\b"
    r"|[\w\s-]{0,30}\bcourtesy\s+of\b|taken\s+from\b|(?:originally|first)\s+(?:published|posted|printed|appeared)\s+(?:at|on|in|by)\b"
    r"|(?:the\s+)?original\s+(?:recipe\s+)?(?:is\s+|was\s+|came\s+|comes\s+)?from\b"
    r"|(?:(?:recipe|rezept|recept)\s+)?(?:source|quelle|fonte|fuente|bron|källa|kilde|źródło|zdroj)\s?:\s"
    r"|(?:zuerst|ursprünglich)\s+(?:erschienen|veröffentlicht)\b|adapted\s+from\b",
    re.IGNORECASE,
)
# "from Ann Vane, Grow herbs: a guide", "aus: Das große Buch der Marmeladen", "dal libro «Conserve»"
_TAKEN: Final = re.compile(
    r"\(?(?:(?:recipe|rezept|recette|ricetta|receta|recept|opskrift|oppskrift|przepis|receita)\s+)?"
    r"(?:from|after|aus|nach|dal?(?:la|l['’])?|tratt[ao]\s+d\w+|tirée?\s+d\w+|extraite?\s+d\w+|d['’]après|de(?:l|\s+la)?|sacad[ao]\s+de\w*"
    r"|uit|naar|ur|från|fra|efter|z|ze|wg|według)\s?:?\s(?P<what>\S.{3,140}?)\)?\.?",
    re.IGNORECASE,
)
_A_BOOK: Final = re.compile(
    r"[\"“”«»„‚‘].{3,}|\b(?:(?:cook)?books?|magazine|newspaper|(?:koch|back)?buch|(?:koch|back)büchlein|zeitschrift|heft|libro|ricettario|rivista|livre|revue"
    r"|(?:kook)?boek|tijdschrift|(?:kok)?bok(?:en)?|tidning(?:en)?|(?:koge)?bog(?:en)?|(?:koke)?bok(?:a|en)|książk[ai]|gazety|livro|revista)\b",
    re.IGNORECASE,
)
# "Ann Vane, Grow herbs": a name, and what she wrote
_NAME_AND_BOOK: Final = re.compile(
    r"[A-ZÀ-Ý][a-zà-ÿ'’-]+(?:\s(?:[A-ZÀ-Ý][a-zà-ÿ'’-]+|[A-Z]\.|d[aeiu]|van|von)){1,3}\s?,\s+\W?[A-ZÀ-Ý].*"
)
_MEASURED: Final = re.compile(
    r"\d\s?(?:°|k?g|m?l|cl|dl|oz|lbs?|cups?|min\w*|hours?)\b", re.IGNORECASE
)


def is_credit(text: str) -> bool:
    """Whether a line says whose a recipe is, or in what book or paper it stood.

    >>> is_credit("from Ann Vane, Grow herbs: a guide"), is_credit("(from Ann Vane's book of jam)")
    (True, True)
    >>> is_credit("aus: Das große Buch der Marmeladen"), is_credit('dal libro "Le conserve"')
    (True, True)
    >>> is_credit("From the pan, pour it into jars."), is_credit("Aus dem Ofen nehmen.")
    (False, False)
    """
    return bool(_CREDITED.match(text)) or names_a_book(text)


def names_a_book(text: str) -> bool:
    """Whether a line says from what book or paper a recipe was taken, and nothing else."""
    found = _TAKEN.fullmatch(text.strip())
    if found is None or _MEASURED.search(text):
        return False
    what = found["what"]
    return bool(_A_BOOK.search(what) or _NAME_AND_BOOK.fullmatch(what))
