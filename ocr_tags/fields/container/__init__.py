"""The pot it is sold in: `reader` reads, each other file knows one kind of wording."""
