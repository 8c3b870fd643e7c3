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
    "later_phases",
    "phases",
]


@dataclass(frozen=True, slots=True)
class Rule:
    """A hard rule: its id, and what holds, in one plain sentence."""

    id: RuleId
    sentence: str


_SENTENCES: Final[dict[RuleId, str]] = {
    "required_rooms": "Every required room is placed, and no room is placed twice.",
    "known_choice": "Every room has the size of one of its choices, or has grown by no more than it may.",
    "held": "A room that is held keeps the place, area, front and choice that it is held to.",
    "proportion": "No room is too long for its width, and none is smaller than 40 sq ft.",
    "inside_setbacks": "Every room lies inside the boundary and keeps the setbacks that apply to it.",
    "off_buildings": "No room stands in a building.",
    "off_walls": "No room stands across an existing wall, fence or hedge.",
    "no_overlap": "No two rooms overlap.",
    "no_slivers": "Rooms share at least 3 ft of edge or stand at least 3 ft apart, with no thin strip by a landing.",
    "door_zone": "The landing and steps in front of every door stay free of rooms.",
    "clear_of_openings": "No kitchen, fire or water is right in front of a door or beside a window that opens.",
    "root_zone": "Nothing is built near a kept tree's trunk: within six trunk diameters, or what the site says.",
    "root_ring": "Rooms cover only a small share of the outer root area of a kept tree.",
    "under_structure": "Only rooms that are allowed there stand under an existing structure, with no second roof.",
    "keep_outs": "Keep-out ground has only what is allowed there.",
    "kept_paving": "No room stands on paving that is kept as it is.",
    "utility_lines": "What is built keeps its distance from known lines in the ground.",
    "septic": "What is built keeps its distance from septic tanks, septic fields and overhead lines.",
    "water_clear": "Built water has a deck of 4 ft or more round it, and nobody digs for it in a tree's root ring.",
    "paved_share": "Paved rooms and paths cover no more of the open yard than is allowed.",
    "fire_clear": "A fire is not under a roof or tree, and keeps away from buildings, structures and the boundary.",
    "sun_least": "A room gets at least the hours of sun or shade that the brief insists on.",
    "kitchen_walk": "The outdoor kitchen is within 25 ft on foot of the kitchen door, or within what the brief says.",
    "reachable": "A clear way 3 ft wide leads to every room, and to every door and entrance that a trip uses.",
    "ways_clear": "No way runs through furniture or through the 36 in behind a dining chair.",
    "mown": "A mower can reach every lawn from an entrance, on a clear way 4 ft wide.",
    "touching": "Rooms that must touch share as much edge as was asked for.",
    "near": "What must be near is within the distance that was asked for.",
    "apart": "What must be apart keeps the distance that was asked for.",
    "in_view": "Of what must be in view, at least half is seen, or the share that was asked for.",
    "out_of_view": "Of what must be hidden, at most a fifth is seen, or the share that was asked for.",
    "faces": "A room that must face another opens towards it.",
    "cook_looks_at_table": "The cook can look at the guests: a table is at most 90 degrees off the kitchen's front.",
    "accessible": "An accessible way has no steps, is no steeper than 1:12, and ends where a wheelchair can turn.",
    "drains": "Rain runs off every paved room, to a drain or to ground that falls away.",
    "everyday_table": "Everyday guests all sit at one table, each on a chair drawn on the plan.",
    "party_seats": "70 % of a party have a seat drawn on the plan, the others clear paving to stand on, 8 sq ft each.",
    "steps_clear": "The bottom of every flight of steps is at least 3 ft from seats and 5 ft from a flame.",
    "kitchen_level": "At most three steps lie between kitchen and door, and none between kitchen and table.",
    "budget": "Phase 1, with its contingency, costs no more than the ceiling.",
    "later_phases": "A later phase with a ceiling of its own costs no more than that, with its contingency.",
    "phases": "Where phases are open, each is worth coming for, reached by machines, and of use by itself.",
}

RULES: Final[dict[RuleId, Rule]] = {rule_id: Rule(rule_id, _SENTENCES[rule_id]) for rule_id in get_args(RuleId)}
