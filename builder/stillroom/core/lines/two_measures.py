"""A measure that two kitchens read as two: asked, never guessed.

"15 cc de canela" may be spoons or millilitres, "5 gr." of an old English book grains or grams, and
"N/A" is no amount. Leaves out what is read as the book's language has it: reader.py.
"""

from __future__ import annotations

import re

from stillroom.core.amounts.units import System
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

# so many are no spoons of what is poured; of what is dry nobody can tell
_MANY_IN_FRENCH = late_regex(
    r"(?<![\d.,/])(?P<many>[1-4]\d)\s?c\.?\s?c\.?\s"
    r"(?!(?:d['’]|de |du )?(?:l['’]|la )?(?:[^\W\d]+ )?"
    r"(?:eaux?|lait|crème|huile|vinaigre|vin|rhum|alcool|jus|sirop|liqueur|cognac|armagnac|kirsch"
    r"|bière|cidre|gin|vodka|whisky|calvados|porto|marc|bouillon|café|thé|lessive|glycérine|gnôle|anisette"
    r"|(?:extrait|arôme|essence|teinture)s?\b|sauce|pastis|brandy|grenadine|champagne|cointreau)\b)"
    r"(?=[^\W\d])",
    re.IGNORECASE,
)
# in Spanish a "cc" is a cubic centimetre, and in some books a coffee spoon: few of anything, and
# many of what is dry
_IN_SPANISH = late_regex(
    r"(?<![\d.,/])(?P<many>[1-9](?:[.,]5|/[2-9])?|[½¼¾]|\d\d(?=\s?c\.?\s?c\.?\s"
    r"(?!(?:de )?(?:la |el |l)?(?:[^\W\d]+ )?"
    r"(?:agua|leche|nata|crema|aceite|vinagre|vino|ron|alcohol|zumo|jugo|jarabe|almíbar|licor|coñac|brandy|vodka"
    r"|whisky|ginebra|aguardiente|orujo|anís|cerveza|sidra|caldo|café|té|extracto|esencia|vainilla|salsa|lejía"
    r"|glicerina|miel|pisco|cava|vermú|vermut|suero|yogur)\b)))"
    r"\s?c\.?\s?c\.?\s(?=[^\W\d])",
    re.IGNORECASE,
)
# beside drams and ounces of old books "gr." is a grain, fifteen times lighter than a gram
_GRAINS = late_regex(r"(?<![\w.,/])(?P<many>[\d½¼¾][\d./½¼¾]*)\s?grs?\b\.?", re.IGNORECASE)
_NOT_SAID = late_regex(
    r"^\W*(?:n\s?/\s?a|n\.\s?a\.|tbd|tbc)(?=\s|$)|[\s,;:(]+(?:n\s?/\s?a|tbd|tbc)\W*$", re.IGNORECASE
)


def refuse_two_measures(text: str, system: System, language: str) -> None:
    """Raise Unreadable for a measure that may be either of two, and for what says it is none."""
    if said := _NOT_SAID.search(text):
        mend = "Write how much it is, or leave that out."
        raise Unreadable(f'"{said[0].strip(" ,;:(")}" does not say how much.', mend)
    spoons = _MANY_IN_FRENCH if language == "fr" else _IN_SPANISH if language == "es" else None
    if spoons and (found := spoons.search(text)):
        word = "c. à c." if language == "fr" else "cucharaditas"
        raise Unreadable(
            f'"{found[0].strip()}" may be coffee spoons or millilitres.',
            f'Write "{found["many"]} {word}" or "{found["many"]} ml".',
        )
    if system == "imperial" and language == "en" and (found := _GRAINS.search(text)):
        raise Unreadable(
            f'"{found[0].strip()}" may be grains or grams.',
            f'Write "{found["many"]} g" for grams; a grain is 0.065 g.',
        )
