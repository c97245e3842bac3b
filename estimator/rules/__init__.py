"""One small function a rule: facts in, a finding out."""

from __future__ import annotations
