"""The stages of a run where the search itself found nothing: the proof's own layouts are gone on from."""

import threading
from types import SimpleNamespace

import pytest

from optimizer.concepts.run import _Search
from optimizer.engine.prover import Answer

STATE = ("a layout",)


def search(monkeypatch, *, proof, answer):
    """A search without any layout, and what it begins from once it has asked."""
    began: list[tuple] = []
    made = object.__new__(_Search)
    made.asked = SimpleNamespace(start=())
    made.emit, made.stop = (lambda _event: None), threading.Event()
    made.explorer = SimpleNamespace(pool=SimpleNamespace(best={}))
    made.rounds = SimpleNamespace(
        workers=SimpleNamespace(count=0), first=lambda starts, _mended=(): began.append(tuple(starts))
    )
    made.whole = SimpleNamespace(found=lambda: proof, proof="a proof")
    for name, given in {"_explore": None, "_polish": None, "_anything": answer}.items():
        monkeypatch.setattr(_Search, name, lambda _self, *_, given=given: given)
    monkeypatch.setattr(_Search, "_ranked", lambda _self, proof: proof)
    monkeypatch.setattr(_Search, "_without_any", lambda _self, _answer: "nothing")
    return made.found(), began[1:]


@pytest.mark.parametrize("verdict", ["undecided", "infeasible"])
def test_a_layout_of_the_proof_is_gone_on_from(verdict, monkeypatch):
    """Whatever the question whether anything fits came to; without one there is nothing."""
    answer = Answer(verdict, None, None, None)
    assert search(monkeypatch, proof=(STATE,), answer=answer) == ("a proof", [(STATE,)])
    assert search(monkeypatch, proof=(), answer=answer) == ("nothing", [])


def test_else_that_of_the_answer(monkeypatch):
    """The one layout that the model has found."""
    answer = Answer("feasible", STATE, 1, None)
    assert search(monkeypatch, proof=(), answer=answer) == ("a proof", [(STATE,)])
