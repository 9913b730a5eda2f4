"""Files as clumsy hands and broken programs leave them, with what is to come of each.

What was expected stood before any was tried: read, told, or either of them; never a traceback, a
wait or a loss. Of 198 seven were otherwise at first: marks of two versions and a title without a
word were published, a setting that stood twice was chosen between, ten thousand steps took seconds.
"""

from __future__ import annotations

import json
from typing import Final

READ: Final = "read"
TOLD: Final = "told"
EITHER: Final = "read or told"
RECIPE: Final = """---
title: Quince drops
kind: infusion
makes: 900 ml
ingredients:
  - 1 l vodka, 40% vol
  - 3 quinces, about 600 g
---

A word on why.

## Method

1. Steep {quinces} in {vodka} for 6 weeks.
2. Strain and bottle.
"""
GIVING: Final = """giving list: Winter
giving day: 2027-12-18
baskets:
  small: {eat: 0, drink: 1}
makes:
  - recipe: quince
households:
  - name: The Cragbies
    basket: small
    avoid: [nuts]
"""
LARDER: Final = """elder vinegar:
  is: cider vinegar
  acidity: acid
  source: its label
"""
LOG: Final = """giving log:
  - {day: 2027-06-03, begun: quince}
"""
SETTINGS: Final = """site_name: A book
site_url: https://book.example/
theme: material
plugins:
  - search
  - stillroom:
      country: GB
"""
CASES: Final[dict[str, tuple[str, bytes, str]]] = {}
"""What is tried -> where it lies in the book, what it holds, what is to come of it."""


def _tried(where: str, said: str, text: str | bytes, outcome: str) -> None:
    written = text if isinstance(text, bytes) else text.encode("utf-8", "surrogatepass")
    assert CASES.setdefault(f"{where}: {said}", (where, written, outcome))[1] is written


def recipe(said: str, text: str | bytes, outcome: str) -> None:
    _tried("recipes/quince.md", said, text, outcome)


def giving(said: str, text: str | bytes, outcome: str) -> None:
    _tried("giving/list.yml", said, text, outcome)


def larder(said: str, text: str | bytes, outcome: str) -> None:
    _tried("larder.yml", said, text, outcome)


def log(said: str, text: str | bytes, outcome: str) -> None:
    _tried("giving/log.yml", said, text, outcome)


def settings(said: str, text: str | bytes, outcome: str) -> None:
    _tried("mkdocs.yml", said, text, outcome)


