"""People of a party are neither lost nor made, whoever is where and whoever walks."""

from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from optimizer.appraisal.party.moves import chain, loads, moves
from optimizer.appraisal.party.places import ELSEWHERE, Room, apportioned, people_by_phase, spilled
from optimizer.catalogue import Holds, party_phases

KINDS = ("gathering", "kitchen", "fire", "nook", "arrival", "lawn")
NAMES = st.sampled_from("abcdef")
counts = st.dictionaries(NAMES, st.integers(0, 30), min_size=1)
rooms = st.lists(st.tuples(st.sampled_from(KINDS), st.integers(0, 16), st.floats(0, 400)), min_size=0, max_size=6).map(
    lambda found: [Room(f"{kind} {i}", kind, Holds(0, seats, ground)) for i, (kind, seats, ground) in enumerate(found)]
)


@st.composite
def yards(draw):
    """Places joined by ways of some length, the same both ways; not all need be joined."""
    links = {}
    for one, other, length in draw(st.lists(st.tuples(NAMES, NAMES, st.floats(1, 90)), max_size=9)):
        links.setdefault(one, {})[other] = length
        links.setdefault(other, {})[one] = length
    return links


@settings(max_examples=200, deadline=None, derandomize=True)
@given(st.integers(0, 60), rooms)
def test_every_phase_has_the_whole_party(party, placed):
    """The sum over places is the party, and no room has more people than it holds."""
    phases = people_by_phase(party, placed, party_phases(), entrance="gate")
    assert [phase.name for phase in phases] == [phase.name for phase in party_phases()]
    most = {room.name: room.most for room in placed}
    for phase in phases:
        people = dict(phase.people)
        assert sum(people.values()) == party
        assert all(count > 0 for count in people.values())
        assert all(people.get(name, 0) <= holds for name, holds in most.items())


@settings(max_examples=200, deadline=None, derandomize=True)
@given(st.integers(0, 500), st.dictionaries(NAMES, st.floats(0.01, 90), min_size=1))
def test_whole_people_in_the_ratio_of_the_shares(count, shares):
    """They add up, and nobody is more than one person off the exact share."""
    found, total = apportioned(count, shares), sum(shares.values())
    assert sum(found.values()) == count
    assert all(abs(found[name] - count * share / total) < 1 + 1e-9 for name, share in shares.items())


@settings(max_examples=200, deadline=None, derandomize=True)
@given(counts, counts)
def test_who_finds_a_room_full_is_still_somewhere(people, most):
    """As many after as before, in no room more than it holds, and elsewhere only where all rooms are full."""
    found = spilled(people, most)
    assert sum(found.values()) == sum(people.values())
    assert all(found[name] <= holds for name, holds in most.items())
    assert not found[ELSEWHERE] or all(found[name] == holds for name, holds in most.items())


@settings(max_examples=200, deadline=None, derandomize=True)
@given(counts, counts, yards())
def test_who_leaves_one_place_comes_to_another(before, after, links):
    """Moves turn one phase into the next, person by person, and nobody walks who may stay."""
    people = min(sum(before.values()), sum(after.values()))
    before, after = apportioned(people, plus_one(before)), apportioned(people, plus_one(after))
    found = moves(before, after, links)
    for name in before.keys() | after.keys():
        left = sum(move.people for move in found if move.start == name)
        came = sum(move.people for move in found if move.end == name)
        assert before.get(name, 0) - left + came == after.get(name, 0)
        assert left == 0 or came == 0
    staying = sum(min(count, after.get(name, 0)) for name, count in before.items())
    assert staying + sum(move.people for move in found) == people


@settings(max_examples=200, deadline=None, derandomize=True)
@given(counts, counts, yards())
def test_links_bear_the_people_who_walk_on_them(before, after, links):
    """The load of all links is, for each move whose ends are joined, its people on every link of its walk."""
    people = min(sum(before.values()), sum(after.values()))
    found = moves(apportioned(people, plus_one(before)), apportioned(people, plus_one(after)), links)
    walked = [(chain(links, move.start, move.end), move) for move in found]
    for places, move in walked:
        assert not places or (places[0], places[-1]) == (move.start, move.end)
        assert all(after in links[before] for before, after in pairwise(places))
    assert sum(loads(found, links).values()) == sum(move.people * max(0, len(p) - 1) for p, move in walked)


def plus_one(shares):
    return {name: share + 1 for name, share in shares.items()}
