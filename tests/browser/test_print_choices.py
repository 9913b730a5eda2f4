"""What the print room and the card's form answer to impossible figures, and to keys alone."""

from __future__ import annotations

from playwright.sync_api import Page

from stillroom.core.paper.sheets import PAPERS, Size, impose
from stillroom.core.paper.tag_shapes import tag_shape
from stillroom.core.words.problems import Unreadable

from .conftest import wait_until

# what a person may type into a field for a number. Letters cannot be typed into one except "e",
# "+", "-" and ".", of which a browser keeps those that make no number, and says so by badInput.
BAD = {"empty": "", "negative": "-3", "nought": "0", "letters": "e", "huge": "99999", "part": "1.5"}

WHOLE = "write a whole number from"
LENGTH = "write the millimetres as a number"
NO_LID = "holds no readable label"

# field, the thing it is shown for -> what is said for each of BAD; "" where the figure is good
ROOM = {
    ("[data-recipe=rosemary-salt]", "card"): ("", WHOLE, "", WHOLE, WHOLE, WHOLE),
    ("[name=start]", "card"): (WHOLE,) * 6,
    ("[name=columns]", "card"): (WHOLE,) * 6,
    ("[name=rows]", "card"): (WHOLE,) * 6,
    ("[name=left]", "card"): (LENGTH, LENGTH, "", LENGTH, LENGTH, ""),
    ("[name=top]", "card"): (LENGTH, LENGTH, "", LENGTH, LENGTH, ""),
    ("[name=pitchX]", "card"): (LENGTH, LENGTH, "overlap", LENGTH, LENGTH, "overlap"),
    ("[name=pitchY]", "card"): (LENGTH, LENGTH, "overlap", LENGTH, LENGTH, "overlap"),
    ("[name=labelWidth]", "card"): ("", *(LENGTH,) * 5),
    ("[name=labelHeight]", "card"): ("", *(LENGTH,) * 5),
    ("[name=lid]", "round"): (LENGTH, LENGTH, NO_LID, LENGTH, LENGTH, NO_LID),
    ("[name=diameter]", "wrap"): (LENGTH, LENGTH, "Measure the bottle", LENGTH, LENGTH, ""),
    ("[name=wall]", "wrap"): (LENGTH, LENGTH, NO_LID, LENGTH, LENGTH, NO_LID),
}


# the fields of a bought sheet's own measures
OWN = {"columns", "rows", "left", "top", "pitchX", "pitchY", "labelWidth", "labelHeight"}


def open_room(page: Page, address: str) -> None:
    page.goto(f"{address}/print-room/?recipe=rosemary-salt&count=2")
    page.evaluate("() => { window.print = () => { document.body.dataset.printed = 'yes'; }; }")
    wait_until(page, "!document.querySelector('.print-room-form').hidden")


def type_into(page: Page, field: str, typed: str) -> None:
    page.focus(field)
    page.keyboard.press("Control+A")
    page.keyboard.press("Delete")
    page.keyboard.type(typed)


def test_the_room_answers_in_words(page: Page, book_address: str) -> None:
    open_room(page, book_address)
    page.click(".print-room-labels summary")
    wrong = []
    for (field, thing), answers in ROOM.items():
        place = f".print-room-form {field}"
        page.select_option(".print-room-form [name=thing]", thing)
        own = field[6:-1] in OWN
        page.set_checked(".print-room-form [name=own]", own)
        before = page.input_value(place)
        for (name, typed), answer in zip(BAD.items(), answers, strict=True):
            type_into(page, place, typed)
            said = page.inner_text(".print-room-status")
            if answer not in said or (answer and page.locator(".sheet-page").count()):
                wrong.append((field, name, said))
            if not answer and (WHOLE in said or LENGTH in said):
                wrong.append((field, name, said))
        type_into(page, place, before)
    assert wrong == []


def test_a_wrong_figure_is_not_printed(page: Page, book_address: str) -> None:
    open_room(page, book_address)
    type_into(page, ".print-room-form [data-recipe=rosemary-salt]", "-3")
    page.click(".print-room-form button[type=submit]")
    assert page.get_attribute("body", "data-printed") is None


def test_bought_labels_have_no_back_and_no_cut_lines(page: Page, book_address: str) -> None:
    open_room(page, book_address)
    status, sheets = page.locator(".print-room-status"), page.locator(".print-room-preview")
    assert sheets.locator(".cut-lines").count() == 1
    page.click(".print-room-labels summary")
    page.check(".print-room-form [name=own]")
    assert not page.is_checked(".print-room-form [name=cut]")
    assert status.inner_text() == "2 on 1 page. The last sheet has 6 free places."
    assert sheets.locator(".sheet-page").count() == 1
    assert sheets.locator(".cut-lines").count() == 0
    page.check(".print-room-form [name=cut]")  # whoever asks for them has them
    assert sheets.locator(".cut-lines").count() == 1
    page.fill(".print-room-form [data-recipe=layered-soup-mix]", "1")
    said = "A label has no back: Layered soup mix needs two sides. Choose a larger label, or tags."
    assert status.inner_text() == said
    assert sheets.locator(".sheet-page").count() == 0
    page.select_option(".print-room-form [name=thing]", "rectangle")
    assert status.inner_text().startswith("3 on 1 page.")
    page.select_option(".print-room-form [name=thing]", "card")
    page.select_option(".print-room-form [name=size]", "folded-a6")
    assert status.inner_text().startswith("A folded card does not go on a label")
    page.uncheck(".print-room-form [name=own]")
    assert page.is_checked(".print-room-form [name=cut]")
    assert "Print on both sides" in status.inner_text()


