// Who uses this tablet now.
import { Refused, type Client } from "../api/client";
import type { Me, PersonName } from "../api/types";

export class Session {
  me = $state<Me | null>(null);
  /** The first question to the server has been answered. */
  known = $state(false);
  names = $state<PersonName[]>([]);
  readonly #client: Client;

  constructor(client: Client) {
    this.#client = client;
  }

  has(...roles: string[]): boolean {
    return this.me?.roles.some((role) => roles.includes(role.token)) ?? false;
  }

  async load(): Promise<void> {
    try {
      this.me = await this.#client.get<Me>("/api/me");
    } catch (error) {
      if (!(error instanceof Refused) || error.unreachable) throw error;
      this.me = null;
    }
    this.known = true;
  }

  async load_names(): Promise<void> {
    this.names = (await this.#client.get<{ people: PersonName[] }>("/api/people/names")).people;
  }

  async sign_in(person: string, secret: string, device: string | undefined): Promise<void> {
    this.me = await this.#client.post<Me>("/api/sessions", { person, secret, device });
    this.known = true;
  }

  async sign_out(): Promise<void> {
    await this.#client.delete("/api/sessions");
    this.me = null;
  }
}