recipe("tab instead of blanks before a list", RECIPE.replace("  - 1 l", "\t- 1 l"), EITHER)
recipe("tabs after colons", RECIPE.replace(": ", ":\t"), READ)
recipe("smart quotes round title", RECIPE.replace("Quince drops", "“Quince drops”"), READ)
recipe("smart quote opened only", RECIPE.replace("Quince drops", '"Quince drops'), EITHER)
recipe("BOM in the middle", RECIPE.replace("kind", "\ufeffkind"), EITHER)
recipe("BOM twice utf16", RECIPE.encode("utf-16"), EITHER)
recipe("CRLF", RECIPE.replace("\n", "\r\n"), READ)
recipe("mixed line ends", RECIPE.replace("\n", "\r\n", 6), READ)
recipe("CR CR LF", RECIPE.replace("\n", "\r\r\n"), EITHER)
recipe("latin-1 half utf-8", RECIPE.encode() + "3. Zoë\n".encode("latin-1"), EITHER)
recipe("cp1252 quotes", RECIPE.replace("A word on", "It\u2019s").encode("cp1252"), EITHER)
recipe(
    "merge marks in facts",
    RECIPE.replace(
        "makes: 900 ml", "<<<<<<< HEAD\nmakes: 900 ml\n=======\nmakes: 800 ml\n>>>>>>> other"
    ),
    TOLD,
)
recipe(
    "merge marks in method",
    RECIPE.replace(
        "2. Strain", "<<<<<<< HEAD\n2. Strain\n=======\n2. Pour\n>>>>>>> other\n3. Strain"
    ),
    TOLD,
)
recipe(
    "merge marks diff3",
    RECIPE.replace(
        "makes: 900 ml",
        "<<<<<<< HEAD\nmakes: 900 ml\n||||||| base\nmakes: 1 l\n=======\nmakes: 800 ml\n>>>>>>> x",
    ),
    TOLD,
)
recipe(
    "half a merge mark left", RECIPE.replace("A word on why.", "=======\nA word on why."), EITHER
)
recipe("duplicate title", RECIPE.replace("kind", "title: Other\nkind"), TOLD)
recipe(
    "duplicate ingredients",
    RECIPE.replace("---\n\nA", "ingredients:\n  - 1 kg sugar\n---\n\nA"),
    TOLD,
)
recipe("anchors", RECIPE.replace("- 1 l vodka, 40% vol", "- &v 1 l vodka, 40% vol\n  - *v"), EITHER)
recipe("merge key", RECIPE.replace("title", "<<: *a\ntitle"), TOLD)
recipe("undefined alias", RECIPE.replace("900 ml", "*x"), EITHER)
recipe(
    "wrong nesting: facts below ingredients",
    RECIPE.replace("ingredients:\n", "ingredients:\n  list:\n").replace("  - ", "    - "),
    EITHER,
)
recipe("nested list in list", RECIPE.replace("  - 1 l vodka", "  -\n    - 1 l vodka"), EITHER)
recipe("one blank too many", RECIPE.replace("kind", " kind"), EITHER)
recipe("a date where amount", RECIPE.replace("900 ml", "2027-12-18"), TOLD)
recipe("a time as makes", RECIPE.replace("900 ml", "12:30"), TOLD)
recipe("huge number", RECIPE.replace("900 ml", "9" * 300 + " ml"), TOLD)
recipe("huge exponent", RECIPE.replace("900 ml", "1e400 ml"), TOLD)
recipe("sexagesimal", RECIPE.replace("900 ml", "190:20:30"), TOLD)
recipe("underscored number", RECIPE.replace("900 ml", "9_000 ml"), EITHER)
recipe("hex", RECIPE.replace("900 ml", "0x3E8 ml"), TOLD)
recipe("infinity", RECIPE.replace("900 ml", ".inf"), TOLD)
recipe("not a number", RECIPE.replace("900 ml", ".nan ml"), TOLD)
recipe("empty file", "", TOLD)
recipe("blank lines only", "\n\n\n", TOLD)
recipe("blanks and tabs only", "  \t \n", TOLD)
recipe("NUL file", "\0" * 2000, TOLD)
recipe("a PNG called md", b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 20, TOLD)
recipe("a gzip called md", b"\x1f\x8b\x08\0" + bytes(range(256)) * 8, TOLD)
recipe("a PDF called md", b"%PDF-1.4\n%\xe2\xe3\xcf\xd3\n1 0 obj", TOLD)
recipe("deep YAML flow", RECIPE.replace("900 ml", "[" * 3000), TOLD)
recipe("deep YAML map", RECIPE.replace("900 ml", "{a: " * 2000), TOLD)
recipe(
    "deep block nesting",
    RECIPE.replace(
        "makes: 900 ml", "makes:\n" + "".join(" " * (i + 1) + "a:\n" for i in range(900))
    ),
    TOLD,
)
recipe("deep markdown quote", RECIPE + "\n" + ">" * 4000 + " x\n", EITHER)
recipe("deep brackets in method", RECIPE.replace("Strain", "(" * 4000 + "Strain"), EITHER)
recipe(
    "very long line in method",
    RECIPE.replace("Strain and bottle.", "Strain and bottle " + "slowly and " * 60000),
    EITHER,
)
recipe("very long word", RECIPE.replace("Strain", "S" * 200000), EITHER)
recipe("very long title", RECIPE.replace("Quince drops", "Quince " * 9000), TOLD)
recipe("very long ingredient", RECIPE.replace("vodka, 40% vol", "vodka " * 20000), TOLD)
recipe(
    "10000 ingredients",
    RECIPE.replace("  - 3 quinces", "  - 1 g sugar\n" * 10000 + "  - 3 quinces"),
    EITHER,
)
recipe("10000 steps", RECIPE + "".join(f"{i}. Stir.\n" for i in range(3, 10000)), EITHER)
recipe("cyrillic key", RECIPE.replace("title", "tіtle"), TOLD)
recipe("cyrillic kind value", RECIPE.replace("infusion", "infusiоn"), EITHER)
recipe("fullwidth colon", RECIPE.replace("makes:", "makes："), EITHER)
recipe("fullwidth digits", RECIPE.replace("900", "９００"), EITHER)
recipe("arabic digits", RECIPE.replace("900", "٩٠٠"), EITHER)
recipe("roman numeral makes", RECIPE.replace("900", "Ⅸ"), TOLD)
recipe("RTL override in title", RECIPE.replace("Quince drops", "\u202eQuince\u202c drops"), EITHER)
recipe("hebrew title", RECIPE.replace("Quince drops", "טיפות חבושים"), READ)
recipe("emoji title", RECIPE.replace("Quince drops", "Quince drops 🍐🎁"), EITHER)
recipe("emoji key", RECIPE.replace("kind", "🍐: 3\nkind"), TOLD)
recipe("ZWJ family emoji", RECIPE.replace("A word", "👨‍👩‍👧‍👦 A word"), EITHER)
recipe("zero width in key", RECIPE.replace("makes", "ma\u200bkes"), EITHER)
recipe("nbsp indents", RECIPE.replace("  - 1 l", "\u00a0\u00a0- 1 l"), EITHER)
recipe("ideographic blanks", RECIPE.replace("  - 1 l", "\u3000- 1 l"), EITHER)
recipe("line separator", RECIPE.replace("A word", "A\u2028word"), EITHER)
recipe("vertical tab and form feed", RECIPE.replace("A word", "A\x0bword\x0c"), EITHER)
recipe("escape codes of a terminal", RECIPE.replace("A word", "\x1b[31mA word\x1b[0m"), EITHER)
recipe("backspaces", RECIPE.replace("A word", "A\x08 word"), EITHER)
recipe("lone surrogate bytes", RECIPE.encode() + b"\xed\xa0\x80\n", EITHER)
recipe("overlong utf8", RECIPE.encode() + b"\xc0\xaf\n", EITHER)
recipe("TOML fences", RECIPE.replace("---", "+++"), TOLD)
recipe("fence of dashes four", RECIPE.replace("---", "----"), EITHER)
recipe("fence never closed", RECIPE.replace("---\n\nA", "\nA"), EITHER)
recipe("a second fence in the text", RECIPE + "\n---\ntitle: again\n---\n", EITHER)
recipe("JSON facts", '{"title": "Quince drops", "kind": "infusion"}\n\n## Method\n\n1. x\n', TOLD)
recipe("facts in a code block", "```yaml\n" + RECIPE + "```\n", EITHER)
recipe("RTF saved as md", "{\\rtf1\\ansi{\\fonttbl\\f0 Times;}\\f0 Quince drops\\par}", TOLD)
recipe("HTML saved as md", "<!DOCTYPE html><html><body><h1>Quince drops</h1></body></html>", TOLD)
recipe("Word XML", "<?xml version='1.0'?><w:document/>", TOLD)
recipe(
    "yes/no",
    RECIPE.replace("kind", "title: yes\nkind").replace("title: Quince drops\n", ""),
    EITHER,
)
recipe("null title", RECIPE.replace("Quince drops", "null"), EITHER)
recipe("tilde", RECIPE.replace("Quince drops", "~"), TOLD)
recipe("title is a list", RECIPE.replace("Quince drops", "[a, b]"), TOLD)
recipe("title is a map", RECIPE.replace("Quince drops", "{a: b}"), TOLD)
recipe("python tag", RECIPE.replace("Quince drops", '!!python/object/apply:os.system ["id"]'), READ)
recipe(
    "block scalar title",
    RECIPE.replace("title: Quince drops", "title: |\n  Quince\n  drops"),
    EITHER,
)
recipe("unclosed quote", RECIPE.replace("makes: 900 ml", "makes: '900 ml"), TOLD)
recipe("percent first", RECIPE.replace("1 l vodka, 40% vol", "%vol 40 vodka"), EITHER)
recipe("at first", RECIPE.replace("900 ml", "@900 ml"), TOLD)
recipe("backquote first", RECIPE.replace("1 l vodka", "`1 l` vodka"), EITHER)
recipe("hash in title", RECIPE.replace("Quince drops", "Quince #1 drops"), EITHER)
recipe("star lists", RECIPE.replace("  - ", "  * "), EITHER)
recipe("bullets", RECIPE.replace("  - ", "  • "), EITHER)
recipe("en dash lists", RECIPE.replace("  - ", "  – "), EITHER)
recipe("negative amount", RECIPE.replace("3 quinces", "-3 quinces"), TOLD)
recipe("zero amount", RECIPE.replace("1 l vodka", "0 l vodka"), TOLD)
recipe("fraction of nought", RECIPE.replace("1 l vodka", "1/0 l vodka"), TOLD)
recipe("range backwards", RECIPE.replace("3 quinces", "5-3 quinces"), EITHER)
recipe("a hundred commas", RECIPE.replace("vodka, 40% vol", "vodka" + "," * 100), EITHER)
recipe("date in steps 9999", RECIPE.replace("6 weeks", "9999999 weeks"), EITHER)
recipe("minus days", RECIPE.replace("6 weeks", "-6 weeks"), EITHER)

