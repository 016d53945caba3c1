// Checks state/outbox.svelte.ts: nothing lost, nothing doubled, whatever the network and the glove do.
import "fake-indexeddb/auto";
import { verify as verify_signature, createPublicKey } from "node:crypto";
import { beforeEach, describe, expect, test } from "vitest";
import { Client } from "../src/api/client";
import type { Core } from "../src/core";
import { from_hex, hex_of } from "../src/memory/bytes";
import { open_database, type Database } from "../src/memory/database";
import { Device } from "../src/state/device.svelte";
import { double_tap_ms, Outbox, type World } from "../src/state/outbox.svelte";
import { core_for_node } from "./core_for_node";

const closing = "0193690e-7a00-7c00-8000-0000000000c1";
const own = "474ddcdcecfae40ecca4dd91dfb68b23";
const other = "ff00000000000000000000000000000f";
const zeros = "0".repeat(64);

interface Sent {
  header_base64: string;
  body_base64: string;
  signature_base64: string;
}

/** What the program would do: keeps by id, gives receipts. */
class FakeProgram {
  facts = new Map<string, Sent>();
  reachable = true;
  loses_answers = false;
  calls = 0;
  feed = { device: own, device_seq: 0, hash: zeros, seen: [{ device: other, device_seq: 3, hash: "1".repeat(64) }] };

  readonly fetch = async (path: string, options?: RequestInit): Promise<Response> => {
    this.calls += 1;
    if (!this.reachable) throw new TypeError("no route");
    if (path.startsWith("/api/enrolments")) return Response.json({ device: own, plant: closing, name: "one" });
    if (path.includes("/feed")) return Response.json(this.feed);
    const { facts } = JSON.parse(String(options?.body)) as { facts: Sent[] };
    const receipts = facts.map((fact) => {
      const id = hex_of(new Uint8Array(Buffer.from(fact.header_base64, "base64").subarray(12, 28)));
      const doubled = this.facts.has(id);
      if (!doubled) this.facts.set(id, fact);
      const text = id.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
      return { id: text, intake_no: [...this.facts.keys()].indexOf(id) + 1, doubled, put_aside: "" };
    });
    if (this.loses_answers) throw new TypeError("lost on the way back");
    return Response.json({ receipts, alarms: [] });
  };
}

