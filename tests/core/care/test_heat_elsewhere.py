"""Heat in other languages: what is baked is not raw, and what is raw stays so."""

from __future__ import annotations

import pytest

from stillroom.core.care.safety import assess_safety
from stillroom.core.method.keeping_said import ask_of_keeping
from stillroom.core.reading.recipe_file import read_recipe
from stillroom.core.recipe.settings import BookSettings

_KIPFERL = ("280 g Mehl", "210 g Butter", "100 g gemahlene Mandeln", "80 g Zucker", "2 Eigelb")
# (what is in it, its method), each baked or boiled through
BAKED = {
    "de": (_KIPFERL, ("Alle Zutaten verkneten.", "Formen und bei 180° ca. 12 Min backen.")),
    "de oven": (_KIPFERL, ("Alles verkneten und 15 Min. in den vorgeheizten Ofen schieben.",)),
    "de, ca. and Min.": (_KIPFERL, ("Verkneten. Bei 175 °C ca. 12 Min. backen.",)),
    "fr": (
        ("250 g de farine", "125 g de beurre", "2 œufs", "100 g de sucre"),
        ("Mélanger la farine, le beurre, les œufs et le sucre.", "Enfourner 15 minutes à 180 °C."),
    ),
    "fr, cuire": (
        ("250 g de farine", "3 jaunes d'œufs", "100 g de sucre"),
        ("Mélanger tous les ingrédients.", "Faire cuire au four 12 minutes."),
    ),
    "es": (
        ("250 g de harina", "100 g de mantequilla", "2 huevos"),
        ("Mezclar la harina, la mantequilla y los huevos.", "Hornear 15 minutos a 180 grados."),
    ),
    "it": (
        ("250 g di farina", "100 g di burro", "2 uova"),
        ("Impastare la farina, il burro e le uova.", "Infornare a 180 °C per 15 minuti."),
    ),
    "nl": (
        ("250 g bloem", "150 g boter", "1 ei"),
        ("Kneed de bloem, de boter en het ei.", "Bak ze 15 minuten in de oven op 180 graden."),
    ),
    "nl, told": (
        ("450 g bloem", "300 g boter", "1 eierdooier"),
        ("Kneed alles.", "Bestrijk met de eierdooier en bak 25 minuten op 175 graden."),
    ),
}
# each with egg that no heat reaches, or may not reach
RAW = {
    "nl, a bowl": (
        ("250 g bloem", "150 g boter", "1 ei"),
        ("Doe alles in een bak en kneed.", "Zet de bak 2 uur in de koelkast."),
    ),
    "de, not baked": (_KIPFERL, ("Alle Zutaten verkneten.", "Nicht backen, nur kühlen.")),
    "de, without baking": (_KIPFERL, ("Alles verkneten, ohne zu backen.", "Kühlen.")),
    "de, only made hot": (_KIPFERL, ("Den Ofen auf 180 °C vorheizen.", "Alles verkneten.")),
    "de, eggnog": (
        ("6 Eigelb", "200 g Zucker", "250 ml Sahne", "250 ml Rum"),
        (
            "Eigelb mit Zucker schaumig schlagen.",
            "Sahne aufkochen und abkühlen lassen.",
            "Mischen.",
        ),
    ),
    "de, sugar boiled": (
        ("3 Eier", "200 g Zucker"),
        ("Die Eier schaumig schlagen.", "Den Zucker kochen, bis er bräunt.", "Alles mischen."),
    ),
    "de, icing": (
        ("250 g Mehl", "125 g Butter", "1 Eiweiß", "150 g Puderzucker"),
        ("Mehl und Butter verkneten und 12 Minuten backen.", "Eiweiß und Puderzucker darauf."),
    ),
    "de, icing first": (
        ("250 g Mehl", "125 g Butter", "1 Eiweiß", "150 g Puderzucker"),
        ("Für die Glasur Eiweiß und Puderzucker rühren.", "Mehl und Butter verkneten und backen."),
    ),
    "de, egg twice": (
        ("250 g Mehl", "125 g Butter", "2 Eier", "150 g Puderzucker"),
        ("Mehl, Butter und Eier verkneten und backen.", "Das zweite Ei mit Puderzucker rühren."),
    ),
    "de, jars boiled": (_KIPFERL, ("Alle Zutaten verkneten.", "Die Gläser auskochen und kochen.")),
    "de, on the card": (_KIPFERL, ("Alle Zutaten verkneten.", "Auf die Karte: 12 Min backen.")),
    "fr, mousse": (
        ("200 g de chocolat", "4 œufs"),
        ("Faire fondre le chocolat.", "Incorporer les œufs sans cuire."),
    ),
    "fr, quatre": (
        ("250 g de farine", "4 œufs"),
        ("Mélanger la farine et les œufs. Préchauffer le four, puis l'éteindre.",),
    ),
    "es": (("4 huevos", "100 g de azúcar"), ("Batir los huevos y el azúcar, sin hervir.",)),
    "it": (
        ("3 uova", "500 g di mascarpone"),
        ("Montare le uova con il mascarpone, non cuocere.",),
    ),
    "nl": (("4 eieren", "100 g suiker"), ("Klop de eieren met suiker, niet koken.",)),
}


