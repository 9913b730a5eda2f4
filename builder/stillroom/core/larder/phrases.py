"""How a phrase that names a food is cut: its head, its notes, its tails, and foods joined in it.

Works on words in their normal form; phrases.yml holds the words that cut. Leaves out which food is
meant: food_reading.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache

from stillroom.core.larder.data import read_larder_data
from stillroom.core.larder.in_its_place import with_or
from stillroom.core.larder.shares_said import without_shares
from stillroom.core.larder.words import Word, normal_form, words_of
from stillroom.core.words.patterns import late_regex

Words = tuple[Word, ...]
_CUT = late_regex(r"[,;:()\[\]]|\s[–—-]\s")
_ADDITIVE = late_regex(r"\d{3,4}[a-f]?")
# "1/2" is no choice
_STROKE = late_regex(r"(?<!\d)\s*[/|+]\s*|\s*[/|+]\s*(?!\d)")


@dataclass(frozen=True)
class Phrase:
    """The words before the first comma or bracket, and each piece that follows."""

    head: Words
    notes: tuple[Words, ...]


@cache
def phrase_words(name: str) -> frozenset[str]:
    """Return one list of phrases.yml, each word as a phrase has it: "dans" is "dan"."""
    written: list[str] = read_larder_data("phrases.yml")[name]
    return frozenset(filter(None, map(normal_form, written)))


def with_own_joints(phrase: Phrase, language: str) -> Phrase:
    """Read small words as a book's own language has them.

    Dutch "mosterd of azijn" are two, and Portuguese "no rum" is in it, where English denies it.
    """
    joints: dict[str, str] = read_larder_data("phrases.yml")["own_joints"].get(language, {})
    if not joints:
        return phrase
    head, *notes = (
        tuple(word._replace(form=joints.get(word.form, word.form)) for word in piece)
        for piece in (phrase.head, *phrase.notes)
    )
    return Phrase(head, tuple(notes))


_POURED_OFF = frozenset({"drained", "rinsed"})


# "don't use margarine": as long as it was, since words know their places
_NOT = late_regex(r"\b(?:do|does|wo|ca|is|are|should|would|could)n?['’]t\b", re.IGNORECASE)


def cut_phrase(text: str) -> Phrase:
    """Cut a phrase at its commas and brackets; a stroke between foods reads as "or".

    >>> phrase = cut_phrase("butter/margarine (unsalted), melted")
    >>> [word.form for word in phrase.head], [word.form for note in phrase.notes for word in note]
    (['butter', 'or', 'margarine'], ['unsalted', 'melted'])
    """
    pieces: list[Words] = []
    start = 0
    text = _NOT.sub(
        lambda no: " not".ljust(len(no[0])), with_or(without_shares(without_makes(text)))
    )
    for cut in [*_CUT.finditer(text), None]:
        end = cut.start() if cut else len(text)
        pieces.append(_words_between(text, start, end, note=bool(pieces)))
        start = cut.end() if cut else end
    filled = _with_its_tin([piece for piece in pieces if piece])
    return Phrase(filled[0], tuple(filled[1:])) if filled else Phrase((), ())


# whose make it is names no food: "dark beer (such as Goose Island® Oktoberfest)"
_A_BRAND = late_regex(
    r"\(?\b(?:such as|e\.?g\.?,?|like|i use|preferably) [^(),]*[®™][^(),]*\)?", re.IGNORECASE
)

# "basil, washed, dried", "rinsed and dried well": wiped it is, and as fresh as before
_WASHED_DRY = late_regex(
    r"\b((?:washed|rinsed|cleaned|wiped|scrubbed)(?:,? and(?: then)?|,? then|,| &) "
    r"(?:(?:well|thoroughly|carefully|gently) )?)dried\b",
    re.IGNORECASE,
)


def without_makes(text: str) -> str:
    """Return a phrase with blanks for whose make its writer means, so that all keeps its place.

    What is only dried of the water that it was washed in is wiped, and not dried.

    >>> without_makes("dark beer (such as Goose Island® Oktoberfest)").strip()
    'dark beer'
    >>> without_makes("basil, washed and dried"), without_makes("basil, dried")
    ('basil, washed and wiped', 'basil, dried')
    """
    plain = _WASHED_DRY.sub(r"\1wiped", text)
    return _A_BRAND.sub(lambda found: " " * len(found[0]), plain)


def first_piece(text: str) -> str:
    """Return what stands before the first comma or bracket of a phrase."""
    return _CUT.split(text, maxsplit=1)[0]


def _with_its_tin(pieces: list[Words]) -> list[Words]:
    """Put what comes out of a tin beside its tin: "canned, drained chickpeas"."""
    if len(pieces) < 2 or len(pieces[0]) != 1 or pieces[0][0].form not in phrase_words("tinned"):
        return pieces
    first, rest = pieces[1][:1], pieces[1][1:]
    if not rest or first[0].form not in _POURED_OFF:
        return pieces
    return [(*pieces[0], *rest), first, *pieces[2:]]


def _words_between(text: str, start: int, end: int, note: bool) -> Words:
    """Return the words of a piece, numbers left out: they say how many, not of what.

    In a note a measure goes with its number: "40% vol", "about 15 cm".
    """
    found: list[Word] = []
    place = start
    for stroke in [*_STROKE.finditer(text, start, end), None]:
        upto = stroke.start() if stroke else end
        counted = False
        for word in words_of(text[place:upto]):
            number = word.form.replace("⁄", "").isnumeric() and word.form != "00"
            if found and _is_e_number(text, found[-1], word.form):
                letter = found.pop()
                found.append(Word(f"e{word.form}", letter.start, word.end + place))
                continue
            share = note and word.form.endswith("%")
            measure = counted and word.form in phrase_words("measures")
            if not number and not share and not measure:
                found.append(Word(word.form, word.start + place, word.end + place))
            counted = number or share
        if stroke:
            joint = "and" if "+" in stroke[0] else "or"
            found.append(Word(joint, stroke.start(), stroke.end()))
            place = stroke.end()
    return tuple(found)


def _is_e_number(text: str, before: Word, form: str) -> bool:
    """Whether a number is that of an additive: "citric acid E 330", "INS 322", "E 150a"."""
    return text[before.start : before.end] in ("E", "INS") and bool(_ADDITIVE.fullmatch(form))


def forms(words: Words) -> tuple[str, ...]:
    """Return the normal forms of words."""
    return tuple(word.form for word in words)


_THE_LIKE = frozenset({"similar", "equivalent", "ahnliche", "ahnlicher", "similaire", "simile"})


def split_tail(words: Words) -> tuple[Words, Words]:
    """Split "tuna in oil" and "butter for the tin" before the word that begins the tail.

    "Gin or similar" has one too.
    """
    if len(words) > 2 and words[-2].form in phrase_words("either") and words[-1].form in _THE_LIKE:
        return words[:-2], words[-2:]
    for place, word in enumerate(words):
        left_open = place + 1 < len(words) and is_choice(words[place:])
        if place and (left_open or word.form in phrase_words("tails") | phrase_words("ends")):
            return words[:place], words[place:]
    return words, ()


_LONGEST_TASTE = 4
"""Words that leave an amount to the cook: "selon votre goût" has three."""


def without_taste(words: Words) -> Words:
    """Take from words what leaves their amount to the cook, and "etc": "Senf nach Geschmack".

    >>> forms(without_taste(cut_phrase("mostaza y apio al gusto").head))
    ('mostaza', 'y', 'apio')
    """
    said = forms(words)
    for size in range(min(_LONGEST_TASTE, len(said) - 1), 0, -1):
        if " ".join(said[-size:]) in phrase_words("to_taste"):
            return without_taste(words[:-size])
    return words


def is_choice(tail: Words) -> bool:
    """Whether a tail leaves the food to the cook: "pasta of your choice"."""
    return tail[0].form == "of" and set(forms(tail)) <= phrase_words("choice")


def split_joined(words: Words) -> list[Words]:
    """Split "milk or cream and sugar" into its three foods; "cannella e di noce moscata" too."""
    pieces: list[list[Word]] = [[]]
    for word in words:
        if word.form in phrase_words("joins"):
            pieces.append([])
        elif len(pieces) > 1 and not pieces[-1] and word.form in phrase_words("of"):
            continue
        else:
            pieces[-1].append(word)
    return [tuple(piece) for piece in pieces if piece]


def split_of(words: Words) -> tuple[Words, Words]:
    """Split "juice of limes" (or "juice from limes", "gousse d'ail") at its "of"."""
    for place, word in enumerate(words):
        if place and word.form in phrase_words("of") and place + 1 < len(words):
            return words[:place], words[place + 1 :]
    return (), ()
