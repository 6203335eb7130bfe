/** Bytes are compared by the platform: the test runner's own comparison asks for every single one of them by name. */
import { expect } from "vitest";

expect.addEqualityTesters([
  (a: unknown, b: unknown) =>
    a instanceof Uint8Array && b instanceof Uint8Array ? Buffer.compare(a, b) === 0 : undefined,
]);
