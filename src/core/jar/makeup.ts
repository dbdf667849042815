import { DomainError } from "../domain-error.ts";
import type { NotebookEntry } from "../notebook/entry.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { solventFromInput } from "../registry/solution-input.ts";
import { type SolventInput, solvent as solventSchema } from "../registry/solvent.ts";
import type { Composition } from "../solution/composition.ts";

/** A resin as the shelf knows it, mass fractions of the flakes as weighed; null where the seller did not say. */
export interface ResinMakeup {
  readonly name: string;
  readonly grade: string;
  readonly wax: number | null;
  readonly moisture: number | null;
  readonly insoluble: number | null;
}

export interface Makeup {
  readonly form: Body<"material-bought">["form"];
  readonly name: string;
  readonly resin: ResinMakeup | null;
  /** Of a solvent, as mass fractions; null when what is written on it cannot be read as a strength. */
  readonly composition: Composition | null;
  /** What is wrong with the strength that was written. */
  readonly problem: DomainError["detail"] | null;
}

/** A strength as it was written down, read as the calculations read theirs. */
export function compositionOf(
  given: unknown,
): { composition: Composition } | { problem: DomainError["detail"] } {
  const read = solventSchema.safeParse(given);
  if (!read.success) {
    const path = read.error.issues[0]?.path.join(".") ?? "";
    return {
      problem: { code: "wrong-type", field: path === "" ? "solvent" : `solvent.${path}`, value: given },
    };
  }
  try {
    return { composition: solventFromInput(read.data as SolventInput) };
  } catch (error) {
    if (error instanceof DomainError) return { problem: error.detail };
    throw error;
  }
}

function makeupFrom(entry: NotebookEntry | undefined): Makeup | null {
  if (entry?.kind !== "material-bought") return null;
  const body = entry.body as Body<"material-bought">;
  const solvent = body.solvent === undefined ? undefined : compositionOf(body.solvent);
  return {
    form: body.form,
    name: body.name,
    resin:
      body.resin === undefined && body.form !== "resin"
        ? null
        : {
            name: body.name,
            grade: body.resin?.grade ?? body.name,
            wax: body.resin?.waxMassFraction ?? null,
            moisture: body.resin?.moistureMassFraction ?? null,
            insoluble: body.resin?.insolubleMassFraction ?? null,
          },
    composition: solvent !== undefined && "composition" in solvent ? solvent.composition : null,
    problem: solvent !== undefined && "problem" in solvent ? solvent.problem : null,
  };
}

/** What a material on the shelf is made of, or null when no live entry makes it. */
export const makeupOf = (read: NotebookReader, material: string): Makeup | null =>
  read.derive(`makeup:${material}`, (r) => makeupFrom(r.making(material)));

/**
 * What was written of a material that has been struck off the shelf since: for its name and its cautions, which are
 * kept, and never for a reckoning. Null for one that stands there, or never did.
 */
export const struckMakeup = (read: NotebookReader, material: string): Makeup | null =>
  read.derive(`struck-makeup:${material}`, (r) =>
    r.making(material) === undefined ? makeupFrom(r.entry(material)) : null,
  );
