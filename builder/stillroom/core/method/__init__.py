"""What a recipe's own words tell: foods its method names, heat, drying, for whom it is."""
