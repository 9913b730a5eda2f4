"""What is done at the desk, by its own door: begin, keep, go back, print, publish."""

from __future__ import annotations

import difflib
import io
import json
import os
import re
import subprocess
import time
import zipfile
from collections.abc import Iterator
from functools import partial
from pathlib import Path

import pytest
import yaml
from bs4 import BeautifulSoup
from PIL import Image

from desk.conftest import OpenDesk, open_on, published, small_book
from markup_payloads import PAYLOADS
from stillroom.core.recipe.model import Recipe
from stillroom.desk import rooms
from stillroom.desk.desk import Desk
from stillroom.desk.place import Place
from stillroom.desk.shelf import list_spines

JAM = {
    "title": "Plum jam",
    "kind": "jam",
    "makes": "4 jars of 200 ml",
    "ingredients": "1 kg plums, stoned\n1 kg granulated sugar\n2 tbsp lemon juice",
    "method": "Simmer ‹plums› with ‹lemon juice›.\nStir in ‹granulated sugar› and boil to 104 C.\n"
    "Fill the hot jars and close them.",
    "keeps_unopened": "1 year",
    "keeps_opened": "1 month",
    "keeps_source": "maker's own practice",
}


@pytest.fixture
def own(tmp_path: Path) -> Iterator[OpenDesk]:
    opened, thread = open_on(small_book(tmp_path / "book"))
    yield opened
    opened.ask("/stop", "POST")
    thread.join(20)


def boxes(desk: OpenDesk, ident: str) -> dict[str, str]:
    """Return what stands in the boxes of a recipe, as a browser would send it."""
    return boxes_of(desk, f"/write/{ident}")


def boxes_of(desk: OpenDesk, way: str) -> dict[str, str]:
    page = BeautifulSoup(desk.ask(way).text, "html.parser")
    found = {}
    for one in page.select("main form :is(input, textarea, select)[name]"):
        if one.name == "select":
            chosen = one.select_one("option[selected]") or one.select_one("option")
            found[str(one["name"])] = str(chosen.get("value", chosen.text)) if chosen else ""
        elif one.get("type") not in ("checkbox", "radio") or one.has_attr("checked"):
            words = one.text.removeprefix("\n") if one.name == "textarea" else one.get("value", "")
            found[str(one["name"])] = str(words)
    return found


def keep(desk: OpenDesk, ident: str, **changed: str) -> int:
    return desk.ask(f"/write/{ident}/keep", "POST", boxes(desk, ident) | changed).status


def test_four_answers_make_a_book_that_builds(tmp_path: Path) -> None:
    opened, thread = open_on(tmp_path / "new")
    assert opened.ask("/").headers["location"] == "/begin"
    assert opened.ask("/begin", "POST", {"title": "", "country": "GB"}).status == 422
    said = {"title": "Ann: our book", "country": "NO", "keeper": "Ann", "day": "24 December"}
    assert opened.ask("/begin", "POST", said).status == 303
    before = opened.ask("/publish").text
    assert "Words of an example still stand" in before
    assert "the first page" in before
    assert "no pictures yet" in before
    assert '<a href="/book#text_index">the first page</a>: ' in before
    assert published(opened, "folder").text.count("lies in the folder") == 1
    page = (tmp_path / "new" / "site" / "index.html").read_text(encoding="utf-8")
    assert "Ann: our book" in page
    assert "Thistledown" not in page
    opened.ask("/stop", "POST")
    thread.join(20)


def test_a_recipe_is_kept_in_the_book_and_its_draft_is_not(own: OpenDesk) -> None:
    assert keep(own, "new-recipe", **JAM) == 303
    written = (own.folder / "recipes" / "plum-jam.md").read_text(encoding="utf-8")
    assert "{plums}" in written
    # a mistake is kept beside it: what is published stays
    assert keep(own, "plum-jam", ingredients="1,5 kg plums") == 303
    assert (own.folder / "recipes" / "plum-jam.md").read_text(encoding="utf-8") == written
    assert "1,5 kg plums" in (own.folder / "drafts" / "plum-jam.md").read_text(encoding="utf-8")
    assert "a draft of something newer" in own.ask("/").text
    [draft] = (own.folder / "drafts").glob("*.md")
    os.utime(draft, (1, 1))
    assert "a draft that is older than it" in own.ask("/").text
    # once it is right it takes its place
    assert keep(own, "plum-jam", ingredients=JAM["ingredients"] + "\n1 tsp cinnamon") == 303
    assert not (own.folder / "drafts" / "plum-jam.md").exists()
    assert "1 tsp cinnamon" in (own.folder / "recipes" / "plum-jam.md").read_text("utf-8")


