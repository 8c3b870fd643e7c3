"""The command that holds a result against what can be counted, and on demand proven, once more."""

from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from threading import Event as Flag

from optimizer.cli.console import say
from optimizer.cli.exits import ExitStatus
from optimizer.cli.signals import stop_on_signal


def run_recheck(path: Path, *, seconds: float | None) -> ExitStatus:
    """Say what differs, and with `seconds` what proofs and ways out say when they are tried again."""
    from optimizer.rechecking import recheck

    differences = recheck(path)
    for difference in differences:
        say(difference)
    if differences:
        return ExitStatus.DIFFERS
    if seconds is None:
        say("The result holds what it says.")
        return ExitStatus.DONE
    stop = stop_on_signal()
    with ThreadPoolExecutor(1) as beside:  # the main thread hears signals
        return beside.submit(_solved, path, seconds, stop).result()


def _solved(path: Path, seconds: float, stop: Flag) -> ExitStatus:
    from optimizer.rechecking import solve_again

    differs = undecided = False
    for doubt in solve_again(path, seconds=seconds, stop=stop):
        say(doubt.words)
        differs, undecided = differs or not doubt.is_undecided, undecided or doubt.is_undecided
    if differs:
        return ExitStatus.DIFFERS
    if undecided:
        say("Nothing was contradicted; more time may decide what is left.")
        return ExitStatus.UNDECIDED
    say("The result holds what it says, and so do its proofs and its ways out.")
    return ExitStatus.DONE
