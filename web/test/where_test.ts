// Every check of docs/safety.md leads to a page of the map; checks of what a crew does most lead to the
// page where it is done.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { ClosingView } from "../src/api/view";
import { place_of } from "../src/routes";
import { where_of } from "../src/where";

const checks = [
  ...new Set(readFileSync(new URL("../../docs/safety.md", import.meta.url), "utf8").match(/\bs\d+_[a-z_]+/g) ?? []),
];
const view = {
  closing: "ID",
  spaces: [{ tag: "SP-SD" }],
  parts: [{ tag: "FH", rows: [[{ tag: "FH-A01" }]] }],
} as unknown as ClosingView;

describe("the way to what is outstanding", () => {
  test("every check leads to a page", () => {
    expect(checks.length).toBeGreaterThan(60);
    for (const check of checks) {
      const place = place_of(where_of(view, check, ""));
      expect([check, place.page]).not.toEqual([check, "nowhere"]);
    }
  });

  test("a closure leads to its part, a space to itself", () => {
    expect(where_of(view, "s4_closure", "FH-A01")).toBe("/closing/ID/part/FH");
    expect(where_of(view, "s3_inside", "SP-SD")).toBe("/closing/ID/inside/SP-SD");
    expect(where_of(view, "s2_air_old", "SP-SD")).toBe("/closing/ID/inside/SP-SD");
  });

  test.each([
    ["s1_isolation", "isolations"],
    ["s4_internal", "internals"],
    ["s4_vent", "test"],
    ["s4_drain", "test"],
    ["s4_tubes", "inside"],
    ["s4_header", "inside"],
    ["s4_finding", "leaks"],
    ["s5_sheet", "test_sheet"],
    ["s5_safety_valve", "temporaries"],
    ["s5_stop_word", "test"],
    ["s5_fire_side", "inside"],
    ["s9_leak", "leaks"],
    ["s9_not_seen", "walkdown"],
    ["s9_seen_off", "temporaries"],
    ["s9_taken_over", "taking_over"],
  ])("%s leads to %s", (check, page) => {
    expect(place_of(where_of(view, check, "X")).page).toBe(page);
  });
});
