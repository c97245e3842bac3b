"""Sums over the rows of a batch, kept while the rows themselves go by; and its JSON."""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal

from estimator.outputs.batch import FAILED, NO_JOB, PRICED, STOPPED, BatchRow, Status

MOST_NAMED = 1_000
"""Failures kept by name; all of them stand in the summary workbook."""


@dataclass(slots=True)
class CurrencySums:
    """Sums of the priced jobs in one currency.

    Attributes:
        second_total: of the jobs that have one, that; of the others the total.
    """

    currency: str
    jobs: int = 0
    total: Decimal = Decimal(0)
    second_total: Decimal = Decimal(0)
    hours: Decimal = Decimal(0)
    visits: int = 0


@dataclass(slots=True)
class BatchTotals:
    """What a batch comes to.

    Attributes:
        counts: files by status. by_currency: sums of those that were priced.
        failures: rows that were not priced or are stopped, as far as they are kept.
        passed_over: names of files that are no job, as far as they are kept.
    """

    counts: dict[Status, int] = field(
        default_factory=lambda: dict.fromkeys((PRICED, STOPPED, FAILED, NO_JOB), 0)
    )
    by_currency: dict[str, CurrencySums] = field(default_factory=dict)
    failures: list[BatchRow] = field(default_factory=list)
    passed_over: list[str] = field(default_factory=list)

    @property
    def jobs(self) -> int:
        """How many files are jobs: each has a row in the summary."""
        return sum(self.counts.values()) - self.counts[NO_JOB]

    @property
    def none_priced(self) -> bool:
        """True where not a single job has a price."""
        return not self.counts[PRICED] + self.counts[STOPPED]

    def add(self, row: BatchRow) -> None:
        """Count one row."""
        self.counts[row.status] += 1
        if row.status in (FAILED, STOPPED) and len(self.failures) < MOST_NAMED:
            self.failures.append(row)
        if row.status == NO_JOB and len(self.passed_over) < MOST_NAMED:
            self.passed_over.append(row.file)
        if row.status != PRICED or row.total is None:
            return
        sums = self.by_currency.setdefault(row.currency, CurrencySums(row.currency))
        sums.jobs += 1
        sums.total += row.total
        sums.second_total += row.total if row.second_total is None else row.second_total
        sums.hours += row.hours or Decimal(0)
        sums.visits += row.visits or 0


@dataclass(frozen=True, slots=True)
class BatchDocument:
    """What `estimator batch --json` prints; a row for each job is in the workbook.

    Attributes:
        counts: files by "priced", "stopped by a finding", "not priced" and "no job".
        failures: jobs not priced or stopped, the first thousand of them.
    """

    schema: Literal["estimator-batch-1"]
    folder: str
    workbook: str
    counts: dict[str, int]
    sums: tuple[CurrencySums, ...]
    failures: tuple[BatchRow, ...]


def batch_json(totals: BatchTotals, folder: str, workbook: str) -> str:
    """Write what a batch comes to."""
    from estimator.outputs.json_out import written

    counts = {str(status): count for status, count in totals.counts.items()}
    return written(
        BatchDocument(
            "estimator-batch-1", folder, workbook, counts,
            tuple(totals.by_currency.values()), tuple(totals.failures),
        )
    )  # fmt: skip
