"""What stood in the boxes of a page when it was sent: all of it, or a refusal.

Nothing is cut: what is longer than a box may hold is kept nowhere, and told so.
"""

from __future__ import annotations

from starlette.requests import Request

_SHOWN = 40


class TooLong(Exception):
    """More stands in a box than is taken; its words are a sentence for whoever typed it."""


async def boxes_sent(request: Request, fields: int, longest: int) -> dict[str, str]:
    """Return the boxes of a page by name, files left out; raises TooLong for one too long."""
    async with request.form(max_files=0, max_fields=fields) as data:
        return within({name: one for name, one in data.items() if isinstance(one, str)}, longest)


def within(sent: dict[str, str], longest: int) -> dict[str, str]:
    """Return boxes as they are; raises TooLong where one holds more letters than `longest`."""
    for value in sent.values():
        if len(value) > longest:
            begins = " ".join(value[:_SHOWN].split())
            raise TooLong(
                f"What begins “{begins} …” has {len(value)} letters, and {longest} are the most "
                "there. Nothing was kept: go back, and make it shorter."
            )
    return sent
