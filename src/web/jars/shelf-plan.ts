import type { Fitness } from "../../core/jar/fitness.ts";
import type { JarView, Stage } from "../../core/views/jar.ts";
import { jarScale } from "../drawings/jar-shape.ts";
import { capacityOf } from "./jar-look.ts";

export interface ShelvedJar {
  readonly jar: JarView;
  readonly fitness: Fitness;
}

/** A jar in its place on the drawing; `x`, `y` are the top left of its own drawing, `scale` its size. */
export interface PlacedJar extends ShelvedJar {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
  /** Its words stand beside the glass, or below the shelf where there are two on one column's shelf. */
  readonly words: "beside" | "below";
}

/** A stock with all that was poured from it, one under another. */
export interface Column {
  readonly heading: string;
  readonly x: number;
  readonly jars: readonly PlacedJar[];
}

export interface Pour {
  readonly from: PlacedJar;
  readonly to: PlacedJar;
}

export interface Shelf {
  readonly stage: Stage;
  readonly y: number;
}

/** One set of shelves with as many columns as fit across. */
export interface ShelfSet {
  readonly columns: readonly Column[];
  readonly shelves: readonly Shelf[];
  readonly pours: readonly Pour[];
  readonly width: number;
  readonly height: number;
}

const stages: readonly Stage[] = ["stock", "strained", "thinned"];
export const columnWidth = 176;
export const shelfPitch = 150;
const firstShelf = 141;
const largestScale = 0.98;
const perColumn = 2;

function rootOf(jar: JarView, known: ReadonlySet<string>): string {
  const line = [...jar.lineage].reverse().find((parent) => known.has(parent.id));
  return line?.id ?? jar.id;
}

/** The alcohol names a column; the resin where it is another than on most of them. */
function headingOf(root: JarView, usualResin: string): string {
  const resin = root.resins[0]?.name ?? root.code;
  return resin === usualResin ? (root.solvents[0]?.name ?? resin) : resin;
}

export function mostCommon(names: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? "";
}

interface Family {
  readonly root: JarView;
  readonly members: readonly ShelvedJar[];
  /** How many columns its widest shelf takes. */
  readonly span: number;
}

function familiesOf(jars: readonly ShelvedJar[]): readonly Family[] {
  const known = new Set(jars.map(({ jar }) => jar.id));
  const byRoot = new Map<string, ShelvedJar[]>();
  for (const shelved of jars) {
    const root = rootOf(shelved.jar, known);
    byRoot.set(root, [...(byRoot.get(root) ?? []), shelved]);
  }
  const families = [...byRoot].map(([id, members]) => {
    const widest = Math.max(...stages.map((stage) => members.filter((m) => m.jar.stage === stage).length));
    const root = members.find((m) => m.jar.id === id) ?? (members[0] as ShelvedJar);
    return { root: root.jar, members, span: Math.ceil(widest / perColumn) };
  });
  const past = (family: Family): number =>
    family.members.every((m) => m.fitness.state === "discard") ? 1 : 0;
  return families.sort((a, b) => past(a) - past(b));
}

/** Families side by side until the row is full. */
function rowsOf(families: readonly Family[], across: number): readonly (readonly Family[])[] {
  const rows: Family[][] = [];
  let room = 0;
  for (const family of families) {
    if (room < family.span) {
      rows.push([]);
      room = across;
    }
    rows.at(-1)?.push(family);
    room -= family.span;
  }
  return rows;
}

function placedOn(
  shelf: Shelf,
  jars: readonly ShelvedJar[],
  x: number,
  largest: number,
): readonly PlacedJar[] {
  const below = shelf.stage === "thinned";
  return jars.map((shelved, i) => {
    const scale = largestScale * Math.max(0.45, jarScale(capacityOf(shelved.jar), largest));
    const pitch = below ? 82 : columnWidth / perColumn;
    return {
      ...shelved,
      x: x + i * pitch,
      y: shelf.y - 2 - 118 * scale,
      scale,
      words: below || jars.length > 1 ? ("below" as const) : ("beside" as const),
    };
  });
}

function shelfSet(row: readonly Family[], left: number, usualResin: string, largest: number): ShelfSet {
  const used = stages.filter((stage) =>
    row.some((family) => family.members.some((m) => m.jar.stage === stage)),
  );
  let y = firstShelf;
  const shelves = used.map((stage, i) => {
    const wordsBelow = row.some((f) => f.members.filter((m) => m.jar.stage === used[i - 1]).length > 1);
    if (i > 0) y += shelfPitch + (wordsBelow ? 44 : 0);
    return { stage, y };
  });
  let x = left;
  const columns = row.map((family) => {
    const column = {
      heading: headingOf(family.root, usualResin),
      x,
      jars: shelves.flatMap((shelf) =>
        placedOn(
          shelf,
          family.members.filter((m) => m.jar.stage === shelf.stage),
          x,
          largest,
        ),
      ),
    };
    x += family.span * columnWidth;
    return column;
  });
  const all = columns.flatMap((column) => column.jars);
  const pours = all.flatMap((to) =>
    to.jar.parents.flatMap((parent) => {
      const from = all.find((placed) => placed.jar.id === parent);
      const down = from !== undefined && stages.indexOf(from.jar.stage) < stages.indexOf(to.jar.stage);
      return down ? [{ from, to }] : [];
    }),
  );
  return { columns, shelves, pours, width: x, height: y + 52 };
}

/**
 * Jars on their shelves: a column a stock, a shelf a stage, as many columns across as there is room for.
 *
 * @param jars    every jar to be shown with its state
 * @param across  columns side by side
 * @param left    room at the left for the shelves' names [px]
 */
export function shelvesOf(jars: readonly ShelvedJar[], across: number, left: number): readonly ShelfSet[] {
  const usual = mostCommon(jars.flatMap(({ jar }) => jar.resins[0]?.name ?? []));
  const largest = Math.max(...jars.map(({ jar }) => capacityOf(jar)), 1e-9);
  return rowsOf(familiesOf(jars), across).map((row) => shelfSet(row, left, usual, largest));
}
