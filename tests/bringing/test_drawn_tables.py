"""Tables that pages and word processors draw: an amount stays with the food in its own row.

The lists are shortened from savvyhousekeeping.com (2010, sage and lemon mix), greenhornedgardener
(2017, green tomato chutney), jardinsdepapounet.fr (quince jelly) and gastronomia de Lugo (liqueur);
how their pages and files are laid out is theirs.
"""

from __future__ import annotations

import io
import zipfile
from collections.abc import Sequence
from html import escape

import pytest

from bringing.drafts import asked, brought, fact, listed, steps
from stillroom.bringing import BroughtRecipe, bring
from stillroom.bringing.tables import rows_of_cells
from stillroom.core.larder.shelves import Larder
from stillroom.core.recipe.settings import BookSettings

_W = 'xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"'
_O = " ".join(
    f'xmlns:{one}="urn:oasis:names:tc:opendocument:xmlns:{one}:1.0"'
    for one in ("office", "text", "table")
)
MIX = [("1 tsp", "crumbled sage"), ("1 tsp", "garlic powder"), ("3/4 tsp", "salt")]
CHUTNEY = [("2.5kg (5lb)", "sliced green tomatoes"), ("25g (1oz)", "salt")]
STEP = "Mix everything in a bowl and put it into an air-tight jar."


def from_word(body: str) -> bytes:
    """Return the bytes of a Word file with that body."""
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w") as file:
        file.writestr("word/document.xml", f"<w:document {_W}><w:body>{body}</w:body></w:document>")
    return packed.getvalue()


def from_open_document(body: str) -> bytes:
    """Return the bytes of an OpenDocument file with that body."""
    packed = io.BytesIO()
    inner = f"<office:body><office:text>{body}</office:text></office:body>"
    with zipfile.ZipFile(packed, "w") as file:
        file.writestr(
            "content.xml", f"<office:document-content {_O}>{inner}</office:document-content>"
        )
    return packed.getvalue()


def line(text: str, form: str) -> str:
    """Return a paragraph of one of the three forms."""
    said = escape(text)
    return {
        "html": f"<p>{said}</p>",
        "docx": f"<w:p><w:r><w:t>{said}</w:t></w:r></w:p>",
        "odt": f"<text:p>{said}</text:p>",
    }[form]


def drawn(rows: Sequence[Sequence[str]], form: str) -> str:
    """Return a table of one of the three forms."""
    cell, row, table = {
        "html": ("td", "tr", "table"),
        "docx": ("w:tc", "w:tr", "w:tbl"),
        "odt": ("table:table-cell", "table:table-row", "table:table"),
    }[form]
    put = "".join(
        f"<{row}>{''.join(f'<{cell}>{line(one, form)}</{cell}>' for one in said)}</{row}>"
        for said in rows
    )
    return f"<{table}>{put}</{table}>"


def from_paper(parts: Sequence[str], form: str) -> BroughtRecipe:
    """Return the draft of a paper of one of the three forms."""
    body = "".join(parts)
    data = {
        "html": f"<html><body>{body}</body></html>".encode(),
        "docx": from_word(body),
        "odt": from_open_document(body),
    }[form]
    (one,) = bring(f"a.{form}", data, BookSettings(), Larder()).recipes
    return one


@pytest.mark.parametrize("form", ["html", "docx", "odt"])
@pytest.mark.parametrize("headed", ["", "Ingredients"])
@pytest.mark.parametrize(
    "heads", [(), ("Amount", "What"), ("Quantity", "Ingredient"), ("Menge", "Zutat")]
)
@pytest.mark.parametrize("things", [MIX, CHUTNEY])
def test_amounts_stay_with_the_food_in_their_row(
    form: str, headed: str, heads: tuple[str, ...], things: list[tuple[str, str]]
) -> None:
    table = drawn([*([heads] if heads else []), *things], form)
    above = [line("Green mix", form), *([line(headed, form)] if headed else [])]
    one = from_paper([*above, table, line("Method", form), line(STEP, form)], form)
    assert listed(one) == [" ".join(thing) for thing in things]
    assert (fact(one, "title"), steps(one)) == ("Green mix", [STEP])
    assert "## " not in one.text.split("## Method")[0]


