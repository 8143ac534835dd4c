"""What the fill screen shows, as ready words, shares and drawn values; everything it says was computed in core."""

from __future__ import annotations

from dataclasses import dataclass

from core.loads.filling import Filling
from core.loads.measures import Measure, measured_out
from core.loads.pours import nearest_pour
from core.mass.budget import contents_share, shares
from core.mass.gauge import Gauge
from core.mass.model import Bag, Estimate, Fill, MaterialKind, Shouldered, profile
from core.quantity import Measured, alike
from core.quantity.display import UnitSystem, format_doubts, format_measured_mass
from core.things.model import Closure, Thing
from core.things.model import Handle as Held
from gui.fill.words import (
    contents_text,
    empty_word,
    length_text,
    mass_text,
    measured_text,
    nb,
    other_system,
    volume_text,
    whole,
)
from gui.widgets import BarRow, Contents, Handle, RungMark, ScaleTick, Silhouette, Span, Top, VesselFill

HANDLES: dict[Held, Handle] = {
    Held.MOULDED: Handle.SIDE,
    Held.BAIL: Handle.BAIL,
    Held.LOOP: Handle.TOP,
    Held.BAR: Handle.TOP,
    Held.TWO_LOOPS: Handle.EARS,
    Held.CUT_OUT: Handle.EARS,
}
CERTAINTY = "19 times out of 20"
SEEN_SHARE = 0.005
"""A contribution smaller than this part of the largest is neither drawn nor told."""
PLAIN_MEASURES = ("cup", "measure")


@dataclass(frozen=True, slots=True, kw_only=True)
class MassView:
    """The mass in large figures with its ±, in the other units, how it splits, and what a weighing made of it."""

    figure: str
    doubt: str
    other: str
    split: str = ""
    contents_share: float | None = None
    note: str = ""

    @property
    def spoken(self) -> str:
        """The whole in one sentence."""
        return ". ".join(part for part in (f"{self.figure} {self.doubt}".strip(), self.split, self.note) if part)


@dataclass(frozen=True, slots=True, kw_only=True)
class BudgetView:
    """Where the ± comes from, and what shrinks it most."""

    rows: tuple[BarRow, ...]
    advice: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameView:
    """Everything that follows a drag."""

    fill: VesselFill
    mass: MassView
    pour: int
    cautions: tuple[str, ...]


def figures(mass: Measured, system: UnitSystem) -> tuple[str, str]:
    """“14.7 kg” and “± 0.3”; the second is empty for an exact mass."""
    number, _, wide = format_measured_mass(mass, system).partition(" ± ")
    return nb(number), nb(f"± {wide}") if wide else ""


def mass_view(
    mass: Measured, system: UnitSystem, *, split: str = "", share: float | None = None, note: str = ""
) -> MassView:
    """A mass in both unit systems."""
    figure, doubt = figures(mass, system)
    other = measured_text(mass, other_system(system))
    return MassView(
        figure=figure,
        doubt=doubt,
        other=f"{other} · {CERTAINTY}" if doubt else other,
        split=split,
        contents_share=share,
        note=note,
    )


def frame_view(filling: Filling, estimate: Estimate, height_cm: float) -> FrameView:
    """The screen at one level, whose line stands at `height_cm`."""
    system = filling.system
    return FrameView(
        fill=_vessel_fill(filling, estimate, height_cm),
        mass=mass_view(
            estimate.mass,
            system,
            split=_split(filling, estimate),
            share=contents_share(estimate),
            note=_note(filling, estimate),
        ),
        pour=nearest_pour(filling.pours, estimate.mass.value),
        cautions=tuple(whole(caution) for caution in estimate.cautions),
    )


def budget_view(estimate: Estimate, system: UnitSystem) -> BudgetView:
    """The contributions to the ±, largest first, and the advice."""
    lines = estimate.budget
    texts = format_doubts([line.u_kg for line in lines], estimate.mass, system)
    rows = tuple(
        BarRow(label=line.source, share=share, value_text=nb(text))
        for line, share, text in zip(lines, shares(lines), texts, strict=True)
        if share >= SEEN_SHARE
    )
    return BudgetView(rows=rows, advice=whole(estimate.advice))


def _vessel_fill(filling: Filling, estimate: Estimate, height_cm: float) -> VesselFill:
    system, material = filling.system, filling.material
    inside = contents_text(estimate.volume_l.value, material, filling.packing, filling.temperature_c, system)
    mass = measured_text(estimate.mass, system)
    height = f"{length_text(height_cm, system)} from the base" if filling.gauge.has_line else ""
    return VesselFill(
        height_cm=height_cm,
        band_cm=filling.gauge.band_cm(height_cm, estimate.mass),
        contents_text=inside,
        height_text=height,
        mass_text=mass,
        spoken=", ".join(part for part in (f"{mass}: {inside}", height) if part),
        contents=Contents.LIQUID if material.kind is MaterialKind.LIQUID else Contents.GRAIN,
    )


