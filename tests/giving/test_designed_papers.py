"""One basket, one design: what goes into it and onto it, read from the pack's PDFs."""

from __future__ import annotations

from collections import defaultdict

import pytest

from giving.lists import PRICES, TODAY, demo_book, demo_recipes, read_dict, small_list
from letters import open_letters, read_letters
from printing.pdf_ua import faults_of
from printing.test_heard import heard
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.basket_designs import basket_designs, design_problems
from stillroom.giving.checking import read_list
from stillroom.giving.pack import Effort, pack_files, work_out
from stillroom.looks.card_designs import choose_design

BASKETS = {
    "small": {"eat": 1, "drink": 1, "cost": 1.2},
    "parcel": {"eat": 1, "craft": 1, "design": "own-drawing"},
}
HOUSEHOLDS = [
    {"name": "Ysolde Fennimore", "basket": "small"},
    {"name": "The Cragbies", "basket": "small", "avoid": ["gluten"], "design": "photograph"},
    {"name": "Aunt Orla Wend", "basket": "parcel", "delivery": "by post"},
]
MESSAGE = "With love from the loft"
# whose papers have which design: the household's, the basket's, the list's
EXPECTED = {
    "Ysolde Fennimore": "plain",
    "The Cragbies": "photograph",
    "Aunt Orla Wend": "own-drawing",
}


@pytest.fixture(scope="module")
def pack():
    data = small_list(
        baskets=BASKETS, households=HOUSEHOLDS, prices=PRICES, design="plain", message=MESSAGE
    )
    return work_out(read_dict(data), demo_recipes(), demo_book().settings, TODAY, Effort(5, 0.2))


@pytest.fixture(scope="module")
def files(pack):
    return pack_files(pack, demo_book())


def words(pdf):
    """Return the words of each page of a PDF, in one line."""
    pages = read_letters(pdf).pages
    return [" ".join(page.extract_text().split()) for page in pages]


def inks(page):
    """Return the colours of a page's letters, as a design writes them."""
    found = defaultdict(list)
    for char in page.chars:
        if char["text"].strip():
            parts = [round(float(part) * 255) for part in char["non_stroking_color"]]
            parts = parts * 3 if len(parts) == 1 else parts
            found["#{:02x}{:02x}{:02x}".format(*parts)].append(char["text"])
    return found


def test_a_household_s_design_goes_before_its_basket_s_and_that_before_the_list_s(pack):
    found = basket_designs(pack, demo_book())
    assert {
        basket.household: found[basket.number].slug for basket in pack.offering.problem.baskets
    } == EXPECTED


def test_cards_and_tags_of_a_basket_lie_in_the_file_of_its_design(files):
    for household, design in EXPECTED.items():
        for what in ("cards", "tags"):
            own = " ".join(words(files[f"{what}-{design}.pdf"]))
            assert household in own, (what, household)
            others = set(EXPECTED) - {household}
            assert not [other for other in others if other in own], (what, household)
    assert "cards.pdf" not in files


def test_every_paper_of_a_pack_keeps_the_rules_of_pdf_ua(files):
    """As far as printing/pdf_ua.py looks: ISO 14289-1."""
    papers = {name: data for name, data in files.items() if name.endswith(".pdf")}
    assert {"labels.pdf", "baskets.pdf", "basket-tags.pdf"} <= set(papers)
    found = {name: faults_of(data) for name, data in papers.items()}
    assert {name: faults for name, faults in found.items() if faults} == {}


def test_every_paper_of_a_pack_is_heard_with_headings(files):
    """Each page has a heading of its own, a label and a tag whom it is for; no word is loose."""
    for name, data in files.items():
        if name.endswith(".pdf"):
            tags, loose = heard(data)
            assert loose == [], name
            assert tags["/H1"] >= len(words(data)), (name, tags)
    labels, _ = heard(files["labels.pdf"])
    assert labels["/H1"] == files["labels.pdf"].count(b"/S/H1") == 1
    tags, _ = heard(files["basket-tags.pdf"])
    assert tags["/H1"] == len(EXPECTED)
    assert tags["/P"] >= len(EXPECTED)


def test_cards_are_set_in_the_inks_of_their_design(files):
    for design in EXPECTED.values():
        chosen = choose_design(design)
        with open_letters(files[f"cards-{design}.pdf"]) as pdf:
            found = set().union(*(inks(page) for page in pdf.pages))
        assert found <= set(chosen.inks.model_dump().values()), design
        assert chosen.inks.ink in found


