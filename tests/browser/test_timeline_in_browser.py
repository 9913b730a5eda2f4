"""The browser's dates, words, drawing and calendar files against Python's, in one page load."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

import pytest
import vobject
from playwright.sync_api import Browser, Page, expect
from pypdf import PdfReader

from sampling import share
from stillroom.core.when.calendar_entries import make_entries
from stillroom.core.when.calendar_files import make_calendar
from stillroom.core.when.timeline import plan_back
from stillroom.core.when.timeline_data import timeline_data
from stillroom.core.when.timeline_words import describe_dates, sum_up
from stillroom.core.when.year import Named, still_time
from stillroom.publish.templating import render
from stillroom.publish.timeline_picture import NARROW, WIDE, draw_timeline
from timed import TimedRecipe
from timelines import answer, questions, timelines

TESTS = Path(__file__).parents[1]
SCRIPTS = TESTS.parent / "builder" / "stillroom" / "publish" / "assets" / "js"
RECIPES = timelines()
TODAY = date(2026, 11, 25)
GIVING = (date(2026, 12, 19), date(2027, 12, 18), date(2028, 2, 29))


# a plan as the document that `stillroom dates --json` prints
DOCUMENT = """
function timelineDocument({ plan, season = null, verdict }, { isoDay, firstDay }) {
  return {
    start: isoDay(plan.start),
    usable: isoDay(plan.usable),
    best: isoDay(plan.best),
    give: plan.asked ? isoDay(plan.give) : null,
    can_be_given: plan.asked ? null : isoDay(plan.give),
    keep_until: plan.keepUntil === null ? null : isoDay(plan.keepUntil),
    tending: plan.tending.map(isoDay),
    stages: plan.stages.map((row) => ({
      name: row.name, from: isoDay(firstDay(row)), to: isoDay(row.to),
    })),
    verdict: verdict.text,
    verdict_code: verdict.code,
    ready: isoDay(plan.ready),
    latest_start_best: isoDay(plan.latestStartBest),
    latest_start_usable: isoDay(plan.latestStartUsable),
    hands_on_minutes: plan.stages.reduce(
      (sum, row) => sum + row.minutes * row.times * row.dates.length, 0,
    ),
    season: season?.text ?? null,
    season_start: season?.start == null ? null : isoDay(season.start),
  };
}
"""


@pytest.fixture(scope="module")
def scripts(browser: Browser, scripts_address: str) -> Iterator[Page]:
    """Open one page from which every script of the timeline can be called."""
    context = browser.new_context(locale="en-GB", timezone_id="Europe/London")
    page = context.new_page()
    page.goto(f"{scripts_address}/js/amounts/fraction.js")
    page.evaluate(
        """async () => {
            const load = (name) => import(`/js/when/${name}.js`);
            const names = [
                "dates", "stage-dates", "timeline", "verdicts", "season", "season-plan", "year",
                "timeline-words", "timeline-drawing", "calendar",
            ];
            window.book = Object.assign({}, ...(await Promise.all(names.map(load))));
        }"""
    )
    yield page
    context.close()


@pytest.mark.sampled
def test_the_same_days_and_verdicts(scripts: Page) -> None:
    asked = list(questions(share(400, 6000)))
    said = scripts.evaluate(
        f"""({{data, asked}}) => asked.map((one) => {{
            const {{parseDay, planForward, planInSeason, seasonOfStart, giveVerdict}} = window.book;
            {DOCUMENT}
            const recipe = data[one.recipe];
            const now = parseDay(one.today);
            const begun = () => {{
                const plan = planForward(recipe, parseDay(one.start), null, now);
                const season = seasonOfStart(recipe, parseDay(one.start));
                return {{plan, season, verdict: giveVerdict(plan)}};
            }};
            const found = one.start ? begun() : planInSeason(recipe, parseDay(one.give), now);
            const days = found.plan.tending.map((day) => day - found.plan.start);
            return {{...timelineDocument(found, window.book), tending: days}};
        }})""",
        {
            "data": {slug: timeline_data(recipe) for slug, recipe in RECIPES.items()},
            "asked": asked,
        },
    )
    expected = [answer(one) for one in asked]
    assert len({one["verdict_code"] for one in expected}) >= 6, "many sorts of answer"
    apart = zip(asked, expected, said, strict=True)
    assert [(one, ours, theirs) for one, ours, theirs in apart if ours != theirs] == []


def _asked() -> list[dict[str, Any]]:
    return [
        {"data": timeline_data(recipe), "give": give.isoformat(), "today": TODAY.isoformat()}
        for recipe in RECIPES.values()
        for give in GIVING
    ]


def _each(scripts: Page, script: str) -> Iterator[tuple[TimedRecipe, date, Any]]:
    asked = [(recipe, give) for recipe in RECIPES.values() for give in GIVING]
    answers = scripts.evaluate(
        f"""(asked) => asked.map((one) => {{
            const book = window.book;
            const now = book.parseDay(one.today);
            const plan = book.planBack(one.data, book.parseDay(one.give), now);
            {script}
        }})""",
        _asked(),
    )
    for (recipe, give), said in zip(asked, answers, strict=True):
        yield recipe, give, said


def test_the_same_words(scripts: Page) -> None:
    script = "return [book.sumUp(plan, one.data.title), book.describeDates(plan)];"
    for recipe, give, (summed, rows) in _each(scripts, script):
        plan = plan_back(recipe, give, TODAY)
        assert summed == sum_up(plan, recipe.title)
        expected = [(row.name, row.when, row.hands_on) for row in describe_dates(plan)]
        assert [(row["name"], row["when"], row["handsOn"]) for row in rows] == expected


def test_the_same_drawing(scripts: Page) -> None:
    for width in (WIDE, NARROW):
        for recipe, give, drawn in _each(scripts, f"return book.drawTimeline(plan, {width});"):
            picture = draw_timeline(plan_back(recipe, give, TODAY), width)
            lanes = [(lane.lines, lane.x, lane.ticks, lane.dots) for lane in picture.lanes]
            assert [
                (tuple(lane["lines"]), lane["x"], tuple(lane["ticks"]), tuple(lane["dots"]))
                for lane in drawn["lanes"]
            ] == lanes, recipe.slug
            axis = [(mark.x, mark.word, mark.year) for mark in picture.axis]
            assert [(mark["x"], mark["word"], mark["year"]) for mark in drawn["axis"]] == axis
            assert (drawn["height"], drawn["giveX"]) == (picture.height, picture.give_x)


def test_the_same_calendar(scripts: Page) -> None:
    script = """const entries = book.makeEntries(one.data.slug, one.data.title, plan);
                return book.makeCalendar(one.data.title, entries, now, "https://book.example/x/");"""
    for recipe, give, text in _each(scripts, script):
        entries = make_entries(recipe.slug, recipe.title, plan_back(recipe, give, TODAY))
        ours = make_calendar(recipe.title, entries, TODAY, "https://book.example/x/").decode()
        assert text == ours, recipe.slug


def test_titles_of_every_sort_make_the_same_calendar(scripts: Page) -> None:
    """Commas, semicolons, backslashes, letters of several octets, lines of 75 and more."""
    titles = [
        "Salt, sugar; and \\ spice", "Crème brûlée de châtaignes " * 4, "a" * 74, "b" * 75,
        "c,d;" * 30, "🎄" * 30, "^^" * 50, "two  words",
    ]  # fmt: skip
    give = GIVING[0]
    recipe = RECIPES["bitter-orange-spirit"]
    shown = scripts.evaluate(
        """([data, titles, give, today]) => {
            const {parseDay, planBack, makeEntries, makeCalendar} = window.book;
            const plan = planBack(data, parseDay(give), parseDay(today));
            return titles.map((title) =>
                makeCalendar(title, makeEntries(data.slug, title, plan), parseDay(today)));
        }""",
        [timeline_data(recipe), titles, give.isoformat(), TODAY.isoformat()],
    )
    plan = plan_back(recipe, give, TODAY)
    for title, text in zip(titles, shown, strict=True):
        ours = make_calendar(title, make_entries(recipe.slug, title, plan), TODAY)
        assert text == ours.decode()


def test_the_same_answer_to_what_can_still_be_made(scripts: Page) -> None:
    named = [Named(one.slug, one.title, "", one, one.season) for one in RECIPES.values()]
    give = date(2026, 12, 25)
    for today in (date(2026, 10, 25), date(2026, 11, 25), date(2026, 12, 20)):
        said = scripts.evaluate(
            """([recipes, give, today]) => {
                const {parseDay, isoDay, stillTime, findSeason} = window.book;
                const [day, now] = [parseDay(give), parseDay(today)];
                const aside = (one) => one.fits === "late" ? null
                    : findSeason(one.recipe, one.by, day, now)?.aside ?? null;
                return stillTime(recipes, day, now)
                    .map((one) => [one.recipe.slug, one.fits, isoDay(one.by), aside(one)]);
            }""",
            [
                [timeline_data(one) for one in RECIPES.values()],
                give.isoformat(),
                today.isoformat(),
            ],
        )
        ours = still_time(named, give, today)
        assert said == [
            [one.slug, one.fits, one.start_by.isoformat(), one.season.aside if one.season else None]
            for one in ours
        ]
        assert any(one.season for one in ours) or today > date(2026, 12, 1)


def test_drawn_words_do_not_meet_in_chromium(scripts: Page) -> None:
    """Measure the words as Chromium sets them, in whatever face this machine has."""
    for width, name in ((WIDE, "wide"), (NARROW, "narrow")):
        pictures = [
            render(
                "fragments/timeline_picture.html",
                {
                    "picture": draw_timeline(plan_back(recipe, date(2027, 12, 18)), width),
                    "name": name,
                    "label": recipe.title,
                },
            )
            for recipe in RECIPES.values()
        ]
        style = (SCRIPTS.parent / "css" / "when.css").read_text(encoding="utf-8")
        scripts.evaluate(
            "([html, style]) => { document.body.innerHTML = `<style>${style}\\n.when-picture"
            "{display:block !important; font-family: sans-serif}</style>${html}`; }",
            ["".join(pictures), style],
        )
        clashes = scripts.evaluate(
            """(width) => [...document.querySelectorAll("svg")].flatMap((svg) => {
                const boxes = [...svg.querySelectorAll("text")].map((text) => text.getBBox());
                const outside = boxes.filter((box) => box.x < -1 || box.x + box.width > width + 1);
                const meeting = boxes.filter((one, i) => boxes.slice(i + 1).some((two) =>
                    one.x < two.x + two.width && two.x < one.x + one.width
                    && one.y + 2 < two.y + two.height - 2 && two.y + 2 < one.y + one.height - 2));
                return [...outside, ...meeting].map(() => svg.getAttribute("aria-label"));
            })""",
            width,
        )
        assert clashes == []


@pytest.mark.parametrize(
    ("address", "says"),
    [
        ("", "Start by"),
        ("?give=2027-06-24", "Thursday 24 June 2027"),
        ("?start=2027-02-01", "usable from Thursday 1 April 2027"),
    ],
)
def test_the_address_holds_the_day(page: Page, book_address: str, address: str, says: str) -> None:
    page.goto(f"{book_address}/r/bitter-orange-spirit/{address}")
    page.wait_for_selector("stillroom-when form:not([hidden])")
    # what works the dates out is fetched first
    expect(page.locator('[data-when="verdict"]')).to_contain_text(says)


def test_filling_the_blank_redraws_everything(page: Page, book_address: str) -> None:
    page.goto(f"{book_address}/r/bitter-orange-spirit/")
    page.wait_for_selector("stillroom-when form:not([hidden])")
    page.select_option("stillroom-when select[name=what]", "start")
    page.fill("stillroom-when input[name=day]", "2028-02-29")
    page.dispatch_event("stillroom-when input[name=day]", "change")
    assert "start=2028-02-29" in page.url
    expect(page.locator('[data-when="rows"]')).to_contain_text("Sunday 29 October 2028")
    assert "begun on Tuesday 29 February 2028" in (
        page.get_attribute("svg.when-picture--wide", "aria-label") or ""
    )
    with page.expect_download() as found:
        page.click('[data-when="calendar"]')
    calendar = vobject.readOne(Path(found.value.path()).read_text(encoding="utf-8"))
    assert calendar.vevent.dtstart.value == date(2028, 2, 29)
    page.go_back()
    page.go_back()
    assert "start=" not in page.url


@pytest.mark.parametrize(
    ("address", "says"),
    [
        ("?give=2098-12-20", "January and February. With what was stored or bought in"),
        ("?start=2098-05-01", "January and February: begun outside them"),
        ("?start=2098-02-01", ""),
    ],
    ids=["for a giving day", "begun out of season", "begun in season"],
)
def test_the_season_is_said_again(page: Page, book_address: str, address: str, says: str) -> None:
    page.goto(f"{book_address}/r/bitter-orange-spirit/{address}")
    page.wait_for_selector("stillroom-when form:not([hidden])")
    note = page.locator('[data-when="season"]')
    # the dates of the address are worked out by what is fetched first
    expect(note).to_be_visible(visible=bool(says))
    expect(note).to_contain_text(says)


def test_the_years_page_names_the_months_of_the_produce(page: Page, book_address: str) -> None:
    page.goto(f"{book_address}/year/?begin=2027-01-05&give=2027-12-18")
    page.wait_for_selector("stillroom-still-time form:not([hidden])")
    line = page.locator("stillroom-still-time li", has_text="Bitter-orange spirit").inner_text()
    assert line.endswith("(its produce: January and February, so by Sunday 28 February 2027)")


def test_what_can_still_be_made_on_the_years_page(page: Page, book_address: str) -> None:
    page.goto(f"{book_address}/year/?begin=2026-12-20&give=2026-12-25")
    page.wait_for_selector("stillroom-still-time form:not([hidden])")
    lists = page.locator("stillroom-still-time ul")
    assert "Almond shortbread" in lists.first.inner_text()
    assert "Heather mead" in lists.last.inner_text()


def test_the_year_prints_on_one_sheet(page: Page, book_address: str, tmp_path: Path) -> None:
    page.goto(f"{book_address}/year/")
    page.emulate_media(media="print")
    page.pdf(path=tmp_path / "year.pdf", format="A4", prefer_css_page_size=True)
    assert len(PdfReader(tmp_path / "year.pdf").pages) == 1
