"""How the backs of the second part set their lines; each way is a block that can be measured first."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import icons
from blocks import Block
from press import Pen
from second_lines import Line
from second_says import Copy

Row = Callable[[Pen, float, float, float, float, str, str], float]
"""(pen, x, y, width, letter size, label, text) → height used"""


def worded(line: Line, copy: Copy) -> tuple[str, str]:
    """Label and text as this tag prints them; two languages stand either side of a slash."""
    if not line.other:
        return line.label, line.text
    labels, texts = (line.label, line.other[0]), (line.text, line.other[1])
    if copy.foreign_first:
        labels, texts = labels[::-1], texts[::-1]
    return " / ".join(dict.fromkeys(filter(None, labels))), " / ".join(dict.fromkeys(texts))


def _zebra(pen: Pen, x: float, y: float, w: float, size: float, label: str, text: str) -> float:
    """Label left, value right, a tinted band under both."""
    left, pad = w * 0.45, size * 0.25
    dry, pen.dry = pen.dry, True
    tall = max(
        pen.text(0, 0, left - pad * 2, label, pen.family.bold, size * 0.9),
        pen.text(0, 0, w - left - pad, text, pen.family.regular, size),
    )
    pen.dry = dry
    if not dry:
        r, g, b = ((3 * p + a) // 4 for p, a in zip(pen.paper, pen.ink, strict=True))
        pen.draw.rectangle(
            (x, y, x + w, y + tall + pad), fill=(r, g, b) if sum(pen.paper) < 380 else _tint(pen)
        )
    pen.text(x + pad, y + pad / 2, left - pad * 2, label, pen.family.bold, size * 0.9)
    pen.text(x + left, y + pad / 2, w - left - pad, text, pen.family.regular, size)
    return tall + pad


def _tint(pen: Pen) -> tuple[int, int, int]:
    r, g, b = ((6 * p + a) // 7 for p, a in zip(pen.paper, pen.accent, strict=True))
    return r, g, b


def _boxed(pen: Pen, x: float, y: float, w: float, size: float, label: str, text: str) -> float:
    """The label reversed out of a bar, the value in the frame below it."""
    small, pad = size * 0.85, size * 0.3
    dry, pen.dry = pen.dry, True
    bar = pen.text(0, 0, w - 2 * pad, label, pen.family.bold, small) + pad * 0.6
    tall = bar + pad + pen.text(0, 0, w - 2 * pad, text, pen.family.regular, size)
    pen.dry = dry
    if not dry:
        pen.draw.rectangle((x, y, x + w, y + tall), outline=pen.accent, width=3)
        pen.draw.rectangle((x, y, x + w, y + bar), fill=pen.accent)
    pen.text(x + pad, y + pad * 0.2, w - 2 * pad, label, pen.family.bold, small, pen.paper)
    pen.text(x + pad, y + bar + pad * 0.3, w - 2 * pad, text, pen.family.regular, size)
    return tall


def _axis(pen: Pen, x: float, y: float, w: float, size: float, label: str, text: str) -> float:
    """Labels end and values begin at one line down the middle."""
    middle, gap = w * 0.44, size * 0.4
    return max(
        pen.text(x, y, middle - gap, label, pen.family.italic, size, pen.accent, "r"),
        pen.text(x + middle + gap, y, w - middle - gap, text, pen.family.regular, size),
    )


def _pipe(pen: Pen, x: float, y: float, w: float, size: float, label: str, text: str) -> float:
    return pen.text(x, y, w, f"{label.upper()} | {text}", pen.family.regular, size)


def _dash(pen: Pen, x: float, y: float, w: float, size: float, label: str, text: str) -> float:
    return pen.text(x, y, w, f"{label} — {text}", pen.family.regular, size)


def _headed(pen: Pen, x: float, y: float, w: float, size: float, label: str, text: str) -> float:
    """The value large, its label small and slanted below."""
    tall = pen.text(x, y, w, text, pen.family.bold, size, leading=1.15)
    return tall + pen.text(x, y + tall, w, label, pen.family.italic, size * 0.85, pen.accent, leading=1.25)


ROWS: dict[str, Row] = {
    "zebra": _zebra,
    "boxed": _boxed,
    "axis": _axis,
    "pipe": _pipe,
    "dash": _dash,
    "headed": _headed,
}
COLUMNS = ("zebra", "axis")
"""Ways that set label and value side by side."""


def row(line: Line, copy: Copy, style: str, rank: int) -> Block:
    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        pen.say(*line.facts)
        label, text = worded(line, copy)
        if not label:
            return pen.text(x, y, w, text, pen.family.bold, size)
        return ROWS[style](pen, x, y, w, size, label, text)

    return Block(show, rank, 0.3)


def fits_beside(pen: Pen, width: float, size: float, lines: Sequence[Line], copy: Copy) -> bool:
    """Whether the longest words leave room for labels and values side by side."""
    return all(
        pen.fits(label, pen.family.bold, size, width * 0.4)
        and pen.fits(text, pen.family.regular, size, width * 0.5)
        for label, text in (worded(line, copy) for line in lines)
    )


def grid(lines: Sequence[Line], copy: Copy, style: str, rank: int, across: int = 2) -> Block:
    """The rows side by side, so many across."""

    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        down, gap = 0.0, size * 0.7
        wide = (w - gap * (across - 1)) / across
        for start in range(0, len(lines), across):
            part = [row(line, copy, style, 0) for line in lines[start : start + across]]
            down += size * 0.4 + max(
                block.print(pen, x + n * (wide + gap), y + down, wide, size) for n, block in enumerate(part)
            )
        return down

    return Block(
        show, rank, less=(lambda: grid(lines[:-1], copy, style, rank, across)) if lines[1:] else None
    )


def running(lines: Sequence[Line], rank: int, between: str = ". ") -> Block:
    """Everything in one paragraph, as sentences or between dots."""

    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        for line in lines:
            pen.say(*line.facts)
        text = between.join(line.sentence.rstrip(".") for line in lines)
        return pen.text(x, y, w, text + ("." if between == ". " else ""), pen.family.regular, size)

    return Block(show, rank, less=(lambda: running(lines[:-1], rank, between)) if lines[1:] else None)


def tongues(lines: Sequence[Line], copy: Copy, rank: int) -> Block:
    """One language whole, then the other, each under its own two letters."""

    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        for line in lines:
            pen.say(*line.facts)
        parts = [
            ("EN", [(line.label, line.text) for line in lines]),
            (copy.tongue.upper(), [line.other for line in lines if line.other]),
        ]
        down = 0.0
        for head, said in reversed(parts) if copy.foreign_first else parts:
            text = "; ".join(f"{label}: {text}" if label else text for label, text in said)
            if not pen.dry:
                pen.draw.rectangle((x, y + down, x + size * 1.9, y + down + size * 1.3), fill=pen.accent)
            pen.line(x + size * 0.3, y + down, head, pen.family.bold, size, pen.paper)
            down += pen.text(x + size * 2.2, y + down, w - size * 2.2, text, pen.family.regular, size)
            down += size * 0.7
        return down

    return Block(show, rank, less=(lambda: tongues(lines[:-1], copy, rank)) if lines[1:] else None)


def badges(lines: Sequence[Line], copy: Copy, rank: int) -> Block:
    """Marks in a row with the figures or words under them; where that is too narrow, one mark a line."""

    def show(pen: Pen, x: float, y: float, w: float, size: float) -> float:
        texts = [worded(line, copy)[1] for line in lines]
        pen.say(*(fact for line in lines for fact in line.facts))
        across = len(lines)
        while across > 1 and not all(_short(pen, text, w / across - size * 0.4, size) for text in texts):
            across -= 1
        one = _beside if across == 1 else _above
        wide, down = w / across, 0.0
        for start in range(0, len(lines), across):
            marks = zip(lines[start : start + across], texts[start : start + across], strict=True)
            down += size * 0.3 + max(
                one(pen, x + n * wide, y + down, wide, size, line.icon, text)
                for n, (line, text) in enumerate(marks)
            )
        return down

    return Block(show, rank, less=(lambda: badges(lines[:-1], copy, rank)) if lines[1:] else None)


def _short(pen: Pen, text: str, width: float, size: float) -> bool:
    fits = pen.fits(text, pen.family.bold, size, width)
    return fits and len(pen.wrap(text, pen.family.bold, size, width)) <= 2


def _above(pen: Pen, x: float, y: float, w: float, size: float, icon: str, text: str) -> float:
    side, pad = size * 2.2, size * 0.2
    _mark(pen, icon, x + (w - side) / 2, y, side)
    under = pen.text(x + pad, y + side * 1.1, w - 2 * pad, text, pen.family.bold, size, align="m")
    return side * 1.1 + under


def _beside(pen: Pen, x: float, y: float, w: float, size: float, icon: str, text: str) -> float:
    side = size * 1.8
    _mark(pen, icon, x, y, side)
    tall = pen.text(x + side * 1.25, y + size * 0.3, w - side * 1.25, text, pen.family.bold, size)
    return max(side, tall + size * 0.3)


def _mark(pen: Pen, icon: str, x: float, y: float, side: float) -> None:
    """A mark that soil and drops keep off, as they keep off words."""
    icons.draw(pen, icon, x, y, side)
    if not pen.dry:
        pen.printed.append((x, y, x + side, y + side))
