// What is brought to a page as a file: a logger's readings, a photo.
import { fileURLToPath } from "node:url";
import { ask } from "./crew.ts";
import type { Hand } from "./hand.ts";
import { check, until } from "./spec.ts";

const log = fileURLToPath(new URL("../../examples/holds/demo-hold.csv", import.meta.url));

interface Facts {
  facts: { kind: string; body: Record<string, unknown> }[];
}

async function bodies(hand: Hand, kind: string): Promise<Record<string, unknown>[]> {
  const { body } = await ask<Facts>(hand.page, "GET", `/api/closings/${hand.closing}/facts?limit=200`);
  return body.facts.filter((fact) => fact.kind === kind).map((fact) => fact.body);
}

/** Shown as it is understood, overruled wrongly and put right, taken in, drawn. */
export async function log_taken_in(hand: Hand): Promise<void> {
  const { page } = hand;
  await hand.go("/test");
  await page.getByText("Import a logger's file").click();
  await page.locator('input[type="file"][accept*="csv"]').setInputFiles(log);
  await page.getByText(/^\d+ readings$/).waitFor();
  check((await bodies(hand, "trace.added")).length === 0, "it was taken in by being looked at");
  await hand.field("Columns, if understood wrongly").fill("nonsense");
  await hand.tap("Look again");
  await page.locator("details[open]").getByRole("alert").waitFor();
  await hand.field("Columns, if understood wrongly").fill("");
  await hand.tap("Look again");
  await page.locator("details[open]").getByRole("alert").waitFor({ state: "detached" });
  await hand.field("Which gauge").selectOption("TG-1");
  await hand.tap("Take it in");
  await until("the log is taken in", async () => (await bodies(hand, "trace.added")).length === 1);
  await page.locator("figure canvas").first().waitFor();
  check((await hand.field("Judged by").inputValue()) === "", "the gauge is not judged by the log");
  await hand.field("Judged by").selectOption({ label: "the readings entered" });
}

/** A JPEG of the page with a note of where it was taken in its head, as a camera writes it (Exif 2.3, APP1). */
async function photo_with_place(hand: Hand, place: string): Promise<Buffer> {
  const plain = await hand.page.screenshot({ type: "jpeg" });
  const data = Buffer.from(`Exif\0\0${place}`, "latin1");
  const head = Buffer.from([0xff, 0xe1, (data.length + 2) >> 8, (data.length + 2) & 0xff]);
  return Buffer.concat([plain.subarray(0, 2), head, data, plain.subarray(2)]);
}

/** Kept in the record, made small, without what the camera wrote into it. */
export async function photo_kept(hand: Hand): Promise<void> {
  const { page } = hand;
  await hand.go("/closure/SD-M1");
  const place = "60 N 5 E, the camera of the boiler house";
  const buffer = await photo_with_place(hand, place);
  check(buffer.includes(place), "the photo does not say where it was taken");
  await page.locator('input[type="file"][capture]').setInputFiles({ name: "photo.jpg", mimeType: "image/jpeg", buffer });
  await until("the photo is kept", async () => (await bodies(hand, "remark.made")).some((body) => Array.isArray(body["photos"])));
  const kept = (await bodies(hand, "remark.made")).find((body) => Array.isArray(body["photos"]))?.["photos"] as string[];
  const bytes = await page.evaluate(async (hash) => {
    const response = await fetch(`/api/blobs/${hash}`);
    return { type: response.headers.get("content-type"), text: [...new Uint8Array(await response.arrayBuffer())].map((byte) => String.fromCharCode(byte)).join("") };
  }, kept[0]!);
  check(bytes.type === "image/jpeg", `kept as ${String(bytes.type)}`);
  check(bytes.text.startsWith("\xff\xd8") && !bytes.text.includes(place), "the photo still says where it was taken");
}
