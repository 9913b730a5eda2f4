"""The least type, the contrast and the codes of every design, read from its PDFs: a table.

Run: python tests/bench/bench_designs.py [recipes]. Of so many recipes of the demo book, all of them
without a number. It prints figures and asserts nothing: tests/printing/test_designs_pdf.py does.
"""

from __future__ import annotations

import sys
from datetime import date
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "tests"), str(ROOT / "builder")]

from printing.design_figures import THINGS, figures_of  # noqa: E402
from stillroom.core.book import open_book  # noqa: E402
from stillroom.core.label.labelling import make_card  # noqa: E402
from stillroom.looks.card_designs import designs_of  # noqa: E402
from stillroom.looks.card_pictures import card_picture  # noqa: E402
from stillroom.printing.cards import CardJob  # noqa: E402

MADE_ON = date(2026, 11, 12)


def main(most: int | None) -> None:
    """Print the table."""
    book = open_book(ROOT / "mkdocs.yml")
    recipes = book.load()[:most]
    print("| design | " + " | ".join(f"{thing}, pt" for thing in THINGS) + " | contrast | codes |")
    print("| --- |" + " --- |" * (len(THINGS) + 2))
    for name, own in designs_of().items():
        for design in (own,) if own.large else (own, own.made_large()):
            jobs = [
                CardJob(
                    make_card(
                        one, book.settings, MADE_ON, url=f"{book.settings.site_url}r/{one.slug}/"
                    ),
                    one,
                    1,
                    card_picture(one, book, design),
                )
                for one in recipes
            ]
            found = figures_of(design, jobs)
            read = {dpi: found.codes - len(left) for dpi, left in found.unread.items()}
            sizes = " | ".join(f"{found.least_pt[thing]:g}" for thing in THINGS)
            large = f" in large type ({found.taken})" if design.large else ""
            codes = ", ".join(
                f"{count} of {found.codes} at {dpi} dpi" for dpi, count in read.items()
            )
            print(f"| {name}{large} | {sizes} | {found.contrast:.1f} | {codes} |", flush=True)


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else None)
