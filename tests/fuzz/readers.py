"""Every way in: what a cook's text goes through, and what may come of it.

Each reader takes a text. It may raise ProblemsFound or Unreadable, whose messages are looked at by
`fault_of`; anything else that it raises is a fault. What was read must be there in full: a line
that is neither read nor told of is a silent loss, the worst of all.
"""

from __future__ import annotations

import re
import tempfile
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cache
from pathlib import Path
from typing import Final

import yaml
from markupsafe import escape

from giving.lists import PRICES, ROOT, demo_book, demo_recipes, small_list
from stillroom.bringing.papers import bring
from stillroom.core.amounts.money import parse_money
from stillroom.core.amounts.packs import parse_pack
from stillroom.core.amounts.quantities import show_amount
from stillroom.core.batch.cutting import read_cut, read_pods
from stillroom.core.book import open_book
from stillroom.core.care.safety import check_safety
from stillroom.core.larder.own import read_own_larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.private.words import list_private_words
from stillroom.core.reading.dividing import divide
from stillroom.core.reading.loading import read_recipe
from stillroom.core.reading.markup import check_markup
from stillroom.core.recipe.holders import read_container, read_makes, read_vessel
from stillroom.core.recipe.keeps import read_keeping
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.finished import facts_of_batch
from stillroom.core.size.scale_words import scaling_document
from stillroom.core.size.scaling import scale_recipe
from stillroom.core.size.targets import read_target
from stillroom.core.when.giving_days import find_day
from stillroom.core.when.spans import parse_span
from stillroom.core.when.stages import parse_stage
from stillroom.core.when.timeline import plan_back
from stillroom.core.when.timeline_words import timeline_document
from stillroom.core.words.nearest import nearest
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable
from stillroom.core.words.text_files import clean
from stillroom.giving.against_whole import check_whole
from stillroom.giving.log_file import read_log
from stillroom.giving.names import with_names_of
from stillroom.giving.pack import Effort, pack_files, work_out
from stillroom.giving.reading import read_giving_list
from stillroom.publish.library import Library
from stillroom.publish.recipe_page import RecipeLeaf

TODAY: Final = date(2026, 11, 25)
LONGEST_SECONDS: Final = 3.0
"""What went back over a text took minutes; a machine that does other things too is slow as well."""
# what a message must never speak of: the tools' own words
_TOOLS_WORDS: Final = re.compile(
    r"Traceback|\bNone\b|NoneType|Fraction\(|\bdict\b|\btuple\b|\bregex\b|pydantic|yaml"
    r"|front matter|\bvalidation\b|should be a valid|Input should|Value error|<class|object at 0x"
    r"|\bstr\b|\bint\b"
)
_TELLING: Final = re.compile(r"[^\W\d_]{3,}")


@dataclass(frozen=True)
class Reader:
    """A way in: its texts that are right, and what takes such a text."""

    name: str
    seeds: tuple[str, ...]
    take: Callable[[str], None]
    edits: int = 4
    seconds: float = LONGEST_SECONDS
    of_files: bool = False
    """Whether it reads whole files, whose every message has file and line."""


def fault_of(reader: Reader, text: str) -> str:
    """Return what is wrong with how a text was taken, or "" when it was read or told of."""
    fault, seconds = _tried(reader, text)
    for _ in range(2):  # a machine may pause once; what is slow is slow again
        if not fault and seconds > reader.seconds:
            fault, seconds = _tried(reader, text)
    return fault or (f"took {seconds:.1f} s" if seconds > reader.seconds else "")


def _tried(reader: Reader, text: str) -> tuple[str, float]:
    begun = time.process_time()
    fault = ""
    try:
        reader.take(text)
    except ProblemsFound as found:
        fault = _fault_of_messages([str(problem) for problem in found.problems], text)
        if any(problem.line < 1 or not problem.file for problem in found.problems):
            fault = fault or "a message without its file and line"
    except Unreadable as wrong:
        fault = _fault_of_messages([str(wrong)], text)
        if reader.of_files and not fault:
            fault = f"told without its file and line: {wrong}"
    except Exception as error:
        at = error.__traceback__
        while at and at.tb_next:
            at = at.tb_next
        where = f"{at.tb_frame.f_code.co_filename}:{at.tb_lineno}" if at else ""
        fault = f"{type(error).__name__}: {str(error)[:200]} at {where}"
    return fault, time.process_time() - begun


