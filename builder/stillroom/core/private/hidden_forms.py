"""The texts that bytes may hold: in any usual encoding, and as files and pages write them.

A name is as private in UTF-16, in a page's numbered letters or over two lines as in plain words.
Leaves out what is packed (unpacking.py) and what is looked for.
"""

from __future__ import annotations

import base64
import html
import quopri
import re
import unicodedata
import urllib.parse
from collections.abc import Collection, Iterator
from functools import cache
from typing import Final

from stillroom.core.words.data_files import read_data

# of four figures without brackets, for what follows may be letters again: "Isa\\u00edas"
_JSON_LETTER: Final = re.compile(
    r"\\(?:u([0-9A-Fa-f]{4})|u\{([0-9A-Fa-f]{1,6})\}|x([0-9A-Fa-f]{2}))"
)
_CSS_LETTER: Final = re.compile(r"\\([0-9A-Fa-f]{1,6})[ \t\n]?")
_OCTAL: Final = re.compile(r"\\([0-3][0-7]{2})")
_RTF_LETTER: Final = re.compile(r"\\'([0-9A-Fa-f]{2})|\\u(-?\d{1,5}) ?\??")
_RTF_WORD: Final = re.compile(r"\\[a-z]+-?\d* ?|[{}]|\r?\n")
_ENTITY: Final = re.compile(r"&(?:#|[a-z]{2,8};)", re.IGNORECASE)
_PERCENT: Final = re.compile(r"%[2-7][0-9A-F]|%[C-E][0-9A-F]%", re.IGNORECASE)
# a word of a letter's head in other letters than plain ones (RFC 2047, 2); those beside it go on
_HEAD_WORD: Final = re.compile(r"=\?([\w-]{2,20})(?:\*\w*)?\?([bq])\?([^?\s]{0,400})\?=", re.I)
_HEAD_GAP: Final = re.compile(r"(?<=\?=)\s+(?==\?)")
_QUOTED: Final = re.compile(r"=[0-9A-F]{2}|=\r?\n")
_COMMENT: Final = re.compile(r"<!--.{0,4000}?-->", re.DOTALL)
_TAGS: Final = re.compile(r"<[^<>]{0,4000}>")
_FOLDED: Final = re.compile(r"\r?\n[ \t]")
_PARTED: Final = re.compile(r"-(?<=\w-)\s*\n\s*(?=\w)")
# a sign is sought first and what stands before it afterwards: a tenth of the time
_MARKS_WITHIN: Final = re.compile(
    r"(?:\*(?<=\w\*)\*{0,2}|_(?<=\w_)_|~(?<=\w~)~|=(?<=\w=)=|`(?<=\w`))(?=\w)"
)
_PUT_TOGETHER: Final = re.compile(r"[\"'`]\s{0,20}[+&.~]\s{0,20}[\"'`]")
"""Where a script puts two texts together."""
_SOFT_END: Final = re.compile(r"=\r?\n")
# letters as TeX has them: "Bj\\o{}rdal", "Isa\\'{\\i}as", "M\\\"uller"
_TEX_LETTER: Final = re.compile(r"\\(o|l|ae|oe|aa|ss|i|j|O|L|AE|OE|AA)(?![A-Za-z])(?:\{\}| )?")
_TEX_MARK: Final = re.compile(
    r"\\(?:[`'^\"~=.]|[uvHtcdbrk](?=\{| ))\s?(?:\{\s?([A-Za-z])\s?\}|([A-Za-z]))"
)
_TEX_BARE: Final = re.compile(r"\{([A-Za-z]{1,2})\}")
# what a document shows, string by string, wherever each stands on its page (PDF 32000-1, 9.4.3)
_DRAWN: Final = re.compile(r"\(((?:[^()\\]|\\.){1,400})\)\s*(?:Tj|'|\")|\[([^\[\]]{0,2000})\]\s*TJ")
_DRAWN_PART: Final = re.compile(r"\(((?:[^()\\]|\\.){0,400})\)")
_MANY_STRINGS: Final = 50
_ROW_LETTER: Final = re.compile(r"^[A-Z](?=\w)", re.MULTILINE)
_CODE_POINT: Final = re.compile(r"(?:%u|U\+)([0-9A-Fa-f]{4,6})[ ,;]?")
_KERNED: Final = re.compile(r"\)\s*-?[\d.]*\s*\(")
# the letters by ITU-R M.1677-1 (from memory), of points and dashes in whatever signs these are
_MORSE: Final = re.compile(
    r"[.\-·•−–—_](?<![\w.\-·•−–—].)[.\-·•−–—_]{0,4}(?:[ /|]{1,3}[.\-·•−–—_]{1,5}){6,}"
)
_MORSE_LETTERS: Final = {
    sign: letter
    for signs, letters in (
        (".- -... -.-. -.. . ..-. --. .... ..", "abcdefghi"),
        (".--- -.- .-.. -- -. --- .--. --.- .-.", "jklmnopqr"),
        ("... - ..- ...- .-- -..- -.-- --..", "stuvwxyz"),
    )
    for sign, letter in zip(signs.split(), letters, strict=True)
}
_BRAILLE: Final = "⠁⠃⠉⠙⠑⠋⠛⠓⠊⠚⠅⠇⠍⠝⠕⠏⠟⠗⠎⠞⠥⠧⠺⠭⠽⠵"
"""The letters as the blind read them, uncontracted (ISO 11548-1, from memory)."""
_SPELT: Final = frozenset({
    "alfa", "alpha", "bravo", "charlie", "delta", "echo", "foxtrot", "golf", "hotel", "india",
    "juliet", "juliett", "kilo", "lima", "mike", "november", "oscar", "papa", "quebec", "romeo",
    "sierra", "tango", "uniform", "victor", "whiskey", "whisky", "xray", "yankee", "zulu",
})  # fmt: skip
"""The words by which letters are spelt aloud (ICAO Annex 10, volume II, 5.2.1.3, from memory)."""
_PLACES: Final = re.compile(r"\d(?<!\d\d)\d?(?: \d{1,2}){7,}(?!\d)")
_PAIRS: Final = re.compile(r"(?<!\d)(?:0[1-9]|1\d|2[0-6]){8,}(?!\d)")
"""Letters by their places in the alphabet, "13-1-18" or "130118"."""
_FIGURE: Final = bytes.maketrans(b"123456789", b"0" * 9)
_OTHER_FIGURE: Final = re.compile(r"[^\D\x00-\x7f]")
_LEAST_SPELT: Final = 8
_EBCDIC: Final = bytes(
    number for number in range(0x40, 256)
    if (sign := bytes([number]).decode("cp500")).isalnum() or sign in " .,;:-'()/&\"#@+*"
) + b"\x15\x25\x0d\x05"  # fmt: skip
_MORSE_SIGNS: Final = str.maketrans("·•−–—_", "..----")
_CONTROL: Final = re.compile(rb"[\x00-\x08\x0e-\x1a\x1c-\x1f]")
_SHOWN: Final = re.compile(rb"[\t\n\r\x20-\x7e\x80-\xff]{5,}")
# marks over and under letters, and what is not seen at all
_NOT_SEEN: Final = re.compile(
    "[\u0300-\u036f\u00ad\u034f\u061c\u115f\u1160\u17b4\u17b5\u180e\u200b-\u200f\u202a-\u202e\u2060-\u206f\u3164\ufe00-\ufe0f\ufeff\uffa0"
    "\U000e0000-\U000e01ef]"
)
_NO_LETTER: Final = re.compile(r"[^\w\x00-\x7f]+")
ONE_LETTER: Final = (
    ("ø", "o"), ("ł", "l"), ("đ", "d"), ("ð", "d"), ("þ", "th"), ("æ", "ae"), ("œ", "oe"),
    ("ı", "i"), ("ħ", "h"),
)  # fmt: skip
_SCRIPTS: Final = re.compile(
    "[\u0180-\u02af\u0370-\u058f\u0600-\u1dff\u2800-\u28ff\u2c60-\u2dff\ua000-\uabff\U00010280-\U000118ff"
    "\U0001f130-\U0001f1ff\U000e0041-\U000e007a]"
)
"""Where letters stand that look like Latin ones: other scripts, small capitals, signs."""
_PLAIN: Final = "".join(chr(n).lower() if chr(n).isalnum() else " " for n in range(128))


