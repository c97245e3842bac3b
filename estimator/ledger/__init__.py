"""What a job really cost: close-out files, actual against estimate, and the books' entries."""

from __future__ import annotations
