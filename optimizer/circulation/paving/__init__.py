"""The network of paved ways: its ground, where it begins and ends, its candidate lines, its routes and its legs."""

from optimizer.circulation.paving.choices import MAIN_COUNT
from optimizer.circulation.paving.land import no_path_ground
from optimizer.circulation.paving.legs import WIDTH_FT, Leg, LegUse
from optimizer.circulation.paving.network import Paved, paved_network

__all__ = [
    "MAIN_COUNT",
    "WIDTH_FT",
    "Leg",
    "LegUse",
    "Paved",
    "no_path_ground",
    "paved_network",
]
