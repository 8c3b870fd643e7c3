"""A machine without a browser: its tests are passed over there, but not where one is required."""

import os
import shutil
import subprocess
import sys

import pytest

ASKS = """
import pytest

@pytest.mark.browser
def test_that_asks(chromium):
    pass
"""


@pytest.mark.parametrize(("required", "told"), [("0", "1 skipped"), ("1", "1 error")])
def test_a_browser_that_is_required_and_missing_fails(project, tmp_path, required, told):
    """A session of its own with the project's conftest, on an empty PATH."""
    shutil.copy(project / "tests" / "conftest.py", tmp_path)
    (tmp_path / "test_one.py").write_text(ASKS)
    asked = (sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", "--rootdir", str(tmp_path), str(tmp_path))
    env = {**os.environ, "PATH": "", "REQUIRE_BROWSER": required}
    ended = subprocess.run(asked, cwd=tmp_path, env=env, capture_output=True, text=True, check=False)
    assert told in ended.stdout, ended.stdout
    assert (ended.returncode == 0) == (required == "0")
    assert ("expected chromium on the PATH" in ended.stdout) == (required == "1")
    assert ("there is no chromium on this machine" in ended.stdout) == (required == "0")
