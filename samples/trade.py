"""How the trade words care, claims, warnings, prices and codes; and small print that states nothing."""

from __future__ import annotations

import random
import re

from plants import Plant, Supplier
from wording import FOREIGN, Fact

Rng = random.Random

# ---------------------------------------------------------------- words of care, claims, codes

_WATER = {
    "dry": ["Drought tolerant once established", "Low", "Let soil dry between waterings", "Water sparingly"],
    "indoor": ["Water when top inch of soil is dry", "Keep lightly moist", "Allow to dry between waterings"],
    "": [
        "Medium",
        "Average",
        "Keep soil evenly moist",
        "Water regularly",
        "Moderate",
        "Keep moist",
        "Water deeply once a week the first season",
    ],
}
_WATER_FOREIGN = {"dry": ("Faible", "Poca"), "indoor": ("Modéré", "Moderado"), "": ("Régulier", "Regular")}
_SOIL = {
    "dry": ["Well-drained", "Sandy, well-drained soil", "Lean, sharply drained"],
    "indoor": ["Peat-free potting mix", "Well-drained potting soil"],
    "": [
        "Rich, moist, well-drained",
        "Well-drained",
        "Average garden soil",
        "Fertile, well-drained soil",
        "Humus-rich",
        "Adaptable; tolerates clay",
    ],
}
_FEEDING = [
    "Feed monthly during growing season",
    "Slow-release fertilizer in spring",
    "Balanced fertilizer every 2 weeks",
    "Feed lightly in spring",
    "10-10-10 in early spring",
]
_WARNINGS = {
    "toxic": [
        "Toxic if eaten",
        "Harmful if eaten",
        "All parts poisonous if ingested",
        "Poisonous: keep away from children and pets",
    ],
    "toxic_pets": ["Toxic to pets if chewed", "Toxic to cats and dogs", "Harmful to pets if eaten"],
    "toxic_cats": ["Highly toxic to cats"],
    "ornamental": ["Not for human consumption", "For ornamental use only"],
}
KIND_WORDS = {
    "perennial": ["Perennial", "Hardy perennial", "PERENNIAL", "Herbaceous perennial"],
    "biennial": ["Biennial"],
    "tender_perennial": ["Tender perennial"],
    "annual": ["Annual", "ANNUAL", "Annuals"],
    "shrub": ["Shrub", "Flowering shrub", "Deciduous shrub"],
    "tree": ["Tree", "Ornamental tree"],
    "vine": ["Vine", "Perennial vine"],
    "grass": ["Ornamental grass", "Perennial grass"],
    "fern": ["Hardy fern", "Fern"],
    "bulb": ["Bulb", "Flower bulbs"],
    "herb": ["Herb", "Culinary herb", "HERBS"],
    "vegetable": ["Vegetable", "VEGETABLES"],
    "fruit": ["Fruit", "Edible fruit"],
    "houseplant": ["Houseplant", "Indoor plant"],
    "succulent": ["Succulent", "Hardy succulent"],
    "rose": ["Shrub rose", "Rose"],
}
_KIND_VALUES = {
    "Perennial vine": ["perennial", "vine"],
    "Perennial grass": ["perennial", "grass"],
    "Shrub rose": ["shrub", "rose"],
}
_POTS = {
    "US": [
        '4" pot',
        "1 gal",
        "#1",
        "#2",
        "1 qt",
        '4½" pot',
        "3 gal",
        "2.5 qt",
        "6 in. pot",
        "#3",
        "3½ in. pot",
    ],
    "CA": ["9 cm pot", "1 gal", "2 gal (7.5 L)", "15 cm pot", '4" pot'],
    "NL": ["P9", "C2", "2 L", "Ø 12 cm pot", "9 cm pot"],
    "GB": ["9cm pot", "2 litre", "1 L pot", "3 litre"],
}
_MONEY = {
    "USD": ["${}", "$ {}"],
    "CAD": ["CAD {}", "CA${}", "{} CAD"],
    "EUR": ["€ {}", "€{}", "EUR {}"],
    "GBP": ["£{}", "£ {}"],
}


def kind(plant: Plant, rng: Rng) -> Fact:
    words = rng.choice(KIND_WORDS[plant.kind])
    value = _KIND_VALUES.get(words, [plant.kind])
    return Fact("categories", value, "Type", words, words)


