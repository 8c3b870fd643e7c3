"""The whole-number problem for explorer and solver: the posed yard on its grid, rooms in steps, rules as data."""

from optimizer.instance.build import build_instance, worth_rate
from optimizer.instance.buildable import buildable_sqft
from optimizer.instance.instance import Instance, InstanceRoom, Losses, Pull
from optimizer.instance.pairs import Pair, PairWish
from optimizer.instance.rules import PARTS
from optimizer.instance.variants import Variant

__all__ = [
    "PARTS",
    "Instance",
    "InstanceRoom",
    "Losses",
    "Pair",
    "PairWish",
    "Pull",
    "Variant",
    "build_instance",
    "buildable_sqft",
    "worth_rate",
]
