"""What soil it wants: `reader` reads, each other file knows one kind of wording."""
