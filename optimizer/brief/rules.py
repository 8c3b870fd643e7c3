"""The one list of hard rules: an option that breaks any of them is never shown.

Each id is joined, by a test, to a part of the model, a part of the check, a layout that breaks only it, and a yard
whose concepts break it as soon as its part of the model is taken out.
"""

from dataclasses import dataclass
from typing import Final, Literal, get_args

RuleId = Literal[
    "required_rooms",
    "known_choice",
    "proportion",
    "inside_setbacks",
    "off_buildings",
    "no_overlap",
    "no_slivers",
    "door_zone",
    "clear_of_openings",
    "root_zone",
    "under_structure",
    "keep_outs",
    "fire_clear",
    "kitchen_walk",
    "reachable",
    "touching",
    "near",
    "apart",
    "in_view",
    "out_of_view",
    "faces",
    "budget",
]


@dataclass(frozen=True, slots=True)
class Rule:
    """A hard rule: its id, and what holds, in one plain sentence."""

    id: RuleId
    sentence: str


_SENTENCES: Final[dict[RuleId, str]] = {
    "required_rooms": "Every required room is placed, and no room twice.",
    "known_choice": "Every room has the size of one of its choices.",
    "proportion": "No room is longer to its width than its kind bears, and none is under 40 sq ft.",
    "inside_setbacks": "Every room lies inside the boundary and behind the setbacks of what is built there.",
    "off_buildings": "No room stands in a building.",
    "no_overlap": "No two rooms overlap.",
    "no_slivers": "Neighbours share at least 3 ft of edge or stand at least 3 ft apart.",
    "door_zone": "The landing and steps in front of every door stay free of rooms.",
    "clear_of_openings": "No kitchen, fire or water stands 10 ft straight out of a door or 5 ft from a window.",
    "root_zone": "Nothing is built within six trunk diameters of a kept tree.",
    "under_structure": "Under a kept structure stand only the rooms that it may hold.",
    "keep_outs": "On kept-out ground lies only what it allows.",
    "fire_clear": "Fire stands under no roof or crown and keeps its distance from buildings, structures and boundary.",
    "kitchen_walk": "The outdoor kitchen is at most 25 ft on foot from the kitchen door, or what the brief says.",
    "reachable": "Every room, and every door and entrance in a trip, is joined by a clear way 3 ft wide.",
    "touching": "Rooms that must touch share the edge that was asked for.",
    "near": "What must be near is within the distance that was asked for.",
    "apart": "What must be apart keeps the distance that was asked for.",
    "in_view": "What must be in view is not hidden by a building.",
    "out_of_view": "What must be out of view is hidden by a building.",
    "faces": "A room that must face another opens towards it.",
    "budget": "Phase 1 with its contingency costs at most the ceiling.",
}

RULES: Final[dict[RuleId, Rule]] = {rule_id: Rule(rule_id, _SENTENCES[rule_id]) for rule_id in get_args(RuleId)}
