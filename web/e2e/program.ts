// The real program, served from a store of its own for one run of the tests.
import { spawn, type ChildProcess } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
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
}

// Where the pages lie, if not in web/dist.
const pages = process.env["PAGES"] ?? join(root, "web/dist");
const binary = process.env["STEAMWORTHY"] ?? join(root, "build/release/steamworthy");

export async function start_program(): Promise<Program> {
  const folder = mkdtempSync(join(tmpdir(), "steamworthy-served-"));
  const store = join(folder, "plant.steamworthy");
  const running = await serve(store);
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
  };
}

interface Running {
  child: ChildProcess;
  /** The one-time link of a new plant. */
  link: string;
  logged: () => string;
}

async function serve(store: string): Promise<Running> {
  const child = spawn(
    binary,
    ["serve", store, "--new", "--port", "0", "--boiler", join(root, "examples/watertube.toml"), "--pages", pages],
    { stdio: ["ignore", "pipe", "pipe"] },
  );
  let said = "";
  let logged = "";
  child.stderr.on("data", (bytes: Buffer) => (logged += bytes.toString()));
  const link = await new Promise<string>((resolve, reject) => {
    const too_long = setTimeout(() => reject(new Error(`the program did not start: ${said}${logged}`)), 30_000);
    child.stdout.on("data", (bytes: Buffer) => {
      said += bytes.toString();
      const found = /https?:\/\/\S+\/enrol#\w+/.exec(said);
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
