import fc from "fast-check";
import type { KeptEntry, NotebookEntry } from "../../src/core/notebook/entry.ts";
import type { Notebook } from "../../src/core/notebook/notebook.ts";
import { readKeptEntry } from "../../src/core/notebook/parse-entry.ts";

export const book = "01a00000-0000-7000-8000-000000000000";
const poolSize = 12;

export const idNumbered = (i: number): string =>
  `01a00000-0000-7000-8000-0000000001${String(i).padStart(2, "0")}`;
const deviceNumbered = (i: number): string =>
  `01a00000-0000-7000-8000-0000000002${String(i).padStart(2, "0")}`;

export function keptOf(fields: Partial<NotebookEntry> & { readonly id: string }): KeptEntry {
  const entry = {
    notebook: book,
    kind: "note",
    schema: 1,
    device: deviceNumbered(1),
    seq: 1,
    by: null,
    happened: "2026-10-05T18:30:00Z",
    happenedKnownTo: "minute",
    zone: "Europe/Berlin",
    recorded: "2026-10-05T18:30:00Z",
    about: [],
    strikes: [],
    body: fields.kind === undefined || fields.kind === "note" ? { text: fields.id } : {},
    ...fields,
  };
  const read = readKeptEntry(JSON.stringify(entry));
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
}

const someIds = fc.uniqueArray(fc.integer({ min: 0, max: poolSize - 1 }).map(idNumbered), { maxLength: 3 });
const moments = [
  "2025-10-05T18:30:00Z",
  "2026-10-05T18:30:00Z",
  "2026-10-05T18:30:00.5Z",
  "2026-10-05T18:31:00.000Z",
];

/** Kinds that are known, unknown, of a higher schema, and of a body that its kind does not promise. */
const bodies = fc.oneof(
  { weight: 4, arbitrary: fc.constant({ kind: "note", schema: 1, body: { text: "seen" } }) },
  {
    weight: 2,
    arbitrary: fc.constant({ kind: "board-cut", schema: 1, body: { name: "B", wood: "ash", plank: "P" } }),
  },
  fc.constant({ kind: "struck", schema: 1, body: {} }),
  fc.constant({ kind: "from-next-year", schema: 7, body: { any: [1, { thing: null }] } }),
  fc.constant({ kind: "note", schema: 2, body: { text: 5 } }),
  fc.constant({ kind: "note", schema: 1, body: { text: 5 } }),
  fc.record({
    kind: fc.constant("withdrawn"),
    schema: fc.constant(1),
    body: someIds.filter((ids) => ids.length > 0).map((entries) => ({ entries })),
  }),
);

/**
 * Up to a dozen entries that are about and strike each other at random: rings, missing ones, strikes of strikes, wrong
 * clocks. `strikes` may be left out, for properties of the order alone.
 */
export const someEntries = ({ withStrikes = true } = {}): fc.Arbitrary<KeptEntry[]> =>
  fc
    .uniqueArray(fc.integer({ min: 0, max: poolSize - 1 }), { minLength: 1, maxLength: poolSize })
    .chain((numbers) =>
      fc.tuple(
        ...numbers.map((i) =>
          fc
            .tuple(
              bodies,
              someIds,
              withStrikes ? someIds : fc.constant<string[]>([]),
              fc.constantFrom(...moments),
            )
            .map(([what, about, strikes, happened]) =>
              keptOf({
                id: idNumbered(i),
                ...what,
                about,
                strikes,
                happened,
                device: deviceNumbered(i % 2),
                seq: i + 1,
              }),
            ),
        ),
      ),
    );

/** All that a notebook says, read afresh. */
export function snapshot(notebook: Notebook): unknown {
  const ids = Array.from({ length: poolSize }, (_, i) => idNumbered(i));
  const kinds = ["note", "board-cut", "struck", "from-next-year", "withdrawn"];
  const idsOf = (entries: readonly NotebookEntry[]) => entries.map((entry) => entry.id);
  return {
    ordered: notebook.ordered().map(({ id }) => notebook.kept(id)?.text),
    live: ids.filter((id) => notebook.isLive(id)),
    making: ids.map((id) => notebook.making(id)?.id),
    things: notebook.ordered().map((entry) => notebook.thingOf(entry)),
    touching: ids.map((id) => idsOf(notebook.touching(id))),
    struckBy: ids.map((id) => idsOf(notebook.struckBy(id))),
    ofKind: kinds.map((kind) => idsOf(notebook.ofKind(kind))),
    reports: [...notebook.reports].map((report) => JSON.stringify(report)).sort(),
  };
}
