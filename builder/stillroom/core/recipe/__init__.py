"""A recipe as it is held: its kind, its facts, its method; and the settings of its book."""
