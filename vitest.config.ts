import { defineConfig } from "vitest/config";

const shared = {
  ...{ testTimeout: 120_000, hookTimeout: 120_000 },
  ...{ setupFiles: ["tests/seed.ts", "tests/bytes.ts"], globalSetup: "tests/temporary.ts" },
  // drawings and properties make much that is short-lived: a roomier nursery is collected less often
  execArgv: ["--max-semi-space-size=64"],
};
/** Tests that put another module in the place of one of ours; all the others share their modules, which is faster. */
const mocking = [
  "tests/unit/cli/wrong-writer.test.ts",
  "tests/unit/cli/fault.test.ts",
  "tests/unit/cli/load.test.ts",
  "tests/unit/read-back-runs.test.ts",
];

export default defineConfig({
  test: {
    // vitest leaves one core to itself, which does next to nothing while tests run
    maxWorkers: "100%",
    projects: [
      { test: { ...shared, name: "mocking", include: mocking } },
      { test: { ...shared, name: "sharing", include: ["tests/**/*.test.ts"], exclude: mocking, isolate: false } },
    ],
    reporters: ["default", "./tests/closing-line.ts"],
  },
});
