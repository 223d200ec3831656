import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

export default defineConfig({
  root: fileURLToPath(new URL("..", import.meta.url)),
  test: {
    include: ["tests/**/*.test.ts"],
    // Modules are read once a worker, not once a file: half of the time went into reading them again.
    isolate: false,
    // One worker a core: by itself it would leave a core idle, which on a machine with two is half of it.
    maxWorkers: "100%",
    exclude: ["tests/desktop/**"],
    testTimeout: 60_000,
    hookTimeout: 90_000,
    expect: { poll: { timeout: 15_000 } },
  },
});
