// Entries on their way: made and signed at the tap, kept on the tablet, sent until they are taken.
//
// An entry gets its id, its number in the feed and its signature once. From then on it is only sent,
// as often as it takes; the program knows it by its id, so that nothing is doubled. Start reading at
// Outbox.report().
import { Refused, type Client } from "../api/client";
import type { FeedView, Receipt } from "../api/types";
import type { Core, FactRequest, MadeFact } from "../core";
import { base64_of, from_hex, hex_of } from "../memory/bytes";
import type { Database, Entry, Intent, KeptFeed } from "../memory/database";
import type { Device } from "./device.svelte";

/** What somebody reports: of which closing, what, and when if not now. */
export type Report = Intent["report"];

/** What the outbox needs of the world, so that tests can bring their own. */
export interface World {
  now_ms(): number;
  offset_min(at_ms: number): number;
  random(): Uint8Array;
  /** Runs one after another what goes by the same name, in all windows of this browser. */
  one_at_a_time<T>(name: string, run: () => Promise<T>): Promise<T>;
  later(run: () => void, ms: number): void;
}

export const browser: World = {
  now_ms: () => Date.now(),
  offset_min: (at_ms) => -new Date(at_ms).getTimezoneOffset(),
  random: () => crypto.getRandomValues(new Uint8Array(10)),
  one_at_a_time: <T>(name: string, run: () => Promise<T>) =>
    navigator.locks.request(`steamworthy.${name}`, run) as Promise<T>,
  later: (run, ms) => void setTimeout(run, ms),
};

/** The same said twice within this time is one glove that trembled. */
export const double_tap_ms = 1500;
const most_at_once = 50;
const longest_pause_ms = 20_000;

export class Outbox {
  /** Not yet known to be sent, in the order in which they were made. */
  entries = $state.raw<Entry[]>([]);
  /** The program cannot be reached. */
  stuck = $state(false);
  /** The highest intake number that this tablet's own entries got, by closing. */
  taken = $state.raw<Record<string, number>>({});
  readonly #database: Promise<Database>;
  readonly #client: Client;
  readonly #device: Device;
  readonly #core: () => Promise<Core>;
  readonly #world: World;
  readonly #just_said = new Map<string, { at_ms: number; entry: Promise<Entry | undefined> }>();
  #pause_ms = 0;

  constructor(
    database: Promise<Database>,
    client: Client,
    device: Device,
    core: () => Promise<Core>,
    world: World = browser,
  ) {
    this.#database = database;
    this.#client = client;
    this.#device = device;
    this.#core = core;
    this.#world = world;
  }

  async load(): Promise<void> {
    const database = await this.#database;
    // What was tapped before a reload and not yet made an entry.
    for (const intent of await database.getAllFromIndex("intents", "at_ms")) {
      await this.#make(intent).catch(() => undefined); // what core refuses was told at the tap
    }
    this.entries = await database.getAllFromIndex("entries", "order");
    if (this.waiting.length > 0) void this.send();
  }

  get waiting(): Entry[] {
    return this.entries.filter((entry) => entry.refused === "");
  }

  /**
   * Makes an entry, keeps it, and begins to send it. Throws Refused where core refuses a field.
   * Nothing comes back where another window has made the entry.
   */
  report(report: Report, person: string, units: string): Promise<Entry | undefined> {
    const now = this.#world.now_ms();
    const said = JSON.stringify([report.scope_id, report.kind, report.fields, person]);
    for (const [key, { at_ms }] of this.#just_said) {
      if (now - at_ms > double_tap_ms) this.#just_said.delete(key);
    }
    const before = this.#just_said.get(said);
    if (before !== undefined) return before.entry;
    const entry = this.#keep({ key: hex_of(this.#world.random()), report, person, units, at_ms: now });
    this.#just_said.set(said, { at_ms: now, entry });
    entry.then(
      () => void this.send(),
      () => this.#just_said.delete(said),
    );
    return entry;
  }

  /** What this device knows of a closing before it shows it; a new entry names it as seen. */
  async know(scope_id: string, view: FeedView): Promise<void> {
    await this.#world.one_at_a_time(`feed.${scope_id}`, async () => {
      const database = await this.#database;
      const kept = await database.get("feeds", scope_id);
      await database.put("feeds", merged(scope_id, this.#own(), kept, view));
    });
  }

  /** Sends what waits; asks again, ever more slowly, while the program cannot be reached. */
  async send(): Promise<void> {
    const more = await this.#world.one_at_a_time("send", () => this.#send_some());
    if (more === "again") await this.send();
    else if (more === "later") {
      this.#pause_ms = Math.min(Math.max(1000, 2 * this.#pause_ms), longest_pause_ms);
      this.#world.later(() => void this.send(), this.#pause_ms);
    }
  }

