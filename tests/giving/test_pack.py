"""The pack as a person gets it: pages, sums that add up, dates, and where it is refused."""

from __future__ import annotations

import csv
import errno
import io
import subprocess
import sys
from collections import Counter
from dataclasses import replace
from datetime import date
from fractions import Fraction

import pytest
import yaml
from bs4 import BeautifulSoup
from click.testing import CliRunner
from icalendar import Calendar
from pypdf import PdfReader

from giving.lists import PRICES, ROOT, TODAY, demo_book, demo_recipes, read_dict, small_list
from stillroom.cli import main
from stillroom.core.book import BookSettings, place_book
from stillroom.core.larder.shelves import common_larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving import swapping
from stillroom.giving.basket_sheets import basket_data
from stillroom.giving.calendar_file import write_calendar
from stillroom.giving.finding import giving_lists
from stillroom.giving.guard import PACK_MARKER, guard_folder, usual_folder
from stillroom.giving.kept_cold import is_kept_cold
from stillroom.giving.pack import Effort, pack_files, work_out
from stillroom.giving.plan_file import read_plan
from stillroom.giving.swapping import restore_folder, swap_in
from stillroom.giving.who_pages import checked_data
from stillroom.giving.worked_out import card_of

QUICK = Effort(10, 0.05)


def make_pack(**changes):
    data = small_list(prices=PRICES, **changes)
    return work_out(read_dict(data), demo_recipes(), demo_book().settings, TODAY, QUICK)


@pytest.fixture(scope="module")
def pack():
    return make_pack()


@pytest.fixture(scope="module")
def files(pack):
    return pack_files(pack)


def page(files, name):
    return BeautifulSoup(files[name], "html.parser")


def test_one_batch_is_one_batch(pack, files):
    one = make_pack(
        baskets={"small": {"eat": 1}},
        makes=[{"recipe": "rosemary-salt", "batches": 1}],
        households=[{"name": "Ysolde Fennimore", "basket": "small"}],
    )
    said = page(pack_files(one), "index.html").select_one(".lead").get_text()
    assert "1 basket for 1 household, going out on" in said
    assert "1 batch to make, the first on" in said
    batches = len(pack.making.batches)
    assert batches > 1
    assert f"{batches} batches to make" in page(files, "index.html").select_one(".lead").get_text()


def test_every_link_and_asset_is_in_the_pack(files):
    for name in files:
        if name.endswith(".html"):
            soup = page(files, name)
            targets = [tag.get("href") or tag.get("src") for tag in soup.select("[href], [src]")]
            targets.remove("data:,")  # the icon, which is none: no file is asked for
            assert all(one.partition("#")[0] in files for one in targets), (name, targets)
            assert soup.h1.get_text()
            assert "http" not in str(soup.head)
    assert b"http" not in files["pack.css"]


def test_a_slower_machine_writes_the_same_pack(pack, files):
    later = replace(pack, plan=replace(pack.plan, seconds=pack.plan.seconds + 100))
    again = pack_files(later)
    same = [name for name in files if name.endswith(".html") and again[name] == files[name]]
    assert same == [name for name in files if name.endswith(".html")]


def test_more_places_than_offers_are_told_in_a_whole_sentence():
    found = make_pack(baskets={"small": {"eat": 2, "drink": 100_000}})
    assert any("the list offers no more. Add some to makes" in words for words in found.complaints)
    assert not [words for words in found.complaints if ": ." in words]


def test_matrix_shows_what_each_basket_gets(pack, files):
    rows = page(files, "plan.html").select(".matrix tbody tr")
    assert len(rows) == len(pack.plan.gifts)
    for row, keys in zip(rows, pack.plan.gifts.values(), strict=True):
        assert len(row.select("td.given")) == len(keys)


def test_a_card_for_every_present_with_name_and_dates(pack, files):
    cards = page(files, "cards.html").select(".card")
    assert len(cards) == sum(len(keys) for keys in pack.plan.gifts.values())
    names = Counter(card.select_one(".names b").get_text() for card in cards)
    assert names == {"Ysolde Fennimore": 3, "The Cragbies": 3}
    for card, present in zip(cards, pack.making.presents, strict=True):
        words = card.get_text(" ")
        assert "Hob and Nan" in words
        assert f"{present.made_on.day}" in card.select_one(".dates").get_text()


