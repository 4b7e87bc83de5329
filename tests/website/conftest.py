"""Builds the small site once for all tests that look at it."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.website.small_site import SERVED, Small, build, prepare, site_inputs


@pytest.fixture(scope="session")
def fonts(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give one folder for prepared fonts."""
    return tmp_path_factory.mktemp("fonts")


@pytest.fixture(scope="session")
def small(tmp_path_factory: pytest.TempPathFactory, fonts: Path) -> Small:
    """Build the small site in three languages without a finding; nobody changes it."""
    prepared = prepare(tmp_path_factory.mktemp("small"), fonts, site_inputs(SERVED))
    assert build(prepared) == ()
    return prepared
