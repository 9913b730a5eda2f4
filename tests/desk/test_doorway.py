"""Who is kept out of the desk: other hosts, other sites, those without the key.

The attacks are those that a page of another site in the same browser, or somebody in the same
network, can try on a server at a loopback address.
"""

from __future__ import annotations

import socket
from pathlib import Path

import pytest

from desk.conftest import OpenDesk, open_on
from stillroom.core.words.problems import ProblemsFound
from stillroom.desk.lines_as_came import MOST_BOXES
from stillroom.desk.only_one import only_desk

ROOMS = ("/", "/write/new-recipe", "/write/quince-chutney", "/look/r/quince-chutney/")


@pytest.mark.parametrize("way", ROOMS)
def test_its_own_browser_comes_in_and_every_answer_is_locked_up(desk: OpenDesk, way: str) -> None:
    answer = desk.ask(way)
    assert answer.status == 200, answer.text
    policy = answer.headers["content-security-policy"]
    assert "default-src 'none'" in policy
    assert "script-src 'self';" in policy
    assert "http:" not in policy
    assert "https:" not in policy
    assert "*" not in policy
    assert answer.headers["x-content-type-options"] == "nosniff"
    assert answer.headers["cache-control"] == "no-store"
    assert answer.headers["cross-origin-resource-policy"] == "same-origin"


@pytest.mark.parametrize("way", [*ROOMS, "/desk/own/boxes.css", "/no-such-page"])
@pytest.mark.parametrize("cookie", [None, "", "stillroom_desk=guess", "=;;=\x01"])
def test_nobody_comes_in_without_the_key(desk: OpenDesk, way: str, cookie: str | None) -> None:
    answer = desk.ask(way, Cookie=cookie)
    assert answer.status == 403
    assert "Heron Ferry" not in answer.text


def test_a_guessed_key_opens_nothing(desk: OpenDesk) -> None:
    for word in ("", "x", desk.first.partition("key=")[2][:-1], "é"):
        assert desk.ask(f"/?key={word.encode().hex()}", Cookie=None).status == 403
    name = desk.cookie.partition("=")[0]
    assert desk.ask("/", Cookie=f"{name}={'a' * 43}").status == 403


def test_the_cookie_goes_nowhere_else(desk: OpenDesk) -> None:
    answer = desk.ask(desk.first.partition(desk.netloc)[2], Cookie=None)
    said = answer.headers["set-cookie"].lower()
    assert "samesite=strict" in said
    assert "httponly" in said
    assert "domain" not in said
    assert answer.headers["location"] == "/", "the key does not stay in the address"


@pytest.mark.parametrize(
    "host", ["evil.example", "evil.example:80", "127.0.0.1", "127.0.0.1:1", "localhost", "", None]
)
def test_another_name_for_this_address_is_refused(desk: OpenDesk, host: str | None) -> None:
    # a name of a stranger's that leads to 127.0.0.1 (DNS rebinding) brings its own Host
    assert desk.ask("/", Host=host).status in (400, 421)
    first = desk.first.partition(desk.netloc)[2]
    assert desk.ask(first, Host=host, Cookie=None).status in (400, 421)


@pytest.mark.parametrize("origin", [None, "null", "http://evil.example", "http://127.0.0.1:1"])
@pytest.mark.parametrize("way", ["/stop", "/write/quince-chutney/keep", "/write/new-recipe/look"])
def test_a_form_from_elsewhere_is_not_taken(desk: OpenDesk, way: str, origin: str | None) -> None:
    before = (desk.folder / "recipes/quince-chutney.md").read_bytes()
    assert desk.ask(way, "POST", {"title": "Taken over"}, Origin=origin).status == 403
    assert (desk.folder / "recipes/quince-chutney.md").read_bytes() == before


@pytest.mark.parametrize("site", ["cross-site", "same-site"])
def test_what_another_site_loads_it_does_not_get(desk: OpenDesk, site: str) -> None:
    assert desk.ask("/write/quince-chutney", Sec_Fetch_Site=site).status == 403
    assert desk.ask("/", Origin="http://evil.example").status == 403