def test_the_books_boxes_speak_of_no_file_and_say_what_signs_are(own: OpenDesk) -> None:
    read = BeautifulSoup(own.ask("/book").text, "html.parser")
    earlier = [link.get_text() for link in read.select('a[href^="/book/earlier"]')]
    assert {"the first page", "“About this book”"} <= set(earlier)
    assert not [words for words in earlier if words.endswith((".md", ".yml"))]
    for box in read.select("textarea[name^=text_]"):
        hint = read.find(id=str(box["aria-describedby"]))
        assert hint
        assert "“## ” begins a heading" in hint.get_text()


def test_a_doubt_is_told_and_stops_no_publishing(own: OpenDesk) -> None:
    method = JAM["method"] + "\nPut the jars away to mature for 1 month."
    assert keep(own, "new-recipe", **JAM | {"method": method}) == 303
    text = own.ask("/write/plum-jam").text
    assert "It reads well, and can be published." in text
    beside = BeautifulSoup(text, "html.parser").select_one("#wrong-timeline")
    assert beside
    assert "under “When”" in beside.get_text(), "it stands at the box that it names"
    told = BeautifulSoup(published(own, "folder").text, "html.parser")
    words = told.main.get_text(" ") if told.main else ""
    assert "lies in the folder" in words
    assert "To look at once more" in words
    assert "under “When”" in words
    assert "Plum jam: The dates" in words
    for notion in ("strict", "Aborted", "timeline:", ".md:"):
        assert notion not in words
    assert (own.folder / "site" / "r" / "plum-jam" / "index.html").is_file()


def test_what_was_is_kept_and_comes_back(own: OpenDesk) -> None:
    path = own.folder / "recipes" / "lavender-sugar.md"
    before = path.read_bytes()
    assert keep(own, "lavender-sugar", makes="600 g") == 303
    assert path.read_bytes() != before
    listed = own.ask("/write/lavender-sugar/earlier").text
    (name,) = re.findall(r"/write/lavender-sugar/earlier/([\w.-]+)", listed)
    assert "How much does it make? 500 g" in own.ask(f"/write/lavender-sugar/earlier/{name}").text
    assert own.ask(f"/write/lavender-sugar/earlier/{name}", "POST").status == 303
    assert path.read_bytes() != before, "it comes into the boxes first"
    assert keep(own, "lavender-sugar") == 303
    assert path.read_bytes() == before


def test_a_file_changed_elsewhere_is_never_written_over(own: OpenDesk) -> None:
    path = own.folder / "recipes" / "lavender-sugar.md"
    mine = boxes(own, "lavender-sugar") | {"makes": "600 g"}
    theirs = path.read_text(encoding="utf-8").replace("1 year", "2 years")
    path.write_text(theirs, encoding="utf-8")
    answer = own.ask("/write/lavender-sugar/keep", "POST", mine)
    assert answer.status == 409
    assert "600 g" in answer.text
    assert "2 years" in answer.text
    assert path.read_text(encoding="utf-8") == theirs
    opened = re.search(r'name="opened" value="([^"]+)"', answer.text)
    assert opened
    assert own.ask("/write/lavender-sugar/keep", "POST", mine | {"opened": opened[1]}).status == 303
    assert "makes: 600 g" in path.read_text(encoding="utf-8")
    assert own.ask("/write/lavender-sugar/earlier").text.count("/earlier/") == 1


