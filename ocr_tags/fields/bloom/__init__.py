"""When it flowers: `reader` reads, each other file knows one kind of wording."""
