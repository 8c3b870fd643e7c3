"""Worths asked in pairs: every answer is kept, contradictions are true circles, and few questions are enough."""

from itertools import combinations
from math import log

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from optimizer.brief import Brief, Choice, Guests, RoomWish
from optimizer.worths import Answer, Thing, contradiction, decided, fitted, most_useful, things_of, without
from optimizer.worths.answers import MUCH_RATHER, RATHER, SAME
from optimizer.worths.asking import CLOSE
from optimizer.worths.sizes import asks_of_sizes

BRIEF = Brief(
    Guests(4, 12),
    (
        RoomWish("table", "gathering", choices=(Choice("six", 14, 12, 6, 6.0), Choice("eight", 16, 13, 8, 9.0))),
        RoomWish("kitchen", "kitchen", worth=8.0),
        RoomWish("fire", "fire", worth=8.0),
        RoomWish("nook", "nook"),
    ),
)
THINGS = things_of(BRIEF)
SIX, EIGHT, KITCHEN, FIRE, NOOK = (thing.name for thing in THINGS)
STEP = 1.06
"""Hidden worths are powers of this."""


def answered(one, other, hidden):
    """What an owner of these hidden worths says of a pair, or None where it lies between two answers."""
    ratio = hidden[one] / hidden[other]
    if max(ratio, 1 / ratio) < SAME / 1.02:
        return Answer(one, other, "same")
    if max(ratio, 1 / ratio) < RATHER * 1.02:
        return None
    much = "much_" if max(ratio, 1 / ratio) > MUCH_RATHER * 1.02 else ""
    return Answer(one, other, f"{much}one" if ratio > 1 else f"{much}other")


def is_kept(answer, worths):
    """Whether worths by name say what an answer says."""
    ratio = worths[answer.one] / worths[answer.other]
    least = {"much_one": MUCH_RATHER, "one": RATHER, "same": 1 / SAME}
    turned = {"other": RATHER, "much_other": MUCH_RATHER}
    if answer.how == "same":
        return 1 / SAME <= ratio <= SAME
    return ratio >= least[answer.how] if answer.how in least else 1 / ratio >= turned[answer.how]


@st.composite
def owners(draw):
    """Things of two to five rooms of one to three sizes, and what their owner would really give for each."""
    things, hidden = [], {}
    for room in range(draw(st.integers(2, 5))):
        sizes = draw(st.integers(1, 3))
        worths = sorted(draw(st.lists(st.sampled_from([3.0, 5.0, 6.0, 8.0, 9.0]), min_size=sizes, max_size=sizes)))
        rises = sorted(draw(st.lists(st.integers(0, 9), min_size=sizes, max_size=sizes)))
        base = draw(st.integers(0, 25))
        for size, (worth, rise) in enumerate(zip(worths, rises, strict=True)):
            things.append(Thing(f"room {room}", f"size {size}", worth, (room, size)))
            hidden[things[-1].name] = STEP ** (base + rise + size)
    return tuple(things), hidden


def all_answers(things, hidden):
    """Answers of an owner to every pair of two rooms that has one."""
    pairs = combinations(things, 2)
    said = [answered(one.name, other.name, hidden) for one, other in pairs if one.room != other.room]
    return tuple(answer for answer in said if answer is not None)


def by_name(things, worths):
    """Worths by the name of the thing."""
    return dict(zip((thing.name for thing in things), worths, strict=True))


def test_each_room_is_asked_about_at_each_size_with_a_worth_of_its_own():
    """Written sizes by themselves, a room that the catalogue sizes once; where nothing is said, the usual worth."""
    assert (SIX, KITCHEN) == ("table (six)", "kitchen")
    assert [thing.worth for thing in THINGS] == [6, 9, 8, 8, 5]
    assert THINGS[1].path == ("brief", "rooms", 0, "choices", 1, "worth")
    assert THINGS[2].path == ("brief", "rooms", 1, "worth")


def test_without_answers_nothing_changes():
    """Nor with answers that today's worths keep, nor with one about a size that is gone."""
    today = tuple(thing.worth for thing in THINGS)
    assert fitted(THINGS, ()) == today
    assert fitted(THINGS, (Answer(KITCHEN, FIRE, "same"), Answer(EIGHT, NOOK, "one"))) == today
    assert fitted(THINGS, (Answer("pond (large)", FIRE, "much_one"),)) == today


