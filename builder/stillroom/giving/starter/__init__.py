"""A first giving list from answers: asked in plain words, written whole, with notes, to write over.

* ``answers``: what was answered, and the readers of each answer.
* ``asking``: the questions one after another; who asks them is an argument.
* ``writing``: the answers and the book's recipes to the text of a list that plans at once.
"""
