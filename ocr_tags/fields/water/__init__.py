"""How much water: `reader` reads, each other file knows one kind of wording."""
