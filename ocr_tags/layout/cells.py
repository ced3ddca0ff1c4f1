"""Labels and values wrapped over several lines: each label made whole, with all of its value.

Read along the rows, "Flower | Spotted" and "shade | mauve" fall apart; read down the columns, it cannot be
told where a value ends and whether the label stands over it or under it. The eye tells by the gaps.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise, takewhile
from statistics import median

from ocr_tags.layout.lines import Line
from ocr_tags.layout.reading_order import Arranged, IsLabel, chains_of, gap_below, level, line_below, rows

MOST_LABEL_LINES = 4
FEWEST_CELLS, FEWEST_PAIRS = 3, 2
"""Fewer labels with a value beside them make no table; fewer between two lines do not tell whose they are."""
TIGHT = 0.75
"""In letter heights: lines of one cell stand no further apart."""
CLEARLY, CLEAR_SHARE = 0.12, 0.8
"""Labels stand nearer one neighbour by this much, in letter heights, and this share of them the same one.
Distances go from middle to middle: how tightly a reader boxes a line changes nothing then."""
MOST_VALUE_LINES = 4
CENTRED = 0.35
"""In letter heights: a label half way down its value is no further off the middle."""
ALIKE = 1.35
"""Letters of one cell differ in height by no more than this."""


# ---------------------------------------------------------------- labels beside their values


def table(lines: Sequence[Line], is_label: IsLabel) -> Arranged | None:
    """The lines with each table cell in one piece, label, tab, value; None where no table has such cells."""
    labels = _whole_labels(lines, is_label)
    parts = {id(part) for label in labels for part in label}
    others = [line for line in lines if id(line) not in parts and not _opens_with_label(line, is_label)]
    cells: list[tuple[list[Line], list[Line]]] = []
    for label in labels:
        value = _centred_beside(label, others, lines) or _value_beside(label, others, lines)
        if value:
            cells.append((label, value))
            others = [line for line in others if not any(line is taken for taken in value)]
    wrapped = any(len(label) > 1 or len(value) > 1 for label, value in cells)
    if len(cells) < FEWEST_CELLS or not wrapped:
        return None
    taken = {id(line) for label, value in cells for line in (*label, *value)}
    arranged = rows([line for line in lines if id(line) not in taken])
    for label, value in cells:
        arranged += [("\n\n", _joined(label)), ("\t", _joined(value))]
    return arranged


# ---------------------------------------------------------------- labels over or under their values


def stacked(
    lines: Sequence[Line], is_label: IsLabel, elsewhere: bool | None = None
) -> tuple[Arranged, bool] | None:
    """Columns in which a label and its value stand closer together than to the next pair: pair by pair, label
    first, each in one piece; and whether labels are printed under their values. None where the gaps do not
    tell, nor another reading of the side has told: `elsewhere` is what it told of labels under values."""
    wrapped = [label for label in _whole_labels(lines, is_label) if len(label) > 1]
    parts = {id(part) for label in wrapped for part in label}
    chains = chains_of(
        [line for line in lines if id(line) not in parts] + [_joined(label) for label in wrapped],
        is_label=is_label,
    )
    clearly = CLEARLY * median([line.height for line in lines] or [1.0])
    triples = [
        (chain[at - 1], chain[at], chain[at + 1])
        for chain in chains
        for at in range(1, len(chain) - 1)
        if is_label(chain[at].text)
    ]
    over = [(a, b, c) for a, b, c in triples if _step(b, c) < _step(a, b) - clearly]
    under = [(a, b, c) for a, b, c in triples if _step(a, b) < _step(b, c) - clearly]
    told, below = max((over, False), (under, True), key=lambda each: len(each[0]))
    if len(told) < FEWEST_PAIRS or len(told) < CLEAR_SHARE * len(triples):
        if elsewhere is None or not triples:
            return None
        told, below = triples, elsewhere
    limit = sum(gap_below(a, b) + gap_below(b, c) for a, b, c in told) / (2 * len(told))
    arranged: Arranged = []
    for chain in chains:
        for block in _blocks(chain, limit, is_label, below):
            ordered = _pair(block, is_label, below)
            arranged += [("\n" if number else "\n\n", line) for number, line in enumerate(ordered)]
    return arranged, below


def _step(upper: Line, lower: Line) -> float:
    """From the middle of one line to the middle of the next, in pixels."""
    return (lower.place.y + lower.place.bottom - upper.place.y - upper.place.bottom) / 2


def _blocks(chain: Sequence[Line], limit: float, is_label: IsLabel, under: bool) -> Iterator[list[Line]]:
    """A column parted at its wide gaps, but none between label and value, and where the next pair begins.

    What begins in a small letter goes on with the line above it.
    """
    block = [chain[0]]
    for upper, lower in pairwise(chain):
        ends, starts = is_label(upper.text), is_label(lower.text)
        wide = gap_below(upper, lower) > limit and not lower.text[:1].islower()
        parted = ends or (not starts and wide) if under else starts or (not ends and wide)
        if parted or _opens_with_label(lower, is_label):
            yield block
            block = []
        block.append(lower)
    yield block


_AFTER_LABEL = re.compile(r" ?:| [–—-](?= |$)")


def _opens_with_label(line: Line, is_label: IsLabel) -> bool:
    """ "Soil — rich", "Soil:" or "SOIL Rich": whatever follows, the value above ends here."""
    parts = _AFTER_LABEL.split(line.text, maxsplit=1)
    if len(parts) > 1 and is_label(parts[0]):
        return True
    words = line.text.split()
    capitals = sum(1 for _ in takewhile(str.isupper, words))
    return 0 < capitals < len(words) and is_label(" ".join(words[:capitals]))


def _pair(block: list[Line], is_label: IsLabel, under: bool) -> list[Line]:
    """Label and value of a block, label first; the block as it is where it is no such pair."""
    label, value = (block[-1], block[:-1]) if under else (block[0], block[1:])
    rest: list[Line] = []
    if not under:
        whole = next(
            (n for n in range(1, len(value)) if not _had_to_wrap(value[n - 1], value[n], block)), len(value)
        )
        value, rest = value[:whole], value[whole:]
    if not value or len(value) > MOST_VALUE_LINES or not is_label(label.text):
        return block
    return block if any(is_label(line.text) for line in value) else [label, _joined(value), *rest]


# ---------------------------------------------------------------- what both share


def _joined(lines: Sequence[Line]) -> Line:
    return lines[0] if len(lines) == 1 else Line(tuple(word for line in lines for word in line.words))


def _whole_labels(lines: Sequence[Line], is_label: IsLabel) -> list[list[Line]]:
    """Labels, top to bottom, each with the lines it is wrapped over: the most lines that make one."""
    below = line_below(lines)
    found: list[list[Line]] = []
    used: set[int] = set()
    for line in sorted(lines, key=lambda line: (line.place.y, line.place.x)):
        if id(line) in used:
            continue
        run = [line]
        while len(run) < MOST_LABEL_LINES and _goes_on_below(run[-1], below.get(id(run[-1]))):
            run.append(below[id(run[-1])])
        whole = next((run[:n] for n in range(len(run), 0, -1) if _is_whole(run[:n], below, is_label)), None)
        if whole:
            found.append(whole)
            used.update(id(part) for part in whole)
    return found


def _is_whole(run: Sequence[Line], below: Mapping[int, Line], is_label: IsLabel) -> bool:
    """Whether lines make one label, and stand closer to one another than to what follows."""
    if not is_label(" ".join(line.text for line in run)):
        return False
    if len(run) == 1:
        return True
    after = below.get(id(run[-1]))
    inside = max(gap_below(upper, lower) for upper, lower in pairwise(run))
    apart = after is None or gap_below(run[-1], after) > inside + CLEARLY / 2
    return apart and not all(is_label(line.text) for line in run)


def _goes_on_below(line: Line, lower: Line | None) -> bool:
    return lower is not None and _tight(line, lower)


def _tight(upper: Line, lower: Line) -> bool:
    small, large = sorted((upper.height, lower.height))
    return lower.place.y - upper.place.bottom < TIGHT * small and large < ALIKE * small


def _value_beside(label: Sequence[Line], free: Sequence[Line], lines: Sequence[Line]) -> list[Line]:
    """The lines of the value right of a label: level with its first line, and those wrapped below it."""
    first, right = label[0], max(part.place.right for part in label)
    level_ones = [line for line in free if level(first, line) and line.place.x > first.place.x]
    if not level_ones:
        return []
    value = [min(level_ones, key=lambda line: line.place.x)]
    between = [
        line
        for line in lines
        if line is not value[0] and level(first, line) and right < line.place.x < value[0].place.x
    ]
    if between:
        return []
    end = _next_in_column(label, lines)
    while follower := _wrapped_below(value, free, end):
        value.append(follower)
    return value


def _centred_beside(label: Sequence[Line], free: Sequence[Line], lines: Sequence[Line]) -> list[Line]:
    """The wrapped value right of a label that stands half way down beside it, as in the cells of a table."""
    right, middle = max(part.place.right for part in label), _middle(label)
    beside = [
        line
        for line in free
        if line.place.x > right
        and abs(_middle([line]) - middle) < line.place.h
        and not _apart_in_size(label, line)
    ]
    nearest = min(beside, key=lambda line: line.place.x, default=None)
    if nearest is None:
        return []
    value = _cell_around(nearest, [line for line in free if not _ADDRESS.search(line.text)])
    centred = abs(_middle(value) - middle) < CENTRED * nearest.height
    top, bottom = value[0].place.y, value[-1].place.bottom
    inside = [
        line
        for line in lines
        if line not in value
        and not any(line is part for part in label)
        and top < _middle([line]) < bottom
        and label[0].place.x < line.place.right
        and line.place.x < nearest.place.x
    ]
    return value if len(value) > 1 and centred and not inside else []


def _middle(lines: Sequence[Line]) -> float:
    return (lines[0].place.y + lines[-1].place.bottom) / 2


def _apart_in_size(label: Sequence[Line], line: Line) -> bool:
    small, large = sorted((label[0].height, line.height))
    return large > 2.2 * small


def _cell_around(line: Line, free: Sequence[Line]) -> list[Line]:
    """The lines of one cell: this one and all over and under it as close to one another as the nearest is."""
    below = line_below(free)
    above = {id(lower): upper for upper in free if (lower := below.get(id(upper))) is not None}
    steps = [
        _step(upper, lower)
        for upper, lower in ((above.get(id(line)), line), (line, below.get(id(line))))
        if upper is not None and lower is not None
    ]
    run, most = [line], (1 + CLEARLY) * min(steps, default=0.0)
    while (upper := above.get(id(run[0]))) is not None and _step(upper, run[0]) < most:
        run.insert(0, upper)
    while (lower := below.get(id(run[-1]))) is not None and _step(run[-1], lower) < most:
        run.append(lower)
    return run


def _next_in_column(label: Sequence[Line], lines: Sequence[Line]) -> float:
    """Where the next line in the label's own column begins."""
    left, right = min(part.place.x for part in label), max(part.place.right for part in label)
    lower = [
        line.place.y
        for line in lines
        if line.place.y > label[-1].place.bottom - 0.5 * label[-1].height
        and not any(line is part for part in label)
        and min(right, line.place.right) - max(left, line.place.x) > 0.3 * min(right - left, line.place.w)
    ]
    return min(lower, default=float("inf"))


