#!/usr/bin/env python3
"""What goes wrong between an instructor and a school's server: certificates, passwords, a full disk.

One clear line each, and nothing lost. Sources: PostgreSQL 15 documentation, 34.19 (certificates), 34.16 and 34.17
(password file, service file), appendix A (53100, disk full).
"""
import os
import pathlib
import shutil
import signal
import socket
import sqlite3
import subprocess
import sys
import tempfile
import time

from server import AS_OTHER, QUICK, Server, school

program = f"{sys.argv[1]}/loopwright"
failed = []


def check(what, holds, told=""):
    if not holds:
        failed.append(what)
        print(f"FAILED: {what}\n{told}")


def run(*words, **environment):
    done = subprocess.run([program, *map(str, words)], capture_output=True, text=True, env={**os.environ, **environment})
    return done.returncode, done.stdout + done.stderr


def certificate(folder, name, host):
    """A certificate that signs itself, for that host."""
    subprocess.run(["openssl", "req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes",
                    "-keyout", folder / f"{name}.key", "-out", folder / f"{name}.crt", "-days", "2", "-subj",
                    f"/CN={host}", "-addext", f"subjectAltName=DNS:{host}"], check=True, capture_output=True)
    return folder / f"{name}.crt"


def free_port():
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return one.getsockname()[1]


def over_a_network(folder):
    port, here, other, elsewhere = free_port(), *(certificate(folder, name, host) for name, host in (
        ("here", "localhost"), ("other", "localhost"), ("elsewhere", "school.example")))
    with Server(QUICK + f"port = {port}\nlisten_addresses = '127.0.0.1'\n") as server:
        server.sql("ALTER SYSTEM SET password_encryption = 'scram-sha-256'")

        def shows(name):
            """From now on it shows that certificate, or none."""
            if name:
                for end in ("crt", "key"):
                    shutil.copy(folder / f"{name}.{end}", server.data / f"server.{end}")
                    os.chmod(server.data / f"server.{end}", 0o600)
                    if AS_OTHER:
                        shutil.chown(server.data / f"server.{end}", "postgres", "postgres")
            server.sql(f"ALTER SYSTEM SET ssl = {'on' if name else 'off'}")
            server.sql("SELECT pg_reload_conf()")

        with open(server.data / "pg_hba.conf", "a", encoding="utf-8") as rules:
            rules.write("host all all 127.0.0.1/32 scram-sha-256\n")
        rules = (server.data / "pg_hba.conf").read_text(encoding="utf-8").split("\n")
        (server.data / "pg_hba.conf").write_text(
            "\n".join(line for line in rules if "trust" not in line or line.startswith("local")), encoding="utf-8")
        shows("here")
        school(server, program)
        server.sql("ALTER ROLE ash PASSWORD 'meadow'")
        services, passwords = folder / "services", folder / "passwords"
        passwords.write_text("localhost:*:*:ash:meadow\n", encoding="utf-8")
        os.chmod(passwords, 0o600)

        def listed(root, password_file=passwords, more=""):
            services.write_text(f"[school]\nhost=localhost\nport={port}\ndbname=postgres\nuser=ash\nsslrootcert={root}\n{more}",
                                encoding="utf-8")
            return run("pupil", "list", "--book", "postgresql:///?service=school", PGSERVICEFILE=str(services),
                       PGPASSFILE=str(password_file))

        code, said = listed(here)
        check("by a service, a password file and the right certificate", code == 0, said)
        for what, root, shown, more in (("a certificate that nobody trusts", here, "other", ""),
                                        ("a certificate of another name", elsewhere, "elsewhere", ""),
                                        ("a service that asks for less", here, "other", "sslmode=require\n")):
            shows(shown)
            code, said = listed(root, more=more)
            check(what, code == 1 and "certificate isn't one to trust" in said and said.count("\n") == 1, said)
        shows("")
        code, said = listed(here, more="sslmode=disable\n")
        check("no encryption", code == 1 and "can't be reached, or doesn't let you in" in said, said)
        shows("here")
        (folder / "none").touch(mode=0o600)
        code, said = listed(here, folder / "none")
        check("no password", code == 1 and "your password file" in said, said)


def nobody_answers(folder):
    """A computer that takes what is sent and never says a word, and a service that isn't there."""
    with socket.socket() as mute:
        mute.bind(("127.0.0.1", 0))
        mute.listen()
        start = time.monotonic()
        code, said = run("pupil", "list", "--book", f"postgresql://ash@127.0.0.1:{mute.getsockname()[1]}/book?connect_timeout=2")
        check("nobody answers", code == 1 and "can't be reached" in said and said.count("\n") == 1, said)
        check("in bounded time", time.monotonic() - start < 20)
    (folder / "services").write_text("[school]\nhost=localhost\n", encoding="utf-8")
    code, said = run("pupil", "list", "--book", "postgresql:///?service=skool", PGSERVICEFILE=str(folder / "services"))
    check("no such service", code == 1 and "has no service of that name" in said and said.count("\n") == 1, said)


