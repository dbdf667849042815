/** What a reader must know beside a number that lies outside what its source covers directly. A closed set: the edges have the words. */
export const flagCodes = [
  "estimated-temperature",
  "ideal-volumes",
  "unknown-component",
  "below-freezing",
] as const;
export type FlagCode = (typeof flagCodes)[number];

/** A number, how far it may be off (one standard uncertainty, same unit), and what to know about it. */
export interface Estimate<T extends number = number> {
  readonly value: T;
  readonly standardUncertainty: number;
  readonly flags: readonly FlagCode[];
}

/** Each flag once, in the order of the closed set. */
export const flagsTogether = (...lists: readonly (readonly FlagCode[])[]): readonly FlagCode[] =>
  flagCodes.filter((code) => lists.some((list) => list.includes(code)));
