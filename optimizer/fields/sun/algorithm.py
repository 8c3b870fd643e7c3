"""pvlib's solar position algorithm alone.

`import pvlib` brings pandas, half of scipy and readers for weather services: over a second, which every run and every
process beside it would pay for one module that needs numpy only. So that module is loaded by its file.
`tests/references/test_sun.py` holds what it says against `pvlib.solarposition`.
"""

from functools import cache
from importlib.util import find_spec, module_from_spec, spec_from_file_location
from pathlib import Path
from types import ModuleType


@cache
def spa() -> ModuleType:
    """The module `pvlib.spa`, without the rest of its package.

    Raises
    ------
    ModuleNotFoundError
        If pvlib is not installed.
    """
    package = find_spec("pvlib")
    if package is None or not package.submodule_search_locations:
        raise ModuleNotFoundError("pvlib, which tells where the sun stands, is not installed", name="pvlib")
    file = Path(package.submodule_search_locations[0]) / "spa.py"
    found = spec_from_file_location("pvlib.spa", file)
    assert found is not None
    assert found.loader is not None
    module = module_from_spec(found)
    found.loader.exec_module(module)
    return module
