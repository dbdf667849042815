import type { Component } from "../solution/component.ts";
import type { Composition } from "../solution/composition.ts";
import type { SolventInput } from "./solvent.ts";

/** A liquid of known make-up as the calculations take it: each component by its share of the mass. */
export const solventOf = (composition: Composition): SolventInput => ({
  parts: (Object.entries(composition) as [Component, number][]).map(([alcohol, massShare]) => ({
    alcohol,
    massShare,
  })),
});