class FakeWorld implements World {
  ms = 1764072060000;
  queue: (() => void)[] = [];
  #random = 0;
  readonly #chains = new Map<string, Promise<unknown>>();
  now_ms = (): number => this.ms;
  offset_min = (): number => 60;
  random = (): Uint8Array => new Uint8Array(10).fill(++this.#random);
  later = (run: () => void): void => void this.queue.push(run);
  one_at_a_time = <T>(name: string, run: () => Promise<T>): Promise<T> => {
    const next = (this.#chains.get(name) ?? Promise.resolve()).then(run, run);
    this.#chains.set(name, next);
    return next;
  };
}

let core: Core;
let names = 0;

interface Tablet {
  database: Database;
  device: Device;
  outbox: Outbox;
}

async function tablet(program: FakeProgram, world: FakeWorld, name: string): Promise<Tablet> {
  const database = await open_database(name);
  const client = new Client(program.fetch);
  const device = new Device(Promise.resolve(database), client);
  await device.load();
  return { database, device, outbox: new Outbox(Promise.resolve(database), client, device, () => Promise.resolve(core), world) };
}

/** Until all that is under way has settled. */
async function settled(): Promise<void> {
  for (let i = 0; i < 30; ++i) await new Promise((resolve) => setTimeout(resolve, 1));
}

describe("the outbox", () => {
  let program: FakeProgram;
  let world: FakeWorld;
  let one: Tablet;
  let name: string;
  const open = (tag: string) => ({ scope_id: closing, kind: "closure.opened", fields: { closure: tag } });

  beforeEach(async () => {
    core ??= await core_for_node();
    program = new FakeProgram();
    world = new FakeWorld();
    name = `test-${++names}`;
    one = await tablet(program, world, name);
    await one.device.enrol("code", "tablet one");
  });

  test("numbers, chains and signs what it sends", async () => {
    await one.outbox.report(open("FW-A01"), "P-01", "si");
    world.ms += 5000;
    await one.outbox.report(open("FW-A02"), "P-01", "si");
    await settled();
    expect(program.facts.size).toBe(2);
    expect(one.outbox.entries).toEqual([]);
    const key = createPublicKey({
      key: Buffer.concat([Buffer.from("302a300506032b6570032100", "hex"), Buffer.from(one.device.kept!.public_key, "hex")]),
      format: "der",
      type: "spki",
    });
    let previous = Buffer.alloc(32);
    for (const [at, sent] of [...program.facts.values()].entries()) {
      const body = Buffer.from(sent.body_base64, "base64");
      const length = Buffer.alloc(4);
      length.writeUInt32BE(body.length);
      const bytes = Buffer.concat([Buffer.from(sent.header_base64, "base64"), length, body]);
      expect(verify_signature(null, bytes, key, Buffer.from(sent.signature_base64, "base64"))).toBe(true);
      // Places in the header by docs/formats/record.md: id 16, scope 1 + 16, device 16, number 8, hash 32.
      expect(Number(bytes.readBigUInt64BE(12 + 49))).toBe(at + 1);
      expect(bytes.subarray(12 + 57, 12 + 89).equals(previous)).toBe(true);
      const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", new Uint8Array(bytes)));
      previous = Buffer.from(hash);
    }
  });

  test("a double tap is one entry; the same later is another", async () => {
    const [first, second] = await Promise.all([
      one.outbox.report(open("FW-A01"), "P-01", "si"),
      one.outbox.report(open("FW-A01"), "P-01", "si"),
    ]);
    expect(second?.id).toBe(first?.id);
    world.ms += double_tap_ms + 1;
    const third = await one.outbox.report(open("FW-A01"), "P-01", "si");
    expect(third?.id).not.toBe(first?.id);
    await settled();
    expect(program.facts.size).toBe(2);
  });

  test("what is entered while the program is away survives a reload and is sent once", async () => {
    await one.outbox.report(open("FW-A01"), "P-01", "si");
    await settled();
    program.reachable = false;
    world.ms += 5000;
    const kept = await one.outbox.report(open("FW-A02"), "P-01", "si");
    await settled();
    expect(one.outbox.stuck).toBe(true);
    expect(one.outbox.entries.map((entry) => entry.id)).toEqual([kept?.id]);

    one.database.close();
    const again = await tablet(program, world, name);
    program.reachable = true;
    await again.outbox.load();
    await settled();
    expect(program.facts.size).toBe(2);
    expect(again.outbox.entries).toEqual([]);
    expect(again.outbox.stuck).toBe(false);
  });

  test("a tap whose entry was not made before a reload is made after it, at the time of the tap", async () => {
    const tapped_at = world.ms;
    const stuck = new Outbox(Promise.resolve(one.database), new Client(program.fetch), one.device, () => new Promise<Core>(() => undefined), world);
    void stuck.report(open("FW-A01"), "P-01", "si");
    await settled();
    expect(program.facts.size).toBe(0);
    one.database.close();
    world.ms += 60_000;
    const again = await tablet(program, world, name);
    await again.outbox.load();
    await settled();
    expect(program.facts.size).toBe(1);
    expect(await again.database.count("intents")).toBe(0);
    // When it happened stands in the header after person and kind, by docs/formats/record.md.
    const header = Buffer.from([...program.facts.values()][0]!.header_base64, "base64");
    const seen = header.readUInt16BE(12 + 89);
    const person = 12 + 91 + seen * 56;
    const kind = person + 2 + header.readUInt16BE(person);
    const happened = kind + 2 + header.readUInt16BE(kind) + 2;
    expect(Number(header.readBigInt64BE(happened))).toBe(tapped_at);
  });

  test("an answer that is lost on its way back doubles nothing", async () => {
    program.loses_answers = true;
    await one.outbox.report(open("FW-A01"), "P-01", "si");
    await settled();
    expect(program.facts.size).toBe(1);
    expect(one.outbox.entries.length).toBe(1);
    program.loses_answers = false;
    world.queue.pop()?.();
    await settled();
    expect(program.facts.size).toBe(1);
    expect(one.outbox.entries).toEqual([]);
  });

  test("what core refuses is not kept, and may be said again rightly at once", async () => {
    const bad = { scope_id: closing, kind: "reading.taken", fields: { gauge: "TG-1", pressure: "half way" } };
    await expect(one.outbox.report(bad, "P-01", "si")).rejects.toThrow(/half way/);
    expect(await one.database.count("entries")).toBe(0);
    expect(await one.database.count("intents")).toBe(0);
    await one.outbox.report({ ...bad, fields: { gauge: "TG-1", pressure: "650 psi" } }, "P-01", "si");
    await settled();
    expect(program.facts.size).toBe(1);
  });

  test("goes on where the program says its own feed ends", async () => {
    program.feed = { ...program.feed, device_seq: 7, hash: "2".repeat(64) };
    await one.outbox.know(closing, program.feed);
    const entry = await one.outbox.report(open("FW-A01"), "P-01", "si");
    expect(entry?.device_seq).toBe(8);
  });

  test("names as seen the latest heads that were shown, and never goes back", async () => {
    await one.outbox.know(closing, { ...program.feed, seen: [{ device: other, device_seq: 9, hash: "3".repeat(64) }] });
    await one.outbox.know(closing, { ...program.feed, seen: [{ device: other, device_seq: 4, hash: "4".repeat(64) }] });
    const kept = await one.database.get("feeds", closing);
    expect(kept?.seen).toEqual([{ device: other, device_seq: 9, hash: "3".repeat(64) }]);
  });

  test("bytes and text are each other's inverse", () => {
    expect(hex_of(from_hex("00ff10a7"))).toBe("00ff10a7");
  });
});