def _wrapped_below(value: Sequence[Line], free: Sequence[Line], end: float) -> Line | None:
    last = value[-1]
    left = min(line.place.x for line in value)
    right = max(line.place.right for line in value)
    candidates = [
        line
        for line in free
        if not _ADDRESS.search(line.text)
        and line.place.y > last.place.y + 0.4 * last.height
        and line.place.y + 0.5 * line.place.h < end
        and _tight(last, line)
        and min(right, line.place.right) - max(left, line.place.x) > 0.5 * min(right - left, line.place.w)
    ]
    follower = min(candidates, key=lambda line: line.place.y, default=None)
    return follower if follower is None or _had_to_wrap(last, follower, free) else None


_ADDRESS = re.compile(
    r"\bwww\.|https?:|[\w-]\.(?:com|co\.uk|org|net|example|ca|uk|ie|nl|de|fr|eu|au|nz)(?:\b|$)", re.I
)
"""A line that is the firm's ends no cell."""
_OPEN = re.compile(r"(?:[,;/&+–—-]|\b(?:and|or|to|of|in|the|a|with|for|from|through|until))$")


def _had_to_wrap(last: Line, follower: Line, column: Sequence[Line]) -> bool:
    """Whether a line goes on below: it shows, or the next word would not have fitted behind it.

    What follows a value in capitals may else be the next value, whose label was not read.
    """
    first = follower.words[0]
    if not first.text[:1].isupper() or _OPEN.search(last.text.lower()):
        return True
    edges = [
        line.place.right
        for line in column
        if line.place.x < last.place.right and line.place.right > last.place.x
    ]
    room = max(edges, default=last.place.right) - last.place.right
    return first.place.w + 0.4 * last.height > room
