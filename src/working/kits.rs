//! Usable yield, the shelf and what to buy.

use super::{Scope as S, Step, step};

pub(super) const STEPS: &[Step] = &[
    step("after_factor", S::Kit, "after_factor", &["label", "factor_pct"], "bdft", "yield_factor"),
    step("usable", S::Kit, "usable", &["after_factor", "fixed_loss"], "bdft", "fixed_loss"),
    step("needs_weight", S::Kit, "needs_lb", &["label", "density_lb_ft3"], "lb", "mass_check"),
    step("stock_after_factor", S::Stock, "after_factor", &["label", "factor_pct"], "bdft", "yield_factor"),
    step("share_a", S::Stock, "a_share_pct", &["a_weight_lb", "a_label_lb"], "pct", "part_used")
        .when("a_by", &["weight"]),
    step("share_b", S::Stock, "b_share_pct", &["b_weight_lb", "b_label_lb"], "pct", "part_used")
        .when("b_by", &["weight"]),
    step("least_share", S::Stock, "least_share_pct", &["a_share_pct", "b_share_pct"], "pct", "part_used"),
    step("stock_sealed", S::Stock, "usable", &["after_factor", "fixed_loss"], "bdft", "fixed_loss")
        .when("state", &["sealed"]),
    step(
        "stock_opened",
        S::Stock,
        "usable",
        &["after_factor", "least_share_pct", "kept_pct"],
        "bdft",
        "part_used",
    )
    .when("state", &["opened"]),
    step("from_stock", S::Job, "purchase.from_stock", &["purchase.stock.counted"], "bdft", "part_used"),
    step(
        "to_buy",
        S::Job,
        "purchase.to_buy",
        &["quantity.to_spray", "purchase.from_stock"],
        "bdft",
        "board_foot",
    )
    .when("purchase.supply", &["shelf_first"]),
    step("bought_label", S::Job, "purchase.buy.label", &["purchase.lines.label"], "bdft", "carton"),
    step("bought_usable", S::Job, "purchase.buy.usable", &["purchase.lines.usable"], "bdft", "yield_factor"),
    step("bought_cost", S::Job, "purchase.buy.cost", &["purchase.lines.cost"], "usd", "carton"),
    step(
        "price_tax",
        S::Job,
        "purchase.price.tax",
        &["purchase.buy.cost", "purchase.price.tax_pct"],
        "usd",
        "sales_tax",
    ),
    step(
        "price_total",
        S::Job,
        "purchase.price.total",
        &["purchase.buy.cost", "purchase.price.tax", "purchase.price.delivery"],
        "usd",
        "quote",
    ),
    step(
        "left_over",
        S::Job,
        "purchase.buy.left",
        &["purchase.buy.usable", "quantity.to_spray"],
        "bdft",
        "board_foot",
    )
    .when("purchase.supply", &["bought"]),
    step(
        "left_over_shelf",
        S::Job,
        "purchase.buy.left",
        &["purchase.from_stock", "purchase.buy.usable", "quantity.to_spray"],
        "bdft",
        "board_foot",
    )
    .when("purchase.supply", &["shelf_first"]),
    step(
        "break_factor",
        S::Job,
        "purchase.buy.break_factor_pct",
        &["quantity.to_spray", "purchase.lines.fixed_loss", "purchase.lines.label"],
        "pct",
        "yield_factor",
    )
    .when("purchase.supply", &["bought"]),
    step(
        "break_factor_shelf",
        S::Job,
        "purchase.buy.break_factor_pct",
        &[
            "quantity.to_spray",
            "purchase.buy.fixed_loss",
            "purchase.stock_loss",
            "purchase.buy.label",
            "purchase.stock_label",
        ],
        "pct",
        "part_used",
    )
    .when("purchase.supply", &["shelf_first"]),
    step(
        "dearer_by",
        S::Job,
        "purchase.dearer_by",
        &["purchase.buy.cost", "purchase.least_cost"],
        "usd",
        "carton",
    ),
    step(
        "largest_kits",
        S::Job,
        "purchase.too_big.largest_kits",
        &["purchase.too_big.to_spray", "purchase.too_big.largest_usable"],
        "each",
        "too_big",
    ),
];