def _split(filling: Filling, estimate: Estimate) -> str:
    system = filling.system
    contents = f"contents {mass_text(max(estimate.contents.value, 0.0), system)}"
    return f"{contents} · {empty_word(filling.thing, filling.material)} {mass_text(estimate.tare.value, system)}"


def _note(filling: Filling, estimate: Estimate) -> str:
    parts = [] if estimate.weighing is None else [estimate.weighing.sentence]
    if filling.trouble:
        parts.append(f"Your weighings are left out: {filling.trouble}")
    if filling.thing.count > 1:
        together = measured_text(alike(estimate.mass, filling.thing.count), filling.system)
        many = "Both" if filling.thing.count == 2 else f"All {filling.thing.count}"
        parts.append(f"{many}, filled alike: {together}.")
    return whole(" ".join(parts))


# --- what changes only with the container or its contents ---


def silhouette(thing: Thing) -> Silhouette:
    """The drawn outline of a container."""
    container = thing.facts.container
    if container is None:
        raise ValueError(f"{thing.id} is no container")
    shape, closure = container.shape, thing.facts.closure
    handle = HANDLES.get(thing.facts.handle, Handle.NONE)
    if isinstance(shape, Bag):
        return Silhouette(outline=profile(shape), top=Top.TIED if closure is not Closure.OPEN else Top.OPEN)
    if closure in {Closure.SEALED, Closure.TIED}:
        top = Top.CAP if isinstance(shape, Shouldered) else Top.SPOUT
        if top is Top.CAP and handle is Handle.TOP:
            handle = Handle.SIDE  # drawn over the cap it would hide it
    else:
        top = Top.LID if closure is Closure.LID else Top.OPEN
    return Silhouette(outline=profile(shape), handle=handle, top=top)


def ticks(gauge: Gauge, system: UnitSystem) -> tuple[ScaleTick, ...]:
    """The scale beside the vessel."""
    return tuple(ScaleTick(height_cm=mark.height_cm, label=nb(mark.label)) for mark in gauge.marks(system))


def rungs(filling: Filling) -> tuple[RungMark, ...]:
    """The ladder of this container's loads."""
    system = filling.system
    return tuple(
        RungMark(
            load_kg=pour.mass_kg,
            load_text=mass_text(pour.mass_kg, system),
            recipe=_recipe(pour.cups, volume_text(pour.volume_l, system), full=pour.full),
            step_text=nb(f"+{pour.step_pct:.0f} %") if pour.step_pct else "",
            wide_step=pour.wide,
        )
        for pour in filling.pours
    )


def _recipe(cups: int, volume: str, *, full: bool) -> str:
    if full:
        return f"full, {volume}"
    if not cups:
        return "empty"
    return f"{cups} cup{'s' if cups > 1 else ''}, {volume}"


def goal_spans(filling: Filling, fill: Fill, measure: Measure) -> tuple[Span, ...]:
    """How to fill it to the wanted mass, poured with `measure`."""
    system = filling.system
    spans = [Span(text="Pour in "), Span(text=volume_text(fill.volume_l, system), bold=True)]
    if fill.height_cm is not None and fill.from_brim_cm is not None:
        height, brim = length_text(fill.height_cm, system), length_text(fill.from_brim_cm, system)
        spans += [
            Span(text=", up to "),
            Span(text=height, bold=True),
            Span(text=f" from the base, {brim} below the brim"),
        ]
    counted = _counted(fill.volume_l, measure, filling)
    if counted:
        spans += [Span(text=": about "), Span(text=counted, bold=True)]
    spans.append(Span(text=f". It then weighs {measured_text(fill.reaches, system)}."))
    more = mass_text(filling.gauge.kg_l * measure.litres, system)
    spans.append(Span(text=f" One {measure.name.lower()} more adds {more}."))
    return tuple(spans)


def _counted(volume_l: float, measure: Measure, filling: Filling) -> str:
    """“44 × 250 mL”, “7 × Water bottle and 2 × 250 mL”; nothing for less than half a cup."""
    out, cup = measured_out(volume_l, measure, filling.cup_l), volume_text(filling.cup_l, filling.system)
    plain = measure.name in PLAIN_MEASURES
    name = volume_text(measure.litres, filling.system) if plain else measure.name
    parts = [f"{count} × {what}" for count, what in ((out.measures, name), (out.cups, cup)) if count]
    return nb(" and ".join(parts)) if plain else " and ".join(nb(part) for part in parts)
