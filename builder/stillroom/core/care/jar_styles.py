"""How what goes into jars is made, by its words: pieces, puree, juice, syrup, butter, jam.

USDA's tables were tested for one way of making each. Leaves out the foods and the times:
processes.py.
"""

from __future__ import annotations

from collections.abc import Iterable

from stillroom.core.words.patterns import clause_pattern

# the first that fits; the title says what a thing is, the method only how smooth it gets
_BY_TITLE = (
    ("pie filling", r"\bpie[- ]?fillings?\b"),
    ("jam", r"\b(?:jams?|jell(?:y|ies)|marmalades?|preserves?|conserves?|konfit\w*|marmelad\w*"
     r"|confitures?|mermeladas?|gel[ée]es?|gelees?|confettur\w*|marmellat\w*|gel[eè]i|jam\w*)\b"),
    ("in syrup", r"\bin (?:[\w-]+ ){0,2}(?:syrup|sirup|sirop)\b"),
    ("butter", r"\bbutters?\b"),
    ("syrup", r"\b(?:syrups?|cordials?|squash|sirup|sirop|jarabe)\b"),
    ("juice", r"\bjuices?\b(?! pack)"),
    ("puree", r"\b(?:pur[eé]es?|apple ?sauces?|passata|coulis)\b"),
    ("crushed", r"\bcrushed\b"),
)  # fmt: skip
_BY_METHOD = (
    ("jam", r"\b(?:setting point|boil(?:s|ed)? to a set|until (?:it )?sets|wrinkl\w+"
     r"|gell?ing point|jellying point|104|105 ?°?c|220 ?°?f)\b"),
    ("juice", r"\b(?:jelly bag|muslin|cheesecloth)\b"),
    ("puree", r"\b(?:food mill|sieve|pur[eé]e|blend(?:er)?|liquidi[sz]e\w*|mouli)\b"),
    ("crushed", r"\bcrush(?:ing|ed)?\b"),
)  # fmt: skip

_BAG = r"(?:jelly bag|muslin|cheesecloth|scalded cloth|fine cloth|tea ?towel|bag)"
_STRAINED = clause_pattern(
    rf"\b(?:drip\w*|strain\w*|drain\w*|hang\w*|hung|pour\w*|tip\w*|turn\w*)\b[^.]*\b{_BAG}\b"
    rf"|\b{_BAG}\b[^.]*\b(?:drip\w*|strain\w*|drain\w*)|\bstrained juice\b"
    r"|\bstrain\w* (?:off )?(?:the|all the) (?:juice|liquid)"
)


def is_strained(clauses: Iterable[str]) -> bool:
    """Say whether only the juice goes on, and what is in the bag does not.

    >>> is_strained(["let it drip overnight through a jelly bag"]), is_strained(["stir the pulp"])
    (True, False)
    """
    return any(_STRAINED.search(clause) for clause in clauses)


def style_of(title: str, clauses: Iterable[str]) -> str:
    """Return how it is made: by its title, else by its method, else it lies in pieces.

    >>> style_of("Peaches in light syrup", ["Pack the halves into jars."])
    'in syrup'
    >>> style_of("Bottled apples", ["Press through a food mill."])
    'puree'
    """
    for style, pattern in _BY_TITLE:
        if clause_pattern(pattern).search(title):
            return style
    told = " . ".join(clauses)
    for style, pattern in _BY_METHOD:
        if clause_pattern(pattern).search(told):
            return style
    return "pieces"
