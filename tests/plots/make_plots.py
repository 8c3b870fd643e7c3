"""Make plot-01.yaml to plot-10.yaml from real plots and buildings: `python tests/plots/make_plots.py`.

Needs `momepy` (0.11) and what it brings (geopandas, shapely), which the project itself does not use: install them in a
throw-away environment. The stored files are what the tests read; this script says where they come from.

The sample data of momepy lies in Prague, Bubenec, in web Mercator metres, which are longer than true metres by one over
the cosine of the latitude. Each plot is turned so that its plan axes lie along its largest building.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

import geopandas
import momepy
from shapely import LineString, MultiPolygon, Point, Polygon, affinity
from shapely.geometry import polygon
from shapely.ops import unary_union

LATITUDE, LONGITUDE = 50.10, 14.40
TRUE_SCALE = math.cos(math.radians(LATITUDE))
SQFT_IN_SQM = 1 / 0.3048**2
SIMPLIFIED_M = 0.1
LEAST_BUILDING_SQM = 5.0
CLEAR_WAY_M = 3 * 0.3048
LEAST_WALL_M = 6 * 0.3048
DOOR_WIDTH_M = 0.9
LANDING_M = 4 * 0.3048
ENTRANCE_WIDTH_M = 1.5
SMALLEST_GARDEN_SQFT, LARGEST_GARDEN_SQFT = 1_500, 12_000
LARGE_GARDEN_SQFT = 3_000

# Chosen for their variety: slanted boundaries, L-shaped and many-cornered houses, several buildings on a plot, and
# ground behind the house that no way reaches (50, 219, 251, 308). Numbers are rows of the layer `plots`.
ROWS = (26, 50, 55, 210, 219, 251, 275, 308, 323, 326)

HEADER = """\
# Real shape, invented wishes. Plot and buildings: row {row} of the sample data of the Python package momepy 0.11
# (datasets "bubenec", Prague, Bubenec; layers `plots` and `buildings`). The package is under the BSD 3-Clause licence
# and names no other licence for its sample data. Web Mercator lengths times cos({latitude}) are true metres; corners
# simplified to 0.1 m and turned to lie along the main building.
# Doors, entrance, heights, program, trips, budget and every price are invented. Written by make_plots.py.
"""

SITE = """\
schema_version: 1
name: Plot {number:02d}
units: m
currency: USD

site:
  latitude: {latitude}
  longitude: {longitude}
  time_zone: Europe/Prague
  plan_up_bearing: {bearing}
  boundary:
    corners: {boundary}
  setbacks:
    everywhere: {{paving: 0.3, wall: 0.3, roof: 1.0, fire: 3.1, water: 2.0, equipment: 1.0}}
  buildings:
{buildings}
  entrances:
    - {{name: gate, at: {gate}, width: {gate_width}}}
"""

BRIEF = """\
brief:
  guests: {guests}
  rooms:
    - name: gathering area
      kind: gathering
      required: true
      choices:
        - {{label: table for six, width: 14 ft, depth: 12 ft, seats: 6, worth: 6}}
        - {{label: table for eight, width: 16 ft, depth: 13 ft, seats: 8, worth: 8}}
    - name: quiet nook
      kind: nook
      choices:
        - {{label: two chairs, width: 8 ft, depth: 7 ft, seats: 2, worth: 4}}
        - {{label: two chairs and a bench, width: 10 ft, depth: 8 ft, seats: 4, worth: 5}}
{fire}  trips:
    - {{from: garden door, to: gathering area, count: 24}}
    - {{from: gate, to: gathering area, count: 8}}
    - {{from: gathering area, to: quiet nook, count: 6}}

budget:
  ceiling: 150000
  contingency: 0.15

options:
  count: 3
  grid_step: 0.3
  seed: 7
"""

FIRE = """\
    - name: fire feature
      kind: fire
      seats: 6
      fuel: gas
      worth: 5
