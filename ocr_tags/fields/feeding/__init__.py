"""How to feed it: `reader` reads, each other file knows one kind of wording."""
