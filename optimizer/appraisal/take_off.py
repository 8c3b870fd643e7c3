"""Quantities of a layout by line, before prices."""

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from typing import Final

from shapely import union_all

from optimizer.appraisal.groundwork import groundwork
from optimizer.catalogue import (
    LIFTED,
    SITE,
    Charge,
    PriceBook,
    charge,
    existing_of,
    fixed_charges,
    owners_charges,
    room_charges,
    to_cents,
)
from optimizer.derived import Derived, PoolSite, stages_of
from optimizer.fields.existing_paving import paving_to
from optimizer.grading import Grading
from optimizer.layout import Placed
from optimizer.quantities import POOR_ACCESS, RETURN, extra_charges, later_phases, nearest_start, poor_access, run_ft
from optimizer.scenario import Scenario
from optimizer.site import Site

_LEAST_SQFT: Final = 0.05
_SUPPLIES: Final = ("gas", "electric", "water")


def all_charges(derived: Derived, book: PriceBook) -> tuple[Charge, ...]:
    """Everything that a layout costs: what it needs, what comes beside it by rule, and what is a share of both."""
    stages = stages_of(derived)
    laid_out = take_off(
        derived.scenario,
        derived.placed,
        paths_sqft=_paths_sqft(stages),
        grading=derived.grading,
        pools=derived.pools,
    )
    needs = (*laid_out, *_what_comes_later(derived, book))
    charges = (*needs, *(extra_charges(stages, needs) if needs else ()))
    return (*charges, *_shares(derived, charges, book))


def _what_comes_later(derived: Derived, book: PriceBook) -> Iterator[Charge]:
    """Of each reserve the dearest of its futures that fits; nothing where none does."""
    dearest_first = sorted(derived.later_futures, key=lambda pair: -book.of(pair[1].item).price)
    counted = set[str]()
    for room, future in dearest_first:
        if room.name not in counted and derived.fits(room, future):
            counted.add(room.name)
            yield charge(phase=room.phase, room=room.name, item=future.item, amount=1)


def _shares(derived: Derived, charges: Sequence[Charge], book: PriceBook) -> Iterator[Charge]:
    """Shares of money: of earth and paving where no machine comes, and of a later phase for coming back."""
    by_hand = poor_access(derived, charges)
    of_phases = {
        **{(phase, POOR_ACCESS): [c for c in by_hand if c.phase == phase] for phase in {c.phase for c in by_hand}},
        **{(phase, RETURN): [c for c in charges if c.phase == phase] for phase in later_phases(charges)},
    }
    for (phase, item), base in sorted(of_phases.items()):
        money = sum(to_cents(c.quantity * book.of(c.item).price) for c in base)
        yield Charge(phase, SITE, item, to_cents(Decimal(money)))


def _paths_sqft(stages: Mapping[int, Derived]) -> dict[int, float]:
    """Ways that each phase paves: those that stand after it, less what was paved before [sq ft]."""
    found: dict[int, float] = {}
    for phase, stage in stages.items():
        found[phase] = max(0.0, float(stage.paths.area) - sum(found.values()))
    return found


def take_off(
    scenario: Scenario,
    placed: Placed,
    *,
    paths_sqft: Mapping[int, float],
    grading: Grading,
    pools: Sequence[PoolSite] = (),
) -> tuple[Charge, ...]:
    """Everything that a layout needs: rooms, runs to them, what pools need around them, paths, groundwork, and what is
    done once for the site.

    `paths_sqft` is what each phase paves of ways. A layout without rooms needs nothing. Runs are priced only where the
    site says where they start.
    """
    if not placed.layout.placements:
        return ()
    by_room = tuple(
        line
        for there, choice in placed.chosen
        for line in room_charges(choice, there.room, on_slab=there.name in grading.overlaid)
    )
    paths = (charge(phase=p, room=SITE, item="path paving", amount=area) for p, area in paths_sqft.items())
    runs, ground = _runs(scenario.site, placed, by_room), groundwork(grading, placed)
    lifted = _lifted(scenario.site, placed, grading)
    once = (*fixed_charges(scenario.brief, existing_of(scenario.site)), *owners_charges(scenario.brief))
    return (*by_room, *lifted, *runs, *_round_pools(placed, pools), *paths, *ground, *once)


def _lifted(site: Site, placed: Placed, grading: Grading) -> Iterator[Charge]:
    """Slabs that might carry a room, where another stands on them: what lies under it is lifted."""
    slabs = union_all([ground for _, ground in paving_to(site, "reuse")])
    for room in placed:
        area_sqft = float(room.shape.intersection(slabs).area)
        if room.name not in grading.overlaid and area_sqft > _LEAST_SQFT:
            yield charge(phase=room.phase, room=room.name, item=LIFTED, amount=area_sqft)


def _round_pools(placed: Placed, pools: Sequence[PoolSite]) -> Iterator[Charge]:
    """Barriers, alarms on doors inside them, and pipes to the equipment."""
    phases = {there.name: there.phase for there in placed}
    for pool in pools:
        amounts = {"pool barrier": pool.barrier.length, "door alarm": len(pool.doors), "pool pipe run": pool.pipe_ft}
        for item, amount in amounts.items():
            yield charge(phase=phases[pool.room], room=pool.room, item=item, amount=amount)


def _runs(site: Site, placed: Placed, by_room: Sequence[Charge]) -> Iterator[Charge]:
    """Branches' runs, each from the nearest point where its supply starts."""
    for branch in by_room:
        supply, room = branch.item.removesuffix(" branch"), placed.of(branch.room)
        if supply not in _SUPPLIES or room is None:
            continue
        if start := nearest_start(site, supply, room.placement):
            length = run_ft(start, room.placement)
            yield charge(phase=branch.phase, room=branch.room, item=f"{supply} run", amount=length)
