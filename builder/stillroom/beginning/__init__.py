"""What a cook begins with: a whole book from a few answers, a whole recipe from a title.

* ``book``: the files of a new book, which builds at once.
* ``recipe``: a new recipe file, each fact with a note that says what it is for.
* ``written``: a fact as it is written in a recipe file, read back as the same words.

Imports only from ``core`` and ``saving``; the commands and the desk begin things by it.
"""