"""


@dataclass(frozen=True)
class Plot:
    """One plot on plan axes in metres: boundary, buildings (the main one first), and the bearing of its +y axis."""

    boundary: Polygon
    buildings: tuple[Polygon, ...]
    bearing_deg: float
    street: LineString

    @property
    def garden(self) -> Polygon | MultiPolygon:
        return self.boundary.difference(unary_union(self.buildings))

    @property
    def open_ground(self) -> Polygon:
        """The largest piece of garden that a clear way of 3 ft reaches all of."""
        eroded = self.garden.buffer(-CLEAR_WAY_M / 2, join_style="mitre")
        largest = max(getattr(eroded, "geoms", (eroded,)), key=lambda piece: piece.area)
        return largest.buffer(CLEAR_WAY_M / 2 + 0.01, join_style="mitre").intersection(self.garden)


def rounded(shape: Polygon) -> Polygon:
    """The shape simplified, in whole centimetres and counter-clockwise."""
    simple = polygon.orient(shape.simplify(SIMPLIFIED_M))
    return Polygon([(round(x, 2), round(y, 2)) for x, y in simple.exterior.coords])


def long_axis_deg(shape: Polygon) -> float:
    """Direction of the long side of the least rectangle about a shape, counter-clockwise from east."""
    corners = list(shape.minimum_rotated_rectangle.exterior.coords)
    sides = [(end[0] - start[0], end[1] - start[1]) for start, end in pairwise(corners)]
    return math.degrees(math.atan2(*reversed(max(sides[:2], key=lambda side: math.hypot(*side)))))


def buildings_on(boundary: Polygon, buildings: geopandas.GeoSeries) -> list[Polygon]:
    """Parts of buildings that lie on the plot, the largest first; what is smaller than a shed belongs to a neighbour."""
    parts = [building.intersection(boundary) for building in buildings if building.intersects(boundary)]
    whole = [max(getattr(part, "geoms", (part,)), key=lambda piece: piece.area) for part in parts]
    return sorted((part for part in whole if part.area >= LEAST_BUILDING_SQM), key=lambda part: -part.area)


def read_plot(row: int, layers: dict[str, geopandas.GeoSeries]) -> Plot:
    """The plot of one row, scaled, turned along its main building and moved to the origin."""
    boundary = layers["plots"][row]
    buildings = buildings_on(boundary, layers["buildings"])
    turn_deg = -((long_axis_deg(buildings[0]) + 90) % 180 - 90)
    turned = affinity.rotate(boundary, turn_deg, origin=(0, 0))
    left, lower, *_ = turned.bounds

    def to_plan(shape: Polygon) -> Polygon:
        return affinity.translate(affinity.rotate(shape, turn_deg, origin=(0, 0)), -left, -lower)

    plan_boundary = rounded(to_plan(boundary))
    return Plot(
        plan_boundary,
        tuple(rounded(part) for part in buildings_on(plan_boundary, geopandas.GeoSeries(map(to_plan, buildings)))),
        turn_deg % 360,
        to_plan(unary_union(list(layers["streets"]))),
    )


def edges(shape: Polygon) -> Iterator[LineString]:
    """The straight edges of an outline, in order."""
    corners = list(shape.exterior.coords)
    return (LineString(corner_pair) for corner_pair in pairwise(corners))


def door_zone(wall: LineString) -> Polygon:
    """The landing in front of a door in the middle of a wall of a counter-clockwise outline."""
    (x0, y0), (x1, y1) = wall.coords
    along = ((x1 - x0) / wall.length, (y1 - y0) / wall.length)
    middle, half = ((x0 + x1) / 2, (y0 + y1) / 2), DOOR_WIDTH_M / 2 + 0.3
    out = (along[1], -along[0])
    return Polygon(
        (middle[0] + side * half * along[0] + deep * out[0], middle[1] + side * half * along[1] + deep * out[1])
        for side, deep in ((-1, 0.05), (1, 0.05), (1, LANDING_M), (-1, LANDING_M))
    )


def door_walls(plot: Plot) -> list[LineString]:
    """Walls of the main building that are long enough for a door and have open ground in front of it."""
    ground = plot.open_ground
    walls = (wall for wall in edges(plot.buildings[0]) if wall.length >= LEAST_WALL_M)
    return [wall for wall in walls if ground.contains(door_zone(wall))]


def gate_of(plot: Plot) -> Point:
    """The middle of the free stretch of boundary nearest to a street."""
    ground = plot.open_ground.buffer(0.02)
    pieces = (edge.intersection(ground) for edge in edges(plot.boundary))
    stretches = [line for piece in pieces for line in getattr(piece, "geoms", (piece,)) if line.length > 3]
    return min((line.interpolate(0.5, normalized=True) for line in stretches), key=plot.street.distance)


def doors_of(plot: Plot, gate: Point) -> tuple[Point, Point]:
    """Front door on the wall nearest to the gate, garden door on the wall farthest from the front door."""
    places = [wall.interpolate(0.5, normalized=True) for wall in door_walls(plot)]
    front = min(places, key=gate.distance)
    return front, max(places, key=front.distance)


def pair(point: Point) -> str:
    """A point as YAML. Half a centimetre is kept, so that the middle of a wall lies on the wall."""
    return f"[{round(point.x, 3):g}, {round(point.y, 3):g}]"


def ring(shape: Polygon) -> str:
    """An outline as YAML."""
    return "[" + ", ".join(pair(Point(corner)) for corner in shape.exterior.coords[:-1]) + "]"


def building_lines(plot: Plot, front: Point, garden: Point) -> str:
    """The buildings as YAML: the main one with its doors, the others plain."""
    main, *others = plot.buildings
    lines = [f"    - name: house\n      outline: {ring(main)}\n      height: 8\n      doors:"]
    lines += [
        f"        - {{name: {name}, at: {pair(at)}, width: {DOOR_WIDTH_M}}}"
        for name, at in (("front door", front), ("garden door", garden))
    ]
    lines += [
        f"    - name: outbuilding {number}\n      outline: {ring(shape)}\n      height: 4"
        for number, shape in enumerate(others, start=1)
    ]
    return "\n".join(lines)


def scenario_text(number: int, row: int, plot: Plot) -> str:
    """The whole scenario file of one plot."""
    garden_sqft = plot.garden.area * SQFT_IN_SQM
    if not SMALLEST_GARDEN_SQFT <= garden_sqft <= LARGEST_GARDEN_SQFT:
        message = f"row {row}: garden of {garden_sqft:.0f} sq ft"
        raise ValueError(message)
    gate = gate_of(plot)
    site = SITE.format(
        number=number,
        latitude=LATITUDE,
        longitude=LONGITUDE,
        bearing=round(plot.bearing_deg, 1),
        boundary=ring(plot.boundary),
        buildings=building_lines(plot, *doors_of(plot, gate)),
        gate=pair(gate),
        gate_width=ENTRANCE_WIDTH_M,
    )
    fire = FIRE if garden_sqft >= LARGE_GARDEN_SQFT else ""
    brief = BRIEF.format(fire=fire, guests="{everyday: 4, party: 8}")
    return "\n".join((HEADER.format(row=row, latitude=LATITUDE), site, brief))


def main() -> None:
    """Write all ten."""
    path = momepy.datasets.get_path("bubenec")
    layers = {
        name: geopandas.read_file(path, layer=name).geometry.scale(TRUE_SCALE, TRUE_SCALE, origin=(0, 0))
        for name in ("plots", "buildings", "streets")
    }
    for number, row in enumerate(ROWS, start=1):
        text = scenario_text(number, row, read_plot(row, layers))
        (Path(__file__).parent / f"plot-{number:02d}.yaml").write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
