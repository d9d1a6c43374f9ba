"""A PostgreSQL server of a test's own: in a temporary folder, by a user without rights, on a socket of that folder.

    with Server() as server:
        server.sql("CREATE ROLE ash LOGIN")
        address = server.address("ash")

What it needs is in Debian's package postgresql-15; without it the test fails and says so.
Source: PostgreSQL 15 documentation, initdb, pg_ctl, pg_basebackup, 20.1.
"""
import glob
import os
import pathlib
import re
import shutil
import signal
import subprocess
import sys
import tempfile


def bin_folder():
    found = sorted(glob.glob("/usr/lib/postgresql/*/bin/initdb"))
    if not found:
        raise SystemExit("PostgreSQL isn't installed: tools/install-packages test installs it")
    return pathlib.Path(found[-1]).parent


BIN = bin_folder()
# Who is told to end (a test that took too long) stops its server first: what stands in `finally` and `with` is done.
signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))
# Root may not run a server: Debian's own user for it does.
AS_OTHER = ["/usr/bin/setpriv", "--reuid=postgres", "--regid=postgres", "--clear-groups", "--"] if os.geteuid() == 0 else []
QUICK = "fsync = off\nfull_page_writes = off\n"
USUAL = """
listen_addresses = ''
unix_socket_permissions = 0777
shared_buffers = '32MB'
max_connections = 80
jit = off
log_min_messages = error
lc_messages = 'C'
"""


class Server:
    """owner: the login that owns the server; settings: further lines of postgresql.conf; copy_of: the server of which
    this one is a streaming replica; socket: the folder of its socket, its own unless said;
    inside: the folder in which its own one is made."""

    def __init__(self, settings=QUICK, owner="head", copy_of=None, socket=None, inside=None):
        self.owner = owner
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="loopwright-server-", dir=inside))
        os.chmod(self.folder, 0o755)
        self.data = self.folder / "data"
        self.socket = socket or self.folder
        if AS_OTHER:
            shutil.chown(self.folder, "postgres", "postgres")
        if copy_of:
            self.call("pg_basebackup", "-h", copy_of.socket, "-U", owner, "-D", self.data, "-R", "-c", "fast", "-X", "stream")
            with open(self.data / "postgresql.conf", "a") as conf:
                conf.write(f"unix_socket_directories = '{self.socket}'\n{settings}")
        else:
            self.call("initdb", "-D", self.data, "-U", owner, "-A", "trust", "-E", "UTF8", "--locale=C.UTF-8", "-N",
                      "--no-instructions")
            with open(self.data / "postgresql.conf", "a") as conf:
                conf.write(f"{USUAL}unix_socket_directories = '{self.socket}'\n{settings}")
        self.port = re.findall(r"^port = (\d+)", settings, re.M)
        self.start()

    def call(self, program, *words):
        done = subprocess.run([*AS_OTHER, BIN / program, *map(str, words)], capture_output=True, text=True,
                              cwd="/", env={**os.environ, "LC_ALL": "C.UTF-8"})
        if done.returncode:
            raise RuntimeError(f"{program}: {done.stdout}{done.stderr}")
        return done.stdout

    def start(self):
        # Its log goes to a file: a pipe would be held open by the server.
        self.call("pg_ctl", "-D", self.data, "-l", self.folder / "log", "-w", "-t", "60", "start")

    def stop(self, how="fast"):
        """how: fast, or immediate, as if its process were killed."""
        subprocess.run([*AS_OTHER, BIN / "pg_ctl", "-D", self.data, "-m", how, "-w", "stop"], capture_output=True, cwd="/")

    def promote(self):
        self.call("pg_ctl", "-D", self.data, "-w", "promote")

    def sql(self, text, login=None, database="postgres"):
        done = subprocess.run([BIN / "psql", "-X", "-q", "-A", "-t", "-v", "ON_ERROR_STOP=1", "-h", self.socket, *(["-p", self.port[0]] if self.port else []), "-U",
                               login or self.owner, "-d", database], input=text, capture_output=True, text=True)
        if done.returncode:
            raise RuntimeError(done.stderr.strip())
        return done.stdout.strip()

    @staticmethod
    def psql():
        return BIN / "psql"

    def address(self, login, database="postgres"):
        return f"postgresql:///{database}?host={self.socket}&user={login}" + (f"&port={self.port[0]}" if self.port else "")

    def remove(self):
        self.stop("immediate")
        shutil.rmtree(self.folder, ignore_errors=True)

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.remove()


def school(server, program):
    """Makes the book of a school with the instructors ash and birch and the office elm; who is a stranger is no member."""
    server.sql("CREATE ROLE ash LOGIN; CREATE ROLE birch LOGIN; CREATE ROLE elm LOGIN; CREATE ROLE stranger LOGIN")
    owner = server.address(server.owner)
    for words in (["prepare"], ["admit", "ash"], ["admit", "birch"], ["admit", "elm", "--office"]):
        subprocess.run([program, "school", *words, "--book", owner], check=True, capture_output=True, text=True)
