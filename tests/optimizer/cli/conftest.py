"""The command in this process, on a made-up pipeline."""

import signal
import sys

import pytest

from tests.optimizer.cli.fake_command import fake_modules


@pytest.fixture(autouse=True)
def signals_as_before():
    """The command leaves its handlers in place: put back what the tests' own process had."""
    numbers = (signal.SIGINT, signal.SIGTERM, signal.SIGHUP)
    before = [signal.getsignal(number) for number in numbers]
    yield
    for number, handler in zip(numbers, before, strict=True):
        signal.signal(number, handler)


@pytest.fixture
def engine(monkeypatch):
    """Set what the made-up engine does."""
    for name, module in fake_modules().items():
        monkeypatch.setitem(sys.modules, name, module)
    return lambda what: monkeypatch.setenv("FAKE_ENGINE", what)
