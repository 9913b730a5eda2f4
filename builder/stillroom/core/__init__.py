"""One recipe and its numbers: reading, scaling, strength, dates, safety, labels.

Pure computing. It knows no MkDocs, no template, no terminal and no clock: today's date is
always an argument.
"""
