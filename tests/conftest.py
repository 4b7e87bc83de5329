"""What all tests share: one browser, and hypothesis draws the same examples on every machine, untimed."""

import os
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import HealthCheck, settings

from tests.browsing import CHROMIUM, FLAGS

settings.register_profile(
    "ci",
    derandomize=True,
    deadline=None,
    max_examples=60,
    database=None,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.register_profile("search", settings.get_profile("ci"), derandomize=False, max_examples=2000)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "ci"))


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    """Start one Chromium for all tests of a process."""
    sync_api = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")
    if not CHROMIUM.exists():
        pytest.skip("Chromium is not installed")
    with sync_api.sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=str(CHROMIUM), args=FLAGS)
        yield chromium
        chromium.close()
