"""What a batch holds: contents, strength, mixtures, preserves, bottles."""
