"""The wordbook of the second part: other words of the trade; German, Swedish and Spanish beside English."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path
from random import Random

TONGUES = ("en", "de", "sv", "es")

LABELS: dict[str, dict[str, tuple[str, ...]]] = {
    "height": {
        "en": ("Ultimate height", "Ht", "Height at maturity", "Grows", "Eventual height", "Height", "H"),
        "de": ("Wuchshöhe", "Höhe"),
        "sv": ("Höjd",),
        "es": ("Altura", "Alto"),
    },
    "spread": {
        "en": ("Ultimate spread", "Sprd", "Plant width", "Width", "Eventual spread", "Spread", "W"),
        "de": ("Wuchsbreite", "Breite"),
        "sv": ("Bredd",),
        "es": ("Ancho", "Diámetro"),
    },
    "spacing": {
        "en": ("Space between plants", "Plant spacing", "Distance apart", "Spacing"),
        "de": ("Pflanzabstand",),
        "sv": ("Planteringsavstånd", "Avstånd"),
        "es": ("Separación", "Distancia de plantación"),
    },
    "row_spacing": {"en": ("Row width", "Space between rows", "Distance between rows")},
    "hardiness": {
        "en": ("Hardiness zones", "USDA zone", "Grow zone", "Winter hardy", "Zone"),
        "de": ("Winterhärtezone", "WHZ"),
        "es": ("Zona USDA", "Zonas de rusticidad"),
    },
    "min_temperature": {
        "en": ("Frost hardy to", "Withstands", "Winter low", "Tolerates down to"),
        "de": ("Frosthart bis", "Winterhart bis"),
        "sv": ("Tål ner till",),
        "es": ("Resiste hasta",),
    },
    "light": {
        "en": ("Position", "Sunlight", "Aspect", "Where to plant", "Sun/shade"),
        "de": ("Standort", "Licht"),
        "sv": ("Läge", "Växtplats"),
        "es": ("Exposición", "Ubicación"),
    },
    "water": {
        "en": ("Water needs", "Irrigation", "Water", "To water"),
        "de": ("Wasser", "Gießen"),
        "sv": ("Vattning", "Vatten"),
        "es": ("Riego",),
    },
    "soil": {
        "en": ("Ground", "Soil", "Soil preference", "Growing medium"),
        "de": ("Boden", "Erde"),
        "sv": ("Jord", "Jordmån"),
        "es": ("Suelo", "Tierra"),
    },
    "feeding": {
        "en": ("Plant food", "Feed", "Fertiliser", "Nutrition"),
        "de": ("Düngung", "Dünger"),
        "sv": ("Gödsling", "Näring"),
        "es": ("Abono",),
    },
    "bloom": {
        "en": ("Flowering period", "Bloom season", "Flowering time", "In bloom", "Blooming"),
        "de": ("Blütezeit", "Blüte"),
        "sv": ("Blomning", "Blomningstid"),
        "es": ("Floración", "Época de flor"),
    },
    "colours": {
        "en": ("Flower colour", "Bloom colour", "Flower shade", "Blossom"),
        "de": ("Blütenfarbe",),
        "sv": ("Blomfärg",),
        "es": ("Color de la flor",),
    },
    "categories": {
        "en": ("Plant group", "Kind of plant", "Life cycle", "Category"),
        "de": ("Pflanzenart",),
        "sv": ("Växttyp",),
        "es": ("Tipo de planta",),
    },
    "days_to_maturity": {"en": ("Ready in", "Time to harvest", "From sowing to harvest")},
    "container": {"en": ("Pot", "Supplied in", "Pot size")},
    "rhs_rating": {"en": ("RHS hardiness rating", "RHS rating")},
    "also:indoor_light": {"en": ("Position", "Light indoors"), "de": ("Standort",), "sv": ("Läge",)},
    "also:density": {"en": ("Plants per m²",), "de": ("Stück/m²",), "sv": ("Antal/m²",)},
    "also:zones_sweden": {"en": ("Swedish zone",), "sv": ("Zon", "Härdighet")},
    "also:uses": {"en": ("Where to use", "Good for")},
    "also:attracts": {"en": ("Wildlife",)},
    "also:care": {"en": ("Care", "Tip"), "de": ("Pflege",), "sv": ("Skötsel",), "es": ("Cuidados",)},
    "also:synonyms": {"en": ("Formerly",)},
}

CLASSES = {"F": "full_sun", "S": "part_sun", "P": "part_shade", "D": "full_shade"}
LIGHT: dict[str, dict[str, tuple[str, ...]]] = {
    "F": {
        "en": ("Full sun", "Sun", "Sunny spot", "Full sun (6+ hours)", "Sunny"),
        "de": ("sonnig", "volle Sonne"),
        "sv": ("sol",),
        "es": ("pleno sol", "sol"),
    },
    "S": {"en": ("Part sun", "Partly sunny", "Partial sun"), "de": (), "sv": (), "es": ()},
    "P": {
        "en": ("Semi-shade", "Half shade", "Dappled shade", "Part shade", "Partial shade"),
        "de": ("halbschattig",),
        "sv": ("halvskugga",),
        "es": ("media sombra", "semisombra"),
    },
    "D": {
        "en": ("Shade", "Shady spot", "Full shade", "Deep shade"),
        "de": ("schattig",),
        "sv": ("skugga",),
        "es": ("sombra",),
    },
}
INDOOR = {
    "I": ("Bright room, no direct midday sun", "hell, keine Mittagssonne", "ljust, ej direkt sol"),
    "M": ("Light window, out of strong rays", "hell bis halbschattig", "ljust till halvljust"),
    "ML": ("Copes with a dim corner", "verträgt dunklere Ecken", "klarar mörkare lägen"),
}
TO = {
    "en": (" to ", "–", " - ", "-"),
    "de": ("–", " bis ", "-"),
    "sv": ("–", "-", " till "),
    "es": ("-", " a ", "–"),
}
UPTO = {
    "en": ("up to ", "to ", "up to "),
    "de": ("bis ", "bis zu "),
    "sv": ("upp till ",),
    "es": ("hasta ",),
}
ABOUT = {"en": ("approx. ", "about "), "de": ("ca. ",), "sv": ("ca ", "cirka "), "es": ("aprox. ",)}

SEASONS: dict[str, tuple[str, str, str, str]] = {
    "es": ("early spring", "Vorfrühling", "tidig vår", "principios de primavera"),
    "ms": ("mid-spring", "Frühlingsmitte", "mitten av våren", "mediados de primavera"),
    "ls": ("late spring", "Spätfrühling", "sen vår", "finales de primavera"),
    "eu": ("early summer", "Frühsommer", "försommar", "principios de verano"),
    "mu": ("midsummer", "Hochsommer", "högsommar", "pleno verano"),
    "lu": ("late summer", "Spätsommer", "sensommar", "finales de verano"),
    "ef": ("early {}", "Frühherbst", "tidig höst", "principios de otoño"),
    "mf": ("{}", "Herbst", "höst", "otoño"),
    "wi": ("late winter", "Spätwinter", "senvinter", "finales de invierno"),
}
MONTHS = {
    "en": [
        "January",
        "February",
        "March",
        "April",
        "May",
        "June",
        "July",
        "August",
        "September",
        "October",
        "November",
        "December",
    ],
    "de": [
        "Januar",
        "Februar",
        "März",
        "April",
        "Mai",
        "Juni",
        "Juli",
        "August",
        "September",
        "Oktober",
        "November",
        "Dezember",
    ],
    "sv": [
        "januari",
        "februari",
        "mars",
        "april",
        "maj",
        "juni",
        "juli",
        "augusti",
        "september",
        "oktober",
        "november",
        "december",
    ],
    "es": [
        "enero",
        "febrero",
        "marzo",
        "abril",
        "mayo",
        "junio",
        "julio",
        "agosto",
        "septiembre",
        "octubre",
        "noviembre",
        "diciembre",
    ],
}
NATIVE = ("Native plant of {}", "Grows wild in {}: a true native", "Native range: {}")
WILDLIFE: dict[str, tuple[str, tuple[tuple[str, str], ...]]] = {  # field, then text and what it names
    "deer": ("also:resists", (("Deer usually leave it alone", "deer"), ("Rarely eaten by deer", "deer"))),
    "bees": ("also:attracts", (("Good for pollinators", "pollinators"), ("A magnet for bees", "bees"))),
}
USES = {
    "annual": ("Window boxes", "Balcony tubs", "Summer bedding", "Front of border"),
    "perennial": ("Cottage gardens", "Mixed borders", "Cut flowers"),
    "shrub": ("Mixed borders", "Informal hedges", "Specimen planting"),
}


@dataclass(frozen=True, slots=True)
class Phrase:
    """What a tag says in few words, the same as a sentence, and in other languages, "" where not known."""

    text: str
    sentence: str
    others: dict[str, str]


def label(rng: Random, name: str, tongue: str) -> str:
    """A word for this fact in that language, or "" where the tag says it in English only."""
    return rng.choice(LABELS.get(name, {}).get(tongue) or ("",))


@cache
def phrases() -> dict[str, list[Phrase]]:
    """The phrases of `second_phrases.psv` under their keys."""
    found: dict[str, list[Phrase]] = {}
    for line in Path(__file__).with_name("second_phrases.psv").read_text("utf-8").splitlines():
        if not line.startswith("#"):
            key, text, sentence, *others = line.split("|")
            known = Phrase(text, sentence, dict(zip(TONGUES[1:], others, strict=True)))
            found.setdefault(key, []).append(known)
    return found
