"""Make `plant_names.txt.gz` from a table of names drawn from NCBI Taxonomy and WordNet 3.0.

    python build_plant_names.py NAMES.tsv plant_names.txt.gz

NAMES.tsv has a header and the columns: name, rank (genus or species), family, common names parted by "|",
sources ("ncbi", "wordnet" or both). Only developers run this; the package needs its result alone.
"""

from __future__ import annotations

import gzip
import re
import sys
from collections import defaultdict
from pathlib import Path

HEADER = """\
# Plant names that exist: every vascular plant genus, and the species people write about in English.
# Belonging here means only that the name has been published and used: not that it is current, nor sold.
# A line is: genus TAB family TAB common names of the genus TAB species parted by ";". Species with common
# names of their own are written epithet=name|name. A leading × marks a hybrid.
# Sources: NCBI Taxonomy (public domain) and WordNet 3.0. Derived from WordNet 3.0, Copyright 2006 by
# Princeton University. All rights reserved. Modified: extracted, spelling corrected, families replaced.
# The notice that must go with it is in wordnet_license.txt.
"""

# WordNet's own slips, read one by one against NCBI Taxonomy: the right spelling stands there as well.
# Spellings that gardeners do use (Buddleia, Brachycome, Albizzia, Satureia) are left in.
_MISSPELT = """
    Acocanthera Amianthum Angrecum Anigozanthus Bartle-Frere Bennettitis Bougainvillaea Brickelia
    Castilleia Chinchona Cordaites Cynancum Emmanthe Funka Gerea Guevina Hamamelites Hernaria Hunnemania
    Kosteletzya Lagarostrobus Lomogramma Loxoma Melicocca Microsorium Molluga Molucella Pecopteris
    Polybotria Rhynia Rhyncostylis Saxe-gothea Saxegothea Sebastiana Strekelia Swietinia Symplocus
    Terrietia Triostium Turreae Welwitchia Xanthorroea Zoisia
"""
MISSPELT_GENERA = frozenset(_MISSPELT.split())
CORRECTED = {
    "Alnus veridis": "Alnus viridis",
    "Geum alleppicum": "Geum aleppicum",
    "Prunus pumilla": "Prunus pumila",
}
NOT_COMMON = re.compile(r"\bgenus\b|subgenus|[`:]|,|^[A-Z][a-z]+ [A-Z][a-z]+ifolia$|^$")
GENUS = re.compile(r"[A-Z][a-z]+(?:-[a-z]+)?")


def build(table: str) -> str:
    """The text of the names file; lines are sorted so that two builds are the same bytes."""
    families: dict[str, str] = {}
    genus_names: dict[str, list[str]] = defaultdict(list)
    species: dict[str, dict[str, list[str]]] = defaultdict(dict)
    for line in table.splitlines()[1:]:
        name, rank, family, common, _sources = line.split("\t")
        hybrid_genus = name.startswith(("x ", "× "))
        genus, _, rest = name[2 * hybrid_genus :].partition(" ")
        if not GENUS.fullmatch(genus) or genus in MISSPELT_GENERA or (rank == "genus" and rest):
            continue
        names = [n for n in common.split("|") if not NOT_COMMON.search(n)]
        if rank == "genus":
            families[genus] = family
            genus_names[genus] = names
        else:
            words = CORRECTED.get(" ".join(name.split()[:2]), name).split()[1:]
            epithet = "×" + words[1] if words[0] in ("×", "x") and len(words) > 1 else words[0]
            if re.fullmatch(r"×?[a-z-]{3,}", epithet):
                known = species[genus].setdefault(epithet, [])
                if len(words) == 1 or words[0] in ("×", "x"):
                    known.extend(n for n in names if n not in known)
    lines = []
    for genus in sorted(families.keys() | species.keys()):
        entries = [e + ("=" + "|".join(n) if n else "") for e, n in sorted(species[genus].items())]
        lines.append(
            "\t".join([genus, families.get(genus, ""), "|".join(genus_names[genus]), ";".join(entries)])
        )
    return HEADER + "\n".join(lines) + "\n"


if __name__ == "__main__":
    source, target = map(Path, sys.argv[1:3])
    target.write_bytes(gzip.compress(build(source.read_text("utf-8")).encode(), 9, mtime=0))
