import { describe, expect, test } from "vitest";
import { path_of, place_of, routes } from "../src/routes";

describe("the map", () => {
  test("every address of the map leads to its own page", () => {
    for (const [path, page] of routes) {
      const tried = path.replace(/:(\w+)/g, (_, name: string) => `a-${name}`);
      const place = place_of(tried);
      expect(place.page).toBe(page);
      for (const [name, value] of Object.entries(place.values)) expect(value).toBe(`a-${name}`);
    }
  });

  test("a tag with a slash, a blank and a percent sign comes back as it was", () => {
    const tag = "FW/A 07%";
    expect(place_of(path_of("0190", "part", tag))).toEqual({
      page: "part",
      values: { closing: "0190", part: tag },
    });
  });

  test("an address that is not on the map leads nowhere, a broken escape too", () => {
    expect(place_of("/boilers").page).toBe("nowhere");
    expect(place_of("/closing").page).toBe("nowhere");
    expect(place_of("/closing/a/part/%E0%A4%A").page).toBe("nowhere");
  });
});
