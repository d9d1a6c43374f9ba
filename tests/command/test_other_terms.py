#!/usr/bin/python3
"""A loop file is read by the school terms it was made with: others given with --terms are told in a
line and change no verdict, neither making a true file false nor a false one true.

    tests/command/test_other_terms.py PROGRAM
"""
import json
import pathlib
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
# Costard Road is shut at half past eight on school days; 29 December is none by these terms.
OWN = [["2026-09-02", "2026-12-18"], ["2027-01-04", "2027-02-12"]]
OTHER = [["2026-09-02", "2027-02-12"]]
WISH = ["loops", "q.area", "--home", "54.29685,2.58185", "--end", "54.29775,2.58998", "--through",
        "54.2964,2.58443;54.29667,2.58644", "--start", "2026-12-29T08:30"]
TOLD = ("loopwright: own.json: was made with other school terms than other.txt; its own count (to use "
        "these, make it again with them)\n")


def main():
    program = str(pathlib.Path(sys.argv[1]).resolve())
    failures = []
    with tempfile.TemporaryDirectory() as scratch:
        folder = pathlib.Path(scratch)

        def run(code, *words):
            done = subprocess.run([program, *words], cwd=folder, capture_output=True, encoding="utf-8",
                                  check=False)
            if done.returncode != code:
                failures.append(f"{' '.join(words)}: exit {done.returncode}, not {code}: {done.stderr}")
            return done.stdout, done.stderr

        for name, terms in (("own.txt", OWN), ("other.txt", OTHER)):
            (folder / name).write_text("".join(" ".join(part) + "\n" for part in terms))
        run(0, "build", str(ROOT / "maps" / "quillham.osm.pbf"), "-o", "q.area", "--region", "GB-ENG")
        run(0, *WISH, "--terms", "own.txt", "-o", "own.json")
        for verb in ("proof", "lanes"):
            plain, quiet = run(0, verb, "q.area", "own.json")
            out, err = run(0, verb, "q.area", "own.json", "--terms", "other.txt")
            same, silent = run(0, verb, "q.area", "own.json", "--terms", "own.txt")
            if out != plain or same != plain or err != TOLD or quiet or silent:
                failures.append(f"{verb} --terms: {out!r} {err!r} {quiet!r} {silent!r}")
        if "by the school terms in it: 2026-09-02 to 2027-02-12, parts 2" not in plain_proof(run):
            failures.append("the proof doesn't name the terms it went by")
        # A file that claims to be made by the other terms drives Costard Road in term: never true,
        # whatever terms are given.
        answer = json.loads((folder / "own.json").read_text())
        answer["wish"]["terms"] = [{"first": first, "last": last} for first, last in OTHER]
        (folder / "false.json").write_text(json.dumps(answer))
        for more in ([], ["--terms", "own.txt"], ["--terms", "other.txt"]):
            run(3, "proof", "q.area", "false.json", *more)
    for failure in failures:
        print(failure)
    print(f"other terms: failed {len(failures)}")
    return 1 if failures else 0


def plain_proof(run):
    return run(0, "proof", "q.area", "own.json")[0]


if __name__ == "__main__":
    sys.exit(main())
