"""The drawn plan, and the command that works a bed out."""

from __future__ import annotations

import io
import json
import math
from dataclasses import replace
from itertools import combinations
from pathlib import Path
from xml.etree import ElementTree

import pytest
from PIL import Image
from truth_records import truth_records
from typer.testing import CliRunner, Result

from index import Catalogue
from ocr_tags.cli import app
from ocr_tags.planting import beds
from ocr_tags.planting.needs import Planting, work_out
from ocr_tags.planting.plan import plan_of, save_plan
from ocr_tags.planting.sheet import DOTS_PER_INCH, Disc, Line, Words, to_png, to_svg
from ocr_tags.planting.spacings import stated

SVG = "{http://www.w3.org/2000/svg}"


def lavender(bed: beds.Bed | None = None, *, edge: float | None = None) -> Planting:
    return work_out(bed or beds.rectangle("10ft", "4ft"), [stated("12in", "English Lavender")], True, edge)


def words(planting: Planting) -> str:
    return "\n".join(mark.text for mark in plan_of(planting).marks if isinstance(mark, Words))


# ---------------------------------------------------------------- the plan


def test_the_plan_is_to_scale() -> None:
    """Circles lie as far apart on paper as plants in the bed, divided by the scale the plan states."""
    planting = lavender()
    root = ElementTree.fromstring(to_svg(plan_of(planting)))
    marks = [(float(c.get("cx", 0)), float(c.get("cy", 0))) for c in root.iter(f"{SVG}circle")]
    rooms = marks[: planting.fewest]
    text = "".join(root.itertext())
    scale = int(text.split("1 : ")[1].split(",")[0])
    nearest = min(math.dist(one, other) for one, other in combinations(rooms, 2))
    assert nearest == pytest.approx(304.8 / scale, abs=0.03)
    assert root.get("width", "").endswith("mm") and root.get("viewBox", "").startswith("0 0 279.4")
    outline = next(root.iter(f"{SVG}polygon")).get("points", "").split()
    xs = [float(point.split(",")[0]) for point in outline]
    assert max(xs) - min(xs) == pytest.approx(3048 / scale, abs=0.03)


@pytest.mark.parametrize(
    "bed",
    [
        beds.rectangle("1ft", "1ft"),
        beds.rectangle("100ft", "2ft"),
        beds.rectangle("2ft", "60ft"),
        beds.circle("3m"),
        beds.row("40m"),
        beds.polygon("-2m,-1m 2m,-1m 0,3m"),
    ],
    ids=lambda bed: bed.in_words(),
)
def test_all_of_it_lies_on_the_sheet(bed: beds.Bed) -> None:
    for edge in (None, 0.0):
        sheet = plan_of(work_out(bed, [stated("12in", "x")], edge=edge))
        for mark in sheet.marks:
            points = (
                mark.points
                if isinstance(mark, Line)
                else [mark.centre if isinstance(mark, Disc) else mark.at]
            )
            radius = mark.radius if isinstance(mark, Disc) else 0
            for x, y in points:
                assert radius <= x <= sheet.width - radius and radius <= y <= sheet.height - radius


def test_the_legend_speaks_the_users_units_and_both_counts() -> None:
    text = words(lavender())
    assert "English Lavender: 39 plants, 12 in apart" in text
    assert "Plants drawn: 39. By the area formula: 47." in text
    assert "10 ft" in text and "4 ft" in text
    metric = words(lavender(beds.in_units(beds.rectangle("10ft", "4ft"), "cm")))
    assert "30 cm apart" in metric and "3.05 m" in metric and " ft" not in metric


def test_kinds_are_told_apart_by_shape() -> None:
    kinds = [replace(stated("1ft", f"Kind {n}"), share=1) for n in range(3)]
    planting = work_out(beds.rectangle("12ft", "4ft"), kinds)
    marks = [
        m for m in plan_of(planting).marks if isinstance(m, Line | Disc) and m.fill and m.fill != "#f6f2ea"
    ]
    shapes = {"disc" if isinstance(mark, Disc) else len(mark.points) for mark in marks}
    assert shapes == {"disc", 3, 4}


def test_a_name_cannot_break_the_svg() -> None:
    planting = work_out(beds.rectangle("3ft", "3ft"), [stated("1ft", '<b> & "Moon"</text>')])
    assert "<b> & " in "".join(ElementTree.fromstring(to_svg(plan_of(planting))).itertext())


def test_png_has_the_size_of_the_paper() -> None:
    picture = Image.open(io.BytesIO(to_png(plan_of(lavender()))))
    assert picture.size == (round(279.4 / 25.4 * DOTS_PER_INCH), round(215.9 / 25.4 * DOTS_PER_INCH))
    assert picture.info["dpi"] == pytest.approx((DOTS_PER_INCH, DOTS_PER_INCH), abs=0.1)
    assert len(picture.convert("L").getcolors() or []) > 2  # not an empty sheet


def test_png_without_a_font_of_the_system(monkeypatch: pytest.MonkeyPatch) -> None:
    """Pillow's own font has no ½ and no ×: other signs stand in, and nothing fails."""
    from ocr_tags.planting import sheet

    monkeypatch.setattr(sheet, "_FONTS", ())
    sheet._font.cache_clear()
    try:
        assert Image.open(io.BytesIO(to_png(plan_of(lavender())))).size[0] > 0
    finally:
        sheet._font.cache_clear()


