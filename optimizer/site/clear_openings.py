"""Which walls an entrance leads through, and how wide it really is: it, or a narrower opening in one of them."""

from typing import Final

from shapely import LineString
from shapely import Point as Spot

from optimizer.site.existing import Wall, WallOpening
from optimizer.site.things import Entrance, Point
from optimizer.site.yard import Site

_AT_LINE_FT: Final = 0.5  # a wall so near an entrance is the one that it leads through


def clear_width_ft(site: Site, entrance: Entrance) -> float:
    """Width of an entrance, or of the narrowest opening in a wall that it leads through if that is less [ft]."""
    return min([entrance.width_ft, *(width_ft for width_ft, _ in _openings(site, entrance))])


def clear_middle(site: Site, entrance: Entrance) -> Point:
    """Middle of that width, on the line of the entrance."""
    width_ft, at = min([(entrance.width_ft, entrance.at), *_openings(site, entrance)])
    (x, y), (in_x, in_y), spare_ft = entrance.at, entrance.inward, (entrance.width_ft - width_ft) / 2
    along_ft = (at[0] - x) * in_y - (at[1] - y) * in_x
    along_ft = min(max(along_ft, -spare_ft), spare_ft)
    return (x + along_ft * in_y, y - along_ft * in_x)


def walls_at(site: Site, entrance: Entrance) -> list[tuple[Wall, list[WallOpening]]]:
    """Walls that an entrance lies on, each with those of its openings that it leads through."""
    at = Spot(entrance.at)
    walls = (wall for wall in site.walls if LineString(wall.line).distance(at) <= _AT_LINE_FT)
    return [(wall, [o for o in wall.openings if at.distance(Spot(o.at)) <= o.width_ft / 2]) for wall in walls]


def _openings(site: Site, entrance: Entrance) -> list[tuple[float, Point]]:
    """Widths [ft] and middles of the openings that it leads through."""
    return [(o.width_ft, o.at) for _, openings in walls_at(site, entrance) for o in openings]
