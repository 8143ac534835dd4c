"""Adding by typing: what is understood, what is asked about, what is refused, and that nothing counted is lost."""

from __future__ import annotations

import string
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.things.model import Hazard, ThingKind
from core.things.quick_add import Changes, Question, ReadThing, answered, make_thing, read_things
from tests.core.things.examples import shipped

KINDS = tuple(shipped().values())


def read_all(text: str) -> tuple[ReadThing, ...]:
    found = read_things(text, KINDS)
    assert not [answer.sentence for answer in found if isinstance(answer, Question)]
    return tuple(answer for answer in found if isinstance(answer, ReadThing))


def read_one(text: str) -> ReadThing:
    (found,) = read_all(text)
    return found


def asked(text: str) -> Question:
    (found,) = read_things(text, KINDS)
    assert isinstance(found, Question), found
    return found


def stated(changes: Changes) -> dict[str, Any]:
    """The changes that were stated."""
    names = Changes.__dataclass_fields__
    return {name: value for name in names if (value := getattr(changes, name)) not in (None, (), frozenset())}


@pytest.mark.parametrize(
    ("text", "kind_id", "count", "name", "changes"),
    [
        ("2 one-gallon milk jugs", "milk_jug_gallon", 2, "Milk jug 1 gal", {"capacity_l": 3.785411784}),
        ("backpack 25 L", "backpack", 1, "Backpack 25 L", {"capacity_l": 25.0}),
        ("stairs, 12 steps", "stairs", 1, "Stairs", {"steps": 12}),
        ("12 stairs", "stairs", 1, "Stairs", {"steps": 12}),
        ("stairs with 12 steps and 18 cm rise", "stairs", 1, "Stairs", {"steps": 12, "rise_cm": 18.0}),
        ("lock steps, 7 at 19 cm", "lock_steps", 1, "Lock steps", {"steps": 7, "rise_cm": 19.0}),
        ("20 kg dumbbell", "dumbbell", 1, "Dumbbell 20 kg", {"mass_kg": 20.0}),
        ("two five-litre bottles", "bottle_five_litre", 2, "Bottle 5 L", {"capacity_l": 5.0}),
        ("6 bean tins", "tin_food", 6, "Bean tin", {}),
        ("6 tins of beans 400 g", "tin_food", 6, "Tin of beans 400 g", {"mass_kg": 0.4}),
        ("coal bag 10 kg", "coal_bag", 1, "Coal bag 10 kg", {"mass_kg": 10.0}),
        ("daypack 28 L", "daypack", 1, "Daypack 28 L", {"capacity_l": 28.0}),
        ("2 water carriers, 25 L", "water_carrier", 2, "Water carrier", {"capacity_l": 25.0}),
        ("folding stool", "folding_stool", 1, "Folding stool", {}),
        ("pull up bar", "pull_up_bar_door", 1, "Pull up bar", {}),
        ("a dozen bricks", "brick", 12, "Brick", {}),
        ("two dozen bricks", "brick", 24, "Brick", {}),
        ("10 lb dumbbell x2", "dumbbell", 2, "Dumbbell 10 lb", {"mass_kg": 4.5359237}),
        ("pair of 5 kg dumbbells", "dumbbell", 2, "Dumbbell 5 kg", {"mass_kg": 5.0}),
        ("3x 1.5 l bottle", "bottle_one_and_half", 3, "Bottle 1.5 L", {"capacity_l": 1.5}),
        ("6 x 0.5 l water bottles", "bottle_half_litre", 6, "Water bottle 0.5 L", {"capacity_l": 0.5}),
        ("step 20cm high rated 150 kg", "exercise_step", 1, "Step", {"height_cm": 20.0, "rating_kg": 150.0}),
        (
            "stern beam 118 cm high, rated 150 kg",
            "sturdy_beam",
            1,
            "Stern beam",
            {"height_cm": 118.0, "rating_kg": 150.0},
        ),
        ("bag of rice 5 kg", "rice_bag_large", 1, "Bag of rice 5 kg", {"mass_kg": 5.0}),
        ("mop bucket 9 l", "bucket_ten", 1, "Mop bucket 9 L", {"capacity_l": 9.0}),
        ("5 gallon bucket with lid", "bucket_five_gallon", 1, "Bucket with lid 5 gal", {"capacity_l": 18.92705892}),
        ("hallway 8 m", "hallway", 1, "Hallway", {"route_m": 8.0}),
        ("garden 40 m2", "garden", 1, "Garden", {"area_m2": 40.0}),
        ("towpath 2 km", "towpath", 1, "Towpath", {"route_m": 2000.0}),
        ("rope 10 m", "rope", 1, "Rope", {"length_cm": 1000.0}),
        ("towel 140 x 70 cm", "towel", 1, "Towel", {"sides_cm": (140.0, 70.0)}),
        ('bench 18" high', "bench", 1, "Bench", {"height_cm": 45.72}),
        ("pair of socks", "socks", 1, "Socks", {}),
        ("no. 10 can", "tin_catering", 1, "No. 10 can", {}),
        ("2 six-packs of water", "bottle_pack", 2, "Six-pack of water", {}),
        ("backpack up to 12 kg", "backpack", 1, "Backpack", {"rating_kg": 12.0}),
        ("dining chairs (4)", "dining_chair", 4, "Dining chair", {}),
        ("KETTLEBELL 16 KG", "kettlebell", 1, "Kettlebell 16 kg", {"mass_kg": 16.0}),
        ("Ines's old blue rucksack 55 l", "rucksack", 1, "Ines's old blue rucksack 55 L", {"capacity_l": 55.0}),
        ("curb", "kerb", 1, "Curb", {}),
        ("car tire", "tyre", 1, "Car tire", {}),
    ],
)
def test_what_people_type_is_understood(
    text: str, kind_id: str, count: int, name: str, changes: dict[str, Any]
) -> None:
    found = read_one(text)
    assert (found.kind.id, found.count, found.name) == (kind_id, count, name)
    assert stated(found.changes) == {
        key: pytest.approx(value) if isinstance(value, float) else value for key, value in changes.items()
    }
    assert (found.confidence, found.leftover) == (1.0, ())


