"""How wide the sheet of a plan is, and the one size of its type: a share of that width, so that a reader sees the same
letters whatever the yard (layout rule 32).
"""

from functools import lru_cache
from typing import Final

from shapely import Polygon

from optimizer.drawing.free_space import union_of
from optimizer.drawing.marks import Box
from optimizer.site import Site

MARGIN_FT: Final = 8.0
NEIGHBOUR_MARGIN_FT: Final = 18.0
LEAST_SHEET_FT: Final = 70.0
"""A smaller yard has free paper at its sides: at 1/8 in to the foot its letters stay legible on paper too. Common
practice, no source.
"""
TYPE_SHARE: Final = 0.0145
"""Size of type as a share of the sheet's width: 11.6 px on a page 800 px wide; on a sheet as wide as 11 x 17 in paper
capitals are 2.9 mm high, of the 2.5 and 3.5 mm of drawing practice (ISO 3098 steps, from memory).
"""
SCREEN_SHARES: Final = (0.024, 0.02)
"""Size of type as shares of width and height of a plan alone: 12 px in about 500 x 600 px, which it has beside the
facts of a concept in a window of 1440 x 900 px.
"""


@lru_cache(maxsize=8)
def plan_box_of(site: Site) -> Box:
    """Bounds of the yard and its buildings with a margin, wider where a neighbour stands close by [ft]."""
    yard = union_of(Polygon(site.boundary), *(Polygon(building.outline) for building in site.buildings)).envelope
    close = yard.buffer(NEIGHBOUR_MARGIN_FT, join_style="mitre")
    neighbours = [Polygon(thing.outline).intersection(close) for thing in site.surroundings if thing.outline]
    x1, y1, x2, y2 = union_of(yard.buffer(MARGIN_FT, join_style="mitre"), *neighbours).bounds
    return (x1, y1, x2, y2)


def sheet_width_ft(plan_box: Box) -> float:
    """Width of the sheet that a plan lies on [ft of the ground]."""
    return max(plan_box[2] - plan_box[0], LEAST_SHEET_FT)


def screen_scale(plan_box: Box) -> float:
    """The same for the plan alone in part of a window: as wide as the part or as high, whichever is less room."""
    (x1, y1, x2, y2), (of_width, of_height) = plan_box, SCREEN_SHARES
    return max(of_width * (x2 - x1), of_height * (y2 - y1))


def text_scale(site: Site) -> float:
    """Feet of the ground to a foot of type: everything that is written on a plan is 1 ft high times this."""
    return TYPE_SHARE * sheet_width_ft(plan_box_of(site))