def _rules(lines: tuple[str, ...], method: tuple[str, ...], language: str = "en_GB") -> set[str]:
    listed = "\n".join(f"  - {line}" for line in lines)
    steps = "\n".join(f"{place}. {step}" for place, step in enumerate(method, 1))
    text = (
        f"---\ntitle: Tried\nkind: biscuits\nmakes: 60 Stück\ningredients:\n{listed}\n"
        f"keeps: 1 week\n---\n\n## Method\n\n{steps}\n"
    )
    recipe = read_recipe(text, "tried.md", "tried", language=language)
    return {caution.rule for caution in assess_safety(recipe, BookSettings()).cautions}


@pytest.mark.parametrize("name", BAKED)
@pytest.mark.parametrize("language", ["en_GB", "book"])
def test_what_is_baked_in_another_language_holds_no_raw_egg(name: str, language: str) -> None:
    own = f"{name[:2]}_{name[:2].upper()}" if language == "book" else language
    assert "raw-egg" not in _rules(*BAKED[name], own)


@pytest.mark.parametrize("name", RAW)
def test_what_no_heat_surely_reaches_stays_raw(name: str) -> None:
    assert "raw-egg" in _rules(*RAW[name])


# (a last step, what is asked)
KEPT = [
    ("In der Blechdose halten sie 3 Wochen.", "3 weeks"),
    ("Kühl und dunkel 6 Monate haltbar.", "6 months"),
    ("Se conserve 2 mois au frais.", "2 months"),
    ("Se conserva 3 semanas en una lata.", "3 weeks"),
    ("Si conservano due mesi in dispensa.", "2 months"),
    ("Goed gesloten 4 weken houdbaar.", "4 weeks"),
]


def _asked(step: str, keeps: str = "") -> tuple[str, ...]:
    text = (
        "---\ntitle: Tried\nkind: biscuits\nmakes: 60 Stück\ningredients:\n  - 250 g Mehl\n"
        f"{keeps}---\n\n## Method\n\n1. Backen. {step}\n"
    )
    return tuple(one.mend for one in ask_of_keeping(read_recipe(text, "tried.md", "tried")))


@pytest.mark.parametrize(("step", "span"), KEPT)
def test_how_long_it_keeps_in_another_language_is_asked(step: str, span: str) -> None:
    assert _asked(step) == (f'If that is of one unopened, write "keeps: {span} unopened" above.',)
    assert _asked(step, "keeps: 2 weeks\n") == ()


@pytest.mark.parametrize(
    "step", ["3 Wochen ziehen lassen.", "2 Stunden kühl halten.", "Laisser reposer 2 jours."]
)
def test_a_wait_is_no_keeping(step: str) -> None:
    assert _asked(step) == ()
