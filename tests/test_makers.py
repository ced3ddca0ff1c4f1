"""Who grew the plant and in which series it is sold. All names are invented."""

from __future__ import annotations

import pytest

from ocr_tags.fields.makers import read_series, read_supplier
from ocr_tags.record import TagText


@pytest.mark.parametrize(
    ("text", "supplier"),
    [
        ("Larch Gate Tree Farm, Stone Ford, AB", "Larch Gate Tree Farm"),
        ("Produit du Québec · Serres de l’Orme-Blanc", "Serres de l'Orme-Blanc"),
        ("Les Serres du Grand-Pré, Sainte-Orme (Québec)", "Les Serres du Grand-Pré"),
        ("Serres de", None),
        ("Les Serres Montclerval inc., Saint-Orme QC", "Les Serres Montclerval inc."),
        ("Tarrow Creek Wholesale Nurseries ABN 11 222 333 444", "Tarrow Creek Wholesale Nurseries"),
        ("2 gal $18.98 Tarrow Creek Growers", "Tarrow Creek Growers"),
        ("Coral Bells\nSun\nMarlwater Perennial\nCompany\nOxley, Wisconsin", "Marlwater Perennial Company"),
        ("Bloom\nSun\nTamsin Hollow\nNatives", "Tamsin Hollow Natives"),
        ("Bloom\nSun\nHardy Prairie\nNatives", None),
        ("Bloom\nSun\nTamsin Blooms\nPP12,345\nPropagation prohibited\nwithout a license", "Tamsin Blooms"),
        ("Bloom\nSun\nSummer Blooms", None),
        ("Hultby Perenner AB", "Hultby Perenner AB"),
        ("Pépinière des Deux Moulins, Sainte-Orme", "Pépinière des Deux Moulins"),
        ("Gärtnerei zum Lindenhof", "Gärtnerei zum Lindenhof"),
        ("Gartenbau Ahlers & Sohn", "Gartenbau Ahlers & Sohn"),
        ("Kwekerij De Hoge Akker", "Kwekerij De Hoge Akker"),
        ("Copley & Daughters Roses", "Copley & Daughters Roses"),
        ("© Larch Gate Farm- Stoneford, WI", "Larch Gate Farm"),
        ("Raised by The\nCrossfell Herb\nFarm", "The Crossfell Herb Farm"),
        ("Tamsin Brothers\nNursery\ntamsin.example", "Tamsin Brothers Nursery"),
        ("DIG A HOLE TWICE AS WIDE AS THE POT.", None),
        ("KEEP AS DRY AS YOU CAN", None),
        ("Fresh Herbs and Roses", None),
        ("Hardy Perennials\nPlants\nelm.example", None),
        ("Raised by The", None),
        ("Rushmere Native Plants Est. 1987", "Rushmere Native Plants"),
        ("Texas Native Plants", None),
        ("Tarrow's Millhouse Herbs", "Tarrow's Millhouse Herbs"),
        ("Chef's Choice Herbs", None),
        ("Marrow Lane Starts", "Marrow Lane Starts"),
        ("Fresh Herb Starts", None),
        ("Carrow Forest Nursery, Kilmarra, Co. Laois", "Carrow Forest Nursery"),
        ("9cm pot· Lathmere Hardy\nPlants, Derbyshire", "Lathmere Hardy Plants"),
        ("2 gal. ·Ashmere Berry Works,\nHale, OR", "Ashmere Berry Works"),
        ("4.5 in pot· Bellmere Color\nFarms, Marl, OH 44999", "Bellmere Color Farms"),
        ("9cm pot - The Merrymere\nHerb Farm", "The Merrymere Herb Farm"),
        ("Full Sun · Well Drained\nSoil", None),
        ("ALDER SLACK WHOLESALE CONIFERS\nPO BOX 12, MARL, OH 44999", "Alder Slack Wholesale Conifers"),
        ("Dove & Daisy\nMarlhill, Devon", "Dove & Daisy"),
        ("Quillmarsh Vine Works · Oxley, NJ ·\nquillmarsh.example", "Quillmarsh Vine Works"),
        ("Marrowby Bedding, Staithe Road, Kent · Plant out in May", "Marrowby Bedding"),
        ("Lot 7 Weir Road, Marrara SA", None),
        ("Coral Bells\nMarlhill, Kent", None),
        ("Great for pots, Hale, OR", None),
        ("Quillmarsh Conifers\nMarlhill, Oregon", "Quillmarsh Conifers"),
        ("Dove & Daisy Citrus, Florida", "Dove & Daisy Citrus"),
        ("Marrow Lane Trees · Vermont", "Marrow Lane Trees"),
        ("Bloom\nSun\nStrathelm Trees, by Marl", "Strathelm Trees"),
        ("Bloom\nSun\n9cm pot • Quillmarsh Alpines, Marl", "Quillmarsh Alpines"),
        ("Bloom\nSun\nTamsin & Daughter Alpines", "Tamsin & Daughter Alpines"),
        ("Bloom\nSun\nSpecimen Trees", None),
        ("Bloom\nSun\nFlowerng Shrubs", None),
        ("Bloom\nSun\nHeritage Roses", None),
        ("Marrow Creek Nursery QLD", "Marrow Creek Nursery"),
        ("Sun & Shade\nHale, OR", None),
        ("Full Sun & Part Shade, Kent", None),
        ("Moist Soil, Part Shade, OR Full Sun", None),
        ("CARROWBY STOCK CO.  HALE OR", "Carrowby Stock Co."),
        ("DENVER, CO.", None),
        ("Proudly grown for Tarrow & Pell Gardens, Hale, OR", "Tarrow & Pell Gardens"),
        ("Grown for Its Silver Leaves", None),
        ("Grower\tQuillmarsh Valley Natives\nTray\t38", "Quillmarsh Valley Natives"),
        ("Red Heron Natives Nsy  Lot 7-B", "Red Heron Natives Nsy"),
        ("Marrow Brook Organics\n$3.00", "Marrow Brook Organics"),
        ("From the Tidewick range by Elmstead Wholesale", "Elmstead Wholesale"),
    ],
)
def test_supplier(text: str, supplier: str | None) -> None:
    assert [one.value for one in read_supplier(TagText(text))] == ([supplier] if supplier else [])


@pytest.mark.parametrize(
    ("text", "series"),
    [
        ("Tidewick® Collection", "Tidewick"),
        ("Cove Lantern™ Collection", "Cove Lantern"),
        ("Herb Collection", None),
        ("Patio Collection", None),
        ('"Brushpot" Series', "Brushpot"),
        ("Series: 'Brushpot'", "Brushpot"),
        ("From the Tidewick range by Elmstead", "Tidewick"),
        ("part of the Cove Lantern Collection of dwarf asters", "Cove Lantern"),
        ("From our Patio range", None),
        ("Série Brushpot Series", "Brushpot"),
        ("Tidewick® Shrubs", "Tidewick"),
        ("Tidewick® Hydrangea", None),
        ("Hardy Shrubs", None),
    ],
)
def test_series(text: str, series: str | None) -> None:
    assert [one.value for one in read_series(TagText(text))] == ([series] if series else [])