giving("tab", GIVING.replace("  - recipe", "\t- recipe"), EITHER)
giving("smart quotes", GIVING.replace("The Cragbies", "“The Cragbies”"), READ)
giving("smart apostrophes as quotes", GIVING.replace("Winter", "‘Winter’"), READ)
giving("BOM", b"\xef\xbb\xbf" + GIVING.encode(), READ)
giving("utf-16", GIVING.encode("utf-16"), EITHER)
giving("CRLF", GIVING.replace("\n", "\r\n"), READ)
giving("latin-1", GIVING.replace("The Cragbies", "Zoë").encode("latin-1"), EITHER)
giving(
    "merge marks",
    GIVING.replace(
        "    basket: small",
        "<<<<<<< HEAD\n    basket: small\n=======\n    basket: large\n>>>>>>> b",
    ),
    TOLD,
)
giving(
    "duplicate key",
    GIVING.replace("    basket: small", "    basket: small\n    basket: small"),
    TOLD,
)
giving("duplicate household", GIVING + "  - name: The Cragbies\n    basket: small\n", TOLD)
giving(
    "anchors",
    GIVING.replace("- name: The Cragbies", "- &h\n    name: The Cragbies")
    + "  - <<: *h\n    name: Jo\n",
    EITHER,
)
giving("date wrong month", GIVING.replace("2027-12-18", "2027-18-12"), TOLD)
giving("date 9999", GIVING.replace("2027-12-18", "9999-12-31"), EITHER)
giving("date past", GIVING.replace("2027-12-18", "1999-12-18"), EITHER)
giving("date year 0", GIVING.replace("2027-12-18", "0000-01-01"), TOLD)
giving("date as number", GIVING.replace("2027-12-18", "20271218"), EITHER)
giving("date with time", GIVING.replace("2027-12-18", "2027-12-18T10:00:00Z"), EITHER)
giving("huge basket", GIVING.replace("drink: 1", "drink: 1" + "0" * 50), TOLD)
giving("negative basket", GIVING.replace("drink: 1", "drink: -1"), TOLD)
giving("float basket", GIVING.replace("drink: 1", "drink: 1.5"), TOLD)
giving("empty", "", TOLD)
giving("key only", "giving list:\n", TOLD)
giving(
    "list of nothing",
    GIVING.replace(
        "households:\n  - name: The Cragbies\n    basket: small\n    avoid: [nuts]\n",
        "households:\n",
    ),
    EITHER,  # a list that is begun names nobody yet, and that is noted
)
giving("binary", bytes(range(256)) * 30, TOLD)
giving("xlsx called yml", b"PK\x03\x04" + bytes(range(256)) * 10, TOLD)
giving("deep", GIVING.replace("[nuts]", "[" * 2000), TOLD)
giving(
    "wide", GIVING.replace("[nuts]", "[" + ", ".join(f"food{i}" for i in range(5000)) + "]"), EITHER
)
giving("long line", GIVING.replace("The Cragbies", "C" * 300000), TOLD)
giving("confusable key", GIVING.replace("households", "hоuseholds"), TOLD)
giving("RTL name", GIVING.replace("The Cragbies", "משפחת כהן"), READ)
giving("emoji name", GIVING.replace("The Cragbies", "The Cragbies 🎄"), READ)
giving("nbsp indents", GIVING.replace("  - name", "\u00a0\u00a0- name"), EITHER)
giving("wrong nesting", GIVING.replace("    basket: small\n", "basket: small\n"), TOLD)
giving("CSV in the file", "name,basket,avoid\nThe Cragbies,small,nuts\n", TOLD)
giving(
    "JSON",
    json.dumps(
        {
            "giving list": "W",
            "giving day": "2027-12-18",
            "baskets": {"small": {"drink": 1}},
            "makes": [{"recipe": "quince"}],
            "households": [{"name": "A", "basket": "small"}],
        }
    ),
    READ,
)
giving(
    "alias bomb",
    "a: &a [x,x,x,x,x,x,x,x,x]\n"
    + "".join(f"{c}: &{c} [{','.join([f'*{chr(ord(c) - 1)}'] * 9)}]\n" for c in "bcdefghi")
    + GIVING,
    TOLD,
)
giving("two documents", GIVING + "---\n" + GIVING, TOLD)
giving("set tag", GIVING.replace("[nuts]", "!!set {nuts}"), EITHER)
giving("unknown basket", GIVING.replace("basket: small", "basket: smal"), TOLD)
giving("ends in the middle", GIVING[:-9], EITHER)

