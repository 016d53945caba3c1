"""Compares core/water on 10,000 seeded random states with Debian's python3-iapws, an independent
implementation of IAPWS R7-97 and R12-08.

Both evaluate the same closed formulas, so they differ by rounding alone: 1e-9 relative is far above
it and far below what a wrong digit of any coefficient would give. Expansion passes through zero near
277 K: there the tolerance is that of a coefficient of 1e-4 /K."""
import csv
import io
import subprocess
import unittest

from iapws._iapws import _Viscosity
from iapws.iapws97 import _PSat_T, _Region1, _Region2, _TSat_P

from support.harness import ROOT, main

BUILD = ROOT / "build/release"
TOLERANCE = 1e-9


def states():
    subprocess.run(["ninja", "-C", str(BUILD), "water_states"], check=True, capture_output=True)
    text = subprocess.run([str(BUILD / "water_states")], check=True, capture_output=True, text=True).stdout
    return [{key: float(value) for key, value in row.items()} for row in csv.DictReader(io.StringIO(text))]


class Water(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.states = states()

    def assert_near(self, pairs, least=0.0):
        worst = max((abs(ours - theirs) / max(abs(theirs), least), row) for ours, theirs, row in pairs)
        self.assertLessEqual(worst[0], TOLERANCE, f"at state {worst[1]}: {self.states[worst[1]]}")

    def test_there_are_ten_thousand_states(self):
        self.assertEqual(len(self.states), 10_000)

    def test_liquid(self):
        theirs = [_Region1(s["t"], s["p"] / 1e6) for s in self.states]
        for ours, convert, least in (
                ("rho", lambda r: 1 / r["v"], 0.0), ("kt", lambda r: r["kt"] / 1e6, 0.0),
                ("alfav", lambda r: r["alfav"], 1e-4), ("cp", lambda r: r["cp"] * 1e3, 0.0),
                ("h", lambda r: r["h"] * 1e3, 1e3)):
            with self.subTest(ours):
                self.assert_near([(s[ours], convert(r), i)
                                  for i, (s, r) in enumerate(zip(self.states, theirs))], least)

    def test_viscosity(self):
        self.assert_near([(s["mu"], _Viscosity(1 / _Region1(s["t"], s["p"] / 1e6)["v"], s["t"]), i)
                          for i, s in enumerate(self.states)])

    def test_saturation_both_ways(self):
        self.assert_near([(s["psat"], _PSat_T(s["t"]) * 1e6, i) for i, s in enumerate(self.states)])
        self.assert_near([(s["tsat"], _TSat_P(s["p_boil"] / 1e6), i) for i, s in enumerate(self.states)])

    def test_dry_saturated_steam(self):
        theirs = [_Region2(s["t"], _PSat_T(s["t"])) for s in self.states]
        for ours, convert in (("rho_steam", lambda r: 1 / r["v"]), ("h_steam", lambda r: r["h"] * 1e3)):
            with self.subTest(ours):
                self.assert_near([(s[ours], convert(r), i)
                                  for i, (s, r) in enumerate(zip(self.states, theirs))])


if __name__ == "__main__":
    main()
