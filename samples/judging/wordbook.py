"""Words of the trade in the languages that two-language tags print; English first, from memory."""

from __future__ import annotations

LANGUAGES = ("en", "fr", "es", "de", "nl")

LABELS: dict[str, dict[str, tuple[str, ...]]] = {
    "height": {
        "en": ("Height", "Height", "Mature Height", "Ht.", "Garden height", "Plant height"),
        "fr": ("Hauteur",),
        "es": ("Altura",),
        "de": ("Höhe", "Wuchshöhe"),
        "nl": ("Hoogte",),
    },
    "flower_height": {
        "en": ("Height in flower", "Flower height", "Bloom height"),
        "fr": ("Hauteur en fleur",),
    },
    "spread": {
        "en": ("Spread", "Spread", "Width", "Mature Width", "Mature spread"),
        "fr": ("Étalement", "Largeur"),
        "es": ("Extensión", "Ancho"),
        "de": ("Breite",),
        "nl": ("Breedte",),
    },
    "spacing": {
        "en": ("Spacing", "Plant spacing", "Space", "Planting distance"),
        "fr": ("Espacement",),
        "es": ("Espaciamiento", "Distancia"),
        "de": ("Pflanzabstand",),
        "nl": ("Plantafstand",),
    },
    "row_spacing": {"en": ("Row spacing", "Rows", "Between rows"), "fr": ("Entre les rangs",)},
    "hardiness": {
        "en": ("Zones", "Hardiness", "USDA Zones", "Hardiness Zones", "Zone", "Cold hardiness"),
        "fr": ("Zones de rusticité", "Zone"),
        "es": ("Zonas",),
        "de": ("Winterhärtezone",),
        "nl": ("Winterhardheid zone",),
    },
    "min_temperature": {
        "en": ("Hardy to", "Minimum temp.", "Cold hardy to", "Min. temperature"),
        "fr": ("Rustique jusqu'à",),
        "es": ("Resiste hasta",),
        "de": ("Winterhart bis",),
        "nl": ("Winterhard tot",),
    },
    "light": {
        "en": ("Light", "Exposure", "Light needs", "Site"),
        "fr": ("Exposition", "Lumière"),
        "es": ("Luz", "Exposición"),
        "de": ("Standort",),
        "nl": ("Standplaats",),
    },
    "water": {"en": ("Water", "Moisture", "Watering"), "fr": ("Arrosage", "Eau"), "es": ("Riego", "Agua")},
    "soil": {
        "en": ("Soil", "Soil type"),
        "fr": ("Sol",),
        "es": ("Suelo",),
        "de": ("Boden",),
        "nl": ("Grond",),
    },
    "feeding": {"en": ("Fertilizer", "Feed", "Feeding"), "fr": ("Engrais",), "es": ("Fertilizante",)},
    "bloom": {
        "en": ("Bloom time", "Blooms", "Flowers", "In flower", "Flowering"),
        "fr": ("Floraison",),
        "es": ("Floración",),
        "de": ("Blütezeit",),
        "nl": ("Bloei", "Bloeitijd"),
    },
    "colours": {
        "en": ("Flower color", "Color", "Bloom color"),
        "fr": ("Couleur",),
        "es": ("Color",),
        "de": ("Farbe",),
        "nl": ("Kleur",),
    },
    "categories": {
        "en": ("Type", "Plant type"),
        "fr": ("Type",),
        "es": ("Tipo",),
        "de": ("Art",),
        "nl": ("Soort",),
    },
    "days_to_maturity": {"en": ("Days to maturity", "Maturity", "Days to harvest"), "fr": ("Maturité",)},
    "container": {"en": ("Container", "Size", "Pot size"), "fr": ("Contenant",), "es": ("Maceta",)},
    "also:germination": {"en": ("Germination",), "fr": ("Germination",), "es": ("Germinación",)},
    "also:sowing_depth": {"en": ("Sowing depth", "Plant depth", "Sow depth"), "fr": ("Profondeur",)},
    "also:uses": {"en": ("Uses", "Use", "Ideal for"), "fr": ("Usages",), "es": ("Usos",)},
    "also:habit": {"en": ("Habit", "Form"), "fr": ("Port",), "es": ("Porte",), "de": ("Wuchs",)},
    "also:indoor_light": {"en": ("Light", "Light level"), "fr": ("Lumière",), "es": ("Luz",)},
    "heat_zones": {"en": ("Heat zones", "AHS Heat Zones")},
    "rhs_rating": {"en": ("RHS hardiness", "Hardiness rating")},
}

