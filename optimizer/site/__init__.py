"""What is there: boundary, buildings, doors, trees, structures, keep-outs, levels and the place on earth."""

from optimizer.site.things import (
    Building,
    Door,
    Entrance,
    KeepOut,
    Point,
    Ring,
    SpotLevel,
    Structure,
    Surrounding,
    Tree,
    Utility,
    Window,
)
from optimizer.site.yard import BUILT_CLASSES, BuiltClass, Place, Setbacks, Site

__all__ = [
    "BUILT_CLASSES",
    "Building",
    "BuiltClass",
    "Door",
    "Entrance",
    "KeepOut",
    "Place",
    "Point",
    "Ring",
    "Setbacks",
    "Site",
    "SpotLevel",
    "Structure",
    "Surrounding",
    "Tree",
    "Utility",
    "Window",
]
