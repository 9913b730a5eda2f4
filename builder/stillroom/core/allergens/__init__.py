"""Allergens of foods, what each law lists, and what somebody avoids."""
