import { DomainError } from "../domain-error.ts";
import type { WriteDraft } from "../notebook/write-entry.ts";
import { cut, poundsPerUsGallonFromCut } from "../units.ts";
import { type ImportPlan, type PlannedJar, sameName } from "./plan-import.ts";

/** Noon is the same day in nearly every zone; the hour is not known. */
const happenedOn = (day: string | null) =>
  day === null
    ? { happenedKnownTo: "unknown" as const }
    : { happened: `${day}T12:00:00Z`, happenedKnownTo: "day" as const };

/** Each material of a name once, off the shelf where it stands there. */
class Materials {
  readonly #bought = new Map<string, string>();
  readonly #write: WriteDraft;
  constructor(write: WriteDraft) {
    this.#write = write;
  }

  #once(key: string, write: () => string): string {
    const id = this.#bought.get(key) ?? write();
    this.#bought.set(key, id);
    return id;
  }

  resin = (jar: PlannedJar): string =>
    jar.resinOnShelf ??
    this.#once(`resin ${sameName(jar.row.resin)}`, () =>
      this.#write({
        kind: "material-bought",
        remembered: true,
        happenedKnownTo: "unknown",
        body: { form: "resin", name: jar.row.resin, resin: { grade: jar.row.resin } },
      }),
    );

  solvent = (jar: PlannedJar): string =>
    jar.solventOnShelf ??
    this.#once(`solvent ${sameName(jar.row.solvent.name)}`, () =>
      this.#write({
        kind: "material-bought",
        remembered: true,
        happenedKnownTo: "unknown",
        body: { form: "solvent", name: jar.row.solvent.name, solvent: { ...jar.row.solvent.liquid } },
      }),
    );
}

function writeJar(jar: PlannedJar, materials: Materials, write: WriteDraft): string {
  const { row, amounts } = jar;
  const [resin, solvent] = [materials.resin(jar), materials.solvent(jar)];
  const vessel =
    row.vessel === ""
      ? undefined
      : write({
          kind: "vessel-described",
          remembered: true,
          ...happenedOn(row.mixed),
          body: { name: row.vessel },
        });
  const aimed = row.amounts.cut?.si;
  const id = write({
    kind: "batch-mixed",
    remembered: true,
    ...happenedOn(row.mixed),
    about: [resin, solvent, ...(vessel === undefined ? [] : [vessel])],
    body: {
      code: row.code,
      ...(vessel === undefined ? {} : { vessel }),
      resins: [{ material: resin, amount: amounts.resin }],
      solvents: [{ material: solvent, amount: amounts.solvent }],
      ...(aimed === undefined
        ? {}
        : { aimedCutLbPerGal: Number(poundsPerUsGallonFromCut(cut(aimed)).toPrecision(6)) }),
      /** As the list had it, so that nothing of it is lost. */
      listed: { row: row.row, cells: row.cells },
    },
  });
  if (jar.usedKg > 0) writeUse(jar, id, write);
  if (row.note !== "") write({ kind: "note", remembered: true, about: [id], body: { text: row.note } });
  return id;
}

function writeUse(jar: PlannedJar, id: string, write: WriteDraft): void {
  const grams = Number((jar.usedKg * 1e3).toPrecision(6));
  write({
    kind: "batch-decanted",
    remembered: true,
    happenedKnownTo: "unknown",
    about: [id],
    body: {
      amount: { typed: `${grams} g`, unit: "g", si: grams / 1e3, workedOut: true },
      to: "used before this book",
    },
  });
}

/**
 * Writes everything that a plan holds, or nothing: a plan with problems is refused.
 *
 * @param plan   of a dry run
 * @param write  writes one entry; what is made is written before what it is made into
 * @returns      the jars' ids, in the order of their rows
 * @throws DomainError `contradiction` for a plan with problems
 */
export function writeImport(plan: ImportPlan, write: WriteDraft): readonly string[] {
  const [problem] = plan.problems;
  if (problem !== undefined)
    throw new DomainError({
      code: "contradiction",
      field: problem.column,
      value: problem.value,
      because: `${problem.says} Nothing is written.`,
    });
  const materials = new Materials(write);
  return plan.jars.map((jar) => writeJar(jar, materials, write));
}
