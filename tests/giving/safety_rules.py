"""An independent checker of safety: reads the recipe files as text and knows words, not staples.

Written from the rules (issue 7, and the sources beside each list), without the package's facts,
rules, labels or staples. It is coarser than they are: a word within an ingredient's line counts.
"""

from __future__ import annotations

import re
from pathlib import Path

import yaml

ROOT = Path(__file__).resolve().parents[2]

# words that show an allergen of Regulation (EU) No 1169/2011, Annex II, in this book's recipes
ALLERGEN_WORDS = {
    "gluten": r"\b(wheat|plain flour|wholemeal|oat|oats|oatmeal|barley|rye|malt|spelt|breadcrumb)",
    "nuts": r"\b(almond|hazelnut|walnut|cashew|pecan|brazil nut|pistachio|macadamia|peanut)",
    "milk": r"\b(butter|milk|cream|cheese|whey)\b(?! beans?)",
    "eggs": r"\begg",
    "mustard": r"\bmustard",
    "celery": r"\bceler",
    "soya": r"\bsoya",
}
ALCOHOL = (
    r"\b(vodka|brandy|rum\b|gin\b|whisky|spirit|wine(?! vinegar| yeast)|liqueur"
    r"|\d+(?:\.\d+)?\s*% ?vol)"
)
ANIMAL = r"\b(butter|milk|cream|egg|honey|beeswax|wool|gelatine|fleece|lard|suet)"
HONEY = r"\bhoney(?!suckle)"
NOT_BUTTER = re.compile(r"(cocoa|cacao|shea|nut|peanut|almond) butter|coconut (milk|cream)")


def front_matter(slug: str) -> dict:
    text = (ROOT / "recipes" / f"{slug}.md").read_text(encoding="utf-8")
    return yaml.safe_load(text.split("---")[1])


def ingredient_words(slug: str) -> str:
    """Return the words of what a recipe is made of, tools of a craft and sources left out."""
    front, words = front_matter(slug), []
    for line in front.get("ingredients") or front.get("materials"):
        if isinstance(line, str):
            words.append(line)
        elif not (front["kind"] == "craft" and line.get("scales") == "per batch"):
            words += [line["item"], str(line.get("strength", "")), *line.get("parts", [])]
    return NOT_BUTTER.sub("", "\n".join(words).lower())


def has(slug: str, pattern: str) -> bool:
    return re.search(pattern, ingredient_words(slug)) is not None


def has_alcohol(slug: str) -> bool:
    words = ingredient_words(slug)
    brewed = front_matter(slug)["kind"] == "ferment" and "yeast" in words
    return brewed or re.search(ALCOHOL, words) is not None


def breaches(household, slug: str) -> list[str]:
    """Return what is wrong with giving a recipe to a household; `household` is the list's own."""
    found = []
    for word in household.avoid:
        if word in ALLERGEN_WORDS and has(slug, ALLERGEN_WORDS[word]):
            found.append(word)
        if word == "alcohol" and has_alcohol(slug):
            found.append(word)
        if word == "animal products" and has(slug, ANIMAL):
            found.append(word)
    for word in household.avoid_ingredients:
        if word.rstrip("s") in ingredient_words(slug):
            found.append(word)
    youngest = min(household.children, default=999)
    # UK Chief Medical Officers 2016: no alcohol in pregnancy; never to children alone
    if (household.pregnant or not household.adults) and has_alcohol(slug):
        found.append("alcohol")
    if youngest < 12 and has(slug, HONEY):  # NHS: no honey under 12 months
        found.append("honey")
    if youngest < 60 and front_matter(slug)["kind"] == "confection":  # NHS: hard sweets, under 5
        found.append("choking")
    if (
        youngest < 36
        and "not for children under 3" in str(front_matter(slug).get("cautions")).lower()
    ):
        found.append("small parts")
    if household.delivery == "by post" and front_matter(slug)["kind"] == "ferment":
        found.append("ferment by post")
    if slug in household.never:
        found.append("never")
    return found
