import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { Client, Refused } from "../src/api/client";
import { speaks } from "../src/api/speaks";

function answering(status: number, body: string): { client: Client; asked: { path: string; options?: RequestInit }[] } {
  const asked: { path: string; options?: RequestInit }[] = [];
  const client = new Client((path, options) => {
    asked.push({ path, options });
    return Promise.resolve(new Response(body, { status, statusText: "as it is" }));
  });
  return { client, asked };
}

async function refusal(call: Promise<unknown>): Promise<Refused> {
  const caught: unknown = await call.then(
    () => null,
    (error: unknown) => error,
  );
  if (!(caught instanceof Refused)) throw new Error("was not refused");
  return caught;
}

describe("the client", () => {
  test("asks in the units and language that were set", async () => {
    const { client, asked } = answering(200, "{}");
    client.speak("us", "en");
    await client.get("/api/closings/x/facts", { after: 7, limit: undefined });
    expect(asked[0]?.path).toBe("/api/closings/x/facts?after=7&units=us&language=en");
  });

  test("hands through code, message, problems and what is outstanding", async () => {
    const said = {
      code: "service.not_cleared",
      message: "Not clear to fill.",
      problems: [{ code: "a.b", message: "wrong" }],
      outstanding: [{ check: "s4_vents", reason: "A vent is shut." }],
    };
    const { client } = answering(409, JSON.stringify(said));
    const caught = await refusal(client.post("/api/closings/x/clearances", {}));
    expect(caught.status).toBe(409);
    expect(caught.code).toBe("service.not_cleared");
    expect(caught.message).toBe("Not clear to fill.");
    expect(caught.problems).toEqual(said.problems);
    expect(caught.outstanding).toEqual(said.outstanding);
    expect(caught.unreachable).toBe(false);
  });

  test("tells an answer without words by its status", async () => {
    const { client } = answering(500, "<html>");
    const caught = await refusal(client.get("/api/me"));
    expect(caught.code).toBe("web.no_words");
    expect(caught.message).toBe("500 as it is");
  });

  test("a server that cannot be reached may be asked again, and waiting ends", async () => {
    let open = 0;
    const client = new Client(() => Promise.reject(new TypeError("no route")), {
      began: () => (open += 1),
      ended: () => (open -= 1),
    });
    const caught = await refusal(client.get("/api/me"));
    expect(caught.unreachable).toBe(true);
    expect(open).toBe(0);
  });

  test("says units and language to just those calls that take them, as the API is described", () => {
    interface Call {
      parameters?: { name: string }[];
    }
    const described = JSON.parse(readFileSync(new URL("../../docs/formats/openapi.json", import.meta.url), "utf8")) as {
      paths: Record<string, Record<string, Call>>;
    };
    let calls = 0;
    for (const [path, methods] of Object.entries(described.paths)) {
      for (const [method, call] of Object.entries(methods)) {
        if (method === "parameters") continue;
        const takes = call.parameters?.some((parameter) => parameter.name === "units") ?? false;
        expect([method, path, speaks(method.toUpperCase(), path.replace(/[{].*?[}]/g, "x"))]).toEqual([method, path, takes]);
        calls += 1;
      }
    }
    expect(calls).toBeGreaterThan(30);
  });
});
