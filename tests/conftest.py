"""No test may pick up the books of whoever runs it; cases by chance are the same in CI."""

from __future__ import annotations

import os
import tempfile

from hypothesis import settings

from estimator.user_folder import HOME_VARIABLE

# Cases by chance are others in every run of a developer, and the same in every run of CI.
settings.register_profile("ci", derandomize=True)
if os.environ.get("CI") == "true":
    settings.load_profile("ci")

os.environ[HOME_VARIABLE] = tempfile.mkdtemp(prefix="estimator-home-")
