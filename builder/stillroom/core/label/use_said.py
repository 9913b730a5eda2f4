"""What is done with it by whoever is given it, where only the method says so: "Attach a tag: ...".

Leaves out what a maker writes under "card: use", which goes before it.
"""

from __future__ import annotations

from stillroom.core.method.tag_words import before_and_on_the_tag
from stillroom.core.recipe.model import Recipe

_QUOTES = "\"'“”‘’„«»* "


def use_of_method(recipe: Recipe) -> str:
    """Return what the method's own words for its tag say of the use, "" where there are none.

    What stands in braces is an amount that grows with the batch, and a tag says one for all.
    """
    for step in recipe.method:
        said = before_and_on_the_tag(step.text)[1].strip(_QUOTES)
        if said and "{" not in said:
            return said[0].upper() + said[1:]
    return ""
