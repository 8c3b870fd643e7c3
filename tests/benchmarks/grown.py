"""A yard of any size with any number of rooms, as text: the same few rooms again and again, all of it invented."""

from itertools import pairwise

_KINDS = (
    ("gathering", "{label: small, width: 12, depth: 11, seats: 6, worth: 6}, {label: large, width: 14, depth: 12, seats: 8, worth: 8}"),
    ("nook", "{label: two chairs, width: 8, depth: 7, seats: 2, worth: 4}, {label: bench too, width: 9, depth: 8, seats: 3, worth: 5}"),
    ("bed", "{label: herbs, width: 10, depth: 4, worth: 3}"),
    ("storage", "{label: shed, width: 8, depth: 6, worth: 4}"),
    ("play", "{label: play, width: 12, depth: 9, worth: 4}"),
    ("lawn", "{label: lawn, width: 12, depth: 10, worth: 3}"),
)  # fmt: skip
_HEAD = """\
schema_version: 1
name: Grown Yard
units: ft
currency: USD
site:
  latitude: 40
  longitude: -83
  time_zone: America/New_York
  boundary: {{corners: [[0, 0], [{width}, 0], [{width}, {depth}], [0, {depth}]]}}
  setbacks: {{everywhere: {{paving: 1, wall: 1, roof: 2, fire: 4, water: 2, equipment: 1}}}}
  buildings:
    - name: house
      outline: [[{left}, 4], [{right}, 4], [{right}, {top}], [{left}, {top}]]
      height: 20
      doors: [{{name: door, at: [{middle}, {top}], width: 3}}]
  entrances: [{{name: gate, at: [0, {gate}], width: 4}}]
  trees: [{{name: elm, at: [{elm_x}, {elm_y}], trunk_diameter: 1, canopy_radius: 8, height: 30}}]
options: {{grid_step: {step}}}
brief:
  rooms:
"""
_SUN = {
    "gathering": ', sun: {want: shade, from: "14:00", to: "17:00", months: [6, 7, 8]}',
    "nook": ', sun: {want: sun, from: "08:00", to: "10:00", months: [4, 5, 6]}',
}


def grown_yard(rooms: int, width_ft: int, depth_ft: int, step_ft: float) -> str:
    """Scenario text of a yard with a house at the front; every sixth room is of the same kind."""
    kinds = [_KINDS[number % len(_KINDS)] for number in range(rooms)]
    names = [f"{kind} {number}" for number, (kind, _) in enumerate(kinds)]
    head = _HEAD.format(**_figures(width_ft, depth_ft), step=step_ft)
    wished = [
        f"    - {{name: {name}, kind: {kind}, choices: [{choices}]{_SUN.get(kind, '')}}}"
        for name, (kind, choices) in zip(names, kinds, strict=True)
    ]
    trips = [
        f"    - {{from: {'door' if number % 2 else 'gate'}, to: {name}, count: 6}}" for number, name in enumerate(names)
    ]
    neighbours = list(pairwise(names))
    trips += [f"    - {{from: {one}, to: {other}, count: 4}}" for one, other in neighbours]
    wishes = [f"    - {{between: [{one}, {other}], kind: near, within: 20, wish: 1}}" for one, other in neighbours]
    return head + "\n".join([*wished, "  trips:", *trips, "  relations:", *wishes, ""])


def _figures(width_ft: int, depth_ft: int) -> dict[str, int]:
    top = 4 + min(30, depth_ft // 4)
    left, right = width_ft // 4, width_ft - width_ft // 4
    middle, gate = (left + right) // 2, depth_ft // 2
    elm = {"elm_x": width_ft - 8, "elm_y": depth_ft - 8}
    return {
        "width": width_ft,
        "depth": depth_ft,
        "left": left,
        "right": right,
        "top": top,
        "middle": middle,
        "gate": gate,
        **elm,
    }
