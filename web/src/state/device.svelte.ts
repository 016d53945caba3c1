// This tablet: its own Ed25519 key, made here at enrolment and never leaving it.
import type { Client } from "../api/client";
import { hex_of } from "../memory/bytes";
import type { Database, KeptKey } from "../memory/database";

export interface FirstPerson {
  who: string;
  name: string;
  roles: string[];
  secret: string;
}

async function signed(key: CryptoKey, bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await crypto.subtle.sign("Ed25519", key, bytes));
}

export class Device {
  kept = $state.raw<KeptKey | null>(null);
  enrolled = $derived(this.kept !== null && this.kept.device !== "");
  readonly #database: Promise<Database>;
  readonly #client: Client;

  constructor(database: Promise<Database>, client: Client) {
    this.#database = database;
    this.#client = client;
  }

  /** Whether this browser can make a key here: browsers do so only where the address is safe. */
  get can_make_keys(): boolean {
    return globalThis.crypto?.subtle !== undefined;
  }

  async load(): Promise<void> {
    this.kept = (await (await this.#database).get("keys", "own")) ?? null;
  }

  /**
   * A key that was made for an enrolment that failed is used again for the next. The first device of
   * a plant brings its first person.
   */
  async enrol(code: string, device_name: string, first_person?: FirstPerson): Promise<void> {
    const database = await this.#database;
    let kept = await database.get("keys", "own");
    if (kept === undefined || kept.device !== "") {
      kept = await this.#make_key(device_name);
      await database.put("keys", kept);
    }
    const proof = new TextEncoder().encode(`steamworthy enrolment 1\n${code}`);
    const taken = await this.#client.post<{ device: string; plant: string }>("/api/enrolments", {
      code,
      device_name,
      public_key: kept.public_key,
      signature: hex_of(await signed(kept.private_key, proof)),
      first_person,
    });
    kept = { ...kept, device: taken.device, plant: taken.plant, device_name };
    const write = database.transaction(["keys", "feeds", "entries", "intents"], "readwrite");
    // Another key's feeds and unsent entries are no feeds and entries of this one.
    await Promise.all([
      write.objectStore("feeds").clear(),
      write.objectStore("entries").clear(),
      write.objectStore("intents").clear(),
      write.objectStore("keys").put(kept),
      write.done,
    ]);
    this.kept = kept;
  }

  async sign(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> {
    if (this.kept === null) throw new Error("no key");
    return signed(this.kept.private_key, bytes);
  }

  async #make_key(device_name: string): Promise<KeptKey> {
    const pair = (await crypto.subtle.generateKey("Ed25519", false, ["sign", "verify"])) as CryptoKeyPair;
    const raw = new Uint8Array(await crypto.subtle.exportKey("raw", pair.publicKey));
    return { name: "own", private_key: pair.privateKey, public_key: hex_of(raw), device: "", device_name, plant: "" };
  }
}
