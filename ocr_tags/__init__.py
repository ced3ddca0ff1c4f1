"""Photographs of printed plant tags in, findable plant records out."""
