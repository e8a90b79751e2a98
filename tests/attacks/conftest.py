"""What the tests of attacks share: the watched runs of tests/hostile.py."""

from __future__ import annotations

import importlib.util
import sys
from pathlib import Path
from typing import Any

import pytest

HOSTILE = Path(__file__).parents[1] / "hostile.py"


def _hostile() -> Any:
    name = "tests_hostile"
    if name not in sys.modules:
        spec = importlib.util.spec_from_file_location(name, HOSTILE)
        assert spec
        assert spec.loader
        sys.modules[name] = importlib.util.module_from_spec(spec)
        spec.loader.exec_module(sys.modules[name])
    return sys.modules[name]


@pytest.fixture(scope="session")
def hostile(libraries: Any, tmp_path_factory: pytest.TempPathFactory) -> Any:
    """The module tests/hostile.py, when what its processes have in common is loaded."""
    module = _hostile()
    module.warmed(tmp_path_factory.mktemp("well"), libraries)
    return module
