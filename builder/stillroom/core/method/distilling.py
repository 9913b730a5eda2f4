"""Whether a method makes alcohol stronger: by heat and catching the vapour, or by freezing it out.

Known by what is done and not by one word: a pan with an upturned lid is a still, "pot still
whiskey" in a list is a bottle. Leaves out whether there is alcohol in it: told.py asks for it.
"""

from __future__ import annotations

import re

from stillroom.core.method.sentences import split_sentences
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex

_FORBIDS = clause_regex(r"^\W*(?:never|do not|don['’]t|without)\b", re.IGNORECASE)
_BOUGHT = clause_regex(
    r"\b(?:pot|column|copper|patent)[- ]still(?:ed)? (?:\w+ )?(?:whisk\w+|rum|gin|brandy|spirit"
    r"|cognac)"
    r"|\b(?:double|triple|twice)?[- ]?distilled (?:water|vinegar|malt|white|gin|spirit|rose)\w*"
    r"|\b(?:stand|sit|lie|leave|keep|hold|be|is|are) (?:\w+ )?still\b|\bstill (?:warm|hot|wet"
    r"|green|water)\b",
    re.IGNORECASE,
)
_APPARATUS = clause_regex(
    r"\b(?:distil(?:l|ls|led|ling|lation|s)?\b|destillier\w*|distiller\b|distilar|destilar"
    r"|(?:pot|reflux|copper|column|air|steam|home|water|hooch)[- ]stills?\b"
    r"|\b(?:in|into|through|from|with|of) (?:a|the|your|my|our|an old|a small|a little|a copper)"
    r" stills?\b(?! (?:day|dry|night|evening|morning|pond|life|lake|air|room|warm|hot))(?!,)"
    r"|alembics?|alambics?|alambiques?|retorts?|thumper|reflux column|fractionating|worm tub"
    r"|moonshine|hooch still|lyne arm|apple ?jacking|jack(?:ing)? it)",
    re.IGNORECASE,
)
_HEATS = clause_regex(
    r"\b(?:heat|simmer|boil|warm|cook|steam|hob|stove|flame|fire)\w*", re.IGNORECASE
)
_CATCHES = clause_regex(
    r"\bcondens(?:es|ers?|ates?|ation)\b|\bcondensed (?:vapou?rs?|steam|spirits?|alcohol|drops?)\b"
    r"|\b(?:vapou?rs?|steam|spirits?|alcohol)\b[^.]{0,40}\bcondens\w+"
    r"|\bcondens\w+\b[^.]{0,20}\b(?:vapou?rs?|steam|spirits?|alcohol)\b"
    r"|\bcool(?:ing|ed)? coil|\bcopper (?:coil|tube|pipe)"
    r"|\b(?:upturned|inverted|upside[- ]down|domed|concave)[^.]{0,30}\b(?:lid|bowl|wok)"
    r"|\blid\b[^.]{0,30}\b(?:upside[- ]down|turned over|of ice|with ice|full of ice)"
    r"|\b(?:catch|collect|gather)\w*\b[^.]{0,40}\b(?:drips?|drops?|vapou?rs?|spirit|distillate"
    r"|steam"
    r"|runs? (?:off|out)|comes? (?:over|off|out))"
    r"|\bforeshots?\b",
    re.IGNORECASE,
)
_PARTED = {
    part: clause_regex(
        rf"\b{part}\b[^.]{{0,40}}\b(?:throw|discard|keep|cut|collect)"
        rf"|\b(?:throw|discard|keep|cut)\b[^.]{{0,40}}\b{part}\b",
        re.IGNORECASE,
    )
    for part in ("heads", "hearts", "tails")
}
"""What runs off a still first, then, and last, kept or thrown away; foods have such parts too."""
_FLOWERS = (
    r"\w*flowers?|\w*blossoms?|elder\w*|lavender|clover|dandelions?|roses?|ch?amomile|marigolds?"
    r"|poppy|poppies|hops?|garlic|onions?|shallots?|chives?|dill|fennel|lettuces?|cabbages?"
    r"|broccoli"
)
_FISH = (
    r"prawns?|shrimps?|lobsters?|cray\w*|langoustines?|\w*fish|mackerel|sardines?|anchov\w*"
    r"|herrings?|salmon|trouts?|sprats?|eels?"
)
_HAVE = {
    "heads": clause_regex(rf"\b(?:heads?|{_FLOWERS}|{_FISH})\b", re.IGNORECASE),
    "hearts": clause_regex(r"\b(?:hearts?|artichokes?|celery|lettuces?|palm)\b", re.IGNORECASE),
    "tails": clause_regex(
        rf"\b(?:tails?|oxtails?|{_FISH}|\w*berr(?:y|ies)|\w*currants?|radish\w*|beets?|beetroots?"
        r"|turnips?|beans?)\b",
        re.IGNORECASE,
    ),
}
"""Foods of a list that have such parts: then they are theirs."""
_FREEZES = clause_regex(r"\b(?:freez\w*|froze\w*|frost\w*|snow|icy nights?)\b", re.IGNORECASE)
_ICE_OUT = clause_regex(
    r"\b(?:lift|take|skim|scoop|pick|throw|strain|fish|remove|discard"
    r"|chip)\w*\b[^.]{0,30}\bice\b(?! cream)"
    r"|\bice\b[^.]{0,20}\b(?:away|off|out)\b"
    r"|\b(?:pour|drain|draw|keep|save|catch|collect|run|tip|siphon|drip|thaw)\w*\b[^.]{0,50}"
    r"\b(?:not (?:yet )?frozen|unfrozen|stays? liquid|still liquid|liquid(?: part)?|runs first"
    r"|first melt\w*"
    r"|strong part)"
    r"|\b(?:let|leave)\b[^.]{0,40}\bdrip\b[^.]{0,40}\b(?:ice|slush|block)\b"
    r"|\bfractional freezing|\bfreeze[- ]?(?:distil|concentrat)\w*",
    re.IGNORECASE,
)


def strengthens_alcohol(recipe: Recipe) -> str:
    """Return the words of a method that say so, "" when it does not."""
    sentences = [
        _BOUGHT.sub(" ", sentence)
        for step in recipe.method
        for sentence in split_sentences(step.text)
        if not _FORBIDS.match(sentence)
    ]
    named = next((found for one in sentences if (found := _APPARATUS.search(one))), None)
    if named:
        return named[0]
    listed = " ".join(f"{one.item} {one.note}" for one in recipe.ingredients)
    parts = [_PARTED[part] for part, have in _HAVE.items() if not have.search(listed)]
    # vapour is caught in the step that heats or a later one; so is ice taken out after frost
    caught = (_behind(sentences, _HEATS, caught) for caught in (_CATCHES, *parts))
    return next(filter(None, caught), "") or _behind(sentences, _FREEZES, _ICE_OUT)


def _behind(sentences: list[str], first: re.Pattern[str], then: re.Pattern[str]) -> str:
    """Return the words that `then` finds where `first` stood, or in a sentence behind it."""
    met = False
    for sentence in sentences:
        met = met or bool(first.search(sentence))
        found = then.search(sentence)
        if met and found:
            return found[0]
    return ""
