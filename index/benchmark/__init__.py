"""How often the right tag comes first, and what an answer costs: `python -m index.benchmark`."""
