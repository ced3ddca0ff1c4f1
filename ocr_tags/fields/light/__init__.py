"""How much sun: `reader` reads, each other file knows one kind of wording."""