def _fault_of_messages(messages: Sequence[str], text: str) -> str:
    if not messages:
        return "refused without a word"
    for message in messages:
        found = _TOOLS_WORDS.search(message)
        if found and found[0] not in text:
            return f"the message speaks of {found[0]!r}: {message[:200]}"
        if len(message) > 1_000 or "\n" in message:
            return f"the message is longer than a line: {message[:200]}"
    return ""


def lost_words(text: str, recipe: Recipe) -> set[str]:
    """Return the words below the facts of a recipe file that nothing of the recipe holds."""
    lines = divide(clean(text, "a.md"), "a.md").body
    body = " ".join(line for line in lines if not _is_head_of_part(line))
    kept = [recipe.intro, *(step.text for step in recipe.method)]
    kept += [step.group for step in recipe.method]
    kept += [word for section in recipe.sections for word in (section.heading, section.text)]
    kept += [word for one in recipe.ingredients for word in (one.item, one.note)]
    kept += [show_amount(one.amount) for one in recipe.ingredients]
    there = set(_TELLING.findall(" ".join(kept)))
    return set(_TELLING.findall(body)) - there


def _is_head_of_part(line: str) -> bool:
    """Whether a line is the heading of the method or the list, slips and all: it is read as one."""
    words = _TELLING.findall(line.lower())
    return len(words) <= 2 and any(nearest(word, ("method", "ingredients")) for word in words)


def take_recipe(text: str) -> None:
    """Read a recipe; all that stands below its facts must be in it."""
    recipe = read_recipe.__wrapped__(text, "a.md", "a-thing")
    if lost := lost_words(text, recipe):
        raise AssertionError(f"lost in silence: {sorted(lost)[:5]}")
    path = _scratch() / "a.md"
    path.write_bytes(text.encode("utf-8", "surrogatepass"))
    if told := tuple(check_markup(recipe, path)):
        raise ProblemsFound(told)


def take_page(text: str) -> None:
    """Read a recipe, then make all of it that is ever shown: its page, what the commands say."""
    recipe = read_recipe.__wrapped__(text, "a.md", "a-thing")
    book = demo_book()
    if told := check_safety(recipe, book.settings):
        raise ProblemsFound(told)
    leaf = RecipeLeaf(recipe)
    library = Library(book, (recipe,), TODAY)
    html = leaf.body(library, "", lambda uri: uri, "")
    assert "<script>alert" not in html
    leaf.head(library, "")
    for times in ("1/3", "7"):
        batch = scale_recipe(recipe, read_target({"times": times}, recipe.system))
        scaling_document(batch, recipe, "GB")
        facts_of_batch(recipe, batch)
    timeline_document(plan_back(recipe, date(2027, 12, 18), TODAY), None)


def take_line(text: str) -> None:
    """Read an ingredient line; what it says of amount and food must come back out."""
    for system, language in (("metric", "en_GB"), ("us", "en_US"), ("metric", "de_DE")):
        read_ingredient(text, system, language)  # type: ignore[arg-type]


def take_list(text: str) -> None:
    """Read a giving list against the demo book, and the private words the wall looks for."""
    list(list_private_words(text.encode("utf-8", "surrogatepass"), "list.yml"))
    read = read_giving_list(text, "list.yml")
    recipes = {recipe.slug: recipe for recipe in demo_recipes()}
    check_whole(with_names_of(read, recipes), recipes, "GB")


def take_plan(text: str) -> None:
    """Plan a giving list and make its whole pack; every household of it is in the plan."""
    read = read_giving_list(text, "list.yml")
    pack = work_out(read, demo_recipes(), demo_book().settings, TODAY, Effort(0.5, 0.05))
    made = pack_files(pack)
    told = made["plan.html"].decode()
    assert all(escape(household.name) in told for household in read.giving.households)


