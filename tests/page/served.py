"""The program's page, served for a test, and a client that speaks HTTP to it (http.client of Python)."""
import contextlib
import http.client
import pathlib
import re
import subprocess
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent


class Served:
    def __init__(self, process, port, key):
        self.process, self.port, self.key = process, port, key
        self.cookie = None

    def ask(self, method, target, body=None, **headers):
        """(status, headers, body). A header that is None isn't sent."""
        given = {"Host": f"127.0.0.1:{self.port}", **({"Cookie": self.cookie} if self.cookie else {}), **headers}
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=60)
        with contextlib.closing(connection):
            connection.putrequest(method, target, skip_host=True, skip_accept_encoding=True)
            data = body.encode() if isinstance(body, str) else body
            for name, value in given.items():
                if value is not None:
                    connection.putheader(name.replace("_", "-"), value)
            if data is not None:
                connection.putheader("Content-Length", str(len(data)))
            connection.endheaders(data)
            reply = connection.getresponse()
            return reply.status, dict(reply.getheaders()), reply.read()

    def enter(self):
        """Trades the key for the cookie."""
        status, headers, _ = self.ask("GET", f"/?key={self.key}")
        assert status == 303, status
        self.cookie = headers["Set-Cookie"].split(";")[0]

    @property
    def origin(self):
        return f"http://127.0.0.1:{self.port}"

    def worked_ms(self):
        """Processor time of all its threads so far; not that of a machine that does something else."""
        tasks = pathlib.Path(f"/proc/{self.process.pid}/task").iterdir()
        return sum(int((task / "schedstat").read_text(encoding="ascii").split()[0]) for task in tasks) / 1e6

    def resident_kb(self):
        status = pathlib.Path(f"/proc/{self.process.pid}/status").read_text(encoding="ascii")
        return int(re.search(r"VmRSS:\s+(\d+)", status).group(1))


@contextlib.contextmanager
def served(program, extract=ROOT / "maps" / "quillham.osm.pbf", region="GB-ENG", more=(), area=None):
    """area: one that is built already."""
    with tempfile.TemporaryDirectory() as folder:
        if area is None:
            area = pathlib.Path(folder) / "quillham.area"
            subprocess.run([program, "build", extract, "-o", area, "--region", region], check=True, stdout=subprocess.DEVNULL)
        process = subprocess.Popen([program, "page", area, *more], stdout=subprocess.PIPE, stderr=subprocess.PIPE,
                                   encoding="utf-8", env={"TMPDIR": folder, "PATH": "/usr/bin:/bin"})
        try:
            line = process.stdout.readline()
            told = re.match(r"http://127\.0\.0\.1:(\d+)/\?key=([0-9a-f]{64})  ", line)
            assert told, line + process.stderr.read()
            yield Served(process, int(told.group(1)), told.group(2))
        finally:
            process.terminate()
            process.wait(timeout=20)
            left = [path.name for path in pathlib.Path(folder).iterdir() if path != area]
        assert not left, f"left behind: {left}"