def test_slips_name_what_must_not_go_in(files):
    slips = page(files, "baskets.html").select(".slip")
    assert "Must not get: gluten" in slips[1].get_text(" ", strip=True)
    assert "Must not get" not in slips[0].get_text(" ", strip=True)


def test_a_message_stands_once_a_basket_and_on_no_card():
    files = pack_files(make_pack(message="With love from the loft"))
    for name in ("baskets.html", "cards.html"):
        assert files[name].decode().count("With love from the loft") == 2, name
    assert "With love" not in "".join(
        c.get_text() for c in page(files, "cards.html").select(".card")
    )


def test_what_is_said_aloud_is_what_the_labels_say(pack, files):
    sheets = page(files, "baskets.html").select(".sheet")
    for sheet, number in zip(sheets, pack.plan.gifts, strict=True):
        # what the kitchen uses is said behind it, and names every allergen of the season
        words = sheet.get_text(" ", strip=True).partition("All of it is made in a home")[0]
        for present in pack.making.of_basket(number):
            card = card_of(pack, present)
            assert all(allergen.lower() in words.lower() for allergen in card.allergens)
            cold = is_kept_cold(card.keep)
            assert not cold or f"Into the fridge at once: {present.recipe.title}" in words


def test_where_an_animal_lives_what_would_poison_it_is_said():
    households = [
        {"name": "Old Tam", "basket": "small", "pets": "dog"},
        {"name": "Nell Skarrow", "basket": "small"},
    ]
    found = make_pack(
        households=households,
        makes=[{"recipe": "quince-chutney"}, {"recipe": "rosemary-salt"}],
        baskets={"small": {"eat": 2}},
    )
    tam, nell = (basket_data(found, one)["aloud"] for one in found.offering.problem.baskets)
    assert "Keep from the dog: Quince chutney (onions, raisins)." in tam
    assert not any("Keep from" in words for words in nell)


def test_who_lives_there_stands_on_the_basket_and_on_the_sheet_of_the_filling_day():
    households = [
        {"name": "Old Tam", "basket": "small", "children": ["8 months"], "avoid": "nuts, severe"},
        {"name": "Nell Skarrow", "basket": "small", "pregnant": "due in March"},
        {"name": "The Finches", "basket": "small"},
    ]
    found = make_pack(
        households=households,
        makes=[{"recipe": "bramble-jelly"}, {"recipe": "almond-shortbread", "per batch": 3}],
        baskets={"small": {"eat": 1}},
    )
    files = pack_files(found)
    limits = {
        "honey, not even baked (a baby under one)",
        "whole nuts or nuts in pieces (a child under five)",
        "small or sharp parts (a child under three)",
    }
    told = [basket_data(found, one)["avoid"] for one in found.offering.problem.baskets]
    assert told[0][0] == "nuts"
    assert limits <= set(told[0])
    assert told[1][0] == "alcohol (pregnant)"
    assert told[2] == []
    for name in ("baskets.html", "filling.html"):
        text = page(files, name).get_text(" ", strip=True)
        assert all(limit in text for limit in limits)
    sheet = "".join(p.extract_text() for p in PdfReader(io.BytesIO(files["filling.pdf"])).pages)
    assert "a baby under one" in " ".join(sheet.split())


def test_what_was_checked_is_told_of_each_part_of_a_sentence():
    households = [
        {"name": "Old Tam", "basket": "small", "avoid": "EoE - no milk; coeliac since 2019"},
    ]
    found = make_pack(
        households=households, makes=[{"recipe": "bramble-jelly"}], baskets={"small": {"eat": 1}}
    )
    assert {row["word"]: row["who"] for row in checked_data(found)} == {
        "milk": ["Old Tam"],
        "coeliac": ["Old Tam"],
    }


