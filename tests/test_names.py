"""What the name readers find in tag texts, told from what they must not find."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import pytest

from ocr_tags.fields.makers import read_supplier
from ocr_tags.fields.names import read_botanical_name, read_common_names
from ocr_tags.fields.series.reader import read_series
from ocr_tags.names.naming import CODE, UNREAD
from ocr_tags.record import LineSpan, TagText

CASES = Path(__file__).parent / "cases"
CLAIMED = 0.5
ANSWERS = ("common", "botanical", "selling", "series", "supplier")


@dataclass
class Case:
    name: str
    lines: list[tuple[float, str]] = field(default_factory=list)
    answers: dict[str, str] = field(default_factory=dict)

    @property
    def tag(self) -> TagText:
        string, spans = "", []
        for row, (size, line) in enumerate(self.lines):
            string += "\n" if string else ""
            for number, part in enumerate(line.split("\t")):
                string += "\t" if number else ""
                spans.append(LineSpan(len(string), len(string) + len(part), size, row / len(self.lines)))
                string += part
        return TagText(string, lines=tuple(spans))


def read_cases(file: str, labels: tuple[str, ...] = ANSWERS) -> Iterator[Case]:
    case: Case | None = None
    for line in (CASES / file).read_text("utf-8").splitlines():
        label, _, value = line.partition(": ")
        if line.startswith("== "):
            if case:
                yield case
            case = Case(line[3:])
        elif case is None or not line:
            continue
        elif label in labels:
            case.answers[label] = value
        else:
            size, bar, text = line.partition("| ")
            sized = bool(bar) and size.replace(".", "").isdigit()
            case.lines.append(
                (float(size) if sized else 1.0, (text if sized else line).replace(" -> ", "\t"))
            )
    if case:
        yield case


def answers_of(tag: TagText) -> dict[str, str]:
    found: dict[str, str] = {}
    if common := [f.value for f in read_common_names(tag) if f.certainty >= CLAIMED]:
        found["common"] = " | ".join(common)
    botanical = [f for f in read_botanical_name(tag) if f.certainty >= CLAIMED and f.value.genus]
    if botanical:
        best = max(botanical, key=lambda f: f.certainty).value
        found["botanical"] = best.name
        if best.trade_designation:
            found["selling"] = best.trade_designation
    for name, read in (("series", read_series), ("supplier", read_supplier)):
        if values := [f.value for f in read(tag) if f.certainty >= CLAIMED]:
            found[name] = " | ".join(values)
    return found


FILES = ("names_titles.txt", "names_near_misses.txt", "names_damaged.txt", "names_judge.txt")
ALL = [pytest.param(case, id=f"{file}:{case.name}") for file in FILES for case in read_cases(file)]


@pytest.mark.parametrize("case", ALL)
def test_names_of_a_tag_text(case: Case) -> None:
    assert answers_of(case.tag) == case.answers


@pytest.mark.parametrize("case", ALL)
def test_every_finding_points_into_the_text(case: Case) -> None:
    tag = case.tag
    for read in (read_common_names, read_botanical_name, read_series, read_supplier):
        for found in read(tag):
            start, end = found.span
            assert 0 <= start < end <= len(tag.string)
            assert tag.string[start:end].strip() == tag.string[start:end]
            assert 0 < found.certainty <= 1


def test_a_known_name_with_and_in_it_stays_whole_in_a_list() -> None:
    """Hens and chicks is one name (common practice, no source); other names joined by "and" are two."""
    text = "Sempervivum tectorum\nAlso called Hens and Chicks, Common Houseleek and Roof Keeper"
    found = [each.value for each in read_common_names(TagText(text))]
    assert found == ["Hens and Chicks", "Common Houseleek", "Roof Keeper"]


@pytest.mark.parametrize("label", ["Also known as", "Also knownas", "Also known &"])
def test_a_worn_label_is_no_part_of_the_name_behind_it(label: str) -> None:
    found = [each.value for each in read_common_names(TagText(f"Tulipa gesneriana\n{label} Garden Tulip"))]
    assert found == ["Garden Tulip"]


@pytest.mark.parametrize(("code", "doubtful"), [("QUEltom3", False), ("QUEltoS3", True), ("QUElto3l", True)])
def test_a_code_whose_letter_may_be_a_figure_is_never_quite_sure(code: str, doubtful: bool) -> None:
    (found,) = read_botanical_name(TagText(f"Rosa '{code}'"))
    assert found.value.cultivar == code
    assert (found.certainty <= CODE) is doubtful


@pytest.mark.parametrize("behind", ['\n"lorrick Skylark"', "\nTURfre25", " 'l0rrick"])
def test_a_name_whose_cultivar_is_not_read_is_not_sure(behind: str) -> None:
    (found,) = read_botanical_name(TagText(f"Amelanchier canadensis{behind}\nHt. 4 m"))
    assert found.value.cultivar is None
    assert found.certainty <= UNREAD


def test_a_quoted_cultivar_on_a_side_without_a_genus_waits_for_the_other_side() -> None:
    (found,) = read_botanical_name(TagText("Red Raspberry\n'Tarn Ember'\nBare-root cane"))
    assert (found.value.genus, found.value.cultivar) == (None, "Tarn Ember")
