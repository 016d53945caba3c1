// Everything that outlives a page, made once. Pages get it by app().
import { getContext, setContext } from "svelte";
import { Client } from "../api/client";
import { Route } from "./route.svelte";
import { Session } from "./session.svelte";
import { Settings } from "./settings.svelte";
import { Waiting } from "./waiting.svelte";

export class App {
  readonly settings = new Settings();
  readonly waiting = new Waiting();
  readonly client = new Client((path, options) => fetch(path, options), this.waiting);
  readonly route = new Route();
  readonly session = new Session(this.client);
}

const key = Symbol("app");

export function provide(made: App): App {
  return setContext(key, made);
}

export function app(): App {
  return getContext<App>(key);
}
