// What one tablet is set to: units, day or night. Kept on the tablet.

export type Units = "si" | "us";
export type Look = "day" | "night" | "device";

const place = "steamworthy.settings";

function read(): { units?: unknown; look?: unknown } {
  try {
    return JSON.parse(localStorage.getItem(place) ?? "{}") as { units?: unknown; look?: unknown };
  } catch {
    return {};
  }
}

export class Settings {
  units = $state<Units>("si");
  look = $state<Look>("device");
  readonly #dark = window.matchMedia("(prefers-color-scheme: dark)");
  #device_is_dark = $state(this.#dark.matches);
  night = $derived(this.look === "night" || (this.look === "device" && this.#device_is_dark));

  constructor() {
    const kept = read();
    if (kept.units === "us") this.units = "us";
    if (kept.look === "day" || kept.look === "night") this.look = kept.look;
    this.#dark.addEventListener("change", (event) => (this.#device_is_dark = event.matches));
  }

  keep(): void {
    localStorage.setItem(place, JSON.stringify({ units: this.units, look: this.look }));
  }
}
