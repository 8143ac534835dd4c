"""The colours of Fillmark as two frozen sets of tokens, one for light and one for dark surroundings.

Every colour is a `#rrggbb` string. No Qt here: the tokens are plain values that tests can measure.
Names say what a colour is for, never what it looks like, so both sets answer to the same names.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Tokens:
    """All colours one theme paints with; every `*_ink` is text meant for the background of the same stem."""

    dark: bool
    page: str
    surface: str
    surface_soft: str
    surface_hover: str
    line: str
    control_line: str
    ink: str
    ink_soft: str
    outline: str
    accent: str
    accent_hover: str
    on_accent: str
    accent_ink: str
    accent_soft: str
    track: str
    bar_quiet: str
    focus: str
    good: str
    good_ink: str
    fair: str
    fair_ink: str
    bad: str
    bad_ink: str
    plain: str
    plain_ink: str
    selected: str
    selected_ink: str
    liquid: str
    liquid_band: str
    liquid_line: str
    liquid_ink: str
    amber: str
    sidebar: str
    sidebar_selected: str
    sidebar_hover: str
    sidebar_ink: str
    sidebar_ink_soft: str
    sidebar_focus: str
    sidebar_mark: str
    squat: str
    push: str
    pull: str
    carry: str
    trunk: str
    gait: str
    mobility: str


LIGHT = Tokens(
    dark=False,
    page="#eff2ee",
    surface="#ffffff",
    surface_soft="#f3f6f4",
    surface_hover="#f7faf8",
    line="#d5dcd7",
    control_line="#7b8a85",
    ink="#16211f",
    ink_soft="#55635f",
    outline="#16302e",
    accent="#1f7a8c",
    accent_hover="#1a6979",
    on_accent="#ffffff",
    accent_ink="#1a6877",
    accent_soft="#e1eff1",
    track="#e3e9e5",
    bar_quiet="#bfd3d1",
    focus="#0d5462",
    good="#dcede1",
    good_ink="#1f5a38",
    fair="#fbefd0",
    fair_ink="#6e4c06",
    bad="#f5e1db",
    bad_ink="#8f2f1e",
    plain="#e6ece8",
    plain_ink="#22302d",
    selected="#1f7a8c",
    selected_ink="#ffffff",
    liquid="#bfe0e4",
    liquid_band="#8cc3cb",
    liquid_line="#1f7a8c",
    liquid_ink="#134f5c",
    amber="#b87708",
    sidebar="#16302e",
    sidebar_selected="#24514c",
    sidebar_hover="#1d403d",
    sidebar_ink="#dce8e4",
    sidebar_ink_soft="#a9beb8",
    sidebar_focus="#7fd0da",
    sidebar_mark="#e5ad3a",
    squat="#1f7a8c",
    push="#bd7d0c",
    pull="#7a5aa6",
    carry="#6e7f2b",
    trunk="#64748b",
    gait="#3c6e9e",
    mobility="#ad5a78",
)

DARK = Tokens(
    dark=True,
    page="#10201f",
    surface="#172b29",
    surface_soft="#1f3735",
    surface_hover="#1c3331",
    line="#2b4541",
    control_line="#6b8781",
    ink="#eaf2ef",
    ink_soft="#a8bdb7",
    outline="#dfe9e5",
    accent="#4fb3c1",
    accent_hover="#69c3cf",
    on_accent="#08201f",
    accent_ink="#7fd0da",
    accent_soft="#1d4147",
    track="#2d4643",
    bar_quiet="#3f6562",
    focus="#8fdbe4",
    good="#1f4331",
    good_ink="#b4e2c3",
    fair="#483a16",
    fair_ink="#f3d896",
    bad="#52291f",
    bad_ink="#f6c1b2",
    plain="#2a423f",
    plain_ink="#dde8e4",
    selected="#4fb3c1",
    selected_ink="#08201f",
    liquid="#24707d",
    liquid_band="#3c93a1",
    liquid_line="#7fd0da",
    liquid_ink="#eefafb",
    amber="#e5ad3a",
    sidebar="#16302e",
    sidebar_selected="#24514c",
    sidebar_hover="#1d403d",
    sidebar_ink="#dce8e4",
    sidebar_ink_soft="#a9beb8",
    sidebar_focus="#7fd0da",
    sidebar_mark="#e5ad3a",
    squat="#4fb3c1",
    push="#e0a11b",
    pull="#ab92d6",
    carry="#a3b552",
    trunk="#96a7bd",
    gait="#7fb0de",
    mobility="#d98fab",
)
