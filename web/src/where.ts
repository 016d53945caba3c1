// Where on the pages a thing that is outstanding is dealt with: the first words of its check's name
// (docs/safety.md) and its subject. Only the way there; whether it is outstanding core says.
import type { ClosingView } from "./api/view";
import { path_of } from "./routes";

const by_topic: readonly (readonly [topic: RegExp, page: string])[] = [
  [/isolation/, "isolations"],
  [/^s1_(vent|drained|pressure|hot)$/, "test"],
  [/^s(2|3)_|_(inside|fire_side|space|tubes|header|device|count|entry|air)/, "inside"],
  [/internal/, "internals"],
  [/(temporary|seen_off|safety_valve)$/, "temporaries"],
  [/_(closure|plate|gap|hardened|touched)$/, "part"],
  [/sheet/, "test-sheet"],
  [/_(leak|weep|finding)$/, "leaks"],
  [/_(not_seen)$/, "walkdown"],
  [/_(taken_over|normalised|protection|hangers)$/, "taking-over"],
  [/^s10_shift$/, "handover"],
  [/^s(4|5|6|7|8|9)_/, "test"],
];

/** The address of the page for it; of a closure its part's page, which shows it among its neighbours. */
export function where_of(view: ClosingView, check: string, subject: string): string {
  const page = by_topic.find(([topic]) => topic.test(check))?.[1];
  if (page === undefined) return path_of(view.closing);
  if (page === "inside") {
    const known = view.spaces.some((space) => space.tag === subject);
    return known ? path_of(view.closing, "inside", subject) : path_of(view.closing, "inside");
  }
  if (page === "part") {
    const part = view.parts.find((one) => one.rows.some((row) => row.some((closure) => closure.tag === subject)));
    return part === undefined ? path_of(view.closing) : path_of(view.closing, "part", part.tag);
  }
  return path_of(view.closing, page);
}