def test_what_the_kitchen_uses_is_named_where_a_basket_is_given():
    """Said once a basket, each allergen of this season by name; nothing of an ornament alone."""
    households = [
        {"name": "Old Tam", "basket": "small", "avoid": "milk"},
        {"name": "Nell Skarrow", "basket": "craft"},
    ]
    found = make_pack(
        households=households,
        makes=[
            {"recipe": "bramble-jelly"},
            {"recipe": "almond-shortbread", "per batch": 3},
            {"recipe": "felted-bauble", "per batch": 3},
        ],
        baskets={"small": {"eat": 1}, "craft": {"craft": 1}},
        stock={"made": [{"recipe": "almond-shortbread", "number": 1, "made on": "2027-12-01"}]},
    )
    tam, nell = (basket_data(found, one)["aloud"] for one in found.offering.problem.baskets)
    assert tam[-1].startswith("All of it is made in a home kitchen")
    assert tam[-1].endswith("traces cannot be ruled out.")
    assert not any("home kitchen" in words for words in nell)


def test_one_allergen_or_three_the_kitchen_uses_them():
    """It said "where mustard are used" of one that stands alone."""
    for recipe, uses in (
        ("quince-chutney", "mustard:"),
        ("almond-shortbread", "gluten (wheat), milk and nuts (almond):"),
    ):
        found = make_pack(
            households=[{"name": "Old Tam", "basket": "small"}],
            makes=[{"recipe": recipe, "per batch": 3}],
            baskets={"small": {"eat": 1}},
        )
        (basket,) = found.offering.problem.baskets
        assert f"in a home kitchen that uses {uses}" in basket_data(found, basket)["aloud"][-1]


def test_all_costs_add_up_to_the_penny(pack):
    sheet = pack.costs
    presents = sum(sheet.presents.values(), Fraction(0))
    assert presents + sheet.spares + sheet.left_over + sheet.empty_baskets == sheet.paid
    assert sum(sheet.baskets.values()) == presents + sheet.empty_baskets
    assert sum(sheet.households.values()) == sum(sheet.baskets.values())
    assert sheet.paid == sum(row.price for row in pack.rows) + sheet.empty_baskets
    assert all((cost * 100).denominator == 1 for cost in sheet.presents.values())


def test_shopping_is_the_same_as_table_text_and_page(files):
    table = list(csv.DictReader(io.StringIO(files["shopping.csv"].decode("utf-8-sig"))))
    text = files["shopping.txt"].decode()
    on_page = page(files, "shopping.html").select("tbody tr:not(.section)")
    assert len(table) == len(on_page) == text.count("[ ]")
    assert all(f"[ ] {row['item']}: {row['buy']}" in text for row in table)


def test_calendar_has_every_batch_and_the_giving_day(pack, files):
    calendar = Calendar.from_ical(files["calendar.ics"])
    titles = [str(event["summary"]) for event in calendar.walk("VEVENT")]
    for batch in pack.making.batches:
        assert any(f"({batch.name}," in title for title in titles)
    assert "Give the baskets: 2 of them" in titles
    uids = [str(event["uid"]) for event in calendar.walk("VEVENT")]
    assert len(uids) == len(set(uids))


def test_calendar_reminds_replaces_and_is_marked_private(pack, files):
    calendar = Calendar.from_ical(files["calendar.ics"])
    day = (pack.offering.today - date(2020, 1, 1)).days
    for event in calendar.walk("VEVENT"):
        assert event["sequence"] == day, "a later pack's entries take the place of earlier ones"
        assert event["class"] == "PRIVATE"
        assert str(event["uid"]).startswith("private-")
    reminded = [event for event in calendar.walk("VEVENT") if event.walk("VALARM")]
    assert len(reminded) > len(pack.making.batches)
    [giving] = [one for one in reminded if str(one["summary"]).startswith("Give the baskets")]
    hours = [alarm["trigger"].dt.total_seconds() / 3600 for alarm in giving.walk("VALARM")]
    assert hours == [-15, 9]


def test_nobody_is_reminded_to_use_up_an_ornament(files):
    said = [str(one["summary"]) for one in Calendar.from_ical(files["calendar.ics"]).walk("VEVENT")]
    used = [words for words in said if words.startswith("Use up")]
    assert used
    assert not any("bauble" in words or "wraps" in words or "garland" in words for words in used)