def test_plans_are_saved_by_their_ending(tmp_path: Path) -> None:
    for name, head in (("bed.svg", b"<svg"), ("bed.PNG", b"\x89PNG")):
        save_plan(lavender(), tmp_path / name)
        assert (tmp_path / name).read_bytes().startswith(head)


# ---------------------------------------------------------------- the command


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("kept") / "cat"
    with Catalogue.open(folder) as catalogue:
        for record in truth_records().values():
            catalogue.add(record, {})
    return folder


def ask(kept: Path, *arguments: str) -> Result:
    return CliRunner().invoke(app, ["-c", str(kept), "bed", *arguments])


def test_bed_from_a_tag(kept: Path) -> None:
    """Tag 33 prints 30-40 cm: 30 by 10 and 22 by 7 in 9 by 3 m."""
    result = ask(kept, "33", "--rectangle", "9m", "3m", "--json", "--pack", "8")
    shown = json.loads(result.stdout)
    counts = shown["kinds"][0]["counts"]
    assert [count["placed"] for count in counts] == [300, 22 * 7]
    assert [count["formula_rounded_up"] for count in counts] == [300, 169]
    assert counts[1]["packs"] == [{"of": 8, "packs": 20, "plants": 160}]
    assert shown["kinds"][0]["basis"] == "printed" and len(counts[0]["spots_cm"]) == 300
    table = ask(kept, "33", "--rectangle", "9m", "3m").stdout
    assert "Plants in all: 154–300." in table and "30 cm (printed)" in table


def test_bed_by_the_name_of_a_tag(kept: Path) -> None:
    named = ask(kept, "siberian iris", "--rectangle", "9m", "3m", "--json")
    assert named.exit_code == 0 and json.loads(named.stdout)["plants"]["most"] == 300
    two = ask(kept, "hydrangea", "--rectangle", "9m", "3m")
    assert two.exit_code == 2 and "2 tags answer to 'hydrangea'" in two.stderr


def test_bed_without_a_catalogue(tmp_path: Path) -> None:
    plan = tmp_path / "bed.svg"
    result = ask(tmp_path / "none", "--spacing", "12in", "--rectangle", "10ft", "4ft", "--plan", str(plan))
    assert result.exit_code == 0 and "Plants in all: 40." in result.stdout and plan.exists()
    assert "call 811" in result.stdout  # nothing is known of the plant: it may be a tree
    assert not (tmp_path / "none").exists()


def test_the_reverse_at_the_command(kept: Path) -> None:
    result = ask(kept, "04", "--plants", "40", "--rectangle", "10ft", "4ft")
    assert "40 plants stand up to 12 in apart" in result.stdout
    assert "closer than wanted" in result.stdout and "4½ ft (printed)" in result.stdout
    shown = json.loads(ask(kept, "--plants", "21", "--row", "20ft", "--edge", "none", "--json").stdout)
    assert shown["placed_cm"] == pytest.approx(30.48, abs=0.1)


def test_units_of_the_user(kept: Path) -> None:
    result = ask(kept, "04", "--rectangle", "20ft", "20ft", "--here", "units=cm")
    assert "6.1 m × 6.1 m" in result.stdout and "135 cm (printed)" in result.stdout


WRONG = [
    (["--spacing", "1ft"], "Give one bed"),
    (["--spacing", "1ft", "--row", "3m", "--circle", "3m"], "Give one bed"),
    (["--rectangle", "10ft", "4ft"], "Name a tag, or give --spacing"),
    (["--spacing", "1ft", "--rectangle", "-10ft", "4ft"], "more than nothing"),
    (["--spacing", "1ft", "--polygon", "0,0 9ft,9ft 9ft,0 0,9ft"], "crosses"),
    (["--spacing", "9ft", "--circle", "2ft"], "does not fit"),
    (["--spacing", "1ft", "--circle", "9ft", "--pattern", "round"], "square or offset"),
    (["--spacing", "1ft", "--circle", "9ft", "--edge", "wide"], "The edge"),
    (["--spacing", "1ft", "--circle", "9ft", "--share", "1", "--share", "2"], "2 shares for 1 kind"),
    (["--spacing", "1ft", "--circle", "9ft", "--plan", "bed.gif"], ".svg or .png"),
    (["--plants", "-4", "--circle", "9ft"], "1 or more"),
    (["03", "--circle", "9ft"], "prints no spacing"),
    (["nosuch", "--circle", "9ft"], "nosuch"),
    (["04", "33", "--spacing", "1ft", "--circle", "9ft"], "1 spacing for 2 kinds"),
]


@pytest.mark.parametrize(("arguments", "said"), WRONG, ids=[" ".join(each) for each, _ in WRONG])
def test_wrong_use_gets_one_clear_sentence(kept: Path, arguments: list[str], said: str) -> None:
    result = ask(kept, *arguments)
    assert result.exit_code == 2 and result.stdout == ""
    assert result.stderr.startswith("ocr-tags: ") and said in result.stderr
    assert "Traceback" not in result.stderr and result.stderr.count("\n") == 1