@pytest.mark.parametrize("pauses", [True, False], ids=["with a pause", "without"])
def test_who_leaves_both_versions_and_comes_back_is_asked_again(
    own: OpenDesk, pauses: bool
) -> None:
    # two tabs: one keeps, the other is shown both, goes elsewhere, and opens the recipe again
    path = own.folder / "recipes" / "lavender-sugar.md"
    mine = boxes(own, "lavender-sugar") | {"summary": "Mine."}
    if pauses:
        assert own.ask("/write/lavender-sugar/look", "POST", mine).status == 200
    assert keep(own, "lavender-sugar", summary="", card_use="Theirs.") == 303
    theirs = path.read_text(encoding="utf-8")
    assert own.ask("/write/lavender-sugar/keep", "POST", mine).status == 409
    again = boxes(own, "lavender-sugar")
    assert again["summary"] == "Mine."
    assert own.ask("/write/lavender-sugar/keep", "POST", again).status == 409
    assert path.read_text(encoding="utf-8") == theirs
    # what is let go holds nobody up
    assert own.ask("/write/lavender-sugar/let-go", "POST").status == 303
    assert keep(own, "lavender-sugar", makes="600 g") == 303
    assert "Theirs." in path.read_text(encoding="utf-8")


def test_a_closed_browser_loses_nothing(own: OpenDesk) -> None:
    typed = boxes(own, "lavender-sugar") | {"summary": "Typed and never kept."}
    assert own.ask("/write/lavender-sugar/look", "POST", typed).status == 200
    text = own.ask("/write/lavender-sugar").text
    assert "Typed and never kept." in text
    assert "typed before and not kept" in text
    assert "never kept" not in (own.folder / "recipes/lavender-sugar.md").read_text("utf-8")
    assert own.ask("/write/lavender-sugar/let-go", "POST").status == 303
    assert "Typed and never kept." not in own.ask("/write/lavender-sugar").text


def test_a_pdf_opens(own: OpenDesk) -> None:
    answer = own.ask("/paper", "POST", {"what": "cards", "recipe": "lavender-sugar", "to": "--out"})
    assert answer.text.startswith("%PDF")
    assert answer.headers["content-type"] == "application/pdf"
    assert own.ask("/paper", "POST", {"what": "--help"}).status == 404


def test_what_is_public_is_said_and_a_stick_is_made(own: OpenDesk) -> None:
    (own.folder / "winter.yml").write_text("giving list: Winter\n", encoding="utf-8")
    keep(own, "new-recipe", title="Half a thought")
    nameless = own.folder / "drafts" / "recipe.md"
    nameless.write_text("---\nmakes: 1 l\n---\n\n## Method\n\n1. Stir.\n", encoding="utf-8")
    text = own.ask("/publish").text
    never = text[text.index("never leaves") :]
    assert "the giving list “Winter”" in never
    assert "the draft “Half a thought”" in never
    assert "a draft that has no name yet" in never
    nameless.unlink()
    made = BeautifulSoup(published(own, "stick").text, "html.parser")
    link = made.select_one(".said a[download]")
    assert link is not None
    assert link["href"] == "/publish/book-on-a-stick.zip"
    chosen = [one["value"] for one in made.select('input[name="way"][checked]')]
    assert chosen == ["stick"], "pressed once more it goes out the same way"
    assert "open index.html in it by a double click" in made.select(".said")[0].get_text()
    again = made.select_one("meta[http-equiv=refresh]")
    assert again is not None, "it comes by itself"
    assert again["content"] == f"1;url={link['href']}"
    packed = own.ask(str(link["href"]))
    assert packed.headers["content-type"] == "application/zip"
    assert 'filename="book-on-a-stick.zip"' in packed.headers["content-disposition"]
    names = zipfile.ZipFile(io.BytesIO(packed.body)).namelist()
    assert "book-on-a-stick/index.html" in names
    assert not [name for name in names if "winter.yml" in name]
    for name in ("book.zip", "cards.pdf", "..", "frame-0"):
        assert own.ask(f"/publish/{name}").status == 404


