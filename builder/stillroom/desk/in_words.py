"""Two versions of a giving list or of the book's settings, in the words of their boxes.

A cook compares what she was asked with what she answered. Where a file holds something that no box
shows, and only that differs, the files themselves stand side by side. Recipes: recipe_form.py.
"""

from __future__ import annotations

from collections.abc import Callable

from stillroom.core.words.problems import ProblemsFound
from stillroom.desk.book_form import LABELS, PLACED, settings_form
from stillroom.desk.comparing import Pair, side_by_side
from stillroom.desk.giving_form import HEADINGS, ROWS, rows_of, top_of
from stillroom.desk.giving_lines import lines_of
from stillroom.desk.giving_rows import NEEDED
from stillroom.desk.giving_told import LINES
from stillroom.desk.named import countries, currencies, languages
from stillroom.saving.yaml_files import read_yaml_file

Words = Callable[[str], str]


def pairs_in_words(one: str, other: str, words: Words) -> list[Pair]:
    """Return two versions in pairs of lines, as `words` tells them.

    As the files have them where one cannot be read, or where their words are the same.
    """
    try:
        told = words(one), words(other)
    except (ProblemsFound, AttributeError, TypeError, ValueError):  # nobody's list: shown as it is
        return side_by_side(one, other)
    if told[0] == told[1] and one != other:
        return side_by_side(one, other)
    return side_by_side(*told)


def list_in_words(text: str) -> str:
    r"""Return a giving list as its boxes ask; raises ProblemsFound where it cannot be read.

    >>> print(list_in_words("giving list: May\nhouseholds:\n- name: Ida\n  avoid: [nuts]\n"))
    What this giving is called: May
    <BLANKLINE>
    Who: Ida
    Must not have: nuts
    """
    said = read_yaml_file(text, "list")
    rows = [_answer(ask.words, value) for ask, value in top_of(said)]
    for part in HEADINGS:
        for at, values in rows_of(said, part):
            head = "" if NEEDED[part] in values else _answer("Basket", at)
            asked = [_answer(ask.words, values[ask.key]) for ask in ROWS[part]]
            rows += ["\n" + "\n".join(row for row in (head, *asked) if row)]
    for part, called in LINES.items():
        rows.append(_below(called, lines_of(said, part)))
    return "\n".join(row for row in rows if row)


def settings_in_words(text: str) -> str:
    r"""Return a book's settings as their boxes ask; raises ProblemsFound where they cannot be read.

    >>> print(settings_in_words("site_name: Ferry\nplugins:\n- stillroom:\n    country: GB\n"))
    What it is called: Ferry
    Country of the kitchen: United Kingdom
    """
    form = settings_form(text, "settings")
    spoken = languages()
    for key, named in (
        ("country", countries()),
        ("language", (*spoken.read, *spoken.others)),
        ("currency", currencies()),
    ):
        form[key] = dict(named).get(form[key], form[key])
    called = {**LABELS, **PLACED}
    rows = [
        _below(words, form[key]) if "\n" in form[key] else _answer(words, form[key])
        for key, words in called.items()
        if key in form
    ]
    return "\n".join(row for row in rows if row)


def _answer(asked: str, answer: str) -> str:
    end = "" if asked.endswith("?") else ":"
    return f"{asked}{end} {answer}" if answer else ""


def _below(asked: str, lines: str) -> str:
    return f"\n{asked}:\n{lines}" if lines else ""
