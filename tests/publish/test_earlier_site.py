"""A book is built over its earlier site, guide to giving lists and all; a list in it is refused."""

from __future__ import annotations

import base64
from pathlib import Path

import pytest

from publish.test_wall import ROOT, build, small_book
from stillroom.core.private.as_page import find_page
from stillroom.core.private.seeking import Seeker
from stillroom.publish.wall import find_private, find_shapes

WHOLE = (ROOT / "site_demo" / "write-a-giving-list.md").read_text(encoding="utf-8")
# without its example, which is a list among the pages of any other book
GUIDE = "# Write a giving list\n\n## Who" + WHOLE.partition("\n## Who")[2]
TWO = "<ul>\n<li><strong>Nan Quillfeather</strong> no nuts</li>\n<li>Ottilie (vegan)</li>\n</ul>\n"
HEAD = "<h1>Our giving list</h1>\n"


@pytest.mark.parametrize("cache", ["off", "kept"])
def test_a_book_with_a_guide_to_giving_lists_is_built_over_its_earlier_site(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, cache: str
) -> None:
    monkeypatch.setenv("STILLROOM_CACHE", str(tmp_path / "shelf") if cache == "kept" else "off")
    folder = small_book(tmp_path / "book")
    (folder / "pages" / "guide.md").write_text(GUIDE, encoding="utf-8")
    for _ in range(3):
        built = build(folder)
        assert built.returncode == 0, built.stderr
    page = folder / "site" / "guide" / "index.html"
    html = page.read_text(encoding="utf-8")
    assert "1169/2011" in html
    page.write_text(html.replace("</article>", TWO + "</article>"), encoding="utf-8")
    refused = build(folder)
    assert refused.returncode == 1
    assert "This file is a private giving list." in refused.stderr


def test_what_a_page_of_an_earlier_site_hides_is_still_found_where_it_would_be_published(
    tmp_path: Path,
) -> None:
    hidden = base64.b64encode(b"giving list: Winter\nhouseholds:\n- name: Nan\n  avoid: nuts\n")
    (tmp_path / "page.html").write_bytes(b"<p>Quinces</p>\n<!-- " + hidden + b" -->\n")
    seeker = Seeker(())
    assert find_shapes(tmp_path, seeker) == ()
    assert [one.file for one in find_private([tmp_path], seeker)] == [str(tmp_path / "page.html")]
    (tmp_path / "page.html").rename(tmp_path / "page.txt")  # no page of a site
    assert [one.file for one in find_shapes(tmp_path, seeker)] == [str(tmp_path / "page.txt")]


# acts as EUR-Lex names them (from memory), beside what a guide says of them
@pytest.mark.parametrize(
    "said",
    [
        "<td>Regulation (EU) 1169/2011, Annex II: allergens</td>\n"
        "<td>Directive (EU) 2015/2203, lactose</td>\n",
        "<li>Regulation (EU) No 1169/2011: allergens</li>\n"
        "<li>Commission Implementing Regulation (EU) No 828/2014: gluten</li>\n",
        "- Regulation (EC) No 41/2009 on gluten\n- Regulation (EU) No 609/2013, children\n",
        "<li><strong>Traces</strong> count for what they avoid</li>\n"
        "<li><strong>Allergens</strong> by name: gluten</li>\n",
    ],
)
def test_acts_and_a_guides_own_words_name_nobody(said: str) -> None:
    assert find_page(HEAD + said) == 0


@pytest.mark.parametrize(
    "said",
    [
        "<li>Nan (next door) no nuts</li>\n<li>Ottilie (UK) 2 adults</li>\n",
        "<td>Ottilie (vegan)</td>\n<td>The Marrowbanks (NZ) by post</td>\n",
        "- Jo (EU): no nuts\n- The Traces: vegan\n",
        TWO,
    ],
)
def test_households_beside_such_words_are_found(said: str) -> None:
    assert find_page(HEAD + said) == 1
