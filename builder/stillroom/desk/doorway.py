"""Who may come in: this computer's own browser, with the key, from the desk's own pages.

A page of another site that is open in the same browser can send requests here as well. It knows
neither the key nor the cookie, may not name another host for this address, and no form of its own
is taken. Each answer says that nothing from elsewhere may be loaded or may show it.
"""

from __future__ import annotations

import secrets
from dataclasses import dataclass, field
from http.cookies import CookieError, SimpleCookie
from typing import Final
from urllib.parse import parse_qs

from starlette.responses import PlainTextResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

MOST_BYTES: Final = 2_000_000
"""What a page of the desk sends; a recipe is a hundredth of it."""
MOST_UPLOADED: Final = 80_000_000
MOST_HEARD: Final = 2_000_000_000
"""So much is heard out before it is refused; whoever sends more is cut off."""
UPLOADS: Final = ("/bring", "/picture/")
"""The addresses to which files are sent."""
_SAFE: Final = ("GET", "HEAD")
_HOSTS: Final = ("127.0.0.1", "localhost")
POLICY: Final = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
    "font-src 'self'; connect-src 'self'; frame-src 'self'; form-action 'self'; "
    "base-uri 'none'; object-src 'none'; frame-ancestors {ancestors}"
)
LOOK_POLICY: Final = (
    "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; "
    "img-src 'self' data:; font-src 'self'; connect-src 'self'; worker-src 'self'; "
    "manifest-src 'self'; form-action 'none'; base-uri 'self'; object-src 'none'; "
    "frame-ancestors 'self'"
)
"""The book's own pages set the size of a printed sheet in themselves, as they do when published."""
_HEADERS: Final = {
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "cache-control": "no-store",
}


@dataclass(frozen=True)
class Key:
    """The random word without which nothing is shown, and the port that it belongs to."""

    port: int
    word: str = field(default_factory=lambda: secrets.token_urlsafe(32))

    @property
    def cookie(self) -> str:
        """The cookie's name; cookies do not tell one port from another, so it does."""
        return f"stillroom_desk_{self.port}"

    @property
    def first_address(self) -> str:
        """The address that opens the desk."""
        return f"http://127.0.0.1:{self.port}/?key={self.word}"

    def fits(self, word: str) -> bool:
        """Say whether this is the word, in the same time whatever it is."""
        return secrets.compare_digest(word.encode(), self.word.encode())


class _TooMuch(Exception):
    """More was sent than is taken."""


class Doorway:
    """Lets in what the desk's own pages ask; everything else gets one plain sentence."""

    def __init__(self, inner: ASGIApp, key: Key) -> None:
        self.inner, self.key = inner, key

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Ask who is there, then hand the request on."""
        if scope["type"] != "http":  # no socket is offered: only a server of ours could ask
            return
        said = {name.decode("latin-1"): value.decode("latin-1") for name, value in scope["headers"]}
        answer = self._refuse(scope, said) or self._at_the_door(scope, said)
        speak = _with_headers(send, scope["path"].startswith("/look/"))
        if answer is not None:
            if answer.status_code == 413:
                await _let_go(receive)
            await answer(scope, receive, speak)
            return
        counted = _counted(receive, _most(scope["path"]))
        try:
            await self.inner(scope, counted, speak)
        except _TooMuch:
            await _let_go(receive)
            await _too_much()(scope, receive, speak)

    def _refuse(self, scope: Scope, said: dict[str, str]) -> Response | None:
        own = [f"{host}:{self.key.port}" for host in _HOSTS]
        if said.get("host", "") not in own:
            return PlainTextResponse("This is no address of the desk.", 421)
        origin, site = said.get("origin"), said.get("sec-fetch-site", "none")
        if scope["method"] not in (*_SAFE, "POST"):
            return PlainTextResponse("The desk does not do this.", 405)
        if scope["method"] == "POST" and origin != f"http://{said['host']}":
            return PlainTextResponse("This was not sent from a page of the desk.", 403)
        # a first visit may come from anywhere that shows the address; it brings the key
        is_first = scope["path"] == "/" and b"key=" in scope["query_string"] and origin is None
        elsewhere = origin not in (None, f"http://{said['host']}")
        if (elsewhere or site not in ("same-origin", "none")) and not is_first:
            return PlainTextResponse("This was not asked from a page of the desk.", 403)
        length = said.get("content-length", "0")
        if not length.isdecimal() or int(length) > _most(scope["path"]):
            return _too_much()
        return None

    def _at_the_door(self, scope: Scope, said: dict[str, str]) -> Response | None:
        given = parse_qs(scope["query_string"].decode("latin-1")).get("key", [""])[0]
        if scope["path"] == "/" and scope["method"] == "GET" and self.key.fits(given):
            welcome = RedirectResponse("/", 303)
            welcome.set_cookie(self.key.cookie, self.key.word, httponly=True, samesite="strict")
            return welcome
        try:
            held = SimpleCookie(said.get("cookie", "")).get(self.key.cookie)
        except CookieError:
            held = None
        if held is not None and self.key.fits(held.value):
            return None
        words = (
            "The desk opens only with its key: open the whole address that was shown when it was "
            "opened."
        )
        return PlainTextResponse(words, 403)


def _most(path: str) -> int:
    return MOST_UPLOADED if path.startswith(UPLOADS) else MOST_BYTES


def _too_much() -> Response:
    most = MOST_UPLOADED // 1_000_000
    words = f"This is more than the desk takes at once: {most} MB of files, 2 MB of words."
    return PlainTextResponse(words, 413, headers={"connection": "close"})


async def _let_go(receive: Receive) -> None:
    """Take what is still sent and keep none of it: a browser hears no answer while it sends."""
    taken = 0
    while taken < MOST_HEARD:
        message = await receive()
        taken += len(message.get("body", b""))
        if message["type"] == "http.disconnect" or not message.get("more_body"):
            return


def _counted(receive: Receive, most: int) -> Receive:
    """Count what comes in, whatever its sender said of its length."""
    taken = 0

    async def count() -> Message:
        nonlocal taken
        message = await receive()
        taken += len(message.get("body", b""))
        if taken > most:
            raise _TooMuch
        return message

    return count


def _with_headers(send: Send, is_look: bool) -> Send:
    policy = LOOK_POLICY if is_look else POLICY.format(ancestors="'none'")
    more = [*_HEADERS.items(), ("content-security-policy", policy)]

    async def speak(message: Message) -> None:
        if message["type"] == "http.response.start":
            had = {name for name, _ in message["headers"]}
            new = [(name.encode(), value.encode()) for name, value in more]
            message["headers"] = [
                *message["headers"],
                *(pair for pair in new if pair[0] not in had),
            ]
        await send(message)

    return speak
