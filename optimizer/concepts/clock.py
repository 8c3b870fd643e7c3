"""How long a search may go on."""

import threading
import time


class Clock(threading.Event):
    """Set when a person asks to stop, or when the time is up.

    `until` is a moment of the machine's monotonic clock, which all its processes share [s]; None: without a limit.
    """

    def __init__(self, stop: threading.Event, until: float | None = None) -> None:
        super().__init__()
        self.until = until
        self._asked, self._began = stop, time.monotonic()

    def is_set(self) -> bool:
        """Whether to stop."""
        return self._asked.is_set() or (self.until is not None and time.monotonic() > self.until)

    @property
    def without_limit(self) -> "Clock":
        """One that only a person sets."""
        return Clock(self._asked)

    @property
    def elapsed_s(self) -> float:
        """Seconds since the yard was read."""
        return time.monotonic() - self._began

    def is_past(self, share: float, *, sparing_s: float = 0.0) -> bool:
        """Whether this share of the time is over, or will be after so many seconds."""
        if self.until is None:
            return self._asked.is_set()
        return self.is_set() or self.elapsed_s + sparing_s > share * (self.until - self._began)
