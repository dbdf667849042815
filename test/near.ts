import { expect } from "vitest";

interface Tolerance {
  readonly relative?: number;
  readonly absolute?: number;
}

/** Holds a number to an outside value: near enough by either tolerance. */
export function expectNear(got: number, expected: number, { relative = 0, absolute = 0 }: Tolerance): void {
  const most = Math.max(absolute, relative * Math.abs(expected));
  expect(Math.abs(got - expected), `${got} against ${expected}`).toBeLessThanOrEqual(most);
}