def test_a_branch_holds_the_site_and_nothing_else(own: OpenDesk) -> None:
    git = ["git", "-c", "user.name=A", "-c", "user.email=a@book.example"]
    for words in (
        ["init", "-q"],
        ["config", "user.name", "A"],
        ["config", "user.email", "a@b.example"],
    ):
        subprocess.run([*git, *words], cwd=own.folder, check=True)
    text = published(own, "branch").text
    assert "was sent nowhere" in text
    listed = subprocess.run(
        [*git, "ls-tree", "-r", "--name-only", "gh-pages"],
        cwd=own.folder,
        check=True,
        capture_output=True,
        text=True,
        encoding="utf-8",
    ).stdout.split()
    assert "r/lavender-sugar/index.html" in listed
    assert not [name for name in listed if name.endswith(".md") or "drafts" in name]
    # whoever has the branch has not the name and the address of who made it
    kept = subprocess.run(
        [*git, "log", "gh-pages", "--format=%an %ae %cn %ce %B"],
        cwd=own.folder,
        check=True,
        capture_output=True,
        text=True,
        encoding="utf-8",
    ).stdout
    assert "a@b" not in kept
    assert kept.count("book@example.invalid") == 2
    title = yaml.safe_load((own.folder / "mkdocs.yml").read_text(encoding="utf-8"))["site_name"]
    assert kept.startswith(f"{title} book@")


def test_the_book_is_changed_with_the_smallest_change(own: OpenDesk) -> None:
    config = own.folder / "mkdocs.yml"
    before = config.read_text(encoding="utf-8")
    sent = boxes_of(own, "/book")
    assert own.ask("/book", "POST", sent).status == 303
    assert config.read_text(encoding="utf-8") == before, "nothing was changed"
    changed = sent | {"site_name": 'The "new": one', "country": "NO", "colours": "woad"}
    changed["send_us"] = "no"
    assert own.ask("/book", "POST", changed | {"drawing": "sprig"}).status == 303
    rows = [
        row for row in difflib.ndiff(before.splitlines(), config.read_text("utf-8").splitlines())
    ]
    assert len([row for row in rows if row[0] in "+-"]) == 7
    assert 'country: "NO"' in config.read_text(encoding="utf-8")
    assert own.ask("/book", "POST", boxes_of(own, "/book") | {"site_url": "ours.example"})
    assert 'site_url: "https://ours.example"' in config.read_text("utf-8").replace("'", '"')
    assert "#1f4a73" in (own.folder / "pages/stylesheets/colours.css").read_text("utf-8")
    assert (own.folder / "pages/pictures/frontispiece.svg").is_file()
    assert "Another" not in own.ask("/publish").text


def test_a_wrong_setting_or_food_is_told_and_nothing_is_written(own: OpenDesk) -> None:
    config = own.folder / "mkdocs.yml"
    before = config.read_bytes()
    sent = boxes_of(own, "/book")
    answer = own.ask("/book", "POST", sent | {"site_url": "our book"})
    assert answer.status == 422
    assert "“Its address, once it is published”: " in answer.text
    assert "site_url" not in BeautifulSoup(answer.text, "html.parser").get_text()
    wrong = {"giving_days": "Winter: the 40th of May", "drawing": "sprig", "colours": "woad"}
    answer = own.ask("/book", "POST", sent | wrong)
    assert answer.status == 422
    assert "the 40th of May" in answer.text
    chosen = BeautifulSoup(answer.text, "html.parser").select("input[checked]")
    assert {(one["name"], one["value"]) for one in chosen} >= {
        ("drawing", "sprig"),
        ("colours", "woad"),
    }, "what was chosen is not lost"
    answer = own.ask("/book", "POST", sent | {"larder": "my mix:\n  contains: gravel\n"})
    assert answer.status == 422
    assert "gravel" in answer.text
    assert config.read_bytes() == before
    assert not (own.folder / "larder.yml").exists()


