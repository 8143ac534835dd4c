"""What a movement needs, in words, for the sentences that say it is lacking."""

from __future__ import annotations

from core.exercise.model import Use

USE_WORDS: dict[Use, str] = {
    Use.HUG: "something to hug to the chest",
    Use.FRONT: "something to hold in front",
    Use.ONE_HAND: "a load to hold in one hand",
    Use.TWO_HANDS: "a load to hold in two hands",
    Use.PAIR: "two alike, one for each hand",
    Use.BACK: "a loaded backpack",
    Use.SHOULDER: "a load to lay on one shoulder",
    Use.OVERHEAD: "a load safe to press overhead",
    Use.BETWEEN_FEET: "a load to lift from between the feet",
    Use.DRAG: "something to drag",
    Use.SWING: "a load safe to swing",
    Use.STEP: "something safe to step on",
    Use.SIT: "a seat",
    Use.HANDS: "something steady to lean the hands on",
    Use.FEET: "something steady to raise the feet on",
    Use.BALANCE: "something to hold for balance",
    Use.ROW_EDGE: "an edge or beam rated to row from",
    Use.HANG_BAR: "something rated to hang from",
    Use.ANCHOR: "a rated anchor for a strap or band",
    Use.TOWEL: "a towel",
    Use.BAND: "an elastic band",
    Use.STICK: "a stick or broom",
    Use.SLIDER: "something that slides on the floor",
    Use.PAD: "something soft to kneel or lie on",
    Use.WALL: "a wall",
    Use.DOOR_FRAME: "a door frame",
    Use.FLOOR: "clear floor",
    Use.STAIRS: "stairs",
    Use.ROUTE: "a clear way to walk",
    Use.BARBELL: "a barbell",
    Use.RACK: "a rack",
    Use.FLAT_BENCH: "a training bench",
    Use.MACHINE: "a machine",
    Use.CABLE: "a cable machine",
    Use.RINGS: "rings",
}


def nothing_listed(use: Use) -> str:
    """“you list no wall”, “you list nothing to hug to the chest”, “you list no two alike, one for each hand”."""
    words = USE_WORDS[use]
    for article, instead in (("something ", "nothing "), ("an ", "no "), ("a ", "no ")):
        if words.startswith(article):
            return f"you list {instead}{words[len(article) :]}"
    return f"you list no {words}"
