"""The same names searched by other means in the same run: a plain scan, and SQLite's index of trigrams."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable

from rapidfuzz import fuzz, process

from index.benchmark.tags import Tag
from index.entries import entry_of
from index.folding import fold

Ask = Callable[[str], list[int]]
"""From a question to the places of the ten best tags in the list."""


def texts_of(tags: list[Tag]) -> list[str]:
    """For each tag all its names and its plant's, folded: peers get what the index gets."""
    texts = []
    for tag in tags:
        entry = entry_of(tag.record)
        names = (*entry.names, *(entry.plant.names if entry.plant else ()))
        texts.append(" ".join(dict.fromkeys(word for name in names for word in fold(name.text).split())))
    return texts


def plain_scan(texts: list[str]) -> Ask:
    """rapidfuzz over all texts; of its scorers that of sets of words ranks names best."""

    def ask(question: str) -> list[int]:
        found = process.extract(fold(question), texts, scorer=fuzz.token_set_ratio, limit=10)
        return [place for _, _, place in found]

    return ask


def trigrams(texts: list[str]) -> Ask:
    """SQLite FTS5 with its trigram tokenizer, any trigram counting, ranked by its bm25."""
    base = sqlite3.connect(":memory:")
    base.execute("CREATE VIRTUAL TABLE names USING fts5(text, tokenize='trigram')")
    base.executemany("INSERT INTO names (rowid, text) VALUES (?, ?)", enumerate(texts))

    def ask(question: str) -> list[int]:
        folded = fold(question)
        parts = {folded[place : place + 3] for place in range(len(folded) - 2)}
        wanted = " OR ".join(f'"{part}"' for part in sorted(parts))
        if not wanted:
            return []
        rows = base.execute("SELECT rowid FROM names WHERE text MATCH ? ORDER BY rank LIMIT 10", (wanted,))
        return [row[0] for row in rows]

    return ask