def _plain_byte(number: int) -> str:
    letter = unicodedata.normalize("NFKD", chr(number))[0].lower()
    return letter if letter.isascii() and letter.isalnum() else "xyzw"[number % 4]


_OF_BYTES: Final = (_PLAIN + "".join(map(_plain_byte, range(128, 256)))).encode()
"""Each byte as it is compared: a small letter, a digit or a gap; those above 127 some letter."""
_OF_TEXT: Final = _PLAIN.encode() + bytes(range(128, 256))


def read_plain(data: bytes) -> str:
    """Return the text of a file in whichever of the usual encodings it was saved.

    >>> read_plain("Zoë".encode("utf-16")), read_plain("Zoë".encode("latin-1"))
    ('Zoë', 'Zoë')
    """
    for mark, encoding in _ENCODING_MARKS:
        if data.startswith(mark):
            return data[len(mark) :].decode(encoding, errors="replace")
    if b"\x00" in data[:400] and len(data) > 3:
        for first, end in ((0, "le"), (3, "be")):  # of four bytes the middle two are nought
            if all(data[first:400:4]) and not any(data[1:400:4]) | any(data[2:400:4]):
                return data.decode(f"utf-32-{end}", errors="replace")
        even, odd = data[:400:2].count(0), data[1:400:2].count(0)
        if max(even, odd) > 10 * min(even, odd) and max(even, odd) * 3 > len(data[:400:2]):
            return data.decode("utf-16-be" if even > odd else "utf-16-le", errors="replace")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("latin-1")


