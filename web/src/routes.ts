// The map: every page, its address and its name. Start here.
//
// A part of an address that begins with a colon stands for a tag or an id, which the page gets as a
// property of that name.

export type PageName =
  | "sign_in"
  | "enrol"
  | "plant"
  | "people"
  | "settings"
  | "rules"
  | "closing"
  | "part"
  | "closure"
  | "inside"
  | "isolations"
  | "internals"
  | "temporaries"
  | "test_sheet"
  | "test"
  | "walkdown"
  | "leaks"
  | "taking_over"
  | "handover"
  | "nowhere";

export const routes: readonly (readonly [path: string, page: PageName])[] = [
  ["/", "plant"],
  ["/sign-in", "sign_in"],
  ["/enrol", "enrol"],
  ["/people", "people"],
  ["/settings", "settings"],
  ["/rules", "rules"],
  ["/closing/:closing", "closing"],
  ["/closing/:closing/part/:part", "part"],
  ["/closing/:closing/closure/:closure", "closure"],
  ["/closing/:closing/inside", "inside"],
  ["/closing/:closing/inside/:space", "inside"],
  ["/closing/:closing/isolations", "isolations"],
  ["/closing/:closing/internals", "internals"],
  ["/closing/:closing/temporaries", "temporaries"],
  ["/closing/:closing/test-sheet", "test_sheet"],
  ["/closing/:closing/test", "test"],
  ["/closing/:closing/walkdown", "walkdown"],
  ["/closing/:closing/leaks", "leaks"],
  ["/closing/:closing/taking-over", "taking_over"],
  ["/closing/:closing/handover", "handover"],
];

export interface Place {
  page: PageName;
  values: Record<string, string>;
}

function words_of(path: string): string[] {
  return path.split("/").filter((word) => word !== "");
}

/** Which page an address means, and what its colons stand for. */
export function place_of(path: string): Place {
  const words = words_of(path);
  for (const [route, page] of routes) {
    const pattern = words_of(route);
    if (pattern.length !== words.length) continue;
    const values: Record<string, string> = {};
    const fits = pattern.every((part, i) => {
      const word = words[i] ?? "";
      if (!part.startsWith(":")) return part === word;
      try {
        values[part.slice(1)] = decodeURIComponent(word);
      } catch {
        return false;
      }
      return true;
    });
    if (fits) return { page, values };
  }
  return { page: "nowhere", values: {} };
}

/** The address of a page of a closing: path_of("ID", "part", "FW"). */
export function path_of(closing: string, ...words: string[]): string {
  return ["/closing", closing, ...words].map((word, i) => (i === 0 ? word : encodeURIComponent(word))).join("/");
}
