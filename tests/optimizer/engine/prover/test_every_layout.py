"""Proofs against every layout of a grid so small that all can be tried: optimum, bounds, programs, places, polish."""

import threading
from dataclasses import replace
from importlib import import_module
from itertools import product

import numpy as np
import pytest

from optimizer.engine.explorer import Limits, board_of, value_of
from optimizer.engine.model import build_model, whole_scope
from optimizer.engine.pairs import FORBIDDEN, Gaps, Penalty
from optimizer.engine.problem import Spot, modelled_losses
from optimizer.engine.problem.arrangement import key_of
from optimizer.engine.problem.modelled import modelled_problem
from optimizer.engine.prover import BranchAndBound, Budget, anything_fits, branch_and_bound, polish, whole
from optimizer.engine.prover.incumbent import Incumbent
from optimizer.engine.prover.place_tree import PlaceTables
from optimizer.engine.prover.places import Places
from optimizer.engine.prover.programs import Program, programs
from optimizer.engine.prover.solve import Answer, Effort, SolverFault, solve
from tests.tiny import BUDGET, COLUMNS, DOUBTFUL, NAMES, ROOMS, ROWS, every_value, spots, tiny
from tests.tiny import room as tiny_room

NEVER = threading.Event()


def choices_of(problem, state):
    """The program of a state."""
    return tuple(
        -1 if spot is None else problem.rooms[room].variants[spot.variant].choice for room, spot in enumerate(state)
    )


def listed(problem):
    """All programs with their floors."""
    return list(programs(board_of(modelled_problem(problem))))


def single(problem, room, spot):
    """What the model counts of one room by itself."""
    state = tuple(spot if index == room else None for index in range(len(ROOMS)))
    named = modelled_losses(problem, state)
    others = sum(data.absent_loss for index, data in enumerate(ROOMS) if index != room)
    return named["choices"] + named["places"] + named["walking to doors"] - others


def between(problem, a, one, b, other):
    """What two variants may not or cost at every offset that the grid has."""
    pair, step = problem.pair(a, b), problem.context.lattice.step_ft
    variants = problem.rooms[a].variants[one], problem.rooms[b].variants[other]
    gaps = Gaps(*variants, np.arange(-COLUMNS, COLUMNS + 1), np.arange(-ROWS, ROWS + 1), step)
    stamps = [Penalty("contact", pair.contact), *(stamp for stamp in pair.stamps if stamp.in_model)]
    return sum(stamp.cents(gaps) for stamp in stamps)


@pytest.mark.parametrize("name", NAMES)
def test_one_model_has_the_least_of_all(name):
    """The whole model in one piece."""
    problem = tiny(name)
    answer = solve(build_model(problem, whole_scope(problem)), Effort())
    assert (answer.verdict, answer.objective) == ("optimal", min(every_value(name).values()))


@pytest.mark.parametrize("way", ["blocks", "split", "dense"])
@pytest.mark.parametrize("name", NAMES)
def test_the_proof_finds_the_least_of_all(name, way, monkeypatch):
    """From horizon to horizon; where every block is split until each room is held; and with all looked at from the start
    in one model. At no time is the bound above the optimum, and in the end it is the optimum.
    """
    values, bounds, held, real = every_value(name), [], set(), BranchAndBound._ask

    def ask(self, block, limit, slice_s):
        bounds.append(self.proof.bound)
        held.add(len(block.leaves[0].held))
        is_split = way == "split" and (len(block.leaves) > 1 or block.leaves[0].others)
        return Answer("undecided", None, None, None) if is_split else real(self, block, limit, slice_s)

    monkeypatch.setattr(BranchAndBound, "_ask", ask)
    monkeypatch.setattr(branch_and_bound, "is_dense", lambda *_: way == "dense")
    monkeypatch.setattr(branch_and_bound, "best_of_program", lambda *_, **__: Incumbent())
    monkeypatch.setattr(PlaceTables, "of", lambda *_: None)
    proof = BranchAndBound(tiny(name, guide=DOUBTFUL), Budget(NEVER)).run()
    optimum = min(values.values())
    assert (proof.objective, proof.bound, values[proof.state]) == (optimum, optimum, optimum)
    assert proof.is_proven
    assert bounds == sorted(bounds)
    assert max(bounds) <= optimum
    assert max(held) == (len(ROOMS) if way == "split" else 1)


