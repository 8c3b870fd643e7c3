"""The one place that names all the stages, in order: scenario, instance, search, check and appraisal, ranking.

Heavy libraries are imported where they are used, so that `check` and `--help` start at once.
"""

import threading
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from optimizer.events import Emit, to_nobody
from optimizer.scenario import Scenario

if TYPE_CHECKING:
    from optimizer.concepts import Option, OptionSet
    from optimizer.concepts.budgets import BudgetSet
    from optimizer.concepts.case import Case
    from optimizer.concepts.improve.answer import Improvement
    from optimizer.concepts.whys.answers import Answer
    from optimizer.drawing import Audience, Drawing
    from optimizer.layout import Layout


@dataclass(frozen=True, slots=True)
class RunSettings:
    """What the call asks for; None leaves it to the scenario."""

    count: int | None = None
    seconds: float = 20.0
    seed: int | None = None
    repeatable: bool = False
    processes: int | None = None
    start_from: Path | None = None
    solver_log: Path | None = None
    """File to which the solver's log of the proof over all layouts is added."""


def make_options(
    scenario: Scenario,
    settings: RunSettings,
    *,
    emit: Emit = to_nobody,
    stop: threading.Event | None = None,
    show: "Callable[[OptionSet], None] | None" = None,
) -> "OptionSet":
    """Find, check, measure and rank concepts; infeasible and undecided are results.

    `show` is given the best so far now and then, as it would be if the run were stopped there.
    """
    from optimizer.concepts.case import Case
    from optimizer.concepts.run import ConceptRun
    from optimizer.concepts.sketched import sketched_options

    wanted, case = scenario.brief.options, Case.of(scenario)
    run = ConceptRun(
        case,
        count=wanted.count if settings.count is None else settings.count,
        seconds=settings.seconds,
        seed=wanted.seed if settings.seed is None else settings.seed,
        repeatable=settings.repeatable,
        start=_layouts_of(settings.start_from),
        processes=settings.processes,
        solver_log=settings.solver_log,
    )
    found = run.run(emit=emit, stop=stop or threading.Event(), show=show)
    return replace(found, options=(*found.options, *sketched_options(case)))


@dataclass(frozen=True, slots=True)
class BudgetSettings:
    """What the call for budgets asks for; None leaves it to the scenario or to what its wishes can cost."""

    lowest: Decimal | None = None
    highest: Decimal | None = None
    points: int = 10
    seconds: float = 50.0
    seed: int | None = None
    repeatable: bool = False
    processes: int | None = None
    start_from: Path | None = None


def what_budgets_buy(
    scenario: Scenario,
    settings: BudgetSettings,
    *,
    emit: Emit = to_nobody,
    stop: threading.Event | None = None,
) -> "BudgetSet":
    """Find what each budget buys, from the least that works to everything at its largest."""
    from optimizer.concepts.budgets.run import find_budgets, usual_range
    from optimizer.concepts.budgets.search import BudgetAsked
    from optimizer.concepts.case import Case

    case = Case.of(scenario).built_at_once()
    lowest, highest = usual_range(case)
    highest = settings.highest or max(highest, settings.lowest or highest)
    asked = BudgetAsked(
        case=case,
        lowest=settings.lowest or min(lowest, highest),
        highest=highest,
        points=settings.points,
        seconds=settings.seconds,
        seed=scenario.brief.options.seed if settings.seed is None else settings.seed,
        repeatable=settings.repeatable,
        start=_layouts_of(settings.start_from),
        processes=settings.processes,
    )
    return find_budgets(asked, emit=emit, stop=stop or threading.Event())


@dataclass(frozen=True, slots=True)
class WhySettings:
    """What the call asks about: a room, and one of its left out, here, larger, sun; in a concept, if one is named."""

    room: str
    at_ft: tuple[float, float] | None = None
    choice: str | None = None
    in_the_sun: bool = False
    result: Path | None = None
    option: str | None = None
    seconds: float = 20.0
    seed: int | None = None
    has_own_prices: bool = False
    """Whether the scenario is priced by the book that it has, whatever the result was priced by."""


