"""The page "Send us a recipe": the desk's own questions, for those who have no desk.

It is saved as a file by whoever writes, and is sent by them as they send things: no form of the
book sends anything. Its script is one plain file, so that the page works from a disk as well.
Leaves out what the script does: assets/js/elements/send-form.js.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, Final

from markupsafe import Markup

from stillroom.beginning.questions import Part, parts
from stillroom.core.recipe.kinds import all_kinds
from stillroom.core.when.stages import stage_words
from stillroom.publish.library import Library, Link
from stillroom.publish.one_script import one_script
from stillroom.publish.scripts import list_sources
from stillroom.publish.templating import render

SEND: Final = "send.md"
ALONE: Final = "js/elements/send-alone.js"
SENDING: Final = "js/send.js"
"""The page's own script below the folder of our files, gathered from several."""
_NOT_SENT: Final = ("picture", "picture_alt", "picture_focus")
"""A text holds no picture: it is sent beside the file."""
_MEASURES: Final = {
    "metric": "Spoons are of 5 and 15 ml, a cup 250 ml, a pint the imperial one.",
    "us": "Cups, spoons and pints are the American ones.",
    "imperial": "Cups, spoons and pints are the imperial ones.",
}


def sent_parts() -> tuple[Part, ...]:
    """Return what is asked there: all that the desk asks, but for the pictures."""
    return tuple(
        replace(
            part,
            heading=part.sent or part.heading,
            asked=tuple(one for one in part.asked if one.box not in _NOT_SENT),
        )
        for part in parts()
    )


def sending_script() -> str:
    """Return the page's script with all that it needs, as one plain script."""
    return one_script(list_sources(), ALONE, {})


@dataclass(frozen=True)
class SendLeaf:
    """The page on which anybody writes a recipe for the book."""

    src_uri: str = SEND
    in_nav: bool = False

    def head(self, library: Library, url: str) -> Mapping[str, Any]:
        """Return the page's title and description."""
        return {
            "title": "Send us a recipe",
            "description": "Write a recipe for this book, and save it as a file to send.",
        }

    def body(self, library: Library, prose: str, link: Link, url: str) -> str:
        """Return the form, and what to do where no script runs."""
        return render(
            "pages/send.html",
            {
                "prose": Markup(prose),
                "parts": sent_parts(),
                "kinds": sorted(kind.spoken for kind in all_kinds().values()),
                "stages": sorted(stage_words()),
                "measures": _MEASURES[library.settings.units],
                "script": link(f"assets/stillroom/{SENDING}"),
                "language": library.settings.language.split("_")[0],
            },
        )
