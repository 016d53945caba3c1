// The pages in Debian's Chromium against the real program. `tools/web.sh e2e ["enrols|WORDS OF A NAME"]`.
//
// Screenshots come to build/web/screens, to be looked at. SIZE=phone or SIZE=tablet carries the whole
// closing through at that size alone.
import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import type { Page } from "playwright-core";
import { axe_violations, overflows, small_targets } from "./checks.ts";
import { ask, crew, first, make_known, with_tablet, type Tablet } from "./crew.ts";
import { log_taken_in, photo_kept } from "./files.ts";
import { Hand } from "./hand.ts";
import type { SizeName } from "./browser.ts";
import { start_program } from "./program.ts";
import { small_png } from "./small_png.ts";
import { check, check_none, run_specs, spec, until } from "./spec.ts";
import { every_step } from "./steps.ts";
import { whole_closing } from "./whole_closing.ts";

const screens = fileURLToPath(new URL("../../build/web/screens/", import.meta.url));
mkdirSync(screens, { recursive: true });

interface View {
  intake_no: number;
  stage: string;
  parts: { tag: string; rows: { tag: string; step_done: string[] }[][] }[];
  spaces: { tag: string; people: string[] }[];
  isolations: { tag: string }[];
  alarms: { name: string; taken: boolean }[];
}
interface Facts {
  facts: { kind: string; person: string; body: Record<string, unknown> }[];
}

/** To be looked at; of a tablet also for the tutorial, where PICTURES names a folder for them. */
async function picture(page: Page, size: SizeName, name: string): Promise<void> {
  const png = await page.screenshot({ path: `${screens}${size}-closing-${name}.png` });
  const folder = process.env["PICTURES"];
  if (folder !== undefined && size === "tablet") writeFileSync(`${folder}/first-closing-${name}.png`, await small_png(page, png));
}

/** One tablet or phone, a plant of its own with a closing just begun, and the crew on it. */
async function on_its_own_plant(size: SizeName, use: (lead: Tablet, hand: Hand) => Promise<void>): Promise<void> {
  const other = await start_program();
  try {
    await with_tablet(size, other, other.enrol_link, first.name, first.secret, async (lead) => {
      await make_known(lead.page);
      const begun = await ask<{ closing: string }>(lead.page, "POST", "/api/closings", { boiler: "B1" });
      check(begun.status === 201, `begun with ${begun.status}: ${JSON.stringify(begun.body)}`);
      await use(lead, new Hand(lead.page, other.address, begun.body.closing));
      check_none(lead.heard, "the page complains");
    });
  } catch (error) {
    throw new Error(`at ${size} size: ${error instanceof Error ? error.message : String(error)}`, { cause: error });
  } finally {
    await other.stop();
  }
}

const carried = (size: SizeName): Promise<void> =>
  on_its_own_plant(size, (lead, hand) => whole_closing(lead, hand, (name) => picture(lead.page, size, name)));

const asked_size = process.env["SIZE"];
const carried_at = (["tablet", "phone"] as const).filter((size) => asked_size === undefined || asked_size === size);
spec(`a whole closing on the page, from shut down to taken over, by seven roles, at ${carried_at.join(" and ")} size`, async () => {
  // Side by side, each with a program of its own: most of the time is waiting.
  const ended = await Promise.allSettled(carried_at.map(carried));
  check_none(ended.flatMap((one) => (one.status === "rejected" ? [(one.reason as Error).message] : [])), "not carried through");
});

spec("each step of S1 to S9 is refused on its page with reason and remedy, and reported all the same it alarms", () =>
  on_its_own_plant("phone", (_, hand) => every_step(hand)));

const program = await start_program();
let closing = "";

const view = async (page: Page): Promise<View> => (await ask<View>(page, "GET", `/api/closings/${closing}`)).body;
const facts = async (page: Page, kind: string): Promise<Facts["facts"]> =>
  (await ask<Facts>(page, "GET", `/api/closings/${closing}/facts?limit=200`)).body.facts.filter((fact) => fact.kind === kind);
