"""The public book: recipes become pages. The only folder that knows MkDocs."""
