"""A giving list in another language is known by its shape, whatever wrote it; its likes pass.

Nobody here is on a list of the book: the names tell nothing.
"""

from __future__ import annotations

import csv
import io
import json

import pytest

from stillroom.core.private.shapes import SHOPPING_HEAD, find_private_shape
from stillroom.core.words.data_files import read_data
from stillroom.giving import list_words
from stillroom.giving.list_words import plain_key

# by language: the list's own name, households, name, basket, avoid, children
WORDS = {
    "de": ("Geschenkliste", "Haushalte", "Name", "Korb", "meidet", "Kinder"),
    "fr": ("liste de cadeaux", "foyers", "nom", "panier", "évite", "enfants"),
    "es": ("lista de regalos", "hogares", "nombre", "cesta", "evita", "niños"),
    "it": ("lista dei regali", "famiglie", "nome", "cesto", "intolleranze", "bambini"),
    "nl": ("cadeaulijst", "huishoudens", "naam", "mand", "vermijdt", "kinderen"),
    "sv": ("presentlista", "hushåll", "namn", "korg", "undviker", "barn"),
    "nb": ("gaveliste", "husholdninger", "navn", "kurv", "tåler ikke", "barn"),
}
PEOPLE = (("Odette Brackenridge", "1", "x y", "3"), ("Casimir Thornhollow", "2", "z", ""))


def _table(head: tuple[str, ...], parted: str) -> str:
    out = io.StringIO()
    csv.writer(out, delimiter=parted).writerows([head, *PEOPLE])
    return out.getvalue()


def _toml(called: str, part: str, keys: tuple[str, ...]) -> str:
    rows = [
        f'[["{part}"]]\n' + "".join(f'"{k}" = "{v}"\n' for k, v in zip(keys, one, strict=True))
        for one in PEOPLE
    ]
    return f'"{called}" = "2027"\n' + "\n".join(rows)


def _ini(called: str, part: str, keys: tuple[str, ...]) -> str:
    rows = [f"[{one[0]}]\n" + "".join(f"{k} = {v}\n" for k, v in zip(keys, one, strict=True))
            for one in PEOPLE]  # fmt: skip
    return f"; {called}: {part}\n" + "\n".join(rows)


def _xml(called: str, part: str, keys: tuple[str, ...]) -> str:
    tags = [key.replace(" ", "-") for key in keys]
    rows = ["".join(f"<{t}>{v or '-'}</{t}>" for t, v in zip(tags, one, strict=True))
            for one in PEOPLE]  # fmt: skip
    return f"<x><{part}>{'</y><y>'.join(rows)}</{part}></x>"


def _json(called: str, part: str, keys: tuple[str, ...]) -> str:
    rows = [dict(zip(keys, one, strict=True)) for one in PEOPLE]
    return json.dumps({called: "2027", part: rows}, ensure_ascii=False)


FORMS = {
    "commas": lambda called, part, keys: _table(keys, ","),
    "semicolons": lambda called, part, keys: _table(keys, ";"),
    "tabs": lambda called, part, keys: _table(keys, "\t"),
    "bars": lambda called, part, keys: _table(keys, "|"),
    "TOML": _toml,
    "INI": _ini,
    "XML": _xml,
    "JSON": _json,
}


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("language", WORDS)
def test_a_list_in_another_language_is_known_in_any_form(language, form):
    called, part, *keys = WORDS[language]
    text = FORMS[form](called, part, tuple(keys))
    assert find_private_shape(text.encode(), ())[1] == "giving list"


@pytest.mark.parametrize("parted", [";", "\t", "|", '";"', " | "])
def test_the_shopping_saved_anew_by_a_spreadsheet_is_a_part_of_a_pack(parted):
    text = parted.join(SHOPPING_HEAD) + "\n"
    assert find_private_shape(text.encode(), ())[1] == "part of a pack"


# a recipe's words, a shop's table, a page of rules, a shopping basket of the web
LIKE_ONE = [
    "Name: Erdbeeren\nKorb: 500 g\nKinder: mögen sie\nHaltbar: 3 Tage\n",
    "nom;panier;prix\nPommes;1 kg;2,50\n",
    "Ein Korb Äpfel. Wer Nüsse nicht verträgt: Allergien beachten, Kinder unter 3 meidet man.\n",
    "nombre,precio,cesta\nManzanas,2,1\n",
    "<nav><a>Mand</a><a>Naam</a></nav><p>Wie noten mijdt, leest het etiket.</p>",
    '{"Korb": ["Korb", "Körbe"], "Name": "Name", "meidet": "avoids"}',
    "Il cesto per i bambini: la nonna evita lo zucchero. Nome: cestino di Natale\n",
    "| Zutat | Korb | Preis |\n|---|---|---|\n| Quitten | 1 | 4,00 |\n",
    "namn,pris\nkorg,20\n",
]


@pytest.mark.parametrize("text", LIKE_ONE)
def test_what_is_like_one_passes(text):
    assert find_private_shape(text.encode(), ()) == (0, "")


def test_the_walls_words_are_the_lists_own():
    said = list_words.words_by_part()
    for key, words in read_data("list_names.yml", "private")["elsewhere"].items():
        part = "household" if key not in said["list"].values() or key == "address" else "list"
        key = "by post" if key == "delivery" else key
        known = {word for word, meant in said[part].items() if meant == key}
        assert {plain_key(word) for word in words} <= known
