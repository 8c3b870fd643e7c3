"""Distances from doors, fire, lines and septic ground, and rings round trees: the scenario's own, else the usual.

Figures, meaning and sources stand in `data/distances.yaml`.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from typing import get_args

from optimizer.catalogue.data_files import data
from optimizer.site import BuiltClass, DistanceName, KeepOutKind, Site, UtilityLine


@dataclass(frozen=True, slots=True)
class UsualDistance:
    """A usual distance [ft]; `of` is the kept-out ground and `to` the built classes that it binds, where it does."""

    name: DistanceName
    feet: float
    meaning: str
    where: str
    source: str
    local: str
    of: KeepOutKind | None = None
    to: tuple[BuiltClass, ...] = ()


@dataclass(frozen=True, slots=True)
class Rings:
    """Rings round a kept tree in trunk diameters, and the share of the ground between them that may be built on."""

    inner_trunks: float
    outer_trunks: float
    paved_share: float


@cache
def usual_distance(name: DistanceName) -> UsualDistance:
    """The usual distance of that name."""
    entry = data("distances.yaml")["distances"][name]
    words = {key: entry[key] for key in ("meaning", "where", "source", "local")}
    return UsualDistance(name, float(entry["feet"]), **words, of=entry.get("of"), to=tuple(entry.get("to", ())))


@cache
def usual_rings() -> Rings:
    """The usual rings."""
    entry = data("distances.yaml")["rings"]
    return Rings(float(entry["inner"]["trunks"]), float(entry["outer"]["trunks"]), float(entry["paved_share"]["share"]))


def distance_ft(site: Site, name: DistanceName) -> float:
    """The scenario's own distance, else the usual one [ft]."""
    return dict(site.distances).get(name, usual_distance(name).feet)


def line_clear_ft(site: Site, line: UtilityLine) -> float:
    """What rooms keep from a known line on each side [ft]: its own width, else the site's, else the usual one."""
    return distance_ft(site, "utility_line") if line.clear_ft is None else line.clear_ft


def fire_clear_ft(site: Site, fuel: str | None) -> float:
    """What a fire keeps from building, structure and boundary [ft]; gas where nothing is said of the fuel."""
    return distance_ft(site, "wood_fire" if fuel == "wood" else "gas_fire")


def keep_out_ft(site: Site, kind: KeepOutKind, built_as: Iterable[BuiltClass]) -> float:
    """What something built as this keeps from kept-out ground of that kind [ft]; 0 where nothing is asked."""
    built = set(built_as)
    asked = (distance_ft(site, usual.name) for usual in _usual() if usual.of == kind and built & set(usual.to))
    return max(asked, default=0.0)


def root_rings(site: Site) -> Rings:
    """Rings round the site's kept trees: its own figures, else the usual ones; the outer never inside the inner."""
    own, usual = site.root_rings, usual_rings()
    inner = usual.inner_trunks if own.inner is None else own.inner
    outer = usual.outer_trunks if own.outer is None else own.outer
    share = usual.paved_share if own.paved_share is None else own.paved_share
    return Rings(inner, max(inner, outer), share)


def _usual() -> Iterator[UsualDistance]:
    yield from (usual_distance(name) for name in get_args(DistanceName))
