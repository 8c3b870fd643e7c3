"""Every hard rule's part of the engine, by the rule's id: one file a rule, as the check has its own."""

from typing import Final

from optimizer.brief import RelationKind, RuleId
from optimizer.engine.rules import (
    accessible,
    apart,
    budget,
    clear_of_openings,
    cook_looks_at_table,
    door_zone,
    drains,
    everyday_table,
    faces,
    fire_clear,
    held,
    in_view,
    inside_setbacks,
    keep_outs,
    kept_paving,
    kitchen_level,
    kitchen_walk,
    known_choice,
    later_phases,
    mown,
    near,
    no_overlap,
    no_slivers,
    off_buildings,
    off_walls,
    out_of_view,
    party_seats,
    paved_share,
    phases,
    proportion,
    reachable,
    required_rooms,
    root_ring,
    root_zone,
    septic,
    steps_clear,
    sun_least,
    touching,
    under_structure,
    utility_lines,
    water_clear,
    ways_clear,
)
from optimizer.engine.rules.apart import APART
from optimizer.engine.rules.faces import FACES
from optimizer.engine.rules.near import NEAR
from optimizer.engine.rules.part import Part, Variants
from optimizer.engine.rules.relations import RelationPart
from optimizer.engine.rules.sight import IN_VIEW, OUT_OF_VIEW
from optimizer.engine.rules.touching import TOUCHING

PARTS: Final[dict[RuleId, Part]] = {
    "required_rooms": required_rooms.PART,
    "known_choice": known_choice.PART,
    "held": held.PART,
    "proportion": proportion.PART,
    "inside_setbacks": inside_setbacks.PART,
    "off_buildings": off_buildings.PART,
    "off_walls": off_walls.PART,
    "no_overlap": no_overlap.PART,
    "no_slivers": no_slivers.PART,
    "door_zone": door_zone.PART,
    "clear_of_openings": clear_of_openings.PART,
    "root_zone": root_zone.PART,
    "root_ring": root_ring.PART,
    "under_structure": under_structure.PART,
    "keep_outs": keep_outs.PART,
    "kept_paving": kept_paving.PART,
    "utility_lines": utility_lines.PART,
    "septic": septic.PART,
    "water_clear": water_clear.PART,
    "paved_share": paved_share.PART,
    "fire_clear": fire_clear.PART,
    "sun_least": sun_least.PART,
    "kitchen_walk": kitchen_walk.PART,
    "reachable": reachable.PART,
    "ways_clear": ways_clear.PART,
    "mown": mown.PART,
    "touching": touching.PART,
    "near": near.PART,
    "apart": apart.PART,
    "in_view": in_view.PART,
    "out_of_view": out_of_view.PART,
    "faces": faces.PART,
    "cook_looks_at_table": cook_looks_at_table.PART,
    "accessible": accessible.PART,
    "drains": drains.PART,
    "steps_clear": steps_clear.PART,
    "kitchen_level": kitchen_level.PART,
    "everyday_table": everyday_table.PART,
    "party_seats": party_seats.PART,
    "budget": budget.PART,
    "later_phases": later_phases.PART,
    "phases": phases.PART,
}

RELATIONS: Final[dict[RelationKind, RelationPart]] = {
    part.kind: part for part in (NEAR, APART, TOUCHING, FACES, IN_VIEW, OUT_OF_VIEW)
}
"""How each kind of relation is said; the accessible one is the judge's."""

__all__ = ["PARTS", "RELATIONS", "Part", "RelationPart", "Variants"]
