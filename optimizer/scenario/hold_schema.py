"""The `holds` of a brief, key by key: what a person has decided. Lengths come out in feet."""

from optimizer.brief import Side
from optimizer.scenario.part import Part
from optimizer.scenario.values import Corners, Name, Point


class HoldPart(Part):
    """A decision on one room that every concept keeps: where it stands, where not, which way it opens, its choice."""

    room: Name
    """The room that it is about."""
    at: Point | None = None
    """Lower left corner on the plan, exactly; the room is then required."""
    within: Corners | None = None
    """Area that the room lies in, if it is built."""
    not_in: Corners | None = None
    """Area that the room keeps out of."""
    front: Side | None = None
    """Side of the plan that it opens or serves to."""
    choice: Name | None = None
    """Label of its choice, as `check` prints it; the room is then required."""
