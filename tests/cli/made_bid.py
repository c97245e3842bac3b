"""A small bid put together by hand: the back-to-back outlet S3, worked by hand."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from estimator.catalog.records import Books
from estimator.pricing.records import (
    Bid,
    FindingCounts,
    Hours,
    LaborLine,
    PackBought,
    PriceBuild,
    RouteOption,
    ShoppingLine,
    StockDrawn,
)
from estimator.rules.records import Finding, RemedyChange, RemedyPart, RemedyTask
from estimator.survey.records import Survey
from estimator.takeoff.records import (
    Assumption,
    BoxCount,
    CableCut,
    CableOrder,
    Closing,
    PartLine,
    RunCount,
    Takeoff,
    TaskLine,
    Visit,
)
from tests.pricing.made_books import shipped

SURVEY = {
    "job": {"id": "S3", "title": "Closet charger", "customer": "Sample customer"},
    "boxes": [
        {"id": "source", "existing": True, "room": "hall", "cables": ["14-2", "14-2"]},
        {"id": "new", "room": "closet"},
    ],
    "runs": [
        {
            "id": "1", "from": "source", "to": "new", "cable": "14-2",
            "legs": [{"go": "across", "length": "5 in"}],
        }
    ],
}  # fmt: skip
ZERO = Decimal(0)

CUT = CableCut(
    "1", "source", "new", Fraction(5), Fraction(0), Fraction(0), Fraction(24), Fraction(29)
)
ORDER = CableOrder(
    item="cable-14-2", kind="14-2", cuts=(CUT,), cuts_in=Fraction(29), allowance_pct=ZERO,
    with_allowance_in=Fraction(29), step_in=Fraction(12), order_in=Fraction(36),
    order=Decimal(3), unit="ft",
)  # fmt: skip
RUN = RunCount(
    run_id="1", way="through", path_in=Fraction(5), studs=0, listed=(("king", 2),), corners=0,
    obstacles=0, plates_pierced=0, plate_holes=0, floor_holes=0, bored=0, notched=0,
    protection_plates=0, staples=0, sealant=0, assumed=True,
)  # fmt: skip
SOURCE_BOX = BoxCount(
    box_id="source", role="source", existing=True, conductors=(("14", 6),), grounds=3,
    fill_before=Decimal("16.0"), fill_after=Decimal("20.0"), fill_sum="(6 + 1 + 2 + 1) x 2.00",
    volume_in3=Decimal("22.5"), old_volume_in3=Decimal("12.5"), item="box-deep", replaced=True,
    pigtails=3, joints=(4, 4, 4), clamps="no",
)  # fmt: skip
TAKEOFF = Takeoff(
    runs=(RUN,),
    cable=(ORDER,),
    boxes=(SOURCE_BOX,),
    parts=(
        PartLine("P01", "cable", "cable-14-2", "Cable 14-2", Decimal("3.0"), "ft", "run 1",
                 "29 in of cuts, no allowance, up to 3 ft", "practice.order_step"),
        PartLine("P02", "boxes", "box-deep", "Deep box 22.5 in3", Decimal(1), "ea", "source",
                 "20 in3 needed, 12.5 there", "nec-2023", remedy="box-fill:source"),
    ),
    tasks=(
        TaskLine("W01", "rough-in", "fish-cable", Decimal(1), "run", "hall", "one fished run",
                 "S3", conditions=("plaster",)),
    ),
    closing=Closing(0, 0, *(Fraction(0),) * 7, disturbed_in2=(("hall", Fraction(657, 2)),)),
    visits=(Visit(1, "All of the work", ZERO),),
    assumptions=(
        Assumption(1, "grounded", "taken as grounded", False, findings=("ground-source:source",)),
    ),
)  # fmt: skip
PACK = PackBought("Sample supply", "Cable, cut to length", "length", Decimal(3), "ft", 1,
                  Decimal("1.86"), Decimal("1.86"))  # fmt: skip
PLATES = PackBought("Sample supply", "Protection plate, pack of 5", "pack", Decimal(5), "ea", 2,
                    Decimal("4.50"), Decimal("9.00"))  # fmt: skip
SHOPPING = (
    ShoppingLine("protection-plate", "Protection plate", "Boxes", "ea", Decimal(8), Decimal(8),
                 (PLATES,), (), Decimal("9.00"), "two packs"),
    ShoppingLine("cable-14-2", "Cable 14-2", "Wire", "ft", Decimal(3), Decimal(3), (PACK,), (),
                 Decimal("1.86"), "least cost"),
    ShoppingLine("box-deep", "Deep box", "Boxes", "ea", Decimal(1), Decimal(1), (), (), None, ""),
    ShoppingLine("plate", "Plate", "Devices", "ea", Decimal(1), ZERO, (),
                 (StockDrawn("one plate", Decimal(1), "ea", Decimal("0.80"), Decimal("0.80")),),
                 Decimal("0.80"), "from the truck"),
)  # fmt: skip
LABOR = (
    LaborLine("W01", "fish-cable", "Fish cable", "rough-in", Decimal(1), "run", "hall",
              Decimal("0.5"), Decimal("1"), Decimal("2"), Decimal("1.75"), "plaster",
              Decimal("0.875"), Decimal("1.75"), Decimal("3.5")),
)  # fmt: skip
PRICE = PriceBuild(
    hours_charged=Decimal("1.75"), labor_rate_per_hour=Decimal("85.00"), labor=Decimal("148.75"),
    materials_listed=Decimal("28.40"), materials_overridden=True, small_items_pct=ZERO,
    small_items=ZERO, materials_cost=Decimal("28.40"), markup_pct=Decimal(30),
    margin_pct=Decimal("23.08"), materials_sell=Decimal("36.92"), trips_count=1,
    trip_charge=ZERO, trips=ZERO, base=Decimal("185.67"), overhead_pct=ZERO, overhead=ZERO,
    profit_pct=ZERO, profit=ZERO, built_up=Decimal("185.67"), minimum_charge=Decimal("225.00"),
    minimum_governs=True, offered=Decimal("225.00"), permit_cost=ZERO, permit_handling=ZERO,
    before_tax=Decimal("225.00"), tax_mode="none", tax_rate_pct=ZERO, tax=ZERO,
    total=Decimal("225.00"), deposit_pct=Decimal(30), deposit=Decimal("67.50"),
    balance=Decimal("157.50"), unpriced_items=("box-deep",),
)  # fmt: skip
FINDINGS = (
    Finding(
        "breaker-wire",
        "circuit",
        "pass",
        "15 A on 14 AWG",
        "NEC 2023 240.4(D)",
        "nec-2023",
        title="Breaker against wire",
    ),
    Finding(
        "ground-source",
        "source",
        "unknown",
        "nobody looked",
        "NEC 2023 250.130(C)",
        "nec-2023",
        remedy="Look in the box.",
        title="Source has a ground",
    ),
    Finding(
        "box-fill",
        "source",
        "fail",
        "needs 20.0 in3, has 12.5 in3",
        "NEC 2023 314.16",
        "nec-2023",
        remedy="Fit a deep box of 22.5 in3.",
        blocking=True,
        title="Wires in each box",
    ),
)
REMEDIES = (
    RemedyPart("boxes", "box-deep", Decimal(1), "ea"),
    RemedyTask("terminate", "replace-box", Decimal(1), "ea"),
    RemedyChange("device", "new", "gfci receptacle"),
)  # fmt: skip


def made_way() -> RouteOption:
    """The way C of S14, worked by hand, as if there were no way into the crawlspace."""
    return RouteOption(
        route="C", rank=1, order_text="14 ft of 14-2", members=2, openings=0,
        opening_in2=Fraction(0), hours=Decimal("1.663"), labor=Decimal("133.07"),
        materials=Decimal("8.68"), cost=Decimal("141.75"), total=Decimal("141.75"),
        findings=FindingCounts(1, 0, 0, 2, 3, 4), blocked_by=("level-access:C",),
        unpriced_items=(), why="blocked by level-access:C", chosen=False,
    )  # fmt: skip


def made_bid(**changes: object) -> Bid:
    """The bid, with some of its fields changed."""
    settings = replace(shipped().shop, shown={"price.markup": "30"})
    bid = Bid(
        survey=Survey.model_validate(SURVEY),
        books=Books({}, {}, {}, settings, {"materials": "materials.csv"}),
        takeoff=TAKEOFF, findings=FINDINGS, shopping=SHOPPING, labor=LABOR,
        hours=Hours(Decimal("0.875"), Decimal("1.75"), Decimal("3.5"), Decimal("1.895833"),
                    Decimal("1.75"), "override"),
        price=PRICE, routes=(), book_lines=(), second_total=None, second_total_why="",
    )  # fmt: skip
    return replace(bid, **changes)  # type: ignore[arg-type]