  #own(): string {
    const device = this.#device.kept?.device ?? "";
    if (device === "") throw new Refused(403, { code: "web.not_enrolled", message: "" });
    return device;
  }

  async #keep(intent: Intent): Promise<Entry | undefined> {
    await (await this.#database).put("intents", intent);
    return this.#make(intent);
  }

  async #make(intent: Intent): Promise<Entry | undefined> {
    const { report, person } = intent;
    const core = await this.#core();
    return this.#world.one_at_a_time(`feed.${report.scope_id}`, async () => {
      const database = await this.#database;
      if ((await database.get("intents", intent.key)) === undefined) return undefined;
      const feed = (await database.get("feeds", report.scope_id)) ?? (await this.#first(report));
      const now = this.#world.now_ms();
      const request: FactRequest = {
        scope: "closing",
        scope_id: report.scope_id,
        random: hex_of(this.#world.random()),
        previous_id: feed.last_id === "" ? undefined : feed.last_id,
        device: feed.device,
        device_seq: feed.device_seq + 1,
        prev_hash: feed.hash,
        seen: feed.seen,
        person,
        kind: report.kind,
        happened_at_ms: report.happened_at_ms ?? intent.at_ms,
        happened_precision_ms: report.happened_precision_ms ?? 60_000,
        recorded_at_ms: now,
        utc_offset_min: this.#world.offset_min(now),
        blobs: report.blobs ?? [],
        fields: report.fields,
        units: intent.units,
      };
      let made: MadeFact;
      try {
        made = core.fact(request);
      } catch (error) {
        await database.delete("intents", intent.key); // it can never be made
        throw error;
      }
      const bytes = from_hex(made.bytes);
      const entry: Entry = {
        id: made.id,
        order: now * 1000 + (request.device_seq % 1000),
        scope_id: report.scope_id,
        person,
        kind: report.kind,
        fields: report.fields,
        recorded_at_ms: now,
        device_seq: request.device_seq,
        bytes,
        header_size: made.header_size,
        signature: await this.#device.sign(bytes),
        refused: "",
      };
      // Entry and end of feed are written together, so that no number is ever used twice.
      const write = database.transaction(["entries", "feeds", "intents"], "readwrite");
      await Promise.all([
        write.objectStore("intents").delete(intent.key),
        write.objectStore("entries").put(entry),
        write
          .objectStore("feeds")
          .put({ ...feed, device_seq: request.device_seq, hash: made.hash, last_id: made.id }),
        write.done,
      ]);
      this.entries = [...this.entries, entry];
      return entry;
    });
  }

  async #first(report: Report): Promise<KeptFeed> {
    const view = await this.#client.get<FeedView>(feed_address(report.scope_id));
    return merged(report.scope_id, this.#own(), undefined, view);
  }

  async #send_some(): Promise<"done" | "again" | "later"> {
    const database = await this.#database;
    const kept = await database.getAllFromIndex("entries", "order");
    this.entries = kept;
    const first = this.waiting[0];
    if (first === undefined) return "done";
    const batch = this.waiting.filter((entry) => entry.scope_id === first.scope_id).slice(0, most_at_once);
    try {
      const { receipts } = await this.#client.post<{ receipts: Receipt[] }>(facts_address(first.scope_id), {
        facts: batch.map((entry) => ({
          header_base64: base64_of(entry.bytes.subarray(0, entry.header_size)),
          body_base64: base64_of(entry.bytes.subarray(entry.header_size + 4)),
          signature_base64: base64_of(entry.signature),
        })),
      });
      this.stuck = false;
      this.#pause_ms = 0;
      await this.#settle(batch, receipts);
      const highest = Math.max(0, ...receipts.map((receipt) => receipt.intake_no));
      this.taken = { ...this.taken, [first.scope_id]: Math.max(highest, this.taken[first.scope_id] ?? 0) };
      // No receipt for any of them would mean to ask for ever.
      return receipts.length === 0 ? "later" : "again";
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      if (error.unreachable || error.status >= 500 || error.status === 429) {
        this.stuck = error.unreachable;
        return "later";
      }
      // Nobody is signed in: it stays and is sent when somebody is.
      if (error.status === 401) return "done";
      const write = database.transaction("entries", "readwrite");
      await Promise.all([...batch.map((entry) => write.store.put({ ...entry, refused: error.message })), write.done]);
      this.entries = await database.getAllFromIndex("entries", "order");
      return "again";
    }
  }

  /** Takes out what was taken in, and marks what was put aside. */
  async #settle(batch: Entry[], receipts: Receipt[]): Promise<void> {
    const database = await this.#database;
    const write = database.transaction("entries", "readwrite");
    const done: Promise<unknown>[] = [write.done];
    for (const receipt of receipts) {
      const entry = batch.find((one) => one.id === receipt.id);
      if (receipt.put_aside === "") done.push(write.store.delete(receipt.id));
      else if (entry !== undefined) done.push(write.store.put({ ...entry, refused: receipt.put_aside }));
    }
    await Promise.all(done);
    this.entries = await database.getAllFromIndex("entries", "order");
  }
}

const feed_address = (scope_id: string): string => `/api/closings/${scope_id}/feed`;
const facts_address = (scope_id: string): string => `/api/closings/${scope_id}/facts`;

/** Whichever knows more of the own feed; and of every other feed the later head. */
function merged(scope_id: string, device: string, kept: KeptFeed | undefined, view: FeedView): KeptFeed {
  const own = kept === undefined || kept.device !== device || view.device_seq > kept.device_seq ? view : kept;
  const seen = new Map((kept?.device === device ? kept.seen : []).map((head) => [head.device, head]));
  for (const head of view.seen) {
    const known = seen.get(head.device);
    if (head.device !== device && (known === undefined || head.device_seq > known.device_seq)) {
      seen.set(head.device, head);
    }
  }
  return {
    scope_id,
    device,
    device_seq: own.device_seq,
    hash: own.hash,
    last_id: kept?.last_id ?? "",
    seen: [...seen.values()],
  };
}