CLASSES = {"F": "full_sun", "S": "part_sun", "P": "part_shade", "D": "full_shade"}
LIGHT: dict[str, tuple[str, ...]] = {
    "F": ("Full sun", "Plein soleil", "Pleno sol", "Sonnig", "Volle zon"),
    "S": ("Part sun", "Soleil partiel", "Sol parcial", "Teilweise Sonne", "Halfzon"),
    "P": ("Part shade", "Mi-ombre", "Sombra parcial", "Halbschattig", "Halfschaduw"),
    "D": ("Full shade", "Ombre", "Sombra", "Schattig", "Schaduw"),
}
LIGHT_ENGLISH: dict[str, tuple[str, ...]] = {
    "F": ("Full sun", "Full Sun", "Sun", "FULL SUN"),
    "S": ("Part sun", "Partial Sun", "Partial sun", "Part Sun"),
    "P": ("Part shade", "Partial shade", "Partial Shade", "Part Shade"),
    "D": ("Full shade", "Shade", "Full Shade", "Deep shade"),
}
JOIN = {"en": " to ", "fr": " à ", "es": " a ", "de": " bis ", "nl": " tot "}
OR = {"en": " or ", "fr": " ou ", "es": " o ", "de": " oder ", "nl": " of "}

INDOOR = {
    "I": "Bright, indirect light",
    "IM": "Bright to medium indirect light",
    "M": "Medium, filtered light",
    "ML": "Medium to low light",
}

