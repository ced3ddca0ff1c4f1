"""Words in, lines in reading order and texts to search out."""