@pytest.mark.parametrize("workers", [1, 4])
@pytest.mark.parametrize("dense", [False, True])
@pytest.mark.parametrize("name", NAMES)
def test_what_runs_out_of_time_is_asked_again(name, dense, workers, monkeypatch):
    """Of several blocks asked at once the first finds a layout and the others nothing in time: those whose floors lie above
    that layout are done with.
    """
    values, asked, real = every_value(name), [], BranchAndBound._ask

    def ask(self, block, limit, slice_s):
        asked.append(block)
        is_late = len(asked) > 1 and not (block.tries or block.level)
        return Answer("undecided", None, None, 0, 0.5) if is_late else real(self, block, limit, slice_s)

    monkeypatch.setattr(BranchAndBound, "_ask", ask)
    monkeypatch.setattr(branch_and_bound, "is_dense", lambda *_: dense)
    monkeypatch.setattr(branch_and_bound, "best_of_program", lambda *_, **__: Incumbent())
    monkeypatch.setattr(PlaceTables, "of", lambda *_: None)
    proof = BranchAndBound(tiny(name), Budget(NEVER, workers=workers)).run()
    assert (proof.objective, proof.bound) == (min(values.values()),) * 2


def test_a_layout_offered_while_programs_are_listed_is_taken(monkeypatch):
    """Also where the list is cut off at once, so that nothing can be opened."""
    problem = tiny("wishes")
    state = next(iter(every_value("wishes")))
    search = BranchAndBound(problem, Budget(NEVER))

    def listing(_board):
        search.offer(state)
        yield Program(100, ())

    monkeypatch.setattr(branch_and_bound, "programs", listing)
    proof = search.run()
    assert (proof.state, proof.bound) == (state, 100)


def test_a_layout_below_what_was_proven_is_a_fault(monkeypatch):
    """Wherever the proof finds it: what lies below its bound was said not to be."""
    search = BranchAndBound(tiny("trips"), Budget(NEVER))
    search.proof = replace(search.proof, bound=10**9)
    with pytest.raises(SolverFault, match="a bound says"):
        search._better(next(iter(every_value("trips"))))


@pytest.mark.parametrize("name", NAMES)
def test_an_open_proof_says_so(name, monkeypatch):
    """With a layout offered and every block left undecided, the least bound of what is open stands below it."""
    values, stop = every_value(name), threading.Event()

    def ask(self, block, limit, slice_s):
        stop.set()
        return Answer("undecided", None, None, None)

    monkeypatch.setattr(BranchAndBound, "_ask", ask)
    monkeypatch.setattr(branch_and_bound, "best_of_program", lambda *_, **__: Incumbent())
    search = BranchAndBound(tiny(name), Budget(stop))
    search.offer(max(values, key=values.__getitem__))
    proof = search.run()
    assert 0 < proof.bound <= min(values.values()) < proof.objective == max(values.values())
    assert not proof.is_proven


@pytest.mark.parametrize("name", NAMES)
def test_every_program_is_listed_once(name):
    """Exactly those that keep the budget, at least what each room costs by itself and each two rooms each other."""
    problem = tiny(name, guide=DOUBTFUL)
    found = {program.choices: program.floor for program in listed(problem)}
    use = [
        {-1: 0, **{variant.choice: cents for variant, cents in zip(data.variants, own, strict=True)}}
        for data, own in zip(ROOMS, BUDGET.uses, strict=True)
    ]
    every = product(*([c for c in own if c >= 0 or not data.required] for own, data in zip(use, ROOMS, strict=True)))
    floors = {c: floor_by_hand(problem, c) for c in every if sum(use[i][x] for i, x in enumerate(c)) <= BUDGET.most}
    assert found == {choices: floor for choices, floor in floors.items() if floor < FORBIDDEN}
    assert list(found.values()) == sorted(found.values())
    for state, value in every_value(name).items():
        assert value >= found[choices_of(problem, state)]


