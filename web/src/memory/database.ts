// What a tablet keeps through a reload or a flat battery: its key, the ends of its feeds, the
// entries that are not yet known to be sent, and what each closing looked like when last seen.
import { openDB, type DBSchema, type IDBPDatabase } from "idb";
import type { Head } from "../api/types";

export interface KeptKey {
  name: "own";
  private_key: CryptoKey; // not extractable
  public_key: string;
  device: string; // empty until it is enrolled
  device_name: string;
  plant: string;
}

/** The end of this device's feed in a closing, and what it has seen of the others. */
export interface KeptFeed {
  scope_id: string;
  device: string;
  device_seq: number;
  hash: string;
  last_id: string;
  seen: Head[];
}

export interface Entry {
  id: string;
  order: number;
  scope_id: string; // the closing
  person: string;
  kind: string;
  fields: Record<string, unknown>;
  recorded_at_ms: number;
  device_seq: number;
  bytes: Uint8Array<ArrayBuffer>;
  /** Of the bytes these are the header; the body follows after four more. */
  header_size: number;
  signature: Uint8Array<ArrayBuffer>;
  /** What the program said when it would not take it; empty while it waits. */
  refused: string;
}

/** What somebody tapped, kept before it is made an entry: a reload in between loses nothing. */
export interface Intent {
  key: string;
  report: {
    scope_id: string;
    kind: string;
    fields: Record<string, unknown>;
    happened_at_ms?: number;
    happened_precision_ms?: number;
    blobs?: string[];
  };
  person: string;
  units: string;
  at_ms: number;
}

interface Shape extends DBSchema {
  keys: { key: string; value: KeptKey };
  feeds: { key: string; value: KeptFeed };
  entries: { key: string; value: Entry; indexes: { order: number } };
  intents: { key: string; value: Intent; indexes: { at_ms: number } };
  views: { key: string; value: { address: string; at_ms: number; view: unknown } };
}

export type Database = IDBPDatabase<Shape>;

export function open_database(name = "steamworthy"): Promise<Database> {
  return openDB<Shape>(name, 1, {
    upgrade(db) {
      db.createObjectStore("keys", { keyPath: "name" });
      db.createObjectStore("feeds", { keyPath: "scope_id" });
      db.createObjectStore("entries", { keyPath: "id" }).createIndex("order", "order");
      db.createObjectStore("intents", { keyPath: "key" }).createIndex("at_ms", "at_ms");
      db.createObjectStore("views", { keyPath: "address" });
    },
  });
}