larder("tab", LARDER.replace("  is", "\tis"), EITHER)
larder(
    "merge marks",
    LARDER.replace(
        "  acidity: acid", "<<<<<<< HEAD\n  acidity: acid\n=======\n  acidity: low\n>>>>>>> b"
    ),
    TOLD,
)
larder("duplicate food", LARDER + LARDER, TOLD)
larder("binary", bytes(range(256)) * 9, TOLD)
larder("a list", "- elder vinegar\n- other\n", TOLD)
larder("a word", "vinegar\n", TOLD)
larder("huge strength", LARDER.replace("acidity: acid", "strength: 1e9% vol"), TOLD)
larder("emoji food", "🍐:\n  is: pear\n", EITHER)
larder("utf-16", LARDER.encode("utf-16"), EITHER)
larder("deep", "a: " * 800 + "\n", TOLD)
larder("smart quotes", LARDER.replace("its label", "“its label”"), READ)
larder("empty", "", READ)

log(
    "merge marks",
    LOG + "<<<<<<< HEAD\n  - {day: 2027-07-03, begun: quince}\n=======\n>>>>>>> b\n",
    TOLD,
)
log("tab", LOG.replace("  - ", "\t- "), EITHER)
log("31 February", LOG.replace("06-03", "02-31"), TOLD)
log("future 9999", LOG.replace("2027-06-03", "9999-12-31"), EITHER)
log("binary", bytes(range(256)) * 9, TOLD)
log("unknown word", LOG.replace("begun", "beginned"), TOLD)
log(
    "unknown household", LOG.replace("begun: quince", "given: Nobody Known, things: [quince]"), TOLD
)
log("empty", "", EITHER)
log("cut off", LOG[:-3], TOLD)

