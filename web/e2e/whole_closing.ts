// A whole closing on the page, from shut down to taken over: the steam drum and the front wall's lower
// header are opened, all other closures stay shut this time. Seven people share one tablet, each doing
// what is theirs.
import type { Locator } from "playwright-core";
import { ask, crew, type Tablet } from "./crew.ts";
import type { Hand } from "./hand.ts";
import { check, until } from "./spec.ts";

interface View {
  stage: string;
  stage_text: string;
  isolations: { tag: string; asked: string }[];
  parts: { tag: string; rows: { tag: string }[][] }[];
  mountings: { tag: string; kind: string }[];
  temporaries: { tag: string }[];
  places: { tag: string; dry: boolean }[];
  alarms: { text: string; taken: boolean }[];
}

const opened = ["SD", "FH"];

export async function whole_closing(tablet: Tablet, hand: Hand, picture: (name: string) => Promise<void>): Promise<void> {
  const { page } = tablet;
  const view = async (): Promise<View> => (await ask<View>(page, "GET", `/api/closings/${hand.closing}`)).body;
  /** A picture of the page from its top, or from something on it. */
  const shot = async (name: string, from?: Locator): Promise<void> => {
    if (from === undefined) await page.evaluate(() => scrollTo(0, 0));
    else await from.first().evaluate((element) => element.scrollIntoView({ block: "start" }));
    await page.evaluate(async () => {
      for (let frame = 0; frame < 2; ++frame) await new Promise(requestAnimationFrame);
    });
    await picture(name);
  };
  const start = await view();
  const closures = (part: string): string[] => start.parts.find((one) => one.tag === part)!.rows.flat().map((closure) => closure.tag);
  const of_kind = (...kinds: string[]): string[] => start.mountings.filter((one) => kinds.includes(one.kind)).map((one) => one.tag);
  const vents = of_kind("vent");
  const drains = of_kind("drain", "blowdown");
  const drums = closures("SD");

  const step_on = async (part: string, step: string, tags: string[]): Promise<void> => {
    await hand.go(`/part/${part}`);
    await hand.tap(step);
    if (step === "Gasket put on") await hand.field("Kind of gasket").selectOption("flexible_graphite");
    const cell = (tag: string): Locator => page.locator(`[data-closure="${tag}"]`);
    for (const tag of tags) await cell(tag).click();
    await hand.sent();
    // Somebody at the boiler sees by the tick whether a tap was felt, and taps again where it was not.
    await until(`${step} is ticked on all of ${part}`, async () => {
      const missing = await page.locator('[data-closure]:not([aria-pressed="true"])').evaluateAll((all) => all.map((one) => (one as HTMLElement).dataset["closure"]!));
      const again = tags.filter((tag) => missing.includes(tag));
      if (again.length === 0) return true;
      await page.waitForTimeout(1500);
      for (const tag of again) {
        if ((await cell(tag).getAttribute("aria-pressed")) === "true") continue;
        console.log(`        ${step} was not felt on ${tag}, and is tapped again`);
        await cell(tag).click();
      }
      await hand.sent();
      return false;
    }, 30_000);
  };
  const in_and_out = async (between?: () => Promise<unknown>): Promise<void> => {
    await hand.field("Who").selectOption(crew.hand.who);
    await hand.tap("In");
    await page.getByRole("button", { name: `Out: ${crew.hand.name}` }).waitFor();
    await between?.();
    await hand.tap(`Out: ${crew.hand.name}`);
    await page.getByText("Nobody is inside.").waitFor();
  };
  const read_both = async (drum: string, pump: string): Promise<void> => {
    await hand.read("TG-1", drum);
    await hand.read("TG-2", pump);
  };

  // Limits that only the site can set; nobody is cleared to open or to go in without them.
  await hand.as(crew.engineer);
  await hand.open("/settings");
  const limits = { "An air reading holds for": "30 min", "A count holds for": "20 min", "Warmest metal at which a boiler is opened": "45 °C", "Which paper of the site says so": "the demo plant's own instruction" };
  for (const [label, value] of Object.entries(limits)) await hand.field(label).fill(value);
  await hand.tap("Set these limits");
  await page.getByText("Recorded.").waitFor();
  await shot("limits", page.getByRole("heading", { name: "Limits of the site" }));
  await hand.as(crew.lead_hand);
  await hand.go("");
  await page.getByRole("heading", { name: /Still outstanding/ }).waitFor();
  await shot("begun");

  // Isolated, vented, drained, cold: open.
  await hand.go("/isolations");
  for (const { tag, asked } of start.isolations) {
    const blank = asked === "blank";
    await hand.entry(`Isolate ${tag}`, { How: blank ? "blank" : "two shut valves with a tell-tale between", "Numbers of locks and tags": `lock ${tag}` });
    if (!blank) await hand.tap(`${tag}: Tell-tale dry`);
    await hand.tap(`${tag}: Tried, holds`);
  }
  await shot("isolations");
  await hand.go("/test");
  for (const vent of vents) for (const what of ["Opened", "Moves air"]) await hand.tap(`${vent} ${what}`);
  for (const drain of drains) for (const what of ["Opened", "Proved clear"]) await hand.tap(`${drain} ${what}`);
  await hand.tap("Boiler drained");
  await hand.tap("Fitted: TG-1");
  await hand.sent();
  await hand.read("TG-1", "0");
  await hand.entry("Temperature", { Thermometer: "TH-2", "Of what": "metal", Temperature: "34 °C" });
  await hand.go("");
  await hand.give("open", "Open");
  await hand.as(crew.hand);
  for (const part of start.parts) {
    await step_on(part.tag, opened.includes(part.tag) ? "Opened" : "Not opened this time", part.rows.flat().map((closure) => closure.tag));
  }

  // Inside the drum, and out again; the attendant reads the air and keeps the tally.
  await hand.as(crew.attendant);
  await hand.air_and_attendant("SP-SD");
  await hand.as(crew.lead_hand);
  await hand.go("/inside/SP-SD");
  await hand.give("enter", "Enter", "SP-SD");
  await hand.as(crew.attendant);
  await hand.go("/inside/SP-SD");
  await in_and_out(() => shot("inside"));
  await hand.as(crew.hand);
  await hand.go("/inside");
  await hand.entry("Looked into FH", { "With what": "scope" });
  await hand.sent();
  await hand.entry("Seal FH", { "Number of the seal": "S-FH" });

  // Plates, the last way in under its clearance.
  for (const part of opened) {
    for (const step of ["Cleaned", "Looked at", "Plate matches its hole", "Gasket put on"]) await step_on(part, step, closures(part));
  }
  await step_on("FH", "Nipped up", closures("FH"));
  await step_on("SD", "Nipped up", drums.slice(1));
  await shot("part");
  await hand.as(crew.lead_hand);
  await hand.count("SP-SD");
  await hand.give("close_last_way_in", "Close the last way in", "SP-SD");
  await hand.as(crew.hand);
  await step_on("SD", "Nipped up", drums.slice(0, 1));
  for (const drum of drums) {
    await hand.go(`/closure/${drum}`);
    for (const clock of ["12", "3", "6", "9"]) await page.getByLabel(`${clock} o'clock`).fill(clock === "3" ? "1.2" : "0.9");
    await page.getByText("Good as it stands").waitFor();
    await page.locator(".block").getByRole("button", { name: "Record" }).click();
    await page.getByText("Recorded.").waitFor();
  }
  await shot("gaps", page.getByRole("heading", { name: "Gap round the plate" }));
  await hand.as(crew.attendant);
  await hand.go("/inside/SP-SD");
  await hand.tap("Relieved");

  // Filled.
  await hand.as(crew.lead_hand);
  await hand.go("/test");
  await hand.tap("Order of filling agreed");
  for (const drain of drains) await hand.tap(`${drain} Shut`);
  for (const vent of vents) await hand.tap(`${vent} I stand here`);
  await hand.give("fill", "Fill");
  await hand.tap("Filling started");
  for (const vent of vents) for (const what of ["Runs solid", "Shut"]) await hand.tap(`${vent} ${what}`);
  await hand.tap("Full");

  // Ready at the pump; the sheet is the engineer's.
  await hand.as(crew.engineer);
  await hand.go("/test-sheet");
  await hand.field("Rule").selectOption("us-marine-ordinary");
  await hand.field("Work done").selectOption({ label: "gaskets only" });
  await hand.field("a longitudinal joint is lapped").selectOption({ label: "no" });
  const said = { Authority: "the marine inspector of the demo plant", "Ceiling set by the authority": "48 bar", Hold: "30 min" };
  for (const [label, value] of Object.entries(said)) await hand.field(label).fill(value);
  await hand.tap("Compute");
  // This rule names no pressure for the examination: what the inspector agreed to is said.
  await hand.field("Pressure for the examination (Agreed with the inspector)").fill("36 bar");
  await page.getByRole("button", { name: "Issue this sheet" }).click();
  await page.getByRole("heading", { name: "As issued" }).waitFor();
  await shot("sheet");
  await hand.as(crew.lead_hand);
  await hand.go("/temporaries");
  for (const { tag } of start.temporaries) await hand.tap(`Fitted: ${tag}`);
  for (const tag of of_kind("gauge_glass", "low_water_cut_out")) await hand.tap(`Shut off: ${tag}`);
  for (const space of ["SP-FU", "SP-GS"]) await hand.count(space);
  await hand.go("/test");
  await hand.tap("Fitted: TG-2");
  await hand.entry("Relief valve of the pump tried", { "Lifted at": "47.5 bar" });
  await hand.tap("Hangers pinned");
  await hand.entry("Temperature", { Thermometer: "TH-1", "Of what": "water", Temperature: "25.5 °C" });
  await hand.entry("Temperature", { Thermometer: "TH-2", "Of what": "metal", Temperature: "25 °C" });
  await hand.entry("Somebody takes a post", { Post: "the pump", Who: crew.pump_hand.name });
  await hand.entry("Somebody takes a post", { Post: "the let-down valve", Who: crew.hand.name });
  await hand.entry("Stop word repeated by all", { "Stop word repeated by all": "avast" });
  await hand.tap("People clear");
  await hand.give("raise_pressure", "Raise pressure", "", "45 bar", crew.engineer);

  // Raised and held; the readings by the pump hand.
  await hand.as(crew.pump_hand);
  await hand.go("/test");
  await hand.tap("Test valve opened");
  await hand.entry("Pump started", { "Up to which pressure": "45 bar" });
  for (const stage of [10, 20, 30, 40, 45]) await read_both(`${stage} bar`, `${stage + 0.8} bar`);
  await hand.tap("Pump stopped");
  for (const what of ["Test valve shut", "Pump side bled and hung open"]) await hand.tap(what);
  await hand.entry("Hold begun", { "Gauge reading": "45 bar" });
  await shot("hold");
  await read_both("44.8 bar", "45.6 bar");
  await hand.entry("Hold ended", { "Gauge reading": "44.8 bar", "Length and fall as the rule asks": true });
  await read_both("36 bar", "36.8 bar");
  await hand.as(crew.engineer);
  await hand.go("/test");
  await page.getByRole("button", { name: "Accept this result" }).click();

  // Walked: the fire side by name, then every place.
  for (const space of ["SP-FU", "SP-GS"]) {
    await hand.as(crew.attendant);
    await hand.air_and_attendant(space);
    await hand.as(crew.lead_hand);
    await hand.go(`/inside/${space}`);
    await hand.give("walk_fire_side", "Fire side in for the walkdown", space);
    await hand.as(crew.attendant);
    await hand.go(`/inside/${space}`);
    await in_and_out();
  }
  await hand.as(crew.hand);
  await hand.go("/walkdown");
  await shot("walkdown");
  const more = page.getByRole("button", { name: /^Show more/ });
  while ((await view()).places.some((place) => !place.dry)) {
    const dry = page.getByRole("button", { name: / Dry$/ });
    for (let left = Math.min(await dry.count(), 40); left > 0; --left) await dry.nth(left - 1).click();
    await hand.sent();
    await page.waitForTimeout(400);
    if ((await dry.count()) === 0 && (await more.count()) > 0) await more.click();
  }
  await hand.as(crew.inspector);
  await hand.go("/taking-over");
  await hand.entry("A signature", { "What is signed": "walkdown at examination pressure" });
  await hand.as(crew.lead_hand);

  // Down, hardened up, everything off, given and received.
  await hand.go("/leaks");
  await hand.give("let_down", "Let down");
  await hand.go("/test");
  await hand.tap("Pressure let down");
  await hand.sent();
  await read_both("0", "0");
  check((await view()).stage === "passed", `the boiler has not passed: ${(await view()).stage_text}`);
  for (const tag of opened.flatMap(closures)) {
    await hand.go(`/closure/${tag}`);
    await hand.give("tighten", "Tighten", tag);
    await hand.tap("Hardened up");
  }
  await hand.go("/temporaries");
  for (const { tag } of start.temporaries) {
    await hand.tap(`Taken off: ${tag}`);
    await hand.tap(`Seen off: ${tag}`);
  }
  for (const tag of of_kind("gauge_glass", "low_water_cut_out")) {
    await hand.tap(`Put back: ${tag}`);
    await hand.tap(`Proved: ${tag}`);
  }
  await hand.go("/taking-over");
  for (const what of ["Hangers freed", "Stands as for steaming"]) await hand.tap(what);
  for (const space of ["SP-FU", "SP-GS"]) await hand.count(space);
  await hand.go("/taking-over");
  await hand.give("take_over", "Take over");
  await hand.tap("I give the boiler over");
  await hand.as(crew.watch_engineer);
  await hand.go("/taking-over");
  await hand.tap("I take the boiler over");
  await hand.sent();
  await page.getByText(`Received by: ${crew.watch_engineer.name}`).waitFor();
  await shot("taken-over");
  const end = await view();
  check(end.stage === "taken_over", `it ends as ${end.stage_text}`);
  check(end.alarms.filter((alarm) => !alarm.taken).length === 0, `alarms: ${end.alarms.map((alarm) => alarm.text).join("; ")}`);
}