def test_an_answer_moves_both_alike_and_leaves_the_rest():
    """Twice as much: each goes half of the way, as ratios go, and what nobody asked about stays."""
    worths = by_name(THINGS, fitted(THINGS, (Answer(KITCHEN, FIRE, "much_one"),)))
    assert worths[KITCHEN] == pytest.approx(8 * 2**0.5, rel=0.01)
    assert worths[FIRE] == pytest.approx(8 / 2**0.5, rel=0.01)
    assert [worths[name] for name in (SIX, EIGHT, NOOK)] == [6, 9, 5]


def test_sizes_of_a_room_move_together():
    """A table for eight that is missed less takes the smaller one with it and stays worth more than it."""
    worths = by_name(THINGS, fitted(THINGS, (Answer(FIRE, EIGHT, "much_one"),)))
    assert worths[EIGHT] < 9
    assert worths[SIX] < 5
    assert worths[EIGHT] > worths[SIX]


def test_a_larger_size_stays_worth_more():
    """Also where what is said of the two sizes pulls them past each other."""
    worths = by_name(THINGS, fitted(THINGS, (Answer(SIX, KITCHEN, "much_one"), Answer(FIRE, EIGHT, "one"))))
    assert worths[EIGHT] >= 1.04 * worths[SIX]


def test_what_no_answer_touches_stays_as_written():
    """To the last digit, and two sizes that are worth the same too."""
    things = (*THINGS, Thing("store", "small", 7.1253, ()), Thing("store", "large", 7.1253, ()))
    assert fitted(things, (Answer(KITCHEN, FIRE, "one"),))[-2:] == (7.1253, 7.1253)


def test_what_is_worth_nothing_can_become_worth_something():
    """Also where no wish has any worth yet."""
    things = (Thing("a", "x", 0.0, ()), Thing("b", "y", 0.0, ()))
    one, other = fitted(things, (Answer("a (x)", "b (y)", "one"),))
    assert one >= RATHER * other > 0
    ten, nothing = fitted((Thing("a", "x", 10.0, ()), Thing("b", "y", 0.0, ())), (Answer("a (x)", "b (y)", "same"),))
    assert ten > nothing > 1


@settings(max_examples=60, deadline=None)
@given(owners())
def test_consistent_answers_are_all_kept(owner):
    """And the sizes of a room stay in their order."""
    things, hidden = owner
    answers = all_answers(things, hidden)
    worths = by_name(things, fitted(things, answers))
    assert not [answer for answer in answers if not is_kept(answer, worths)]
    assert all(worths[ask.more] >= worths[ask.less] for ask in asks_of_sizes(things))


@settings(max_examples=60, deadline=None)
@given(owners(), st.data())
def test_a_contradiction_is_a_circle_of_which_none_can_be_dropped(owner, data):
    """One answer the wrong way round: what is named is a circle, and holds together without any one of it."""
    things, hidden = owner
    answers = [answer for answer in all_answers(things, hidden) if answer.how != "same"]
    if not answers:
        return
    wrong = data.draw(st.sampled_from(answers))
    turned = Answer(wrong.other, wrong.one, wrong.how)
    said = (*without(answers, wrong.pair), turned)
    found = contradiction(things, said)
    if found is None:
        worths = by_name(things, fitted(things, said))
        assert all(is_kept(answer, worths) for answer in said)
        return
    assert fitted(things, said) is None
    assert turned in found.answers
    assert all(ask.less == after.more for ask, after in zip(found.asks, (*found.asks[1:], found.asks[0]), strict=True))
    assert sum(ask.least for ask in found.asks) > 0
    for answer in found.answers:
        assert contradiction(things, without(found.answers, answer.pair)) is None


def test_the_fewest_answers_are_named():
    """A circle of three beside one of four: the three, in words that lead round."""
    circle = (Answer(KITCHEN, FIRE, "one"), Answer(NOOK, FIRE, "other"), Answer(NOOK, KITCHEN, "much_one"))
    longer = (Answer(FIRE, EIGHT, "one"), Answer(EIGHT, NOOK, "one"))
    found = contradiction(THINGS, (*longer, *circle))
    assert set(found.answers) == set(circle)
    assert f"rather {KITCHEN} than {FIRE}" in found.words
    assert f"much rather {NOOK} than {KITCHEN}" in found.words


