// A small runner: specs in the order in which they are written, one line each, counts at the end.

export interface Spec {
  name: string;
  run: () => Promise<void>;
}

const specs: Spec[] = [];

/** A spec; its name is a sentence. */
export function spec(name: string, run: () => Promise<void>): void {
  specs.push({ name, run });
}

export function check(holds: boolean, otherwise: string): void {
  if (!holds) throw new Error(otherwise);
}

export function check_none(faults: string[], what: string): void {
  check(faults.length === 0, `${what}:\n    ${faults.slice(0, 12).join("\n    ")}`);
}

/** Asks again until it holds; so long at most. */
export async function until(what: string, holds: () => boolean | Promise<boolean>, within_ms = 10_000): Promise<number> {
  const start = performance.now();
  for (;;) {
    if (await holds()) return performance.now() - start;
    if (performance.now() - start > within_ms) throw new Error(`not within ${within_ms} ms: ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
}

/** Those whose name the pattern fits; most need the first, which begins a closing. */
export async function run_specs(only = ""): Promise<void> {
  let passed = 0;
  let failed = 0;
  for (const { name, run } of specs) {
    if (!new RegExp(only).test(name)) continue;
    const start = performance.now();
    try {
      await run();
      passed += 1;
      console.log(`ok      ${name} (${((performance.now() - start) / 1000).toFixed(1)} s)`);
    } catch (error) {
      failed += 1;
      console.log(`FAILED  ${name}\n    ${error instanceof Error ? error.message : String(error)}`);
    }
  }
  console.log(`${passed} passed, ${failed} failed`);
  process.exitCode = failed > 0 || passed === 0 ? 1 : 0;
}
