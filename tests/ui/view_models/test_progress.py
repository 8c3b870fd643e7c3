"""Where a run is, from its events."""

from ui.view_models import Progress, progress


def test_nothing_told_yet():
    """Before the first event the run is starting."""
    assert progress(()) == Progress()


def test_state_after_some_events():
    """The last stage and best stand, time and number found never go back, unknown events change nothing else."""
    state = progress(
        (
            {"event": "started", "elapsed_s": 0.0},
            {"event": "stage", "elapsed_s": 1.0, "stage": "Exploring"},
            {"event": "option", "elapsed_s": 3.0, "found": 2, "best": "$1"},
            {"event": "of later versions", "elapsed_s": 2.0, "found": 1},
        )
    )
    assert state == Progress(stage="Exploring", elapsed_s=3.0, found=2, best="$1")


def test_problems_are_kept_in_order():
    """Each problem's words are kept."""
    told = progress(({"event": "problem", "text": "one"}, {"event": "alive"}, {"event": "problem", "text": "two"}))
    assert told.problems == ("one", "two")


def test_share_of_the_time_stays_between_none_and_all():
    """A run over its time is all of it; without a time it is all of it."""
    assert [Progress(elapsed_s=s).share(20.0) for s in (0.0, 5.0, 50.0)] == [0.0, 0.25, 1.0]
    assert Progress().share(0.0) == 1.0
