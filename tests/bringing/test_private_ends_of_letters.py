"""What a letter says to one person between its recipe and its farewell, in ten languages.

A judge's letters showed the family: a private paragraph behind the last step was published
among the notes. The sentences are written for this, with as many that must stay.
"""

from __future__ import annotations

from email.message import EmailMessage

import pytest

from bringing.drafts import asked, brought, steps

# language of the book, the letter down to its last step, its farewell
LETTERS = {
    "en": (
        "en_GB",
        "Hi Jo,\n\nsee below.\n\nPlum jam\n\n"
        "Ingredients\n\n1 kg plums\n1 kg sugar\n\n"
        "Method\n\n1. Boil the plums.\n2. Add the sugar and boil.\n",
        "Love,\nAnn",
    ),
    "de": (
        "de_DE",
        "Liebe Jo,\n\nhier das Rezept.\n\nPflaumenmarmelade\n\n"
        "Zutaten\n\n1 kg Pflaumen\n1 kg Zucker\n\n"
        "Zubereitung\n\n1. Pflaumen kochen.\n2. Zucker zugeben und kochen.\n",
        "Liebe Grüße\nAnn",
    ),
    "fr": (
        "fr_FR",
        "Chère Jo,\n\nvoici la recette.\n\nConfiture de prunes\n\n"
        "Ingrédients\n\n1 kg de prunes\n1 kg de sucre\n\n"
        "Préparation\n\n1. Cuire les prunes.\n2. Ajouter le sucre et cuire.\n",
        "Bisous,\nAnn",
    ),
    "it": (
        "it_IT",
        "Cara Jo,\n\necco la ricetta.\n\nMarmellata di prugne\n\n"
        "Ingredienti\n\n1 kg di prugne\n1 kg di zucchero\n\n"
        "Preparazione\n\n1. Cuocere le prugne.\n2. Aggiungere lo zucchero e cuocere.\n",
        "Baci,\nAnn",
    ),
    "es": (
        "es_ES",
        "Hola Jo,\n\naquí va la receta.\n\nMermelada de ciruelas\n\n"
        "Ingredientes\n\n1 kg de ciruelas\n1 kg de azúcar\n\n"
        "Preparación\n\n1. Cocer las ciruelas.\n2. Añadir el azúcar y cocer.\n",
        "Besos,\nAnn",
    ),
    "sv": (
        "sv_SE",
        "Hej Jo,\n\nhär är receptet.\n\nPlommonsylt\n\n"
        "Ingredienser\n\n1 kg plommon\n1 kg socker\n\n"
        "Gör så här\n\n1. Koka plommonen.\n2. Tillsätt sockret och koka.\n",
        "Kram,\nAnn",
    ),
    "nl": (
        "nl_NL",
        "Lieve Jo,\n\nhier het recept.\n\nPruimenjam\n\n"
        "Ingrediënten\n\n1 kg pruimen\n1 kg suiker\n\n"
        "Bereiding\n\n1. Kook de pruimen.\n2. Voeg de suiker toe en kook.\n",
        "Liefs,\nAnn",
    ),
    "pt": (
        "pt_PT",
        "Olá Jo,\n\naqui vai a receita.\n\nDoce de ameixa\n\n"
        "Ingredientes\n\n1 kg de ameixas\n1 kg de açúcar\n\n"
        "Preparação\n\n1. Coza as ameixas.\n2. Junte o açúcar e coza.\n",
        "Beijinhos,\nAnn",
    ),
    "da": (
        "da_DK",
        "Hej Jo,\n\nher er opskriften.\n\nBlommemarmelade\n\n"
        "Ingredienser\n\n1 kg blommer\n1 kg sukker\n\n"
        "Fremgangsmåde\n\n1. Kog blommerne.\n2. Tilsæt sukkeret og kog.\n",
        "Knus,\nAnn",
    ),
    "pl": (
        "pl_PL",
        "Cześć Jo,\n\noto przepis.\n\nDżem śliwkowy\n\n"
        "Składniki\n\n1 kg śliwek\n1 kg cukru\n\n"
        "Przygotowanie\n\n1. Ugotować śliwki.\n2. Dodać cukier i gotować.\n",
        "Buziaki,\nAnn",
    ),
}
PRIVATE = [
    ("en", "Call me when you get home from work, I have to tell you about Bea leaving Tom."),
    ("en", "Mum is out of hospital, by the way. The house sale fell through."),
    ("en", "I am eating them tonight. See you at the hearing on the 14th, hang in there."),
    ("en", "We are off to Spain on Friday."),
    ("en", "Tom lost his job in March and is taking it badly."),
    ("en", "Has the doctor rung you back yet?"),
    ("en", "The twins start school on Monday and Bea is dreading it."),
    ("en", "Dad's test results came back clear, thank God."),
    ("en", "I never told you why I left, did I."),
    ("en", "My new number is on the card I sent you."),
    ("de", "Ruf mich an, wenn du von der Arbeit kommst, ich muss dir von Bea erzählen."),
    ("de", "Oma ist wieder aus dem Krankenhaus zurück. Das Haus ist leider nicht verkauft."),
    ("de", "Hast du schon etwas vom Gericht gehört?"),
    ("de", "Wir fahren am Freitag nach Spanien."),
    (
        "fr",
        "Appelle-moi quand tu rentres du travail, il faut que je te raconte la séparation de Bea.",
    ),
    ("fr", "Papa est sorti de l'hôpital. La vente de la maison est tombée à l'eau."),
    ("fr", "Nous partons en Espagne vendredi."),
    ("it", "Chiamami quando torni dal lavoro, devo raccontarti della separazione di Bea."),
    ("it", "La nonna è uscita dall'ospedale. La casa non si vende."),
    ("it", "Venerdì partiamo per la Spagna."),
    ("es", "Llámame cuando salgas del trabajo, tengo que contarte lo de la separación de Bea."),
    ("es", "La abuela ya salió del hospital. La casa no se vende."),
    ("es", "El viernes nos vamos a Francia."),
    ("sv", "Ring mig när du kommer hem från jobbet, jag måste berätta om Bea."),
    ("sv", "Mamma är hemma från sjukhuset."),
    ("sv", "Vi åker till Spanien på fredag."),
    ("nl", "Bel me als je thuis bent van je werk, ik moet je vertellen over Bea."),
    ("nl", "Oma is weer thuis uit het ziekenhuis. Het huis is niet verkocht."),
    ("nl", "Vrijdag gaan we naar Spanje."),
    ("pt", "Liga-me quando chegares do trabalho, tenho de te contar da separação da Bea."),
    ("pt", "A avó já saiu do hospital. A casa não se vendeu."),
    ("pt", "Sexta vamos para Espanha."),
    ("pt", "Me liga quando chegar do trabalho, preciso te contar da separação da Bia."),
    ("da", "Ring til mig når du kommer hjem fra arbejde, jeg må fortælle dig om Bea."),
    ("da", "Mormor er hjemme fra hospitalet. Huset blev ikke solgt."),
    ("da", "Vi tager til Spanien på fredag."),
    ("pl", "Zadzwoń do mnie po pracy, muszę ci opowiedzieć o Bei."),
    ("pl", "Babcia wróciła ze szpitala. Dom się nie sprzedał."),
]
OF_THE_RECIPE = [
    ("en", "Keeps a year in the larder."),
    ("en", "You can use damsons too."),
    ("en", "I sometimes add a stick of cinnamon."),
    ("en", "The flavour improves with time."),
    ("en", "I make mine in the slow cooker."),
    ("en", "You will need about six jars."),
    ("en", "If you like it sharper, use less sugar."),
    ("en", "It is lovely with cheese."),
    ("en", "We like it on toast."),
    ("en", "I usually leave it overnight."),
    ("en", "Don't forget to label the jars."),
    ("en", "If it does not set, boil it again."),
    ("en", "You'll need a big pan for this."),
    ("en", "My mother always put a knob of butter in."),
    ("de", "Hält sich ein Jahr."),
    ("de", "Du kannst auch Zwetschgen nehmen."),
    ("de", "Ich gebe manchmal eine Zimtstange dazu."),
    ("de", "Wenn sie nicht fest wird, nochmal kochen."),
    ("de", "Wir essen sie gern auf Toast."),
    ("de", "Du brauchst etwa sechs Gläser."),
    ("fr", "Se conserve un an."),
    ("fr", "Tu peux aussi mettre des mirabelles."),
    ("fr", "J'ajoute parfois un bâton de cannelle."),
    ("fr", "Il te faudra six pots."),
    ("fr", "Si elle ne prend pas, remets-la sur le feu."),
    ("it", "Si conserva un anno."),
    ("it", "Puoi usare anche le susine."),
    ("it", "Io aggiungo una stecca di cannella."),
    ("it", "Se non si addensa, falla bollire ancora."),
    ("it", "Ti servono sei vasetti."),
    ("es", "Se conserva un año."),
    ("es", "También puedes usar cerezas."),
    ("es", "Yo le pongo una rama de canela."),
    ("es", "Si no espesa, hiérvela otra vez."),
    ("es", "Necesitas seis tarros."),
    ("sv", "Håller ett år."),
    ("sv", "Du kan använda körsbär också."),
    ("sv", "Jag brukar lägga i en kanelstång."),
    ("sv", "Om den inte stelnar, koka den igen."),
    ("sv", "Du behöver sex burkar."),
    ("nl", "Een jaar houdbaar."),
    ("nl", "Je kunt ook kersen gebruiken."),
    ("nl", "Ik doe er soms een kaneelstokje bij."),
    ("nl", "Als hij niet dik wordt, kook hem nog eens."),
    ("nl", "Je hebt zes potjes nodig."),
    ("pt", "Conserva-se um ano."),
    ("pt", "Podes usar cerejas também."),
    ("pt", "Eu ponho um pau de canela."),
    ("pt", "Se não engrossar, ferve outra vez."),
    ("pt", "Precisas de seis frascos."),
    ("da", "Holder sig et år."),
    ("da", "Du kan også bruge kirsebær."),
    ("da", "Jeg kommer en kanelstang i."),
    ("da", "Hvis den ikke bliver tyk, så kog den igen."),
    ("da", "Du skal bruge seks glas."),
    ("pl", "Można przechowywać rok."),
    ("pl", "Możesz dać też wiśnie."),
    ("pl", "Ja dodaję laskę cynamonu."),
    ("pl", "Jak nie zgęstnieje, gotuj jeszcze raz."),
]


