"""A form that is sent twice does its work once: a double click, Enter twice, a page loaded again.

Every page bears a mark of its own visit, and its forms send it along. What is sent once more with
the same mark and the same words is no second wish: it waits for what the first comes to, and is
answered alike. Another mark or another word is. What bears no mark is done each time.
"""

from __future__ import annotations

import asyncio
import re
import time
from collections.abc import Awaitable, Callable
from dataclasses import dataclass, field
from typing import Final

from starlette.requests import Request
from starlette.responses import Response

from stillroom.desk.keeping import sum_of

MADE_ANEW: Final = ("/paper", "/publish", "/giving/plan")
"""What is worked out from files that may have changed since: pressed later, it is meant anew."""
SECONDS: Final = 2.0
"""Within which a press on one of those is the same press still."""
_MARK: Final = re.compile(rb'(?:^|&)visit=[0-9a-f]{16}(?:&|$)|name="visit"\r\n\r\n[0-9a-f]{16}\r\n')
_BOUNDARY: Final = re.compile(r'boundary="?([^";]+)')


@dataclass
class _Sent:
    """What came last to an address: its sum, what comes of it, and when that was there."""

    sum: str
    answer: asyncio.Future[Response]
    ended: float = 0.0

    def holds(self, way: str) -> bool:
        """Whether the same again is the same press."""
        if way not in MADE_ANEW or not self.answer.done():
            return True
        return time.monotonic() - self.ended < SECONDS


@dataclass
class Once:
    """What each address of a desk was sent last; it is forgotten when the desk is closed."""

    _last: dict[str, _Sent] = field(default_factory=dict)

    async def answer(self, request: Request, work: Callable[[], Awaitable[Response]]) -> Response:
        """Do what a form asks, or return what came of it where that very form was sent before."""
        body, way = await request.body(), request.url.path
        if not _MARK.search(body):
            return await work()
        sent_sum = sum_of(_without_boundary(body, request.headers.get("content-type", "")))
        last = self._last.get(way)
        if last is None or last.sum != sent_sum or not last.holds(way):
            last = self._last[way] = _Sent(sent_sum, asyncio.ensure_future(work()))
            last.answer.add_done_callback(lambda _: _end(last))
        try:
            # whoever pressed twice let go of the first answer: the work goes on for the second
            return await asyncio.shield(last.answer)
        except Exception:
            self._last.pop(way, None)  # nothing came of it: it may be tried again
            raise


def _end(sent: _Sent) -> None:
    sent.ended = time.monotonic()


def _without_boundary(body: bytes, kind: str) -> bytes:
    """Return what was sent without the line between its parts, which a browser makes up anew."""
    found = _BOUNDARY.search(kind)
    return body.replace(found[1].encode("latin-1"), b"") if found else body
