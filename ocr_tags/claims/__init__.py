"""Findings of several readings and of both sides, weighed into the values of a record."""
