"""The problem as the model counts it: an explorer over it counts what the model does, so that its tables are floors."""

from dataclasses import replace

from optimizer.brief import Relation
from optimizer.catalogue import sized_rooms
from optimizer.engine.explorer import Limits, board_of, value_of
from optimizer.engine.problem import modelled_value
from optimizer.engine.problem.modelled import modelled_problem, restricted
from optimizer.scenario import load_scenario
from tests.explored import explored, states
from tests.tiny import NAMES, every_value, tiny

LOOKS = (
    Relation(("quiet nook", "water reserve"), "in_view", wish=3),
    Relation(("gathering area", "outdoor kitchen"), "out_of_view", wish=5),
)


def test_sight_near_misses_doubts_and_odd_cents_are_left_out():
    """Of layouts of a yard that has them all."""
    plain = load_scenario("scenarios/fernhollow-court.yaml")
    scenario = replace(plain, brief=replace(plain.brief, relations=(*plain.brief.relations, *LOOKS)))
    explorer = explored(scenario, sized_rooms(scenario.brief), rebuilds=15)
    problem, limits = explorer.board.problem, Limits.of(explorer.board.problem)
    board = board_of(modelled_problem(problem))
    for state in states(explorer)[:12]:
        assert value_of(board, limits, state) == modelled_value(problem, state)
    exact = [value_of(explorer.board, limits, state) - modelled_value(problem, state) for state in states(explorer)]
    assert max(exact) > 0


def test_a_program_by_itself_counts_the_same():
    """Its rooms have its choices alone, under their own numbers; absent ones have none."""
    for name in NAMES:
        problem = tiny(name)
        for state, value in list(every_value(name).items())[::150]:
            choices = tuple(
                -1 if spot is None else problem.rooms[room].variants[spot.variant].choice
                for room, spot in enumerate(state)
            )
            part, numbers = restricted(modelled_problem(problem), choices)
            own = tuple(
                None if spot is None else replace(spot, variant=numbers[room].index(spot.variant))
                for room, spot in enumerate(state)
            )
            assert value_of(board_of(part), Limits.of(part), own) == value
            assert [len(data.variants) == 0 for data in part.rooms] == [spot is None for spot in state]
