// Debian's Chromium with a fresh profile, at the sizes of a tablet and a phone.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium, type BrowserContext } from "playwright-core";

export const sizes = { tablet: { width: 800, height: 1280 }, phone: { width: 390, height: 844 } } as const;
export type SizeName = keyof typeof sizes;

const flags = [
  "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
  "--disable-background-networking", "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage",
];

export async function with_browser<T>(size: SizeName, use: (context: BrowserContext) => Promise<T>): Promise<T> {
  const profile = mkdtempSync(join(tmpdir(), "steamworthy-e2e-"));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: process.env["CHROMIUM"] ?? "/usr/bin/chromium",
    headless: true,
    args: flags,
    viewport: sizes[size],
    hasTouch: true,
    ignoreHTTPSErrors: true,
  });
  context.setDefaultTimeout(15_000);
  try {
    return await use(context);
  } finally {
    await context.close();
    rmSync(profile, { recursive: true, force: true });
  }
}
