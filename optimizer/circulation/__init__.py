"""Where people walk: the ground that bears a clear way, the places it joins, and the shortest ways between them."""

from optimizer.circulation.ground import CLEAR_WIDTH_FT, Ground, walkable_ground
from optimizer.circulation.kitchen import KITCHEN_WALK_FT, kitchen_door, kitchen_walk_limit_ft
from optimizer.circulation.mowing import MOWER_FT, unmown
from optimizer.circulation.network import Network, network_of, walked_line, walking_ft
from optimizer.circulation.paved_ground import way_polygon
from optimizer.circulation.paving import MAIN_COUNT, WIDTH_FT, Leg, LegUse, no_path_ground
from optimizer.circulation.reach import cut_off, unreached
from optimizer.circulation.stops import Access, Stop, access_of, stop_beside
from optimizer.circulation.visibility import shortest_way
from optimizer.circulation.way import Way, way_between
from optimizer.circulation.ways import Ways, ways

__all__ = [
    "CLEAR_WIDTH_FT",
    "KITCHEN_WALK_FT",
    "MAIN_COUNT",
    "MOWER_FT",
    "WIDTH_FT",
    "Access",
    "Ground",
    "Leg",
    "LegUse",
    "Network",
    "Stop",
    "Way",
    "Ways",
    "access_of",
    "cut_off",
    "kitchen_door",
    "kitchen_walk_limit_ft",
    "network_of",
    "no_path_ground",
    "shortest_way",
    "stop_beside",
    "unmown",
    "unreached",
    "walkable_ground",
    "walked_line",
    "walking_ft",
    "way_between",
    "way_polygon",
    "ways",
]
