"""What each budget buys, as a picture: worth over money, a step for each point, and the most that is possible."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from math import ceil, floor, log10
from typing import Final

from optimizer.concepts.budgets import BudgetPoint, BudgetSet
from optimizer.export.looks import INK
from optimizer.export.palette import PAPER, SERIF, SOFT_INK
from optimizer.export.svg_text import number, safe_text

WIDTH: Final = 960
_LEFT, _RIGHT, _TOP, _HEIGHT = 70.0, 30.0, 60.0, 300.0
_LINE: Final = 18.0
_BOUGHT, _POSSIBLE = "#7a4a2b", "#b7ad9b"
_TICKS: Final = 5


@dataclass(frozen=True, slots=True)
class _Axes:
    """From money and worth to the picture."""

    least: float
    most: float
    worth: float

    def x(self, money: float) -> float:
        return _LEFT + (WIDTH - _LEFT - _RIGHT) * (money - self.least) / (self.most - self.least)

    def y(self, worth: float) -> float:
        return _TOP + _HEIGHT * (1 - worth / self.worth)


def budget_picture(name: str, found: BudgetSet, currency: str, limit: Decimal | None = None) -> str:
    """SVG of the points, numbered, with what each buys below, and the family's own limit if there is one; ValueError
    without any point.
    """
    if not found.points:
        raise ValueError("expected at least one point to draw, found none")
    ceilings = [float(point.ceiling) for point in found.points]
    margin = max(0.08 * (ceilings[-1] - ceilings[0]), 0.02 * ceilings[-1])
    ends = [*ceilings, *([] if limit is None else [float(limit)])]
    axes = _Axes(min(ends) - margin, max(ends) + margin, 1.1 * max(point.bound for point in found.points))
    bought = [(ceiling, point.worth) for ceiling, point in zip(ceilings, found.points, strict=True)]
    possible = [(float(ceiling), worth) for ceiling, worth in found.possible]
    height = _TOP + _HEIGHT + 70 + _LINE * (len(found.points) + 0.5)
    return "\n".join(
        (
            _head(height),
            f"<title>{safe_text(name)}: what each budget buys</title>",
            f'<rect width="{WIDTH}" height="{number(height)}" fill="{PAPER}"/>',
            _text(_LEFT, 30, f"{name}: what each budget buys", size=18),
            *_scales(axes, currency),
            _stair(axes, possible, color=_POSSIBLE, dash=True),
            _stair(axes, bought, color=_BOUGHT, dash=False),
            *(() if limit is None else _limit(axes, limit)),
            *_numbers(axes, found.points),
            *_key(found),
            "</svg>\n",
        )
    )


def _head(height: float) -> str:
    size = f'viewBox="0 0 {WIDTH} {number(height)}" width="{WIDTH}" height="{number(height)}"'
    letters = f'font-family="{SERIF}" font-size="13" fill="{INK}"'
    return f'<svg xmlns="http://www.w3.org/2000/svg" {size} {letters} role="img">'


def _scales(axes: _Axes, currency: str) -> Iterator[str]:
    base, step = axes.y(0), _round_step((axes.most - axes.least) / _TICKS)
    yield f'<path d="M{number(_LEFT)} {number(base)}H{number(WIDTH - _RIGHT)}" stroke="{SOFT_INK}" fill="none"/>'
    for part in range(ceil(axes.least / step), floor(axes.most / step) + 1):
        yield _text(axes.x(part * step), base + 20, f"{part * step:,.0f}", anchor="middle", color=SOFT_INK)
    yield _text(WIDTH - _RIGHT, base + 40, f"ceiling, {currency}", anchor="end", color=SOFT_INK)
    words = "worth: solid line, what was found; dashed line, the most at the lowest prices, without ways and steps"
    yield _text(_LEFT, _TOP - 8, words, color=SOFT_INK)


def _round_step(rough: float) -> float:
    """One, two or five times a power of ten, no less than a rough step."""
    power = 10.0 ** floor(log10(rough))
    return next(times * power for times in (1, 2, 5, 10) if times * power >= rough)


def _stair(axes: _Axes, steps: Sequence[tuple[float, float]], *, color: str, dash: bool) -> str:
    """A line that is level from each ceiling to the next."""
    start = max((worth for money, worth in steps if money <= axes.least), default=0.0)
    path = f"M{number(_LEFT)} {number(axes.y(start))}"
    for money, worth in steps:
        if axes.least < money <= axes.most:
            path += f"H{number(axes.x(money))}V{number(axes.y(worth))}"
    dashes = ' stroke-dasharray="6 4"' if dash else ""
    return f'<path d="{path}H{number(WIDTH - _RIGHT)}" fill="none" stroke="{color}" stroke-width="2"{dashes}/>'


def _limit(axes: _Axes, limit: Decimal) -> Iterator[str]:
    """An upright line at the family's own limit, with the sum at its head."""
    x = axes.x(float(limit))
    line = f"M{number(x)} {number(axes.y(0))}V{number(_TOP)}"
    yield f'<path d="{line}" stroke="{INK}" stroke-dasharray="2 3" fill="none"/>'
    is_right = x > WIDTH / 2
    anchor, beside = ("end", x - 6) if is_right else ("start", x + 6)
    yield _text(beside, _TOP + 12, f"your limit, {limit:,.0f}", anchor=anchor)


def _numbers(axes: _Axes, points: Sequence[BudgetPoint]) -> Iterator[str]:
    for place, point in enumerate(points, 1):
        x, y = axes.x(float(point.ceiling)), axes.y(point.worth)
        yield f'<circle cx="{number(x)}" cy="{number(y)}" r="10" fill="{_BOUGHT}"/>'
        yield _text(x, y + 4.5, str(place), anchor="middle", color=PAPER)


def _key(found: BudgetSet) -> Iterator[str]:
    top = _TOP + _HEIGHT + 70
    for place, (point, option) in enumerate(zip(found.points, found.options, strict=True), 1):
        y = top + _LINE * (place - 1)
        yield _text(_LEFT + 14, y, str(place), anchor="end")
        yield _text(_LEFT + 80, y, f"{point.ceiling:,.0f}", anchor="end")
        stays = f" Still in {point.level} materials." if point.level and place > 1 and not point.level_before else ""
        yield _text(_LEFT + 95, y, option.reason + stays)


def _text(x: float, y: float, text: str, *, anchor: str = "start", size: int = 13, color: str = INK) -> str:
    return (
        f'<text x="{number(x)}" y="{number(y)}" text-anchor="{anchor}" font-size="{size}" fill="{color}">'
        f"{safe_text(text)}</text>"
    )
