"""A giving list as other programs write it is refused by its shape; what is like one passes.

Nobody here is on a list of the book: the names tell nothing. Expectations by hand, fixed before.
"""

from __future__ import annotations

import base64
import csv
import gzip
import html
import io
import json
import pickle
import plistlib
import sqlite3
import zipfile
from collections.abc import Iterator
from pathlib import Path

import pytest
import yaml

from stillroom.core.private.seeking import hold
from stillroom.core.private.shapes import find_private_shape

PEOPLE = [
    {"name": "Odette Brackenridge", "basket": "small", "avoid": "nuts", "address": "4 Weir Row"},
    {"name": "Casimir Thornhollow", "basket": "large", "avoid": "alcohol", "address": "by hand"},
]
LIST = {"giving list": "Winter", "baskets": {"small": {"eat": 2}}, "households": PEOPLE}
HEAD = list(PEOPLE[0])
ROWS = [HEAD, *([str(one[key]) for key in HEAD] for one in PEOPLE)]
WRITTEN = yaml.safe_dump(LIST, sort_keys=False)


def table(rows: list[list[str]], parted: str) -> str:
    out = io.StringIO()
    csv.writer(out, delimiter=parted).writerows(rows)
    return out.getvalue()


def flat(said: object, above: str = "") -> Iterator[tuple[str, str]]:
    if isinstance(said, dict):
        for key, value in said.items():
            yield from flat(value, f"{above}.{key}".strip("."))
    elif isinstance(said, list):
        for number, value in enumerate(said):
            yield from flat(value, f"{above}.{number}".strip("."))
    else:
        yield above, str(said)


def zipped(name: str, text: str | bytes, way: int = zipfile.ZIP_DEFLATED) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", way) as archive:
        archive.writestr(name, text)
    return out.getvalue()


def cells(opened: str, shut: str, rows: list[list[str]], row: tuple[str, str]) -> str:
    return "".join(
        row[0] + "".join(f"{opened}{html.escape(cell)}{shut}" for cell in line) + row[1]
        for line in rows
    )


def database(tmp_path: Path) -> bytes:
    path = tmp_path / "list.sqlite"
    with sqlite3.connect(path) as opened:
        opened.execute("create table households (name text, basket text, avoid text, address text)")
        opened.executemany("insert into households values (?, ?, ?, ?)", ROWS[1:])
    opened.close()
    return path.read_bytes()


