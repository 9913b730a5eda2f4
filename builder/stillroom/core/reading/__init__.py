"""A recipe file to a recipe, with every problem of it; the folder it lies in."""