def test_a_batch_keeps_its_calendar_entries_when_another_goes_before_it(pack):
    """Entries are known by recipe, giving day and which making of it, not by place in the plan."""

    def uids(making):
        calendar = Calendar.from_ical(write_calendar(replace(pack, making=making)))
        return {str(event["uid"]) for event in calendar.walk("VEVENT")}

    batches = pack.making.batches
    assert len(batches) > 1
    renamed = tuple(replace(one, name=f"batch {n + 1}") for n, one in enumerate(batches[1:]))
    assert uids(replace(pack.making, batches=renamed)) < uids(pack.making)
    twice = replace(pack.making, batches=(batches[0], replace(batches[0], ordinal=2)))
    assert len(uids(twice)) > len(uids(replace(pack.making, batches=batches[:1])))


def test_the_fullest_week_is_named(pack, files):
    most = max(pack.making.hours_by_week.values())
    words = f"{float(most):.1f}".removesuffix(".0")
    for name in ("index.html", "year.html"):
        assert f"{words} hours." in page(files, name).get_text(" ")


def test_papers_are_pdf(files):
    pytest.importorskip("typst")
    names = {name for name, data in files.items() if data[:5] == b"%PDF-"}
    ticked = {"week.pdf", "filling.pdf", "baskets.pdf"}
    assert names == {"cards.pdf", "tags.pdf", "basket-tags.pdf", "papers.pdf", *ticked}


def test_what_cannot_be_is_said_on_the_start_page():
    data = {"households": [{"name": "Old Tam", "basket": "small", "avoid": ["alcohol"]}]}
    data["makes"] = [{"recipe": "quince-ratafia"}, {"recipe": "rosemary-salt"},
                     {"recipe": "quince-chutney"}, {"recipe": "heather-mead"}]  # fmt: skip
    found = make_pack(**data)
    assert found.complaints == (
        "No drink left for number 1, Old Tam: both contain alcohol. Offer a drink that they can "
        "have, or give them another basket.",
    )


def test_planning_again_keeps_the_plan(tmp_path, pack, files):
    swap_in(files, tmp_path / "private")
    before = read_plan(tmp_path / "private", "Winter 2027")
    households = [
        {"name": "Ysolde Fennimore", "basket": "small"},
        {"name": "The Cragbies", "basket": "small", "avoid": ["gluten"], "adults": 2},
        {"name": "New Neighbour", "basket": "small"},
    ]
    read = read_dict(small_list(prices=PRICES, households=households))
    again = work_out(read, demo_recipes(), demo_book().settings, TODAY, QUICK, before)
    assert {n: again.plan.gifts[n] for n in (1, 2)} == pack.plan.gifts


def test_cards_take_their_dates_from_the_batch_log():
    batches = [{"recipe": "rosemary-salt", "started": "2027-03-01", "made on": "2027-03-14",
                "number": 4}]  # fmt: skip
    baskets = {"small": {"eat": 1}}
    makes = [{"recipe": "rosemary-salt"}]
    found = make_pack(batches=batches, baskets=baskets, makes=makes)
    assert {present.made_on for present in found.making.presents} == {date(2027, 3, 14)}
    assert found.making.batches == ()


def test_what_is_too_old_on_giving_day_is_told_and_not_given():
    made = [{"recipe": "rosemary-salt", "number": 4, "made on": "2026-06-14"}]
    found = make_pack(stock={"made": made}, baskets={"small": {"eat": 1}})
    assert "too old to give" in found.offering.shelf.notes[0]
    assert not any(present.from_shelf for present in found.making.presents)


def test_a_plan_of_another_list_is_not_kept(tmp_path, files):
    swap_in(files, tmp_path / "private")
    assert read_plan(tmp_path / "private", "Summer 2028") is None


def test_a_pack_leaves_a_list_in_the_private_folder_alone(tmp_path):
    private = tmp_path / "private"
    private.mkdir()
    book = place_book(tmp_path, BookSettings(), "docs", "site")
    assert usual_folder(book) == private
    (private / "list.yml").write_text("giving list: A\nhouseholds: []\n", encoding="utf-8")
    assert usual_folder(book) == private / "pack"
    assert giving_lists(book) == [private / "list.yml"]
    (private / PACK_MARKER).write_text("", encoding="utf-8")
    assert usual_folder(book) == private
    assert giving_lists(book) == []


