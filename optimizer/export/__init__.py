"""Writers of a drawing."""

from optimizer.export.svg import EIGHTH_INCH_TO_FOOT, ONE_TO_HUNDRED, plan_svg, strip_svg, thumbnail_svg

__all__ = ["EIGHTH_INCH_TO_FOOT", "ONE_TO_HUNDRED", "plan_svg", "strip_svg", "thumbnail_svg"]
