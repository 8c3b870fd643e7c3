"""From the checked parts of what stands in the yard already to the site's own types."""

from optimizer.scenario.existing_schema import WallPart
from optimizer.site import Wall, WallOpening


def build_wall(part: WallPart) -> Wall:
    """A wall with its openings."""
    openings = tuple(WallOpening(opening.at, opening.width, opening.gate) for opening in part.openings)
    return Wall(part.name, part.line, part.kind, part.height, openings)