# where the pack would go, and what is said; the book's folders are docs, recipes and site
REFUSED = [
    ("docs", "published"),
    ("docs/deep/private", "published"),
    ("recipes/private", "published"),
    ("site/x", "published"),
    (".", "published"),
    ("notes", "other than a pack"),
    ("tracked", "Git keeps"),
]


@pytest.fixture
def book(tmp_path):
    for name in ("docs", "recipes", "site", "notes", "tracked"):
        (tmp_path / name).mkdir()
    (tmp_path / "notes" / "mine.txt").write_text("mine", encoding="utf-8")
    (tmp_path / "tracked" / PACK_MARKER).write_text("", encoding="utf-8")
    (tmp_path / ".gitignore").write_text("private/\nnotes/\n", encoding="utf-8")
    for words in (["init", "-q"], ["add", "tracked"]):
        subprocess.run(["git", "-C", str(tmp_path), *words], check=True, capture_output=True)
    return place_book(tmp_path, BookSettings(), "docs", "site")


@pytest.mark.parametrize(("name", "words"), REFUSED)
def test_refused_folder(book, name, words):
    with pytest.raises(ProblemsFound, match=words):
        guard_folder(book.root / name, book)


def test_ignored_and_outside_folders_are_fine(book, tmp_path_factory):
    guard_folder(book.root / "private", book)
    guard_folder(book.root / "new", book)  # a pack brings a .gitignore of its own
    guard_folder(tmp_path_factory.mktemp("elsewhere") / "private", book)


def test_nothing_half_written(tmp_path, monkeypatch):
    out = tmp_path / "private"
    swap_in({"a.txt": b"old", PACK_MARKER: b""}, out)

    def fail(_old, _new):
        raise OSError(errno.ENOSPC, "the disk is full")

    monkeypatch.setattr(swapping, "put_in_place", fail)
    with pytest.raises(ProblemsFound, match="no room"):
        swap_in({"a.txt": b"new"}, out)
    monkeypatch.undo()
    assert (out / "a.txt").read_bytes() == b"old"
    assert [path.name for path in tmp_path.iterdir()] == ["private"]


def test_a_note_of_ones_own_stays_and_a_changed_file_is_kept(tmp_path):
    out = tmp_path / "private"
    swap_in({"a.txt": b"one", "b.txt": b"two"}, out)
    (out / "deep").mkdir()
    (out / "deep" / "note.txt").write_text("mine", encoding="utf-8")
    (out / "b.txt").write_text("two, and bows", encoding="utf-8")
    assert swap_in({"a.txt": b"new", "c.txt": b"three"}, out) == ("b.txt",)
    found = {path.relative_to(out).as_posix() for path in out.rglob("*") if path.is_file()}
    assert found == {PACK_MARKER, ".gitignore", "a.txt", "c.txt", "deep/note.txt", "yours/b.txt"}
    assert (out / "yours" / "b.txt").read_text("utf-8") == "two, and bows"
    (out / "d.txt").write_text("mine too", encoding="utf-8")
    with pytest.raises(ProblemsFound, match="note of your own"):
        swap_in({"a.txt": b"new", "d.txt": b"four"}, out)
    assert (out / "d.txt").read_text("utf-8") == "mine too"


def test_the_same_pack_again_touches_nothing(tmp_path):
    out = tmp_path / "private"
    swap_in({"a.txt": b"one", "fonts/b.txt": b"two"}, out)
    before = {path: path.stat().st_mtime_ns for path in out.rglob("*")} | {out: out.stat().st_ino}
    assert swap_in({"a.txt": b"one", "fonts/b.txt": b"two"}, out) == ()
    after = {path: path.stat().st_mtime_ns for path in out.rglob("*")} | {out: out.stat().st_ino}
    assert before == after


def test_a_broken_swap_is_put_right(tmp_path):
    out = tmp_path / "private"
    swap_in({"a.txt": b"old"}, out)
    out.rename(tmp_path / "private-before")
    restore_folder(out)
    assert (out / "a.txt").read_bytes() == b"old"


def test_without_the_solver_it_is_said_plainly(monkeypatch):
    monkeypatch.setitem(sys.modules, "highspy", None)
    with pytest.raises(ProblemsFound) as found:
        make_pack()
    assert "highspy, which is not installed. Install it with" in str(found.value)


