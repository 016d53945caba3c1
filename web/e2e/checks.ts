// What every page must keep: no violation that axe finds, targets large enough for a glove, nothing
// wider than the screen, no error in the console.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const axe_source = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
export const least_target_px = 56;

/** Listens from now on; the returned list fills with what the page complains of. */
export function complaints(page: Page): string[] {
  const heard: string[] = [];
  page.on("pageerror", (error) => heard.push(`error: ${error.message}`));
  page.on("console", (message) => {
    // A refused call is part of some tests; a broken rule of the Content-Security-Policy never is.
    if (message.type() === "error" && !message.text().startsWith("Failed to load resource")) heard.push(message.text());
  });
  return heard;
}

export async function axe_violations(page: Page): Promise<string[]> {
  await page.evaluate(axe_source);
  return page.evaluate(async () => {
    interface Axe {
      run(options: unknown): Promise<{ violations: { id: string; nodes: { target: string[]; failureSummary?: string }[] }[] }>;
    }
    const { violations } = await (window as unknown as { axe: Axe }).axe.run({
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    });
    return violations.flatMap((one) => one.nodes.slice(0, 3).map((node) => `${one.id}: ${node.target.join(" ")} ${node.failureSummary ?? ""}`));
  });
}

/** Every button, link, field that shows and is smaller than a glove needs; shapes in drawings aside. */
export async function small_targets(page: Page): Promise<string[]> {
  return page.evaluate((least) => {
    const found: string[] = [];
    for (const element of document.querySelectorAll<HTMLElement>("a[href], button, input, select, textarea, summary, label.tick")) {
      if (element.closest("svg, .unseen, .skip") !== null || element.matches(".unseen, .skip")) continue;
      // A tick's own label is its target.
      if (element.matches("input") && element.closest("label.tick") !== null) continue;
      if (!element.checkVisibility()) continue;
      const box = element.getBoundingClientRect();
      if (box.width === 0 || box.height === 0) continue;
      if (box.width < least - 0.5 || box.height < least - 0.5) {
        found.push(`${element.tagName} "${element.textContent?.trim().slice(0, 30)}" ${box.width.toFixed(0)} x ${box.height.toFixed(0)}`);
      }
    }
    return found;
  }, least_target_px);
}

export async function overflows(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
    return wide > 0 ? [`the page is ${wide} px wider than the screen`] : [];
  });
}
