#!/usr/bin/python3
"""The notes file as others read it: by its JSON schema (python3-jsonschema) and by RFC 7946.

    tests/file/outside_notes.py SCHEMA SAMPLE PROGRAM

1. The schema is itself a valid schema, and the sample that our tests approve holds to it.
2. The sample is GeoJSON as RFC 7946 has it: one FeatureCollection, features with the three members
   (3.2), positions of longitude and latitude (3.1.1), lines of two positions or more (3.1.4), no
   `crs` (4), no member of another type's definition (7.1).
3. Each way of spoiling one note is refused by the schema and by our program, so neither is laxer; values that a note of
   the sample doesn't have, but may, are taken by both.
"""
import copy
import json
import pathlib
import subprocess
import sys
import tempfile

import jsonschema

SCHEMA, SAMPLE, PROGRAM = sys.argv[1:]

# (the note that says this, the member, its new value; None takes it away)
SPOILT = [
    ("hump", "says", "bump"), ("hump", "says", None), ("hump", "seen", None), ("hump", "seen", "3.10.26"),
    ("hump", "seen", 20261003), ("hump", "remark", 7), ("hump", "hours", "Mo"), ("hump", "kind", "zebra"),
    ("hump", "limit", 20), ("hump", "way", "along"), ("hump", "heading", 360), ("hump", "heading", "N"),
    ("narrow", "heading", 90), ("narrow", "way", "back"), ("practice", "kind", None),
    ("practice", "kind", "Zebra Crossing"), ("not", "kind", None), ("plate", "hours", None),
    ("plate", "hours", ""), ("limit", "limit", None), ("limit", "unit", None), ("limit", "unit", "knots"),
    ("limit", "limit", 2), ("limit", "limit", 20.5), ("closed", "from", "soon"), ("closed", "hours", "Mo"),
    ("pull-up", "length_m", 0), ("pull-up", "length_m", "18 m"), ("hump", "from", "2026-12-01"),
    ("never", "until", "soon"),
]
MAY_HAVE = [("never", "from", "2026-12-01"), ("never", "until", "2027-03-01"), ("closed", "until", None)]


def position(at):
    assert len(at) in (2, 3) and abs(at[0]) <= 180 and abs(at[1]) <= 90, at
    assert all(isinstance(number, (int, float)) for number in at), at


def rfc_7946(collection):
    assert collection["type"] == "FeatureCollection" and "crs" not in collection
    assert not {"geometry", "properties", "coordinates"} & set(collection)
    for feature in collection["features"]:
        assert set(feature) >= {"type", "geometry", "properties"} and feature["type"] == "Feature"
        assert not {"coordinates", "geometries", "features"} & set(feature)
        geometry = feature["geometry"]
        if geometry["type"] == "Point":
            position(geometry["coordinates"])
        else:
            assert geometry["type"] == "LineString" and len(geometry["coordinates"]) >= 2
            for at in geometry["coordinates"]:
                position(at)
    return len(collection["features"])


def spoil(sample, says, member, value):
    spoilt = copy.deepcopy(sample)
    note = next(f for f in spoilt["features"] if f["properties"]["says"] == says)
    if value is None:
        del note["properties"][member]
    else:
        note["properties"][member] = value
    return spoilt


def program_takes(collection, folder):
    file = pathlib.Path(folder) / "notes.geojson"
    file.write_text(json.dumps(collection))
    done = subprocess.run([PROGRAM, "note", "list", file], capture_output=True, check=False)
    assert done.returncode in (0, 1), done.stderr
    return done.returncode == 0


def main():
    schema = json.loads(pathlib.Path(SCHEMA).read_text())
    sample = json.loads(pathlib.Path(SAMPLE).read_text())
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    validator.validate(sample)
    notes = rfc_7946(sample)
    with tempfile.TemporaryDirectory() as folder:
        assert program_takes(sample, folder)
        for says, member, value in SPOILT:
            spoilt = spoil(sample, says, member, value)
            assert not validator.is_valid(spoilt), f"the schema takes {says} {member}={value}"
            assert not program_takes(spoilt, folder), f"the program takes {says} {member}={value}"
        for says, member, value in MAY_HAVE:
            other = spoil(sample, says, member, value)
            validator.validate(other)
            assert program_takes(other, folder), f"the program refuses {says} {member}={value}"
    print(f"notes {notes} hold to the schema and RFC 7946; {len(SPOILT)} spoilt ones are refused by both")


main()
