#!/usr/bin/python3
"""Exchange files as other programs read them: GPX by xmllint with a schema, gpxpy and gpsbabel; GeoJSON as
plain JSON and by GDAL; iCalendar by icalendar and vobject.

    outside_readers.py SCHEMA FILE.gpx FILE.geojson FILE.ics

All are of the same drive. Also gives each reader something broken, to see that it would say
so. Sources of the rules: GPX 1.1 schema (TopoGrafix); RFC 7946; RFC 5545.
"""

import csv
import datetime
import io
import json
import math
import subprocess
import sys
import tempfile

import gpxpy
import icalendar
import vobject


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


def check_gpsbabel(path, gpx):
    """The route as gpsbabel reads it: as many points, with the words spoken as names."""
    done = subprocess.run(["gpsbabel", "-r", "-i", "gpx", "-f", path, "-o", "unicsv", "-F", "-"],
                          capture_output=True, encoding="utf-8", check=True)
    rows = list(csv.DictReader(io.StringIO(done.stdout)))
    points = gpx.routes[0].points
    assert len(rows) == len(points), "gpsbabel reads another number of rows"
    for row, point in zip(rows, points):
        assert math.isclose(float(row["Latitude"]), point.latitude, abs_tol=2e-6), row
        assert math.isclose(float(row["Longitude"]), point.longitude, abs_tol=2e-6), row
        assert row["Name"] == point.name, row


def check_gdal(path, features):
    done = subprocess.run(["ogrinfo", "-ro", "-al", "-so", path], capture_output=True,
                          encoding="utf-8", check=True)
    assert f"Feature Count: {len(features)}" in done.stdout, done.stdout
    assert 'ID["EPSG",4326]' in done.stdout, "not in degrees of WGS 84"


def check_calendar(path, gpx):
    """Both readers find one lesson that begins when the drive does, and no place."""
    text = open(path, "rb").read()
    assert all(len(line) <= 75 for line in text.split(b"\r\n")), "a line over 75 bytes"
    events = icalendar.Calendar.from_ical(text).walk("VEVENT")
    assert len(events) == 1 and "LOCATION" not in events[0] and "GEO" not in events[0]
    event = events[0]
    other = vobject.readOne(text.decode("utf-8")).vevent
    for begin, end in ((event["DTSTART"].dt, event["DTEND"].dt),
                       (other.dtstart.value, other.dtend.value)):
        assert begin == gpx.time.astimezone(datetime.timezone.utc), begin
        assert end > begin, end
    assert str(event["SUMMARY"]) == other.summary.value
    assert str(event["DESCRIPTION"]) == other.description.value
    assert "OpenStreetMap" in other.description.value and "overrule" in other.description.value


def main(schema, gpx_path, geojson_path, calendar_path):
    check_schema(schema, gpx_path)
    gpx = gpxpy.parse(open(gpx_path, encoding="utf-8"))
    assert gpx.version == "1.1" and gpx.time is not None and gpx.copyright_author
    assert len(gpx.tracks) == 1 and len(gpx.routes) == 1
    features = check_geojson(geojson_path)
    check_same_drive(gpx, features)
    check_gpsbabel(gpx_path, gpx)
    check_gdal(geojson_path, features)
    check_calendar(calendar_path, gpx)
    print("read", len(gpx.routes[0].points), "rows and", len(gpx.tracks[0].segments[0].points),
          "points")


if __name__ == "__main__":
    main(*sys.argv[1:])
