"""Foods that a method names and nobody puts in: vessels, ovens, what it is served or made up with.

The sentences were put down, each with what must be found, before any was tried: cooks' English and
five other languages from memory. Beside each family stand sentences in which the food does go in.
"""

from __future__ import annotations

from hashlib import sha256

import pytest

from care_cases import recipe_of
from stillroom.core.care.safety import assess_safety
from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.method.foods_in_method import foods_in_method
from stillroom.core.reading.recipe_file import read_recipe
from stillroom.core.recipe.settings import BookSettings

_VESSELS = """
preserve en | Fill 6 jam jars and seal. |
preserve en | Have hot jars ready, 6 or 7 jam jars. |
preserve en | Fill 4 honey jars. |
preserve en | Pour into a milk bottle. |
preserve en | Pour into an olive-oil bottle. |
preserve en | Pour it into 2 olive oil bottles. |
preserve en | Spoon into 8 egg cups. |
preserve en | Set it in a butter dish. |
preserve en | Strain into a wine bottle. |
preserve en | You need 3 wine bottles with corks. |
preserve en | Ladle into 5 small peanut butter jars and leave to cool. |
preserve en | Spoon into 2 mustard pots. |
preserve en | Weigh it down with 2 milk bottles. |
preserve en | Fill a cream jug and 3 sherry glasses. |
preserve de | Die Masse in 6 Marmeladengläser füllen und verschließen. |
preserve de | In ein Honigglas füllen und den Deckel schließen. |
preserve de | Den Sirup in 2 saubere Milchflaschen füllen. |
preserve de | Das Gelee in 4 Senfgläser geben. |
preserve fr | Verser dans des pots de confiture et fermer. |
preserve fr | Verser dans 6 pots de confiture ou de miel. |
preserve fr | Remplir les 2 bouteilles de lait et fermer avec le bouchon. |
preserve es | Verter en 4 tarros de miel y cerrar con la tapa. |
preserve it | Versare nei vasetti da miele e chiudere con il coperchio. |
preserve nl | Giet het in 4 honingpotjes en doe het deksel op de pot. |
preserve en | Stir in 2 jars of honey. | honey
preserve en | Stir in a wine glass of rum. | rum
preserve en | Add 2 egg cups of milk. | milk
preserve en | Chop 6 peanut butter cups and stir them in. | peanut
preserve en | Stir in 100 g peanut butter, then fill 4 jars. | peanut
preserve en | Add 1 bottle of wine. | wine
preserve de | Ein Glas Honig und 200 ml Milch zugeben und rühren. | honey; milk
preserve de | Die Mandeln in den Topf geben und mit dem Honig mischen. | almond; honey
preserve fr | Ajouter un pot de yaourt et mélanger avec le sucre. | yogurt
preserve fr | Ajouter le lait et les amandes dans la casserole. | milk; almond
"""
_OVENS = """
bake de | Die Kekse bei 175 Grad (Ober-/Unterhitze) 12 Minuten backen. |
bake de | Bei 180 Grad Ober-/Unterhitze auf dem Blech backen. |
bake de | Den Ofen auf 180 °C Ober- und Unterhitze vorheizen. |
bake de | Ober/Unterhitze 180° einstellen und die Kekse backen. |
bake de | Bei 160 °C Umluft oder Heißluft auf der Schiene backen. |
bake en | Bei 180 Grad Ober-/Unterhitze backen. |
bake en | 200 °C Ober-Unterhitze, 12 Minuten. |
bake fr | Cuire dans le four à 160 °C chaleur tournante. |
bake it | Cuocere in forno statico a 180 °C o in forno ventilato a 160 °C con la griglia. |
bake es | Hornear en el horno con calor arriba y abajo a 180 °C. |
bake de | Das Obers steif schlagen und mit den Mandeln in die Masse geben. | cream; almond
bake de | Die Milch zugeben und bei 180 Grad Ober-/Unterhitze backen. | milk
bake de | Mit dem Ei bestreichen (Ober-/Unterhitze 180 °C) und mit Mandeln bestreuen. | egg; almond
"""
_SERVED = """
dry mix de | Schmeckt gut zu Kaffee mit Milch und ist in der Dose zu lagern. |
bake de | Die Kekse schmecken herrlich mit Butter und Käse. |
preserve en | Lovely with 2 tbsp yoghurt. |
preserve en | Serve with cream. |
preserve en | Serve with cream, yoghurt or 100 ml custard. |
preserve en | Good on toast with butter. |
preserve en | Delicious stirred into porridge with a splash of milk. |
preserve en | It goes beautifully with cheese and walnuts. |
preserve en | Try it with 1 slice of cheese. |
preserve fr | Se sert avec du fromage et de la crème. |
preserve fr | Délicieux avec du beurre sur une tartine. |
preserve it | Ottimo con il formaggio e la ricotta. |
preserve es | Está delicioso con queso y nueces, en la mesa. |
preserve nl | Heerlijk met kaas en een beetje boter op het brood. |
preserve en | Stir in the almonds and serve with cream. | almond
preserve en | Fold in 100 g walnuts and serve. | walnut
preserve en | Serve with cream. Stir in the almonds before you fill the jars. | almond
preserve en | Lovely with cheese, so add the walnuts now. | walnut
bake en | Add 1 cup milk and beat well. | milk
bake en | Brush with beaten egg. | egg
bake de | Die Mandeln unterrühren und mit Sahne servieren. | almond
"""
_MADE_UP = """
dry mix en | Seal the jar. To make: tip into a pan with 1 litre stock and 100 ml cream. |
dry mix en | Layer it in a jar and seal. To make up: beat in 1 egg. Add 100 g butter and bake. |
dry mix en | Seal the jar. To use: whisk 3 tbsp into 200 ml milk. |
dry mix en | Seal it. Put 3 tbsp in a mug of hot water. Top with hot coffee and 1 cup of cream. |
dry mix en | Seal the jar. To make pancakes, whisk in 2 eggs and 300 ml milk. |
dry mix en | Seal. The recipient adds 1 egg and 100 g butter. |
dry mix en | Seal. Whoever gets it stirs in 1 egg. |
dry mix en | Seal. Add to your mug with hot milk. |
dry mix en | Seal. Scoop 1/4 cup into 1 cup hot milk. Keeps 3 months. |
dry mix en | Seal. Put 3 heaped spoons in a mug, add 1 cup of hot milk. |
dry mix en | Seal. Stir 2 tablespoons into a mug of hot milk. Top with whipped cream. |
dry mix en | Seal. Tip the jar into a bowl, add 2 eggs and 100 g butter and bake. |
dry mix de | In das Glas füllen. Zum Kochen: mit 1,5 l Wasser und 1 EL Öl 40 Minuten köcheln. |
dry mix de | In das Glas füllen. Zum Zubereiten mit 1 l Wasser und 200 ml Sahne 20 Minuten kochen. |
dry mix de | In das Glas füllen. 3 Esslöffel in eine Tasse heiße Milch rühren. |
dry mix de | In das Glas füllen. Zubereitung: 2 Eier und 100 g Butter dazugeben. |
dry mix fr | Remplir le bocal. Pour préparer : ajouter 2 œufs et 100 g de beurre. |
dry mix fr | Remplir le bocal. Verser 3 cuillères dans une tasse de lait chaud. |
dry mix es | Llenar el tarro. Para preparar: añadir 2 huevos y 100 g de mantequilla. |
dry mix it | Riempire il vaso. Per preparare: aggiungere 2 uova e 100 g di burro. |
dry mix nl | Vul de pot. Om te bereiden: voeg 2 eieren en 100 g boter toe. |
dry mix en | To make: mix in 100 g almonds and seal. | almond
dry mix en | Stir in 100 g milk powder and 50 g chopped hazelnuts. | milk powder; hazelnut
dry mix en | Add 2 tbsp milk powder to the bowl. Fill the jar. | milk powder
dry mix en | To make the mix: stir in 50 g almonds. Seal the jar. | almond
dry mix en | Seal. To make: add 1 egg. Before you seal it, stir in the walnuts. | walnut
dry mix en | Stir in 3 tablespoons of ground almonds. Seal. | almond
dry mix de | Die Mandeln mischen und in das Glas füllen. Zum Kochen: mit Milch aufkochen. | almond
bake en | To make the dough: beat in 1 egg and 100 g butter. | egg; butter
bake en | Tip into a bowl, add 2 eggs and 1 cup of hot milk. | egg; milk
bake en | To make: stir in the almonds. | almond
bake fr | Pour préparer la pâte : ajouter les amandes dans le saladier. | almond
"""
_AGAIN = """
preserve en | Add 1 large tin tomatoes. | tomato
preserve en | Stir in 2 small pots yoghurt. | yogurt
preserve en | Pour in 1 large bottle beer. | beer
preserve en | Add 3 large eggs and 2 bowls of almonds. | egg; almond
preserve en | Pot into 5 x 200 ml jam jars. |
preserve en | Divide between three chutney jars and one cheese box. |
preserve en | Melt 100 g butter in a milk pan. | butter
preserve en | Add 2 tbsp tahini, fill 3 mustard jars. | tahini
preserve en | Stir in the almonds (lovely with cream) and the pecans. | almond; pecan
preserve en | Stir in the almonds, and serve it with cheese, crackers and butter. | almond
preserve en | For a delicious spread, add 200 ml cream. | cream
preserve en | This delicious loaf needs 3 eggs and 200 g butter. | egg; butter
preserve en | Whisk in 2 eggs until it tastes good, with 50 g butter. | egg; butter
preserve en | Eat on toast with butter, or stir it into yoghurt. | yogurt
preserve en | Enjoy over ice cream. |
preserve en | A spoonful is lovely stirred into a glass of milk. |
preserve en | Makes a good present with 100 ml cream. | cream
preserve en | Good with 100 g walnuts added: stir them in now. |
bake en | Mix well with 2 eggs and 100 g butter. | egg; butter
bake de | Alles gut mit 2 Eiern und 100 g Butter verrühren. | egg; butter
bake de | Passt zu Käse, schmeckt auf Brot mit Butter und in der Milch. |
bake de | Warm servieren, dazu passt Vanillesoße mit Sahne. |
dry mix en | Mix with 100 g almonds. Seal jars. To use, stir 2 tbsp into hot milk. | almond
dry mix en | Fill the jar. For each mug use 3 tsp and 200 ml milk. |
dry mix en | Fill the jar. Heat 250 ml milk, whisk in 3 tbsp of the mix and top with cream. |
dry mix en | Stir in 2 tbsp malted milk powder into a mug of sugar. | malted milk
dry mix en | Grind the sugar. Put 100 g almonds in a cup and crush them. | almond
dry mix en | Grind the sugar. Toast 3 tablespoons sesame seeds in a hot pan. | sesame
dry mix en | Toast 100 g hazelnuts. Seal. Add boiling water, stir and drink. | hazelnut
dry mix en | Fill the jar. Instructions: add 1 egg, 100 g butter and bake 12 minutes. |
dry mix en | Fill the jar. Mix with 1 egg and 50 ml oil, bake 12 minutes. | egg
dry mix en | Seal the jar. On the card: beat with 2 eggs. Bake 12 minutes with 100 g butter. |
infusion en | Steep the walnuts in the sugar. To use, add 1 tsp to a mug of hot milk. | walnut
syrup en | Boil. Add a spoonful to a mug of hot milk. |
syrup en | Boil. Stir a tablespoon of the syrup into plain yogurt. |
syrup en | Boil. Add a spoonful of butter to the pan. | butter
preserve en | Boil. Add two spoonfuls of cream to hot caramel. | cream
preserve en | Boil. Stir a spoonful into the warm milk. | milk
preserve en | Pot. Serve chutney with cold meats, bread or simply with cheese. |
preserve en | Pot. Serve plain, or on a bagel with all the trimmings. |
preserve en | Pot. Use this delicious curd to make meringue pies and pavlovas. |
preserve en | Pot. It goes well as a filling in cakes, or on scones. |
dry mix en | Mix. Delicious combined with melted butter, or sprinkled over poached eggs. |
infusion en | Bottle. Pour a little into a champagne glass and top up with sparkling wine. |
preserve en | Fill tuna cans with it. |
preserve en | Most recipes add walnuts. |
preserve en | Do not add garlic, as garlic brings germs. |
bake de | Den Teig mit 2 Eiern und 100 g Butter verrühren. | egg; butter
bake de | Mit den Mandeln, Walnüssen und den Eiern mischen und backen. | almond; walnut; egg
bake de | Mit Haselnüssen und Erdnüssen bestreuen, dann auf dem Blech backen. | hazelnut; peanut
bake de | Die Kekse mit Pistazien und Cashewkernen bestreuen und im Ofen backen. | pistachio; cashew
bake de | In kleinen Förmchen und mit sauberen Gläsern auf dem Gitter und mit Kindern backen. |
bake en | Den Teig mit 3 Eiern und den Nüssen verrühren und im Ofen backen. | egg; nut
dry mix en | Stir the spices, then add 2 tbsp of milk powder per jar. | milk powder
dry mix en | Mix. Add the almonds to each jar with a mug of oats. | almond; oats
dry mix en | Mix. For one jar: 100 g almonds and 50 g walnuts. | almond; walnut
dry mix en | Mix. For each jar, layer 100 g hazelnuts. | hazelnut
dry mix en | Mix. For the topping: chop 100 g walnuts and put them in a bag. | walnut
dry mix en | Mix. To make it crunchy, stir in 50 g cashews. | cashew
dry mix en | Mix. To serve more people add 100 g almonds. | almond
dry mix en | Mix. In a mug, beat 1 egg white and toss the nuts in it. | egg; nut
dry mix en | Warm the oven. Melt 100 g butter and stir it in. | butter
dry mix en | Roast. Per portion use 30 g almonds. | almond
dry mix en | Mix well. Serve as a drink with milk: 2 tbsp to 200 ml. |
dry mix en | Jar it up. Combine 1/2 cup mix with 1 egg and 1/4 cup milk in a bowl. |
dry mix en | Jar it up. Write on the label: add 2 eggs. Then add 100 g butter. |
dry mix en | Jar it up. Mix a cup of this with a cup of milk. |
infused salt en | Mix. Lovely on eggs and buttered corn. |
preserve en | Spoon over yoghurt or ice cream. |
preserve en | Great with cold meats, cheese and crackers. |
preserve en | Perfect for cheese boards. |
preserve en | Fill small cheese pots with wax lids. |
preserve en | Use an old mustard jar or a clean wine bottle. |
preserve en | Use old mustard or honey jars. |
preserve en | Wash the wine and milk bottles. |
infusion en | Pour into vodka bottles, or gin bottles. |
infusion de | In Weinflaschen oder Milchflaschen abfüllen und mit dem Korken verschließen. |
infusion de | In die Flasche füllen und mit Milch oder Sahne servieren. |
infusion en | Drink with tonic or cream soda. |
infusion en | Delicious with ice and a splash of cream. |
bake en | Serve warm, with custard or a scoop of ice cream. |
bake en | Brush with milk, serve with butter. | milk
bake en | Serve with a cream made by whisking 200 ml cream. |
bake fr | Ajouter 2 œufs et 100 g de beurre, servir avec de la crème. | egg; butter
bake it | Unire 2 uova e il burro, servire con la panna. | egg; butter
bake es | Añadir 2 huevos y la mantequilla y servir con la nata. | egg; butter
bake nl | Voeg 2 eieren en de boter toe, serveer met de slagroom. | egg; butter
dry mix en | Mix. To make up: add 1 egg. Stir in 100 g walnuts and fill the jars. | walnut
dry mix en | Mix. To use, stir 3 tbsp into warm milk. Add the pistachios to the jar. | pistachio
dry mix en | Mix. Use 3 tbsp of the mix with 250 ml milk and 1 egg. |
dry mix en | Mix. The receiver needs to add 100 ml cream. |
dry mix en | Mix. For the soup: 1 litre stock, 100 ml cream. |
dry mix en | Mix. For the coating: beat 1 egg white and toss the nuts in it. | egg; nut
dry mix en | Mix. Moisten with 2 tbsp milk and dry in the oven. | milk
dry mix en | Mix. Add 50 g milk chocolate to each jar, seal. | chocolate
dry mix de | Mischen. Mit 2 Eiern und 100 g Butter kneten, zum Backen 12 Minuten. | egg; butter
dry mix de | Mischen und in das Glas füllen. Der Beschenkte gibt 2 Eier und 100 g Butter dazu. |
dry mix fr | Mélanger les amandes. Pour préparer : verser 3 cuillères dans le lait chaud. | almond
dry mix es | Mezclar todo. Modo de preparación: mezclar con 2 huevos y la leche. |
dry mix it | Mescolare le mandorle. Per preparare: unire 2 uova e il latte. | almond
dry mix it | Mescolare. Chi lo riceve aggiunge 2 uova e il latte. |
bake it | Mescolare 2 uova e il latte con la farina di mandorle. | egg; milk; almond
bake es | Batir 3 huevos y 100 g de mantequilla con las almendras. | egg; butter; almond
bake fr | Battre 2 œufs et la crème avec 50 g de noisettes. | egg; cream; hazelnut
bake nl | Klop 2 eieren en de melk met de amandelen. | egg; milk; almond
bake de | 2 Eier und die Sahne mit den Mandeln verrühren. | egg; cream; almond
bake sv | Vispa 2 ägg och mjölk med mandel och rör om. | egg; milk; almond
preserve en | Cut the rinds and boil with cream, eaten with butter. | cream
preserve en | Try it with cheese. Fold in 100 g pecans. | pecan
preserve en | Pour over the melted butter. | butter
preserve en | Mix the sesame seeds in a glass jar. | sesame
preserve en | Pack in 4 jars with 1 cinnamon stick and the hazelnuts. | cinnamon; hazelnut
preserve de | 3 Weckgläser mit Nüssen und Mandeln füllen. | almond
preserve de | In Sahneflaschen und Eierbecher füllen und verschließen. |
bake en | Bake in 12 paper cases with 2 eggs. | egg
bake de | Die Nüsse hacken und in den Teig geben und dann backen. | nut
bake de | 100 g Nüsse hacken und in den Teig geben und dann backen. | nut
bake en | Stir in the nuts. | nut
bake fr | Ajouter les noix dans la pâte et les mélanger. | walnut
bake en | Melt a nut of butter and stir it in. | butter
bake en | Stir until nut-brown. |
"""
# a brine, a lye or a must is judged by what floats in it (old household books: "to bear an egg")
# what a seasoning mix is used on or in, as the sheets of mixes say it ("Taco seasoning mix" of a
# public sheet of mixes, the rest in its manner); beside them dried meat and fish that go in
_USED_ON = """
dry mix en | Seal. To make tacos, brown 1 lb ground beef. Add 1 cup water and the taco mix. |
dry mix en | Seal the jar. To use: add 3 tablespoons of mix per pound of ground beef. |
dry mix en | Mix. Use 2 tablespoons per pound of meat. |
dry mix en | Mix. Rub 2 tbsp over a chicken before roasting. |
dry mix en | Seal. For dip: mix 2 tbsp with 1 cup sour cream and 1 cup mayonnaise. |
dry mix en | Seal. To make dressing, combine the mix with 1 cup mayonnaise and 1 cup buttermilk. |
dry mix en | Seal. Sprinkle on fish, chicken or vegetables before grilling. |
dry mix en | Seal. For chili: brown 500 g minced beef with an onion, add the mix. |
dry mix en | Seal. To prepare soup: simmer the mix in 8 cups water with 1 ham bone. |
dry mix en | Seal. Add 1 pound browned ground beef and 1 can of tomatoes to the mix. |
dry mix en | Seal. When ready to cook, brown 1 lb sausage, then add 6 cups chicken broth. |
dry mix en | Seal. Use 1 tablespoon for every 500 g of chicken or pork. |
dry mix en | Seal. Toss 1 tablespoon with 500 g shrimp and grill. |
dry mix en | Mix. Makes enough to season 2 kg of pork. |
dry mix de | Mischen. Zum Würzen: 2 EL auf 500 g Hackfleisch geben. |
dry mix de | Abfüllen. Für einen Dip 2 EL mit 200 g Schmand und 100 g Joghurt verrühren. |
dry mix fr | Fermer le bocal. Pour une sauce, 2 cuillères à soupe avec 200 g de crème fraîche. |
dry mix es | Cerrar. Para sazonar 500 g de carne picada usar 2 cucharadas. |
dry mix it | Chiudere. Per condire 500 g di carne macinata usare 2 cucchiai. |
dry mix nl | Sluiten. Gebruik 2 eetlepels per 500 g gehakt. |
dry mix sv | Blanda. Använd 2 msk till 500 g köttfärs. |
dry mix en | Mix. Crumble 100 g beef jerky into the jar. Seal. | beef
dry mix en | Stir in 50 g bacon bits. Seal. | bacon
dry mix en | Mix. Add the dried chicken to each jar. | chicken
dry mix en | To make each jar: layer 50 g dried shrimp on top. | shrimp
dry mix en | Mix with 50 g dried salmon for every jar. | salmon
"""
_FLOATED = """
preserve en | Boil salt and water strong enough to bear an egg. |
preserve en | Make a brine that will float a fresh egg, and pour it over. |
preserve en | Add salt until an egg will float in the brine. |
preserve en | Stir until a raw potato floats. |
preserve en | A fresh egg dropped in it should swim. |
preserve en | Float an egg in it, then beat 2 eggs with the butter. | egg; butter
preserve en | Drop an egg into the syrup and beat well. | egg
preserve de | So viel Salz zugeben, bis ein rohes Ei darin schwimmt. |
preserve de | Ein Ei unterrühren, bis der Teig glatt ist. | egg
preserve fr | Saler l'eau jusqu'à ce qu'un œuf flotte. |
preserve fr | Ajouter un œuf et mélanger. | egg
preserve es | Añadir sal hasta que flote un huevo. |
preserve it | Aggiungere sale finché un uovo galleggia. |
preserve nl | Voeg zout toe tot een ei blijft drijven. |
preserve sv | Tillsätt salt tills ett ägg flyter. |
preserve sv | Tillsätt ett ägg och rör. | egg
preserve en | Serve with bread or a spoonful of cream. |
"""
_MAKES = {
    "infused sugar": "2 jars of 200 ml",
    "infused salt": "2 jars of 200 ml",
    "infusion": "1 bottle of 500 ml",
    "syrup": "1 bottle of 500 ml",
    "preserve": "4 jars of 200 ml",
    "bake": "20 biscuits",
    "dry mix": "2 jars of 400 ml",
}
# foods of these words are what any kitchen has, and no allergen nor anything that spoils
_PLAIN = ("water", "oil", "pancake", "stock", "toast", "bread", "coffee", "porridge")