def floor_by_hand(problem, choices):
    """Least of every room by itself and of each two rooms."""
    variants = [
        [v for v, variant in enumerate(data.variants) if variant.choice == choice]
        for data, choice in zip(problem.rooms, choices, strict=True)
    ]
    own = (
        min(single(problem, room, s) for s in spots(data) if s is not None and s.variant in variants[room])
        if variants[room]
        else data.absent_loss
        for room, data in enumerate(problem.rooms)
    )
    pairs = (
        min(int(between(problem, p.first, v, p.second, w).min()) for v in variants[p.first] for w in variants[p.second])
        for p in problem.pairs
        if variants[p.first] and variants[p.second]
    )
    return sum(own) + sum(pairs)


def test_needs_are_programs_too():
    """Of what is needed at least: programs that cannot give it are not listed, whatever else they cost."""
    need = replace(BUDGET, rule="party_seats", least=8, most=None)
    found = {program.choices for program in listed(tiny("trips", amounts=(need,)))}
    assert found == {(0, x, y) for x in (-1, 0, 1) for y in (-1, 0, 1) if 4 + (0, 5, 3)[x + 1] + (0, 4, 2)[y + 1] >= 8}


def test_what_is_not_listed_bounds_the_rest(monkeypatch):
    """Of a list that is cut off the last program is none, its floor below all that were left out; a proof over it ends,
    and claims no more than that floor.
    """
    from optimizer.engine.prover import programs as module

    problem = tiny("trips")
    every = [program.floor for program in listed(problem)]
    monkeypatch.setattr(module, "MOST_OPEN", 2)
    cut = listed(problem)
    assert cut[-1].choices == ()
    assert cut[-1].floor <= every[len(cut) - 1]
    proof = BranchAndBound(problem, Budget(NEVER, work_s=5.0)).run()
    assert proof.bound <= min(every_value("trips").values())


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("beyond", [1, 40, 10**6])
def test_places_of_something_better_stay_open(name, beyond):
    """Of every layout below the limit all places stay open, in a leaf whose floor is no more than it counts."""
    problem, values = tiny(name, guide=DOUBTFUL), every_value(name)
    modelled, limit = modelled_problem(problem), min(values.values()) + beyond
    for choices in {choices_of(problem, state) for state in values}:
        places = Places(modelled, Program(0, choices))
        leaves = places.leaves(limit)
        masks, room = places.masks(problem, leaves), leaves[0].held[0][0] if leaves else -1
        floors = {(places.numbers[room][leaf.last.variant], leaf.last.x, leaf.last.y): leaf for leaf in leaves}
        assert len(floors) == len(leaves)
        assert [leaf.floor for leaf in leaves] == sorted(leaf.floor for leaf in leaves)
        for state, value in values.items():
            if value < limit and choices_of(problem, state) == choices:
                main = state[room]
                assert floors[main.variant, main.x, main.y].floor <= value
                for other, spot in enumerate(state):
                    assert spot is None or masks[other][spot.variant][spot.y, spot.x]
        if beyond == 10**6:
            for (v, x, y), leaf in list(floors.items())[::7]:
                assert leaf.floor == leaf_by_hand(problem, choices, room, Spot(v, x, y))


def leaf_by_hand(problem, choices, main, at):
    """Least with the main room at a spot: of every other room its least with what it costs and may not beside it."""
    total = single(problem, main, at)
    for room, (data, choice) in enumerate(zip(problem.rooms, choices, strict=True)):
        if room != main and choice < 0:
            total += data.absent_loss
        elif room != main:
            own = [s for s in spots(data) if s is not None and data.variants[s.variant].choice == choice]
            total += min(single(problem, room, s) + beside(problem, main, at, room, s) for s in own)
    return total


def beside(problem, main, at, room, spot):
    """What two rooms at their spots cost each other."""
    (a, one), (b, other) = sorted([(main, at), (room, spot)], key=lambda entry: entry[0])
    return int(between(problem, a, one.variant, b, other.variant)[one.y - other.y + ROWS, one.x - other.x + COLUMNS])