def why(
    scenario: Scenario,
    settings: WhySettings,
    *,
    emit: Emit = to_nobody,
    stop: threading.Event | None = None,
) -> "Answer":
    """Why a room is left out, not here, not larger, not in the sun; at the prices of the result that it is asked of,
    where the call names none. Raises InputError for what there is not.
    """
    from optimizer.concepts.case import Case
    from optimizer.concepts.whys.ask import Asking, answer
    from optimizer.concepts.whys.context import concepts_of
    from optimizer.concepts.whys.question import Kind, Question
    from optimizer.results import read_result
    from optimizer.scenario.patch import with_seed

    kinds: dict[Kind, bool] = {
        "here": settings.at_ft is not None,
        "larger": settings.choice is not None,
        "sun": settings.in_the_sun,
    }
    kind: Kind = next((kind for kind, is_asked in kinds.items() if is_asked), "left out")
    scenario = scenario if settings.seed is None else with_seed(scenario, settings.seed)
    result = None if settings.result is None else read_result(settings.result)
    if result is not None and not settings.has_own_prices and result.scenario.currency == scenario.currency:
        scenario = replace(scenario, prices=result.scenario.prices)
    case = Case.of(scenario)
    option, known = concepts_of(case, () if result is None else result.option_set.options, settings.option)
    question = Question(kind, settings.room, settings.at_ft, settings.choice)
    asking = Asking(case, question, settings.seconds, option, known, emit)
    return answer(asking, stop=stop or threading.Event())


def improve(
    scenario: Scenario,
    sketch: str,
    *,
    seconds: float = 20.0,
    emit: Emit = to_nobody,
    stop: threading.Event | None = None,
) -> "Improvement":
    """Find the nearest layout to a sketch that keeps the rules; raises InputError where there is no such sketch."""
    from optimizer.concepts.case import Case
    from optimizer.concepts.improve.run import improve_sketch

    return improve_sketch(Case.of(scenario), sketch, seconds=seconds, stop=stop or threading.Event(), emit=emit)


def _layouts_of(result: Path | None) -> "tuple[Layout, ...]":
    """Layouts of an earlier result, to start from."""
    from optimizer.results import read_result

    return () if result is None else tuple(option.layout for option in read_result(result).option_set.options)


def _wishes_cost(case: "Case") -> list[tuple[str, str]]:
    """What all wishes cost at the least, and what has to wait where that passes the ceiling."""
    from optimizer.catalogue import affordable, existing_of

    scenario = case.scenario
    found = affordable(scenario.brief, case.rooms, case.book, existing_of(scenario.site))
    told = f"at least {found.least:,.0f} {scenario.currency} with every room at its cheapest, without ways and steps"
    if found.ceiling is None:
        return [("all wishes", told)]
    facts = [("all wishes", f"{told}; the ceiling is {found.ceiling:,.0f} {scenario.currency}")]
    if found.over:
        ways = (f"{' and '.join(names)} ({price:,.0f} {scenario.currency})" for names, price in found.without)
        advice = f"fits without {', or without '.join(ways)}" if found.without else "the required rooms alone pass it"
        facts.append(("over the ceiling", f"by {found.over:,.0f} {scenario.currency}; {advice}"))
    return facts


def _finish_levels(scenario: Scenario) -> Iterator[tuple[str, str]]:
    """Finish levels that are offered, and which of them concepts are made in."""
    from optimizer.catalogue import palette_of, price_ratio

    for level in scenario.brief.finish_levels:
        field, ratio = palette_of(level.finish).field.words, price_ratio(level.finish)
        chosen = "; concepts are made in it" if level.name == scenario.brief.finish_level else ""
        told = f"{field}; paving costs {float(ratio):g} times unit paving, worth counts {level.worth_factor:g} times"
        yield f"materials, {level.name}", told + chosen


