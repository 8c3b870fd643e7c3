"""What is said of ground that is held for later."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.appraisal import outlooks, priced
from optimizer.catalogue import book_for, rounded
from optimizer.concepts.case import Case
from optimizer.concepts.future_cautions import counted_words, future_cautions, way_in_cautions
from optimizer.concepts.future_words import DIG_CAUTION
from optimizer.concepts.phases import phase_words
from optimizer.layout import Layout
from tests.optimizer.derived.futures.yard import HELD, derived, yard

DRIVE = "{name: drive, at: [80, 0], width: 12}"


def said(*changes: tuple[str, str], held=HELD) -> list[str]:
    scenario = yard(*changes)
    return list(future_cautions(scenario, outlooks(derived(scenario, held=held), book_for("USD"))))


def test_what_stays_possible_has_its_way_kept_free() -> None:
    """One sentence: for what, how wide, from where to where; and what comes before any digging."""
    words, before = said()
    assert before == DIG_CAUTION
    assert words.startswith("Way in for a later hot tub, swim spa or pool: a band 9'-6\" wide and ")
    assert " long, from the drive to the water later, stays free of walls, steps, trees" in words


def test_what_misses_by_how_little() -> None:
    """A foot of the setback."""
    words = said(held=replace(HELD, x_ft=3.0))[0]
    assert (
        words == "Later pool: in the water later its water comes 1'-0\" too near to the west for the setback of water."
    )


def test_what_is_too_large() -> None:
    """Held ground of 30 ft where 36 are needed."""
    words = said(held=replace(HELD, width_ft=30.0))[0]
    assert words == "Later pool: the water later is 6'-0\" too small for it with its deck and service space."


def test_what_is_barred_by_name_and_the_other_way_in() -> None:
    """An entrance of 6 ft: the swim spa has the crane alone, the pool a small digger."""
    words = said((DRIVE, DRIVE.replace("12", "6")))
    assert words[:4] == [
        "Later swim spa: no way in for the lift truck with the swim spa, 9'-6\" wide: the drive is 6'-0\" wide at the most.",
        "Later swim spa: the other way in is over the house or the fence by crane, from a street that bears it; ask what it reaches. The concept's score counts a share of the crane's price for it.",
        "Later pool: no way in for the digger, 8'-0\" wide: the drive is 6'-0\" wide at the most.",
        "Later pool: the other way in is a small digger, 6'-0\" wide, from the drive; it takes longer and costs more.",
    ]


def test_a_metric_yard_is_told_in_metres() -> None:
    """Widths of vehicles too."""
    scenario = yard(("units: ft", "units: m"))
    barred = list(
        future_cautions(scenario, outlooks(derived(yard((DRIVE, DRIVE.replace("12", "6")))), book_for("USD")))
    )
    assert "2.90 m wide" in barred[0]


def test_a_shown_concept_has_them() -> None:
    """Advice puts outlooks and their cautions on an option."""
    scenario = yard()
    case = Case.of(scenario)
    layout = Layout((HELD,))
    option = case.advised(case.described(layout, case.in_full(layout)))
    assert option.open_futures == ("hot tub", "swim spa", "pool")
    assert any(words.startswith("Way in for a later") for words in option.cautions)


@pytest.mark.parametrize(
    ("setback", "item", "said"),
    [
        (8, ["future pool"], []),
        (
            30,
            ["future swim spa"],
            ["Later on the water later: a swim spa is in the sum; a pool is not, since it does not fit as it lies."],
        ),
        (
            40,
            [],
            [
                "Later on the water later: nothing of water is in the sum, since no hot tub, swim spa or pool fits as it lies."
            ],
        ),
    ],
)
def test_a_later_phase_counts_the_dearest_that_fits(setback, item, said) -> None:
    """Water keeps 8, 30 or 40 ft off the boundary: the pool has room, the swim spa alone, or nothing; that is said."""
    there = derived(yard(("water: 8", f"water: {setback}")))
    cost, found = priced(there, book_for("USD")), outlooks(there, book_for("USD"))
    assert [line.item for line in cost.lines if line.item.startswith("future")] == item
    kept = {one.future: one.fit.is_kept for one in found}
    assert {kind.name: there.fits(room, kind) for room, kind in there.later_futures} == kept
    assert list(counted_words(cost, found)) == said
    assert [words for words in way_in_cautions(there.scenario, cost, found) if words in said] == said
    assert ("nothing is counted" in phase_words(cost, 2, "USD")) == (not item)


def test_what_the_total_of_a_later_phase_leaves_out() -> None:
    """Of the future that is priced alone: ground put back on the pool's way in, by hand 3 a sq ft of lawn and 12 of bed, with
    12 % for coming back and 15 % contingency; a crane of 2,800 where nothing drives in. Nothing where the phase is not priced.
    """
    scenario = yard()
    there = derived(scenario)
    (pool,) = (one for one in outlooks(there, book_for("USD")) if one.future == "pool")
    crosses = dict(pool.access.crosses)
    back = (3 * crosses["lawn"] + 12 * crosses["bed"]) * 1.12 * 1.15
    assert float(pool.money.way_in_cost) == pytest.approx(back, abs=0.1)
    (words,) = way_in_cautions(scenario, priced(there, book_for("USD")), outlooks(there, book_for("USD")))
    assert words == (
        "Phase 2 counts the later pool as if built on open ground. Its way in, about "
        f"{rounded(Decimal(back)):,.0f} USD at today's prices, is not in it: bed put back and lawn repair."
    )
    assert not list(way_in_cautions(scenario, None, outlooks(there, book_for("USD"))))
    shut = derived(yard((DRIVE, DRIVE.replace("12", "5"))))
    (words,) = way_in_cautions(scenario, priced(shut, book_for("USD")), outlooks(shut, book_for("USD")))
    assert words.endswith(f"{rounded(Decimal(2800 * 1.12 * 1.15)):,.0f} USD at today's prices, is not in it: crane.")
