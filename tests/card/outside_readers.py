#!/usr/bin/python3
"""Exchange files as other programs read them: xmllint with a schema, gpxpy, and plain JSON.

    outside_readers.py SCHEMA FILE.gpx FILE.geojson

Both files are of the same drive. Also gives each reader something broken, to see that it would say
so. Sources of the rules: GPX 1.1 schema (TopoGrafix); RFC 7946.
"""

import json
import math
import subprocess
import sys
import tempfile

import gpxpy


def schema_accepts(schema, path):
    run = subprocess.run(["xmllint", "--noout", "--schema", schema, path], capture_output=True)
    return run.returncode == 0


def check_schema(schema, path):
    assert schema_accepts(schema, path), "the schema refuses " + path
    text = open(path, encoding="utf-8").read()
    broken = {
        "a latitude off the earth": text.replace('lat="54.', 'lat="154.', 1),
        "a name after the points": text.replace(
            "</trkseg>", "</trkseg>\n  <name>late</name>", 1),
        "no version": text.replace('version="1.1"', "", 1),
    }
    for what, bad in broken.items():
        assert bad != text, what
        with tempfile.NamedTemporaryFile("w", suffix=".gpx", encoding="utf-8") as file:
            file.write(bad)
            file.flush()
            assert not schema_accepts(schema, file.name), "the schema accepts " + what


def check_position(position):
    lon, lat = position
    assert -180 <= lon < 180 and -90 <= lat <= 90, position
    # The invented town lies at 54.3 N 2.6 E: the order is longitude, latitude.
    assert 2 < lon < 3 and 54 < lat < 55, position
    for degree in position:
        assert abs(degree * 1e7 - round(degree * 1e7)) < 1e-3, "more than 7 decimals"


def check_geojson(path):
    collection = json.load(open(path, encoding="utf-8"))
    assert collection["type"] == "FeatureCollection"
    assert "OpenStreetMap" in collection["credit"] and "crs" not in collection
    for feature in collection["features"]:
        assert feature["type"] == "Feature" and isinstance(feature["properties"], dict)
        geometry = feature["geometry"]
        if geometry["type"] == "Point":
            check_position(geometry["coordinates"])
        else:
            assert geometry["type"] == "LineString" and len(geometry["coordinates"]) >= 2
            for position in geometry["coordinates"]:
                check_position(position)
    return collection["features"]


def check_same_drive(gpx, features):
    track = [(p.longitude, p.latitude) for p in gpx.tracks[0].segments[0].points]
    line = [f["geometry"]["coordinates"] for f in features if f["properties"]["what"] == "drive"]
    assert [list(p) for p in track] == line[0], "track and line differ"
    rows = [f["properties"]["say"] for f in features if f["properties"]["what"] == "row"]
    assert [p.name for p in gpx.routes[0].points] == rows, "route and rows differ"
    metres = [f["properties"]["metres"] for f in features if f["properties"]["what"] == "drive"]
    # gpxpy's lengths are spherical.
    assert math.isclose(gpx.tracks[0].length_2d(), metres[0], rel_tol=0.005)


def main(schema, gpx_path, geojson_path):
    check_schema(schema, gpx_path)
    gpx = gpxpy.parse(open(gpx_path, encoding="utf-8"))
    assert gpx.version == "1.1" and gpx.time is not None and gpx.copyright_author
    assert len(gpx.tracks) == 1 and len(gpx.routes) == 1
    check_same_drive(gpx, check_geojson(geojson_path))
    print("read", len(gpx.routes[0].points), "rows and", len(gpx.tracks[0].segments[0].points),
          "points")


if __name__ == "__main__":
    main(*sys.argv[1:])
