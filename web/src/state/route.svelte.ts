// Where the page is, kept in the browser's history so that "back" goes back.
import { place_of, type Place } from "../routes";

export class Route {
  path = $state("/");
  place: Place = $derived(place_of(this.path));
  /** What stands behind the # of the address; a one-time code, which no server sees. */
  fragment = $state("");

  listen(): void {
    this.#read();
    window.addEventListener("popstate", () => this.#read());
    document.addEventListener("click", (event) => this.#follow(event));
  }

  go(path: string, how: "push" | "replace" = "push"): void {
    if (how === "push") history.pushState(null, "", path);
    else history.replaceState(null, "", path);
    this.#read();
    window.scrollTo(0, 0);
  }

  #read(): void {
    this.path = location.pathname;
    this.fragment = location.hash.slice(1);
  }

  /** A tap on one of our own links changes the page without loading it anew. */
  #follow(event: MouseEvent): void {
    if (event.defaultPrevented || event.button !== 0) return;
    if (event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
    const link = (event.target as Element).closest("a");
    if (link === null || link.target !== "" || link.hasAttribute("download")) return;
    if (link.origin !== location.origin || link.pathname.startsWith("/api/")) return;
    event.preventDefault();
    this.go(link.pathname + link.hash);
  }
}
