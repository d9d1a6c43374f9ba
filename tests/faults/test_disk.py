#!/usr/bin/python3
"""A full disk, a folder that may only be read, and two programs that write one file.

usage: test_disk.py PROGRAMS EXTRACT REGION [ROUNDS]

What can't be written is told in one line, the older file stays as it was, and nothing is left beside it.
Of two programs at once one wins: the file is whole, as one of them made it. A full disk is a small file
system in memory, which takes root; a limit on the size of files is tried everywhere.
"""
import contextlib
import resource
import subprocess
import sys

from trial import Trial, is_root, without_core

TOO_SMALL = 64 << 10     # an area takes megabytes, a loop file and a card on paper hundreds of kilobytes
OLDER = b"older\n"


def writers(trial, folder):
    return {"build": (trial.build(folder / "x.area"), folder / "x.area"),
            "report": (trial.build(trial.folder / "y.area", "--report", str(folder / "r.json")), folder / "r.json"),
            "loops": (trial.wish(folder / "x.json"), folder / "x.json"),
            "card": (trial.card("pdf", folder / "x.pdf"), folder / "x.pdf")}


@contextlib.contextmanager
def small_disk(folder, options):
    folder.mkdir()
    mounted = subprocess.run(["mount", "-t", "tmpfs", "-o", options, "tmpfs", str(folder)],
                             capture_output=True, text=True, check=False)
    try:
        yield None if mounted.returncode == 0 else mounted.stderr.strip()
    finally:
        if mounted.returncode == 0:
            subprocess.run(["umount", str(folder)], check=True)
        folder.rmdir()


def refused(trial, what, folder, words, file, **more):
    """A command fails in one line; the older file is as it was."""
    code, _, err = trial.run(words, **more)
    trial.count(what)
    trial.told_in_one_line(f"{what}: {words[0]}", code, err)
    trial.expect(file.read_bytes() == OLDER, f"{what}: {words[0]} changed the older file")
    trial.expect(not trial.parts(folder), f"{what}: {words[0]} left {trial.parts(folder)}")


def full_disk(trial):
    folder = trial.folder / "disk"
    with small_disk(folder, "size=64k") as trouble:
        if trouble:
            return print("skipped the full disk: no file system can be mounted here:", trouble)
        for words, file in writers(trial, folder).values():
            file.write_bytes(OLDER)
            refused(trial, "writes to a full disk", folder, words, file)
            file.unlink()


def read_only(trial):
    folder = trial.folder / "shut"
    with small_disk(folder, "size=1m") as trouble:
        if trouble and is_root():
            return print("skipped the folder that may only be read: root may write, and can't mount here")
        jobs = writers(trial, folder).values()
        for _, file in jobs:
            file.write_bytes(OLDER)
        if trouble:
            folder.chmod(0o555)
        else:
            subprocess.run(["mount", "-o", "remount,ro", str(folder)], check=True)
        for words, file in jobs:
            refused(trial, "writes to a folder that may only be read", folder, words, file)
        folder.chmod(0o755) if trouble else None
        if trouble:
            for _, file in jobs:
                file.unlink()


def short_files(trial):
    def limit():
        without_core()
        resource.setrlimit(resource.RLIMIT_FSIZE, (TOO_SMALL, TOO_SMALL))
    folder = trial.folder / "short"
    folder.mkdir()
    for words, file in writers(trial, folder).values():
        if file.suffix == ".json" and words[0] == "build":
            continue    # its report is small: the area fails first, in the folder of the trial
        file.write_bytes(OLDER)
        refused(trial, "writes of files that may not be long", folder, words, file, before=limit)


def two_at_once(trial, rounds):
    file = trial.folder / "both.out"
    pairs = [(trial.build(file), trial.build(file, "--side", "right")),
             (trial.wish(file), trial.wish(file, minutes=11))]
    for pair in pairs:
        alone = []
        for words in pair:
            trial.must(words)
            alone.append(file.read_bytes())
        for _ in range(rounds):
            programs = [trial.start(words) for words in pair]
            ends = [(program.communicate()[1], program.returncode) for program in programs]
            trial.count("pairs that wrote one file")
            trial.expect(all(code == 0 for _, code in ends), f"two at once: {ends}")
            trial.expect(file.read_bytes() in alone, "two at once: the file is neither's")
            trial.expect(not trial.parts(), f"two at once left {trial.parts()}")


def replaced_while_read(trial):
    """An area built anew under its name while a lesson is looked for: that one keeps the old one."""
    right = trial.loops.read_bytes()
    search = trial.start(trial.wish(trial.folder / "meanwhile.json"))
    trial.must(trial.build(trial.area))
    trial.count("areas replaced while in use")
    _, err = search.communicate()
    trial.expect(search.returncode == 0 and (trial.folder / "meanwhile.json").read_bytes() == right,
                 f"an area replaced while in use: exit {search.returncode}: {err.decode()}")


def main():
    programs, extract, region, *more = sys.argv[1:]
    trial = Trial(programs, extract, region)
    full_disk(trial)
    read_only(trial)
    short_files(trial)
    two_at_once(trial, int(more[0]) if more else 2)
    replaced_while_read(trial)
    return trial.end("disks and folders")


if __name__ == "__main__":
    sys.exit(main())
