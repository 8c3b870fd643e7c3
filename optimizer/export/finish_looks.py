"""How finishes look: tones of the file of finishes, and patterns of our own at true scale.

A role is `field.material.color.pattern.turn`, spaces written as `_`; likewise `accent`, and `border_course` and `cap`
without a pattern.
"""

from collections.abc import Callable
from typing import Final, cast, get_args

from optimizer.brief import Material, Pattern
from optimizer.catalogue import material_facts
from optimizer.export.looks import Hatch, Look

_JOINT: Final = "#8f806a"
_WEIGHT_PT: Final = 0.16
_TURNS: Final = (0, 45, 90)
_UNIT_FT: Final = 0.5  # a unit of 6 x 12 in
_BOARD_FT: Final = 0.5  # 5 1/2 in and its gap
_OPACITY: Final = {"field": 0.5, "accent": 0.75}
_EDGE: Final = "#7b6f5c"


def finish_look(role: str) -> Look | None:
    """Look of a role of a finish; None for any other role."""
    what, *words = role.split(".")
    if what in _OPACITY and len(words) == 4:
        return Look(
            fill=_tone(words), line=_EDGE, weight_pt=0.2, hatch=f"{words[2]}-{words[3]}", opacity=_OPACITY[what]
        )
    if what in ("border_course", "cap") and len(words) == 2:
        return Look(fill=_tone(words), line=_EDGE, weight_pt=0.3)
    return None


def _tone(words: list[str]) -> str:
    material, color = (word.replace("_", " ") for word in words[:2])
    return dict(material_facts(cast("Material", material)).colors)[color]


def _herringbone(unit_ft: float) -> str:
    """Units of 1 x 2: in row k one lies over columns k and k + 1, one stands in column k + 3 and in the row above."""
    edges = []
    for row in range(4):
        lying, standing = row, (row + 3) % 4
        edges += [_edge(lying, row, 0, unit_ft), _edge((lying + 1) % 4, row, 0, unit_ft)]
        edges += [_edge(standing, row, 0, unit_ft)]
        edges += [_edge(column, row, 1, unit_ft) for column in (lying, (lying + 2) % 4, standing)]
    return "".join(edges)


def _edge(column: int, row: int, is_upright: int, unit_ft: float) -> str:
    """The lower, or the left, edge of one cell."""
    return f"M{column * unit_ft:g} {row * unit_ft:g}{'v' if is_upright else 'h'}{unit_ft:g}"


def _courses(unit_ft: float) -> tuple[float, float, str]:
    """Two courses of units twice as long as high, the second moved by half a unit."""
    long_ft = 2 * unit_ft
    beds = f"M0 0h{long_ft:g}M0 {unit_ft:g}h{long_ft:g}"
    return long_ft, long_ft, f"{beds}M0 0v{unit_ft:g}M{unit_ft:g} {unit_ft:g}v{unit_ft:g}"


_FLAGS: Final = (
    "M0 0h6M0 1.8L2.1 1.6L2.3 0M0 3.4L2.6 3.1L2.1 1.6M2.6 3.1L4.3 2.8L4.1 1.2L2.2 1.1M4.1 1.2L6 1.8M4.3 2.8L6 3.4"
    "M4.3 2.8L4.5 5M2.6 3.1L2.4 5M0 0v5"
)
"""Stones of a random flag, whose lines meet at the edges of the tile."""

_TILES: Final[dict[Pattern, Callable[[], tuple[float, float, str]]]] = {
    "running bond": lambda: _courses(_UNIT_FT),
    "stacked": lambda: (1.5, 1.5, "M0 0h1.5M0 0v1.5"),
    "herringbone": lambda: (4 * _UNIT_FT, 4 * _UNIT_FT, _herringbone(_UNIT_FT)),
    "random flag": lambda: (
        6.0,
        5.0,
        _FLAGS,
    ),
    "panels": lambda: (5.0, 5.0, "M0 0h5M0 0v5M1.1 1.3h.04M3.2 .8h.04M2.1 2.6h.04M4.2 3.3h.04M.9 4.1h.04M3 4.4h.04"),
    "loose": lambda: (2.0, 2.0, "M.3 .4h.05M1.2 .2h.05M.8 1h.05M1.7 .9h.05M.2 1.6h.05M1.3 1.6h.05"),
    "boards": lambda: (12.0, 2 * _BOARD_FT, f"M0 0h12M0 {_BOARD_FT}h12M0 0v{_BOARD_FT}M6 {_BOARD_FT}v{_BOARD_FT}"),
}


def _hatch(pattern: Pattern, turn_deg: int) -> Hatch:
    width_ft, height_ft, path = _TILES[pattern]()
    weight = 3 * _WEIGHT_PT if pattern == "loose" else _WEIGHT_PT
    return Hatch(width_ft, height_ft, path, _JOINT, weight, turn_deg)


FINISH_HATCHES: Final[dict[str, Hatch]] = {
    f"{pattern.replace(' ', '_')}-{turn}": _hatch(pattern, turn) for pattern in get_args(Pattern) for turn in _TURNS
}