def test_several_things_are_told_apart_by_commas_lines_and_the_word_and() -> None:
    text = "2 water carriers, 25 L, 6 bean tins\n- daypack 28 L; lock steps, 7 at 19 cm and folding stool + rope"
    found = [(answer.kind.id, answer.count) for answer in read_all(text)]
    assert found == [
        ("water_carrier", 2),
        ("tin_food", 6),
        ("daypack", 1),
        ("lock_steps", 1),
        ("folding_stool", 1),
        ("rope", 1),
    ]


@pytest.mark.parametrize(
    ("text", "kind_id", "name"),
    [
        ("dumbell", "dumbbell", "Dumbbell"),
        ("bakpack", "backpack", "Backpack"),
        ("watter carier 20 l", "water_carrier_twenty", "Water carrier 20 L"),
        ("chiar", "dining_chair", "Chair"),
    ],
)
def test_a_slip_is_mended_and_costs_confidence(text: str, kind_id: str, name: str) -> None:
    found = read_one(text)
    assert (found.kind.id, found.name) == (kind_id, name)
    assert found.confidence < 1


@pytest.mark.parametrize(
    "text", ["chain", "bat", "cheir leg", "water bottle rack", "bottle opener", "flying saucer", "x"]
)
def test_what_cannot_be_read_is_asked_about_and_never_guessed(text: str) -> None:
    question = asked(text)
    assert question.sentence.startswith(f"“{text}”")
    assert len({kind.id for kind in question.choices}) == 3


def test_a_bare_size_asks_what_it_is_with_things_of_that_size() -> None:
    question = asked("25 L")
    assert question.sentence == "“25 L” names no thing: say what it is."
    assert "water_carrier" in [kind.id for kind in question.choices]


def test_a_name_that_means_several_sizes_asks_which() -> None:
    kinds = tuple(kind for kind in KINDS if kind.id in ("water_carrier_ten", "water_carrier_twenty"))
    (question,) = read_things("3 canisters", kinds)
    assert isinstance(question, Question)
    assert question.sentence == "Which canister do you mean? Choose one, or add its size."
    assert [kind.id for kind in question.choices] == ["water_carrier_ten", "water_carrier_twenty"]
    assert question.count == 3


