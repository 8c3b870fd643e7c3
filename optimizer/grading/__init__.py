"""Levels of the rooms on the real ground, and what they ask for: steps, walls, earth, falls."""

from optimizer.grading.access import RouteFinding, accessible_route
from optimizer.grading.clear import Foot, kept_clear, too_near
from optimizer.grading.climb import climbed
from optimizer.grading.earthwork import CUFT_PER_CUYD, Earth, bank_cuyd, grid_volume_cuft, loose_cuyd
from optimizer.grading.falls import Fall
from optimizer.grading.flights import GROUND, Flight
from optimizer.grading.grade import Levelled, grade, graded, levelled
from optimizer.grading.grading import Grading
from optimizer.grading.profile import rooms_along
from optimizer.grading.walls import Guard, Wall

__all__ = [
    "CUFT_PER_CUYD",
    "GROUND",
    "Earth",
    "Fall",
    "Flight",
    "Foot",
    "Grading",
    "Guard",
    "Levelled",
    "RouteFinding",
    "Wall",
    "accessible_route",
    "bank_cuyd",
    "climbed",
    "grade",
    "graded",
    "grid_volume_cuft",
    "kept_clear",
    "levelled",
    "loose_cuyd",
    "rooms_along",
    "too_near",
]
