"""Programs from outside that some tests need: found, or the test is skipped and says why."""

from __future__ import annotations

import os
import shutil

import pytest

PACKAGES = {
    "soffice": "libreoffice-calc-nogui",
    "pdftoppm": "poppler-utils",
    "chromium": "chromium",
}


def need_program(name: str) -> str:
    """Path of a program; without it the test is skipped, or fails where CI=true."""
    path = shutil.which(name)
    if path:
        return path
    reason = f"{name} is not installed (Debian package {PACKAGES.get(name, name)})"
    if os.environ.get("CI") == "true":
        pytest.fail(reason)
    pytest.skip(reason)
