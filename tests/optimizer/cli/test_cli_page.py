"""The page is served on this computer only, and ends with the command."""

import os
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from pathlib import Path

import pytest

from optimizer.cli import main
from optimizer.cli.page import ADDRESS, WORK, free_port, page_command, serve_page
from optimizer.errors import InputError
from tests.sample_run import YARD

PROJECT = Path(__file__).parents[3]


def test_the_command_keeps_to_this_computer():
    """The page listens on this computer's own address, sends nothing out, and gets the scenario after the dashes."""
    command = page_command(YARD, port=8599)
    assert "--server.address=127.0.0.1" in command
    assert "--server.port=8599" in command
    assert "--browser.gatherUsageStats=false" in command
    assert "--client.showErrorDetails=none" in command
    assert command[-2:] == ("--", str(YARD.resolve()))
    assert Path(command[4]) == PROJECT / "ui" / "app.py"


def test_without_a_scenario_nothing_follows():
    """No dashes where there is nothing to pass on."""
    assert "--" not in page_command(None, port=8599)


def test_the_page_is_found_without_being_imported():
    """Making the command imports neither the page nor its server."""
    program = (
        "import sys; from optimizer.cli.page import page_command; page_command(None, port=8599);"
        "print([name for name in ('ui', 'streamlit') if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", program], cwd=PROJECT, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_a_port_in_use_is_told():
    """A port in use exits with 2 and says what to do; without a port any free one is taken."""
    with socket.socket() as taken:
        taken.bind((ADDRESS, 0))
        taken.listen()
        port = taken.getsockname()[1]
        with pytest.raises(InputError, match=f"--port: expected a free port, found {port}"):
            free_port(port)
        assert free_port(None) != port


def test_a_scenario_that_is_not_there_is_told(capsys, tmp_path):
    """The page is not started on nothing."""
    assert main(["page", str(tmp_path / "missing.yaml"), "--no-browser"]) == 2
    assert "expected a scenario file, found nothing" in capsys.readouterr().err


def test_a_folder_that_work_cannot_be_kept_in_is_told(capsys, tmp_path):
    """The page is not started where nothing could be kept."""
    (tmp_path / "file").write_text("")
    assert main(["page", "--work", str(tmp_path / "file" / "inside"), "--no-browser"]) == 2
    assert "expected a folder to keep work in" in capsys.readouterr().err


@pytest.mark.parametrize(("given", "told"), [("kept", "kept"), ("sqlite:///a.db", "sqlite:///a.db")])
def test_the_page_is_told_where_work_is_kept(monkeypatch, tmp_path, given, told):
    """A folder is made and named in full, so that it is the same wherever the page runs; a URL goes through as it is."""
    seen = {}

    class Ended:
        """A page that ends at once."""

        returncode, pid = 0, 0

        def __init__(self, command, *, env, start_new_session):
            seen.update(env)

        def poll(self):
            return 0

    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr("optimizer.cli.page.subprocess.Popen", Ended)
    monkeypatch.setattr("optimizer.cli.page._end", lambda child: None)
    serve_page(None, port=None, opens_browser=False, work=given)
    assert seen[WORK] == (told if "://" in told else str(tmp_path / told))
    assert (tmp_path / "kept").is_dir() == (given == "kept")


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
def test_the_page_ends_with_the_command(number):
    """The page answers, on this computer's own address; once the command is asked to end, nothing answers any more."""
    port = free_port(None)
    command = [sys.executable, "-m", "optimizer", "page", str(YARD), "--port", str(port), "--no-browser"]
    process = subprocess.Popen(command, cwd=PROJECT, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
    try:
        assert f"http://127.0.0.1:{port}" in process.stdout.readline()
        assert answer_of(port) == b"ok"
    finally:
        process.send_signal(number)
        _, err = process.communicate(timeout=30)
    assert process.returncode == 0, err
    with socket.socket() as trial:
        assert trial.connect_ex((ADDRESS, port)) != 0


def answer_of(port: int) -> bytes:
    """What the page's own sign of health says, once it says something."""
    for _ in range(150):
        try:
            with urllib.request.urlopen(f"http://{ADDRESS}:{port}/_stcore/health", timeout=5) as answer:
                return answer.read()
        except OSError:
            time.sleep(0.2)
    return b"" if os.name == "posix" else b"no answer"
