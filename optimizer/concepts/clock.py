"""How long a search may go on."""

import threading
import time


class Clock(threading.Event):
    """Set when a person asks to stop, or when the time is up."""

    def __init__(self, stop: threading.Event, until: float | None) -> None:
        super().__init__()
        self._asked, self._until, self._began = stop, until, time.monotonic()

    @classmethod
    def of(cls, left_s: float | None) -> "Clock":
        """A clock that nobody stops, with so much time left; None: without a limit."""
        return cls(threading.Event(), None if left_s is None else time.monotonic() + left_s)

    def is_set(self) -> bool:
        """Whether to stop."""
        return self._asked.is_set() or (self._until is not None and time.monotonic() > self._until)

    @property
    def elapsed_s(self) -> float:
        """Seconds since the yard was read."""
        return time.monotonic() - self._began

    @property
    def left_s(self) -> float | None:
        """Seconds until the time is up; None without a limit."""
        return None if self._until is None else max(0.0, self._until - time.monotonic())

    def is_past(self, share: float, *, sparing_s: float = 0.0) -> bool:
        """Whether this share of the time is over, or will be after so many seconds."""
        if self._until is None:
            return self._asked.is_set()
        return self.is_set() or self.elapsed_s + sparing_s > share * (self._until - self._began)
