"""How far a recipe is, in the sentence that stands beside the button that keeps it."""

from __future__ import annotations

from stillroom.core.unknown_foods import unknown_foods
from stillroom.core.words.plurals import counted
from stillroom.desk.looking import Look


def how_far(look: Look, waiting: int) -> str:
    """Return how far a recipe is; `waiting` questions about it are not answered."""
    asked = f"{counted(waiting, 'question')} from when it was brought in"
    if look.recipe is None or not look.is_right:
        more = f", and {asked} to answer" if waiting else ""
        return f"{counted(len(look.wrong), 'thing')} to mend before it can be published{more}."
    unknown = len(unknown_foods([look.recipe]))
    reads = "It reads well"
    if unknown:
        things = f"{counted(unknown, 'thing')} in it {'is' if unknown == 1 else 'are'} not known"
        reads = f"It can be published, and its page will say that {things}"
    if waiting:
        return f"{reads}. {asked} {'is' if waiting == 1 else 'are'} still to be answered."
    return f"{reads}." if unknown else f"{reads}, and can be published."
