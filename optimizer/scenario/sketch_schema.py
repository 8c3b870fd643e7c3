"""The `sketches` of a scenario, key by key: layouts of one's own. Lengths come out in feet."""

from typing import Annotated

from pydantic import Field

from optimizer.brief import Side
from optimizer.scenario.part import Part
from optimizer.scenario.values import Name, Point, Size


class SketchedRoomPart(Part):
    """A room of the brief where it is drawn."""

    room: Name
    """The room of the brief."""
    choice: Name | None = None
    """Label of its choice, as `check` prints it; the one whose size is nearest where nothing is said."""
    at: Point
    """Lower left corner on the plan."""
    width: Size
    """Size along x."""
    depth: Size
    """Size along y."""
    front: Side
    """Side of the plan that it opens or serves to."""


class SketchPart(Part):
    """A layout of one's own: checked, measured and priced like a concept, broken rules and all."""

    name: Name
    """What it is called beside the concepts."""
    rooms: Annotated[tuple[SketchedRoomPart, ...], Field(min_length=1, max_length=40)]
    """Its rooms; those of the brief that are not here are left out."""
