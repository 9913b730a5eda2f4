"""Books as long as a bench wants them: recipes that all differ, and plain pages of the same words.

No two recipes share their amounts, their sentences or all their foods, so that nothing a build
remembers of one recipe serves another unless it would in a book somebody wrote. Each is a demo
recipe, weighed anew in proportion, with like foods in the place of like and new sentences.
"""

from __future__ import annotations

import random
import re
from collections.abc import Sequence
from pathlib import Path

import yaml

ROOT = Path(__file__).resolve().parents[2]

LIKE_FOODS = (
    ("plain flour", "spelt flour", "strong white flour"),
    ("caster sugar", "golden caster sugar", "demerara sugar"),
    ("raisins", "sultanas", "currants"),
    ("coarse sea salt", "flaky sea salt"),
    ("red lentils", "yellow lentils"),
    ("brown rice", "basmati rice", "pearl barley"),
    ("star anise", "cardamom pods", "juniper berries"),
    ("ground coriander", "ground cumin", "ground allspice"),
    ("dark rum", "brandy", "whisky"),
    ("thyme leaves", "marjoram leaves", "oregano leaves"),
    ("cotton cloth", "linen cloth"),
)
"""Foods that may stand for each other without making a recipe another or less safe."""

_MEASURE = re.compile(
    r"(?<![\w.\-/])(\d+(?:\.\d+)?) (g|kg|ml|l)\b(?! jar| tin| pan| clip| ferm| demi| jug| heat)"
)
_SYLLABLES = ("bra", "cle", "dun", "fen", "gor", "hal", "ith", "jor", "kel", "lorn", "mar", "nev")
_PLAIN = """
autumn basket bench blue bowl candle careful cellar cloth corner dresser early evening ferry garden
gate gentle hand harbour hearth hedge island kitchen ladder lamp lane late letter light linen market
mild morning neighbour north old orchard parcel patient path plain porch quiet rain ribbon river row
shelf shore slow small south spoon stair steady stone string summer table tide twine window wooden
"""
_WORDS = tuple(_PLAIN.split())


def write_recipes(folder: Path, count: int) -> None:
    """Write `count` recipes that all differ into a folder."""
    folder.mkdir(parents=True, exist_ok=True)
    for number, text in enumerate(make_texts(count)):
        (folder / f"recipe-{number}.md").write_text(text, encoding="utf-8")


def make_texts(count: int) -> list[str]:
    """Return the texts of `count` recipes."""
    demo = [path.read_text(encoding="utf-8") for path in sorted((ROOT / "recipes").glob("*.md"))]
    return [_vary(demo[number % len(demo)], number) for number in range(count)]


def _vary(text: str, number: int) -> str:
    dice = random.Random(number)
    for likes in LIKE_FOODS:
        text = re.sub(rf"\b{likes[0]}\b", dice.choice(likes), text)
    _, facts, body = text.split("---\n", 2)
    share = 0.9 + dice.randrange(1, 2000) / 10_000
    lines = []
    for line in facts.splitlines():
        if line.startswith(("picture", "was")):
            continue
        if line.startswith("title:"):
            line = f"{line} of {_name(dice)} {number}"
        elif line.startswith("summary:"):
            line = f"{line} {_sentence(dice)}"
        elif not re.match(r"containers|vessel|  unopened|  opened", line) and "per" not in line:
            line = _MEASURE.sub(lambda found: _weigh(found, share), line)
        lines.append(line)
    steps = re.sub(r"^(\d+\. .*)$", lambda step: f"{step[1]} {_sentence(dice)}", body, flags=re.M)
    return f"---\n{chr(10).join(lines)}\n---\n{steps}\n\n## From the margin\n\n" + " ".join(
        _sentence(dice) for _ in range(8)
    )


def _weigh(found: re.Match[str], share: float) -> str:
    value = float(found[1]) * share
    whole = found[2] in ("g", "ml") and value >= 20
    return f"{value:.0f} {found[2]}" if whole else f"{value:.3g} {found[2]}"


def _name(dice: random.Random) -> str:
    return "".join(dice.choices(_SYLLABLES, k=3)).capitalize()


def _sentence(dice: random.Random) -> str:
    words = dice.choices(_WORDS, k=dice.randint(6, 12))
    return f"{' '.join(words).capitalize()} {_name(dice)}."


def write_book(folder: Path, count: int, plugin: object = "stillroom") -> None:
    """Write a book of `count` recipes without pictures into `folder`."""
    (folder / "pages").mkdir(parents=True)
    write_recipes(folder / "recipes", count)
    _write_config(folder, ["search", plugin])


def write_plain(folder: Path, count: int) -> None:
    """Write a site for MkDocs and Material alone: the same words on as many pages, few in nav."""
    pages = folder / "pages"
    (pages / "r").mkdir(parents=True)
    titles = []
    for number, text in enumerate(make_texts(count)):
        _, facts, body = text.split("---\n", 2)
        titles.append(re.search(r"^title: (.*)$", facts, flags=re.M)[1])  # type: ignore[index]
        listed = "\n".join(
            f"- {line.strip().removeprefix('- ')}" for line in facts.splitlines()[1:]
        )
        page = f"# {titles[-1]}\n\n{listed}\n\n{re.sub(r'[{}]', '', body)}\n"
        (pages / "r" / f"recipe-{number}.md").write_text(page, encoding="utf-8")
    links = "\n".join(f"- [{title}](r/recipe-{place}.md)" for place, title in enumerate(titles))
    for name in ("browse", "year", "print-room"):
        (pages / f"{name}.md").write_text(f"# {name}\n\n{links}\n", encoding="utf-8")
    (pages / "index.md").write_text("# A long book\n\nWords.\n", encoding="utf-8")
    _write_config(folder, ["search"], not_in_nav="r/*")


def _write_config(folder: Path, plugins: Sequence[object], **more: object) -> None:
    config = {
        "site_name": "A long book",
        "site_url": "https://long.example/",
        "docs_dir": "pages",
        "theme": {"name": "material", "font": False},
        "plugins": list(plugins),
        "nav": ["index.md", "browse.md", "year.md", "print-room.md"],
        **more,
    }
    (folder / "mkdocs.yml").write_text(yaml.safe_dump(config), encoding="utf-8")
