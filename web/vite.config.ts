import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vitest/config";

export default defineConfig(({ mode }) => ({
  plugins: [svelte()],
  // In Vitest Svelte's own browser build is wanted, with its runes.
  resolve: mode === "test" ? { conditions: ["browser"] } : {},
  build: {
    outDir: "dist",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0, // the pages' Content-Security-Policy takes nothing inline
    modulePreload: { polyfill: false },
    sourcemap: false,
  },
  test: { include: ["test/**/*_test.ts"], environment: "node" },
}));