def test_a_pasted_recipe_becomes_a_draft_with_its_questions(own: OpenDesk) -> None:
    pasted = (
        "Pear butter\n\nMakes 4 jars\n\nIngredients\n2 kg pears; 1 lemon\n1,5 kg sugar\n\n"
        "Method\n1. Boil the pears.\n2. Stir in the sugar. It keeps for ages.\n"
    )
    line = "----b"
    body = (
        f'--{line}\r\nContent-Disposition: form-data; name="pasted"\r\n\r\n{pasted}\r\n'
        f'--{line}\r\nContent-Disposition: form-data; name="file"; filename="../../mkdocs.yml"\r\n'
        f"Content-Type: text/plain\r\n\r\nsite_name: taken over\r\n--{line}--\r\n"
    )
    kind = f"multipart/form-data; boundary={line}"
    before = (own.folder / "mkdocs.yml").read_bytes()
    answer = own.ask("/bring", "POST", body=body.encode(), Content_Type=kind)
    assert answer.status == 200, answer.text
    assert (own.folder / "mkdocs.yml").read_bytes() == before
    assert (own.folder / "drafts" / "pear-butter.md").is_file()
    assert "/write/pear-butter" in answer.text
    assert "1.5 kg sugar" in own.ask("/write/pear-butter").text
    draft = own.folder / "drafts" / "pear-butter.md"
    sent = boxes(own, "pear-butter")
    page = BeautifulSoup(own.ask("/write/pear-butter").text, "html.parser")
    asked = [str(one["value"]) for one in page.select("input[name^='answered-']")]
    assert asked
    assert not [words for words in asked if "could be read in two ways" in words], "its box asks it"
    assert own.ask("/write/pear-butter/keep", "POST", sent | {"answered-1": asked[0]})
    assert draft.read_text(encoding="utf-8").count("# ?") == len(asked) - 1
    assert not (own.folder / "recipes" / "pear-butter.md").exists()


@pytest.mark.parametrize("box", ["title", "makes", "ingredients", "method", "card_use", "after"])
def test_what_is_typed_runs_nothing(own: OpenDesk, box: str) -> None:
    """Of every payload: nothing that it brings becomes an element or an attribute of a page."""
    for payload in PAYLOADS[::4]:
        typed = boxes(own, "lavender-sugar") | {box: payload.replace("\n", " ")}
        answer = own.ask("/write/lavender-sugar/look", "POST", typed)
        assert answer.status == 200, payload
        said = json.loads(answer.text)
        pieces = [
            *said["parts"].values(),
            said["page"] or "",
            own.ask("/write/lavender-sugar").text,
        ]
        for piece in pieces:
            soup = BeautifulSoup(piece, "html.parser")
            scripts = soup.select("script:not([src^='/desk/own/'], [type='application/json'])")
            assert scripts == [], payload
            assert soup.select("iframe:not(#page), object, embed, [srcdoc]") == [], payload
            handlers = [
                name for one in soup.find_all(True) for name in one.attrs if name.startswith("on")
            ]
            assert handlers == [], payload
            links = [str(one["href"]) for one in soup.select("[href]")]
            assert [link for link in links if "script:" in link.lower()] == [], payload
        own.ask("/write/lavender-sugar/let-go", "POST")


def test_a_photograph_is_taken_in_without_its_place(own: OpenDesk) -> None:
    held = io.BytesIO()
    exif = Image.Exif()
    exif[0x010E] = "taken at home"
    Image.new("RGB", (3000, 2000), "olive").save(held, "JPEG", exif=exif)
    line = "----b"
    sent = boxes(own, "lavender-sugar")
    parts = [
        f'--{line}\r\nContent-Disposition: form-data; name="{name}"\r\n\r\n{value}\r\n'
        for name, value in sent.items()
        if name != "picture_file"
    ]
    head = (
        f'--{line}\r\nContent-Disposition: form-data; name="picture_file"; filename="../a.jpg"\r\n'
        "Content-Type: image/jpeg\r\n\r\n"
    )
    body = (
        "".join(parts).encode() + head.encode() + held.getvalue() + f"\r\n--{line}--\r\n".encode()
    )
    kind = f"multipart/form-data; boundary={line}"
    answer = own.ask("/picture/lavender-sugar", "POST", body=body, Content_Type=kind)
    assert answer.status == 200, answer.text
    name = BeautifulSoup(answer.text, "html.parser").select_one("#picture")
    assert name
    taken = own.folder / "pages" / "pictures" / str(name["value"])
    assert b"taken at home" not in taken.read_bytes()
    with Image.open(taken) as shown:
        assert shown.width < 3000
    assert b"taken at home" in next((own.folder / "originals").iterdir()).read_bytes()
    broken = body.replace(b"\xff\xd8", b"\x00\x00")
    answer = own.ask("/picture/lavender-sugar", "POST", body=broken, Content_Type=kind)
    assert "is no picture that a book can show" in answer.text
    # another takes its place: the first is published no more
    answer = own.ask("/picture/lavender-sugar", "POST", body=body, Content_Type=kind)
    other = BeautifulSoup(answer.text, "html.parser").select_one("#picture")
    assert other
    assert other["value"] != name["value"]
    assert keep(own, "lavender-sugar", picture=str(other["value"]), picture_alt="A jar") == 303
    assert f"1 picture that nothing in the book shows: {name['value']}" in own.ask("/publish").text
    assert "lies in the folder" in published(own, "folder").text
    public = {path.name for path in (own.folder / "site" / "pictures").iterdir()}
    assert str(other["value"]) in public
    assert str(name["value"]) not in public


