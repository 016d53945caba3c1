// S1 to S9 of docs/safety.md on the pages: each clearance is refused where its step is done, with reason
// and remedy, and the step reported all the same is stored and alarms.
import { crew } from "./crew.ts";
import type { Hand } from "./hand.ts";
import { check, until } from "./spec.ts";

interface Step {
  rule: string;
  path: string;
  /** As the button says it, with what it is for. */
  clearance: string;
  report: (hand: Hand) => Promise<void>;
  /** What the alarm says. */
  alarm: string;
}

const drum = ["SD-M1", "SD-M2"];

async function tap_closures(hand: Hand, step: string): Promise<void> {
  await hand.go("/part/SD");
  await hand.tap(step);
  for (const tag of drum) await hand.page.locator(`[data-closure="${tag}"]`).click();
}

async function go_in(hand: Hand): Promise<void> {
  await hand.field("Who").selectOption(crew.hand.who);
  await hand.tap("In");
}

// In the order in which a crew that asks for nothing would go wrong; common practice, no source.
const steps: Step[] = [
  { rule: "S1", path: "", clearance: "Open", report: (hand) => tap_closures(hand, "Opened"), alarm: "clear to open" },
  { rule: "S2", path: "/inside/SP-SD", clearance: "Enter SP-SD", report: go_in, alarm: "clear to enter, SP-SD" },
  { rule: "S3", path: "/inside/SP-SD", clearance: "Close the last way in SP-SD", report: (hand) => tap_closures(hand, "Nipped up"), alarm: "clear to close the last way in, SP-SD" },
  { rule: "S4", path: "/test", clearance: "Fill", report: (hand) => hand.tap("Filling started"), alarm: "clear to fill" },
  {
    rule: "S5",
    path: "/test",
    clearance: "Raise pressure",
    report: async (hand) => {
      await hand.entry("Pump started", { "Up to which pressure": "45 bar" });
      await hand.tap("Fitted: TG-1");
      await hand.sent();
      await hand.read("TG-1", "40 bar");
    },
    alarm: "clear to raise pressure",
  },
  { rule: "S6", path: "/inside/SP-FU", clearance: "Fire side in for the walkdown SP-FU", report: go_in, alarm: "clear to walk the fire side, SP-FU" },
  {
    rule: "S7",
    path: "/closure/FH-A05",
    clearance: "Tighten FH-A05",
    report: (hand) => hand.entry("Touched", { "What was done": "tightened" }),
    alarm: "clear to tighten, FH-A05",
  },
  {
    rule: "S7",
    path: "/closure/FH-A06",
    clearance: "Strike FH-A06",
    report: (hand) => hand.entry("Touched", { "What was done": "struck" }),
    alarm: "clear to strike, FH-A06",
  },
  {
    rule: "S7",
    path: "/closure/FH-A07",
    clearance: "Break the joint FH-A07",
    report: (hand) => hand.tap("Opened"),
    alarm: "clear to break the joint, FH-A07",
  },
  {
    rule: "S8",
    path: "/leaks",
    clearance: "Drain",
    report: async (hand) => {
      await hand.go("/test");
      await hand.tap("BD-1 Opened");
    },
    alarm: "clear to drain",
  },
  { rule: "S9", path: "/taking-over", clearance: "Take over", report: (hand) => hand.tap("I take the boiler over"), alarm: "clear to hand over" },
  { rule: "S9", path: "/taking-over", clearance: "Raise steam", report: (hand) => hand.tap("First fire lit"), alarm: "clear to raise steam" },
];

/** One after the other on a closing that has just begun. */
export async function every_step(hand: Hand): Promise<void> {
  const { page } = hand;
  for (const step of steps) {
    const where = `${step.rule}, ${step.clearance}`;
    await hand.go(step.path);
    await page.getByRole("button", { name: `Clearance: ${step.clearance}`, exact: true }).first().click();
    const dialog = page.getByRole("dialog");
    await dialog.getByRole("heading", { name: "Still outstanding" }).waitFor();
    check((await dialog.getByRole("button", { name: "Give the clearance" }).count()) === 0, `${where}: it could be given`);
    const first = await dialog.getByRole("listitem").first().locator("p").allTextContents();
    check(first.length >= 3 && first.every((text) => text.trim() !== ""), `${where}: no reason, remedy and role: ${first.join(" | ")}`);
    await dialog.getByRole("button", { name: "Cancel" }).click();
    await step.report(hand);
    await hand.sent();
    const alarm = page.locator(".alarm", { hasText: `without being ${step.alarm}` });
    await alarm.waitFor();
    // Each is taken, so that the next step raises its own.
    const take = page.getByRole("alert").getByRole("button", { name: "I take it" });
    await until(`${where}: all alarms are taken`, async () => {
      if ((await take.count()) === 0) return true;
      await take.first().click();
      await hand.sent();
      return false;
    });
  }
}
