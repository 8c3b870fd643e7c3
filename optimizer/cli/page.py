"""The page: a child process on this computer's own address, ended with this one."""

import importlib.util
import os
import signal
import socket
import subprocess
import sys
import threading
import webbrowser
from pathlib import Path
from typing import Final

from optimizer.cli.console import say
from optimizer.cli.exits import ExitStatus
from optimizer.cli.signals import stop_on_signal
from optimizer.errors import InputError, Problem

ADDRESS: Final = "127.0.0.1"
WORK: Final = "OUTDOOR_ROOMS_WORK"
"""Name in the environment by which the page knows where work is kept."""
USUAL_PORT: Final = 8501
TICK_S: Final = 0.2
PATIENCE_S: Final = 5.0
"""How long the page has to end by itself before it is ended [s]."""

# This computer only; no figures about use sent out; no outside links in error boxes; 5 MB a file.
SWITCHES: Final = {
    "server.address": ADDRESS,
    "server.headless": "true",
    "server.fileWatcherType": "none",
    "server.maxUploadSize": "5",
    "browser.gatherUsageStats": "false",
    "client.showErrorDetails": "none",
    "client.showErrorLinks": "false",
    "client.toolbarMode": "minimal",
}


def serve_page(scenario: Path | None, *, port: int | None, opens_browser: bool, work: str | None = None) -> ExitStatus:
    """Serve the page until it is asked to end; what is made on it is kept in `work`, a folder or a database's URL.

    InputError for a port in use, a scenario that is not there, or a folder that cannot be written to.
    """
    if scenario is not None:
        _refuse_missing(scenario)
    if work is not None and "://" not in work:
        work = _ready(Path(work))
    port = free_port(port)
    stop = stop_on_signal()
    # In a group of its own: Ctrl-C reaches it through us, once, and so do the searches that it has begun.
    environment = {**os.environ, **({} if work is None else {WORK: work})}
    command = page_command(scenario, port=port)
    child = subprocess.Popen(command, env=environment, start_new_session=True)  # noqa: S603 - no shell
    say(f"Page on http://{ADDRESS}:{port} - Ctrl-C ends it")
    sys.stdout.flush()
    try:
        return _until_asked(child, stop, port=port, opens_browser=opens_browser)
    finally:
        _end(child)


def page_command(scenario: Path | None, *, port: int) -> tuple[str, ...]:
    """Command that starts the page. It is found by its path: neither package imports the other."""
    switches = (f"--{name}={value}" for name, value in {**SWITCHES, "server.port": str(port)}.items())
    given = () if scenario is None else ("--", str(scenario.resolve()))
    return (sys.executable, "-m", "streamlit", "run", str(_page_path()), *switches, *given)


def free_port(wanted: int | None) -> int:
    """Return the wanted port, or where none is wanted the usual one or any other that is free.

    Raises InputError where the wanted port is in use or may not be used.
    """
    if wanted is None:
        return USUAL_PORT if _is_free(USUAL_PORT) else _any_port()
    if not _is_free(wanted):
        advice = "choose another, or leave --port out to take one that is free"
        raise InputError((Problem("a free port", f"{wanted}, which is in use or not allowed", advice, where="--port"),))
    return wanted


def _is_free(port: int) -> bool:
    with socket.socket() as trial:
        # Else the port of a page that has just ended would count as used for a minute.
        trial.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, os.name == "posix")
        try:
            trial.bind((ADDRESS, port))
        except OSError:
            return False
    return True


def _any_port() -> int:
    with socket.socket() as trial:
        trial.bind((ADDRESS, 0))
        return int(trial.getsockname()[1])


def _page_path() -> Path:
    found = importlib.util.find_spec("ui")
    folders = tuple(found.submodule_search_locations or ()) if found else ()
    for folder in folders:
        if (path := Path(folder) / "app.py").is_file():
            return path
    raise FileNotFoundError("the page's files are not installed beside the program; install it again")


def _refuse_missing(scenario: Path) -> None:
    if not scenario.is_file():
        found = "a folder" if scenario.is_dir() else "nothing"
        raise InputError((Problem("a scenario file", found, "check the path", where=str(scenario)),))


def _ready(folder: Path) -> str:
    """Make the folder that work is kept in, where it lacks, and give its path in full."""
    from optimizer.results import ready_folder  # loads half the program, and few name a folder

    ready_folder(folder, option="--work", thing="a folder to keep work in")
    return str(folder.resolve())


def _until_asked(
    child: subprocess.Popen[bytes], stop: threading.Event, *, port: int, opens_browser: bool
) -> ExitStatus:
    while not stop.wait(TICK_S):
        if child.poll() is not None:
            say(f"The page ended by itself, with status {child.returncode}.", file=sys.stderr)
            return ExitStatus.FAULT
        if opens_browser and _answers(port):
            webbrowser.open(f"http://{ADDRESS}:{port}")
            opens_browser = False
    return ExitStatus.DONE


def _answers(port: int) -> bool:
    with socket.socket() as trial:
        trial.settimeout(TICK_S)
        return trial.connect_ex((ADDRESS, port)) == 0


def _end(child: subprocess.Popen[bytes]) -> None:
    _signal_group(child, signal.SIGTERM)
    try:
        child.wait(PATIENCE_S)
    except subprocess.TimeoutExpired:
        _signal_group(child, getattr(signal, "SIGKILL", signal.SIGTERM))
        child.wait()


def _signal_group(child: subprocess.Popen[bytes], number: int) -> None:
    """Signal the page and the searches that it has begun, also where the page itself is gone."""
    if os.name != "posix":
        child.terminate()
        return
    try:
        os.killpg(child.pid, number)
    except ProcessLookupError:
        return
