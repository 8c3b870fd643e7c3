"""A run made up by hand on a demonstration yard: for tests of what is written, read, compared and printed."""

from dataclasses import replace
from decimal import Decimal
from functools import cache
from pathlib import Path

from optimizer.appraisal import Appraisal, Cost, CostLine
from optimizer.catalogue import book_for, sized_rooms
from optimizer.circulation import Way
from optimizer.concepts import Conflict, DiffersBy, LeftOut, Option, OptionSet, Proof, SearchRecord
from optimizer.layout import Layout, Placement
from optimizer.results import to_document
from optimizer.scenario import Scenario, load_scenario

YARD = Path(__file__).parents[1] / "scenarios" / "fernhollow-court.yaml"

SEARCH = SearchRecord(
    status="bounded",
    objective=30_500.0,
    bound=24_400.0,
    terms=(("cost", 16_800.0), ("walking", 13_700.0)),
    seconds=12.5,
    seed=7,
    repeatable=False,
    stopped=False,
    arrangements_seen=431,
)
NOTHING_FITS = OptionSet(
    options=(),
    search=replace(SEARCH, status="nothing_fits", objective=None, bound=None, terms=()),
    conflict=Conflict(
        rules=(("fire_clear", "Fire keeps its distance.", ("fire feature",)),),
        words="the fire feature has no place 10 ft from everything.",
    ),
)
UNDECIDED = OptionSet(options=(), search=replace(SEARCH, status="undecided", objective=None, bound=None, terms=()))


@cache
def sample_scenario() -> Scenario:
    """Give the demonstration yard of the example."""
    return load_scenario(YARD)


def sample_option(option_id: str = "a1", *, rank: int = 1, score: float = 30_500.0) -> Option:
    """Give an option with two rooms and a way; its figures are made up, its sums hold."""
    return Option(
        id=option_id,
        rank=rank,
        score=score,
        losses=(("cost", score - 13_700.0), ("walking", 13_700.0)),
        reason="Shortest way from the kitchen door",
        layout=Layout((_placed("gathering area", 66.0, 70.0), _placed("quiet nook", 40.0 + 0.1 + 0.2, 90.0))),
        left_out=tuple(
            LeftOut(room, "the budget ends before it") for room in ("outdoor kitchen", "fire feature", "water reserve")
        ),
        appraisal=_appraisal(),
        findings=(),
        cautions=("Gas and fire: by local codes and licensed practice.",),
        proof=Proof("proven", score, score - 0.5),
        differs_by=None if rank == 1 else DiffersBy(0.31, "the nook lies on the other side"),
    )


def sample_set(count: int = 2) -> OptionSet:
    """Give a ranked set of so many options."""
    ranked = (sample_option(f"a{rank}", rank=rank, score=30_000.0 + 500 * rank) for rank in range(1, count + 1))
    return OptionSet(options=tuple(ranked), search=SEARCH)


def sample_document(option_set: OptionSet | None = None) -> dict:
    """Give the document of a run on the demonstration yard."""
    scenario = sample_scenario()
    rooms, book = sized_rooms(scenario.brief), book_for(scenario.currency)
    return to_document(scenario, rooms, option_set or sample_set(), book=book)


def _placed(room: str, x_ft: float, y_ft: float) -> Placement:
    choice = next(sized for sized in sized_rooms(sample_scenario().brief) if sized.name == room).choices[0]
    return Placement(room, choice.label, x_ft, y_ft, choice.width_ft, choice.depth_ft, "+y")


def _appraisal() -> Appraisal:
    return Appraisal(
        cost=Cost(
            lines=(
                _line(1, "gathering area", "paving", "168", "30.00", "5040.00"),
                _line(1, "quiet nook", "paving", "56.25", "30.50", "1715.63"),
                _line(2, "water reserve", "hot tub", "1", "14000.00", "14000.00"),
            ),
            phases=((1, Decimal("7768.97")), (2, Decimal("16100.00"))),
            total=Decimal("23868.97"),
            low=Decimal("20000.00"),
            high=Decimal("29000.00"),
        ),
        ways=(
            Way(
                between=("kitchen door", "gathering area"),
                width_ft=3.0,
                points=((62.0, 58.0), (70.0, 70.0)),
                length_ft=14.4,
            ),
        ),
        walking_ft=1234.5,
        trips_ft=(("kitchen door", "gathering area", 14.4),),
        worth=11.0,
        seats=8,
        aligned_share=0.625,
        leftover_share=0.41,
        paved_share=0.08,
        sun_h=(("quiet nook", 1.75, 0.75),),
        sight_missed=(("water reserve", "neighbour window"),),
        wishes_missed=("water reserve out of view of neighbour window",),
    )


def _line(phase: int, room: str, item: str, quantity: str, unit_price: str, amount: str) -> CostLine:
    return CostLine(phase, room, item, Decimal(quantity), "sq ft", Decimal(unit_price), Decimal(amount))
