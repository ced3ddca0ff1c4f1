"""Colours as printed: `reader` reads, each other file knows one kind of wording."""
