"""Beds and lawn: what becomes of the ground that rooms and ways leave, placed and not left over."""

from optimizer.planting.bed import Bed, BedReason
from optimizer.planting.measures import PlantingMeasures, planting_measures
from optimizer.planting.plan import Planting, planting_of
from optimizer.planting.service import at_services
from optimizer.planting.strips import along_boundary

__all__ = [
    "Bed",
    "BedReason",
    "Planting",
    "PlantingMeasures",
    "along_boundary",
    "at_services",
    "planting_measures",
    "planting_of",
]
