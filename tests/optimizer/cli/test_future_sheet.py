"""The plan of what may come later, from a stored result."""

from dataclasses import replace

import pytest

from optimizer.cli import main
from optimizer.concepts import OptionSet, Proof
from optimizer.concepts.case import Case
from optimizer.layout import Layout
from optimizer.results import to_document, to_text
from tests.optimizer.derived.futures.yard import HELD, yard
from tests.sample_run import SEARCH


@pytest.fixture(scope="module")
def result(tmp_path_factory):
    """One concept that keeps room for three futures."""
    scenario = yard()
    case, layout = Case.of(scenario), Layout((HELD,))
    option = case.advised(case.described(layout, case.in_full(layout)))
    option = replace(option, id="c1", rank=1, proof=Proof("bounded", option.score, 0.0))
    path = tmp_path_factory.mktemp("result") / "options.json"
    document = to_document(scenario, case.rooms, OptionSet((option,), SEARCH), book=scenario.book)
    path.write_text(to_text(document), encoding="utf-8")
    return path


def call(result, *more, out="later.svg"):
    path = result.parent / out
    path.unlink(missing_ok=True)
    return main([str(word) for word in ("sheet", result, "--option", "c1", "--out", path, *more)]), path


def test_each_future_is_drawn_from_the_result_alone(result):
    """Nothing is searched or worked out anew: the file has water, way and distances; names in any letters."""
    for name in ("hot tub", "Swim  Spa", "pool"):
        status, out = call(result, "--future", name)
        text = out.read_text(encoding="utf-8")
        assert status == 0
        assert f"later {' '.join(name.lower().split())}" in text
        assert 'class="future_water"' in text
        assert 'class="future_way"' in text
        assert 'class="dimension"' in text
    _, out = call(result, "--future", "pool", "--for", "owner")
    assert 'class="dimension"' not in out.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("more", "out", "words"),
    [
        (
            ("--future", "sauna"),
            "later.svg",
            "--future: expected a future of concept c1, found 'sauna'; it keeps room for hot tub, swim spa, pool",
        ),
        (("--future", "pool"), "later.json", "--out: expected a file that ends in .svg, found 'later.json'"),
        (("--future", "pool", "--phase", "1"), "later.svg", "--future: expected a phase or a future"),
    ],
)
def test_what_cannot_be_drawn_is_told(capsys, result, more, out, words):
    """Exit 2, one sentence, nothing written."""
    status, path = call(result, *more, out=out)
    assert status == 2
    assert words in capsys.readouterr().err
    assert not path.exists()