def _foods(kind: str, language: str, method: str) -> list[str]:
    front = f"title: A try\nkind: {kind}\nmakes: {_MAKES[kind]}\ningredients:\n  - 200 g sugar\n"
    text = f"---\n{front}---\n\n## Method\n\n1. {method}\n"
    name = f"a-try-{sha256(text.encode()).hexdigest()[:12]}"
    larder = Larder(language={"en": "en_GB"}.get(language, language))
    recipe = read_recipe(text, f"{name}.md", name, "metric", larder, language)
    readings = [food_of(one.ingredient) for one in foods_in_method(recipe)]
    items = [one.ingredient.item for one in foods_in_method(recipe)]
    return [
        reading.food.name if reading.food else f"?{item}"
        for reading, item in zip(readings, items, strict=True)
    ]


def _rows(table: str) -> list[object]:
    found = []
    for row in table.strip().splitlines():
        head, method, foods = (part.strip() for part in row.split("|"))
        kind, _, language = head.rpartition(" ")
        expected = [food for food in foods.split("; ") if food]
        found.append(pytest.param(kind, language, method, expected, id=f"{head}: {method}"))
    return found


@pytest.mark.parametrize(
    ("kind", "language", "method", "expected"),
    [
        row
        for table in (_VESSELS, _OVENS, _SERVED, _MADE_UP, _AGAIN, _USED_ON, _FLOATED)
        for row in _rows(table)
    ],
)
def test_only_what_is_put_in_is_found(
    kind: str, language: str, method: str, expected: list[str]
) -> None:
    found = [food for food in _foods(kind, language, method) if not food.endswith(_PLAIN)]
    missing = [food for food in expected if not any(food in one for one in found)]
    more = [one for one in found if not any(food in one for food in expected)]
    assert (missing, more) == ([], [])


