"""From the checked parts of what stands in the yard already to the site's own types."""

from optimizer.scenario.existing_schema import PavingPart, WallPart
from optimizer.scenario.rings import counter_clockwise
from optimizer.site import Paving, Wall, WallOpening


def build_paving(part: PavingPart) -> Paving:
    """A piece of paving, its outline counter-clockwise."""
    return Paving(part.name, counter_clockwise(part.outline), part.surface, part.then, part.z)


def build_wall(part: WallPart) -> Wall:
    """A wall with its openings."""
    openings = tuple(WallOpening(opening.at, opening.width, opening.gate) for opening in part.openings)
    return Wall(part.name, part.line, part.kind, part.height, openings)
