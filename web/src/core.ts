// Core on the tablet: the same C++ as in the program, compiled to WebAssembly (wasm/face.cc).
//
// One function takes a question and gives an answer, both JSON; what may be asked stands in
// core/wire/tablet.h. Start reading at class Core.
import { Refused } from "./api/client";
import type { ApiProblem, Head, Word } from "./api/types";

/** What em++ makes of wasm/face.cc. */
export interface CoreModule {
  _malloc(size: number): number;
  _free(at: number): void;
  _steamworthy_answer(question: number, request: number): number;
  UTF8ToString(at: number): string;
  stringToUTF8(text: string, at: number, room: number): void;
  lengthBytesUTF8(text: string): number;
}

export interface FactRequest {
  scope: "closing" | "plant";
  scope_id: string;
  random: string;
  previous_id?: string;
  device: string;
  device_seq: number;
  prev_hash: string;
  seen: Head[];
  person: string;
  kind: string;
  happened_at_ms: number;
  happened_precision_ms: number;
  recorded_at_ms: number;
  utc_offset_min: number;
  blobs: string[];
  fields: Record<string, unknown>;
  units: string;
}

export interface MadeFact {
  id: string;
  bytes: string;
  header_size: number;
  hash: string;
  body: string;
}

export interface Quantity {
  text: string;
  unit_assumed: boolean;
  [value_with_unit: string]: unknown;
}

export interface GapsRequest {
  closure: string;
  shape: string;
  width_mm: number;
  height_mm: number;
  long_axis_clock?: number;
  step?: string;
  gaps: { clock: number; gap: string }[];
  units: string;
}

export interface GapsAnswer {
  verdict: string;
  verdict_of_fact: string;
  sentence_text: string;
  note_texts: string[];
  figure_texts: { text: string; working: string }[];
  off_centre_right_mm: number;
  off_centre_up_mm: number;
  move_right_mm: number;
  move_up_mm: number;
}

export class Core {
  readonly #module: CoreModule;

  constructor(module: CoreModule) {
    this.#module = module;
  }

  /** The answer as text, as it comes. */
  answer(question: string, request: string): string {
    const asked = this.#put(question);
    const with_what = this.#put(request);
    try {
      return this.#module.UTF8ToString(this.#module._steamworthy_answer(asked, with_what));
    } finally {
      this.#module._free(asked);
      this.#module._free(with_what);
    }
  }

  fact(request: FactRequest): MadeFact {
    return this.#ask<MadeFact>("fact", request);
  }

  quantity(kind: string, text: string, units: string): Quantity {
    return this.#ask<Quantity>("quantity", { kind, text, units });
  }

  /** Numbers as the API gives them ("..._bar_gauge") in the unit that a plot is to show. */
  in_unit(kind: string, values: number[], units: string): { unit: string; values: number[] } {
    return this.#ask<{ unit: string; values: number[] }>("in_unit", { kind, values, units });
  }

  words(...families: string[]): Record<string, Word[]> {
    return this.#ask<Record<string, Word[]>>("words", { families });
  }

  labels(...keys: string[]): string[] {
    return this.#ask<{ texts: string[] }>("label", { keys }).texts;
  }

  gaps(request: GapsRequest): GapsAnswer {
    return this.#ask<GapsAnswer>("gaps", request);
  }

  /** Throws Refused (status 422) with core's own words where core refuses. */
  #ask<T>(question: string, request: unknown): T {
    const said = JSON.parse(this.answer(question, JSON.stringify(request))) as T | ApiProblem;
    if (typeof said === "object" && said !== null && "code" in said && "problems" in said) {
      throw new Refused(422, said);
    }
    return said as T;
  }

  #put(text: string): number {
    const room = this.#module.lengthBytesUTF8(text) + 1;
    const at = this.#module._malloc(room);
    this.#module.stringToUTF8(text, at, room);
    return at;
  }
}

let loading: Promise<Core> | undefined;

/** Core in the browser, fetched once. */
export function load_core(): Promise<Core> {
  loading ??= (async () => {
    const [{ default: make }, { default: wasm }] = await Promise.all([
      import("../generated/core.mjs"),
      import("../generated/core.wasm?url"),
    ]);
    return new Core(await make({ locateFile: () => wasm }));
  })();
  loading.catch(() => (loading = undefined));
  return loading;
}
