"""Units, exact quantities, how a kitchen rounds them, tins, packs and money."""
