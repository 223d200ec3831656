import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

/** Apart from the other tests because its set-up takes minutes: `npm run test:desktop`. */
export default defineConfig({
  root: fileURLToPath(new URL("../..", import.meta.url)),
  test: {
    include: ["tests/desktop/**/*.test.ts"],
    testTimeout: 90_000,
    hookTimeout: 120_000,
    expect: { poll: { timeout: 15_000 } },
  },
});
