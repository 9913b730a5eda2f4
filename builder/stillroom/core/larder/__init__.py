"""The larder: every food the book knows, found by its whole name, with what follows from it.

Names and facts are data files beside this one and under `staples/`. Leaves out what a recipe makes
of a food: labelling, safety and the computations of amounts decide that.
"""
