"""The one list of hard rules: an option that breaks any of them is never shown.

Each id is joined, by a test, to a part of the model, a part of the check, a layout that breaks only it, and a yard
whose concepts break it as soon as its part of the model is taken out.
"""

from dataclasses import dataclass
from typing import Final, Literal, get_args

RuleId = Literal[
    "required_rooms",
    "known_choice",
    "held",
    "proportion",
    "inside_setbacks",
    "off_buildings",
    "off_walls",
    "no_overlap",
    "no_slivers",
    "door_zone",
    "clear_of_openings",
    "root_zone",
    "root_ring",
    "under_structure",
    "keep_outs",
    "kept_paving",
    "utility_lines",
    "septic",
    "water_clear",
    "paved_share",
    "fire_clear",
    "sun_least",
    "kitchen_walk",
    "reachable",
    "ways_clear",
    "mown",
    "touching",
    "near",
    "apart",
    "in_view",
    "out_of_view",
    "faces",
    "cook_looks_at_table",
    "accessible",
    "drains",
    "steps_clear",
    "kitchen_level",
    "everyday_table",
    "party_seats",
    "budget",
]


@dataclass(frozen=True, slots=True)
class Rule:
    """A hard rule: its id, and what holds, in one plain sentence."""

    id: RuleId
    sentence: str


_SENTENCES: Final[dict[RuleId, str]] = {
    "required_rooms": "Every required room is placed, and no room twice.",
    "known_choice": "Every room has the size of one of its choices, grown to a line by at most its share.",
    "held": "A room that is held keeps the place, area, front and choice that it is held to.",
    "proportion": "No room is longer to its width than its kind bears, and none is under 40 sq ft.",
    "inside_setbacks": "Every room lies inside the boundary and behind the setbacks of what is built there.",
    "off_buildings": "No room stands in a building.",
    "off_walls": "No room stands across an existing wall, fence or hedge.",
    "no_overlap": "No two rooms overlap.",
    "no_slivers": "Neighbours share at least 3 ft of edge or stand at least 3 ft apart; no strip by a landing.",
    "door_zone": "The landing and steps in front of every door stay free of rooms.",
    "clear_of_openings": "No kitchen, fire or water stands just ahead of a door or beside a window that opens.",
    "root_zone": "Nothing is built in the inner ring round a kept tree, six trunk diameters or what the site says.",
    "root_ring": "In the outer ring round a kept tree, rooms cover no more than a small share.",
    "under_structure": "Under a kept structure stand only the rooms that it may hold, and no second roof.",
    "keep_outs": "On kept-out ground lies only what it allows.",
    "kept_paving": "No room stands on paving that is kept as it is.",
    "utility_lines": "Rooms that are built keep the clear width of known lines in the ground.",
    "septic": "Septic tanks, septic fields and overhead lines keep their distance from what is built.",
    "water_clear": "Built water has a deck of 4 ft or more round it, and nobody digs for it in a tree's root ring.",
    "paved_share": "Paved rooms and paths cover at most the share of the open yard that is allowed.",
    "fire_clear": "Fire stands under no roof or crown and keeps its distance from buildings, structures and boundary.",
    "sun_least": "A room gets the hours of sun or shade without which it is none.",
    "kitchen_walk": "The outdoor kitchen is at most 25 ft on foot from the kitchen door, or what the brief says.",
    "reachable": "Every room, and every door and entrance in a trip, is joined by a clear way 3 ft wide.",
    "ways_clear": "No way leads through furniture or through the 36 in that a dining chair needs.",
    "mown": "The rooms leave a mower a clear way, 4 ft wide, from an entrance to every lawn.",
    "touching": "Rooms that must touch share the edge that was asked for.",
    "near": "What must be near is within the distance that was asked for.",
    "apart": "What must be apart keeps the distance that was asked for.",
    "in_view": "Of what must be in view at least half is seen by who looks, or the share that was asked for.",
    "out_of_view": "Of what must be out of view at most a fifth is seen by who looks, or the share that was asked for.",
    "faces": "A room that must face another opens towards it.",
    "cook_looks_at_table": "The cook looks at the guests: a table lies within 90 degrees of where the kitchen serves.",
    "accessible": "The way asked for has no steps, is at most 1:12 steep, and ends where a wheelchair can turn.",
    "drains": "The water of every paved room finds a way to a drain or to ground that falls away.",
    "everyday_table": "The everyday guests sit at one table, each on a chair that is drawn.",
    "party_seats": "Seats that are drawn hold 70 % of the party, and clear paving the others, 8 sq ft each.",
    "steps_clear": "The foot of every flight of steps keeps 3 ft from seats and 5 ft from a flame.",
    "kitchen_level": "At most three risers lie between the kitchen and its door, and none between kitchen and table.",
    "budget": "Phase 1 with its contingency costs at most the ceiling.",
}

RULES: Final[dict[RuleId, Rule]] = {rule_id: Rule(rule_id, _SENTENCES[rule_id]) for rule_id in get_args(RuleId)}
