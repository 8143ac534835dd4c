"""Food tins by trade name and size code, and how much water each holds.

The 20 rows are the Can Manufacturers Institute's voluntary standard: outside dimensions and capacity in avoirdupois
ounces of water at 68 °F (often misprinted as fluid ounces, 4 % too large). A code such as 603x700 gives diameter and
height: the first digit whole inches, the next two sixteenths. For a code outside the table the capacity is modelled as
π/4 d² (H - 9 mm) with the inner body diameter d of that end size; 9 mm is what both seams and the headspace take.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from itertools import pairwise

from core.errors import InputError
from core.mass.water import water_density_kg_m3
from core.quantity.measured import Measured, Origin

OUNCE_KG = 0.028349523125
WATER_AT_68_F_KG_L = water_density_kg_m3(20.0) / 1000
SEAMS_AND_HEADSPACE_MM = 9.0
# End code -> inner body diameter in mm, as procurement lists give it.
BODY_MM = {"202": 52.3, "211": 65.3, "300": 73.0, "307": 83.4, "401": 99.0, "603": 153.0}
# Half-widths: what filling and measuring leave open, and how far the model misses table rows it was not made from.
TABLE_HALF_WIDTH, MODEL_HALF_WIDTH = 0.01, 0.04
SOURCE_IDS = ("cmi_can_sizes", "can_body_diameters")


@dataclass(frozen=True, slots=True, kw_only=True)
class Tin:
    """A tin size: trade name (or its code), code, and capacity in ounces of water if the table has it."""

    name: str
    code: str
    water_oz: float | None = None

    @property
    def diameter_mm(self) -> float:
        """Outside diameter over the seam."""
        return _inches(self.code[:3]) * 25.4

    @property
    def height_mm(self) -> float:
        """Outside height."""
        return _inches(self.code[4:]) * 25.4

    @property
    def vacuum_packed(self) -> bool:
        """True for the flat sizes made for vacuum packs, which hold less food than their size suggests."""
        return "Vacuum" in self.name

    @property
    def capacity_l(self) -> Measured:
        """Water capacity in litres."""
        if self.water_oz is None:
            litres = modelled_capacity_l(self)
            return Measured.rectangular(litres, MODEL_HALF_WIDTH * litres)
        litres = self.water_oz * OUNCE_KG / WATER_AT_68_F_KG_L
        return Measured.rectangular(litres, TABLE_HALF_WIDTH * litres, Origin.LABEL)


def _row(name: str, code: str, water_oz: float) -> Tin:
    return Tin(name=name, code=code, water_oz=water_oz)


TINS = (
    _row("6Z", "202x308", 6.08),
    _row("8Z Short", "211x300", 7.93),
    _row("8Z Tall", "211x304", 8.68),
    _row("No. 1 Picnic", "211x400", 10.94),
    _row("No. 211 Cylinder", "211x414", 13.56),
    _row("No. 300", "300x407", 15.22),
    _row("No. 300 Cylinder", "300x509", 19.40),
    _row("No. 1 Tall", "301x411", 16.70),
    _row("No. 303", "303x406", 16.88),
    _row("No. 303 Cylinder", "303x509", 21.86),
    _row("No. 2 Vacuum", "307x306", 14.71),
    _row("No. 2", "307x409", 20.55),
    _row("Jumbo", "307x510", 25.80),
    _row("No. 2 Cylinder", "307x512", 26.40),
    _row("No. 1.25", "401x206", 13.81),
    _row("No. 2.5", "401x411", 29.79),
    _row("No. 3 Vacuum", "404x307", 23.90),
    _row("No. 3 Cylinder", "404x700", 51.70),
    _row("No. 5", "502x510", 59.10),
    _row("No. 10", "603x700", 109.43),
)


def find_tin(text: str) -> Tin:
    """The tin of a code ("603x700") or a trade name ("No. 10", "#303", "2 1/2"); `InputError` if there is none."""
    plain = " ".join(text.lower().split())
    code = re.fullmatch(r"(\d{3}) ?[x×] ?(\d{3})", plain)
    if code is not None:
        return _by_code(f"{code[1]}x{code[2]}", text)
    wanted = _bare(plain)
    for tin in TINS:
        if wanted == _bare(tin.name.lower()):
            return tin
    raise InputError(
        text, "is not a tin size known here", "write a code like 603x700, a name like No. 10, or its net mass"
    )


def tin_near(litres: float) -> Tin:
    """The table's size whose capacity is nearest to `litres`."""
    return min(TINS, key=lambda tin: (abs(math.log(tin.capacity_l.value / litres)), tin.code))


def modelled_capacity_l(tin: Tin) -> float:
    """π/4 d² (H - 9 mm) in litres."""
    return math.pi / 4 * body_mm(tin) ** 2 * (tin.height_mm - SEAMS_AND_HEADSPACE_MM) / 1e6


def body_mm(tin: Tin) -> float:
    """Inner body diameter; between listed end sizes what the seam takes is read off a straight line."""
    listed = BODY_MM.get(tin.code[:3])
    if listed is not None:
        return listed
    seams = [(_inches(code) * 25.4, _inches(code) * 25.4 - body) for code, body in BODY_MM.items()]
    return tin.diameter_mm - _interpolated(seams, tin.diameter_mm)


def _interpolated(points: list[tuple[float, float]], x: float) -> float:
    """Straight line between neighbours, constant beyond the ends."""
    if x <= points[0][0]:
        return points[0][1]
    for (x0, y0), (x1, y1) in pairwise(points):
        if x <= x1:
            return y0 + (y1 - y0) * (x - x0) / (x1 - x0)
    return points[-1][1]


def _by_code(code: str, shown: str) -> Tin:
    for tin in TINS:
        if tin.code == code:
            return tin
    found = Tin(name=code, code=code)
    sixteenths = (int(code[1:3]), int(code[5:7]))
    if max(sixteenths) > 15 or not (40 <= found.diameter_mm <= 230 and 30 <= found.height_mm <= 250):
        rule = "is not a tin code: a digit of whole inches and two of sixteenths, twice"
        raise InputError(shown, rule, "write it like 603x700, or give the net mass on the label")
    return found


def _inches(digits: str) -> float:
    return int(digits[0]) + int(digits[1:3]) / 16


def _bare(name: str) -> str:
    """A name without "No.", "#", "can" and the like, so that "#2 1/2 can" and "No. 2.5" meet."""
    name = name.replace("1/2", ".5").replace("1/4", ".25").replace("½", ".5").replace("¼", ".25")
    bare = re.sub(r"\b(no|nr|number|can|tin|size)\b\.?|#", " ", name)
    return re.sub(r"\s+(?=\.)", "", " ".join(bare.split()))
