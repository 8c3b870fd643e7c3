"""Materials of a paved area on sand and crushed stone, from its measures: layers in inches, volumes in cubic yards."""

from optimizer.grading import CUFT_PER_CUYD
from optimizer.quantities.figures import value


def units(area_sqft: float, cut_edge_ft: float) -> float:
    """4 x 8 in units to order, broken and cut ones among them; source: Brick Industry Association, consumer guide."""
    laid = area_sqft * value("units_per_sqft")
    return laid * (1 + value("breakage")) + cut_edge_ft * value("units_cut_per_ft")


def layer_cuyd(area_sqft: float, thickness_in: float) -> float:
    """Volume of a layer [cu yd]: 324 sq ft an inch thick are one."""
    return area_sqft * thickness_in / 12 / CUFT_PER_CUYD


def ordered_sqft(net_sqft: float, cuts: float) -> float:
    """Area to order [sq ft]: `cuts` is the share that is cut away, by pattern."""
    return net_sqft * (1 + cuts)


def base_extension_ft(base_in: float) -> float:
    """How far the base reaches beyond a free edge: the greater of 6 in and its own thickness [ft]. Source: ICPI."""
    return max(value("least_extension_in"), base_in) / 12


def loose_stone_cuyd(compacted_cuyd: float) -> float:
    """Stone to deliver [cu yd] for so much when it is compacted."""
    return compacted_cuyd * value("loose_for_compacted")


def stone_tons(compacted_cuyd: float) -> float:
    """Weight of compacted stone [tons of 2,000 lb]."""
    return compacted_cuyd * value("stone_ton_per_cuyd")


def joint_bags(area_sqft: float) -> float:
    """Bags of joint sand of 50 lb for an area."""
    return area_sqft / value("joint_sqft_per_bag")
