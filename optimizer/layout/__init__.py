"""Where every chosen room stands: answers in feet, no opinions; and the geometry of what stands there."""

from optimizer.layout.arrangement import MOVED_SHARE, TOLERANCE_FT, Arrangement, arrangement_of, difference
from optimizer.layout.counter import cook_stands, counter_middle
from optimizer.layout.furniture import items_on_plan
from optimizer.layout.placed import Placed, PlacedRoom, placed_of
from optimizer.layout.placement import FRONT_VECTORS, Front, Layout, Placement
from optimizer.layout.pose import Pose, canonical_pose
from optimizer.layout.shapes import (
    SIDES,
    areas_only,
    around,
    footprint,
    outline,
    radius_ft,
    rectangle,
    shared_edge_ft,
    side_ends,
    side_on_plan,
    stepped_over,
    walked_round,
)
from optimizer.layout.turns import turns_at

__all__ = [
    "FRONT_VECTORS",
    "MOVED_SHARE",
    "SIDES",
    "TOLERANCE_FT",
    "Arrangement",
    "Front",
    "Layout",
    "Placed",
    "PlacedRoom",
    "Placement",
    "Pose",
    "areas_only",
    "around",
    "arrangement_of",
    "canonical_pose",
    "cook_stands",
    "counter_middle",
    "difference",
    "footprint",
    "items_on_plan",
    "outline",
    "placed_of",
    "radius_ft",
    "rectangle",
    "shared_edge_ft",
    "side_ends",
    "side_on_plan",
    "stepped_over",
    "turns_at",
    "walked_round",
]
