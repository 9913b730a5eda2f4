"""What somebody meets who writes a list for the first time: each mistake told so that it helps."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from giving.lists import demo_recipes, read_dict, small_list, write_somebody
from stillroom.beginning.book import Answers, begin_book
from stillroom.cli import main
from stillroom.core.allergens.sentences import read_avoided
from stillroom.core.unknown_foods import UnknownFood
from stillroom.core.words.frontmatter import read_yaml
from stillroom.core.words.problems import ProblemsFound, Unreadable
from stillroom.giving.against_book import check_list
from stillroom.giving.names import with_names_of
from stillroom.giving.starter.answers import read_needs

BY_NAME = {recipe.slug: recipe for recipe in demo_recipes()}


def told(**changes: object) -> list[str]:
    try:
        read = read_dict(small_list(**changes))
        check_list(with_names_of(read, BY_NAME), BY_NAME)
    except ProblemsFound as found:
        return [f"{one.what} {one.mend}" for one in found.problems]
    return []


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("Tom is coeliac", ("coeliac",)),
        ("Tom is celiac", ("coeliac",)),
        ("she hates ginger", ("ginger",)),
        ("hates ginger", ("ginger",)),
        ("Auntie Jo can't stand coconut", ("coconut",)),
        ("Wren does not like mustard", ("mustard",)),
        ("Tom is vegan and Ann dislikes ginger", ("animal products", "ginger")),
        ("doesn't drink", ("alcohol",)),
    ],
)
def test_a_sentence_about_somebody_is_read_as_what_they_avoid(said, meant):
    found = [read_avoided(word) for word in read_needs(said).avoid]
    assert tuple(one.meant for one in found if one) == meant


@pytest.mark.parametrize("said", ["Tom is glutten", "Tom is tall", "Tom hates Mondays"])
def test_what_is_not_known_is_refused_in_words_that_fit_a_question(said):
    with pytest.raises(Unreadable) as refused:
        read_needs(said)
    assert "avoid ingredients" not in str(refused.value)


def test_a_recipe_misspelt_is_named_and_a_liking_is_a_food_or_a_recipe():
    makes = [{"recipe": "quince chutneyy"}, {"recipe": "Rosmary salt"}, {"recipe": "bramble-jelly"}]
    text = " ".join(told(makes=makes))
    assert 'Did you mean "quince-chutney"?' in text
    assert 'Did you mean "rosemary-salt"?' in text
    household = {"name": "Ysolde Fennimore", "basket": "small"}
    liked = told(households=[{**household, "likes": ["quince"]}])
    assert liked == []
    makes = [{"recipe": "bramble-jelly"}]
    (one,) = told(makes=makes, households=[{**household, "likes": ["chocolate"]}])
    assert "recipe of the book" not in one
    assert 'Name a recipe that stands under "makes", or a food that one of them holds.' in one


def test_a_place_is_said_by_its_name():
    (one,) = told(households=[{"name": "The Okafors", "basket": "small", "delivery": "maybe"}])
    assert one.startswith('"The Okafors, delivery": ')


@pytest.mark.parametrize(
    ("text", "line", "words"),
    [
        ("a: b\n\tc: d\n", 2, "There is a tab in this line. Write blanks in its place."),
        ("a:\n\t- b\n", 2, "There is a tab in this line. Write blanks in its place."),
        ('x: y\nname: "Auntie "the best" Jo\'s"\n', 2, "Quotes stand within quotes in this line."),
        ("x: 'it's here'\n", 1, "Quotes stand within quotes in this line."),
        ("a:\n  - b\n c: d\n", 3, "This line does not stand in line with those above it."),
        ("a: @b\n", 1, "This line begins with a sign that it may not begin with."),
    ],
)
def test_a_slip_of_the_keys_is_told_as_what_it_is(text, line, words):
    with pytest.raises(ProblemsFound) as found:
        read_yaml(text, "l.yml")
    (one,) = found.value.problems
    assert one.line == line
    assert f"{one.what} {one.mend}".startswith(words)


@pytest.mark.parametrize("words", [["check"], ["pack", "giving/giving-list.yml"],
                                   ["check", "giving/giving-list.yml"]])  # fmt: skip
def test_a_recipes_mistake_hides_none_of_the_list(words, tmp_path: Path, monkeypatch):
    begin_book(tmp_path / "ours", Answers("Ours"))
    monkeypatch.chdir(tmp_path / "ours")
    write_somebody(Path("giving/giving-list.yml"))
    recipe = next(Path("recipes").glob("*.md"))
    whole = recipe.read_text(encoding="utf-8")
    recipe.write_text(whole.replace("kind:", "kiind:"), encoding="utf-8")
    path = Path("giving/giving-list.yml")
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("avoid: nuts", "avoid: nutts"), encoding="utf-8")
    assert "nutts" in path.read_text(encoding="utf-8")
    both = CliRunner().invoke(main, words)
    assert both.exit_code == 1
    assert "kiind" in both.output
    assert '"nutts" is nothing that can be avoided.' in both.output
    assert "could not be looked at because of this" in both.output
    assert "is not a recipe of the book" not in both.output
    path.write_text(text, encoding="utf-8")
    one = CliRunner().invoke(main, words)
    assert "giving-list.yml:" not in one.output
    assert "could not be looked at because of this" in one.output


@pytest.mark.parametrize(
    ("words", "together"),
    [
        ("butter 200g sugar", True),
        ("moon dust 2 tbsp salt", True),
        ("vitamin b12 moon dust", False),
        ("moon dust", False),
        ("200 g moon dust", False),
    ],
)
def test_two_lines_that_ran_together_are_told(words, together):
    said = UnknownFood(words, (("a.md", 3),), (), True).say()
    assert ("Two lines seem to run together here" in said) is together


CALLED_SMALL = [
    ("Ann", "ann is coeliac", "gluten"),
    ("Ann", "ann's coeliac", "gluten"),
    ("Ann", "ann can't have nuts", "nuts"),
    ("Ann", "ann isst kein Schwein", "pork"),
    ("Ann and Will", "will is allergic to milk", "milk"),
    ("Wren Tallow", "wren can't eat milk", "milk"),
    ("Mrs Finch", "mrs finch is vegan", "vegan"),
    ("The Rowans", "the rowans are vegan", "vegan"),
    # what is a food's name as well stays what it may be, and nothing of it is lost
    ("Rosemary", "rosemary, nuts", "rosemary"),
    ("Basil", "no basil", "basil"),
    ("Olive", "olive and nuts", "olive"),
]


@pytest.mark.parametrize(("name", "need", "avoided"), CALLED_SMALL)
def test_somebody_is_known_by_a_name_written_small(name: str, need: str, avoided: str) -> None:
    household = {"name": name, "basket": "small", "avoid": need}
    assert told(households=[household]) == []
    read = read_dict(small_list(households=[household]))
    as_written = {"name": name, "basket": "small", "avoid": need.replace("ann", "Ann")}
    other = read_dict(small_list(households=[as_written]))
    assert [read_avoided(one) for one in read.giving.households[0].avoid] == [
        read_avoided(one) for one in other.giving.households[0].avoid
    ]
    if avoided in ("rosemary", "basil", "olive"):
        assert avoided in " ".join(read.giving.households[0].avoid)


def test_somebody_of_no_such_name_is_asked_about() -> None:
    for name in ("Ann", "The Marrables"):
        row = {"name": name, "basket": "small", "avoid": "bob is coeliac"}
        assert "nothing that can be avoided" in " ".join(told(households=[row]))
