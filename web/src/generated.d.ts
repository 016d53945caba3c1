// What tools/wasm.sh makes.
declare module "*/generated/core.mjs" {
  import type { CoreModule } from "./core";
  const make: (options: { locateFile: () => string }) => Promise<CoreModule>;
  export default make;
}
declare module "*/generated/core_node.cjs" {
  import type { CoreModule } from "./core";
  const make: (options: { wasmBinary: Uint8Array }) => Promise<CoreModule>;
  export default make;
}