_ENCODING_MARKS: Final = (
    (b"\xff\xfe\x00\x00", "utf-32-le"),
    (b"\x00\x00\xfe\xff", "utf-32-be"),
    (b"\xff\xfe", "utf-16-le"),
    (b"\xfe\xff", "utf-16-be"),
)


def is_binary(data: bytes) -> bool:
    """Say whether bytes hold more than a text: words may then stand without a gap between them."""
    return _CONTROL.search(data) is not None


def every_text(data: bytes) -> Iterator[str]:
    """Return every text that bytes may hold: as it stands, and with its writing undone."""
    text = read_plain(data)
    yield text
    if is_binary(data) and text.count("\x00"):  # no UTF-16: words between other things
        text = b"\n".join(_SHOWN.findall(data)).decode("utf-8", errors="replace")
    elif is_binary(data):
        text = "".join(letter if letter >= " " or letter in "\t\r\n" else "\n" for letter in text)
    elif _is_ebcdic(data):
        yield data.decode("cp500")
    for _ in range(3):  # letters by number may be written so twice
        before, text = text, _undone(text)
        if text == before:
            break
        yield text
    yield from _joined(text)
    yield from _of_programs(text)
    if not text.isascii() and _SCRIPTS.search(text):
        yield unicodedata.normalize("NFKD", text).translate(_look_alikes())


@cache
def _look_alikes() -> dict[int, str]:
    """Return each letter that is seen as a Latin one, with that one."""
    table: dict[int, str] = {}
    for letter, like in _letters_alike():
        table.update(dict.fromkeys(map(ord, like), letter))
    # signs that hold a letter each, in the order of the alphabet: in discs, in squares, of flags,
    # and those that are not seen at all
    for begin in (0x1F150, 0x1F170, 0x1F1E6, 0xE0041, 0xE0061):
        table.update({begin + at: chr(ord("a") + at) for at in range(26)})
    table.update({ord(sign): chr(ord("a") + at) for at, sign in enumerate(_BRAILLE)})
    return table