# a piece of a listed food is that food; of one that is not listed it is found (a blog's lemon
# pickle told "lemon segments" and had the lemons twice on its label; the others are its family)
@pytest.mark.parametrize(
    ("listed", "method", "more"),
    [
        ("6 lemons", "Stir in the lemon segments and the lemon wedges.", []),
        ("6 oranges", "Add the orange wedges, the orange rounds and the orange segments.", []),
        ("1 kg apples", "Add the apple rings and slices.", []),
        ("1 pineapple", "Add the pineapple rings.", []),
        ("1 kg sugar", "Stir in the lemon segments.", ["lemon segment"]),
        ("1 kg apples", "Add the orange wedges.", ["orange wedge"]),
        ("1 kg onions", "Add a stock cube.", ["stock cube"]),
        # ... and so is what has been made of it, and a warmth
        ("6 cloves", "Your home made garam masala is ready.", []),
        ("6 cloves", "Bake it. These quantities make about 18 biscuits.", []),
        ("6 cloves", "You should get about 20 cookies.", []),
        ("6 cloves", "Donne environ 20 biscuits.", []),
        ("6 cloves", "Crush 200 g biscuits and stir them in.", ["biscuits"]),
        ("6 cloves", "And your red wine is now ready to drink.", []),
        ("6 cloves", "When your pasta is ready, stir it in.", ["pasta"]),
        ("6 cloves", "Stir in your garam masala.", ["garam masala"]),
        ("1 kg sugar", "Cool the syrup to blood temperature.", []),
        ("1 kg sugar", "Wait till it has the warmth of new milk.", []),
        ("1 kg sugar", "Add the pig's blood.", ["pig's blood"]),
        ("1 kg sugar", "Tril kugler på størrelse med en valnød.", []),
    ],
)
def test_a_piece_of_a_listed_food_is_that_food(listed: str, method: str, more: list[str]) -> None:
    front = {"title": "A try", "kind": "preserve", "ingredients": [listed, "200 g salt"]}
    found = foods_in_method(recipe_of({**front, "method": [method]}))
    assert [one.ingredient.item for one in found] == more


def test_what_some_people_do_is_not_done() -> None:
    lemons = {"title": "A try", "kind": "preserve", "ingredients": ["6 lemons", "200 g salt"]}
    method = "Put the lemons into the jar. {} boil them to soften them up. Leave for a month."
    rules = {
        who: {
            one.rule
            for one in assess_safety(
                recipe_of({**lemons, "method": [method.format(who)]}), BookSettings()
            ).cautions
        }
        for who in ("Some people even", "Next day")
    }
    assert "hot-glass" not in rules["Some people even"]
    assert "hot-glass" in rules["Next day"]
