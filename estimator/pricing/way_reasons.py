"""Why each way has its rank, in words: what blocks it, what it costs against the best."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from decimal import Decimal

from estimator.pricing.work import Work

ALONE = "the only way in this survey"
ONLY_OPEN = "the only way that no finding blocks"
NONE_OPEN = "every way is blocked"
Named = tuple[str, Work]
Money = Callable[[Decimal], str]


def reasons_for(order: Sequence[Named], money: Money) -> tuple[str, ...]:
    """The reason for each rank, of ways in their order; blocked and unpriced ones come last.

    `money` shows an amount as the job's locale writes it.
    """
    best = order[0]
    return tuple(
        _first(order, money) if at == 0 else _other(each, best, money)
        for at, each in enumerate(order)
    )


def _first(order: Sequence[Named], money: Money) -> str:
    """Why the best is the best."""
    name, work = order[0]
    if work.blocked_by:
        return f"{NONE_OPEN if len(order) > 1 else ALONE}; {_blocked(work)}"
    said = _unpriced(work)
    if len(order) == 1:
        return "; ".join((ALONE, *said))
    second = order[1]
    if second[1].blocked_by:
        return "; ".join((ONLY_OPEN, *said))
    if second[1].price.unpriced_items and not said:
        return f"the only way whose every item has a price; {_against(order[0], second, money)}"
    return "; ".join((_against((name, work), second, money), *said))


def _other(each: Named, best: Named, money: Money) -> str:
    work = each[1]
    said = [_blocked(work)] if work.blocked_by else []
    return "; ".join((*said, _against(each, best, money), *_unpriced(work)))


def _blocked(work: Work) -> str:
    return f"blocked by {', '.join(work.blocked_by)}"


def _unpriced(work: Work) -> tuple[str, ...]:
    """Say that the cost is not known in full."""
    items = work.price.unpriced_items
    return (f"its cost leaves out what has no price: {', '.join(items)}",) if items else ()


def _against(each: Named, other: Named, money: Money) -> str:
    """How much more or less a way costs than another, and what makes the difference."""
    one, two = each[1].price, other[1].price
    labor, materials = one.labor - two.labor, one.materials_listed - two.materials_listed
    cost = labor + materials
    if cost == 0:
        return f"costs the same as {other[0]}"
    parts = [
        f"labor {_signed(labor, money)}" if labor else "",
        f"materials {_signed(materials, money)}" if materials else "",
    ]
    more = "more" if cost > 0 else "less"
    because = ", ".join(part for part in parts if part)
    return f"costs {money(abs(cost))} {more} than {other[0]} ({because})"


def _signed(amount: Decimal, money: Money) -> str:
    return f"{'+' if amount > 0 else '-'}{money(abs(amount))}"
