"""Sales tax and VAT: what is paid at the counter, what is charged, and how it is rounded.

Eight modes, named in shop.toml. A line of the price is taxed or not by its mode:

- materials-sold: materials as sold, and allowances for materials.
- purchase-and-labor: every line that is work: labor, trips, supply run, overhead, profit,
  contingency, the step up to the minimum, the rounding of the offer, allowances for labor.
- whole-price, gross-receipts, part-of-price, vat: every line before tax, permit too.
- none, paid-at-purchase: no line.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from decimal import ROUND_DOWN, ROUND_HALF_EVEN, ROUND_HALF_UP, Decimal

from estimator.money import minor_unit, round_money
from estimator.pricing.price_records import ZERO, TaxBuild, TaxedLine
from estimator.settings import TaxRounding, TaxTerms

PAID_AT_COUNTER = ("paid-at-purchase", "purchase-and-labor", "gross-receipts")
UNTAXED = ("none", "paid-at-purchase")
MATERIALS, WORK, OTHER = "materials", "labor", "other"
_ROUNDINGS = {"half-up": ROUND_HALF_UP, "down": ROUND_DOWN, "half-even": ROUND_HALF_EVEN}
_ALL_PCT = 100

PricedLine = tuple[str, str, Decimal]
"""A line of the price: its name, what it counts as (materials, labor, other), its amount."""


def rounded_tax(amount: Decimal, rounding: TaxRounding, currency: str) -> Decimal:
    """Round a tax to the minor unit; a credit is rounded like its charge.

    >>> rounded_tax(Decimal("0.672"), "down", "USD")
    Decimal('0.67')
    """
    rounded = amount.quantize(Decimal(f"1E-{minor_unit(currency)}"), _ROUNDINGS[rounding])
    return rounded or abs(rounded)


def without_tax(gross: Decimal, rate_pct: Decimal, currency: str) -> Decimal:
    """The price inside one that includes tax, rounded to the cent: gross / (1 + rate).

    >>> without_tax(Decimal("589.88"), Decimal("7.25"), "USD")
    Decimal('550.00')
    """
    return round_money(_ALL_PCT * gross / (_ALL_PCT + rate_pct), currency)


def tax_inside(gross: Decimal, rate_pct: Decimal, currency: str) -> Decimal:
    """The tax inside a price that includes it: gross - gross / (1 + rate)."""
    return gross - without_tax(gross, rate_pct, currency)


def counter_rate_pct(terms: TaxTerms) -> Decimal:
    """The rate that counts at the counter; 0 where what is paid there does not matter."""
    if terms.mode in PAID_AT_COUNTER:
        return terms.purchase_rate_pct
    if terms.mode == "vat" and terms.prices_include_tax:
        return terms.purchase_rate_pct or terms.rate_pct
    return ZERO


def tax_on(amount: Decimal, terms: TaxTerms, currency: str) -> Decimal:
    """The tax on one amount, rounded as the terms say.

    In mode "gross-receipts" the tax is owed on itself too: amount x rate / (100 - rate), or
    amount x the published factor.
    """
    pct, over = terms.rate_pct, Decimal(_ALL_PCT)
    if terms.mode == "gross-receipts":
        pct = terms.rate_pct if terms.gross_factor_pct is None else terms.gross_factor_pct
        over = over - pct if terms.gross_factor_pct is None else over
    return rounded_tax(amount * pct / over, terms.rounding, currency)


def factor_pct(terms: TaxTerms) -> Decimal:
    """What a taxed amount is multiplied by, in percent; not rounded."""
    if terms.mode in UNTAXED:
        return ZERO
    if terms.mode != "gross-receipts":
        return terms.rate_pct
    if terms.gross_factor_pct is not None:
        return terms.gross_factor_pct
    return _ALL_PCT * terms.rate_pct / (_ALL_PCT - terms.rate_pct)


def build_tax(lines: Iterable[PricedLine], terms: TaxTerms, currency: str) -> TaxBuild:
    """Work out the tax charged to the customer on the lines of a price.

    What is taxed together is never below nothing, however far a price is rounded down.
    """
    taxed = [(name, amount) for name, kind, amount in lines if amount and _is_taxed(kind, terms)]
    share = terms.taxed_share_pct if terms.mode == "part-of-price" else Decimal(_ALL_PCT)
    bases = [round_money(amount * share / 100, currency) for _, amount in taxed]
    taxes = line_taxes(bases, terms, currency)
    zero = round_money(ZERO, currency)
    if terms.basis == "line":
        base, tax = max(sum(bases, zero), zero), sum(taxes, zero)
    else:
        whole = max(sum((amount for _, amount in taxed), zero), zero)
        base = round_money(whole * share / 100, currency)
        tax = zero if terms.mode in UNTAXED else tax_on(base, terms, currency)
    return TaxBuild(
        mode=terms.mode,
        basis=terms.basis,
        rounding=terms.rounding,
        rate_pct=ZERO if terms.mode in UNTAXED else terms.rate_pct,
        share_pct=share,
        factor_pct=factor_pct(terms),
        lines=tuple(
            TaxedLine(name, amount, on_it)
            for (name, amount), on_it in zip(taxed, taxes, strict=True)
        ),
        base=base,
        tax=tax,
    )


def line_taxes(amounts: Sequence[Decimal], terms: TaxTerms, currency: str) -> tuple[Decimal, ...]:
    """The tax on each line by itself.

    A line below zero takes tax off, and never more than the lines before it brought.
    """
    taxes: list[Decimal] = []
    for amount in amounts:
        taxes.append(max(tax_on(amount, terms, currency), -sum(taxes, ZERO)))
    return tuple(taxes)


def _is_taxed(kind: str, terms: TaxTerms) -> bool:
    if terms.mode in UNTAXED:
        return False
    if terms.mode == "materials-sold":
        return kind == MATERIALS
    return terms.mode != "purchase-and-labor" or kind == WORK
