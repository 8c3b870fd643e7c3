"""Ranking: copies are one concept, half of the places for every room, and what differs clearly first."""

from dataclasses import replace

from optimizer.concepts.option import Idea, LeftOut
from optimizer.concepts.ranking import LEAST_DIFFERENCE, Comparison, in_words, is_same, ranked
from optimizer.layout import Layout, Placement, difference
from tests.sample_run import sample_option


class Nobody:
    """Says nothing of any concept."""

    def reason(self, option, first):
        return ""

    def difference(self, one, other):
        return ""


NOBODY = Nobody()


def at(x, y=0.0):
    """A layout of two rooms, the second at (x, y)."""
    return Layout((Placement("a", "one", 0, 0, 10, 10, "+y"), Placement("b", "one", x, y, 10, 10, "+y")))


def test_a_shifted_copy_is_the_same():
    """The same sides and a shift of a few feet are one concept; another side, or a long way, is another."""
    assert is_same(at(20), at(24), diagonal_ft=100)
    assert not is_same(at(20), at(40), diagonal_ft=100)
    assert not is_same(at(20), at(0, 20), diagonal_ft=100)


def option(score, layout, *, lacks=(), idea=None):
    """A concept with a score, where it stands, what it does without and its idea."""
    left_out = tuple(LeftOut(room, "") for room in lacks)
    named = Idea(idea, "") if idea else None
    return replace(sample_option(), id="", score=score, layout=layout, left_out=left_out, idea=named)


def ranked_by_score(options, count, **how):
    """Scores of the concepts that are shown, in their order."""
    comparison = Comparison(100, **how)
    shown = in_words(ranked(options, count=count, comparison=comparison), comparison, NOBODY)
    assert [one.rank for one in shown] == list(range(1, len(shown) + 1))
    return [one.score for one in shown]


def test_copies_of_a_better_one_are_dropped():
    """However many places there are."""
    assert ranked_by_score([option(2, at(24)), option(1, at(20)), option(3, at(60))], 9) == [1, 3]


def test_half_of_the_places_are_for_every_room():
    """Though better ones lack a room; where too few have every room, others take the places."""
    whole = [option(50 + n, at(20 + 20 * n)) for n in range(4)]
    part = [option(n, at(20, 20 + 20 * n), lacks=("c",)) for n in range(4)]
    assert ranked_by_score([*whole, *part], 4) == [0, 1, 50, 51]
    assert ranked_by_score([whole[0], *part], 4) == [0, 1, 2, 50]
    assert ranked_by_score(part, 4) == [0, 1, 2, 3]


def test_what_differs_clearly_comes_before_what_is_closer():
    """The second best is close to the best, the third is another idea: with two places the third is shown."""
    best, close, idea = at(20), at(36), at(0, 40)
    assert (
        0 < difference(best, close, diagonal_ft=100) < 2 * LEAST_DIFFERENCE <= difference(best, idea, diagonal_ft=100)
    )
    options = [option(1, best), option(2, close), option(3, idea)]
    assert ranked_by_score(options, 2) == [1, 3]
    assert ranked_by_score(options, 3) == [1, 2, 3]


def test_layouts_are_compared_in_their_pose():
    """Two layouts that differ on the plan and not in the pose are one concept."""
    options = [option(1, at(20)), option(2, at(60))]
    assert ranked_by_score(options, 2) == [1, 2]
    assert ranked_by_score(options, 2, posed=lambda _layout: at(20)) == [1]


def test_each_is_told_from_the_nearest_better_one():
    """The first from none; the third from the one that it is most like."""
    options = [option(1, at(20)), option(2, at(0, 60)), option(3, at(36))]
    shown = in_words(options, Comparison(100), NOBODY)
    assert shown[0].differs_by is None
    assert shown[2].differs_by.value == round(difference(at(36), at(20), diagonal_ft=100), 3)
    assert shown[1].differs_by.value > shown[2].differs_by.value


def test_every_wished_room_leads_while_it_is_near_the_best():
    """Within 10 % the best with every room comes first and the best with one wish fewer second; then by score."""
    two, one, whole = (
        option(100, at(20), lacks=("c", "d")),
        option(104, at(0, 40), lacks=("c",)),
        option(110, at(60)),
    )
    assert ranked_by_score([two, one, whole], 3) == [110, 104, 100]
    assert ranked_by_score([two, one, replace(whole, score=110.1)], 3) == [100, 104, 110.1]
    assert ranked_by_score([two, replace(one, score=120), whole], 3) == [110, 100, 120]


def test_other_ideas_come_second_and_third():
    """However many better ones of the first's idea there are, and though places are few."""
    court = [option(100 + n, at(20 + 20 * n), idea="court") for n in range(5)]
    others = [option(108, at(0, 40), idea="roof"), option(109, at(0, -40), idea="garden")]
    assert ranked_by_score([*court, *others], 4)[:3] == [100, 108, 109]
    assert ranked_by_score([*court, *others], 2) == [100, 108]
    far = [replace(others[0], score=110.1), others[1]]
    assert ranked_by_score([*court, *far], 4)[:2] == [100, 109]


def test_an_idea_that_looks_like_the_first_does_not_lead():
    """One that hardly differs from a leading one is passed over; the next of its idea, or another idea, leads."""
    first, close, clear = option(100, at(20), idea="court"), at(23), at(0, 40)
    assert difference(first.layout, close, diagonal_ft=100) < LEAST_DIFFERENCE
    options = [first, option(101, at(60), idea="court"), option(102, close, idea="roof")]
    assert ranked_by_score(options, 3) == [100, 101]
    assert ranked_by_score([*options, option(105, clear, idea="roof")], 3) == [100, 105, 101]


def test_what_hardly_differs_is_not_shown():
    """Rather fewer concepts than asked for than one that is drawn a little differently."""
    best, close = at(20), Layout((*at(20).placements[:1], replace(at(20).placements[1], choice="two")))
    assert 0 < difference(best, close, diagonal_ft=100) < LEAST_DIFFERENCE
    assert ranked_by_score([option(1, best), option(2, close)], 9) == [1]


def test_every_idea_is_shown_before_one_twice():
    """With every room, also where it is far from the best."""
    court = [option(100 + n, at(20 + 30 * n), idea="court") for n in range(4)]
    others = [
        option(150, at(140), idea="roof"),
        option(160, at(20, 40), idea="court"),
        option(170, at(170), idea="row"),
    ]
    assert ranked_by_score([*court, *others], 6) == [100, 101, 102, 150, 160, 170]
    assert 150 not in ranked_by_score([*court, replace(others[0], idea=None), *others[1:]], 4)
    lacking = replace(others[2], left_out=(LeftOut("c", ""),))
    assert ranked_by_score([*court, *others[:2], lacking], 4) == [100, 150, 160, 170]
