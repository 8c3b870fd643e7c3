"""Questions about a room: which are offered, and how the command is asked the same."""

from dataclasses import replace

import pytest

from tests.sample_run import sample_scenario
from ui.questions import Question, questions_about


@pytest.fixture
def room():
    """A room with a wish for sun."""
    return next(room for room in sample_scenario().brief.rooms if room.sun is not None)


def test_what_is_offered_depends_on_what_the_concept_does(room):
    """No size is asked of a room that is left out, nothing of its leaving where it stands."""
    assert [*questions_about(room, choice=None, choices=("a", "b"))] == ["left_out", "here"]
    assert [*questions_about(room, choice="a", choices=("a", "b"))] == ["here", "choice", "sun"]
    assert [*questions_about(room, choice="a", choices=("a",))] == ["here", "sun"]
    assert [*questions_about(replace(room, sun=None), choice="a", choices=("a",))] == ["here"]


def test_shade_is_asked_as_shade(room):
    shady = replace(room, sun=replace(room.sun, want="shade"))
    sunny = replace(room, sun=replace(room.sun, want="sun"))
    assert questions_about(shady, choice="a", choices=("a",))["sun"] == "Why not in the shade?"
    assert questions_about(sunny, choice="a", choices=("a",))["sun"] == "Why not in the sun?"


@pytest.mark.parametrize(
    ("question", "words"),
    [
        (Question("left_out", "fire", "c1"), "--left-out"),
        (Question("here", "fire", "c1", at=(-4.25, 10.0)), "--at=-4.25,10"),
        (Question("choice", "fire", "c1", choice="seats for eight"), "--choice=seats for eight"),
        (Question("sun", "fire", "c1"), "--sun"),
    ],
)
def test_words_of_the_command(question, words):
    assert question.words_of_command == ("--room=fire", "--option=c1", words)
