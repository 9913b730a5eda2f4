"""Opening and closing the desk: a loopback address, its browser, and the server behind it."""

from __future__ import annotations

import os
import socket
import tempfile
import threading
import webbrowser
from collections.abc import Callable
from pathlib import Path

import uvicorn

from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.desk.desk import Desk
from stillroom.desk.doorway import Doorway, Key
from stillroom.desk.keeping import make_own
from stillroom.desk.only_one import only_desk
from stillroom.desk.place import Place
from stillroom.desk.rooms import make_rooms
from stillroom.saving.whole import clear_ended, clear_leftovers_below

LOOPBACK = "127.0.0.1"
_ASIDE = "stillroom-desk-"
"""What a desk makes for looking at lies in such a folder, with the number of its run behind it."""


def open_desk(folder: Path, port: int, with_browser: bool, say: Callable[[str], None]) -> None:
    """Serve the desk of the book in `folder` until it is closed; raises ProblemsFound or OSError.

    `port` 0 takes any that is free. `say` is told the address, and that the desk is closed.
    """
    with socket.socket() as bound:
        if os.name == "posix":  # a desk closed a moment ago has not let go of its number yet
            bound.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            bound.bind((LOOPBACK, port))
        except OSError:
            what = f"The port {port} of this computer is taken."
            mend = "Name another, or leave --port out."
            raise ProblemsFound([Problem(str(folder), 0, what, mend)]) from None
        bound.listen()  # whoever comes before the server is ready waits for it
        key = Key(bound.getsockname()[1])
        place = Place(folder)
        make_own(place)
        clear_leftovers_below(folder)
        clear_ended(Path(tempfile.gettempdir()), _ASIDE)
        with (
            only_desk(place.lock_file, f"http://{LOOPBACK}:{key.port}/"),
            tempfile.TemporaryDirectory(prefix=f"{_ASIDE}{os.getpid()}-") as aside,
        ):
            server: uvicorn.Server

            def close() -> None:
                server.should_exit = True

            desk = Desk(place, Path(aside), close)
            desk.begin_frame()
            config = uvicorn.Config(
                Doorway(make_rooms(desk), key),
                log_level="error",
                access_log=False,
                lifespan="off",
                server_header=False,
                timeout_graceful_shutdown=3,
                ws="none",
            )
            server = uvicorn.Server(config)
            say(f"The desk is open at {key.first_address}")
            say("It is closed by its button, or here by Ctrl+C.")
            if with_browser:
                threading.Thread(target=webbrowser.open, args=(key.first_address,)).start()
            server.run(sockets=[bound])
            desk.end()
    say("The desk is closed.")
