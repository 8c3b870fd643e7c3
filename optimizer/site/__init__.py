"""What is there: boundary, buildings, doors, trees, structures, walls, keep-outs, levels and the place on earth."""

from optimizer.site.existing import Gate, Wall, WallKind, WallOpening
from optimizer.site.things import (
    Building,
    Door,
    Entrance,
    KeepOut,
    KeepOutKind,
    Point,
    Ring,
    SpotLevel,
    Structure,
    Surrounding,
    Tree,
    Utility,
    UtilityLine,
    Window,
)
from optimizer.site.yard import BUILT_CLASSES, BuiltClass, DistanceName, Place, RootRings, Setbacks, Site, WindRose

__all__ = [
    "BUILT_CLASSES",
    "Building",
    "BuiltClass",
    "DistanceName",
    "Door",
    "Entrance",
    "Gate",
    "KeepOut",
    "KeepOutKind",
    "Place",
    "Point",
    "Ring",
    "RootRings",
    "Setbacks",
    "Site",
    "SpotLevel",
    "Structure",
    "Surrounding",
    "Tree",
    "Utility",
    "UtilityLine",
    "Wall",
    "WallKind",
    "WallOpening",
    "WindRose",
    "Window",
]
