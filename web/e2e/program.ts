// The real program, served from a store of its own for one run of the tests.
import { execFileSync, spawn, type ChildProcess } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../../", import.meta.url));

export interface Program {
  address: string;
  enrol_link: string;
  /** What it wrote to its request log. */
  log(): string;
  stop(): Promise<void>;
  /** Stops it, appends facts to its store as somebody at the machine would, and starts it again. */
  append(facts: unknown[]): Promise<void>;
}

// Where the pages lie, if not in web/dist.
const pages = process.env["PAGES"] ?? join(root, "web/dist");
const binary = process.env["STEAMWORTHY"] ?? join(root, "build/release/steamworthy");

export async function start_program(): Promise<Program> {
  const folder = mkdtempSync(join(tmpdir(), "steamworthy-served-"));
  const store = join(folder, "plant.steamworthy");
  let running = await serve(store, "0", true);
  const address = new URL(running.link).origin;

  async function stop(): Promise<void> {
    const ended = new Promise((resolve) => running.child.once("exit", resolve));
    running.child.kill("SIGTERM");
    await ended;
  }
  return {
    address,
    enrol_link: running.link,
    log: () => running.logged(),
    stop: async () => {
      await stop();
      rmSync(folder, { recursive: true, force: true });
    },
    append: async (facts) => {
      await stop();
      const lines = join(folder, "facts.jsonl");
      writeFileSync(lines, facts.map((fact) => `${JSON.stringify(fact)}\n`).join(""));
      execFileSync(binary, ["log", "append", store, lines], { stdio: "pipe" });
      // On the same port: what a browser keeps belongs to the address with its port.
      running = await serve(store, new URL(address).port, false);
    },
  };
}

interface Running {
  child: ChildProcess;
  /** The one-time link of a new plant; otherwise the address. */
  link: string;
  logged: () => string;
}

async function serve(store: string, port: string, is_new: boolean): Promise<Running> {
  const child = spawn(
    binary,
    ["serve", store, ...(is_new ? ["--new"] : []), "--port", port, "--boiler", join(root, "examples/watertube.toml"), "--pages", pages],
    { stdio: ["ignore", "pipe", "pipe"] },
  );
  let said = "";
  let logged = "";
  child.stderr.on("data", (bytes: Buffer) => (logged += bytes.toString()));
  const wanted = is_new ? /https?:\/\/\S+\/enrol#\w+/ : /https?:\/\/\S+/;
  const link = await new Promise<string>((resolve, reject) => {
    const too_long = setTimeout(() => reject(new Error(`the program did not start: ${said}${logged}`)), 30_000);
    child.stdout.on("data", (bytes: Buffer) => {
      said += bytes.toString();
      const found = wanted.exec(said);
      if (found !== null) {
        clearTimeout(too_long);
        resolve(found[0]);
      }
    });
    child.on("exit", (code) => {
      clearTimeout(too_long);
      reject(new Error(`the program ended with ${String(code)}: ${said}${logged}`));
    });
  });
  return { child, link, logged: () => logged };
}