@pytest.mark.parametrize("turn", [1, -1])
def test_of_two_ways_round_the_steeper_counts(turn):
    """Three answers of which one says 1.3 times can hold; three of which one says twice cannot, in whichever order."""
    flat, steep = Answer(KITCHEN, EIGHT, "one"), Answer(KITCHEN, FIRE, "much_one")
    back = Answer(EIGHT, NOOK, "same"), Answer(FIRE, NOOK, "same"), Answer(NOOK, KITCHEN, "same")
    assert contradiction(THINGS, (flat, back[0], back[2])) is None
    found = contradiction(THINGS, (flat, steep, *back)[::turn])
    assert set(found.answers) == {steep, back[1], back[2]}


def test_of_several_ways_round_the_steeper_counts_wherever_it_is_begun():
    """Two forks one after the other: of the four ways round only that of both steeper arms rises."""
    things = tuple(Thing(name, "one size", 5.0, (name,)) for name in "abcdef")
    a, steep, flat, d, up, even = (thing.name for thing in things)
    rises = (Answer(a, steep, "one"), Answer(steep, d, "same"), Answer(d, up, "one"), Answer(up, a, "same"))
    others = (Answer(a, flat, "same"), Answer(flat, d, "same"), Answer(d, even, "same"), Answer(even, a, "same"))
    found = contradiction(things, (*rises, *others))
    assert set(found.answers) == set(rises)


def test_a_circle_that_hardly_rises_is_a_contradiction():
    """By hand: 2 log 1.3 - 3 log 1.2 is -0.022, and five answers of worths in three digits take 0.060 of it, so that 0.038
    is left; a fourth time the same is enough.
    """
    *first, last = (Thing(name, "one size", 5.0, (name,)) for name in "abcdef")
    names = [thing.name for thing in first]
    rather = [Answer(names[0], names[1], "one"), Answer(names[1], names[2], "one")]
    same = [Answer(names[2], names[3], "same"), Answer(names[3], names[4], "same")]
    tight = (*rather, *same, Answer(names[4], names[0], "same"))
    assert set(contradiction(first, tight).answers) == set(tight)
    loose = (*rather, *same, Answer(names[4], last.name, "same"), Answer(last.name, names[0], "same"))
    assert fitted((*first, last), loose) is not None


def test_the_order_of_sizes_takes_part():
    """Rather the smaller table than the fire, and the fire than the larger table: the file's own order is named too."""
    found = contradiction(THINGS, (Answer(SIX, FIRE, "one"), Answer(FIRE, EIGHT, "one")))
    assert len(found.answers) == 2
    assert f"{EIGHT} is worth no less than {SIX}, as your file has it" in found.words


def test_what_follows_needs_no_question():
    """A over B and B over C: A over C is decided, and is not asked."""
    assert decided(THINGS, ()) == (0, 9)
    chain = (Answer(KITCHEN, FIRE, "one"), Answer(FIRE, NOOK, "one"))
    assert decided(THINGS, chain) == (3, 9)
    assert most_useful(THINGS, ()) == (THINGS[2], THINGS[3])
    assert {thing.name for thing in most_useful(THINGS, chain)} != {KITCHEN, NOOK}
    assert most_useful(THINGS, (*chain, Answer(NOOK, KITCHEN, "one"))) is None
    assert decided(THINGS, (Answer(SIX, FIRE, "one"),)) == (2, 9)  # the larger table too
    alike = (Answer(FIRE, KITCHEN, "same"), Answer(KITCHEN, EIGHT, "same"), Answer(EIGHT, NOOK, "same"))
    assert SIX in {thing.name for thing in most_useful(THINGS, alike)}  # nothing is known of it


@settings(max_examples=30, deadline=None)
@given(owners())
def test_asking_ends_with_the_owners_order(owner):
    """Questions never repeat; at the end whatever is decided is decided as the owner would."""
    things, hidden = owner
    answers, asked = [], set()
    while (pair := most_useful(things, answers)) is not None:
        one, other = (thing.name for thing in pair)
        assert frozenset((one, other)) not in asked
        asked.add(frozenset((one, other)))
        answers.append(answered(one, other, hidden) or Answer(one, other, "same"))
        if contradiction(things, answers):
            return  # what lies between two answers was called the same
    worths = by_name(things, fitted(things, answers))
    assert all(
        worths[one.name] > worths[other.name]
        for one, other in combinations(things, 2)
        if one.room != other.room and log(hidden[one.name]) > log(hidden[other.name]) + CLOSE
    )
