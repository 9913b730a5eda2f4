"""The guide "Write a giving list": its example makes a pack, its table says what the rules say."""

from __future__ import annotations

import re
from pathlib import Path

import jsonschema
import pytest
import yaml

from giving.lists import ROOT, TODAY, demo_book, demo_recipes
from stillroom.core.words.data_files import read_data
from stillroom.core.words.frontmatter import read_yaml
from stillroom.giving.list_schema import giving_list_schema
from stillroom.giving.pack import Effort, work_out
from stillroom.giving.reading import read_giving_list
from stillroom.giving.second_look import find_breaches

GUIDE_FILE = "site_demo/write-a-giving-list.md"
GUIDE = (Path(__file__).parents[2] / GUIDE_FILE).read_text(encoding="utf-8")
EXAMPLE = re.findall(r"^```yaml\n(.*?)^```$", GUIDE, re.MULTILINE | re.DOTALL)[0]


def test_the_example_makes_a_pack_and_nobody_gets_what_they_must_not_have():
    read = read_giving_list(EXAMPLE, "christmas.yml")
    pack = work_out(read, demo_recipes(), demo_book().settings, TODAY, Effort(10, 0.05))
    assert find_breaches(pack.offering, pack.plan) == ()
    given = {
        pack.offering.households[number].name: [pack.offering.makes[key].recipe for key in keys]
        for number, keys in pack.plan.gifts.items()
    }
    assert "almond-shortbread" not in given["The Fennimores"]
    assert "almond-shortbread" not in given["Ysolde Marl"]
    assert "bramble-jelly" not in [*given["Ysolde Marl"], *given["Old Torquil"]]
    assert all(given.values())


def test_the_guide_says_of_every_diet_what_is_checked_and_what_that_cannot_promise():
    rows = [row for row in read_data("avoided.yml") if "means" in row]
    assert len(rows) > 12
    for row in rows:
        line = next(line for line in GUIDE.splitlines() if line.startswith(f"| `{row['word']}`"))
        for said in (row["means"], row["cannot"], row["source"]):
            assert said in line, row["word"]


def test_the_example_is_small_and_every_part_of_it_is_explained_by_a_note():
    assert len(EXAMPLE.splitlines()) < 50
    assert set(yaml.safe_load(EXAMPLE)) == {
        "giving list", "giving day", "from", "baskets", "makes", "households", "prices",
    }  # fmt: skip


@pytest.mark.parametrize(
    "name", [GUIDE_FILE, "site_demo/giving/christmas-2027.yml", "tests/giving/data/small-list.yml"]
)
def test_an_editor_takes_every_list_that_we_show(name):
    schema = giving_list_schema()
    jsonschema.Draft202012Validator.check_schema(schema)
    text = EXAMPLE if name == GUIDE_FILE else (ROOT / name).read_text(encoding="utf-8")
    found = jsonschema.Draft202012Validator(schema).iter_errors(read_yaml(text, name).data)
    assert [error.message for error in found] == []


def test_an_editor_marks_what_has_no_place():
    wrong = EXAMPLE.replace("    by post: yes", "    by pots: yes").replace(
        "giving day:", "day of:"
    )
    found = jsonschema.Draft202012Validator(giving_list_schema()).iter_errors(
        read_yaml(wrong, "x.yml").data
    )
    assert len(list(found)) >= 2
