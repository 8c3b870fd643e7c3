"""A stand-in for the search as a child process: tells what a search tells, and hands over a result made before.

Call: fake_search.py OUT READY HOW, where HOW is `at_once`, `until_stopped` or `refused`.
"""

import json
import shutil
import signal
import sys
import threading
from pathlib import Path


def tell(kind, **facts):
    """Print one event."""
    print(json.dumps({"event": kind, **facts}), flush=True)


def main(out, ready, how):
    """Behave as a search."""
    stop = threading.Event()
    signal.signal(signal.SIGTERM, lambda *_: stop.set())
    tell("started", elapsed_s=0.0)
    if how == "refused":
        tell("problem", elapsed_s=0.1, text="scenario.yaml:3:1: expected a boundary, found none; give its corners")
        return 2
    tell("stage", elapsed_s=0.2, stage="Exploring")
    print("a line that is no event", flush=True)
    tell("option", elapsed_s=0.4, found=3, best="$23,869")
    if how == "until_stopped":
        out.mkdir(parents=True, exist_ok=True)
        # Whole or not at all, as the command writes it: whoever reads meanwhile, or kills it, finds no half of a file.
        shutil.copy(ready / "options.json", out / ".so-far.json")
        (out / ".so-far.json").rename(out / "so-far.json")
        stop.wait(60)
        (out / "so-far.json").unlink()
    shutil.copytree(ready, out, dirs_exist_ok=True)
    tell("done", elapsed_s=0.6, exit=0)
    return 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]), Path(sys.argv[2]), sys.argv[3]))