def take_larder(text: str) -> None:
    """Read a book's own larder; every food named is one that is known afterwards."""
    own = read_own_larder(text, "larder.yml")
    named = {line.partition(":")[0] for line in text.split("\n") if re.match(r"\w[^:]*:\s*$", line)}
    assert len(own.larder.own) >= len(named) - 1


def take_log(text: str) -> None:
    """Read the log of a season; every line of it is a line read, or one told of."""
    read_log(text, "log.yml")


def take_import(text: str) -> None:
    """Bring in what somebody saved, whatever sort of file it says it is."""
    name, _, words = text.partition("~")
    name = name if name in ("txt", "html", "md") else "txt"  # the ending is not what is read
    brought = bring(f"a.{name}", words.encode("utf-8", "surrogatepass"), demo_book().settings)
    if brought.problems:
        raise ProblemsFound(
            [Problem(f"a.{name}", one.line, one.what, one.mend) for one in brought.problems]
        )


@cache
def _scratch() -> Path:
    folder = Path(tempfile.mkdtemp(prefix="stillroom-fuzz-"))
    (folder / "docs").mkdir()
    return folder


def take_settings(text: str) -> None:
    """Open a book by its settings."""
    path = _scratch() / "mkdocs.yml"
    path.write_bytes(text.encode("utf-8", "surrogatepass"))
    open_book(path)


def take_target(text: str) -> None:
    """Take what a reader types, or a link carries, for a recipe's size."""
    name, _, asked = text.partition("=")
    if name not in ("times", "makes", "fill", "have", "vessel"):
        return  # the names are the command's own
    for recipe in _sized():
        try:
            batch = scale_recipe(recipe, read_target({name: asked}, recipe.system))
        except Unreadable as wrong:
            if fault := _fault_of_messages([str(wrong)], text):
                raise AssertionError(fault) from None
        else:
            scaling_document(batch, recipe, "GB")


@cache
def _sized() -> tuple[Recipe, ...]:
    wanted = ("quince-ratafia", "almond-shortbread", "bramble-jelly", "felted-bauble")
    return tuple(recipe for recipe in demo_recipes() if recipe.slug in wanted)


_SMALL: Final[dict[str, tuple[Callable[[str], object], tuple[str, ...]]]] = {
    "span": (parse_span, ("2 weeks", "3-4 months", "an hour or two", "1½ years", "40 minutes")),
    "stage": (
        lambda text: parse_stage(*f"{text}: ".split(": ")[:2]),
        ("shake: every 3 days for 2 weeks", "rest: 6 weeks, in the dark", "usable from: 2 months"),
    ),
    "keeps": (read_keeping, ("3 years unopened, 1 year once opened", "2 weeks in the fridge")),
    "day": (
        lambda text: find_day(text, TODAY, "GB"),
        ("the Saturday before Christmas", "24 June", "2027-12-18", "2 weeks before Easter",
         "the third Sunday in June", "the first Monday after 1 May", "Diwali"),
    ),
    "money": (parse_money, ("14.50", "£3", "1,500")),
    "pack": (
        lambda text: parse_pack(text, "GBP"),
        ("700 ml for 14.50", "50 or more for 0.48 each", "12 for 3"),
    ),
    "container": (
        lambda text: read_container(text, "metric"),
        ("bottle, 100 ml", "jar, 200 ml to the brim"),
    ),
    "makes": (
        lambda text: read_makes(text, "metric"), ("900 ml", "36 biscuits", "6 jars of 200 ml")
    ),
    "vessel": (lambda text: read_vessel(text, "metric"), ("1.5 l clip-top jar", "24 cm round tin")),
    "cut": (
        lambda text: read_cut(*[*text.split("|"), "40%", ""][:3]),
        ("500 ml at 96%|40%|50%", "1 l at 60% vol|30%|"),
    ),
    "pods": (
        lambda text: read_pods(*[*text.split("|"), ""][:2]), ("150 g in 700 ml at 40%|33%",)
    ),
}  # fmt: skip


def take_small(text: str) -> None:
    """Read one of the small things that a cook writes or types; its sort is the first word."""
    name, _, words = text.partition("~")
    if name in _SMALL:
        _SMALL[name][0](words)


def _cases() -> tuple[str, ...]:
    """Return the recipes of the demo book, which all must be read whole."""
    return tuple(path.read_text("utf-8") for path in sorted((ROOT / "recipes").glob("*.md")))