def test_an_answered_question_is_a_reading_with_its_count_and_size() -> None:
    question = asked("3 zorgle 12 kg")
    found = answered(question, shipped()["coal_bag"])
    assert (found.kind.id, found.count, found.name) == ("coal_bag", 3, "Zorgle 12 kg")
    assert found.changes.mass_kg == 12.0


def test_an_unknown_word_before_the_name_is_left_over_and_costs_confidence() -> None:
    found = read_one("dog bed")
    assert (found.kind.id, found.leftover) == ("bed", ("dog",))
    assert found.confidence < 1


def test_a_number_without_a_place_is_left_over() -> None:
    found = read_one("water carrier 12 kg")
    assert found.leftover == ("12 kg",)
    assert found.confidence < 1


def test_a_plural_without_a_number_is_one_and_unsure() -> None:
    found = read_one("dumbbells")
    assert found.count == 1
    assert found.confidence < 1


@pytest.mark.parametrize(
    ("text", "counts"),
    [
        ("2 gallon jugs", [("milk_jug_gallon", 2)]),
        ("2 gallon jug", [("jug_two_and_half_gallon", 1)]),
        ("2-gallon jugs", [("jug_two_and_half_gallon", 1)]),
        ("5 gallon buckets", [("bucket_five_gallon", 1)]),
        ("3 5-gallon buckets", [("bucket_five_gallon", 3)]),
        ("2 litre bottles", [("bottle_two_litre", 1)]),
    ],
)
def test_a_number_before_a_spelled_unit_counts_things_only_where_that_fits_their_sizes_better(
    text: str, counts: list[tuple[str, int]]
) -> None:
    assert [(answer.kind.id, answer.count) for answer in read_all(text)] == counts


def test_a_second_count_begins_a_second_thing() -> None:
    assert [(answer.kind.id, answer.count) for answer in read_all("2 bottles 3 big bricks 1 rope")] == [
        ("bottle_one_and_half", 2),
        ("brick", 3),
        ("rope", 1),
    ]


@pytest.mark.parametrize(
    ("text", "hazard"),
    [
        ("petrol jug", Hazard.HELD_CHEMICALS),
        ("folding table with wheels", Hazard.WHEELED),
        ("folding bench", Hazard.FOLDING),
        ("glass desk", Hazard.GLASS),
    ],
)
def test_words_of_danger_become_hazards(text: str, hazard: Hazard) -> None:
    assert hazard in read_one(text).changes.hazards


def test_what_held_chemicals_is_not_filled() -> None:
    thing = make_thing(read_one("petrol jug"), "jug")
    assert thing.fills == ()
    assert Hazard.HELD_CHEMICALS in thing.facts.hazards


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("0 bottles", "“0” is no number of things; write a whole number from 1, or the size with its unit."),
        ("-2", "“-2” is no number of things; write a number from 1."),
        ("-2 bottles", "“-2” is no number of things; write a number from 1."),
        ("2.5 bottles", "“2.5” is no number of things; write a whole number from 1, or the size with its unit."),
        ("1000 bricks", "“1000” is more alike things than this program keeps (500); write fewer."),
        (
            "900 litre jug",
            "“900 L” is far from the usual size, about 9.46 L for “2.5 gallon jug”; check the number and its unit.",
        ),
        (
            "0 L bottle",
            "“0 L” is far from the usual size, about 1.5 L for “1.5 L bottle”; check the number and its unit.",
        ),
        (
            "500 kg dumbbell",
            "“500 kg” is far from the usual size, about 10 kg for “Dumbbell”; check the number and its unit.",
        ),
        ("stairs, 90 cm rise", "“90 cm” is no usable height of a step (5 to 45 cm); check the number and its unit."),
        ("bench 9 m high", "“9 m” is no usable height (3 to 350 cm); check the number and its unit."),
        ("beam rated 2 kg", "“2 kg” is no usable rating (5 to 2,000 kg); check the number and its unit."),
        ("1,500 g rice bag", "“1,500” could mean a thousand or a decimal comma; write 1500 or 1.500."),
        ("  ", "This line names no thing; write what you have, like “2 five-litre bottles”."),
        ("!!!", "“!!!” names no thing; write what you have, like “2 five-litre bottles”."),
    ],
)
def test_impossible_numbers_are_refused_in_a_sentence(text: str, sentence: str) -> None:
    with pytest.raises(InputError) as caught:
        read_things(text, KINDS)
    assert caught.value.sentence() == sentence


