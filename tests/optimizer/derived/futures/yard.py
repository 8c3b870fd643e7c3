"""An invented yard with ground held for a hot tub, a swim spa or a pool behind a house that a side passage leads past.

It is 90 x 110 ft, the street along y = 0; the house lies from (0, 30) to (70, 50), the passage is 20 ft wide.
"""

from optimizer.concepts.case import Case
from optimizer.derived import Derived, FutureSite
from optimizer.layout import Layout, Placement
from optimizer.scenario import Scenario, read_scenario
from tests.small_yard import changed

TEXT = """\
schema_version: 1
name: Held Ground
units: ft
site:
  latitude: 40
  longitude: -83
  time_zone: America/New_York
  boundary: {corners: [[0, 0], [90, 0], [90, 110], [0, 110]], edges: [street, east, rear, west]}
  setbacks: {everywhere: {water: 8, equipment: 2}}
  buildings:
    - {name: house, outline: [[0, 30], [70, 30], [70, 50], [0, 50]], height: 20, doors: [{name: door, at: [20, 50], width: 3}]}
  entrances: [{name: drive, at: [80, 0], width: 12}]
  utilities: [{kind: electric, at: [70, 40]}, {kind: gas, at: [70, 44]}]
brief:
  rooms:
    - {name: water later, kind: reserve, phase: 2, futures: [hot tub, swim spa, pool], worth: 5}
    - {name: cooker, kind: kitchen, choices: [{label: plain, width: 20, depth: 10, worth: 5}]}
    - {name: grass, kind: lawn, choices: [{label: plain, width: 20, depth: 10, worth: 5}]}
    - {name: table, kind: gathering, choices: [{label: plain, width: 16, depth: 20, seats: 4, worth: 5}]}
"""
HELD = Placement("water later", "one size", 20.0, 70.0, 36.0, 22.0, "+y")


def yard(*changes: tuple[str, str]) -> Scenario:
    """The yard with parts of its text replaced, each of them there once."""
    text = TEXT
    for old, new in changes:
        text = changed(old, new, text)
    return read_scenario(text, "yard.yaml")


def derived(scenario: Scenario, *others: Placement, held: Placement = HELD) -> Derived:
    """The held ground and these rooms on it."""
    return Derived(scenario, Case.of(scenario).placed(Layout((held, *others))))


def futures(scenario: Scenario, *others: Placement, held: Placement = HELD) -> dict[str, FutureSite]:
    """Every future by its name."""
    return {site.future: site for site in derived(scenario, *others, held=held).futures}
