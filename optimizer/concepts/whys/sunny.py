"""What keeps a room from its sun: what throws the shade where it stands, and which rules bar the places with sun."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any, Final

import numpy as np

from optimizer.brief import RULES, RuleId, SunWish
from optimizer.catalogue import SizedRoom
from optimizer.concepts.case import Case
from optimizer.concepts.whys.words import sentence, share_words
from optimizer.concepts.words import listed
from optimizer.derived import Derived
from optimizer.engine.grid.context import Context, context_of
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.sun_hours import mean_hours
from optimizer.engine.grid.variants import Variant
from optimizer.engine.problem import barred_places, sizes_of
from optimizer.layout import Layout
from optimizer.site import Site

LEAST_TOLD_H: Final = 0.1
_TOLERANCE_H: Final = 0.05
_MOST_TOLD: Final = 4
_THINGS: Final = ("buildings", "structures", "trees", "walls", "surroundings")


def shade_words(case: Case, layout: Layout, name: str) -> str:
    """Hours that a room gets where it stands, and how much more it would get without each thing in the sun's way."""
    site = case.scenario.site
    wish = next(room.sun for room in case.rooms if room.name == name)
    here = _sun_h(case, layout, name, site)
    if wish is None or here is None:
        return ""
    told = f"Where it stands it gets {wish.given_h(here):.1f} of the {wish.wished_h:.1f} hours of {wish.want}."
    if wish.want == "shade":
        return told
    without = [(thing, _sun_h(case, layout, name, less)) for thing, less in _without_each(site)]
    without += [(thing, _sun_h(case, less, name, site)) for thing, less in _without_each_roof(case, layout)]
    taken = sorted((((there or 0.0) - here, thing) for thing, there in without), reverse=True)
    shading = [f"the {thing} takes {more:.1f} h" for more, thing in taken[:_MOST_TOLD] if more >= LEAST_TOLD_H]
    return f"{told} {sentence(listed(shading))}" if shading else told


def _sun_h(case: Case, layout: Layout, name: str, site: Site) -> float | None:
    """Hours as the check and the appraisal measure them, on another site; None without the room or a wish [h]."""
    derived = Derived(replace(case.scenario, site=site), case.placed(layout))
    room = derived.placed.of(name)
    return None if room is None else derived.sun_h(room)


def places_words(case: Case, name: str) -> str:
    """On how much of the ground that has the hours wished for the room may stand, and which rules bar how much of it.

    Counted by the room's places on the grid, in every turn.
    """
    context = context_of(case.scenario, case.rooms)
    room = next(room for room in case.rooms if room.name == name)
    assert room.sun is not None
    sunny = free = 0
    barred: dict[RuleId, int] = {}
    for variant in sizes_of(context, _plain(room)):
        given, bars = _sunny(context, room, variant, room.sun), barred_places(context, room, variant)
        rows, columns = given.shape
        if (built := bars.pop("off_buildings", None)) is not None:
            given &= ~built[:rows, :columns]
        sunny += int(given.sum())
        left = given.copy()
        for rule, cells in bars.items():
            if rule != "sun_least":
                barred[rule] = barred.get(rule, 0) + int((given & cells[:rows, :columns]).sum())
                left &= ~cells[:rows, :columns]
        free += int(left.sum())
    return _told(room.sun, (sunny, free), barred)


def _told(sun: SunWish, counts: tuple[int, int], barred: dict[RuleId, int]) -> str:
    sunny, free = counts
    if not sunny:
        return f"No place in or round the yard gets the {sun.wished_h:g} hours of {sun.want} that are wished for."
    words = f"Part of the yard gets the {sun.wished_h:g} hours of {sun.want} that are wished for"
    most = sorted(((count, rule) for rule, count in barred.items() if count), reverse=True)[:_MOST_TOLD]
    parts = [f"{RULES[rule].sentence.removesuffix('.')} ({share_words(count / sunny)} of it)" for count, rule in most]
    bars = f" What bars the rest, some of it more than once: {'; '.join(parts)}." if parts else ""
    return f"{words}; the room may stand by itself on {share_words(free / sunny)} of that ground.{bars}"


def _sunny(context: Context, room: SizedRoom, variant: Variant, sun: SunWish) -> Cells:
    hours = mean_hours(context, room, variant)
    assert hours is not None
    given = hours if sun.want == "sun" else sun.window_h - hours
    return np.asarray(given >= sun.wished_h - _TOLERANCE_H)


def _plain(room: SizedRoom) -> SizedRoom:
    """The room in its smallest size."""
    return replace(room, choices=(min(room.sizes, key=lambda size: size.area_sqft),))


def _without_each_roof(case: Case, layout: Layout) -> Iterator[tuple[str, Layout]]:
    """The name of each new roof, with the layout that has that room in its size alone."""
    for room, choice in case.placed(layout).chosen:
        if choice.cover is not None:
            placements = (replace(p, choice=choice.size) if p.room == room.name else p for p in layout.placements)
            yield f"roof over the {room.name}", replace(layout, placements=tuple(placements))


def _without_each(site: Site) -> Iterator[tuple[str, Site]]:
    """The name of each thing that may throw shade, with the site that lacks it."""
    for part in _THINGS:
        things = getattr(site, part)
        for number, thing in enumerate(things):
            less: dict[str, Any] = {part: (*things[:number], *things[number + 1 :])}
            yield thing.name, replace(site, **less)