const at = (path: string): string => `${program.address}/closing/${closing}${path}`;

async function new_link(page: Page): Promise<string> {
  return (await ask<{ link: string }>(page, "POST", "/api/enrolment-codes", {})).body.link;
}

async function faults_of(page: Page): Promise<string[]> {
  return [...(await axe_violations(page)), ...(await small_targets(page)), ...(await overflows(page))];
}

await with_tablet("tablet", program, program.enrol_link, first.name, first.secret, async (lead) => {
  spec("a new plant's first tablet enrols itself, its key stays in it, and a closing is begun", async () => {
    await make_known(lead.page);
    const keys = await lead.page.evaluate(async () => {
      const open = indexedDB.open("steamworthy");
      await new Promise((resolve) => (open.onsuccess = resolve));
      const get = open.result.transaction("keys").objectStore("keys").get("own");
      await new Promise((resolve) => (get.onsuccess = resolve));
      return (get.result as { private_key: CryptoKey }).private_key.extractable;
    });
    check(!keys, "the private key can be taken out of the browser");
    await lead.page.reload();
    await lead.page.getByRole("button", { name: /Begin a closing/ }).first().click();
    await lead.page.getByRole("button", { name: "Begin a closing", exact: true }).click();
    await lead.page.waitForURL("**/closing/*");
    closing = new URL(lead.page.url()).pathname.split("/")[2] ?? "";
    await lead.page.getByRole("heading", { name: /Still outstanding/ }).waitFor();
  });

  spec("JavaScript on first load is at most 150 kB compressed, WebAssembly apart", async () => {
    await lead.page.goto(program.address);
    await lead.page.getByRole("heading", { level: 1 }).waitFor();
    const scripts = await lead.page.evaluate(async () => {
      const names = performance.getEntriesByType("resource").map((one) => one.name);
      return Promise.all(names.filter((name) => name.endsWith(".js")).map(async (name) => (await fetch(name)).text()));
    });
    check(scripts.length > 0, "no script was loaded");
    const compressed = scripts.reduce((sum, text) => sum + gzipSync(text, { level: 9 }).length, 0);
    check(compressed <= 150_000, `${compressed} bytes`);
  });

  spec("a double tap is one entry", async () => {
    const line = (await view(lead.page)).isolations[0]?.tag ?? "";
    await lead.page.goto(at("/isolations"));
    await lead.page.getByRole("button", { name: `${line}: Tried, holds` }).dblclick();
    await until("the entry is stored", async () => (await facts(lead.page, "isolation.tried")).length > 0);
    await lead.page.waitForTimeout(700);
    check((await facts(lead.page, "isolation.tried")).length === 1, "it was stored more than once");
  });

  spec("an entry made while the program cannot be reached survives a reload and is stored once", async () => {
    const line = (await view(lead.page)).isolations[1]?.tag ?? "";
    await lead.page.route("**/facts", (route) => (route.request().method() === "POST" ? route.abort() : route.continue()));
    await lead.page.getByRole("button", { name: `${line}: Was moved` }).click();
    await lead.page.getByText("1 entry is kept here").waitFor();
    await lead.page.reload();
    await lead.page.getByText("1 entry is kept here").waitFor();
    check((await facts(lead.page, "isolation.changed")).length === 0, "it cannot have been stored yet");
    await lead.page.unroute("**/facts");
    await lead.page.reload();
    await until("it is sent", async () => (await facts(lead.page, "isolation.changed")).length === 1);
    await lead.page.getByText("1 entry is kept here").waitFor({ state: "detached" });
  });

  spec("a clearance is refused with reasons, and the step reported all the same is stored and alarms", async () => {
    await lead.page.goto(at(""));
    await lead.page.getByText("Other clearances").click();
    await lead.page.getByRole("button", { name: "Clearance: Let down" }).waitFor();
    await lead.page.goto(at("/test"));
    await lead.page.getByRole("button", { name: "Clearance: Fill" }).click();
    const dialog = lead.page.getByRole("dialog");
    await dialog.getByRole("heading", { name: "Still outstanding" }).waitFor();
    check((await dialog.getByRole("button", { name: "Give the clearance" }).count()) === 0, "the clearance could be given");
    await dialog.getByRole("button", { name: "Cancel" }).click();
    await lead.page.getByRole("button", { name: "Filling started" }).click();
    await lead.page.getByRole("alert").filter({ hasText: /without/i }).waitFor();
    check((await facts(lead.page, "filling.started")).length === 1, "the entry was not stored");
  });

  spec("an alarm shows on another open page within a second, and goes when it is taken", async () => {
    const link = await new_link(lead.page);
    await with_tablet("phone", program, link, crew.hand.name, crew.hand.secret, async (hand) => {
      await hand.page.goto(at("/inside"));
      await hand.page.getByRole("alert").first().waitFor();
      while ((await lead.page.getByRole("button", { name: "I take it" }).count()) > 0) {
        const before = (await view(lead.page)).alarms.filter((alarm) => !alarm.taken).length;
        await lead.page.getByRole("button", { name: "I take it" }).first().click();
        await until("the alarm is taken", async () => (await view(lead.page)).alarms.filter((alarm) => !alarm.taken).length < before);
        await lead.page.waitForTimeout(300);
      }
      await hand.page.getByRole("alert").first().waitFor({ state: "detached" });
      // The hand goes in without a clearance; the lead hand's page hears of it.
      const space = (await view(lead.page)).spaces[0]?.tag ?? "";
      await hand.page.goto(at(`/inside/${encodeURIComponent(space)}`));
      await hand.page.getByLabel("Who").first().selectOption(crew.hand.who);
      await lead.page.goto(at(""));
      await lead.page.getByRole("heading", { level: 1 }).waitFor();
      await hand.page.getByRole("button", { name: "In", exact: true }).click();
      const waited = await until("the alarm shows", async () => (await lead.page.getByRole("alert").count()) > 0, 5000);
      check(waited <= 1000, `the alarm took ${waited.toFixed(0)} ms`);
      check((await view(lead.page)).spaces[0]?.people[0] === crew.hand.who, "nobody is inside");
      await hand.page.getByRole("button", { name: `Out: ${crew.hand.name}` }).click();
      await hand.page.getByText("Nobody is inside.").waitFor();
      check_none(hand.heard, "the hand's page complains");
    });
  });

  spec("what somebody types in their own units is kept as typed beside the number", async () => {
    await lead.page.goto(at("/test"));
    await lead.page.getByRole("button", { name: /^Fitted: / }).first().click();
    await lead.page.getByLabel(/^Gauge reading TG/).fill("650 psi");
    await lead.page.getByText("44.82 bar gauge").waitFor();
    await lead.page.getByRole("button", { name: "Record", exact: true }).first().click();
    await until("the reading is stored", async () => (await facts(lead.page, "reading.taken")).length === 1);
    const body = (await facts(lead.page, "reading.taken"))[0]?.body ?? {};
    check(body["pressure_as_entered"] === "650 psi", `kept as ${String(body["pressure_as_entered"])}`);
    check(Math.abs(Number(body["pressure_bar_gauge"]) - 44.81592) < 1e-5, `read as ${String(body["pressure_bar_gauge"])}`);
  });

  spec("the closures of a part are opened by a tap each, and the back button goes back", async () => {
    const part = (await view(lead.page)).parts.find((one) => one.rows.flat().length > 4)!;
    await lead.page.goto(at(""));
    await lead.page.getByRole("link", { name: new RegExp(`^${part.tag} `) }).first().click();
    await lead.page.getByRole("button", { name: "Opened", exact: true }).click();
    const wanted = part.rows.flat().slice(0, 3);
    for (const closure of wanted) await lead.page.getByRole("button", { name: new RegExp(`^${closure.tag},`) }).click();
    await until("all are opened", async () => {
      const now = (await view(lead.page)).parts.find((one) => one.tag === part.tag)!.rows.flat();
      return wanted.every((closure) => now.find((one) => one.tag === closure.tag)?.step_done.includes("opened"));
    });
    await lead.page.goBack();
    await lead.page.getByRole("heading", { name: /^Next/ }).waitFor();
  });

  spec("a leak found on the walkdown is planned for, with what the crew says of hours", async () => {
    const hand = new Hand(lead.page, program.address, closing);
    await hand.go("/walkdown");
    await lead.page.getByRole("button", { name: "Leaking MS-1.gland" }).click();
    const entry = lead.page.getByRole("region", { name: "Leak 1: MS-1.gland" });
    await hand.field("What leaks", entry).selectOption({ label: "gland" });
    await hand.field("Which way", entry).selectOption({ label: "outward" });
    await entry.getByRole("button", { name: "Record" }).click();
    await hand.sent();
    await hand.go("/leaks");
    const plan = lead.page.locator("section", { has: lead.page.getByRole("heading", { name: "What to do, in this order" }) });
    // The mildest cure comes first (docs/methods/repair.md).
    check((await hand.field("What is done", plan).inputValue()) === "take_up_gland", "the gland is not taken up first");
    await hand.field("What is done", plan).selectOption("repack");
    await plan.getByText("Leak 1: MS-1.gland · repack the gland").waitFor();
    await plan.getByText("Hours and rates").click();
    await hand.field("All repairs", plan).fill("soon");
    await plan.getByRole("button", { name: "Compute" }).click();
    await plan.getByRole("alert").waitFor();
    await hand.field("All repairs", plan).fill("2 h");
    await plan.getByRole("button", { name: "Compute" }).click();
    await plan.getByRole("alert").waitFor({ state: "detached" });
    // Typing what is wrong is answered, not complained of in the console.
    check_none(lead.heard.splice(0), "the page complains");
  });

  spec("a logger's file is shown as it is understood, overruled, taken in and drawn", async () => {
    await log_taken_in(new Hand(lead.page, program.address, closing));
    check_none(lead.heard.splice(0), "the page complains");
  });

  spec("a photo is kept without what the camera wrote into it", async () => {
    await photo_kept(new Hand(lead.page, program.address, closing));
    check_none(lead.heard.splice(0), "the page complains");
  });

  for (const size of ["tablet", "phone"] as const) {
    const look = size === "tablet" ? "day" : "night";
    spec(`every page at ${size} size by ${look}: axe, targets of 56 px, nothing too wide, no complaint`, async () => {
      await lead.page.setViewportSize(size === "tablet" ? { width: 800, height: 1280 } : { width: 390, height: 844 });
      await lead.page.emulateMedia({ colorScheme: look === "night" ? "dark" : "light" });
      const now = await view(lead.page);
      const part = now.parts.reduce((a, b) => (b.rows.flat().length > a.rows.flat().length ? b : a));
      const pages = [
        ["plant", "/"], ["people", "/people"], ["settings", "/settings"], ["rules", "/rules"],
        ["closing", ""], ["part", `/part/${part.tag}`], ["closure", `/closure/${part.rows.flat()[0]!.tag}`],
        ["inside", "/inside"], ["space", `/inside/${now.spaces[0]!.tag}`], ["isolations", "/isolations"],
        ["internals", "/internals"], ["temporaries", "/temporaries"], ["test-sheet", "/test-sheet"], ["test", "/test"],
        ["walkdown", "/walkdown"], ["leaks", "/leaks"], ["taking-over", "/taking-over"], ["handover", "/handover"],
      ] as const;
      const faults: string[] = [];
      for (const [name, path] of pages) {
        const whole = ["plant", "people", "settings", "rules"].includes(name);
        await lead.page.goto(whole ? program.address + path : at(path));
        await lead.page.getByRole("heading", { level: 1 }).waitFor();
        await lead.page.waitForTimeout(600);
        await lead.page.screenshot({ path: `${screens}${size}-${name}.png` });
        faults.push(...[...(await faults_of(lead.page)), ...lead.heard.splice(0)].map((fault) => `${name}: ${fault}`));
      }
      check_none(faults, "pages are not as they must be");
    });
  }

  await run_specs(process.argv[2] ?? "");
});
await program.stop();
