"""What gifts cost: prices, packs to buy, shares of a batch, the shopping list."""