@pytest.mark.parametrize("file", ["baskets.pdf", "basket-tags.pdf", "labels.pdf"])
def test_sheets_tags_and_labels_of_a_basket_have_its_inks(files, file):
    own = {"#4a1a0f"}  # the caution of a sheet is always in its own
    with open_letters(files[file]) as pdf:
        found = set().union(*(inks(page) for page in pdf.pages))
    if file == "labels.pdf":
        allowed = set(choose_design("own-drawing").inks.model_dump().values())
    else:
        allowed = {
            ink
            for name in EXPECTED.values()
            for ink in choose_design(name).inks.model_dump().values()
        }
        assert {choose_design(name).inks.ink for name in EXPECTED.values()} <= found
    assert found <= allowed | own


def test_each_basket_has_one_sheet_and_its_message_stands_once_on_its_tag(files):
    sheets = words(files["baskets.pdf"])
    assert len(sheets) == len(EXPECTED)
    for household, sheet in zip(EXPECTED, sheets, strict=True):
        assert household in sheet
    tags = " ".join(words(files["basket-tags.pdf"])).replace("\u00a0", " ")
    assert tags.count(MESSAGE) == len(EXPECTED)


def test_a_tag_says_what_the_kitchen_uses_where_its_greeting_leaves_room(files):
    """Printed once a basket, and never at the cost of the greeting: it is said aloud as well."""
    said = [" ".join(words(files[name])) for name in ("basket-tags.pdf", "baskets.pdf")]
    tags, sheets = (one.replace("\u00a0", " ").count("made in a home kitchen") for one in said)
    assert sheets == len(EXPECTED)
    assert 0 < tags <= len(EXPECTED)
    for name, made in files.items():
        if name.startswith(("cards-", "tags-")):
            assert MESSAGE not in " ".join(words(made)).replace("\u00a0", " "), name


def test_the_tags_of_one_design_have_their_titles_in_one_size(pack, files):
    for design in EXPECTED.values():
        own = [one for one in pack.making.presents if EXPECTED[household(pack, one)] == design]
        firsts = {one.recipe.title.split()[0].split("-")[0] for one in own}
        with open_letters(files[f"tags-{design}.pdf"]) as pdf:
            sizes = {
                round(word["size"], 2)
                for page in pdf.pages
                for word in page.extract_words(extra_attrs=["size", "fontname"])
                if word["text"].split("-")[0] in firsts and "Garamond" in word["fontname"]
            }
        assert len(sizes) == 1, (design, sizes)


def household(pack, present):
    return pack.offering.households[present.basket].name


def test_the_pack_s_first_page_leads_to_every_file(files):
    page = files["index.html"].decode()
    for design in EXPECTED.values():
        assert f'href="cards-{design}.pdf"' in page
        assert f'href="tags-{design}.pdf"' in page


def test_one_design_is_one_file():
    data = small_list(prices=PRICES, design="leaves")
    pack = work_out(read_dict(data), demo_recipes(), demo_book().settings, TODAY, Effort(5, 0.3))
    found = pack_files(pack, demo_book())
    assert {"cards.pdf", "tags.pdf"} <= set(found)
    assert not [name for name in found if name.startswith(("cards-", "tags-"))]


def test_a_design_that_is_not_there_is_told_at_its_line(tmp_path):
    text = (
        "giving list: Winter 2027\ngiving day: 2027-12-18\ndesign: wintre\n"
        "baskets: {small: {eat: 1, design: leafs}}\nmakes: [{recipe: rosemary-salt}]\n"
        "households:\n  - name: Ysolde Fennimore\n    basket: small\n    design: zebra\n"
    )
    path = tmp_path / "list.yml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(ProblemsFound) as told:
        read_list(path, demo_book())
    found = [(one.line, one.what, one.mend) for one in told.value.problems]
    assert [(line, what) for line, what, _ in found] == [
        (3, 'There is no design "wintre".'),
        (4, 'There is no design "leafs".'),
        (9, 'There is no design "zebra".'),
    ]
    assert found[0][2].startswith('Write "winter".')
    assert found[1][2].startswith('Write "leaves".')


def test_a_design_of_the_book_s_own_is_no_problem(tmp_path):
    read = read_dict(small_list(design="winter"))
    assert list(design_problems(read, demo_book())) == []