@pytest.mark.parametrize("method", ["PUT", "DELETE", "OPTIONS", "PATCH", "TRACE"])
def test_other_ways_of_asking_are_refused(desk: OpenDesk, method: str) -> None:
    assert desk.ask("/", method).status == 405


OUT = [
    "../mkdocs", "..%2Fmkdocs", "%2e%2e%2fmkdocs", "..\\mkdocs", "/etc/passwd", "%2Fetc%2Fpasswd",
    "a/../../../etc/passwd", "quince-chutney.md", ".desk", "con", "nul", "%00", "a%00b", "%C3%A9",
    "quince-chutney%2F..%2F..%2Fmkdocs", "A" * 300,
]  # fmt: skip


@pytest.mark.parametrize("name", OUT)
@pytest.mark.parametrize(
    "room", ["/write/{}", "/look/r/{}/", "/look/{}", "/look/pictures/{}", "/desk/own/{}"]
)
def test_no_way_leads_out_of_the_book(desk: OpenDesk, room: str, name: str) -> None:
    answer = desk.ask(room.format(name))
    assert answer.status in (400, 404)
    assert "root:" not in answer.text
    assert "site_name" not in answer.text


@pytest.mark.parametrize("name", OUT)
def test_nothing_is_written_elsewhere(desk: OpenDesk, name: str) -> None:
    around = desk.folder.parent
    before = sorted(path for path in around.rglob("*"))
    for room in ("keep", "look", "out", "let-go"):
        answer = desk.ask(f"/write/{name}/{room}", "POST", {"title": "Out", "opened": ":"})
        assert answer.status in (400, 404, 405)
    assert sorted(path for path in around.rglob("*")) == before


def test_a_link_out_of_the_book_is_not_followed(desk: OpenDesk, tmp_path: Path) -> None:
    outside = tmp_path / "outside.md"
    outside.write_text("secret", encoding="utf-8")
    link = desk.folder / "drafts" / "linked.md"
    link.parent.mkdir(exist_ok=True)
    link.symlink_to(outside)
    try:
        answer = desk.ask("/write/linked")
        assert answer.status == 404
        assert "secret" not in answer.text
        assert desk.ask("/write/linked/keep", "POST", {"title": "x", "opened": ":"}).status == 404
        assert outside.read_text(encoding="utf-8") == "secret"
    finally:
        link.unlink()


def test_more_than_is_taken_is_refused(desk: OpenDesk) -> None:
    assert desk.ask(
        "/write/new-recipe/look", "POST", body=b"", Content_Length="99999999"
    ).status in (
        400,
        413,
    )
    fields = {f"x{number}": "1" for number in range(MOST_BOXES + 1)}
    assert desk.ask("/write/new-recipe/look", "POST", fields).status == 400


def test_a_sender_that_hides_its_length_is_cut_off(desk: OpenDesk) -> None:
    host, _, port = desk.netloc.partition(":")
    head = (
        f"POST /write/new-recipe/look HTTP/1.1\r\nHost: {desk.netloc}\r\nOrigin: {desk.origin}\r\n"
        f"Cookie: {desk.cookie}\r\nContent-Type: application/x-www-form-urlencoded\r\n"
        "Transfer-Encoding: chunked\r\n\r\n"
    )
    with socket.create_connection((host, int(port)), timeout=30) as line:
        line.sendall(head.encode())
        piece = b"10000\r\n" + b"a" * 65536 + b"\r\n"
        try:
            for _ in range(80):
                line.sendall(piece)
            line.sendall(b"0\r\n\r\n")
        except (BrokenPipeError, ConnectionResetError):
            return  # it hung up before the end
        assert line.recv(200).split()[1] in (b"400", b"413")


def test_one_desk_at_a_time(desk: OpenDesk) -> None:
    file = desk.folder / ".desk" / "open.json"
    with pytest.raises(ProblemsFound) as found, only_desk(file, "http://127.0.0.1:1/"):
        pytest.fail("two desks had the same book open")
    (told,) = found.value.problems
    assert f"Another desk has this book open at {desk.origin}/" in told.what


def test_a_desk_that_was_closed_lets_another_open(tmp_path: Path) -> None:
    for _ in range(2):
        opened, thread = open_on(tmp_path)
        assert opened.ask("/stop", "POST").status == 200
        thread.join(20)
        assert not thread.is_alive()
