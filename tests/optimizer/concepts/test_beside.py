"""Processes beside: fresh ones, that end with whoever began them."""

import os
import sys
import time
from multiprocessing import forkserver

from optimizer.concepts.beside import CONTEXT, get_ready, mind_parent

LONG_S = 60


def working(there):
    """Work that would go on for long; it holds one end of a line."""
    mind_parent()
    there.send("begun")
    time.sleep(LONG_S)


def beginning(there):
    """Begin it in a process of its own."""
    process = CONTEXT.Process(target=working, args=(there,))
    process.start()
    time.sleep(LONG_S)


def test_work_ends_with_who_began_it():
    """Killed, it cannot end what it has begun: that goes by itself, and nobody holds the line any more."""
    here, there = CONTEXT.Pipe(duplex=False)
    beginner = CONTEXT.Process(target=beginning, args=(there,))
    beginner.start()
    there.close()
    assert here.recv() == "begun"
    beginner.kill()
    began = time.monotonic()
    try:
        here.recv()
    except EOFError:
        assert time.monotonic() - began < LONG_S / 4
    else:
        raise AssertionError


HERE = []


def asked(there):
    """Whether this process has read the engine, and what of the one that began it."""
    there.send(("optimizer.engine.prover" in sys.modules, HERE))


def test_a_process_has_read_the_libraries_and_nothing_else():
    """It is no copy of this one, which may hold locks."""
    HERE.append("a lock")
    here, there = CONTEXT.Pipe(duplex=False)
    process = CONTEXT.Process(target=asked, args=(there,))
    process.start()
    there.close()
    assert here.poll(LONG_S)
    assert here.recv() == (True, [])
    process.join()


def test_the_libraries_are_read_before_they_are_needed():
    """The process that others are copies of is begun at once, and again where it has died; nobody waits for it."""
    forkserver._forkserver._stop()
    began = time.monotonic()
    get_ready()
    assert time.monotonic() - began < 1
    os.kill(forkserver._forkserver._forkserver_pid, 0)
