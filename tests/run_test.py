"""Tests ./run as a new user starts it: it builds, serves the demo plant with its pages, and keeps it."""
import os
import pathlib
import re
import shutil
import signal
import subprocess
import tempfile
import unittest

from support.harness import ROOT, main
from support.served import Visitor

PIN = "274913"


class Started:
    """./run with a plant in a folder of its own."""

    def __init__(self, folder):
        self.process = subprocess.Popen(
            [str(ROOT / "run"), "--port", "0"], stdin=subprocess.DEVNULL, stdout=subprocess.PIPE,
            text=True, env={**os.environ, "PLANT": str(folder / "plant.steamworthy")})
        self.said = ""
        while "/enrol#" not in self.said:
            line = self.process.stdout.readline()
            if not line:
                raise AssertionError("./run ended: " + self.said)
            self.said += line
        self.port = int(re.search(r"http://127\.0\.0\.1:(\d+)/", self.said).group(1))
        self.code = re.search(r"/enrol#(\w+)", self.said).group(1)

    def stop(self):
        self.process.send_signal(signal.SIGTERM)
        rest, _ = self.process.communicate(timeout=20)
        return self.process.returncode, rest


class Run(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = pathlib.Path(tempfile.mkdtemp(prefix="steamworthy_run_"))
        cls.addClassCleanup(shutil.rmtree, cls.folder)
        cls.started = Started(cls.folder)
        cls.addClassCleanup(cls.started.process.stdout.close)
        cls.addClassCleanup(cls.started.process.kill)
        cls.visitor = Visitor(cls.started, "run")

    def test_1_serves_the_pages_that_were_built(self):
        page = self.visitor.get("/")
        self.assertEqual(page.status, 200)
        script = re.search(rb'src="(/assets/[^"]+\.js)"', page.data).group(1).decode()
        self.assertEqual(self.visitor.get(script).status, 200)
        self.assertNotIn("unsafe-inline", page.headers["Content-Security-Policy"])

    def test_2_a_device_gets_in_by_the_link_and_a_person_by_the_pin(self):
        self.assertIn("PIN is " + PIN, self.started.said)
        self.assertEqual(self.visitor.enrol(self.started.code).status, 201)
        signed_in = self.visitor.sign_in("R. Lind", PIN)
        self.assertEqual(signed_in.status, 201, signed_in.data)

    def test_3_two_boilers_a_closing_in_mid_work_and_one_of_last_year(self):
        boilers = {one["boiler"]: one for one in self.visitor.get("/api/plant").json["boilers"]}
        self.assertEqual(set(boilers), {"B1", "B7"})
        self.assertEqual(boilers["B7"]["closings"], [])
        stages = {one["stage"]: one["closing"] for one in boilers["B1"]["closings"]}
        self.assertEqual(set(stages), {"closing_up", "taken_over"})
        now = self.visitor.get(f"/api/closings/{stages['closing_up']}").json
        people = {space["tag"]: space["people"] for space in now["spaces"]}
        self.assertEqual(people["SP-SD"], ["J. Moe", "T. Berg"])
        self.assertEqual(now["alarms"], [])
        asked = self.visitor.get(f"/api/closings/{stages['closing_up']}/outstanding?step=fill").json
        checks = {item["check"] for item in asked["outstanding"]}
        self.assertLessEqual({"s4_space", "s4_closure", "s4_finding"}, checks)
        last_year = self.visitor.get(f"/api/closings/{stages['taken_over']}").json
        self.assertEqual(last_year["alarms"], [])

    def test_4_stops_when_told_to_and_keeps_the_plant(self):
        code, rest = self.started.stop()
        self.assertEqual(code, 0, rest)
        self.assertIn("everything that was acknowledged is stored", rest)
        again = Started(self.folder)
        self.addCleanup(again.process.stdout.close)
        self.addCleanup(again.process.kill)
        visitor = Visitor(again, "run")
        visitor.cookies = self.visitor.cookies
        self.assertEqual(len(visitor.get("/api/plant").json["boilers"]), 2)
        self.assertEqual(again.stop()[0], 0)


if __name__ == "__main__":
    main()
