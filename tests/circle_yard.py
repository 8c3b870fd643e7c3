"""A small invented yard with a fire that is a circle: a tree whose roots it may partly cover, sun that it wants, slope."""

from functools import cache

from optimizer.scenario import Scenario, read_scenario

TEXT = """\
schema_version: 1
name: Ember Court
units: ft
currency: USD
site:
  latitude: 40
  longitude: -83
  time_zone: America/New_York
  boundary: {corners: [[0, 0], [72, 0], [72, 70], [60, 82], [0, 82]]}
  setbacks: {everywhere: {paving: 2, fire: 8}}
  buildings:
    - name: house
      outline: [[8, 0], [54, 0], [54, 20], [8, 20]]
      floor_z: 0.6
      doors: [{name: garden door, at: [28, 20], width: 6, sliding: true}]
      windows: [{name: side window, at: [46, 20], width: 4, sill_z: 3}]
  entrances: [{name: gate, at: [0, 30], width: 4}]
  trees: [{name: old plum, at: [62, 44], trunk_diameter: 16 in, canopy_radius: 6}]
  utilities: [{kind: gas, at: [54, 10]}, {kind: electric, at: [54, 12]}, {kind: drain, at: [30, 82]}]
  levels: [{at: [0, 0], z: 0.3}, {at: [72, 0], z: 0.1}, {at: [0, 82], z: -2.4}, {at: [72, 70], z: -2.0}]
brief:
  guests: {everyday: 4, party: 12}
  rooms:
    - name: table
      kind: gathering
      required: true
      choices: [{label: six, width: 14, depth: 12, seats: 6, worth: 6}]
    - name: fire circle
      kind: fire
      shape: circle
      seats: 6
      fuel: gas
      worth: 8
      sun: {want: sun, from: "16:00", to: "19:00", months: [6]}
    - name: chairs
      kind: nook
      choices: [{label: two, width: 8, depth: 7, seats: 2, worth: 3}]
  relations:
    - {between: [table, garden door], kind: near, within: 8}
    - {between: [fire circle, chairs], kind: apart, at_least: 9}
    - {between: [fire circle, table], kind: near, within: 11, by: straight, wish: 2}
    - {between: [chairs, table], kind: apart, at_least: 6}
  trips:
    - {from: garden door, to: table, count: 20}
    - {from: table, to: fire circle, count: 12}
    - {from: gate, to: fire circle, count: 6}
    - {from: garden door, to: chairs, count: 4}
budget: {ceiling: 110000}
options: {count: 4, grid_step: 1, seed: 3}
"""


@cache
def circle_yard() -> Scenario:
    """The yard as it is read."""
    return read_scenario(TEXT, "ember-court.yaml")
