// The same WebAssembly as in the browser, for tests in Node.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { Core, type CoreModule } from "../src/core";

type Make = (options: { wasmBinary: Uint8Array }) => Promise<CoreModule>;

export async function core_for_node(): Promise<Core> {
  const folder = new URL("../generated/", import.meta.url);
  const make = createRequire(import.meta.url)("../generated/core_node.cjs") as Make;
  return new Core(await make({ wasmBinary: readFileSync(new URL("core_node.wasm", folder)) }));
}
