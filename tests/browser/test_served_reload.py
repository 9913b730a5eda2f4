"""While a book is served its pages load themselves again; a built page lets no such script run."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Browser

from publish.test_served_faults import page_with, serving
from publish.test_wall import build, small_book


def test_a_served_page_loads_itself_again_and_runs_nothing_else(
    browser: Browser, tmp_path: Path
) -> None:
    folder = small_book(tmp_path)
    about = folder / "pages" / "about.md"
    about.write_text("# About\n\nFirst words.\n", encoding="utf-8")
    with serving(folder) as (_, address):
        page_with(f"{address}about/", "First words.")
        page = browser.new_page()
        blocked: list[str] = []
        page.on("console", lambda said: blocked.append(said.text) if said.type == "error" else None)
        with page.expect_request("**/livereload/**"):
            page.goto(f"{address}about/")
        about.write_text("# About\n\nSecond words.\n", encoding="utf-8")
        page.get_by_text("Second words.").wait_for(timeout=40_000)
        assert blocked == []
        page.evaluate(
            """() => {
              const script = document.createElement("script");
              script.textContent = "window.strange = 1";
              document.body.append(script);
            }"""
        )
        assert page.evaluate("window.strange === undefined")
        assert any("Content Security Policy" in said for said in blocked)
        page.close()


def test_a_built_page_allows_no_script_of_a_page(tmp_path: Path) -> None:
    folder = small_book(tmp_path)
    built = build(folder)
    assert built.returncode == 0, built.stderr
    pages = [path.read_text(encoding="utf-8") for path in (folder / "site").rglob("index.html")]
    assert len(pages) >= 4
    for html in pages:
        assert "script-src 'self';" in html or 'http-equiv="refresh"' in html
        assert "livereload" not in html
