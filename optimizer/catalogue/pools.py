"""Figures of water that is built now: its deck, its volume, its barrier and the pad of its equipment."""

from typing import Any

from optimizer.catalogue.clearances import INCHES_PER_FT
from optimizer.catalogue.data_files import data


def pool_figure(name: str) -> Any:
    """Figure of `pool.yaml` by its name; KeyError for a name that is not there."""
    return data("pool.yaml")[name]


def least_deck_ft() -> float:
    """Deck that water has on every side [ft]."""
    return float(pool_figure("least_deck"))


def barrier_height_ft() -> float:
    """Height of a pool's barrier [ft]."""
    return float(pool_figure("barrier_inches")) / INCHES_PER_FT


def pad_size_ft() -> tuple[float, float]:
    """Length along the wall that it stands at, and depth, of the pad for a pool's equipment [ft]."""
    length, depth = pool_figure("pad")
    return float(length), float(depth)


def pool_gallons(length_ft: float, width_ft: float, mean_depth_ft: float) -> float:
    """Volume of water [US gal] as published tables count it, 7.5 gal to the cubic foot."""
    return float(length_ft * width_ft * mean_depth_ft * pool_figure("gallons_per_cuft"))
