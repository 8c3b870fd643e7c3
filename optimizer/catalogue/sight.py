"""Heights of eyes and of what they look at, and usual shares of sight."""

from typing import Final, Literal

from optimizer.brief import Relation, RoomKind
from optimizer.catalogue.data_files import data

_SEATED_KINDS: Final = ("gathering", "kitchen", "fire", "nook")


def sight_figure(name: str) -> float:
    """Figure of `sight.yaml` by its name: feet, or a share; KeyError for a name that is not there."""
    return float(data("sight.yaml")[name]["value"])


def eye_height_ft(kind: RoomKind, held: Literal["seated", "standing"] | None = None) -> float:
    """Height of eyes above the ground of a room [ft]: in a kitchen people stand, elsewhere they sit, or as is asked."""
    usual = "standing" if kind == "kitchen" else "seated"
    return sight_figure(f"{held or usual}_eye")


def seen_height_ft(kind: RoomKind) -> float:
    """Height above its ground at which a room is seen [ft]: heads where people sit, else low over the ground."""
    return sight_figure("seated_head" if kind in _SEATED_KINDS else "low_ground")


def asked_share(relation: Relation) -> float:
    """Share of sight that a relation asks for at least (in view) or at most (out of view)."""
    if relation.share is not None:
        return relation.share
    return sight_figure("least_seen" if relation.kind == "in_view" else "most_seen")