SHORT = [row[:3] for row in ROWS]
OTHER_HEAD = [["Household", "Basket", "Notes", "Avoid"], *([*r[:2], "-", r[2]] for r in ROWS[1:])]
HTML_ROW = ("<tr>", "</tr>\n")
ARRAY = [{"name": one["name"], "basket": one["basket"], "avoid": one["avoid"]} for one in PEOPLE]
BY_NAME = {one["name"]: {"basket": one["basket"], "avoid": one["avoid"]} for one in PEOPLE}
SHAPES: dict[str, str | bytes] = {
    "JSON, the households alone": json.dumps(PEOPLE),
    "JSON, in lines": "\n".join(map(json.dumps, ARRAY)),
    "JSON, by name": json.dumps({"households": BY_NAME}, indent=1),
    "JSON, by name alone": json.dumps(BY_NAME),
    "JSON, by column": json.dumps({key: [one[key] for one in PEOPLE] for key in HEAD}),
    "JSON, a table": json.dumps({"columns": HEAD, "data": ROWS[1:]}),
    "JSON, of a map": json.dumps({"features": [{"properties": one} for one in PEOPLE]}),
    "YAML, the households alone": yaml.safe_dump(PEOPLE),
    "YAML, by name": yaml.safe_dump(BY_NAME),
    "a script": "let a = [{name: 'Odette', basket: 'small', avoid: []}, {name: 'C', basket: 'x'}]",
    "TOML": "\n".join(
        "[[households]]\n" + "\n".join(f'{key} = "{one[key]}"' for key in HEAD) for one in PEOPLE
    ),
    "TOML, by name": "\n".join(
        f'[households."{name}"]\nbasket = "{one["basket"]}"\navoid = "{one["avoid"]}"'
        for name, one in BY_NAME.items()
    ),
    "INI": "\n".join(
        f"[{name}]\nbasket={one['basket']}\navoid={one['avoid']}" for name, one in BY_NAME.items()
    ),
    "INI, colons": "\n".join(
        f"[{name}]\nbasket: {one['basket']}\navoid: {one['avoid']}" for name, one in BY_NAME.items()
    ),
    "properties": "\n".join(f"{key}={value}" for key, value in flat(LIST)),
    "environment": "\n".join(
        f'{key.replace(".", "_").replace(" ", "_").upper()}="{value}"' for key, value in flat(LIST)
    ),
    "paths in a table": table([["key", "value"], *map(list, flat(LIST))], ","),
    "XML": "".join(
        "<household>" + "".join(f"<{key}>{one[key]}</{key}>" for key in HEAD) + "</household>"
        for one in PEOPLE
    ),
    "XML, names before": "".join(
        "<g:person>" + "".join(f"<g:{key}>{one[key]}</g:{key}>" for key in HEAD) + "</g:person>"
        for one in PEOPLE
    ),
    "a page's data": "".join(
        f"<p data-name='{one['name']}' data-basket='{one['basket']}' data-avoid='x'></p>"
        for one in PEOPLE
    ),
    "a page's form": "".join(
        f"<input name='name' value='{one['name']}'><input name='basket' value='small'>"
        "<input name='avoid' value='nuts'>" for one in PEOPLE
    ),
    "property list": plistlib.dumps(LIST),
    "property list, packed": plistlib.dumps(LIST, fmt=plistlib.FMT_BINARY),
    "what Python keeps": pickle.dumps(LIST),
    "CSV": table(ROWS, ","),
    "CSV, three columns": table(SHORT, ";"),
    "CSV, two columns": table([row[:2] for row in ROWS], ","),
    "CSV, name and avoid": table([[row[0], row[2]] for row in ROWS], ","),
    "CSV, other heads": table(OTHER_HEAD, ","),
    "CSV, recipients": table([["Recipient", "Address", "Gift", "Allergies"], ROWS[1]], ","),
    "CSV, on its side": table(list(map(list, zip(*ROWS, strict=True))), ","),
    "columns of blanks": "\n".join("   ".join(cell.ljust(20) for cell in row) for row in ROWS),
    "Markdown, bold heads": "# Baskets\n\n| **Name** | **Basket** | **Avoid** |\n|---|---|---|\n"
    "| Odette | small | nuts |\n",
    "a page's table": "<table>" + cells("<td>", "</td>", ROWS, HTML_ROW) + "</table>",
    "a page's table, in lines": cells("<td>\n", "\n</td>\n", ROWS, HTML_ROW),
    "LaTeX": "\\begin{tabular}{lll}\n" + "\\\\\n".join(" & ".join(row) for row in ROWS),
    "a wiki": "{|\n! name !! basket !! avoid\n|-\n| Odette || small || nuts\n|}",
    "a wiki, in lines": "{|\n! name\n! basket\n! avoid\n|-\n| Odette\n| small\n| nuts\n|}",
    "reStructuredText": ".. list-table::\n\n   * - name\n     - basket\n     - avoid\n"
    "   * - Odette\n",
    "rich text": "{\\rtf1 " + cells("", "\\cell ", ROWS, ("\\trowd ", "\\row\n")) + "}",
    "SQL": "INSERT INTO people (name, basket, avoid) VALUES ('Odette', 'small', 'nuts');",
    "SQL, the table": "CREATE TABLE people (name TEXT, basket TEXT, avoid TEXT);\n",
    "a spreadsheet": zipped(
        "xl/sharedStrings.xml", "".join(f"<si><t>{cell}</t></si>" for row in ROWS for cell in row)
    ),
    "a spreadsheet below a title": zipped(
        "xl/sharedStrings.xml",
        "".join(f"<si><t>{cell}</t></si>" for cell in ("Baskets", "Household", "Basket", "Avoid")),
    ),
    "an open spreadsheet": zipped(
        "content.xml", cells("<table:table-cell><text:p>", "</text:p></table:table-cell>",
                             SHORT, ("<table:table-row>", "</table:table-row>"))
    ),
    "a printed table": "\n".join(f"BT 1 0 0 1 40 80 Tm ({cell}) Tj T* ET" for cell in HEAD),
    "a letter": zipped("word/document.xml", "".join(
        f"<w:p><w:r><w:t>{line}</w:t></w:r></w:p>" for line in
        ("Giving list", "Odette: small basket, no nuts", "Casimir: large basket, no alcohol"))),
    "a page of sentences": "# Our giving list\n\nOdette Brackenridge gets a small basket without "
    "nuts. Casimir will get a large basket.\n",
    "a page of boxes": "# Giving list\n\n- [ ] Odette - small basket\n- [x] Casimir - by post\n",
    "a plain page": "Giving list Winter\n\nOdette - small basket - no nuts\nCasimir - by post\n",
    "a page's headings": "# Giving list\n\n## Odette\n\n- basket: small\n\n## Casimir\n\n"
    "- basket: large\n",
    "a page's list": "<h1>Giving list</h1><ul><li><b>Odette</b> small basket</li>"
    "<li><b>Casimir</b> by post</li></ul>",
    "a log's table": "day,given,things\n2027-12-18,Odette Brackenridge,jam\n",
    "a log in XML": "<log><day>2027-12-18</day><given>Odette</given></log>",
    "a log in TOML": '[["giving log"]]\nday = 2027-12-18\ngiven = "Odette"\n',
}  # fmt: skip
# each of these wrapped up in each of those ways
WRAPPED: dict[str, str | bytes] = {
    "YAML": WRITTEN, "CSV": SHAPES["CSV"], "TOML": SHAPES["TOML"], "INI": SHAPES["INI"],
    "JSON": SHAPES["JSON, the households alone"], "a spreadsheet": SHAPES["a spreadsheet"],
}  # fmt: skip
WAYS = {
    "zip": lambda data: zipped("a", data),
    "zip, not packed": lambda data: zipped("a.csv", data, zipfile.ZIP_STORED),
    "gzip": gzip.compress,
    "base64": base64.b64encode,
    "base64 in lines": base64.encodebytes,
    "base32": base64.b32encode,
    "hexadecimal": lambda data: data.hex().encode(),
    "packed, in base64": lambda data: base64.b64encode(gzip.compress(data)),
    "an archive in an archive": lambda data: zipped("b.zip", zipped("a", data)),
}
HARMLESS = {
    "shops": "name,address,town,postcode\nMill Farm,Mill Lane,Ferryton,FT2 1AA\n",
    "shops that deliver": "| Name | Address | Delivery |\n|---|---|---|\n| Mill Farm | 1 | van |\n",
    "shops, TOML": '[[giving_shops]]\nname = "Mill Farm"\naddress = "Mill Lane"\ntown = "Ferry"\n',
    "sizes of baskets": "| Name | Basket | Holds |\n|---|---|---|\n| small | willow | 3 jars |\n",
    "prices of baskets": "name,basket,price\nsmall hamper,willow,12.00\n",
    "a shop's basket": json.dumps({"basket": {"items": [{"name": "jar"}], "delivery": "post"}}),
    "weaving": "- basket: a willow base\n- avoid: split rods\n- name: a tag to write it on\n",
    "allergens of recipes": "| Name | Gift for | Allergens |\n|---|---|---|\n| Mead | all | no |\n",
    "diets": "| Diet | Avoids | Gift |\n|---|---|---|\n| Vegan | honey, milk | rosemary salt |\n",
    "presents by diet": "# Gifts\n\n- **For the coeliac**: chutney, no gluten\n"
    "- **For children**: cocoa, no alcohol\n",
    "how a list is written": "# Giving list\n\n- name: what they are called\n"
    "- basket: which basket they get\n- avoid: what they must not have\n",
    "tips": "# Giving lists\n\n- Start early: no regrets\n- Post in time: by post takes a week\n",
    "a tale": "# The giving list\n\nA miller kept a list. Each year he gave bread.\n",
    "who is it for": "Person: somebody you like. Basket: any. Avoid: glass by post.\n",
    "style": ".card .name{page-break-inside:avoid}.basket{break-inside:avoid}.basket b{color:red}",
    "likes of pages": "name,likes,message\nquince,42,nice\n",
    "a rota": "name,day,bring\nAlto,2027-12-01,mince pies\n",
    "a log of work": "day,made,things\n2027-12-18,ratafia,6 bottles\n",
    "heat and light": "Keep it dark, avoid heat,\nand name, basket and day on the tag.\n",
}


def shape_of(data: str | bytes) -> str:
    data = data.encode() if isinstance(data, str) else data
    return find_private_shape(data, hold(data).texts)[1]


@pytest.mark.parametrize("shape", SHAPES)
def test_a_list_of_another_program_is_known(shape: str) -> None:
    assert shape_of(SHAPES[shape]) == ("giving log" if "a log" in shape else "giving list")


def test_a_list_in_a_database_is_known(tmp_path: Path) -> None:
    assert shape_of(database(tmp_path)) == "giving list"


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("shape", WRAPPED)
def test_a_wrapped_list_is_known(shape: str, way: str) -> None:
    data = WRAPPED[shape]
    assert shape_of(WAYS[way](data.encode() if isinstance(data, str) else data)) == "giving list"


@pytest.mark.parametrize("words", HARMLESS.values(), ids=HARMLESS)
def test_what_is_like_a_list_passes(words: str) -> None:
    assert shape_of(words) == ""
    assert shape_of(words.encode("utf-16")) == ""
    assert shape_of(zipped("a.txt", words)) == ""
