"""Listeners show what they are told, and say when nothing is said."""

import io
import json
import sys
import threading
from dataclasses import replace

import pytest
from rich.console import Console
from rich.progress import Progress, TextColumn

from optimizer.brief import Trip
from optimizer.cli import progress as progress_module
from optimizer.cli.progress import Bar, JsonLines, LogLines, listening
from optimizer.cli.ranking import print_outcome
from optimizer.cli.signals import stop_on_signal
from optimizer.events import Event
from tests.sample_run import sample_scenario, sample_set


def test_a_tick_is_silent_after_an_event(monkeypatch):
    """A sign of life is given only when nothing was said for a while."""
    file = io.StringIO()
    lines = JsonLines(file, threading.Event())
    lines.hear(Event("stage", {"stage": "Looking"}))
    lines.tick()
    assert len(file.getvalue().splitlines()) == 1
    monkeypatch.setattr(progress_module, "SILENCE_S", 0.0)
    lines.tick()
    assert json.loads(file.getvalue().splitlines()[1])["event"] == "alive"


def test_the_bar_shows_what_it_is_told():
    """Stage, number of concepts and the best so far are on the bar; control characters are not."""
    text = io.StringIO()
    columns = (TextColumn("{task.description}", markup=False), TextColumn("{task.fields[found]} {task.fields[best]}"))
    shown = Progress(*columns, console=Console(file=text, width=100))
    bar = Bar(shown, seconds=20.0)
    bar.hear(Event("stage", {"stage": "Looking [bold]\x1b"}))
    bar.hear(Event("option", {"found": 3, "best": "84,210 USD"}))
    bar.tick()
    shown.console.print(shown.get_renderable())
    assert "Looking [bold]\N{REPLACEMENT CHARACTER}" in text.getvalue()
    assert "3 84,210 USD" in text.getvalue()


def test_a_log_gets_a_line_a_stage(capsys):
    """Where there is no terminal each stage is a line on standard error, and the rest is silent."""
    lines = LogLines()
    lines.hear(Event("stage", {"stage": "Looking for layouts"}))
    lines.hear(Event("bound", {"bound": 3}))
    lines.tick()
    assert capsys.readouterr() == ("", "Looking for layouts ...\n")


@pytest.mark.parametrize(
    ("as_json", "is_terminal", "kind"), [(True, True, JsonLines), (False, False, LogLines), (False, True, Bar)]
)
def test_the_listener_fits_the_output(monkeypatch, as_json, is_terminal, kind):
    """JSON where it is asked for, a bar on a terminal, lines elsewhere."""
    monkeypatch.setattr(sys.stderr, "isatty", lambda: is_terminal, raising=False)
    with listening(threading.Event(), as_json=as_json, seconds=None) as listener:
        assert isinstance(listener, kind)


def test_signals_set_the_flag_and_nothing_else():
    """The flag is down until the first signal, and up after it and after every other."""
    import signal

    stop = stop_on_signal()
    assert not stop.is_set()
    for _ in range(3):
        signal.raise_signal(signal.SIGINT)
        assert stop.is_set()


def test_an_ignored_hang_up_stays_ignored():
    """A run that shall outlive its terminal does."""
    import signal

    signal.signal(signal.SIGHUP, signal.SIG_IGN)
    stop = stop_on_signal()
    signal.raise_signal(signal.SIGHUP)
    assert not stop.is_set()


def test_a_metric_yard_is_told_in_metres():
    """Walking is shown in the scenario's own unit: 1,234.5 ft are 376 m."""
    text = io.StringIO()
    print_outcome(replace(sample_scenario(), units="m"), sample_set(1), asked=1, file=text)
    assert "walking m" in text.getvalue()
    assert "376" in text.getvalue()


def test_walking_of_fewer_trips_is_marked():
    """The sample has a way to the table and none to the kitchen, which it does without: a star, and what it means."""
    for ends, is_marked in ((("gathering area",), False), (("gathering area", "outdoor kitchen"), True)):
        scenario, text = sample_scenario(), io.StringIO()
        trips = tuple(Trip("kitchen door", end, 2) for end in ends)
        scenario = replace(scenario, brief=replace(scenario.brief, trips=trips))
        print_outcome(scenario, sample_set(1), asked=1, file=text)
        assert ("1,234*" in text.getvalue()) == ("* Fewer trips" in text.getvalue()) == is_marked