def _paving_there(scenario: Scenario, area: Callable[[float], str]) -> Iterator[tuple[str, str]]:
    """What there is of paving, and what becomes of it."""
    from optimizer.fields.existing_paving import carrying_slabs, fall_of, paving_to

    carrying = {paving.name for paving, _ in carrying_slabs(scenario.site)}
    told = {
        "keep": "stays as it is, and ways join it",
        "lift": "is lifted",
        "reuse": "is lifted where a room stands on it, since it falls too little to carry one",
    }
    for paving in scenario.site.paving:
        ground = dict(paving_to(scenario.site, paving.then))[paving]
        fall, fate = fall_of(scenario.site, paving), told[paving.then]
        if paving.name in carrying:
            fate = "carries a paved room that lies wholly on it; elsewhere it is lifted where a room stands on it"
        falls = "" if fall is None else f", falls {fall:.1%}"
        yield paving.name, f"{paving.surface}, {area(ground.area)}{falls}; {fate}"


def site_facts(scenario: Scenario) -> tuple[tuple[str, str], ...]:
    """Label and value of what `check` says about a site."""
    from shapely import Polygon, union_all

    from optimizer.concepts.case import Case
    from optimizer.engine.problem import buildable_sqft
    from optimizer.fields import site_slopes

    unit_ft, unit = scenario.unit_ft, scenario.units
    boundary = Polygon(scenario.site.boundary)
    houses = union_all([Polygon(building.outline) for building in scenario.site.buildings])
    case = Case.of(scenario)

    def area(sqft: float) -> str:
        return f"{sqft / unit_ft**2:,.0f} sq {unit}"

    facts = [
        ("yard", area(boundary.area)),
        ("open yard", area(boundary.difference(houses).area)),
        ("buildings", ", ".join(building.name for building in scenario.site.buildings) or "none"),
        ("grid step", f"{scenario.brief.options.grid_step:.3g} {unit}"),
    ]
    facts += _wishes_cost(case)
    facts += _finish_levels(scenario)
    facts.append(("prices", scenario.book.said.removeprefix("Prices: ")))
    if scenario.site.levels:
        heights = [level.z_ft / unit_ft for level in scenario.site.levels]
        steep = site_slopes(scenario.site)
        words = f"spot levels from {min(heights):.1f} to {max(heights):.1f} {unit}; slope up to {max(steep):.1%}"
        facts.append(("ground", f"{words}, {sum(steep) / len(steep):.1%} on average"))
    facts += [(name, told) for name, told in _paving_there(scenario, area)]
    areas = dict(buildable_sqft(scenario, case.rooms))
    for room in case.rooms:
        sizes = ", ".join(
            f"{choice.label} {choice.width_ft / unit_ft:.3g} x {choice.depth_ft / unit_ft:.3g} {unit}"
            for choice in room.choices
        )
        facts.append((room.name, f"{sizes}; may stand on {area(areas[room.name])}"))
    return (*facts, *_holds(case))


def _holds(case: "Case") -> tuple[tuple[str, str], ...]:
    """What is held, and what stands against it."""
    from optimizer.concepts.held import hold_words, why_not_held

    holds = case.scenario.brief.holds
    said = tuple(("held", hold_words(case, hold)) for hold in holds)
    against = (why_not_held(case, name) for name in dict.fromkeys(hold.room for hold in holds))
    return (*said, *(("nothing fits", words) for words in against if words))


def phase_drawings(scenario: Scenario, option: "Option", *, audience: "Audience" = "designer") -> dict[int, "Drawing"]:
    """The plan of what stands after each phase of a concept, by its number."""
    from optimizer.drawing.phase_plans import phase_plans

    return phase_plans(scenario, option, audience=audience)


def future_drawings(
    scenario: Scenario, option: "Option", *, audience: "Audience" = "designer"
) -> "dict[str, Callable[[], Drawing]]":
    """What draws each future that a concept keeps room for, by its name."""
    from optimizer.concepts.future_words import futures_by_name
    from optimizer.drawing.future_plan import draw_future

    return {
        name: partial(draw_future, scenario, option, outlook, audience=audience)
        for name, outlook in futures_by_name(option).items()
    }


def plan_drawing(scenario: Scenario, option: "Option", *, audience: "Audience" = "designer") -> "Drawing":
    """The plan of one concept, ready to be written: a designer's, or an owner's without marks and dimensions."""
    from optimizer.drawing.concept_plan import draw_concept

    return draw_concept(scenario, option, audience=audience)