def a_server_that_freezes():
    """It takes a statement and never answers it, while its computer goes on acknowledging what is sent. Takes a minute, so only
    when asked for."""
    with Server() as server:
        school(server, program)
        run("pupil", "add", "WREN", "--book", server.address("ash"))
        holding = subprocess.Popen([server.psql(), "-X", "-q", "-A", "-t", "-h", server.socket, "-U", server.owner, "-d", "postgres"],
                                   stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
        holding.stdin.write("BEGIN; LOCK TABLE act IN EXCLUSIVE MODE; SELECT 'held';\n")
        holding.stdin.flush()
        holding.stdout.readline()
        start = time.monotonic()
        logging = subprocess.Popen([program, "pupil", "change", "WREN", "--home", "4 Lantern Row", "--book", server.address("ash")],
                                   stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
        pid = ""
        while not pid:
            pid = server.sql("SELECT pid FROM pg_stat_activity WHERE usename = 'ash' AND wait_event_type = 'Lock'")
        os.kill(int(pid), signal.SIGSTOP)
        said, _ = logging.communicate()
        os.kill(int(pid), signal.SIGCONT)
        holding.communicate("COMMIT;\n")
        took_s = time.monotonic() - start
        check("a frozen server", logging.returncode == 1 and "no answer within 60 s" in said and said.count("\n") == 1, said)
        check("in bounded time", took_s < 100, took_s)
        print(f"a server that froze was given up after {took_s:.0f} s")


def rows_that_are_no_text(folder):
    """Bytes that are no UTF-8, and a zero byte, in a file's book: moving it says which row, and leaves nothing half done."""
    with Server() as server:
        school(server, program)
        for name, bad in (("torn", b"caf\xe9"), ("zero", b"a\0b")):
            book = folder / f"{name}.book"
            run("pupil", "add", "WREN", "--book", book)
            run("lesson", "log", "--yes", "WREN", "--start", "2026-10-01T10:00", "minutes 40; roundabout 3", "--book", book)
            with sqlite3.connect(book) as rows:
                rows.execute("UPDATE lesson SET remark = CAST(? AS TEXT)", (bad,))
            rows.close()
            code, said = run("school", "move", book, server.address("ash"))
            check(f"moving it: {name}", code == 1 and "WREN: lesson, remark: '" in said and "bytes that are no text" in said, said)
        check("nothing is half there", server.sql("SELECT count(*) FROM pupil") == "0")


def on_a_full_disk(folder):
    """A disk of its own needs root's rights; who hasn't them is told."""
    disk = folder / "disk"
    disk.mkdir()
    if os.geteuid() != 0 or subprocess.run(["mount", "-t", "tmpfs", "-o", "size=150m", "tmpfs", disk], check=False).returncode:
        print("a full disk isn't tried: only root can make one")
        return
    try:
        os.chmod(disk, 0o777)
        with Server("min_wal_size = '32MB'\nmax_wal_size = '48MB'\nfsync = off\n", inside=disk) as server:
            school(server, program)
            run("pupil", "add", "WREN", "--book", server.address("ash"))
            book, large = server.address("ash"), folder / "large.book"
            run("pupil", "add", "FINCH", "--book", large)
            run("lesson", "log", "--yes", "FINCH", "--start", "2026-10-01T10:00", "minutes 40; roundabout 3", "--book", large)
            with sqlite3.connect(large) as rows:
                rows.execute("UPDATE lesson SET remark = ?", (os.urandom(1_500_000).hex(),))
            rows.close()
            with open(disk / "full", "wb") as full:
                try:
                    while True:
                        full.write(bytes(1 << 16))
                        full.flush()
                except OSError:
                    pass
            code, said = run("school", "move", large, book)
            check("a full disk", code == 1 and "the server is full" in said and said.count("\n") == 1, said)
            check("nothing is half there", server.sql("SELECT string_agg(code, ' ') FROM pupil") == "WREN")
            (disk / "full").unlink()
            code, said = run("school", "move", large, book)
            check("afterwards", code == 0 and "1 pupil" in said, said)
    finally:
        subprocess.run(["umount", "-l", disk], check=False)


with tempfile.TemporaryDirectory() as name:
    os.chmod(name, 0o755)
    over_a_network(pathlib.Path(name))
    nobody_answers(pathlib.Path(name))
    rows_that_are_no_text(pathlib.Path(name))
    on_a_full_disk(pathlib.Path(name))
if "--long" in sys.argv:
    a_server_that_freezes()
print(f"{len(failed)} failed" if failed else "certificates, passwords, silence, odd bytes, full disk: all as it must be")
sys.exit(1 if failed else 0)
