"""Pages whose machinery calls every piece of them by a word for boxes beside, the recipe too.

In the shape of saved pages of three machineries: a main box "widget Blog" (two of the sealed
papers of 1 December 2026 were refused whole), a builder's "elementor-widget", tags of a post in its
class ("tag-cookie"). What stands beside is still left out.
"""

from __future__ import annotations

import pytest

from bringing.drafts import brought, fact, listed, steps

_RECIPE = """<h3 class="post-title">Plum jam</h3><div class="{inner}"><p>My aunt made it.</p>
<ul><li>1 kg plums</li><li>500 g sugar</li><li>1 lemon</li></ul>
<p>Boil the plums with the sugar and the juice of the lemon for ten minutes, and stir.</p>
<p>Pour the jam into hot jars, and close them at once.</p></div>"""
_BESIDE = """<div class="{beside}">
<h2>About me</h2><p>I cook 2 cups of tea a day.</p>
<ul><li><a href="/a">Apple cake with 3 eggs</a></li>
<li><a href="/b">Pear tart</a></li></ul></div>"""


@pytest.mark.parametrize(
    ("outer", "inner", "beside"),
    [
        ("widget Blog", "post-body entry-content", "widget Profile"),
        ("widget Blog", "plain", "widget PopularPosts"),
        ("elementor-element elementor-widget", "elementor-widget-container", "widget"),
        ("post type-post hentry tag-cookie", "entry-content", "sidebar"),
        ("so-panel widget widget_editor", "textwidget", "widget_recent_entries widget"),
    ],
)
def test_a_piece_with_the_recipe_is_read_and_a_box_beside_is_not(
    outer: str, inner: str, beside: str
) -> None:
    page = (
        f'<html><body><div class="{outer}">{_RECIPE.format(inner=inner)}</div>'
        f"{_BESIDE.format(beside=beside)}</body></html>"
    )
    (recipe,) = brought(page, name="jam.html")
    assert fact(recipe, "title") == "Plum jam"
    assert listed(recipe) == ["1 kg plums", "500 g sugar", "1 lemon"]
    assert len(steps(recipe)) == 2
    assert "Apple cake" not in recipe.text
    assert "tea a day" not in recipe.text


def test_comments_and_menus_stay_outside_however_long() -> None:
    long = "I made this jam with my own plums and it was lovely, thank you. " * 12
    page = (
        f'<html><body><div class="post">{_RECIPE.format(inner="entry-content")}</div>'
        f'<div class="elementor-widget comments"><p>{long}</p></div></body></html>'
    )
    (recipe,) = brought(page, name="jam.html")
    assert "my own plums" not in recipe.text
