"""The label: contents list, how long it keeps, date marks, how it is used."""
