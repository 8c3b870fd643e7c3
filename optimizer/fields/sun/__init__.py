"""Sun over the site: where it stands, what holds it back, shadows at a moment, hours of direct sun."""

from optimizer.catalogue.heights import DEFAULT_HEIGHT_FT
from optimizer.fields.sun.casters import (
    CROWN_BASE,
    Ball,
    Caster,
    casters_of,
    cover_caster,
    in_leaf,
)
from optimizer.fields.sun.classes import sun_class
from optimizer.fields.sun.hours import room_sun_hours, sun_grid, sun_hours
from optimizer.fields.sun.position import LOWEST_ALTITUDE_DEG, sun_at, sun_directions
from optimizer.fields.sun.shadows import Shade, shades_of, shadows_at

__all__ = [
    "CROWN_BASE",
    "DEFAULT_HEIGHT_FT",
    "LOWEST_ALTITUDE_DEG",
    "Ball",
    "Caster",
    "Shade",
    "casters_of",
    "cover_caster",
    "in_leaf",
    "room_sun_hours",
    "shades_of",
    "shadows_at",
    "sun_at",
    "sun_class",
    "sun_directions",
    "sun_grid",
    "sun_hours",
]
