// Who uses this tablet now.
import type { Client } from "../api/client";
import type { Me, Person } from "../api/types";

export class Session {
  me = $state.raw<Me | null>(null);
  people = $state.raw<Person[]>([]);
  person = $derived(this.me?.person ?? null);
  readonly #client: Client;

  constructor(client: Client) {
    this.#client = client;
  }

  has(...roles: string[]): boolean {
    return this.person?.roles.some((role) => roles.includes(role)) ?? false;
  }

  /** The full name of a short one. */
  name_of(who: string): string {
    return this.people.find((person) => person.who === who)?.name ?? who;
  }

  async load(): Promise<void> {
    this.me = await this.#client.get<Me>("/api/me");
    if (this.person !== null) await this.load_people();
  }

  async load_people(): Promise<void> {
    this.people = (await this.#client.get<{ people: Person[] }>("/api/people")).people;
  }

  async sign_in(person: string, secret: string): Promise<void> {
    this.me = await this.#client.post<Me>("/api/sessions", { person, secret });
    await this.load_people();
  }

  async sign_out(): Promise<void> {
    await this.#client.delete("/api/sessions");
    this.is_over();
  }

  /** The session has ended, here or there: nobody is signed in. */
  is_over(): void {
    if (this.me !== null) this.me = { ...this.me, person: null, session: null, expires_at_ms: null };
  }
}
