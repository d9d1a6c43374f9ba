#!/usr/bin/env python3
"""Lessons are logged while the server is killed and its replica takes its place: each acknowledged one is there, once.

    test_failover.py BUILD CLIENTS LESSONS FAILOVERS [FOLDER]

LESSONS: of all clients together. FOLDER: where what came of it is written, failovers.txt.

Primary and replica stream with synchronous commit, so that what was acknowledged is on both (PostgreSQL 15
documentation, 27.2.8). After each failover a new replica is made of the new primary. The clients know two addresses.
"""
import os
import pathlib
import shutil
import statistics
import subprocess
import sys
import tempfile
import time

from server import AS_OTHER, Server, school

build, (clients, lessons, failovers) = sys.argv[1], map(int, sys.argv[2:5])
SYNCHRONOUS = "synchronous_standby_names = '*'\nsynchronous_commit = on\nwal_level = replica\nmax_wal_senders = 8\n" \
              "fsync = off\nhot_standby = on\nwal_receiver_status_interval = '1s'\n"

sockets = [pathlib.Path(tempfile.mkdtemp(prefix="loopwright-socket-")) for _ in range(2)]
for one in sockets:
    os.chmod(one, 0o777)
    if AS_OTHER:
        shutil.chown(one, "postgres", "postgres")
primary = Server(SYNCHRONOUS.replace("'*'", "''"), socket=sockets[0])
replica = None
try:
    school(primary, f"{build}/loopwright")
    for k in range(clients):
        primary.sql(f"INSERT INTO pupil (code, scheme, added, home, my_your, holder) VALUES ('C{k}', 'car-27', '2026-11-28', '', 0, 'ash')")
    replica = Server(SYNCHRONOUS, copy_of=primary, socket=sockets[1])
    primary.sql("ALTER SYSTEM SET synchronous_standby_names = '*'; SELECT pg_reload_conf()")
    address = f"postgresql:///postgres?host={sockets[0]},{sockets[1]}&user=ash"
    started = time.monotonic()
    with open(primary.folder.parent / f"{sockets[0].name}.log", "w+", encoding="utf-8") as taken:
        running = subprocess.Popen([f"{build}/tests/school_clients", address, str(clients), str(lessons // clients)],
                                   stdout=taken, stderr=subprocess.PIPE, text=True)

        def acknowledged():
            return pathlib.Path(taken.name).read_text(encoding="utf-8").split("\n")[:-1]

        def pass_by(share):
            """Waits until that share of the lessons is acknowledged."""
            while len(acknowledged()) < lessons * share and running.poll() is None:
                time.sleep(0.02)

        # Connections that break in the midst of whatever they do.
        for k in range(5):
            pass_by(0.03 * (k + 1))
            primary.sql("SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE usename = 'ash'")
            # Preparing it again while they work: it may say that it must wait, and they notice nothing.
            again = subprocess.run([f"{build}/loopwright", "school", "prepare", "--book", primary.address(primary.owner)],
                                   capture_output=True, text=True)
            assert again.returncode == 0 or "try again" in again.stderr, again.stderr
        for k in range(failovers):
            # Spread over the run: the k-th kill when its share of the lessons is acknowledged.
            pass_by((k + 1) / (failovers + 1.5))
            primary.stop("immediate")
            replica.promote()
            primary.remove()
            primary, replica = replica, Server(SYNCHRONOUS, copy_of=replica, socket=sockets[k % 2])
        _, complaints = running.communicate(timeout=3000)
        lines = [line.split() for line in acknowledged()]
        os.unlink(taken.name)
    took_s = time.monotonic() - started
    told = {line[0] for line in lines}
    found = primary.sql("SELECT said FROM lesson").split("\n")
    missing, doubled = told - set(found), len(found) - len(set(found))
    waits = sorted(float(line[1]) for line in lines)
    told_line = (f"{failovers} failovers, {clients} clients: {len(told)} lessons acknowledged, {len(told & set(found))} found, "
          f"{doubled} doubled; {took_s:.1f} s in all, one lesson {statistics.median(waits):.0f} ms in the middle, "
          f"{waits[-1] / 1000:.1f} s at most")
    print(told_line)
    if len(sys.argv) > 5:
        pathlib.Path(sys.argv[5]).mkdir(exist_ok=True)
        (pathlib.Path(sys.argv[5]) / "failovers.txt").write_text(told_line + "\n", encoding="utf-8")
    well = running.returncode == 0 and not missing and not doubled and len(told) == lessons // clients * clients
    if not well:
        print(f"FAILED: exit {running.returncode}, missing {sorted(missing)[:5]}, {complaints}")
    sys.exit(0 if well else 1)
finally:
    for server in (primary, replica):
        if server:
            server.remove()
    for one in sockets:
        shutil.rmtree(one, ignore_errors=True)
