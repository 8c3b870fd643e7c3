"""Maps over the site, made once: the ground's height, zones in front of doors, hours of sun, sight, wind and smoke."""

from optimizer.fields.covers import cover_casters, with_covers
from optimizer.fields.door_zones import (
    BUILT_UP_FT,
    LANDING_FT,
    TREAD_FT,
    door_zone,
    faced_part,
    free_sides,
    ground_beside,
    risers,
    stepped_out_ft,
)
from optimizer.fields.edges import (
    LINE_TOLERANCE_FT,
    NEIGHBOUR_FT,
    Edge,
    are_neighbours,
    centre_lines,
    nearly_level,
    site_edges,
)
from optimizer.fields.ground import Ground, ground_at_ft, ground_of, ground_z_ft
from optimizer.fields.growth import edge_of, lines_for, reach_ft
from optimizer.fields.house_sides import beside_house
from optimizer.fields.order import (
    FREE_PART,
    across_contour_ft,
    main_openings,
    off_axis,
    off_structure_ft,
    on_axis,
)
from optimizer.fields.site_shapes import SITES, SiteShapes, open_yard, site_shapes, site_slopes
from optimizer.fields.smoke import door_smoke, smoke_factor, smoke_source
from optimizer.fields.sun import (
    Caster,
    cover_caster,
    room_sun_hours,
    shadows_at,
    sun_at,
    sun_class,
    sun_grid,
    sun_hours,
)
from optimizer.fields.sun.moments import Moment, moments_of
from optimizer.fields.wind import wind_rose

__all__ = [
    "BUILT_UP_FT",
    "FREE_PART",
    "LANDING_FT",
    "LINE_TOLERANCE_FT",
    "NEIGHBOUR_FT",
    "SITES",
    "TREAD_FT",
    "Caster",
    "Edge",
    "Ground",
    "Moment",
    "SiteShapes",
    "across_contour_ft",
    "are_neighbours",
    "beside_house",
    "centre_lines",
    "cover_caster",
    "cover_casters",
    "door_smoke",
    "door_zone",
    "edge_of",
    "faced_part",
    "free_sides",
    "ground_at_ft",
    "ground_beside",
    "ground_of",
    "ground_z_ft",
    "lines_for",
    "main_openings",
    "moments_of",
    "nearly_level",
    "off_axis",
    "off_structure_ft",
    "on_axis",
    "open_yard",
    "reach_ft",
    "risers",
    "room_sun_hours",
    "shadows_at",
    "site_edges",
    "site_shapes",
    "site_slopes",
    "smoke_factor",
    "smoke_source",
    "stepped_out_ft",
    "sun_at",
    "sun_class",
    "sun_grid",
    "sun_hours",
    "wind_rose",
    "with_covers",
]
