// One closing as this tablet knows it: what the program says of it, kept up to date while a page of
// it is open, and what was entered here and is not yet known to be sent.
import type { EventFacts, FeedView } from "../api/types";
import type { Alarm, ClosingView } from "../api/view";
import type { Database } from "../memory/database";
import type { Client } from "../api/client";
import type { Outbox, Report } from "./outbox.svelte";
import type { Session } from "./session.svelte";
import type { Settings } from "./settings.svelte";

const heard_again_after_ms = 5_000;
const refreshed_after_ms = 60_000; // what depends on the clock: the age of air, of a count

/** The fields of an entry that name what it is about. */
const subjects = ["closure", "place", "space", "isolation", "internal", "temporary", "mounting", "part", "gauge", "leak"];

export interface Needs {
  client: Client;
  outbox: Outbox;
  session: Session;
  settings: Settings;
  database: Promise<Database>;
}

export class Closing {
  readonly id: string;
  view = $state.raw<ClosingView | null>(null);
  /** Alarms as last told, by an event even before the view is read anew. */
  alarms = $state.raw<Alarm[]>([]);
  error = $state.raw<unknown>(null);
  /** When this was last known to be so; 0 while it is. */
  stale_since_ms = $state(0);
  readonly #needs: Needs;
  #events: EventSource | undefined;
  #timer: ReturnType<typeof setInterval> | undefined;
  #loading = false;
  #again = false;
  readonly #answered = new Set<string>();

  /** Tags of what was touched on this tablet by entries that are not yet known to be sent. */
  unsent: ReadonlySet<string> = $derived.by(() => {
    const tags = new Set<string>();
    for (const entry of this.#needs.outbox.entries) {
      if (entry.scope_id !== this.id) continue;
      for (const subject of subjects) {
        const tag = entry.fields[subject];
        if (typeof tag === "string") tags.add(tag);
      }
    }
    return tags;
  });

  constructor(id: string, needs: Needs) {
    this.id = id;
    this.#needs = needs;
  }

  get address(): string {
    return `/api/closings/${this.id}`;
  }

  /** Reports something as the person who is signed in. */
  async report(kind: string, fields: Record<string, unknown> = {}, more: Partial<Report> = {}): Promise<void> {
    const person = this.#needs.session.person?.who ?? "";
    await this.#needs.outbox.report({ scope_id: this.id, kind, fields, ...more }, person, this.#needs.settings.units);
  }

  open(): void {
    void this.#remember();
    void this.load();
    this.#listen();
    this.#timer = setInterval(() => void this.load(), refreshed_after_ms);
    document.addEventListener("visibilitychange", this.#woken);
  }

  close(): void {
    this.#events?.close();
    this.#events = undefined;
    clearInterval(this.#timer);
    document.removeEventListener("visibilitychange", this.#woken);
  }

  /** Reads the view anew; calls that come while one is under way are joined into one more. */
  async load(): Promise<void> {
    if (this.#loading) {
      this.#again = true;
      return;
    }
    this.#loading = true;
    try {
      do {
        this.#again = false;
        await this.#load();
      } while (this.#again);
    } finally {
      this.#loading = false;
    }
  }

  async #load(): Promise<void> {
    const { client, outbox, session, database } = this.#needs;
    try {
      // The heads first: what an entry names as seen must have been shown, never more.
      const feed = session.me?.device ? await client.get<FeedView>(`${this.address}/feed`) : null;
      const view = await client.get<ClosingView>(this.address);
      if (feed !== null) await outbox.know(this.id, feed).catch(() => undefined);
      this.view = view;
      this.alarms = view.alarms.filter((alarm) => !alarm.taken);
      this.error = null;
      this.stale_since_ms = 0;
      void (await database).put("views", { address: this.address, at_ms: Date.now(), view });
      if (outbox.waiting.length > 0) void outbox.send();
      else await this.#answer_counts(view);
    } catch (error) {
      this.error = error;
      this.#is_stale();
    }
  }

  /**
   * A count waits until every device has said that it holds no entry back. This one holds none, and
   * has shown what it names as seen, so it says so, once a count, by itself.
   */
  async #answer_counts(view: ClosingView): Promise<void> {
    const { outbox, session, settings } = this.#needs;
    const own = session.me?.device?.device ?? "";
    const awaited = view.spaces.filter((space) => space.count?.against.some((one) => one.check === "s3_device" && one.subject === own));
    const asked = awaited.map((space) => `${space.tag} ${space.count?.at_ms}`).filter((count) => !this.#answered.has(count));
    if (own === "" || asked.length === 0 || outbox.entries.some((entry) => entry.scope_id === this.id)) return;
    for (const count of asked) this.#answered.add(count);
    await outbox.report({ scope_id: this.id, kind: "device.reported", fields: {} }, "", settings.units);
  }

  readonly #woken = (): void => {
    if (document.visibilityState === "visible") void this.load();
  };

  #listen(): void {
    const events = new EventSource(`${this.address}/events`);
    this.#events = events;
    events.addEventListener("facts", (event) => this.#happened(event as MessageEvent<string>));
    events.addEventListener("resync", () => void this.load());
    events.addEventListener("open", () => {
      if (this.stale_since_ms !== 0) void this.load();
    });
    events.addEventListener("error", () => {
      this.#is_stale();
      // A browser asks again by itself unless it was refused.
      if (events.readyState !== EventSource.CLOSED) return;
      setTimeout(() => {
        if (this.#events === events) this.#listen();
      }, heard_again_after_ms);
    });
  }

  #is_stale(): void {
    if (this.stale_since_ms === 0) this.stale_since_ms = Date.now();
  }

  /** Shows at once what was last known, until the program answers. */
  async #remember(): Promise<void> {
    const kept = await (await this.#needs.database).get("views", this.address);
    if (kept === undefined || this.view !== null) return;
    this.view = kept.view as ClosingView;
    this.alarms = this.view.alarms.filter((alarm) => !alarm.taken);
    this.stale_since_ms = kept.at_ms;
  }

  #happened(event: MessageEvent<string>): void {
    let told: EventFacts;
    try {
      told = JSON.parse(event.data) as EventFacts;
    } catch {
      void this.load(); // something happened, whatever it was
      return;
    }
    this.alarms = told.alarms.filter((alarm) => !alarm.taken);
    if (this.view === null || told.intake_no > this.view.intake_no) void this.load();
  }
}