@pytest.mark.parametrize("form", ["html", "docx", "odt"])
@pytest.mark.parametrize(
    ("rows", "expected"),
    [
        ([("plums", "1 kg"), ("sugar", "800 g")], ["1 kg plums", "800 g sugar"]),
        ([("1", "kg", "plums"), ("800", "g", "sugar")], ["1 kg plums", "800 g sugar"]),
        (
            [("2 cups sugar", "1 cup cream"), ("1 tsp vanilla", "2 eggs")],
            ["2 cups sugar", "1 cup cream", "1 tsp vanilla", "2 eggs"],
        ),
    ],
)
def test_columns_are_read_whichever_way_they_stand(
    form: str, rows: list[tuple[str, ...]], expected: list[str]
) -> None:
    parts = [line("Plum jam", form), drawn(rows, form), line("Method", form), line(STEP, form)]
    assert listed(from_paper(parts, form)) == expected


@pytest.mark.parametrize("form", ["html", "docx", "odt"])
def test_what_a_portion_holds_is_no_list(form: str) -> None:
    food = drawn([("Energy", "62 kcal"), ("Fat", "3 g"), ("Protein", "2 g")], form)
    things = drawn(MIX, form)
    one = from_paper(
        [line("Green mix", form), things, line("Method", form), line(STEP, form), food], form
    )
    assert listed(one) == [" ".join(thing) for thing in MIX]


PORTION = [("Energy", "250 kcal"), ("Sugar", "12 g"), ("Fat", "1 g"), ("Salt", "0.1 g")]
CARD = [("Prep time", "20 min"), ("Calories", "120 kcal"), ("Servings", "4"), ("Author", "Silas")]
PRICES = [("Plums", "£2.40"), ("Sugar", "£1.10")]


@pytest.mark.parametrize("form", ["html", "docx", "odt"])
@pytest.mark.parametrize("beside", [PORTION, CARD, PRICES])
@pytest.mark.parametrize("at", [1, 2, 4])
def test_what_a_page_tells_beside_its_list_in_a_table_is_no_part_of_it(
    form: str, beside: list[tuple[str, str]], at: int
) -> None:
    parts = [line("Green mix", form), drawn(MIX, form), line("Method", form), line(STEP, form)]
    parts.insert(at, drawn(beside, form))
    one = from_paper(parts, form)
    assert (listed(one), steps(one)) == ([" ".join(thing) for thing in MIX], [STEP])


@pytest.mark.parametrize(
    "head", ["Nährwerte pro Glas", "Næringsindhold", "Wartości odżywcze", "Informação nutricional"]
)
def test_heads_of_what_a_portion_holds(head: str) -> None:
    things = "".join(f"<li>{' '.join(thing)}</li>" for thing in MIX)
    fed = "".join(f"<li>{name} {much}</li>" for name, much in PORTION)
    page = (
        f"<html><body><h1>Green mix</h1><h2>Ingredients</h2><ul>{things}</ul><h2>Method</h2>"
        f"<ol><li>{STEP}</li></ol><h3>{head}</h3><ul>{fed}</ul></body>"
    )
    (one,) = brought(page, name="a.html")
    assert (listed(one), steps(one)) == ([" ".join(thing) for thing in MIX], [STEP])


LIQUEUR = ["1 litro aguardiente", "500 gramos de azúcar", "60 gramos de café en grano"]
TOLD = "Añadimos el almíbar al aguardiente y lo dejamos 10 días a reposar."


def test_a_page_that_a_table_lays_out_is_read_by_its_paragraphs() -> None:
    page = (
        "<html><head><title>Page gelée de coings</title></head><body><table><tr>"
        '<td><a href="t.html">Page TABLE</a><br><a href="m.html">Page MENU GENERAL</a></td><td>'
        "<p><b>Gelée de coings</b></p><p><u>INGRÉDIENTS</u></p>"
        "<p>2 kg de coings<br>1 kg de sucre<br>1 jus de citron</p><p><u>PRÉPARATION</u></p>"
        "<p>Mettez les coings dans une grande casserole puis couvrez d'eau.</p>"
        "<p>Versez le jus et le sucre dans une bassine et portez-les à ébullition.</p>"
        "</td></tr></table>"
    )
    (one,) = brought(page, "fr_FR", "a.html")
    assert fact(one, "title") == "Gelée de coings"
    assert listed(one) == ["2 kg de coings", "1 kg de sucre", "1 jus de citron"]
    assert [step.split()[0] for step in steps(one)] == ["Mettez", "Versez"]
    assert [word for word in ("MENU", "TABLE") if word in one.text] == []


