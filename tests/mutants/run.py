#!/usr/bin/python3
"""Seeded mutants of the rooms mark, hours, lanes and proof: how many does the suite catch?

usage: run.py BUILD [COUNT [SEED [AT_ONCE]]]      (tools/mutants builds BUILD first)
       run.py BUILD NAMES                         those alone that the file names, a line each, as printed here

Each mutant is one source compiled anew and linked before the library, so that its object is taken instead of
the library's; no file of the tree is changed. One is caught when a test of the ordinary suite fails, the program
ends badly or takes ten times as long. They are tried in this order, the quick and near ones first: the cases of
these rooms; approved outputs (tests/golden) of what an area holds, hours, bus lanes and proofs; all other cases
about loops; approved outputs of loops and of notes. Exit 1 when fewer than 90 % are caught, or a survivor stands
not in survivors.txt.
"""
import concurrent.futures
import json
import random
import shlex
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from mutate import mutants_of

HERE = Path(__file__).resolve().parent
ROOT = HERE.parent.parent
ROOMS = ("mark", "hours", "lanes", "proof")
LEAST_CAUGHT = 0.9
# Cases about these rooms, wherever they stand: lies about what only a search makes are in tests/find.
OWN_CASES = ",".join(f"[{room}]~[slow]" for room in ROOMS)
OTHER_CASES = "~[slow]~[layout]~[real]" + "".join(f"~[{room}]" for room in ROOMS)
# Areas and their ids, what is said of one thing, and proofs; then searches, each proved before it is written.
GOLDEN = ("build/", "extracts/", "hours/", "lanes/", "look/", "proof/")
GOLDEN_LOOPS = ("loops/", "note/")


class Bench:
    def __init__(self, build, scratch):
        self.build, self.scratch = Path(build).resolve(), Path(scratch)
        commands = json.loads((self.build / "compile_commands.json").read_text())
        self.compile = {Path(command["directory"], command["file"]).resolve(): command for command in commands}
        self.patience_s = 600
        own = {"loopwright_test": self.build / "tests" / "loopwright_test", "loopwright": self.build / "loopwright"}
        began = time.monotonic()
        if by := self.caught_by(lambda target: own[target]):
            sys.exit(f"the tests ({by}) fail without any mutant; mend that first")
        self.patience_s = 10 * (time.monotonic() - began) + 20

    def link(self, target, before, to):
        """Links a program anew, with one more object before the library."""
        told = subprocess.run(["ninja", "-C", str(self.build), "-t", "commands", target],
                              capture_output=True, text=True, check=True).stdout
        command = told.strip().splitlines()[-1]
        output = "tests/loopwright_test" if target == "loopwright_test" else target
        command = command.replace(f"-o {output} ", f"-o {to} {before} ")
        subprocess.run(command, cwd=self.build, shell=True, check=True, capture_output=True)

    def ends_well(self, words):
        try:
            return subprocess.run(words, cwd=self.scratch, capture_output=True, timeout=self.patience_s,
                                  check=False).returncode == 0
        except subprocess.TimeoutExpired:
            return False

    def caught_by(self, program_of):
        """The first of the tests that fails with these programs; "" when none does."""
        def cases(which):
            return [str(program_of("loopwright_test")), which, "--abort"]

        def golden(verbs):
            return [str(ROOT / "tests" / "golden" / "compare"), str(program_of("loopwright")), *verbs]

        tests = {"cases": (cases, OWN_CASES), "golden": (golden, GOLDEN),
                 "others": (cases, OTHER_CASES), "loops": (golden, GOLDEN_LOOPS)}
        return next((name for name, (words, of) in tests.items() if not self.ends_well(words(of))), "")

    def mutant(self, number, source, text):
        """None when it doesn't compile, else what caught it, "" for nothing."""
        copy, made = self.scratch / f"{number}.cpp", self.scratch / f"{number}.o"
        copy.write_text(text)
        words = shlex.split(self.compile[source]["command"])
        words = [word for word in words if "ccache" not in word and word not in ("-Werror", "-Wall")]
        words[words.index("-o") + 1] = str(made)
        words[words.index("-c") + 1] = str(copy)
        compiled = subprocess.run([*words, "-w", "-iquote", str(source.parent)], cwd=self.build,
                                  capture_output=True, check=False)
        if compiled.returncode != 0:
            return None
        programs = {}

        def program_of(target):
            if target not in programs:
                programs[target] = self.scratch / f"{number}-{target}"
                self.link(target, made, programs[target])
            return programs[target]

        caught = self.caught_by(program_of)
        for file in (copy, made, *programs.values()):
            file.unlink()
        return caught


def all_mutants():
    """Every mutant there can be: (source, line, what was done, text)."""
    for room in ROOMS:
        for source in sorted((ROOT / "src" / room).glob("*.cpp")):
            for line, done, text in mutants_of(source.read_text()):
                yield source, line, done, text


def explained():
    """Survivors somebody looked at: 'file: code of the line: what was done' -> why no test can tell."""
    table = {}
    for line in (HERE / "survivors.txt").read_text().splitlines():
        if line and not line.startswith("#"):
            name, _, reason = line.partition(" | ")
            table[name.strip()] = reason.strip()
    return table


def name_of(source, line, done):
    code = source.read_text().split("\n")[line - 1].strip()
    return f"{source.relative_to(ROOT)}: {code}: {done}"


def tried(bench, drawn, count, at_once):
    """Results of the first `count` mutants that compile, in the order drawn."""
    results, at = [], 0
    with concurrent.futures.ThreadPoolExecutor(at_once) as pool:
        while len(results) < count and at < len(drawn):
            some = drawn[at:at + count - len(results)]
            jobs = [pool.submit(bench.mutant, at + i, mutant[0], mutant[3]) for i, mutant in enumerate(some)]
            for mutant, job in zip(some, jobs):
                if (caught := job.result()) is not None:
                    results.append((mutant, caught))
                    print(f"{caught or 'SURVIVED':8}", name_of(*mutant[:3]), flush=True)
            at += len(some)
    return results


def chosen(words):
    """The mutants to try, how many of them, and how many at once."""
    every = list(all_mutants())
    if words and not words[0].isdigit():
        named = set(Path(words[0]).read_text().splitlines())
        some = [mutant for mutant in every if name_of(*mutant[:3]) in named]
        return some, len(some), 2
    count, seed, at_once = [int(word) for word in words] + [200, 8, 2][len(words):]
    random.Random(seed).shuffle(every)
    return every, count, at_once


def main():
    build, *more = sys.argv[1:]
    drawn, count, at_once = chosen(more)
    with tempfile.TemporaryDirectory(prefix="mutants-") as scratch:
        results = tried(Bench(build, scratch), drawn, count, at_once)
    known = explained()
    survivors = [name_of(*mutant[:3]) for mutant, caught in results if not caught]
    new = [name for name in survivors if name not in known]
    share = 1 - len(survivors) / len(results)
    for name in new:
        print("not explained:", name)
    by_cases = sum(caught == "cases" for _, caught in results)
    print(f"{len(results)} mutants of {len(drawn)} possible, {len(results) - len(survivors)} caught ({share:.1%}), "
          f"{by_cases} of them by these rooms' cases, "
          f"{len(survivors)} survived, {len(new)} of them not explained in tests/mutants/survivors.txt")
    return 1 if new or share < LEAST_CAUGHT else 0


if __name__ == "__main__":
    sys.exit(main())
