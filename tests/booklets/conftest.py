"""Makes the booklet that several tests look at once, because laying out takes seconds."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.booklets.layout import Laid
from generator.booklets.make import fitted, make_booklet
from generator.booklets.values import BookletResult, Fits
from tests.booklets.builders import job


@pytest.fixture(scope="session")
def made(tmp_path_factory: pytest.TempPathFactory) -> BookletResult:
    """Return the result of making the English booklet of phase 2."""
    folder: Path = tmp_path_factory.mktemp("booklet")
    return make_booklet(job(folder / "phase-2.pdf"))


@pytest.fixture(scope="session")
def fits_and_laid() -> tuple[Fits, Laid]:
    """Return how each part of the same booklet was fitted, and the booklet as it was laid out."""
    return fitted(job())


@pytest.fixture(scope="session")
def laid(fits_and_laid: tuple[Fits, Laid]) -> Laid:
    """Return the same booklet as it was laid out."""
    return fits_and_laid[1]
