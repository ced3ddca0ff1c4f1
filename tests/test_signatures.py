"""Firms and bodies that sign a tag, told by their words and by where they stand. All names are invented."""

from __future__ import annotations

import pytest

from ocr_tags.fields.makers import read_supplier
from ocr_tags.record import TagText

ABOVE = (
    "Sow under glass in early spring and keep\nthe pots just moist until leaves come.\n"
    "It will grow in any soil that drains.\nCut it all down in autumn.\n"
)


@pytest.mark.parametrize(
    ("text", "supplier"),
    [
        (ABOVE + "Marl Ridge Ornamentals", "Marl Ridge Ornamentals"),
        (ABOVE + "Tarrowby Camellias", "Tarrowby Camellias"),
        (ABOVE + "Four Gates Vine & Shrub", "Four Gates Vine & Shrub"),
        (ABOVE + "Candle Window Florals", "Candle Window Florals"),
        (ABOVE + "The Blue Spoon Plant Company", "The Blue Spoon Plant Company"),
        (ABOVE + "Tarrow & Crumb", "Tarrow & Crumb"),
        (ABOVE + "Kettle & Fern", "Kettle & Fern"),
        (ABOVE + "Bees & Butterflies", None),
        (ABOVE + "Showy Trailing Annuals", None),
        (ABOVE + "PBR Cert. 20555", None),
        (ABOVE + "USPP 31,555 Tarrow & Palm Growers", "Tarrow & Palm Growers"),
        (ABOVE + "Herb ✦ Elmscote Ridge Plant Starts", "Elmscote Ridge Plant Starts"),
        (ABOVE + "Elmscote Interiors 13cm", "Elmscote Interiors"),
        (ABOVE + "ELMSCOTE HOLLOW TREE FARM SKU 11-02", "Elmscote Hollow Tree Farm"),
        (ABOVE + "Elmscote Root Company PRODUCT OF USA", "Elmscote Root Company"),
        (ABOVE + "Elmscote Alpines PP A Draba B GB-11111 C 1 D GB", "Elmscote Alpines"),
        (ABOVE + "Beerenobst Ulmer OHG. Plant Passport A Ribes", "Beerenobst Ulmer OHG"),
        (ABOVE + "Elmscote Spit Nursery P/L", "Elmscote Spit Nursery P/L"),
        (ABOVE + "Bambuskontor Ulmenheide", "Bambuskontor Ulmenheide"),
        (ABOVE + "V.O.F. Iepenhof", "V.O.F. Iepenhof"),
        (ABOVE + "Kräuterei am Ulmendeich, 3,49€", "Kräuterei am Ulmendeich"),
        (ABOVE + "Tarrow & Pell, alpine growers, Lot L-9", "Tarrow & Pell"),
        ("Elmscote Pond Farm raises these bulbs from seed.", "Elmscote Pond Farm"),
        ("Grown by Tarrow & Daughters, Rose Growers", "Tarrow & Daughters, Rose Growers"),
        ("Grown from seed by the Tuesday volunteers of Elmscote Botanic\nGarden", "Elmscote Botanic Garden"),
        ("Raised by Mr. Pell's third grade at Elmscote School Garden\nClub", "Elmscote School Garden Club"),
        ("Friends of Elmscote Botanic Garden\n" + ABOVE, "Friends of Elmscote Botanic Garden"),
        ("Elmscote Farm™\n" + ABOVE, None),
        (ABOVE + "ELMSCOTE RIDGE NATIVES Alder Fork OR", "Elmscote Ridge Natives"),
        (ABOVE + "QUARLE TARROW Alder Fork OR", None),
        (ABOVE + "Roundleaf Tarrow\nELMSCOTE TUBES", "Elmscote Tubes"),
        (ABOVE + "Larkspur Slough\nWater Gardens", "Larkspur Slough Water Gardens"),
        (ABOVE + "Tarrow & Sloe,\nHerb Growers, Marlby", "Tarrow & Sloe"),
        (ABOVE + "Baumschule\nUlmer, 25111\nElmenbrook\n9 cm", "Baumschule Ulmer"),
        (ABOVE + "Elmshallow\nMarl Wray, Devon", "Elmshallow"),
        (ABOVE + "Perennial\nMarl Wray, Devon", "Marl Wray"),
        (ABOVE + "‘Elmscote Lace'", None),
        (ABOVE + "FROST OK,WIND OK", None),
    ],
)
def test_signed(text: str, supplier: str | None) -> None:
    assert [one.value for one in read_supplier(TagText(text))] == ([supplier] if supplier else [])
