"""Tries S1 to S11 of docs/safety.md over the API of the served program: a clearance is refused with
reason and remedy, the step reported all the same is stored and alarms, a clearance lapses, a late
entry alarms."""
import unittest

from support.harness import main
from support.served import SECRETS, Served, Visitor

# Rule, clearance asked, what reports the step (kind, body), how the alarm begins. In the order in which
# a crew that asks for nothing would go wrong. Which entry tells of which step: common practice, no source.
WITHOUT = "Done without being "
TABLE = [
    ("S1", {"step": "open"}, [("closure.opened", {"closure": "SD-M1"}), ("closure.opened", {"closure": "SD-M2"})],
     WITHOUT + "clear to open"),
    ("S2", {"step": "enter", "subject": "SP-SD"}, [("tally.in", {"space": "SP-SD", "who": "ole"})],
     WITHOUT + "clear to enter, SP-SD"),
    ("S3", {"step": "close_last_way_in", "subject": "SP-SD"},
     [("closure.nipped_up", {"closure": "SD-M1"}), ("closure.nipped_up", {"closure": "SD-M2"})],
     WITHOUT + "clear to close the last way in, SP-SD"),
    ("S4", {"step": "fill"}, [("filling.started", {})], WITHOUT + "clear to fill"),
    ("S5", {"step": "raise_pressure", "up_to_bar_gauge": 45},
     [("raising.started", {"to_bar_gauge": 45}), ("reading.taken", {"gauge": "TG-1", "pressure_bar_gauge": 40})],
     WITHOUT + "clear to raise pressure"),
    ("S6", {"step": "walk_fire_side", "subject": "SP-FU"}, [("tally.in", {"space": "SP-FU", "who": "ole"})],
     WITHOUT + "clear to walk the fire side, SP-FU"),
    ("S7", {"step": "tighten", "subject": "FH-A05"}, [("closure.touched", {"closure": "FH-A05", "how": "tightened"})],
     WITHOUT + "clear to tighten, FH-A05"),
    ("S7", {"step": "strike", "subject": "FH-A06"}, [("closure.touched", {"closure": "FH-A06", "how": "struck"})],
     WITHOUT + "clear to strike, FH-A06"),
    ("S7", {"step": "break_joint", "subject": "FH-A07"}, [("closure.opened", {"closure": "FH-A07"})],
     WITHOUT + "clear to break the joint, FH-A07"),
    ("S8", {"step": "drain"}, [("drain.opened", {"mounting": "BD-1"})], WITHOUT + "clear to drain"),
    ("S8", {"step": "leave_full"}, [("boiler.left_full", {})], WITHOUT + "clear to leave full"),
    ("S9", {"step": "take_over"}, [("boiler.received", {})], WITHOUT + "clear to hand over"),
    ("S9", {"step": "steam"}, [("fire.lit", {})], WITHOUT + "clear to raise steam"),
]


class Safety(unittest.TestCase):
    def setUp(self):
        self.served = Served()
        self.addCleanup(self.served.close)
        self.mara, self.ole = Visitor(self.served, "one"), Visitor(self.served, "two")
        self.assertEqual(self.mara.enrol_first().status, 201)
        self.assertEqual(self.mara.sign_in("mara").status, 201)
        self.mara.let_in(self.ole, "ole", "hand", "attendant")
        self.ole_is_away = False
        self.closing = self.mara.post("/api/closings", {"boiler": "B1"}).json["closing"]

    def view(self):
        return self.mara.get(f"/api/closings/{self.closing}").json

    def tell(self, visitor, kind, body):
        """Reports a fact that has seen all that the other device reported."""
        other = self.ole if visitor is self.mara else self.mara
        seq, head = other.feeds.get(self.closing, (0, b""))
        changed = {"seen": [(other.key.device, seq, head)]} if seq and not self.ole_is_away else {}
        answer = visitor.report(self.closing, visitor.seal(self.closing, kind, body, **changed))
        self.assertEqual(answer.status, 200, answer.data)
        return answer.json["receipts"][0]

    def ask(self, wish):
        return self.mara.post(f"/api/closings/{self.closing}/clearances", {
            **wish, "secret": SECRETS["mara"], "second": "ole", "second_secret": SECRETS["ole"]})

    def open_alarms(self):
        return [alarm for alarm in self.view()["alarms"] if not alarm["taken"]]

    def test_each_step_is_refused_stored_all_the_same_and_alarms(self):
        for rule, wish, entries, alarm in TABLE:
            with self.subTest(rule, **wish):
                refused = self.ask(wish)
                self.assertEqual((refused.status, refused.code), (409, "server.outstanding"), refused.data)
                reasons = refused.json["outstanding"]
                self.assertTrue(any(one["check"].startswith(rule.lower() + "_") for one in reasons), reasons)
                for one in reasons:
                    self.assertTrue(one["reason"] and one["remedy"] and one["role"], one)
                for kind, body in entries:
                    stored = self.tell(self.ole, kind, body)
                    facts = self.mara.get(f"/api/closings/{self.closing}/facts?after={stored['intake_no'] - 1}"
                                          "&limit=1").json["facts"]
                    self.assertEqual((facts[0]["kind"], facts[0]["person"]), (kind, "ole"))
                texts = [one["text"] for one in self.open_alarms()]
                self.assertTrue(any(text.startswith(alarm) for text in texts), (alarm, texts))
                for one in self.open_alarms():  # the next step must raise its own
                    self.tell(self.mara, "alarm.taken", {"alarm": one["name"], "role": "lead_hand"})
                self.assertEqual(self.open_alarms(), [])

    def test_s10_a_clearance_lapses_at_shift_change(self):
        self.tell(self.ole, "gauge.fitted", {"gauge": "TG-1"})
        self.tell(self.ole, "reading.taken", {"gauge": "TG-1", "pressure_bar_gauge": 0})
        wish = {"step": "tighten", "subject": "FH-A05"}
        given = self.ask(wish)
        self.assertEqual(given.status, 201, given.data)
        self.assertTrue(self.view()["clearances"][-1]["stands"])
        self.tell(self.mara, "shift.handed_over", {"from": "mara", "to": "mara"})
        lapsed = self.view()["clearances"][-1]
        self.assertEqual((lapsed["stands"], lapsed["lapsed_by"]), (False, "s10_shift"))

    def test_s11_a_late_entry_makes_a_clearance_wrong_and_alarms(self):
        limits = {"air_holds_s": 1800, "count_holds_s": 1200, "spring_hangers": False}
        self.assertEqual(self.mara.call("PUT", "/api/site/limits", limits).status, 200)
        # Made on a tablet out of reach, before the count; it comes afterwards.
        self.ole_is_away = True
        late = self.ole.seal(self.closing, "tally.in", {"space": "SP-SD", "who": "ole"})
        self.tell(self.mara, "space.counted", {"space": "SP-SD", "second": "ole", "people_inside": 0,
                                               "tools_inside": 0, "looked_in": True, "called": True})
        given = self.ask({"step": "close_last_way_in", "subject": "SP-SD"})
        self.assertEqual(given.status, 201, given.data)
        self.assertEqual(self.open_alarms(), [])
        self.assertEqual(self.ole.report(self.closing, late).status, 200)
        texts = [one["text"] for one in self.open_alarms()]
        self.assertTrue(any("speaks against" in text and "SP-SD" in text for text in texts), texts)
        again = self.ask({"step": "close_last_way_in", "subject": "SP-SD"})
        self.assertEqual(again.status, 409)
        self.assertIn("s3_inside", {one["check"] for one in again.json["outstanding"]})


if __name__ == "__main__":
    main()