@pytest.mark.parametrize(
    "text", ["b" * 10_240, "bottle " * 1_500, "a" * 30_000, "bottle\n" * 400, "<" * 10_000, "9" * 5_000]
)
def test_ten_kilobytes_are_answered_with_one_short_sentence(text: str) -> None:
    with pytest.raises(InputError) as caught:
        read_things(text, KINDS)
    assert len(caught.value.sentence()) < 250


def test_markup_does_not_reach_a_name() -> None:
    found = read_things("<b>2 bottles</b> &amp; <img src=x onerror=y> 3 bricks <script>", KINDS)
    assert all("<" not in answer.name and "&" not in answer.name for answer in found if isinstance(answer, ReadThing))
    assert [answer.count for answer in found] == [2, 3]


def test_a_name_is_never_longer_than_a_label() -> None:
    assert len(read_one("sturdy " * 12 + "backpack").name) <= 60


def phrases(kind: ThingKind) -> tuple[str, ...]:
    return (kind.name, *kind.aliases)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.id)
def test_every_name_in_the_catalog_is_read_as_its_own_kind(kind: ThingKind) -> None:
    for phrase in phrases(kind):
        found = read_one(phrase)
        assert (found.kind.id, found.count) == (kind.id, 1), phrase
        assert found.confidence == 1 or phrase.endswith("s"), phrase


@given(
    st.lists(
        st.tuples(
            st.integers(1, 2), st.sampled_from(sorted(shipped())), st.sampled_from([", ", "\n", " and ", "; ", " + "])
        ),
        min_size=1,
        max_size=8,
    )
)
def test_no_counted_thing_is_lost(parts: list[tuple[int, str, str]]) -> None:
    def named(count: int, kind_id: str) -> str:
        kind = shipped()[kind_id]
        return (kind.name if count == 1 else kind.plural).lower()

    text = "".join(f"{count} {named(count, kind_id)}{glue}" for count, kind_id, glue in parts)
    found = read_things(text, KINDS)
    assert sum(answer.count for answer in found) == sum(count for count, _, _ in parts)


NONSENSE = st.text(alphabet=string.ascii_lowercase, min_size=3, max_size=9)


@given(st.lists(st.tuples(st.integers(1, 60), NONSENSE), min_size=1, max_size=5))
def test_no_counted_word_is_lost_even_when_it_is_no_thing(parts: list[tuple[int, str]]) -> None:
    """Apart from words that are units or numbers themselves, every line keeps its count."""
    lines = [(count, f"zq{word}") for count, word in parts]
    found = read_things("\n".join(f"{count} {word}" for count, word in lines), KINDS)
    assert [answer.count for answer in found] == [count for count, _ in lines]


@given(st.text(max_size=300))
def test_any_text_is_read_asked_about_or_refused(text: str) -> None:
    found: tuple[ReadThing | Question, ...] = ()
    sentence = ""
    try:
        found = read_things(text, KINDS)
    except InputError as error:
        sentence = error.sentence()
    assert bool(found) is not bool(sentence)
    assert "\n" not in sentence
    for answer in found:
        assert answer.count >= 1
        if isinstance(answer, ReadThing):
            assert make_thing(answer, "it").count == answer.count


WORDS = [
    "bottle",
    "jugs",
    "2",
    "x",
    "1.5",
    "l",
    "kg",
    "and",
    ",",
    "stairs",
    "steps",
    "at",
    "rated",
    "cm",
    "half",
    "a",
    "of",
]


@given(st.lists(st.sampled_from(WORDS), max_size=14).map(" ".join))
def test_any_mixture_of_its_own_words_is_read_asked_about_or_refused(text: str) -> None:
    try:
        found = read_things(text, KINDS)
    except InputError:
        return
    assert found
    assert found == read_things(text, KINDS)
