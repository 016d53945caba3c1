// The API, one function a call that pages make of it. Start reading at class Client.
import { speaks } from "./speaks";
import type { ApiProblem, Outstanding, Problem } from "./types";

/** What the server answered when it refused, or that it could not be reached (status 0). */
export class Refused extends Error {
  readonly status: number;
  readonly code: string;
  readonly problems: Problem[];
  readonly outstanding: Outstanding[];

  constructor(status: number, said: ApiProblem) {
    super(said.message);
    this.status = status;
    this.code = said.code;
    this.problems = said.problems ?? [];
    this.outstanding = said.outstanding ?? [];
  }

  /** No answer came: the same may be asked again later. */
  get unreachable(): boolean {
    return this.status === 0 || this.status === 502 || this.status === 503;
  }
}

export type Fetch = (path: string, options?: RequestInit) => Promise<Response>;

/** Told when a call begins and ends, so that the page can show that it waits. */
export interface Waiting {
  began(): void;
  ended(): void;
}

const silent: Waiting = { began: () => undefined, ended: () => undefined };

async function problem_of(response: Response): Promise<ApiProblem> {
  try {
    const said: unknown = await response.json();
    if (typeof said === "object" && said !== null && "code" in said && "message" in said) {
      return said as ApiProblem;
    }
  } catch {
    // What is no JSON has no words for a person either.
  }
  return { code: "web.no_words", message: `${response.status} ${response.statusText}`.trim() };
}

export class Client {
  /** How a server that cannot be reached is told; the pages put it into words. */
  static readonly unreachable: ApiProblem = { code: "web.unreachable", message: "" };
  readonly #fetch: Fetch;
  readonly #waiting: Waiting;
  #query = "";
  /** Told when the program says that nobody is signed in (any more). */
  signed_out: () => void = () => undefined;

  constructor(fetch: Fetch, waiting: Waiting = silent) {
    this.#fetch = fetch;
    this.#waiting = waiting;
  }

  /** In which units and language texts are wanted. */
  speak(units: string, language: string): void {
    this.#query = `units=${units}&language=${language}`;
  }

  get<T>(path: string, query: Record<string, string | number | undefined> = {}): Promise<T> {
    return this.#call<T>("GET", this.address(path, query));
  }

  post<T>(path: string, body: unknown = {}): Promise<T> {
    return this.#call<T>("POST", this.address(path, {}, "POST"), JSON.stringify(body), "application/json");
  }

  put<T>(path: string, body: unknown): Promise<T> {
    return this.#call<T>("PUT", path, JSON.stringify(body), "application/json");
  }

  /** Sends bytes as they are: a photo, a logger's file. */
  send<T>(path: string, bytes: Blob, query: Record<string, string | undefined> = {}): Promise<T> {
    return this.#call<T>("POST", this.address(path, query, "POST"), bytes, bytes.type);
  }

  delete<T>(path: string): Promise<T> {
    return this.#call<T>("DELETE", path);
  }

  async text(path: string, query: Record<string, string | undefined> = {}): Promise<string> {
    return (await this.#answer("GET", this.address(path, query))).text();
  }

  /** The address of a path; of a call that answers with texts with the units and language for them. */
  address(path: string, query: Record<string, string | number | undefined> = {}, method = "GET"): string {
    const parts = Object.entries(query)
      .filter(([, value]) => value !== undefined && value !== "")
      .map(([key, value]) => `${key}=${encodeURIComponent(String(value))}`);
    if (this.#query !== "" && speaks(method, path)) parts.push(this.#query);
    return parts.length === 0 ? path : `${path}?${parts.join("&")}`;
  }

  async #call<T>(method: string, path: string, body?: BodyInit, type?: string): Promise<T> {
    const response = await this.#answer(method, path, body, type);
    const text = await response.text();
    return (text === "" ? undefined : JSON.parse(text)) as T;
  }

  async #answer(method: string, path: string, body?: BodyInit, type?: string): Promise<Response> {
    this.#waiting.began();
    try {
      let response: Response;
      try {
        response = await this.#fetch(path, {
          method,
          body,
          headers: type === undefined ? {} : { "Content-Type": type },
          credentials: "same-origin",
          cache: "no-store",
        });
      } catch {
        throw new Refused(0, Client.unreachable);
      }
      if (response.status === 401 && !path.startsWith("/api/sessions")) this.signed_out();
      if (!response.ok) throw new Refused(response.status, await problem_of(response));
      return response;
    } finally {
      this.#waiting.ended();
    }
  }
}
