"""What must be minded: published processes, and who must not be given what."""
