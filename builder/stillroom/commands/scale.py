"""`stillroom scale`: a recipe at another size.

Exit 0 when answered, 1 when the recipe has problems, 2 for wrong usage.
"""

from __future__ import annotations

import json
from pathlib import Path
from urllib.parse import urlencode

import click

from stillroom.commands.terminal import read_one, told_plainly
from stillroom.commands.typed_words import RECIPE
from stillroom.core.amounts.units import System
from stillroom.core.book import Book
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scale_words import scaling_document, scaling_table
from stillroom.core.size.scaling import By, Measures, scale_recipe
from stillroom.core.size.targets import read_target
from stillroom.core.words.problems import Unreadable


@click.command()
@click.argument("file", type=RECIPE)
@click.option("--times", metavar="NUMBER", help='So many times as written: "3", "1/2", "1½".')
@click.option("--makes", metavar="AMOUNT", help='What it is to make: "200 ml", "36 biscuits".')
@click.option("--fill", metavar="CONTAINERS", help='What to fill: "12 x 50 ml + 6 x 100 ml".')
@click.option("--have", metavar="AMOUNTS", help='What is on hand: "17 cinnamon stick".')
@click.option("--vessel", metavar="SIZE", help='A vessel or a tin: "1.5 l", "24 cm round".')
@click.option("--units", type=click.Choice(["metric", "us", "imperial"]), help="To measure in.")
@click.option(
    "--by",
    type=click.Choice(["written", "weight", "volume"]),
    default="written",
    help="How to measure.",
)
@click.option("--link", is_flag=True, help="The address of its page with this chosen, to send.")
@click.option("--json", "as_json", is_flag=True, help="For another program to read (JSON).")
@told_plainly
def scale(
    file: Path, units: System | None, by: By, link: bool, as_json: bool, **asked: str | None
) -> None:
    """Scale a recipe to what it makes, what it fills or what is on hand."""
    recipe, book = read_one(file)
    country = book.settings.country
    try:
        target = read_target(asked, units or recipe.system)
        batch = scale_recipe(recipe, target, Measures(units or recipe.system, by))
    except Unreadable as error:
        raise click.UsageError(str(error)) from None
    if link:
        chosen = {**asked, "units": units, "by": by if by != "written" else None}
        click.echo(_address(recipe, book, {name: said for name, said in chosen.items() if said}))
    elif as_json:
        click.echo(
            json.dumps(scaling_document(batch, recipe, country), indent=2, ensure_ascii=False)
        )
    else:
        click.echo(scaling_table(batch, recipe, country))


def _address(recipe: Recipe, book: Book, chosen: dict[str, str]) -> str:
    """Return the address of a page on which this is chosen, as the page itself writes it."""
    site = book.settings.site_url.rstrip("/")
    if not site:
        raise click.UsageError('The book has no address yet: write "site_url:" in mkdocs.yml.')
    query = f"?{urlencode(chosen)}" if chosen else ""
    return f"{site}/r/{recipe.slug}/{query}"
