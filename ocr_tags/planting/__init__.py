"""How many plants a bed needs, and how far apart: lengths and records in, counts and a plan out.

`lengths` reads what people type, `beds` holds the ground, `spacings` takes the distance from a record,
`placing` sets the plants and works the formulae, `needs` answers for one or several kinds, and `plan` draws.
"""