def test_the_first_list_of_a_long_book_names_what_it_has_not_looked_at(
    own: OpenDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    recipe = (own.folder / "recipes" / "lavender-sugar.md").read_text(encoding="utf-8")
    for number in range(120):
        text = recipe.replace("title: Lavender sugar", f"title: Sugar no. {number}")
        (own.folder / "recipes" / f"sugar-{number}.md").write_text(text, encoding="utf-8")
    begun = time.monotonic()
    with monkeypatch.context() as hurried:  # so that no machine is quick enough to look at all
        hurried.setattr(rooms, "list_spines", partial(list_spines, seconds=0))
        first = own.ask("/").text
    assert time.monotonic() - begun < 3, "the page comes before all of them are looked at"
    assert all(f"Sugar no. {number}<" in first for number in range(120))
    assert "still to be looked at" in first
    assert 'http-equiv="refresh"' in first
    for _ in range(60):
        if "still to be looked at" not in (later := own.ask("/").text):
            break
    assert 'http-equiv="refresh"' not in later
    assert later.count("in the book") >= 120


def test_a_pause_is_not_compared_with_every_pause_before_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What is kept of a recipe is found by all that it says, however often it was looked at."""
    folder = small_book(tmp_path / "book")
    desk = Desk(Place(folder), tmp_path / "aside", lambda: None)
    text = (folder / "recipes" / "quince-chutney.md").read_text(encoding="utf-8")
    compared = 0
    plain = Recipe.__eq__

    def counting(one: Recipe, other: object) -> bool:
        nonlocal compared
        compared += one is not other
        return plain(one, other)

    for count in range(8):
        if count == 7:
            monkeypatch.setattr(Recipe, "__eq__", counting)
        form = f"{text}\nStir it for {count + 2} minutes.\n"
        look = desk.look("quince-chutney", "quince-chutney", form)
        assert look.recipe, look.wrong
        desk.show("quince-chutney", look.recipe)
    assert compared < 10


def test_the_card_of_a_new_recipe_has_its_picture_in_the_preview(own: OpenDesk) -> None:
    answer = json.loads(own.ask("/write/new-recipe/look", "POST", JAM).text)
    card = BeautifulSoup(answer["page"], "html.parser").select_one(".card-emblem")
    assert card is not None
    place = str(card["src"]).removeprefix("../../")
    assert place.endswith("cards/kinds/preserve.svg")
    shown = own.ask(f"/look/{place}")
    assert shown.status == 200
    assert shown.text.lstrip().startswith("<svg")
    assert "sandbox" in shown.headers["content-security-policy"]
    assert own.ask("/look/assets/stillroom/cards/another.svg").status == 404


def test_what_keeps_the_page_away_is_said_in_its_place(own: OpenDesk) -> None:
    wrong = JAM | {"ingredients": "1 kg plums, stoned\n1 kgg granulated sugar\n2 tbsp lemon juice"}
    answer = json.loads(own.ask("/write/new-recipe/look", "POST", wrong).text)
    assert "as soon as one thing is mended. It is told at its box." in answer["page"]
    assert "one thing is mended" in own.ask("/look/r/new-recipe/").text
    told = [id for id, part in answer["parts"].items() if "kgg" in part and "not a unit" in part]
    assert told == ["read-ingredients"], "it is told once"
    right = json.loads(own.ask("/write/new-recipe/look", "POST", JAM).text)
    assert "as soon as" not in right["page"]
    again = json.loads(own.ask("/write/new-recipe/look", "POST", wrong).text)
    assert again["page"] is None, "the page stays as it last read right"


def test_the_words_of_a_page_stand_without_the_head_of_its_file(own: OpenDesk) -> None:
    about = own.folder / "pages" / "about.md"
    about.write_text("---\ntitle: About\n---\n\n# About this book\n\nOurs.\n", encoding="utf-8")
    sent = boxes_of(own, "/book")
    assert sent["text_about"].strip() == "Ours."
    sent["text_about"] = "Nell’s, and nobody else’s."
    assert own.ask("/book", "POST", sent).status == 303
    kept = about.read_text(encoding="utf-8")
    assert kept == "---\ntitle: About\n---\n\n# About this book\n\nNell’s, and nobody else’s.\n"


def test_a_book_right_below_the_folder_is_named_and_other_things_are_said_to_stay(
    tmp_path: Path,
) -> None:
    small_book(tmp_path / "home" / "winter-book")
    (tmp_path / "home" / "bills.txt").write_text("gas 12\n", encoding="utf-8")
    (tmp_path / "bare").mkdir()
    said = {}
    for name in ("home", "bare"):
        opened, thread = open_on(tmp_path / name)
        said[name] = opened.ask("/begin").text
        opened.ask("/stop", "POST")
        thread.join(20)
    assert "a book in the folder “winter-book”" in said["home"]
    assert "they stay as they are" in said["home"]
    assert "right below" not in said["bare"]
    assert "stay as they are" not in said["bare"]


def test_what_is_taken_away_is_called_what_it_is(own: OpenDesk) -> None:
    way = "/write/vanilla-sugar"
    in_the_book = own.folder / "recipes" / "vanilla-sugar.md"
    before = in_the_book.read_bytes()
    keep(own, "vanilla-sugar", title="")
    gone = own.ask(f"{way}/out", "POST", boxes_of(own, way))
    assert "The book is as it was" in own.ask(gone.headers["location"]).text
    assert in_the_book.read_bytes() == before
    gone = own.ask(f"{way}/out", "POST", boxes_of(own, way))
    assert "It is taken out of the book" in own.ask(gone.headers["location"]).text
    assert not in_the_book.exists()


def test_how_far_a_recipe_is_says_what_is_not_known(own: OpenDesk) -> None:
    dust = {"title": "Moon dust", "kind": "dry mix", "makes": "1 jar of 200 ml"}
    dust["ingredients"] = "100 g caster sugar\n1 tsp gramarye\n2 tsp blue thistlewort"
    dust["method"] = "Shake all of it in a jar."
    assert keep(own, "new-recipe", **dust) == 303
    text = own.ask("/write/moon-dust").text
    assert "its page will say that 2 things in it are not known" in text
    assert "It reads well" not in text
    path = own.folder / "recipes" / "moon-dust.md"
    said = path.read_text(encoding="utf-8")
    asked = said.replace("---\n", "---\n# ? Is it so? Look at it.\n", 1)
    path.write_text(asked, encoding="utf-8")
    text = own.ask("/write/moon-dust").text
    assert "2 things in it are not known. 1 question from when it was brought in" in text
    assert "It reads well" not in text


def test_a_draft_of_no_sort_has_a_drawing_too(own: OpenDesk) -> None:
    drafts = own.folder / "drafts"
    drafts.mkdir(exist_ok=True)
    (drafts / "moon.md").write_text("---\ntitle: Moon\n---\n", encoding="utf-8")
    read = BeautifulSoup(own.ask("/").text, "html.parser")
    pictures = [one.get("src") for one in read.select(".spine__picture img")]
    assert len(pictures) == len(read.select(".spine"))
    assert "/desk/drawings/mark.svg" in pictures
    assert own.ask("/desk/drawings/mark.svg").status == 200
