"""Concrete of slabs and footings [cu yd]."""

from math import ceil

from optimizer.grading import CUFT_PER_CUYD
from optimizer.quantities.figures import value
from optimizer.quantities.paving import layer_cuyd


def slab_cuyd(area_sqft: float, thickness_in: float, waste: float | None = None) -> float:
    """Concrete of a slab with what is lost, the usual share unless given."""
    return layer_cuyd(area_sqft, thickness_in) * (1 + (value("slab_waste") if waste is None else waste))


def footing_cuyd(length_ft: float, width_ft: float, thickness_in: float) -> float:
    """Concrete of a strip footing with what is lost."""
    return layer_cuyd(length_ft * width_ft, thickness_in) * (1 + value("footing_waste"))


def posts_for(width_ft: float, depth_ft: float) -> int:
    """Posts round a shade structure, so that none stand farther apart than is usual."""
    along, up = (ceil(side / value("post_spacing_ft") - 1e-9) for side in (width_ft, depth_ft))
    return 2 * (along + up)


def post_footings_cuyd(posts: int) -> float:
    """Concrete under posts with what is lost."""
    return posts * value("post_footing_cuft") / CUFT_PER_CUYD * (1 + value("footing_waste"))
