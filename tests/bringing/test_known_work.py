"""A row of a method stands unasked where it is plainly work; what is not known is asked about.

Steps: two or three short ones of a few open recipes in each language, named beside them. Rows of
pages: what a blog's program, a shop and a letter set below a recipe, and what their writers chat.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, steps
from stillroom.bringing.doubted import doubted_steps
from stillroom.bringing.known_work import is_work, tongues_of

BEGUN = {
    "en": ("Stone the plums and boil them with the sugar.", "1 kg plums"),
    "de": ("Die Pflaumen mit dem Zucker kochen und in die Gläser füllen.", "1 kg Pflaumen"),
    "fr": ("Laver les prunes et les cuire avec le sucre dans la bassine.", "1 kg de prunes"),
    "es": ("Lava las ciruelas y cuécelas con el azúcar en la olla.", "1 kg de ciruelas"),
    "it": ("Lavate le prugne e cuocetele con lo zucchero nella pentola.", "1 kg di prugne"),
    "nl": ("Was de pruimen en kook ze met de suiker in een pan.", "1 kg pruimen"),
    "sv": ("Skölj plommonen och koka dem med sockret i en kastrull.", "1 kg plommon"),
    "da": ("Skyl blommerne og kog dem med sukkeret i en gryde.", "1 kg blommer"),
    "nb": ("Skyll plommene og kok dem med sukkeret i en gryte.", "1 kg plommer"),
    "pt": ("Lave as ameixas e cozinhe com o açúcar em uma panela.", "1 kg de ameixas"),
    "pl": ("Śliwki umyć i gotować z cukrem w garnku.", "1 kg śliwek"),
    "cs": ("Švestky omyjeme a vaříme s cukrem v hrnci.", "1 kg švestek"),
}
"""Invented: what the paper of each row begins with, and one thing that goes in."""

WORK = {
    # github.com: LukeSmithxyz/based.cooking
    "en": """
        In a bowl combine dry ingredients
        Serve right away.
        Hard boil 4 eggs.
        Sweat the shallots in the same pan.
    """,
    # skoenig/kochbuch, cptpiepmatz/rezepte.ttst.de
    "de": """
        Speck oder Bacon hinzugeben und anbraten.
        Mit Salz und Pfeffer abschmecken.
        Alles zusammen aufkochen lassen.
        Den Feta in kleine Würfel schneiden.
    """,
    # XonqNopp/recettes, kruchten/spoon
    "fr": """
        Ecraser les gousses d'ail.
        Bien mélanger à la main
        Eventuellement griller le mais.
        Couvrir et laisser 1h au frigo.
    """,
    # iwaterhd-beep/recetasandaluzas
    "es": """
        Enharina y sacude en colador grueso.
        Seca muy bien las puntillitas. Mezcla con sal.
        Pela a vivo y corta en gajos.
        Fríe 2–3 min a 180 °C hasta dorado claro.
    """,
    # Nobodyy082102/ricette-italiane
    "it": """
        Lascia raffreddare il vitello nel suo brodo.
        Versa negli stampini riempiendo a metà.
        Cuoci la pasta al dente, scolala e versala nel sugo.
        Sforna e guarnisci con basilico fresco.
    """,
    # Simon-De-Wilde/recepten-tramstraat
    "nl": """
        Klop de eiwitten op tot stijve pieken.
        Vouw de opgeklopte eiwitten er voorzichtig door
        Bak de pannenkoeken
        Beboter en bebloem de taartvorm
    """,
    # jockemedw/Receptbok
    "sv": """
        Sätt ugnen på 225 grader.
        Mixa med stavmixer. Blanda ner ägg och kryddor.
        Fördela soppan i skålar och toppa med valfria tillbehör.
        Blanda i lite gurkmeja för finare färg (valfritt).
    """,
    # tbsalling/opskrifter
    "da": """
        Server straks, mens skorpen stadig er sprød.
        Smag til med salt og eventuelt dild eller mynte.
        Lad farsen hvile 10 minutter, så den samler sig.
        Form små frikadeller med en ske.
    """,
    # petrepa/bestemor-oppskrifter
    "nb": """
        Visp alt saman i gryta.
        Gryten takast av varmen.
        Overstrøys med sukker, nøtter eller mandlar.
        Sylteglas varmast i bakaromn på 100 grader.
    """,
    # adrianosferreira/afrodite.json
    "pt": """
        Com uma espátula retire os cookies da assadeira e sirva
        Desenforme, polvilhe açúcar de confeiteiro e sirva em seguida.
        Sirva com a cestinha.
    """,
    # msieroslawska/przepisy-babci-lali
    "pl": """
        Ubić jajka z cukrem.
        Piec w 200st. przez 40 minut.
        Zagnieść ciasto, podzielić na pół.
        Nałożyć na wafel, przykryć pianą.
    """,
    # OzzyCzech/recepty.ozzyczech.cz
    "cs": """
        Promíchat suché ingredience.
        Zašlehat rozpuštěné máslo.
        Omáčku osolíme a opepříme podle chuti.
        Na slaninu navrstvi brambory (měsíčky nebo kolečka).
    """,
}
NONE = {
    "en": """
        Share on Facebook (Opens in new window)
        Like Loading...
        Your email address will not be published. Required fields are marked *
        Save my name, email, and website in this browser for the next time I comment.
        Jump to Recipe
        Add to cart
        Free delivery on orders over £30
        Baked apples with cinnamon
        Continue reading
        Next Post: How to store apples
        Filed under: Preserves
        The finished jam on toast
        Cook's corner
        As an associate I earn from qualifying purchases.
        Tried this recipe? Tag us
        Ann says: I made this last week and it was lovely!
        Mary Smith
        My mum used to make this every autumn.
        The cost of this present is under $1.
        Preserving pans and jam jars from our shop
        Sent from my telephone
    """,
    "de": """
        Teilen mit:
        Gefällt mir wird geladen …
        Ähnliche Beiträge
        Antworten abbrechen
        In den Warenkorb
        Zur Merkliste hinzufügen
        Kochen mit Kindern
        inkl. MwSt. zzgl. Versandkosten
        Gebackene Äpfel mit Zimt
        Unser Pflaumenbaum im Garten
        Mein Opa hat sie immer zum Frühstück gegessen.
        « Zur Übersicht: Ideen für die Beerenzeit
        Diese Marmelade ist bei uns jedes Jahr der Renner.
    """,
    "fr": """
        J’aime chargement…
        Annuler la réponse
        Ajouter au panier
        Ajouter aux favoris
        Livraison gratuite dès 30 €
        Tarte aux pommes de grand-mère
        Lire la suite
        Le prunier de notre jardin
        Cette confiture est un délice au petit-déjeuner.
        Ma grand-mère la faisait chaque automne.
    """,
    "es": """
        Haz clic para compartir en Facebook (Se abre en una ventana nueva)
        Añadir al carrito
        Envío gratis a partir de 30 €
        Mermelada de higos
        Leer más
        El ciruelo de nuestro jardín
        Esta mermelada está riquísima con queso.
        Mi abuela la hacía todos los otoños.
    """,
    "it": """
        Mi piace Caricamento...
        Annulla risposta
        Aggiungi al carrello
        Crostata di prugne
        Leggi tutto
        Il prugno del nostro giardino
        Questa confettura è deliziosa con i formaggi.
        Mia nonna la preparava ogni autunno.
    """,
    "nl": """
        Geef een reactie
        Voeg toe aan winkelwagen
        Appeltaart van oma
        Lees meer
        De pruimenboom in onze tuin
        Misschien vind je dit ook leuk
        Deze jam is heerlijk bij de kaas.
        Mijn oma maakte hem elk najaar.
    """,
    "sv": """
        Gilla Laddar in …
        Lämna ett svar
        Lägg i varukorgen
        Äppelkaka med kanel
        Läs mer
        Vårt plommonträd i trädgården
        Min mormor gjorde den varje höst.
    """,
    "da": """
        Skriv et svar
        Læg i kurv
        Æblekage med kanel
        Blommetræet i vores have
        Marmeladen er dejlig til ost.
        Min mormor lavede den hvert efterår.
    """,
    "nb": """
        Legg i kurv
        Eplekake med kanel
        Plommetreet i hagen vår
        Min mormor laget det hver høst.
    """,
    "pt": """
        Curtir Carregando...
        Cancelar resposta
        Adicionar ao carrinho
        Doce de abóbora
        Leia mais
        Na foto acima, o licor de cacau
        Minha avó fazia todo outono.
    """,
    "pl": """
        Lubię to:
        Anuluj pisanie odpowiedzi
        Dodaj do koszyka
        Ciasto ze śliwkami
        Czytaj dalej
        Śliwa w naszym ogrodzie
        Moja babcia robiła go każdej jesieni.
    """,
    "cs": """
        Líbí se mi:
        Přidat do košíku
        Švestkový koláč
        Číst dál
        Naše švestka na zahradě
        Babička je dělala každý podzim.
        Kde je máte nejraději vy?
    """,
}


def _rows(told: str) -> list[str]:
    return [row.strip() for row in told.strip().split("\n")]


def _cases(told: dict[str, str]) -> list[tuple[str, str]]:
    return [(tongue, row) for tongue, rows in told.items() for row in _rows(rows)]


@pytest.mark.parametrize(("tongue", "row"), _cases(WORK))
def test_a_step_is_known_as_work(tongue: str, row: str) -> None:
    step, thing = BEGUN[tongue]
    assert doubted_steps([step, row], [thing]) == []


@pytest.mark.parametrize(("tongue", "row"), _cases(NONE))
def test_a_row_of_a_page_is_not_known_as_work(tongue: str, row: str) -> None:
    step, thing = BEGUN[tongue]
    assert doubted_steps([step, row], [thing]) == [row]


@pytest.mark.parametrize("tongue", BEGUN)
def test_a_paper_is_in_its_language(tongue: str) -> None:
    assert tongue in tongues_of([*_rows(WORK[tongue]), *BEGUN[tongue]])


def test_one_question_names_the_rows_and_none_of_the_steps() -> None:
    odd = ["Orchard fair in September", "Cook's corner"]
    rows = [BEGUN["en"][0], odd[0], "Tip the jam into the jars.", odd[1], "Close the jars."]
    told = "\n".join(f"{at}. {row}" for at, row in enumerate(rows, 1))
    (found,) = brought(f"Plum jam\n\nIngredients\n1 kg plums\n800 g sugar\n\nMethod\n{told}\n")
    asked_of = [one for one in found.questions if "part of the method?" in one.what]
    assert [one.what for one in asked_of] == [
        'Is this part of the method? "Orchard fair in September" · "Cook\'s corner".'
    ]
    assert steps(found) == rows, "each stands where it stood until it is answered"


def test_a_right_paper_is_asked_nothing_of_its_method() -> None:
    told = "\n".join(f"{at}. {row}" for at, row in enumerate(_rows(WORK["en"]), 1))
    (found,) = brought(f"Shallots\n\nIngredients\n4 eggs\n2 shallots\n\nMethod\n{told}\n")
    assert "part of the method?" not in asked(found)


@pytest.mark.parametrize(
    ("text", "works"),
    [
        ("Boil the plums.", True),
        ("Boil the plums?", False),
        ("Keep refrigerated.", True),
        ("Keep reading.", False),
    ],
)
def test_a_question_bids_nothing_and_a_way_to_keep_does(text: str, works: bool) -> None:
    assert is_work(text, ("en",)) is works