def _lines() -> tuple[str, ...]:
    rows = (ROOT / "tests" / "data" / "lines.tsv").read_text("utf-8").split("\n")[1:]
    return tuple(row.split("\t")[0] for row in rows if row)


LARDERS: Final = (
    "elder vinegar:\n  parts: [cider vinegar, elderflower]\n  acidity: acid\n"
    "  density: 1 cup weighs 240 g\n  source: its label\n",
    "nut butter:\n  also: [almond paste, spread]\n  is: almonds\n  contains: nuts\n"
    '  may contain: milk, soya\n  price: ["1 kg for 8", 300 g for 3]\n',
    "moon sugar:\n  from: plant\n  contains: nothing\n  one weighs: 5 g\n  source: a scale\n"
    "  note: sweet\n\nrum of ours:\n  is: rum\n  strength: 54% vol\n  source: the bottle\n",
)
LOGS: Final = (
    "# our year\ngiving log:\n"
    "  - {day: 2027-06-03, begun: quince-ratafia}\n"
    "  - {day: 2027-07-03, begun: bramble-jelly}\n",
    "giving log:\n"
    + "".join(f"  - {{day: 2027-07-0{day}, begun: rosemary-salt}}\n" for day in range(1, 9)),
)
SAVED: Final = (
    "txt~Quince drops\n\nMakes 900 ml\n\nIngredients\n1 l vodka\n3 quinces, about 600 g\n\nMethod\n"
    "1. Put all of it into the jar.\n2. Wait for 6 weeks, then strain.\n",
    "html~<html><head><title>Quince drops</title><script type='application/ld+json'>"
    '{"@type": "Recipe", "name": "Quince drops", "recipeIngredient": ["1 l vodka", "3 quinces"], '
    '"recipeInstructions": "Put it into a jar. Wait."}</script></head>'
    "<body><h1>Quince drops</h1></body></html>",
    "md~# Quince drops\n\n## Ingredients\n\n- 1 l vodka\n- 3 quinces\n\n## Method\n\n1. Wait.\n",
)
TARGETS: Final = (
    "times=3", "times=1/2", "times=1½", "makes=200 ml", "makes=36 biscuits", "makes=1.5 kg",
    "fill=12 x 50 ml + 6 x 100 ml", "fill=6 jars of 200 ml to the brim", "have=17 cinnamon stick",
    "have=1 kg quinces + 700 ml vodka", "vessel=1.5 l", "vessel=24 cm round", "makes=2 cups",
)  # fmt: skip


@cache
def readers() -> dict[str, Reader]:
    """Return every way in, by its name."""
    giving = (ROOT / "site_demo" / "giving" / "christmas-2027.yml").read_text("utf-8")
    settings = (ROOT / "mkdocs.yml").read_text("utf-8")
    few = yaml.safe_dump(
        {"site_name": "A book", "theme": {"name": "material"}, "plugins": [{"stillroom": {
            "country": "NO", "altitude_m": 300, "units": "us", "language": "de_DE",
            "currency": "NOK",
            "giving_days": [{"name": "Yule", "day": "the Saturday before Christmas"}]}}]}
    )  # fmt: skip
    planned = yaml.safe_dump(small_list(prices=PRICES), sort_keys=False)
    small = tuple(f"{name}~{seed}" for name, (_, seeds) in _SMALL.items() for seed in seeds)
    return {
        reader.name: reader
        for reader in (
            Reader("recipe", _cases(), take_recipe, of_files=True),
            Reader("page", _cases(), take_page, edits=2, of_files=True),
            Reader("line", _lines(), take_line, edits=3),
            Reader("list", (giving, planned), take_list, of_files=True),
            Reader("plan", (planned,), take_plan, edits=1, of_files=True, seconds=6),
            Reader("larder", LARDERS, take_larder, of_files=True),
            Reader("log", LOGS, take_log, of_files=True),
            Reader("import", SAVED, take_import),
            Reader("settings", (settings, few), take_settings, of_files=True),
            Reader("target", TARGETS, take_target, edits=2),
            Reader("small", small, take_small, edits=3),
        )
    }
