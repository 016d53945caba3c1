"""The served program under load, from outside: how soon it answers, what it takes, how long an entry
waits. Baselines in the same run: a process that does nothing, and one synced write to the same disk.

    python3 bench/server_load.py [SECONDS] [FOLLOWERS] [DEVICES]      60 200 20 unless said

Each device reports 5 facts a second, signed before they are timed; each follower reads live updates.
"""
import http.client
import json
import os
import pathlib
import re
import selectors
import subprocess
import sys
import tempfile
import threading
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "tests"))
from support.served import Served, Visitor, program  # noqa: E402

RATE = 5  # facts a second and device


def share(values, part):
    values = sorted(values)
    return values[min(len(values) - 1, int(part * len(values)))] * 1000


def report(name, values):
    print(f"{name:44} p50 {share(values, 0.5):8.1f} ms   p99 {share(values, 0.99):8.1f} ms   "
          f"worst {max(values) * 1000:8.1f} ms")


def memory_mib(pid):
    status = pathlib.Path(f"/proc/{pid}/status").read_text()
    return int(re.search(r"VmRSS:\s+(\d+) kB", status).group(1)) / 1024


def cold_start(options):
    """From the start of the process until GET / has been answered, of a store that is there."""
    times = []
    with tempfile.TemporaryDirectory() as folder:
        for n in range(12):
            start = time.monotonic()
            process = subprocess.Popen(
                [program(), "serve", folder + "/plant.steamworthy", *options, "--port", "0"],
                stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
            said = ""
            while "/enrol#" not in said:
                said += process.stdout.readline()
            port = int(re.search(r"127\.0\.0\.1:(\d+)/", said).group(1))
            page = http.client.HTTPConnection("127.0.0.1", port)
            page.request("GET", "/")
            assert page.getresponse().status in (200, 404)
            if n >= 2:  # the first makes the store
                times.append(time.monotonic() - start)
            if n == 11:
                time.sleep(2)
                print(f"{'idle memory':44} {memory_mib(process.pid):12.1f} MiB")
            process.terminate()
            process.communicate()
    report("from start to the first page answered", times)


def process_alone():
    times = []
    for _ in range(10):
        start = time.monotonic()
        subprocess.run([program(), "--version"], stdout=subprocess.DEVNULL, check=True)
        times.append(time.monotonic() - start)
    report("baseline: a process that prints its version", times)


def sync_alone():
    times = []
    with tempfile.NamedTemporaryFile() as file:
        for _ in range(200):
            start = time.monotonic()
            file.write(b"x" * 600)
            file.flush()
            os.fdatasync(file.fileno())
            times.append(time.monotonic() - start)
    report("baseline: 600 bytes written and synced", times)


class Follower:
    def __init__(self, visitor, closing):
        self.socket = visitor.served.socket()
        cookies = "; ".join(f"{k}={v}" for k, v in visitor.cookies.items())
        self.socket.sendall(f"GET /api/closings/{closing}/events HTTP/1.1\r\nHost: h\r\n"
                            f"Cookie: {cookies}\r\n\r\n".encode())
        self.rest, self.seen = b"", 0

    def read(self):
        """The number up to which this follower has been told."""
        self.rest += self.socket.recv(1 << 20)
        ids = re.findall(rb"id: (\d+)\n", self.rest)
        self.rest = self.rest[self.rest.rfind(b"\n") + 1:]
        before, self.seen = self.seen, max([self.seen, *map(int, ids)])
        return range(before + 1, self.seen + 1)


class Load:
    def __init__(self, seconds, followers, devices):
        self.seconds, self.lock, self.is_over = seconds, threading.Lock(), False
        self.sent_at, self.acks, self.told = {}, [], []
        self.served = Served()
        lead = Visitor(self.served)
        assert lead.enrol_first().status == 201 and lead.sign_in("mara").status == 201
        self.closing = lead.post("/api/closings", {"boiler": "B1"}).json["closing"]
        self.followers = [Follower(lead, self.closing) for _ in range(followers)]
        self.devices = []
        for i in range(devices):
            device = Visitor(self.served, f"load {i}")
            device.enrol(lead.post("/api/enrolment-codes").json["code"])
            assert device.sign_in("mara").status == 201
            self.devices.append(device)

    def follow(self):
        selector = selectors.DefaultSelector()
        for follower in self.followers:
            selector.register(follower.socket, selectors.EVENT_READ, follower)
        while not self.is_over:
            for key, _ in selector.select(0.2):
                news = key.data.read()
                now = time.monotonic()
                with self.lock:
                    self.told += [now - self.sent_at[n] for n in news if n in self.sent_at]

    def report(self, device):
        count = self.seconds * RATE
        bodies = [json.dumps({"facts": [device.seal(self.closing, "remark.made", {"text": "load"})]})
                  for _ in range(count)]
        connection = http.client.HTTPConnection("127.0.0.1", self.served.port)
        head = {"Content-Type": "application/json",
                "Cookie": "; ".join(f"{k}={v}" for k, v in device.cookies.items())}
        self.ready.wait()
        begun = time.monotonic()
        for i, body in enumerate(bodies):
            time.sleep(max(0.0, begun + i / RATE - time.monotonic()))
            start = time.monotonic()
            connection.request("POST", f"/api/closings/{self.closing}/facts", body, head)
            answer = json.loads(connection.getresponse().read())
            with self.lock:
                self.acks.append(time.monotonic() - start)
                self.sent_at[answer["receipts"][0]["intake_no"]] = start

    def run(self):
        self.ready = threading.Barrier(len(self.devices))
        following = threading.Thread(target=self.follow)
        following.start()
        threads = [threading.Thread(target=self.report, args=(d,)) for d in self.devices]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
        time.sleep(2)
        self.is_over = True
        following.join()
        last = max(self.sent_at)
        behind = sum(follower.seen < last for follower in self.followers)
        print(f"{len(self.devices)} devices, {len(self.followers)} followers, {self.seconds} s: "
              f"{len(self.acks)} facts acknowledged, {behind} followers behind at the end")
        report("acknowledgement, once stored and synced", self.acks)
        report("delivery to a follower, pushes joined", self.told)
        print(f"{'memory under load':44} {memory_mib(self.served.process.pid):12.1f} MiB")
        stored = self.served.stop()[0]
        lost = len(self.acks) - self.facts_stored()
        print(f"exit code {stored}; acknowledged and not stored: {lost}")
        self.served.close()
        return 1 if lost or behind or stored else 0

    def facts_stored(self):
        listed = subprocess.run([program(), "log", "list", self.served.folder / "plant.steamworthy"],
                                capture_output=True, text=True, check=True).stdout
        return listed.count(": load")


def main():
    seconds, followers, devices = [int(n) for n in sys.argv[1:]] + [60, 200, 20][len(sys.argv) - 1:]
    process_alone()
    cold_start(["--new", "--boiler", "examples/watertube.toml"])
    sync_alone()
    sys.exit(Load(seconds, followers, devices).run())


if __name__ == "__main__":
    main()