@pytest.mark.parametrize("name", NAMES)
def test_polish_has_the_least_of_its_arrangement(name):
    """The bound of an arrangement is its least; what is kept is no worse by the explorer's count, and proven only where
    it is that least.
    """
    problem, values = tiny(name), every_value(name)
    board, limits = board_of(problem), Limits.of(problem)
    by_key: dict = {}
    for state in values:
        by_key.setdefault(key_of(problem, state), []).append(state)
    # The best by the explorer's count, which has near misses and every cent of a place, and any other one.
    tried = [min(own, key=lambda state: value_of(board, limits, state)) for own in list(by_key.values())[::4]]
    tried += list(values)[:: len(values) // 12]
    verdicts = set()
    for state in tried:
        proof = polish(board, state, stop=NEVER)
        known = min(values[other] for other in by_key[key_of(problem, state)])
        assert key_of(problem, proof.state) == key_of(problem, state)
        assert value_of(board, limits, proof.state) <= value_of(board, limits, state)
        assert (proof.bound, proof.objective) == (known, values[proof.state])
        assert proof.is_proven == (proof.objective == known)
        verdicts.add(proof.is_proven)
    assert False in verdicts or name != "wishes"


def test_polish_keeps_to_what_can_be_walked(monkeypatch):
    """Where the solver's layout cannot be walked the layout stays as it was, with the bound of its arrangement."""
    problem, values = tiny("trips"), every_value("trips")
    state = max(values, key=values.__getitem__)
    assert polish(board_of(problem), state, stop=NEVER).state != state
    monkeypatch.setattr(
        import_module("optimizer.engine.prover.polish"), "is_connected", lambda _problem, found: found == state
    )
    proof = polish(board_of(problem), state, stop=NEVER)
    assert proof.state == state
    assert 0 < proof.bound < proof.objective == values[state]


def test_a_bound_above_what_a_layout_counts_is_a_fault(monkeypatch):
    """Also where the layout is given up for one that the explorer counts as better and the model does not."""
    problem, values = tiny("wishes"), every_value("wishes")
    board, limits = board_of(problem), Limits.of(problem)
    by_key: dict = {}
    for state in values:
        by_key.setdefault(key_of(problem, state), []).append((value_of(board, limits, state), values[state], state))
    own = next(own for own in by_key.values() if min(own)[1] > min(value for _, value, _ in own))
    _, above, best = min(own)
    state = min(own, key=lambda entry: entry[1])[2]
    lying = Answer("optimal", best, above, above)
    monkeypatch.setattr(import_module("optimizer.engine.prover.polish"), "solve", lambda *_, **__: lying)
    with pytest.raises(SolverFault, match="a bound of"):
        polish(board, state, stop=NEVER)


@pytest.mark.parametrize("required", [False, True])
def test_a_room_without_a_size(required):
    """None of its choices is a room: it is left out where it may be, else nothing fits."""
    lacking = tiny_room("nook", (), (), 130, required=required)
    budget = replace(BUDGET, uses=(*BUDGET.uses[:2], ()))
    problem = tiny("trips", rooms=(*ROOMS[:2], lacking), amounts=(budget,))
    answer, proof = anything_fits(problem, seconds=10.0, stop=NEVER), BranchAndBound(problem, Budget(NEVER)).run()
    if required:
        assert (answer.verdict, proof.state, proof.is_proven) == ("infeasible", None, False)
        return
    assert answer.state is not None
    assert proof.objective == min(value for state, value in every_value("trips").items() if state[2] is None)


@pytest.mark.parametrize(("words", "said"), [
    (("infeasible", "infeasible"), "infeasible"),
    (("infeasible", "feasible"), "undecided"),
    (("infeasible", "undecided"), "undecided"),
    (("undecided",), "undecided"),
    (("optimal",), "optimal"),
])  # fmt: skip
def test_that_nothing_fits_is_said_twice(words, said, monkeypatch):
    """One solve's word is not believed, and two that contradict each other say nothing."""
    left = list(words)
    efforts = []

    def solved(_built, effort, *, stop):
        efforts.append(effort)
        return Answer(left.pop(0), None, None, None)

    monkeypatch.setattr(whole, "solve", solved)
    assert anything_fits(tiny("trips"), seconds=1.0, stop=NEVER).verdict == said
    assert left == []
    assert len({(effort.seed, effort.presolve) for effort in efforts}) == len(words)


def test_nothing_fits_where_the_money_is_short():
    """A ceiling below the table alone: no layout, and both solves say so."""
    short = replace(BUDGET, most=3)
    assert anything_fits(tiny("trips", amounts=(short,)), seconds=10.0, stop=NEVER).verdict == "infeasible"
    enough = anything_fits(tiny("trips", amounts=(replace(BUDGET, most=4),)), seconds=10.0, stop=NEVER)
    assert enough.state is not None
    assert enough.state[1:] == (None, None)