def test_a_card_or_tag_is_as_large_as_the_bought_label(page: Page, book_address: str) -> None:
    open_room(page, book_address)
    page.click(".print-room-labels summary")
    page.check(".print-room-form [name=own]")
    page.fill(".print-room-form [name=labelWidth]", "80")
    page.fill(".print-room-form [name=labelHeight]", "60")
    status = page.locator(".print-room-status")
    for thing in ("card", "rectangle", "wrap", "round"):
        page.select_option(".print-room-form [name=thing]", thing)
        if thing == "round":
            assert status.inner_text().startswith("A round label is as high as it is wide.")
            page.fill(".print-room-form [name=labelWidth]", "60")
        assert status.inner_text().startswith("2 on 1 page."), thing
        sizes = page.evaluate(
            """() => [...document.querySelectorAll('.print-room-preview .sheet-place')].flatMap(
              (place) => [place, place.querySelector('.card-face')].map((box) => {
                const { inlineSize, blockSize } = getComputedStyle(box);
                return [inlineSize, blockSize].map((px) => Math.round(parseFloat(px) / 96 * 25.4));
              }))"""
        )
        assert sizes == [[60 if thing == "round" else 80, 60]] * 4, thing
    page.fill(".print-room-form [name=labelHeight]", "20")
    assert "holds no readable words" in status.inner_text()


def test_the_card_form_answers_in_words(page: Page, book_address: str) -> None:
    page.goto(f"{book_address}/r/rosemary-salt/")
    page.evaluate("() => { window.print = () => { document.body.dataset.printed = 'yes'; }; }")
    wait_until(page, "!document.querySelector('.card-form').hidden")
    for typed in BAD.values():
        type_into(page, ".card-form [name=count]", typed)
        assert WHOLE in page.inner_text(".card-status"), typed
        page.keyboard.press("Enter")
    assert page.get_attribute("body", "data-printed") is None
    type_into(page, ".card-form [name=count]", "3")
    assert page.inner_text(".card-status") == ""


def test_keys_alone_choose_and_print(page: Page, book_address: str) -> None:
    open_room(page, book_address)
    page.fill(".print-room-form [data-recipe=rosemary-salt]", "0")
    page.focus("#leaf")
    seen, marked = [], set()
    for _ in range(80):
        page.keyboard.press("Tab")
        name, shown, kind = page.evaluate(
            """() => {
              const at = document.activeElement;
              const style = getComputedStyle(at);
              const lined = style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) > 0;
              return [at.name || at.dataset.recipe || at.type || at.tagName,
                      lined || style.boxShadow !== 'none', at.type];
            }"""
        )
        seen.append(name)
        if shown:
            marked.add(name)
        if name == "thing":
            page.keyboard.type("luggage")
        if name == "rosemary-salt":
            page.keyboard.press("ArrowUp")
        if kind == "submit":
            break
    # a date is four stops of Tab; at its last the browser marks its own calendar button
    assert set(seen) - marked == set()
    assert seen.index("thing") < seen.index("rosemary-salt") < seen.index("submit")
    status = page.locator(".print-room-status")
    assert status.get_attribute("aria-live") == "polite"
    assert status.inner_text().startswith("1 on 1 page.")
    page.keyboard.press("Enter")
    assert page.get_attribute("body", "data-printed") == "yes"
    assert page.locator("body > .stillroom-sheets .gift-tag[data-shape=luggage]").count() == 1


# bottle and straight wall in mm: usual ones, those that go on only turned, those that go on none
WRAPS = [(52, 70), (64, 60), (66, 100), (70, 80), (80, 120), (88, 210), (110, 80), (30, 290)]


def _mm(size: Size) -> dict[str, object]:
    return {"name": size.name, "width": float(size.width_mm), "height": float(size.height_mm)}


def test_wide_labels_turn_alike_in_python_and_in_the_browser(scripts_page: Page) -> None:
    boxes = [tag_shape("wrap", bottle_mm=bottle, wall_mm=wall).box for bottle, wall in WRAPS]
    expected: list[list[float] | None] = []
    for paper in ("a4", "letter"):
        for box in boxes:
            try:
                grid = impose(PAPERS[paper], box)
            except Unreadable:
                expected.append(None)
                continue
            lies = (grid.box.width_mm, grid.left_mm, grid.top_mm)
            expected.append([grid.columns, grid.rows, *(round(float(mm), 3) for mm in lies)])
    got = scripts_page.evaluate(
        """async ([papers, boxes]) => {
          const { impose } = await import('/assets/stillroom/js/paper/paper.js');
          const shown = (mm) => Math.round(mm * 1000) / 1000;
          return papers.flatMap((paper) => boxes.map((box) => {
            try {
              const grid = impose(paper, box);
              const lies = [grid.box.width, grid.left, grid.top].map(shown);
              return [grid.columns, grid.rows, ...lies];
            } catch (error) {
              if (error.constructor.name !== "Unreadable") throw error;
              return null;
            }
          }));
        }""",
        [[_mm(PAPERS[paper]) for paper in ("a4", "letter")], [_mm(box) for box in boxes]],
    )
    assert got == expected
    assert None in expected
    turned = [
        one
        for one, box in zip(expected, boxes * 2, strict=True)
        if one and one[2] != float(box.width_mm)
    ]
    assert len(turned) >= 3
