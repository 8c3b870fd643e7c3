"""Maps over the site, made once: the ground's height, the zones in front of doors, hours of sun."""

from optimizer.fields.door_zones import LANDING_FT, TREAD_FT, door_zone, risers
from optimizer.fields.ground import ground_z_ft
from optimizer.fields.sun import room_sun_hours, sun_hours

__all__ = ["LANDING_FT", "TREAD_FT", "door_zone", "ground_z_ft", "risers", "room_sun_hours", "sun_hours"]
