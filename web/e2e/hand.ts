// Hands on a page: taps, entries, clearances, as a crew does them.
import type { Locator, Page } from "playwright-core";
import { ask, crew, sign_in, type Member } from "./crew.ts";
import { check, until } from "./spec.ts";

export interface Permit {
  may_be_given: boolean;
  outstanding: { check: string; reason: string }[];
}

const exactly = (text: string): RegExp => new RegExp(`^\\s*${text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}\\s*$`);

export class Hand {
  readonly page: Page;
  readonly address: string;
  readonly closing: string;

  constructor(page: Page, address: string, closing: string) {
    this.page = page;
    this.address = address;
    this.closing = closing;
  }

  /** Goes where a link to this page of the closing goes. */
  async go(path: string): Promise<void> {
    await this.open(`/closing/${this.closing}${path}`);
  }

  /** Goes to a page as a link does: the pages themselves are loaded once. */
  async open(path: string): Promise<void> {
    if (!this.page.url().startsWith(this.address)) await this.page.goto(this.address + path);
    await this.page.evaluate((where) => {
      const link = [...document.querySelectorAll("a")].find((one) => one.pathname === where);
      if (link !== undefined) return link.click();
      history.pushState(null, "", where);
      dispatchEvent(new PopStateEvent("popstate"));
    }, path);
    await this.page.getByRole("heading", { level: 1 }).waitFor();
    await this.page.getByText("Waiting for the answer").first().waitFor({ state: "hidden" });
  }

  /** Hands the tablet to somebody else, who signs in. */
  async as(member: Member): Promise<void> {
    await this.sent();
    await this.open("/settings");
    await this.page.getByRole("button", { name: /^Sign out:/ }).click();
    await this.page.waitForURL("**/sign-in");
    await sign_in(this.page, member.name, member.secret);
  }

  async tap(name: string, within: Page | Locator = this.page): Promise<void> {
    await within.getByRole("button", { name, exact: true }).first().click();
    await this.page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null);
  }

  /** The field under a label; of a choice the label's own words, not those of what may be chosen. */
  field(label: string, within: Page | Locator = this.page): Locator {
    const named = this.page.locator("span", { hasText: exactly(label) });
    return within.locator("label").filter({ has: named }).locator("input, select, textarea").first();
  }

  /** All entries made here are taken in. */
  async sent(): Promise<void> {
    await until(
      "all entries are sent",
      () =>
        this.page.evaluate(async () => {
          const open = indexedDB.open("steamworthy");
          await new Promise((resolve) => (open.onsuccess = resolve));
          const both = open.result.transaction(["entries", "intents"]);
          const counts = [both.objectStore("entries").count(), both.objectStore("intents").count()];
          await new Promise((resolve) => (both.oncomplete = resolve));
          open.result.close();
          return counts.every((count) => count.result === 0);
        }),
      30_000,
    );
  }

  /** Fills in a folded entry and records it. `true` ticks a box. */
  async entry(title: string, values: Record<string, string | true>): Promise<void> {
    const summary = this.page.locator("summary").filter({ hasText: exactly(title) });
    const box = this.page.locator("details").filter({ has: summary }).last();
    // What is tapped may move away under the hand when somebody else's entry comes in.
    await until(`${title} is open`, async () => {
      if (await box.evaluate((details) => (details as HTMLDetailsElement).open)) return true;
      await summary.first().click();
      return false;
    });
    for (const [label, value] of Object.entries(values)) {
      const field = this.field(label, box);
      if (value === true) await field.check();
      else if ((await field.evaluate((element) => element.tagName)) === "SELECT") {
        await field.locator("option", { hasText: exactly(value) }).first().waitFor({ state: "attached" });
        await field.selectOption({ label: value });
      } else await field.fill(value);
    }
    await box.getByRole("button", { name: "Record", exact: true }).click();
    // What was recorded folds its form away, or takes it away: a seal is put on once.
    await until(`${title} is recorded`, () =>
      this.page.locator("details").filter({ has: summary }).evaluateAll((all) => !(all.at(-1) as HTMLDetailsElement | undefined)?.open),
    );
    await this.page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null);
  }

  async outstanding(step: string, subject = "", up_to_bar_gauge = ""): Promise<Permit> {
    const query = (subject === "" ? "" : `&subject=${encodeURIComponent(subject)}`) + (up_to_bar_gauge === "" ? "" : `&up_to_bar_gauge=${up_to_bar_gauge}`);
    return (await ask<Permit>(this.page, "GET", `/api/closings/${this.closing}/outstanding?step=${step}${query}`)).body;
  }

  /** The lead hand gives a clearance on the page that is open, with a second person. */
  async give(step: string, name: string, subject = "", up_to = "", second: Member = crew.hand): Promise<void> {
    await this.sent();
    const permit = await this.outstanding(step, subject, up_to.replace(" bar", ""));
    check(
      permit.outstanding.length === 0,
      `${step} ${subject}: ${permit.outstanding.slice(0, 5).map((item) => `${item.check}: ${item.reason}`).join("; ")}`,
    );
    await this.page.getByRole("button", { name: `Clearance: ${name}${subject === "" ? "" : ` ${subject}`}` }).first().click();
    const dialog = this.page.getByRole("dialog");
    if (up_to !== "") await this.field("Up to which pressure", dialog).fill(up_to);
    await dialog.getByLabel("Your PIN, badge or passphrase").fill(crew.lead_hand.secret);
    await this.field("Second person", dialog).selectOption(second.who);
    await dialog.getByLabel("The second person's PIN, badge or passphrase").fill(second.secret);
    await dialog.getByRole("button", { name: "Give the clearance" }).click();
    await dialog.waitFor({ state: "detached" });
  }

  async read(gauge: string, pressure: string): Promise<void> {
    await this.tap(gauge);
    await this.page.locator("input.typed").fill(pressure);
    await this.page.locator("form").filter({ has: this.page.locator("input.typed") }).getByRole("button", { name: "Record" }).click();
    await until("the field is empty again", async () => (await this.page.locator("input.typed").inputValue()) === "");
  }

  async count(space: string): Promise<void> {
    await this.go(`/inside/${space}`);
    await this.entry("Record a count", {
      "People found inside": "0",
      "Things found inside": "0",
      "Looked in with a lamp": true,
      "Called, and nobody answered": true,
      "Second person": crew.attendant.name,
    });
  }

  async air_and_attendant(space: string): Promise<void> {
    await this.go(`/inside/${space}`);
    await this.entry("Record an air reading", {
      "Oxygen near the top": "20.9",
      "Oxygen in the middle": "20.9",
      "Oxygen near the bottom": "20.9",
      "Flammable gas, of the lower limit": "0",
    });
    await this.entry("Post an attendant", { Attendant: crew.attendant.name });
  }
}