def test_without_typst_the_pages_are_there_and_say_so(monkeypatch, pack):
    monkeypatch.setitem(sys.modules, "typst", None)
    found = pack_files(pack)
    assert not any(name.endswith(".pdf") for name in found)
    assert "stillroom[paper]" in page(found, "index.html").get_text()


def test_must_have_and_never_are_kept():
    households = [
        {"name": "A", "basket": "small", "must have": ["oat-thyme-biscuits"]},
        {"name": "B", "basket": "small", "never": ["rosemary-salt", "bramble-jelly"]},
    ]
    gifts = make_pack(households=households).plan.gifts
    assert "oat-thyme-biscuits" in gifts[1]
    assert not {"rosemary-salt", "bramble-jelly"} & set(gifts[2])


def test_the_commands_write_a_pack_and_close_the_year(book):
    names = ("rosemary-salt", "lavender-sugar")
    for name in names:
        text = (ROOT / "recipes" / f"{name}.md").read_text(encoding="utf-8")
        (book.root / "recipes" / f"{name}.md").write_text(text, encoding="utf-8")
    config = {
        "site_name": "B",
        "theme": "material",
        "docs_dir": "docs",
        "plugins": [{"stillroom": {}}],
    }
    (book.root / "mkdocs.yml").write_text(yaml.safe_dump(config), encoding="utf-8")
    makes = [{"recipe": name} for name in names]
    data = small_list(makes=makes, baskets={"small": {"eat": 2}})
    (book.root / "notes" / "list.yml").write_text(yaml.safe_dump(data), encoding="utf-8")
    run = CliRunner().invoke
    listed = str(book.root / "notes" / "list.yml")
    made = run(main, ["pack", listed, "--today", "2027-01-10", "--seconds", "300"])
    assert made.exit_code == 0, made.output
    assert "proven best" in made.output
    assert (book.root / "private" / "index.html").is_file()
    following = book.root / "notes" / "next.yml"
    closed = run(main, ["close-year", listed, "--out", str(following)])
    assert closed.exit_code == 0, closed.output
    assert "2027:" in following.read_text(encoding="utf-8")
    again = run(main, ["close-year", listed, "--out", str(following)])
    assert again.exit_code == 1
    assert "closed before" in again.output
    following.write_text("mine", encoding="utf-8")
    again = run(main, ["close-year", listed, "--out", str(following)])
    assert again.exit_code == 1
    assert "there already" in again.output
    assert run(main, ["giving-schema"]).exit_code == 0
    (book.root / "recipes" / "broken.md").write_text("---\ntitle: Broken\n---\n", encoding="utf-8")
    wrong = {**data, "giving day": "some day"}
    (book.root / "notes" / "list.yml").write_text(yaml.safe_dump(wrong), encoding="utf-8")
    both = run(main, ["close-year", listed, "--out", str(book.root / "notes" / "after.yml")])
    assert both.exit_code == 1
    assert "broken.md" in both.output, "the recipe's fault is told"
    assert '"some day" is not a day' in both.output, "and the list's own beside it"


def test_the_plan_names_what_could_not_be_checked_and_who_is_given_it(pack, files):
    assert "Could not be checked" not in page(files, "plan.html").text
    strange = find_foods(read_ingredient("5 g glimmerwort", "metric"), common_larder())
    recipes = [
        recipe.model_copy(update={"ingredients": (*recipe.ingredients, strange)})
        if recipe.slug == "rosemary-salt"
        else recipe
        for recipe in demo_recipes()
    ]
    data = small_list(prices=PRICES)
    changed = work_out(read_dict(data), recipes, demo_book().settings, TODAY, QUICK)
    told = page(pack_files(changed), "plan.html").text
    assert "Could not be checked" in told
    assert "“glimmerwort” is not known" in told
    planned = {
        changed.offering.households[number].name
        for number, keys in changed.plan.gifts.items()
        if any(changed.offering.makes[key].recipe == "rosemary-salt" for key in keys)
    }
    assert all(name in told.split("Why not")[0] for name in planned)
    assert planned or "Planned for nobody" in told
