"""Growth as plain SVG: one panel a series, both axes logarithmic, every line from 1 at its first point."""

import math
from collections.abc import Sequence

SIDE, MARGIN = 260, 40
COLOURS = ("#1b6ca8", "#c1440e", "#3a7d44", "#7b4b94", "#8a6d1c")

Sized = list[tuple[float, Sequence[float]]]
"""Size of each point, and its values by column."""


def plot(series: dict[str, Sized], columns: Sequence[str]) -> str:
    """Panels side by side, with a key below."""
    width, height = len(series) * (SIDE + MARGIN) + MARGIN, SIDE + 3 * MARGIN
    panels = [
        f'<g transform="translate({MARGIN + number * (SIDE + MARGIN)} {MARGIN})">{_panel(name, points)}</g>'
        for number, (name, points) in enumerate(series.items())
    ]
    key = [
        f'<text x="{MARGIN + 110 * number}" y="{height - 20}" fill="{colour}">{column}</text>'
        for number, (column, colour) in enumerate(zip(columns, COLOURS, strict=True))
    ]
    head = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" font-family="sans-serif" font-size="12">'
    return "\n".join([head, f'<rect width="{width}" height="{height}" fill="white"/>', *panels, *key, "</svg>\n"])


def _panel(name: str, points: Sized) -> str:
    """Lines of one series; a step up is a factor of ten."""
    sizes = [math.log10(size) for size, _ in points]
    lines = [
        [math.log10(max(value, 1e-6)) for value in values] for values in zip(*(own for _, own in points), strict=True)
    ]
    grown = [[value - line[0] for value in line] for line in lines]
    low, high = min(0.0, *map(min, grown)), max(1.0, *map(max, grown))
    across, upright = SIDE / max(1e-9, sizes[-1] - sizes[0]), SIDE / (high - low)
    drawn = [f'<rect width="{SIDE}" height="{SIDE}" fill="none" stroke="#999"/>']
    for decade in range(math.ceil(low), math.floor(high) + 1):
        y = SIDE - upright * (decade - low)
        drawn.append(
            f'<path d="M0 {y:.1f}H{SIDE}" stroke="#ddd"/><text x="-4" y="{y:.1f}" text-anchor="end">{10.0**decade:g}</text>'
        )
    for line, colour in zip(grown, COLOURS, strict=True):
        corners = " ".join(
            f"{across * (size - sizes[0]):.1f},{SIDE - upright * (value - low):.1f}"
            for size, value in zip(sizes, line, strict=True)
        )
        drawn.append(f'<polyline points="{corners}" fill="none" stroke="{colour}" stroke-width="2"/>')
    first, last = points[0][0], points[-1][0]
    drawn.append(f'<text x="{SIDE / 2}" y="-8" text-anchor="middle">{name}: {first:,.0f} to {last:,.0f}</text>')
    return "".join(drawn)
