"""No test may pick up the books of whoever runs it: their folder is one that is empty."""

from __future__ import annotations

import os
import tempfile

from estimator.user_folder import HOME_VARIABLE

os.environ[HOME_VARIABLE] = tempfile.mkdtemp(prefix="estimator-home-")
