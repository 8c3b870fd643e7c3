"""A small invented yard as text, and what reading a changed one says."""

import pytest

from optimizer.errors import ScenarioError
from optimizer.scenario import read_scenario

SMALL = """\
schema_version: 1
name: Small Yard
units: ft
currency: USD
site:
  latitude: 40
  longitude: -83
  time_zone: America/New_York
  boundary: {corners: [[0, 0], [60, 0], [60, 50], [0, 50]]}
  buildings:
    - {name: house, outline: [[10, 0], [50, 0], [50, 20], [10, 20]], doors: [{name: door, at: [30, 20], width: 3}]}
  entrances: [{name: gate, at: [0, 30], width: 4}]
  trees: [{name: elm, at: [50, 40], trunk_diameter: 1, canopy_radius: 8}]
  keep_outs: [{name: strip, outline: [[0, 45], [60, 45], [60, 50], [0, 50]], allow: [path, bed]}]
brief:
  rooms:
    - {name: table, kind: gathering, choices: [{label: six, width: 14, depth: 12, seats: 6, worth: 5}]}
    - {name: chairs, kind: nook, seats: 2, worth: 3}
  relations:
    - {between: [table, chairs], kind: near, within: 20}
  trips:
    - {from: door, to: table, count: 10}
"""


def changed(old, new, text=SMALL):
    """Text with one part replaced; the part must be there once."""
    assert text.count(old) == 1, old
    return text.replace(old, new)


def problems(text):
    """Problems that reading a text raises."""
    with pytest.raises(ScenarioError) as caught:
        read_scenario(text, "yard.yaml")
    return [str(problem) for problem in caught.value.problems]
