"""Many yards: each by a process of its own, here or on a cluster; one bad file never stops the rest."""

import os
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import CancelledError, Executor, Future, ThreadPoolExecutor, as_completed
from contextlib import contextmanager
from dataclasses import dataclass
from importlib import import_module
from pathlib import Path
from threading import Event as Flag
from typing import Final

from optimizer.catalogue import book_for
from optimizer.cli.batch_table import BatchRow, digest_of, row_of, rows_in, run_of, table_text
from optimizer.cli.console import say
from optimizer.cli.exits import ExitStatus
from optimizer.cli.signals import stop_on_signal
from optimizer.cli.yard_run import YardDone, run_yard
from optimizer.errors import InputError, Problem
from optimizer.results import ready_folder, versions, write_whole
from optimizer.scenario import files_beside
from optimizer.scenario.files import bytes_of

TABLE: Final = "batch.csv"
_GIVEN: Final = "prices given with the call"
SCENARIOS: Final = (".yaml", ".yml", ".json")


@dataclass(frozen=True, slots=True)
class BatchCall:
    """What was asked for. `scheduler` is the address of a Dask cluster; None: processes on this machine."""

    folder: Path
    out: Path
    scheduler: str | None
    at_once: int | None
    arguments: tuple[str, ...]
    prices: Path | None = None


@dataclass(frozen=True, slots=True)
class _Yard:
    """One file to run."""

    path: Path
    data: bytes
    digest: str
    beside: dict[str, bytes]
    """The price book that it names, as it lies beside it."""


def run_batch(call: BatchCall) -> ExitStatus:
    """Run every scenario of a folder that has not been run like this before, and keep the table up to date."""
    yards = _yards(call.folder)
    given = _given_prices(call)
    ready_folder(call.out)
    stop, table = stop_on_signal(), call.out / TABLE
    run = run_of(versions(book_for("USD")), (*call.arguments, *(digest_of(data) for data in given.values())))
    rows = {name: row for name, row in rows_in(table).items() if name in {yard.path.name for yard in yards}}
    waiting = [yard for yard in yards if not _is_done(rows.get(yard.path.name), yard, run, call.out)]
    say(f"{len(yards)} scenarios, {len(yards) - len(waiting)} of them done before.")
    with _executor(call) as executor:
        for yard, done in _finished(executor, waiting, call, stop, given):
            row = row_of(yard.path.name, yard.digest, run, done)
            _keep(call.out / yard.path.stem, done)
            rows[row.file] = row
            write_whole(table, table_text(rows[name] for name in sorted(rows)))
            say(f"{row.file}: {row.status}, {row.concepts} concepts in {row.seconds} s. {row.message}".rstrip())
    say(f"Wrote {table}")
    return ExitStatus.DONE


def _scenarios(folder: Path) -> list[Path]:
    found = sorted(path for path in folder.glob("*") if path.suffix in SCENARIOS and path.is_file())
    if not found:
        what = "a folder with scenarios (.yaml, .yml or .json)"
        found_instead = "none in it" if folder.is_dir() else "no such folder"
        raise InputError((Problem(what, found_instead, "name the folder that holds them", where=str(folder)),))
    return found


def _yards(folder: Path) -> list[_Yard]:
    """Scenarios of a folder; the price books that they name are none, and may bear a scenario's name."""
    read = [_read(path) for path in _scenarios(folder)]
    books = {name for yard in read for name in yard.beside}
    yards = [yard for yard in read if yard.path.name not in books]
    _refuse_alike([yard.path for yard in yards], folder)
    return yards


def _refuse_alike(paths: list[Path], folder: Path) -> None:
    """Refuse scenarios of one name: each file's results go to a folder of its name."""
    times = Counter(path.stem for path in paths)
    alike = sorted(path.name for path in paths if times[path.stem] > 1)
    if alike:
        what, advice = "scenarios of different names", "rename all but one of them"
        raise InputError((Problem(what, ", ".join(alike), advice, where=str(folder)),))


def _read(path: Path) -> _Yard:
    data, beside = path.read_bytes(), files_beside(path)
    return _Yard(path, data, digest_of(b"\0".join((data, *beside.values()))), beside)


def _given_prices(call: BatchCall) -> dict[str, bytes]:
    """The price book of the call under a name of its own, with which it lies beside every scenario."""
    if call.prices is None:
        return {}
    return {f"{_GIVEN}{call.prices.suffix}": bytes_of(call.prices, str(call.prices), "a price book")}


def _is_done(row: BatchRow | None, yard: _Yard, run: str, out: Path) -> bool:
    has_result = row is not None and (row.concepts == "0" or (out / yard.path.stem / "options.json").is_file())
    return row is not None and has_result and row.is_of(yard.digest, run)


@contextmanager
def _executor(call: BatchCall) -> Iterator[Executor]:
    if call.scheduler is None:
        with ThreadPoolExecutor(call.at_once or os.cpu_count() or 1) as threads:
            yield threads
        return
    try:
        client_of = import_module("distributed").Client
    except ImportError:
        advice = "install the extra: pip install 'outdoor-room-options[cluster]'"
        raise InputError((Problem("Dask, to reach a cluster", "it is not installed", advice),)) from None
    try:
        client = client_of(call.scheduler, timeout="10s")
    except (OSError, ValueError, TimeoutError):
        advice = "give the address that the scheduler prints when it starts, such as tcp://HOST:8786"
        raise InputError((Problem("a scheduler at --scheduler", f"none at {call.scheduler}", advice),)) from None
    with client, client.get_executor() as cluster:
        yield cluster


def _finished(
    executor: Executor, yards: list[_Yard], call: BatchCall, stop: Flag, given: dict[str, bytes]
) -> Iterator[tuple[_Yard, YardDone]]:
    """Yards as they end. Once a person stops it, none is begun any more."""
    arguments = (*call.arguments, *(word for name in given for word in ("--prices", name)))
    begun = {
        executor.submit(run_yard, yard.path.name, yard.data, arguments, {**yard.beside, **given}): yard
        for yard in yards
    }
    for future in as_completed(list(begun)):
        yard = begun.pop(future)
        if stop.is_set():
            _cancel(begun)
        try:
            yield yard, future.result()
        except CancelledError:
            continue
        except Exception as error:  # noqa: BLE001 - whatever went wrong with one yard, the others go on
            yield yard, YardDone(int(ExitStatus.FAULT), 0.0, f"could not be run: {error}", {})


def _cancel(begun: "dict[Future[YardDone], _Yard]") -> None:
    for future in begun:
        future.cancel()


def _keep(folder: Path, done: YardDone) -> None:
    if done.files:
        ready_folder(folder)
    for name, text in done.files.items():
        write_whole(folder / name, text)
