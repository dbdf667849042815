import { type DomainDetail, DomainError } from "../src/core/domain-error.ts";

/** What a formula says when it refuses. */
export function refusalOf(act: () => unknown): DomainDetail {
  try {
    act();
  } catch (error) {
    if (error instanceof DomainError) return error.detail;
    throw error;
  }
  throw new Error("It was not refused.");
}
