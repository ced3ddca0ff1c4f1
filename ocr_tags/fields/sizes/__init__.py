"""Height, spread and spacings: `reader` reads, each other file knows one kind of wording."""
