// Everything that outlives a page, made once. Pages get it by app(), the closing they show by
// closing().
import { getContext, setContext } from "svelte";
import { Client } from "../api/client";
import { load_core } from "../core";
import { open_database } from "../memory/database";
import { Closing } from "./closing.svelte";
import { Device } from "./device.svelte";
import { Outbox } from "./outbox.svelte";
import { Route } from "./route.svelte";
import { Session } from "./session.svelte";
import { Settings } from "./settings.svelte";
import { Waiting } from "./waiting.svelte";

export class App {
  readonly settings = new Settings();
  readonly waiting = new Waiting();
  readonly client = new Client((path, options) => fetch(path, options), this.waiting);
  readonly database = open_database();
  readonly route = new Route();
  readonly session = new Session(this.client);
  readonly device = new Device(this.database, this.client);
  readonly core = load_core;
  readonly outbox = new Outbox(this.database, this.client, this.device, load_core);

  constructor() {
    this.client.signed_out = () => this.session.is_over();
  }

  closing(id: string): Closing {
    return new Closing(id, this);
  }
}

const app_key = Symbol("app");
const closing_key = Symbol("closing");

export const provide = (made: App): App => setContext(app_key, made);
export const app = (): App => getContext<App>(app_key);
export const provide_closing = (made: Closing): Closing => setContext(closing_key, made);
export const closing = (): Closing => getContext<Closing>(closing_key);
