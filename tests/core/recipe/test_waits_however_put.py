"""Waits however they are put: by verbs of standing and of putting, in words, for a week or two.

Every verb of a language before or behind every length, with straining as the next step. The
sentences are ours, after those of outside recipes; what says how long a thing keeps is no wait.
"""

from __future__ import annotations

from itertools import product

import pytest

from stillroom.core.recipe.method_times import times_in_method
from stillroom.core.recipe.model import MethodStep

# the days of each column of lengths, at the least and at the most
DAYS = [(14, 14), (14, 14), (7, 7), (2, 2), (1, 1), (180, 186), (21, 28), (7, 14)]
WAITS = """
en | Refrigerate {}; Chill {}; Leave {}; Stand {}; Steep {}; Let stand {}; Set aside {}; Infuse
  {}; Leave to infuse {}; Macerate {}; Soak {}; Cure {}; Mature {}; Keep in a dark cupboard {};
  Put in a dark place {}; Marinate {}; Cover and leave in the fridge {}; Brew {}; Ferment {}; Rest
  the dough {}; Dry {} on a rack; Age {}; Hang {} in a cool larder | 2 weeks; two weeks; a week;
  48 hours; overnight; six months; three to four weeks; a week or two | Strain and bottle.
de | {} ziehen lassen; {} stehen lassen; {} in den Kühlschrank stellen; {} kühl stellen; {} ruhen
  lassen; {} an einen dunklen Ort stellen; {} reifen lassen; {} durchziehen lassen; {} ansetzen;
  {} marinieren; {} trocknen lassen; {} gären lassen; Im Kühlschrank {} lagern; {} einweichen | 2
  Wochen; zwei Wochen; eine Woche; 48 Stunden; über Nacht; ein halbes Jahr; drei bis vier Wochen;
  ein bis zwei Wochen | Abseihen und abfüllen.
fr | Laisser macérer {}; Laisser reposer {}; Réserver au frais {}; Mettre au frais {}; Placer au
  réfrigérateur {}; Laisser infuser {}; Exposer au soleil {}; Oublier le bocal {} dans un placard;
  Laisser mûrir {}; Faire tremper {}; Laisser mariner {}; Laisser sécher {}; Entreposer à l'abri
  de la lumière {} | 2 semaines; deux semaines; une semaine; 48 heures; toute la nuit; six mois;
  trois à quatre semaines; une semaine ou deux | Filtrer et mettre en bouteille.
it | Lasciare macerare {}; Lasciare riposare {}; Mettere in frigo {}; Tenere al buio {}; Far
  riposare in frigorifero {}; Lasciare in infusione {}; Esporre al sole {}; Riporre in luogo
  fresco {}; Lasciar maturare {}; Mettere a bagno {}; Lasciare marinare {}; Far asciugare {} | 2
  settimane; due settimane; una settimana; 48 ore; tutta la notte; sei mesi; tre o quattro
  settimane; una settimana o due | Filtrare e imbottigliare.
es | Dejar macerar {}; Dejar reposar {}; Meter en la nevera {}; Guardar en un lugar oscuro {};
  Refrigerar {}; Dejar en infusión {}; Poner al sol {}; Dejar madurar {}; Poner en remojo {};
  Marinar {}; Dejar secar {} | 2 semanas; dos semanas; una semana; 48 horas; toda la noche; seis
  meses; tres o cuatro semanas; una semana o dos | Colar y embotellar.
nl | Laat {} trekken; Laat {} staan; Zet {} in de koelkast; Laat {} rusten; Zet {} op een donkere
  plek; Laat {} rijpen; Laat {} weken; Marineer {}; Laat {} drogen; Laat het {} fermenteren | 2
  weken; twee weken; een week; 48 uur; een nacht; een half jaar; drie tot vier weken; een week of
  twee | Zeef en bottel.
sv | Låt dra {}; Låt stå {}; Ställ i kylen {}; Ställ mörkt {}; Låt vila {}; Låt mogna {}; Låt
  ligga {}; Blötlägg {}; Marinera {}; Låt torka {}; Glöm bort burken {} | 2 veckor; två veckor; en
  vecka; i 48 timmar; över natten; ett halvår; tre till fyra veckor; en vecka eller två | Sila och
  häll på flaska.
da | Lad det trække {}; Lad det stå {}; Stil det i køleskabet {}; Stil det mørkt {}; Lad det hvile
  {}; Lad det modne {}; Lad det ligge {}; Læg i blød {}; Mariner {}; Lad det tørre {}; Sæt glasset
  i vindueskarmen {} | 2 uger; to uger; en uge; i 48 timer; natten over; et halvt år; tre til fire
  uger; en uge eller to | Si og hæld på flaske.
nb | La det trekke {}; La det stå {}; Sett det i kjøleskapet {}; Sett det mørkt {}; La det hvile
  {}; La det modne {}; La det ligge {}; Legg i bløt {}; Mariner {}; La det tørke {}; Sett glasset
  i vinduskarmen {} | 2 uker; to uker; en uke; i 48 timer; natten over; et halvt år; tre til fire
  uker; en uke eller to | Sil og tapp på flaske.
pt | Deixar macerar {}; Deixar repousar {}; Levar ao frigorífico {}; Guardar em local escuro {};
  Refrigerar {}; Deixar em infusão {}; Pôr ao sol {}; Deixar amadurecer {}; Pôr de molho {};
  Marinar {}; Deixar secar {} | 2 semanas; duas semanas; uma semana; 48 horas; durante a noite;
  seis meses; três a quatro semanas; uma semana ou duas | Coar e engarrafar.
pl | Odstawić {}; Zostawić {}; Wstawić do lodówki {}; Postawić w ciemnym miejscu {}; Pozostawić
  {}; Macerować {}; Wystawić na słońce {}; Leżakować {}; Namoczyć {}; Marynować {}; Suszyć {};
  Trzymać w chłodnym miejscu {} | na 2 tygodnie; na dwa tygodnie; na tydzień; na 48 godzin; na
  noc; na pół roku; na trzy do czterech tygodni; na tydzień lub dwa | Przecedzić i rozlać do
  butelek.
"""
KEEPS = """
Im Kühlschrank hält sich das Pesto 2 Wochen.
Das Gelee ist ein Jahr haltbar.
Lässt sich 3 Monate einfrieren.
Kann 2 Tage im Voraus zubereitet und in den Kühlschrank gestellt werden.
Kühl und dunkel gelagert ist der Likör mindestens ein Jahr haltbar.
Innerhalb von 2 Wochen aufbrauchen.
In Gläser füllen und im Kühlschrank bis zu 4 Wochen aufbewahren.
Nach dem Öffnen in den Kühlschrank stellen und binnen einer Woche essen.
Mein Opa setzte ihn vor 30 Jahren an.
Se conserve 3 mois au congélateur.
Peut être congelé pendant 3 mois.
À consommer dans les 3 jours.
Mettre en pots et conserver 1 an à l'abri de la lumière.
Une fois ouvert, mettre au frais et consommer sous une semaine.
On peut les placer 2 jours au réfrigérateur.
Si conserva in frigo per 5 giorni.
Si può congelare per 3 mesi.
Una volta aperto, tenere in frigo e consumare entro una settimana.
Mettere nei vasetti: si mantiene 6 mesi in dispensa.
Potete tenerli in frigorifero 3 giorni.
Se conserva un año en un lugar oscuro.
Se puede congelar tres meses.
Una vez abierto, meter en la nevera y consumir en una semana.
Puede guardarse en la nevera hasta 5 días.
In de koelkast 2 weken houdbaar.
Kan 3 maanden worden ingevroren.
Na opening in de koelkast zetten en binnen een week opmaken.
Je kunt het 3 dagen in de koelkast zetten.
Håller i kylen en vecka.
Kan frysas i 3 månader.
Förvaras i kylskåp och håller 2 veckor.
Ställ i kylen efter öppning och ät upp inom en vecka.
Kan stå i kylen 3 dagar.
Holder sig i køleskab i 2 uger.
Kan fryses i 3 måneder.
Opbevares i køleskab og bruges inden en uge.
Kan stå i køleskabet i 3 dage.
Sæt dem i fryseren, hvor de kan holde 3 måneder.
Holder seg i kjøleskap i en uke.
Kan fryses i 3 måneder.
Kan stå i kjøleskapet i 3 dager.
Oppbevares kjølig og brukes innen en uke.
Conserva-se um ano em local escuro.
Pode ser congelado por 3 meses.
Depois de aberto, guardar no frigorífico e consumir em uma semana.
Aguenta 3 dias na geladeira.
Przechowywać w lodówce do tygodnia.
Można zamrozić na 3 miesiące.
Po otwarciu trzymać w lodówce i zużyć w ciągu tygodnia.
W lodówce wytrzyma 2 tygodnie.
Można trzymać w lodówce 3 dni.
Refrigerate for up to 5 days.
Freezes well for three months.
Store in the fridge for 2 weeks.
Keep refrigerated and use within 3 days.
Can be refrigerated 2 days ahead.
Once opened, refrigerate and use within a month.
Keeps a year in a dark cupboard.
Freeze for up to 3 months.
Refrigerate leftovers for 3 days.
Store in an airtight tin for 2 weeks. // Dust with sugar before serving.
Zwei Tage vorher den Teig nicht vergessen.
Prévoir 2 jours à l'avance.
Meng het zetmeel met 2 el water.
Ciasto na 2 dni przed świętami lukrujemy.
"""


