"""Lines of one side in the two orders a person may read them: along the rows, or down the columns.

A label may stand before its value, over it, or under it; how most labels of a side stand speaks for all.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Callable, Iterator, Mapping, Sequence, Set
from itertools import pairwise
from statistics import median

from ocr_tags.layout.lines import Line

IsLabel = Callable[[str], bool]


def no_label(line: str) -> bool:
    return False


TITLE = 1.3
"""So many times the letters of a value make a line over it a title, not its first line."""
FURTHER = 0.35
"""In letter heights: so much further off what is below, a label has no tie to it."""
Arranged = list[tuple[str, Line]]
"""Lines in reading order, each with the separator that stands before it."""


def rows(lines: Sequence[Line], is_label: IsLabel = no_label, under: bool = False) -> Arranged:
    """Level lines side by side are joined by a tab; a line right below a whole row follows by a newline.

    On a side whose labels stand over their values, a label and what is beside it have no tie; where they
    stand `under` them, a label and what is below it have none.
    """
    below = line_below(lines)
    over = _label_ties(lines, is_label)[1]
    arranged: Arranged = []
    previous: list[Line] = []
    for row in level_rows(lines):
        follows = bool(previous) and len(row) == 1 and below.get(id(previous[-1])) is row[0]
        follows = follows and not (under and is_label(previous[-1].text))
        separator = "\n" if follows else "\n\n"
        for line in row:
            arranged.append((separator, line))
            separator = "\n\n" if id(line) in over else "\t"
        previous = row
    return arranged


def _label_ties(lines: Sequence[Line], is_label: IsLabel) -> tuple[set[int], set[int]]:
    """Labels (by id) whose value is beside them, and labels whose value is below.

    Most tags are printed one way or the other, so the commoner tie on a side speaks for all its labels. But
    where most stand over their values, one that stands further off what is below has its value beside it.
    """
    labels = {id(line) for line in lines if is_label(line.text)}
    below = line_below(lines, is_label)
    beside = {
        id(left)
        for row in level_rows(lines)
        for left, right in pairwise(row)
        if id(left) in labels and id(right) not in labels
    }
    over = {label for label in labels if label in below and id(below[label]) not in labels}
    if len(beside) > len(over):
        return beside, set()
    gaps = {id(line): gap_below(line, below[id(line)]) for line in lines if id(line) in over}
    usual = median([gaps[label] for label in over - beside] or [float("inf")])
    off = {label for label in over & beside if gaps[label] > usual + FURTHER}
    return off, over - off


def gap_below(upper: Line, lower: Line) -> float:
    """Between two lines, in letter heights of the smaller."""
    return (lower.place.y - upper.place.bottom) / min(upper.height, lower.height)


def columns(lines: Sequence[Line], is_label: IsLabel = no_label) -> Arranged:
    """Lines that stand right below one another come together, newline after newline.

    Where a side prints its labels under their values (a picture, the value, then in small letters what
    it is), each such column comes with its label first: readers know one order only.
    """
    chains = _apart(chains_of(lines, _label_ties(lines, is_label)[0], is_label), is_label)
    under = [chain for chain in chains if _labelled_below(chain, is_label)]
    if len(under) > 1:
        floor = max(chain[0].place.y for chain in under)
        chains = [
            part for chain in chains for part in (_off_title(chain, floor) if chain in under else [chain])
        ]
        under = [chain for chain in chains if _labelled_below(chain, is_label)]
    arranged: Arranged = []
    for chain in chains:
        turned = [chain[-1], *chain[:-1]] if len(under) > 1 and chain in under else chain
        arranged.extend(("\n" if number else "\n\n", line) for number, line in enumerate(turned))
    return arranged


def chains_of(
    lines: Sequence[Line], ends: Set[int] = frozenset(), is_label: IsLabel = no_label
) -> list[list[Line]]:
    """Each column of lines right below one another, from the top left; a line in `ends` (ids) ends one."""
    below = {upper: lower for upper, lower in line_below(lines, is_label).items() if upper not in ends}
    followers = {id(line) for line in below.values()}
    chains: list[list[Line]] = []
    for line in sorted(lines, key=lambda line: (line.place.y, line.place.x)):
        if id(line) in followers:
            continue
        chain = [line]
        while id(chain[-1]) in below:
            chain.append(below[id(chain[-1])])
        chains.append(chain)
    return chains


def _apart(chains: list[list[Line]], is_label: IsLabel) -> list[list[Line]]:
    """Columns of value, label, value, label as pairs, if columns end in a label and begin with none."""
    orders = ["".join("L" if is_label(line.text) else "V" for line in chain) for chain in chains]
    if sum(order.endswith("VL") for order in orders) <= sum(order.startswith("LV") for order in orders):
        return chains
    if _nearer_below(chains, orders):
        return chains
    parts: list[list[Line]] = []
    for chain, order in zip(chains, orders, strict=True):
        pairs = re.fullmatch("V*?((?:VL){2,})V*", order)
        start, end = pairs.span(1) if pairs else (0, 0)
        parts += [chain[:start], *(chain[at : at + 2] for at in range(start, end, 2)), chain[end:]]
    return [part for part in parts if part]


def _nearer_below(chains: list[list[Line]], orders: list[str]) -> bool:
    """Whether most labels between two values stand nearer the lower: a label above was lost."""
    nearer = [
        lower.place.y - label.place.bottom < label.place.y - upper.place.bottom
        for chain, order in zip(chains, orders, strict=True)
        for at in (match.start() for match in re.finditer("(?=VLV)", order))
        for upper, label, lower in [chain[at : at + 3]]
    ]
    return 2 * sum(nearer) > len(nearer)


def _labelled_below(chain: Sequence[Line], is_label: IsLabel) -> bool:
    return len(chain) > 1 and is_label(chain[-1].text) and not any(is_label(line.text) for line in chain[:-1])


def _off_title(chain: list[Line], floor: int) -> list[list[Line]]:
    """The column without the title that stands over it: `floor` is where the values of the row begin."""
    above = [line for line in chain[:-1] if line.place.y + line.place.h / 2 < floor]
    rest = chain[len(above) :]
    if len(rest) < 2 or not any(line.height > TITLE * rest[0].height for line in above):
        return [chain]
    return [above, rest]


def level_rows(lines: Sequence[Line]) -> list[list[Line]]:
    """Lines side by side, each row from the left."""
    found: list[list[Line]] = []
    for line in sorted(lines, key=lambda line: line.place.y + line.place.h / 2):
        for row in found[-4:]:
            if all(level(line, other) for other in row):
                row.append(line)
                break
        else:
            found.append([line])
    for row in found:
        row.sort(key=lambda line: line.place.x)
    return found


def level(a: Line, b: Line) -> bool:
    """Whether two lines stand side by side: middles level, letters of a like size, no overlap."""
    small, large = sorted((a.height, b.height))
    offset = abs((a.place.y + a.place.bottom) - (b.place.y + b.place.bottom)) / 2
    apart = min(a.place.right, b.place.right) - max(a.place.x, b.place.x) <= 0.5 * small
    alike = a.upright == b.upright and large < 2.2 * small
    return alike and apart and offset < 0.45 * small + 0.1 * large


def line_below(lines: Sequence[Line], is_label: IsLabel = no_label) -> dict[int, Line]:
    """For each line (by id) the one right below it in its column, where each is the other's nearest; below a
    label that heads a cell, the value in its middle as well."""
    down: dict[int, Line] = {}
    up: dict[int, Line] = {}
    ordered = sorted(lines, key=_top)
    for line in lines:
        lower = ordered[bisect_right(ordered, line.place.y, key=_top) :]
        nearest = next((other for other in lower if _under(line, other)), None)
        if nearest is not None:
            down[id(line)] = nearest
            rival = up.get(id(nearest))
            if rival is None or line.place.bottom > rival.place.bottom:
                up[id(nearest)] = line
    below = {
        id(line): down[id(line)] for line in lines if id(line) in down and up[id(down[id(line)])] is line
    }
    return below | dict(_in_cells(lines, is_label, below))


def _in_cells(
    lines: Sequence[Line], is_label: IsLabel, below: Mapping[int, Line]
) -> Iterator[tuple[int, Line]]:
    """Labels in the left corners of cells side by side, each with what stands alone in the middle of its
    cell, not right below: a cell ends where the next label begins, the last one is as wide as the others."""
    taken = {id(line) for line in below.values()}
    free = [line for line in lines if id(line) not in taken and not is_label(line.text)]
    for row in level_rows([line for line in lines if is_label(line.text)]):
        wide = max((right.place.x - left.place.x for left, right in pairwise(row)), default=0)
        for label, after in zip(row, [*row[1:], None], strict=True):
            end = after.place.x if after else label.place.x + wide
            inside = [
                line
                for line in free
                if label.place.x <= line.place.x and line.place.right <= end and _next_line(label, line)
            ]
            if id(label) not in below and len(inside) == 1:
                yield id(label), inside[0]


def _next_line(upper: Line, lower: Line) -> bool:
    """Whether a line stands in the next one's place, wherever in it."""
    small, large = sorted((upper.height, lower.height))
    near = -0.5 * small < lower.place.y - upper.place.bottom < 1.5 * large
    return near and upper.upright == lower.upright and lower.place.y > upper.place.y + 0.4 * small


def _top(line: Line) -> int:
    return line.place.y


def _under(upper: Line, lower: Line) -> bool:
    small, large = sorted((upper.height, lower.height))
    overlap = min(upper.place.right, lower.place.right) - max(upper.place.x, lower.place.x)
    beneath = overlap > 0.3 * min(upper.place.w, lower.place.w)
    return beneath and large < 2.6 * small and _next_line(upper, lower)
