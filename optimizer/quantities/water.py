"""Water of tubs: what a filled one weighs, and what it bears on."""

from optimizer.quantities.figures import value


def tub_lb(dry_lb: float, gallons: float, people: int) -> float:
    """Weight of a filled tub with people in it [lb]."""
    return dry_lb + gallons * value("gallon_lb") + people * value("bather_lb")


def load_psf(weight_lb: float, area_sqft: float) -> float:
    """Load on the ground or deck under it [lb/sq ft]."""
    return weight_lb / area_sqft