@pytest.mark.parametrize("box", ["div", "ul"])
def test_a_pages_own_contents_are_no_recipe(box: str) -> None:
    named = ("1 Algo de historia de Licor de Café", "2 Ingredientes", "3 Preparación")
    links = "".join(f'<li><a href="#{at}">{one}</a></li>' for at, one in enumerate(named))
    contents = (
        f"<div><p>Contenidos</p><ul>{links}</ul></div>" if box == "div" else f"<ul>{links}</ul>"
    )
    things = "".join(f"<li>{one}</li>" for one in LIQUEUR)
    others = "".join(
        f"<li><a href='/{at}'>{one}</a></li>"
        for at, one in enumerate(("Queimada", "Orujo de hierbas"))
    )
    page = (
        f"<html><body><h1>Licor de Café de Lugo</h1>{contents}<h2>Algo de historia</h2>"
        f"<p>Cada casa tenía su propia receta.</p><h2>Ingredientes</h2><ul>{things}</ul>"
        f"<h2>Preparación</h2><p>{TOLD}</p><h3>Otras bebidas de Lugo</h3><ul>{others}</ul></body>"
    )
    (one,) = brought(page, "es_ES", "a.html")
    assert (fact(one, "title"), listed(one), steps(one)) == (
        "Licor de Café de Lugo",
        LIQUEUR,
        [TOLD],
    )
    left = ("Contenidos", "Otras bebidas", "Queimada", "Orujo")
    assert [word for word in left if word in one.text + asked(one)] == []


@pytest.mark.parametrize(
    "numbered",
    [
        "<li><div>{0}</div><div>{1}</div></li>",
        "<div><span>{0}</span><p>{1}</p></div>",
        "<p>{0}.</p><p>{1}</p>",
    ],
)
def test_a_number_in_a_block_of_its_own_is_its_steps(numbered: str) -> None:
    told = ["Pour the cream and the sugar into a pan.", "Boil it until it thickens.", "Fill it."]
    told[2] = "Fill the forms."
    rows = "".join(numbered.format(at, one) for at, one in enumerate(told, 1))
    page = (
        "<html><body><h1>Toffee</h1><h2>Ingredients</h2><ul><li>1 dl cream</li><li>100 g sugar"
        f"</li></ul><h2>Method</h2><div>{rows}</div></body>"
    )
    assert steps(brought(page, name="a.html")[0]) == told


def test_an_entrys_own_heading_comes_before_the_sites() -> None:
    things = "".join(f"<li>{one}</li>" for one in LIQUEUR)
    page = (
        '<html><body><div class="navbar">More Next Blog</div><div id="header"><h1>makagigi</h1>'
        '<p>kuchnia</p></div><h2 class="date-header">Monday, July 24, 2006</h2>'
        f'<h3 class="post-title">Licor de Café</h3><ul>{things}</ul>'
        f"<h4>Preparación</h4><p>{TOLD}</p>"
    )
    (one,) = brought(page, "es_ES", "a.html")
    assert (fact(one, "title"), listed(one), steps(one)) == ("Licor de Café", LIQUEUR, [TOLD])
    assert [
        word for word in ("makagigi", "kuchnia", "Monday", "Next Blog") if word in one.text
    ] == []


@pytest.mark.parametrize("end", ["\\\n", "<br>\n", "<br/>", "  \n"])
def test_a_markdown_break_is_no_part_of_a_line(end: str) -> None:
    things = ["450 ml malt vinegar", "675 g green tomatoes", "100 g sultanas"]
    (one,) = brought(f"# Chutney\n\n{end.join(things)}\n\n## Method\n\n{STEP}\n", name="a.md")
    assert (listed(one), steps(one)) == (things, [STEP])


PARTED = [["For the jam", ""], ["1 kg", "plums"], ["800 g", "sugar"], ["For the lid", ""]]
PARTED += [["2", "labels"]]


@pytest.mark.parametrize(
    ("cells", "rows"),
    [
        # two lists side by side are not put together row by row
        ([["Ingredients"] * 2, ["1 kg plums", "800 g sugar"], ["2 lemons", "1 l water"]], None),
        ([["1 kg", "plums"], ["800 g", "sugar (£2)"]], ["1 kg plums", "800 g sugar (£2)"]),
        ([["1 kg", "£2"], ["800 g", "£3"]], []),
        (PARTED, ["# For the jam", "1 kg plums", "800 g sugar", "# For the lid", "2 labels"]),
    ],
)
def test_a_drawn_table_is_a_list_with_its_heads_or_none(
    cells: list[list[str]], rows: list[str] | None
) -> None:
    found = rows_of_cells(cells)
    signs = {"heading": "# ", "item": ""}
    told = None if found is None else [f"{signs[row.shape]}{row.text}" for row in found]
    assert told == rows
