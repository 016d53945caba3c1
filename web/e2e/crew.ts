// The crew as the tests know it: how a tablet is enrolled, how somebody signs in, where pages are.
import type { BrowserContext, Page } from "playwright-core";
import { with_browser, type SizeName } from "./browser.ts";
import { complaints } from "./checks.ts";
import type { Program } from "./program.ts";

export interface Member {
  who: string;
  name: string;
  secret: string;
}

/** Seven people, one for each role; holding gags is a duty. The lead hand enrols the first tablet. */
export const crew = {
  lead_hand: { who: "r.lind", name: "R. Lind", secret: "482913" },
  hand: { who: "j.moe", name: "J. Moe", secret: "771204" },
  pump_hand: { who: "p.dahl", name: "P. Dahl", secret: "390185" },
  attendant: { who: "a.tveit", name: "A. Tveit", secret: "204866" },
  inspector: { who: "i.sande", name: "I. Sande", secret: "660317" },
  engineer: { who: "e.falk", name: "E. Falk", secret: "915372" },
  watch_engineer: { who: "w.berg", name: "W. Berg", secret: "158829" },
} as const satisfies Record<string, Member>;
export const first: Member = crew.lead_hand;

/** Makes the others known, each in their own role. */
export async function make_known(page: Page): Promise<void> {
  for (const [role, member] of Object.entries(crew)) {
    if (member.who === first.who) continue;
    const made = await ask(page, "POST", "/api/people", { ...member, roles: [role] });
    if (made.status !== 201) throw new Error(`${member.who}: ${made.status} ${JSON.stringify(made.body)}`);
  }
}

export interface Tablet {
  context: BrowserContext;
  page: Page;
  heard: string[];
}

/** Enrols by the link as a new device does; of a new plant its first person too. */
export async function enrol(page: Page, link: string, name: string, is_first: boolean): Promise<void> {
  await page.goto(link);
  await page.getByLabel("What people call this tablet").fill(name);
  if (is_first) {
    await page.getByLabel("Short name").fill(first.who);
    await page.getByLabel("Name", { exact: true }).fill(first.name);
    await page.getByLabel("PIN of 6").fill(first.secret);
  }
  await page.getByRole("button", { name: "Make the key and enrol" }).click();
  await page.waitForURL("**/sign-in");
}

export async function sign_in(page: Page, name: string, secret: string): Promise<void> {
  await page.locator("label.tick").filter({ hasText: name }).click();
  await page.getByLabel("PIN, badge or passphrase").fill(secret);
  await page.getByRole("button", { name: "Sign in" }).click();
  await page.waitForURL((url) => url.pathname === "/");
}

/** Asks the API from the page itself, with its cookies. */
export async function ask<T>(page: Page, method: string, path: string, body?: unknown): Promise<{ status: number; body: T }> {
  return page.evaluate(
    async ([how, where, what]) => {
      const response = await fetch(where!, {
        method: how!,
        headers: what === undefined ? {} : { "Content-Type": "application/json" },
        body: what,
      });
      const text = await response.text();
      return { status: response.status, body: (text === "" ? null : JSON.parse(text)) as never };
    },
    [method, path, body === undefined ? undefined : JSON.stringify(body)] as const,
  );
}

/** A tablet of its own profile, enrolled and signed in as the first person or, by a code, another. */
export async function with_tablet<T>(size: SizeName, program: Program, link: string, name: string, secret: string, use: (tablet: Tablet) => Promise<T>): Promise<T> {
  return with_browser(size, async (context) => {
    const page = context.pages()[0] ?? (await context.newPage());
    const heard = complaints(page);
    await enrol(page, link, `${size} of ${name}`, link === program.enrol_link);
    await sign_in(page, name, secret);
    return use({ context, page, heard });
  });
}
