"""Every room, door and entrance of a trip is joined by a clear way: the explorer asks it of each layout on the grid."""

from optimizer.engine.rules.part import Part

PART = Part(whole=True)
