"""Words and texts: problems, plurals, joining, days in words, a text as it lies in its file."""
