"""The modes of tax in words: what each does, for the build-up and for the customer's page."""

from __future__ import annotations

from estimator.saying import Said, said

NONE, VAT = "none", "vat"
AT_PURCHASE, ON_MATERIALS, ON_ALL = "paid-at-purchase", "materials-sold", "whole-price"
ON_WORK, GROSS, PART = "purchase-and-labor", "gross-receipts", "part-of-price"
PAY_AT_COUNTER = (AT_PURCHASE, ON_WORK, GROSS)
TAX_MODES = {
    NONE: "no tax",
    AT_PURCHASE: "paid when buying, a cost; nothing is charged to the customer",
    ON_MATERIALS: "charged on the materials as sold, bought without tax",
    ON_ALL: "charged on the whole price",
    ON_WORK: "paid when buying, a cost; and charged on all that is not materials",
    GROSS: "on all that is received, the tax too: the price is grossed up",
    PART: "charged on a share of the price",
    VAT: "charged on the whole net price; what is paid when buying comes back",
}
CHARGING = (ON_MATERIALS, ON_ALL, ON_WORK, GROSS, PART, VAT)
SOLD, BEFORE_PROFIT = "sold", "before-profit"
_ALL = ("materials", "labor", "other")
# What the lines that are taxed count as, by mode; permit fees count as "other".
CHARGED_ON = {
    NONE: (), AT_PURCHASE: (), ON_MATERIALS: ("materials",), ON_ALL: _ALL, ON_WORK: ("labor",),
    GROSS: _ALL, PART: _ALL, VAT: _ALL,
}  # fmt: skip
# The customer's page: modes that charge nothing, and modes that charge at a rate.
UNTAXED_WORDS = {
    NONE: said("no tax is charged"),
    AT_PURCHASE: said("tax on materials is inside the price: the firm pays it when it buys them"),
}


def customer_words(mode: str, rate: str, share: str) -> Said:
    """What the tax of a mode that charges any is on, as the customer reads it."""
    match mode:
        case "materials-sold":
            return said("{rate} % on the materials as sold", rate=rate)
        case "whole-price":
            return said("{rate} % on the whole price before tax", rate=rate)
        case "purchase-and-labor":
            return said("{rate} % on the work; tax on materials is inside the price", rate=rate)
        case "gross-receipts":
            return said(
                "{rate} % tax on all that the firm receives for this job, this tax too", rate=rate
            )
        case "part-of-price":
            return said("{rate} % on {share} % of the price before tax", rate=rate, share=share)
        case _:
            return said("{rate} % value added tax on the whole price before it", rate=rate)