def free_text(name: str, plant: Plant, supplier: Supplier, rng: Rng) -> Fact:
    """Water, soil or feeding words, kept as printed."""
    wet = "indoor" if plant.light == "indoor" else "dry" if "dry" in plant.traits else ""
    if name == "water":
        text, label = (
            rng.choice(_WATER[wet]),
            rng.choice(["Water", "WATER", "Watering", "Moisture", "Water needs"]),
        )
        other = {
            code: (FOREIGN["water"][code], _WATER_FOREIGN[wet][at]) for at, code in enumerate(("fr", "es"))
        }
        return Fact(name, text, label, text, text, other)
    if name == "soil":
        text = rng.choice(_SOIL[wet])
        return Fact(name, text, rng.choice(["Soil", "SOIL", "Soil type"]), text)
    text = rng.choice(_FEEDING)
    if supplier.country in ("GB", "NL"):
        text = text.replace("fertilizer", "fertiliser")
    return Fact(name, text, rng.choice(["Feed", "Fertilizer", "Feeding"]), text, text)


def colour(plant: Plant, supplier: Supplier, rng: Rng) -> Fact:
    """A colour stated as such; trade "blue" included."""
    word = rng.choice(plant.colours)
    label = rng.choice(["Flower color", "Color", "Bloom color", "Flowers"])
    if supplier.country in ("GB", "NL", "CA"):
        label = label.replace("olor", "olour")
    words = word[0].upper() + word[1:] if rng.random() < 0.6 else word
    phrase = f"{word[0].upper()}{word[1:]} flowers"
    return Fact("colours", word.split(" and "), label, words, phrase)


def warning(plant: Plant, rng: Rng) -> Fact | None:
    for trait, choices in _WARNINGS.items():
        if trait in plant.traits or (
            trait == "ornamental" and plant.kind == "annual" and rng.random() < 0.25
        ):
            text = rng.choice(choices)
            return Fact("warnings", [text], rng.choice(["Caution", "Warning", "CAUTION"]), text, text)
    return None


def native(plant: Plant, rng: Rng) -> Fact | None:
    place = next((t.split(":", 1)[1] for t in plant.traits if t.startswith("native:")), None)
    if place is None:
        return None
    text = rng.choice([f"Native to {place}", f"{place[0].upper()}{place[1:]} native"])
    return Fact("native_claim", text, "", text, text)


def extras(plant: Plant, rng: Rng) -> list[Fact]:
    """What attracts, resists, is good for: printed, though the record has no place of its own for it."""
    animals = [t for t in ("bees", "butterflies", "hummingbirds", "birds") if t in plant.traits]
    facts = []
    if animals:
        text = rng.choice(["Attracts {}", "Loved by {}", "Attracts {}"]).format(" & ".join(animals[:2]))
        facts.append(Fact("attracts", animals[:2], "", text, text))
    if "deer" in plant.traits:
        text = rng.choice(["Deer resistant", "Deer Resistant", "Resists deer", "Deer tolerant"])
        facts.append(Fact("resists", ["deer"], "", text, text))
    for trait, text in (("fragrant", "Fragrant"), ("cut", "Good cut flower"), ("ground", "Groundcover")):
        if trait in plant.traits:
            facts.append(Fact("use", text, "", text, text))
    return facts


def days(plant: Plant, rng: Rng) -> Fact | None:
    span = next((t[5:] for t in plant.traits if t.startswith("days:")), None)
    if span is None:
        return None
    shift = rng.choice([-4, -2, 0, 0, 3, 5])
    low, high = (int(n) + shift for n in span.split("-"))
    if rng.random() < 0.4:
        low = high
    figure = f"{low}" if low == high else f"{low}{rng.choice(['-', '–', ' to '])}{high}"
    label = rng.choice(["Days to maturity", "Maturity", "Days to harvest", "Matures in"])
    text = figure if label.startswith("Days") and rng.random() < 0.5 else f"{figure} days"
    phrase = rng.choice(
        [f"Matures in {figure} days", f"{figure} days to harvest", f"Harvest in {figure} days"]
    )
    return Fact("days_to_maturity", {"min_days": low, "max_days": high}, label, text, phrase)