settings("tab", SETTINGS.replace("      country", "\t\tcountry"), TOLD)
settings(
    "merge marks",
    SETTINGS.replace(
        "site_name: A book", "<<<<<<< HEAD\nsite_name: A book\n=======\nsite_name: B\n>>>>>>> x"
    ),
    TOLD,
)
settings("duplicate plugins", SETTINGS + "plugins:\n  - search\n", TOLD)
settings("duplicate country", SETTINGS + "      country: NO\n", TOLD)
settings("smart quotes", SETTINGS.replace("A book", "“A book”"), READ)
settings("BOM", b"\xef\xbb\xbf" + SETTINGS.encode(), READ)
settings("utf-16", SETTINGS.encode("utf-16"), EITHER)
settings("latin-1", SETTINGS.replace("A book", "Zoë").encode("latin-1"), EITHER)
settings("CRLF", SETTINGS.replace("\n", "\r\n"), READ)
settings("empty", "", TOLD)
settings("binary", bytes(range(256)) * 9, TOLD)
settings("a list", "- a\n- b\n", TOLD)
settings("number for name", SETTINGS.replace("A book", "2027"), EITHER)
settings("date for name", SETTINGS.replace("A book", "2027-12-18"), EITHER)
settings("null name", SETTINGS.replace("A book", "~"), EITHER)
settings("list for name", SETTINGS.replace("A book", "[a]"), TOLD)
settings("emoji name", SETTINGS.replace("A book", "🎁"), READ)
settings("RTL name", SETTINGS.replace("A book", "\u202eA book"), EITHER)
settings("very long name", SETTINGS.replace("A book", "A " * 40000), EITHER)
settings("confusable country", SETTINGS.replace("country: GB", "соuntry: GB"), TOLD)
settings("deep nav", SETTINGS + "nav: " + "[" * 500 + "\n", TOLD)
settings("nav with page that is not", SETTINGS + "nav:\n  - Home: nowhere.md\n", EITHER)
settings("site_url no url", SETTINGS.replace("https://book.example/", "book"), EITHER)
settings(
    "site_url javascript", SETTINGS.replace("https://book.example/", "javascript:alert(1)"), TOLD
)
settings("a sign by its number", SETTINGS + 'site_description: "a\\x00b"\n', TOLD)
settings("a folder by such a sign", SETTINGS + '      recipes: "a\\x00b"\n', TOLD)
settings("altitude in feet", SETTINGS + "      altitude_m: 300 ft\n", TOLD)
settings("exponent altitude", SETTINGS + "      altitude_m: 1e999\n", TOLD)
settings("negative altitude", SETTINGS + "      altitude_m: -9000\n", TOLD)
settings("docs_dir up", SETTINGS + "docs_dir: ..\n", TOLD)
settings("docs_dir a file", SETTINGS + "docs_dir: mkdocs.yml\n", TOLD)
settings("site_dir docs", SETTINGS + "site_dir: docs\n", TOLD)
settings("theme of a page", SETTINGS.replace("material", "{name: 7}"), TOLD)
settings(
    "extra script from elsewhere",
    SETTINGS + "extra_javascript: [https://evil.example/x.js]\n",
    TOLD,
)
settings("extra css from elsewhere", SETTINGS + 'extra_css: ["http://evil.example/x.css"]\n', TOLD)

# no page of the book holds two versions of itself
_tried("docs/more.md", "merge marks", "# A\n\n<<<<<<< mine\nx\n=======\ny\n>>>>>>> theirs\n", TOLD)
_tried("docs/more.md", "headings under signs", "A\n=======\n\nb\n\n> > > c\n", READ)
