"""What is seen only once a recipe is read whole, and heads below one of variations."""

import pytest

from stillroom.bringing.makes_said import makes_of
from stillroom.bringing.papers import bring
from stillroom.core.recipe.settings import BookSettings

_LIST = "Ingredients\n\n- 500 g sugar\n- 500 g plums\n\n## Method\n\n"


def _brought(text: str) -> tuple[str, ...]:
    """Return the drafts of a paper in Markdown."""
    found = bring("plum-jam.md", text.encode(), BookSettings())
    return tuple(one.text for one in found.recipes)


def test_numbered_heads_part_the_steps() -> None:
    """Steps that end in a colon and only name what is done below them are heads."""
    steps = (
        "1. Make the jam:\n   - Boil the plums.\n   - Add the sugar.\n"
        "2. Fill it:\n   - Fill the jars.\n"
    )
    (draft,) = _brought(f"# Plum jam\n\n## {_LIST}{steps}")
    assert "### Make the jam" in draft
    assert "### Fill it" in draft


def test_lesser_heads_below_variations_are_no_recipes() -> None:
    """Each is another way: a note, and what somebody avoids in it is asked about."""
    ways = (
        "## Variations\n\n### Plum jam with nuts\n\n- Stir in a handful of chopped walnuts.\n\n"
        "### Plum jam with rum\n\n- Stir in a splash of rum before you fill the jars.\n"
    )
    drafts = _brought(f"# Plum jam\n\n## {_LIST}1. Boil it all.\n2. Fill the jars.\n\n{ways}")
    assert len(drafts) == 1
    assert '"Variations" heads it' in drafts[0]
    assert "- Stir" not in drafts[0].split("## Method")[0]


def test_a_sum_of_the_parts_is_asked_about() -> None:
    """All would stand in the list twice."""
    listed = (
        "### Total\n\n- 300 g flour\n\n### Dough\n\n- 200 g flour\n\n### Crumble\n\n- 100 g flour\n"
    )
    (draft,) = _brought(f"# Plum cake\n\n## Ingredients\n\n{listed}\n## Method\n\n1. Bake it.\n")
    assert "all is in it twice" in draft


@pytest.mark.parametrize(
    ("line", "made"),
    [
        ("Makes about 8 jars (see page 135)", "about 8 jars"),
        ("Voor 1 taart van ong. 25 cm", "1 taart van ong. 25 cm"),
        ("Af opskriften bliver der ca. 30 småkager.", "ca. 30 småkager"),
        ("Porcja wystarcza na 40 pierników.", "40 pierników"),
        ("Rende cerca de 30 biscoitos.", "cerca de 30 biscoitos"),
        ("Det bliver godt.", ""),
    ],
)
def test_how_much_is_made(line: str, made: str) -> None:
    """A leaf that is led to is no part of it, a stop in "ca." ends nothing."""
    assert makes_of(line) == made
