"""Sizes of paper, of what stands on it, and of what is cut for a gift; squares to scan."""
