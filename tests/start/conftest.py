"""What the tests of the start share."""

import shutil
from pathlib import Path

import pytest

from tests.start.project import Project, make_project


@pytest.fixture
def project(tmp_path: Path) -> Project:
    """Make a fresh copy of a project that nobody has started yet."""
    return make_project(tmp_path)


@pytest.fixture(scope="session")
def once_built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Make a folder with a project that was started once."""
    folder = tmp_path_factory.mktemp("built")
    assert make_project(folder).build().returncode == 7
    return folder


@pytest.fixture
def built(once_built: Path, tmp_path: Path) -> Project:
    """Copy a project that was started once."""
    folder = shutil.copytree(once_built, tmp_path / "copy", symlinks=True)
    return Project(folder / "project", folder / "wheels")
