"""A yard so small that every placement of its rooms on its grid can be put to the check in real geometry."""

from collections.abc import Iterator
from itertools import product

from optimizer.check import CHECKS, CheckCase
from optimizer.concepts.case import Case
from optimizer.derived import Derived
from optimizer.layout import Layout, Placement
from optimizer.scenario import read_scenario

STEP = 4
COLUMNS, ROWS = 9, 7
TEXT = """\
schema_version: 1
name: Tiny Yard
units: ft
currency: USD
site:
  latitude: 40
  longitude: -83
  time_zone: America/New_York
  boundary: {corners: [[0, 0], [36, 0], [36, 28], [0, 28]], edges: [street, east, rear, west]}
  setbacks: {everywhere: {paving: 0, wall: 0, roof: 0, fire: 4, water: 4, equipment: 0}}
  buildings:
    - {name: house, outline: [[0, 0], [16, 0], [16, 8], [0, 8]], doors: [{name: back door, at: [8, 8], width: 3}]}
  entrances: [{name: gate, at: [34, 0], width: 4}]
  trees: [{name: elm, at: [33, 25], trunk_diameter: 6 in, canopy_radius: 4}]
brief:
  guests: {everyday: 2, party: 4}
  rooms:
    - {name: table, kind: gathering, required: true, choices: [{label: two, width: 12, depth: 8, seats: 4, worth: 5}]}
    - name: nook
      kind: nook
      choices:
        - {label: small, width: 8, depth: 8, seats: 2, worth: 3}
        - {label: large, width: 12, depth: 12, seats: 2, worth: 4}
  relations:
    - {between: [nook, table], kind: apart, at_least: 12}
    - {between: [table, back door], kind: near, within: 8, by: straight}
budget: {ceiling: 90000, contingency: 0.1}
options: {count: 3, grid_step: 4, seed: 1}
"""


def tiny(text: str = TEXT) -> Case:
    """The case of the yard."""
    return Case.of(read_scenario(text, "tiny.yaml"))


def corners() -> Iterator[tuple[float, float]]:
    """Corners of the grid."""
    yield from ((float(STEP * x), float(STEP * y)) for x, y in product(range(COLUMNS), range(ROWS)))


def placements(case: Case, name: str) -> list[Placement | None]:
    """Every place of a room on the grid, which ends with the yard, in every choice and turn; and none."""
    room = next(room for room in case.rooms if room.name == name)
    found: dict[tuple, Placement] = {}
    for choice, (x, y), front in product(room.choices, corners(), ("+y", "+x")):
        size = (choice.width_ft, choice.depth_ft)
        width, depth = size if front == "+y" else size[::-1]
        if x + width <= STEP * COLUMNS and y + depth <= case.scenario.site.boundary[2][1]:
            found.setdefault((choice.label, x, y, width), Placement(name, choice.label, x, y, width, depth, front))
    return [*found.values(), None]


def layouts(case: Case) -> Iterator[Layout]:
    """Every layout of the grid with at least one room; the holds of the brief at a place are kept."""
    own = []
    for room in case.rooms:
        held = {hold.at_ft for hold in case.scenario.brief.holds_of(room.name)} - {None}
        places = placements(case, room.name)
        own.append([p for p in places if not held or (p is not None and (p.x_ft, p.y_ft) in held)])
    for chosen in product(*own):
        if any(chosen):
            yield Layout(tuple(placement for placement in chosen if placement))


def broken(case: Case, layout: Layout, bindings) -> frozenset:
    """Those of some bindings that a layout breaks, by the check in real geometry."""
    check = CheckCase(Derived(case.scenario, case.placed(layout)))
    found = {rule: list(CHECKS[rule](check)) for rule in {one.rule for one in bindings}}
    return frozenset(one for one in bindings if any(_speaks_of(one, finding) for finding in found[one.rule]))


def _speaks_of(binding, finding) -> bool:
    if binding.required is not None:
        return finding.rooms == (binding.required,)
    return binding.relation is None or set(binding.relation.between) <= set(finding.rooms)
