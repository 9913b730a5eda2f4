"""Firefox as it comes from its makers, spoken to by WebDriver BiDi (W3C) over its own port.

Playwright drives only a Firefox of its own making, so this is what the tests need of the standard:
open a page, type, ask it something, take its picture, print it.
"""

from __future__ import annotations

import base64
import json
import os
import shutil
import subprocess
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from websockets.sync.client import ClientConnection, connect

NAMES = ("firefox-esr", "firefox")
PLACES = (
    "/Applications/Firefox.app/Contents/MacOS/firefox",
    r"C:\Program Files\Mozilla Firefox\firefox.exe",
)
PREFERENCES = {
    "app.normandy.enabled": False,
    "app.update.enabled": False,
    "browser.shell.checkDefaultBrowser": False,
    "browser.startup.homepage_override.mstone": "ignore",
    "browser.startup.page": 0,
    "datareporting.policy.dataSubmissionEnabled": False,
    "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False,
    "privacy.reduceTimerPrecision": False,
    "toolkit.telemetry.enabled": False,
}


def find_firefox() -> str | None:
    named = os.environ.get("STILLROOM_FIREFOX")
    found = [named] if named else [shutil.which(name) for name in NAMES]
    found += [place for place in PLACES if Path(place).exists()]
    return next((place for place in found if place), None)


class Firefox:
    """One tab of one Firefox."""

    def __init__(self, socket: ClientConnection) -> None:
        self._socket = socket
        self._number = 0
        self.asked("session.new", capabilities={})
        self.tab = self.asked("browsingContext.getTree")["contexts"][0]["context"]

    def asked(self, method: str, **params: Any) -> dict[str, Any]:
        """Send a command of the standard and return its answer."""
        self._number += 1
        self._socket.send(json.dumps({"id": self._number, "method": method, "params": params}))
        while True:
            said = json.loads(self._socket.recv(timeout=60))
            if said.get("id") == self._number:
                assert said["type"] == "success", said
                return said["result"]

    def goto(self, address: str) -> None:
        self.asked("browsingContext.navigate", context=self.tab, url=address, wait="complete")

    def goto_moved(self, address: str, seconds: float = 60) -> None:
        """Open a page that leads on to another, and wait until that one is there whole."""
        self.goto("about:blank")  # so that what is there next is not what was there before
        self.asked("browsingContext.navigate", context=self.tab, url=address, wait="none")
        there = f"document.readyState === 'complete' && location.href !== {json.dumps(address)}"
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            try:
                if self.evaluate(f"{there} && location.href !== 'about:blank' && !!document.body"):
                    return
            except AssertionError:
                pass  # the page that was asked has gone meanwhile, as it should
            time.sleep(0.05)
        raise AssertionError(f"{address} led nowhere.")

    def resize(self, width: int, height: int) -> None:
        size = {"width": width, "height": height}
        self.asked("browsingContext.setViewport", context=self.tab, viewport=size)

    def evaluate(self, expression: str) -> Any:
        """Return what JavaScript in the page comes to; anything that JSON can say."""
        result = self.asked(
            "script.evaluate",
            expression=f"(async () => JSON.stringify(await ({expression})))()",
            target={"context": self.tab},
            awaitPromise=True,
        )
        assert result["type"] == "success", result
        text = result["result"].get("value")
        return None if text is None else json.loads(text)

    def wait_for(self, expression: str, seconds: float = 20) -> Any:
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            if found := self.evaluate(expression):
                return found
            time.sleep(0.05)
        raise AssertionError(f"Firefox waited in vain for: {expression}")

    @contextmanager
    def before_each_page(self, script: str) -> Iterator[None]:
        """Run JavaScript in every page before the page's own, for as long as it is needed."""
        function = f"() => {{ {script} }}"
        added = self.asked("script.addPreloadScript", functionDeclaration=function)
        try:
            yield
        finally:
            self.asked("script.removePreloadScript", script=added["script"])

    def press(self, *keys: str) -> None:
        """Press keys one after another, each a letter or a key of the standard's table."""
        actions = [{"type": way, "value": key} for key in keys for way in ("keyDown", "keyUp")]
        source = {"type": "key", "id": "keyboard", "actions": actions}
        self.asked("input.performActions", context=self.tab, actions=[source])

    def screenshot(self) -> bytes:
        found = self.asked("browsingContext.captureScreenshot", context=self.tab, origin="document")
        return base64.b64decode(found["data"])

    def print(self, width_mm: float | None = None, height_mm: float | None = None) -> bytes:
        """Print on a paper of a size, with its margins left to the page; else as Firefox likes."""
        asked: dict[str, Any] = {}
        if width_mm and height_mm:
            page = {"width": width_mm / 10, "height": height_mm / 10}
            asked = {"page": page, "shrinkToFit": False, "margin": dict.fromkeys(
                ("top", "bottom", "left", "right"), 0)}  # fmt: skip
        found = self.asked("browsingContext.print", context=self.tab, **asked)
        return base64.b64decode(found["data"])


@contextmanager
def launch_firefox(place: str, **preferences: bool | int | str) -> Iterator[Firefox]:
    """Run a Firefox with a profile of its own and hand out its tab; ends it afterwards."""
    with tempfile.TemporaryDirectory(
        prefix="stillroom-firefox-", ignore_cleanup_errors=True
    ) as own:
        lines = [
            f"user_pref({json.dumps(name)}, {json.dumps(value)});"
            for name, value in {**PREFERENCES, **preferences}.items()
        ]
        Path(own, "user.js").write_text("\n".join(lines), encoding="utf-8")
        command = [
            place,
            "--headless",
            "--no-remote",
            "--profile",
            own,
            "--remote-debugging-port",
            "0",
        ]
        environment = {**os.environ, "HOME": own, "MOZ_CRASHREPORTER_DISABLE": "1"}
        program = subprocess.Popen(
            command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, env=environment
        )
        try:
            address = _address(Path(own), program)
            # no pings: their thread draws from `random` while other tests run, and hypothesis
            # takes that for a strategy that does so
            with connect(
                f"{address}/session", max_size=None, compression=None, ping_interval=None
            ) as socket:
                yield Firefox(socket)
        finally:
            program.terminate()
            program.wait(30)


def _address(profile: Path, program: subprocess.Popen[bytes]) -> str:
    """Return where Firefox listens: it writes that into its profile once it does."""
    said = profile / "WebDriverBiDiServer.json"
    end = time.monotonic() + 60
    while time.monotonic() < end and program.poll() is None:
        try:
            found = json.loads(said.read_text(encoding="utf-8"))
            return f"ws://{found['ws_host']}:{found['ws_port']}"
        except (FileNotFoundError, ValueError):
            time.sleep(0.1)
    raise AssertionError("Firefox did not start.")
