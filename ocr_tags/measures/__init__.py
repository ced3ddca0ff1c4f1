"""Lengths, numbers and units, as printed and as typed."""
