// Core on the tablet answers as the program does, to the byte: tests/tablet/answers.txt was written by
// the native build (core/wire/tablet_test.cc).
import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { Refused } from "../src/api/client";
import { Core } from "../src/core";
import { core_for_node } from "./core_for_node";

const root = new URL("../../", import.meta.url);
const read = (name: string): string => readFileSync(new URL(name, root), "utf8");

interface Question {
  name: string;
  question: string;
  request: unknown;
}

describe("core on the tablet", () => {
  let core: Core;
  beforeAll(async () => {
    core = await core_for_node();
  });

  test("answers every kept question as the native build does, to the byte", () => {
    const questions = JSON.parse(read("tests/tablet/questions.json")) as Question[];
    expect(questions.length).toBeGreaterThanOrEqual(20);
    const told = questions.map(({ name, question, request }) => `${name}\n${core.answer(question, JSON.stringify(request))}\n`);
    expect(told.join("")).toBe(read("tests/tablet/answers.txt"));
  });

  test("refuses in its own words", () => {
    expect(() => core.quantity("gauge_pressure", "45 bar abs", "si")).toThrow(Refused);
    expect(() => core.quantity("gauge_pressure", "45 bar abs", "si")).toThrow(/absolute pressure/);
  });

  test("keeps letters beyond ASCII", () => {
    const said = JSON.parse(core.answer("quantity", JSON.stringify({ kind: "gauge_pressure", text: "Zażółć" }))) as { message: string };
    expect(said.message).toContain("Zażółć");
  });

  test("makes the bytes that the record's vectors hold", () => {
    interface Vector {
      kind: string;
      body: string;
      bytes: string;
    }
    const vectors = (JSON.parse(read("tests/record_vectors/facts.json")) as { facts: Vector[] }).facts.filter((one) => one.kind === "closure.opened");
    expect(vectors.length).toBe(2);
    for (const vector of vectors) {
      const fields: unknown = JSON.parse(Buffer.from(vector.body, "hex").toString());
      const made = JSON.parse(core.answer("fact", JSON.stringify({ ...vector, fields }))) as { bytes: string; header_size: number };
      expect(made.bytes.slice(0, 2 * made.header_size)).toBe(vector.bytes.slice(0, 2 * made.header_size));
      expect(made.header_size).toBe(vector.bytes.length / 2 - vector.body.length / 2 - 4);
    }
  });
});