def _letters_alike() -> Iterator[tuple[str, str]]:
    said = read_data("look_alikes.yml", "private")
    yield from said["ours"].items()
    yield from ((letter, like) for letter, like in said.items() if letter != "ours")


def _undone(text: str) -> str:
    """Return a text with every letter that is written by its number as that letter."""
    if _ENTITY.search(text):
        text = html.unescape(text)
    if _PERCENT.search(text):
        text = urllib.parse.unquote_plus(text, errors="replace")
    if "%u" in text or "U+" in text:
        text = _CODE_POINT.sub(_letter, text)
    if "\\" in text:
        text = _JSON_LETTER.sub(_letter, text)
        text = _RTF_LETTER.sub(_rtf_letter, text)
        text = _OCTAL.sub(lambda found: chr(int(found[1], 8)), text)
        text = _CSS_LETTER.sub(_letter, text.replace("\\n", "\n").replace("\\t", " "))
    if "=?" in text:
        text = _HEAD_WORD.sub(_head_word, _HEAD_GAP.sub("", text))
    if text.isascii() and _QUOTED.search(text):
        text = quopri.decodestring(text.encode()).decode("utf-8", errors="replace")
    return text


def _head_word(found: re.Match[str]) -> str:
    """Return what a coded word of a letter's head says, itself where it says nothing."""
    charset, way, said = found.groups()
    try:
        if way.lower() == "b":
            data = base64.b64decode(said + "=" * (-len(said) % 4))
        else:
            data = quopri.decodestring(said.replace("_", "=20").encode())
        return data.decode(charset, errors="replace")
    except (ValueError, LookupError):
        return found[0]


def _joined(text: str) -> Iterator[str]:
    """Return a text with its words put together again that marks, tags or lines part."""
    if text.startswith("{\\rtf"):
        yield _RTF_WORD.sub("", text)
    if "<!--" in text:
        text = _COMMENT.sub("", text)
    if "<" in text:
        parted = _TAGS.sub("\x1f", text)
        yield parted.replace("\x1f", "")
        yield parted.replace("\x1f", "|")
    if _MORSE.search(text):
        yield "\n".join(_from_morse(found[0]) for found in _MORSE.finditer(text))
    if "\r\n " in text or "BEGIN:V" in text:  # calendars and address books fold a line anywhere
        yield _FOLDED.sub("", text)
    if _PARTED.search(text):
        yield _PARTED.sub("", text)
    if _MARKS_WITHIN.search(text):
        yield _MARKS_WITHIN.sub("", text)
    if _PUT_TOGETHER.search(text):
        yield _PUT_TOGETHER.sub("", text)
    if ") " in text and _KERNED.search(text):
        yield _KERNED.sub("", text)


def _of_programs(text: str) -> Iterator[str]:
    """Return the words of a text that a program for letters, pages or money writes its own way."""
    if "=\n" in text or "=\r\n" in text:  # of a letter whose other lines are not coded
        yield _SOFT_END.sub("", text)
    if _TEX_LETTER.search(text) or _TEX_MARK.search(text):
        plain = _TEX_BARE.sub(r"\1", _TEX_LETTER.sub(r"\1", text))
        yield _TEX_MARK.sub(lambda found: found[1] or found[2], plain)
    if "Tj" in text or "TJ" in text:
        yield _drawn(text)
    if "!Type:" in text:  # an account's rows, each behind a letter that says what it is
        yield _ROW_LETTER.sub("", text)