SEASONS: dict[str, tuple[str, ...]] = {
    "es": ("early spring", "début du printemps", "inicio de primavera", "Vorfrühling", "vroege lente"),
    "ms": ("mid spring", "milieu du printemps", "mediados de primavera", "Frühling", "lente"),
    "ls": ("late spring", "fin du printemps", "fines de primavera", "Spätfrühling", "late lente"),
    "eu": ("early summer", "début de l'été", "inicio de verano", "Frühsommer", "vroege zomer"),
    "mu": ("midsummer", "milieu de l'été", "mediados de verano", "Hochsommer", "zomer"),
    "lu": ("late summer", "fin de l'été", "fines de verano", "Spätsommer", "nazomer"),
    "ef": ("early fall", "début de l'automne", "inicio de otoño", "Frühherbst", "vroege herfst"),
    "mf": ("fall", "automne", "otoño", "Herbst", "herfst"),
    "wi": ("late winter", "fin de l'hiver", "fines de invierno", "Spätwinter", "late winter"),
}
SEASON_CODES = {
    "es": "early_spring",
    "ms": "mid_spring",
    "ls": "late_spring",
    "eu": "early_summer",
    "mu": "mid_summer",
    "lu": "late_summer",
    "ef": "early_fall",
    "mf": "fall",
    "wi": "late_winter",
}
START = {"wi": 2, "es": 3, "ms": 4, "ls": 5, "eu": 6, "mu": 7, "lu": 8, "ef": 9, "mf": 10}
MONTHS = [
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
]
ROMAN = ["I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X", "XI", "XII"]
MONTHS_IN = {
    "fr": [
        "janvier",
        "février",
        "mars",
        "avril",
        "mai",
        "juin",
        "juillet",
        "août",
        "septembre",
        "octobre",
        "novembre",
        "décembre",
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
    "nl": [
        "januari",
        "februari",
        "maart",
        "april",
        "mei",
        "juni",
        "juli",
        "augustus",
        "september",
        "oktober",
        "november",
        "december",
    ],
}

WATER = (
    ("Moderate", "Modéré", "Moderado", "Mäßig", "Matig"),
    ("Low", "Faible", "Poca", "Wenig", "Weinig"),
    ("Keep evenly moist", "Garder le sol humide", "Mantener húmedo", "Gleichmäßig feucht", "Vochtig houden"),
    ("Water when top inch is dry", "Arroser quand le sol est sec", "Regar cuando se seque", "", ""),
    ("Regular watering", "Arrosage régulier", "Riego regular", "Regelmäßig gießen", "Regelmatig gieten"),
    ("Drought tolerant once established", "Tolère la sécheresse", "Tolera la sequía", "", ""),
    ("Average to dry", "Moyen à sec", "Medio a seco", "", ""),
)
SOIL = (
    ("Well drained", "Bien drainé", "Bien drenado", "Durchlässig", "Goed doorlatend"),
    ("Fertile, moist, well drained", "Fertile, humide, bien drainé", "Fértil y húmedo", "", ""),
    ("Sandy or gravelly", "Sablonneux ou graveleux", "Arenoso", "", ""),
    ("Rich loam", "Terreau riche", "Franco rico", "", ""),
    ("Adaptable; tolerates clay", "Tout sol, même argileux", "Adaptable", "", ""),
    ("Slightly acidic", "Légèrement acide", "Ligeramente ácido", "Leicht sauer", "Licht zuur"),
)
FEEDING = (
    ("Balanced fertilizer every 2 weeks", "Engrais équilibré aux 2 semaines", "Fertilizante cada 2 semanas"),
    ("Compost each spring", "Compost chaque printemps", "Composta cada primavera"),
    ("Liquid feed monthly", "Engrais liquide chaque mois", "Abono líquido mensual"),
    ("Slow-release in early spring", "Engrais à libération lente", "Liberación lenta"),
)
CATEGORY: dict[str, tuple[tuple[str, ...], ...]] = {
    "annual": (("Annual", "Annuelle", "Anual", "Einjährig", "Eenjarig"),),
    "perennial": (("Perennial", "Vivace", "Perenne", "Staude", "Vaste plant"), ("Hardy perennial", "Vivace")),
    "tender_perennial": (("Tender perennial", "Vivace non rustique"),),
    "biennial": (("Biennial", "Bisannuelle", "Bienal", "Zweijährig", "Tweejarig"),),
    "shrub": (("Shrub", "Arbuste", "Arbusto", "Strauch", "Heester"), ("Hardy shrub", "Arbuste", "Arbusto")),
    "rose": (("Rose", "Rosier", "Rosal", "Rose", "Roos"),),
    "tree": (("Tree", "Arbre", "Árbol", "Baum", "Boom"), ("Shade tree", "Arbre")),
    "vine": (
        ("Vine", "Grimpante", "Trepadora", "Kletterpflanze", "Klimplant"),
        ("Climbing vine", "Grimpante"),
    ),
    "grass": (("Ornamental grass", "Graminée", "Gramínea", "Ziergras", "Siergras"),),
    "fern": (("Fern", "Fougère", "Helecho", "Farn", "Varen"), ("Hardy fern", "Fougère")),
    "bulb": (("Bulb", "Bulbe", "Bulbo", "Zwiebelblume", "Bol"), ("Flowering bulb", "Bulbe")),
    "herb": (("Herb", "Fine herbe", "Hierba", "Kräuter", "Kruid"), ("Culinary herb", "Fine herbe")),
    "vegetable": (("Vegetable", "Légume", "Hortaliza", "Gemüse", "Groente"),),
    "fruit": (("Fruit", "Fruit", "Fruta", "Obst", "Fruit"),),
    "houseplant": (
        ("Houseplant", "Plante d'intérieur", "Planta de interior"),
        ("House plant", "Plante d'intérieur"),
    ),
    "succulent": (("Succulent", "Succulente", "Suculenta"),),
}
WARN = {
    "eat": (
        "Harmful if eaten.",
        "CAUTION: Harmful if eaten",
        "All parts poisonous if ingested.",
        "Toxic if eaten",
    ),
    "skin": ("May irritate skin.", "Sap may cause skin irritation", "Skin irritant – wear gloves."),
    "pets": ("Toxic to cats and dogs.", "Harmful to pets if eaten", "Keep away from pets."),
}
NATIVE = ("Native to {}", "A native of {}")
ALSO = {
    "also:resists": (("deer",), ("Deer resistant", "Deer tolerant", "Seldom browsed by deer")),
    "also:attracts": (("bees",), ("Attracts bees", "Bee friendly", "Loved by bees and butterflies")),
}
USES = (
    "Borders, containers",
    "Beds and edging",
    "Cut flowers",
    "Patio pots",
    "Rock gardens",
    "Mass plantings",
)
HABIT = ("Upright", "Mounding", "Clump-forming", "Spreading", "Bushy, compact", "Arching")