def drafts_of(tongue: str, said: str, is_mail: bool) -> tuple[str, str, int]:
    """Return what stands below the facts, what is asked, and the number of steps."""
    language, letter, farewell = LETTERS[tongue]
    text = f"{letter}\n{said}\n\n{farewell}\n"
    if is_mail:
        mail = EmailMessage()
        mail["From"], mail["To"], mail["Subject"] = "a@example.org", "b@example.org", "Recipe"
        mail.set_content(text)
        text = mail.as_bytes().decode()
    (one,) = brought(text, language, "a.eml" if is_mail else "a.txt")
    return one.text.split("\n---\n")[1], asked(one), len(steps(one))


@pytest.mark.parametrize("is_mail", [True, False])
@pytest.mark.parametrize(("tongue", "said"), PRIVATE)
def test_what_is_said_to_one_behind_the_recipe_is_left_out(
    tongue: str, said: str, is_mail: bool
) -> None:
    draft, questions, number = drafts_of(tongue, said, is_mail)
    assert not [one for one in said.split(". ") if one.rstrip(".") in draft]
    assert number == 2
    assert "The letter's farewell is left out" in questions


@pytest.mark.parametrize("is_mail", [True, False])
@pytest.mark.parametrize(("tongue", "said"), OF_THE_RECIPE)
def test_what_is_of_the_recipe_stays(tongue: str, said: str, is_mail: bool) -> None:
    draft, _, _ = drafts_of(tongue, said, is_mail)
    assert said.rstrip(".") in draft


def test_one_sentence_of_two_may_be_of_the_recipe() -> None:
    draft, questions, _ = drafts_of("en", "It is lovely with cheese. Call me tonight.", True)
    assert "It is lovely with cheese." in draft
    assert "tonight" not in draft
    assert "The letter's farewell is left out" in questions