def container(plant: Plant, supplier: Supplier, rng: Rng) -> Fact:
    large = plant.kind in ("shrub", "tree", "rose", "vine", "fruit")
    choices = [
        pot for pot in _POTS[supplier.country] if bool(re.search(r"gal|#|litre|C2|2 L|15 cm", pot)) == large
    ]
    text = rng.choice(choices)
    return Fact("container", text, rng.choice(["Size", "Pot size", "Container", "Pot"]), text, text)


def price(supplier: Supplier, plant: Plant, rng: Rng) -> Fact:
    top = 89 if plant.kind == "tree" else 45 if plant.kind in ("shrub", "rose", "fruit", "vine") else 18
    amount = f"{rng.randint(max(2, top // 5), top)}.{rng.choice(['99', '99', '49', '95', '00', '79'])}"
    shown = amount.replace(".", ",") if supplier.currency == "EUR" else amount
    text = rng.choice(_MONEY[supplier.currency]).format(shown)
    return Fact("price", {"amount": amount, "currency": supplier.currency}, "Price", text, text)


def patents(supplier: Supplier, rng: Rng) -> Fact:
    number = f"{rng.randint(18, 36)},{rng.randint(0, 999):03d}"
    forms = ["PP{n}", "USPP {n}", "PP#{n}", "PPAF", "U.S. Plant Patent No. {n}", "USPPAF", "PP{p}"]
    if supplier.country == "CA":
        forms = ["CPBRAF", "PBR", "PP{n} CPBRAF"]
    if supplier.country in ("NL", "GB"):
        forms = ["PBR", "EU PBR", "EUPVR"]
    text = rng.choice(forms).format(n=number, p=number.replace(",", ""))
    parts = text.split(" CPBRAF")
    value = [parts[0], "CPBRAF"] if len(parts) == 2 else [text]
    return Fact("patents", value, "", text, text)


def gtin(rng: Rng) -> str:
    """In-store numbers only (UPC number system 4, GS1 prefixes 20 to 29), with a right check digit."""
    body = (
        f"4{rng.randint(0, 9_999_999_999):010d}"
        if rng.random() < 0.6
        else f"2{rng.randint(0, 9)}{rng.randint(0, 9_999_999_999):010d}"
    )
    total = sum(int(digit) * (3 if at % 2 == 0 else 1) for at, digit in enumerate(reversed(body)))
    return body + str(-total % 10)


def passport(plant: Plant, supplier: Supplier, rng: Rng) -> list[str]:
    """The four lettered lines of a plant passport: values for A, B, C and D."""
    operator = f"{supplier.country}-{rng.randint(0, 9999999):09d}"
    trace = rng.choice(
        [
            f"{rng.randint(20, 27)}-{rng.randint(1, 999):04d}-{rng.randint(1, 20):02d}",
            f"{rng.randint(10000, 99999)}",
        ]
    )
    return [plant.printed, operator, trace, rng.choice([supplier.country, supplier.country, "DE", "PL"])]


# ---------------------------------------------------------------- words that state nothing

SMALL_PRINT = [
    "Remove from pot, loosen roots and set at the same depth.",
    "Dig a hole twice as wide as the pot.",
    "Remove faded blooms to keep plants tidy.",
    "Mulch 2 in. deep to keep roots cool.",
    "Cut back to 6 in. in late winter.",
    "Ideal for borders, beds and patio pots.",
    "Divide clumps every 3-4 years.",
    "Firm gently and water in well.",
    "A reliable choice for busy gardeners.",
    "Keep this tag for future reference.",
    "Call before you dig.",
    "Combine with grasses and daisies for a long show.",
    "Acclimate to the outdoors over several days.",
    "Please recycle this pot.",
    "Guaranteed for 1 year with receipt.",
]
INDOOR_PRINT = [
    "Turn the pot now and then for even growth.",
    "Wipe leaves with a damp cloth.",
    "Empty the saucer after watering.",
    "Keep this tag for future reference.",
    "Repot in spring when roots fill the pot.",
]
TAGLINES = [
    "A garden classic, made better",
    "Colour you can count on",
    "Easy and carefree",
    "Grown with care",
    "New this season",
    "Loved by gardeners",
    "For pots and borders",
]
