"""Annual, perennial, shrub …: `reader` reads, each other file knows one kind of wording."""
