"""Paper: cards, tags, sheets and the family book. The only folder that knows Typst."""