def _drawn(text: str) -> str:
    """Return what a document shows: each string on a line, or in one where each is but a word."""
    shown = [found[1] or "".join(_DRAWN_PART.findall(found[2])) for found in _DRAWN.finditer(text)]
    words = sum(" " not in one.strip() for one in shown)
    return (" " if words > max(_MANY_STRINGS, len(shown) / 2) else "\n").join(shown)


def _is_ebcdic(data: bytes) -> bool:
    """Say whether bytes are letters, figures and gaps as great machines have them (code page 500).

    >>> _is_ebcdic("For Nell Tarrowby".encode("cp500")), _is_ebcdic(b"For Nell Tarrowby")
    (True, False)
    """
    return len(data) > _LEAST_SPELT and not data.translate(None, _EBCDIC)


def spelt_out(text: str, words: Collection[str]) -> Iterator[str]:
    """Return the letters that words or numbers of a compared text stand for, each run as one word.

    `words` are all the words of the text.

    >>> list(spelt_out("2 18 1 13 2 12 5 19 99", ())), list(spelt_out("0218011302120519", ()))
    (['brambles'], ['brambles'])
    """
    if len(_SPELT.intersection(words)) >= 4:
        said = text.replace("x ray", "xray").split()
        run = "".join(word[0] if word in _SPELT else " " for word in said)
        yield from (part for part in run.split() if len(part) >= _LEAST_SPELT)
    for pattern, number in _numbers_in(text):
        for found in pattern.finditer(text):
            places = map(int, re.findall(number, found[0]))
            run = "".join(chr(96 + place) if 0 < place < 27 else " " for place in places)
            yield from (part for part in run.split() if len(part) >= _LEAST_SPELT)


def _numbers_in(text: str) -> Iterator[tuple[re.Pattern[str], str]]:
    """Return what rows of numbers a text may have: it is sooner seen than these are sought."""
    plain = text if text.isascii() else _OTHER_FIGURE.sub("0", text)
    figures = plain.encode(errors="replace").translate(_FIGURE)
    if b"0 0 0 0 0 0 0 0" in figures.replace(b"00", b"0"):
        yield _PLACES, r"\d+"
    if b"0" * 16 in figures:
        yield _PAIRS, r"\d\d"


def _from_morse(signs: str) -> str:
    """Return the letters that points and dashes stand for.

    >>> _from_morse("-. . .-.. .-.. / - .- .-. .-. --- .-- -... -.--")
    'nell tarrowby'
    """
    words = re.split(r" ?[/|] ?| {2,}", signs.translate(_MORSE_SIGNS))
    return " ".join("".join(_MORSE_LETTERS.get(one, "") for one in word.split()) for word in words)


def _letter(found: re.Match[str]) -> str:
    number = int(next(filter(None, found.groups())), 16)
    return chr(number) if number < 0x110000 and not 0xD800 <= number < 0xE000 else " "


def _rtf_letter(found: re.Match[str]) -> str:
    if found[1]:
        return bytes.fromhex(found[1]).decode("cp1252", errors="replace")
    number = int(found[2]) % 65_536
    return chr(number) if not 0xD800 <= number < 0xE000 else " "


def letters(text: str) -> str:
    r"""Return a text as it is compared: nothing counts but letters and figures, and their gaps.

    >>> letters("Zebedee\u00a0 QUILL\u00adfeather,\n> Zoë-Ångström")
    'zebedee quillfeather zoe angstrom'
    """
    if not text.isascii():
        text = _NOT_SEEN.sub("", unicodedata.normalize("NFKD", text)).casefold()
        for one, other in ONE_LETTER:
            text = text.replace(one, other)
        text = _NO_LETTER.sub(" ", text)
    plain = text.encode("utf-8", errors="replace").translate(_OF_TEXT)
    return " ".join(plain.decode("utf-8").split())


def byte_letters(data: bytes) -> str:
    """Return bytes as they are compared where nobody knows how their letters are encoded."""
    return " ".join(data.translate(_OF_BYTES).decode("ascii").split())
