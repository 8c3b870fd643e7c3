"""What the site's facts make of a layout: its levels and what they ask for, sight, smoke, arrival and axes."""

from dataclasses import dataclass
from typing import NamedTuple

from optimizer.site import Point


@dataclass(frozen=True, slots=True)
class GroundMeasures:
    """Levels of the rooms, and the steps, walls and earth that they ask for. Feet, square feet, cubic yards."""

    levels: tuple[tuple[str, float], ...] = ()
    """Room and its height above the file's datum [ft]."""
    risers: int = 0
    cut_bcy: float = 0.0
    """Earth dug, as it lies in the ground."""
    fill_ccy: float = 0.0
    """Earth placed, as compacted."""
    away_lcy: float = 0.0
    """Earth taken away, loose as it is carried; below 0: brought."""
    wall_face_sqft: float = 0.0
    tallest_wall_ft: float = 0.0
    guard_ft: float = 0.0
    undrained: tuple[str, ...] = ()
    """Paved rooms from which water has nowhere to run off."""
    flags: tuple[str, ...] = ()
    """What the levels call for by model code: handrails, guards, permits."""


class SmokeShare(NamedTuple):
    """Share of the using season in which a place, an opening or a room with seats, lies in a room's smoke."""

    source: str
    place: str
    share: float


@dataclass(frozen=True, slots=True)
class SiteMeasures:
    """Further measures; None or empty where the scenario does not say enough for them."""

    ground: GroundMeasures | None = None
    sight: tuple[tuple[str, str, str, float], ...] = ()
    """Who looks, what is looked at, the kind of the relation, and the share that is seen."""
    smoke: tuple[SmokeShare, ...] = ()
    arrival_ft: float | None = None
    """Way of guests from their entrance to the gathering [ft]."""
    risers_seen_share: float | None = None
    axes: tuple[tuple[str, str | None], ...] = ()
    """Main door or window, and what its centre line meets on purpose."""
    focal_point: tuple[Point, int] | None = None
    """Point of open ground where most ways meet [ft], and how many; None where no two meet."""
