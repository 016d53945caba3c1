// Whether an answer is awaited for so long that the page should say so.
import type { Waiting as Told } from "../api/client";

const shown_after_ms = 400;

export class Waiting implements Told {
  shown = $state(false);
  #open = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;

  began(): void {
    this.#open += 1;
    this.#timer ??= setTimeout(() => (this.shown = true), shown_after_ms);
  }

  ended(): void {
    this.#open -= 1;
    if (this.#open > 0) return;
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.shown = false;
  }
}
