"""Collects part and task lines in the order of the work, and numbers them."""

from __future__ import annotations

from decimal import Decimal

from estimator.takeoff.records import Group, PartLine, Phase, TaskLine
from estimator.takeoff.stock import Stock


class Lines:
    """Lines of one takeoff; a quantity of zero leaves no line."""

    def __init__(self, stock: Stock) -> None:
        self._stock = stock
        self.parts: list[PartLine] = []
        self.tasks: list[TaskLine] = []

    def unit_of(self, item: str) -> str:
        """The unit an item is bought in; by the piece where it is not on file."""
        return self._stock.units.get(item, "ea")

    def part(
        self,
        group: Group,
        item: str,
        amount: tuple[Decimal | int, str],
        why: tuple[str, str, str],
        remedy: str = "",
    ) -> None:
        """Add a part. `amount` is quantity and unit; `why` is where, reason and source."""
        quantity = Decimal(amount[0])
        if quantity:
            number = f"P{len(self.parts) + 1:02d}"
            description = self._stock.descriptions.get(item, item.replace("-", " "))
            self.parts.append(
                PartLine(number, group, item, description, quantity, amount[1], *why, remedy)
            )

    def task(
        self,
        phase: Phase,
        task: str,
        amount: tuple[Decimal | int, str],
        why: tuple[str, str, str],
        conditions: tuple[str, ...] = (),
        remedy: str = "",
    ) -> None:
        """Add a task. `amount` is quantity and unit; `why` is where, reason and source."""
        quantity = Decimal(amount[0])
        if quantity:
            number = f"W{len(self.tasks) + 1:02d}"
            self.tasks.append(
                TaskLine(number, phase, task, quantity, amount[1], *why, conditions, remedy)
            )
