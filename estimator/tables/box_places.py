"""Tables of how a box sits: least depth by wire and device, rooms where a fan is likely."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from estimator.tables.facts import Row, rows
from estimator.tables.limits import Limit

NO_DEVICE = "none"


@dataclass(frozen=True, slots=True)
class DepthRule:
    """Least depth of a box by the thickest wire on its device.

    Attributes:
        least: of any box with such a wire.
        device_over: a device that reaches farther back than this also asks for its own depth
            and `behind_device` more.
    """

    least: Limit
    device_over: Limit
    behind_device: Limit

    def asked_in(self, device_in: Fraction) -> Fraction:
        """Least depth of the box for a device of this depth, inches.

        A device exactly as deep as the threshold asks for no more than the wire does.
        """
        if device_in > self.device_over.value:
            return device_in + self.behind_device.value
        return self.least.value


@cache
def depth_rule(wire: str, edition: str) -> DepthRule | None:
    """The least depth by wire size, or `NO_DEVICE`; None where there is no row for the size."""
    for row in rows("box_depths"):
        if (row["wire"], row["edition"]) == (wire, edition):
            least, over = _limit(row, "least_in"), _limit(row, "device_over_in")
            return DepthRule(least, over, _limit(row, "behind_device_in"))
    return None


def _limit(row: Row, column: str) -> Limit:
    figure, value = f"box-depth-{row['wire']}", Fraction(row[column])
    return Limit(figure, value, "in", row["source"], row["where"], row["confidence"])


@cache
def usual_device_depth_in(device: str) -> Fraction | None:
    """How far a device to be bought reaches back, common practice; None where not on file."""
    for row in rows("device_depths"):
        if row["device"] == device:
            return Fraction(row["depth_in"])
    return None


@cache
def fan_is_likely(use: str, edition: str) -> str | None:
    """Confidence of the row that says a fan is likely in such a room; None without a row."""
    for row in rows("fan_rooms"):
        if (row["use"], row["edition"]) == (use, edition):
            return row["confidence"]
    return None