def _waited(*texts: str) -> list[tuple[float, float]]:
    steps = tuple(MethodStep(text=text, line=line) for line, text in enumerate(texts, 1))
    return [
        (one.span.minutes(longest=False) / 1440, one.span.minutes() / 1440)
        for one in times_in_method(steps)
        if one.role == "wait"
    ]


ROWS = WAITS.strip().replace("\n  ", " ").splitlines()


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row[:2])
def test_a_wait_is_heard_by_every_verb_and_length(row: str) -> None:
    _, verbs, lengths, then = (cell.strip() for cell in row.split(" | "))
    for verb, (said, days) in product(
        verbs.split("; "), zip(lengths.split("; "), DAYS, strict=True)
    ):
        words = verb.format(said)
        found = _waited(f"{words[0].upper()}{words[1:]}.", then)
        assert len(found) == 1, words
        assert found[0] == pytest.approx(days, rel=0.05, abs=0.5), words


@pytest.mark.parametrize("text", KEEPS.strip().splitlines())
def test_what_keeps_so_long_is_no_wait(text: str) -> None:
    assert _waited(*text.split(" // ")) == []


def test_so_long_in_the_cold_before_the_next_step_is_a_wait() -> None:
    assert _waited("Refrigerate 48 hours.", "Cut into squares.") == [(2, 2)]
    assert _waited("Refrigerate for 3 days.", "Serve with cream.") == []


@pytest.mark.parametrize(
    "then",
    ["No dia seguinte levar ao lume.", "Następnego dnia zagotować.", "Neste morgen kokes det opp."],
)
def test_what_is_done_the_next_day_waited_for_a_night(then: str) -> None:
    assert _waited("Misturar a fruta com o açúcar.", then) == [(1, 1)]


def test_hours_of_cooking_hide_no_night() -> None:
    assert _waited("Gotować przez godzinę i odstawić na noc do lodówki.") == [(1, 1)]
