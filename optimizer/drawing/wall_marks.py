"""The marks of walls, fences and hedges that stand in the yard, with the gates in them."""

from collections.abc import Iterator
from typing import Final

from shapely import LineString

from optimizer.drawing.marks import Line, Mark
from optimizer.fields.site_walls import gates_of, standing_parts
from optimizer.site import Site, WallKind

_ROLES: Final[dict[WallKind, str]] = {"wall": "garden_wall", "fence": "fence", "hedge": "hedge"}
WALL_WORDS: Final[dict[str, str]] = {
    "garden_wall": "wall that stands",
    "fence": "fence",
    "hedge": "hedge",
    "gate": "gate",
}
"""What the legends call them."""


def wall_marks(site: Site) -> Iterator[Mark]:
    """Draw each wall as a line that its openings interrupt; gates close them."""
    for wall in site.walls:
        yield from (_line(_ROLES[wall.kind], part) for part in standing_parts(wall))
        yield from (_line("gate", part) for part in gates_of(wall))


def _line(role: str, part: LineString) -> Line:
    return Line(role, tuple((float(x), float(y)) for x, y in part.coords))
