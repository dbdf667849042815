import { makeupOf, type ResinMakeup } from "../jar/makeup.ts";
import { amountRead } from "../jar/typed-amount.ts";
import type { NotebookEntry } from "../notebook/entry.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { TypedQuantity } from "../notebook/kinds/parts.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import type { Composition } from "../solution/composition.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { strengthAt20C } from "../solution/strength.ts";

/** An amount of one thing: by weight, by volume, or both where its density is known. SI. */
export interface Stock {
  readonly kg: number | null;
  readonly m3: number | null;
}

export interface Price {
  readonly currency: string;
  /** Money for a kilogram, and for a cubic metre; null where it cannot be said. */
  readonly perKg: number | null;
  readonly perM3: number | null;
}

/** Something bought, as its entries tell it. */
export interface MaterialView {
  readonly id: string;
  readonly maker: string;
  readonly form: Body<"material-bought">["form"];
  readonly name: string;
  readonly resin: ResinMakeup | null;
  readonly composition: Composition | null;
  /** The strength as it was written down, and as a calculation takes it. */
  readonly solvent: Body<"material-bought">["solvent"] | null;
  /** Why the strength that was written could not be read. */
  readonly strengthProblem: { readonly field: string; readonly because?: string } | null;
  readonly lot: string | null;
  /** Calendar day, where it was written. */
  readonly bought: string | null;
  readonly writtenAt: string;
  readonly amount: TypedQuantity | null;
  readonly price: Price | null;
  readonly used: Stock;
  readonly left: Stock | null;
  /** It gave out before the book thought so, or more was taken than was bought. */
  readonly usedUp: boolean;
  readonly uses: readonly { readonly entry: string; readonly at: string }[];
  readonly dataSheet: string | null;
}

const none: Stock = { kg: 0, m3: 0 };

/** Weight and volume of a typed amount of this material; null for one that says neither. */
function stockOf(
  read: NotebookReader,
  quantity: TypedQuantity,
  composition: Composition | null,
): Stock | null {
  const amount = amountRead(read, quantity, "stock");
  if (amount === null) return null;
  const density = composition === null ? null : densityOfSolvent(composition, strengthAt20C).value;
  const { value } = amount.reading;
  return amount.by === "mass"
    ? { kg: value, m3: density === null ? null : value / density }
    : { kg: density === null ? null : value * density, m3: value };
}

const added = (a: number | null, b: number | null): number | null =>
  a === null || b === null ? null : a + b;
const less = (a: number | null, b: number | null): number | null => (a === null || b === null ? null : a - b);

/** Every amount of this material that an entry took from the shelf. */
function takenIn(entry: NotebookEntry, id: string): readonly TypedQuantity[] {
  const body = entry.body as Partial<Body<"batch-mixed">> & Partial<Body<"batch-thinned">>;
  const poured = [
    ...(body.resins ?? []),
    ...(body.solvents ?? []),
    ...(body.additions ?? []),
    ...(body.added ?? []),
  ];
  const taken = poured.filter((ingredient) => ingredient.material === id).map((i) => i.amount);
  if (entry.kind !== "layer-applied") return taken;
  const { from, amount } = entry.body as Body<"layer-applied">;
  const mine = from.find((source) => source.material === id);
  return mine === undefined || amount === undefined
    ? taken
    : [...taken, { ...amount.total, si: amount.total.si * (mine.share ?? 1 / from.length) }];
}

function priceOf(
  read: NotebookReader,
  entries: readonly NotebookEntry[],
  body: Body<"material-bought">,
  composition: Composition | null,
): Price | null {
  const later = entries.findLast((entry) => entry.kind === "material-priced");
  const priced = later?.body as Body<"material-priced"> | undefined;
  const price = priced?.price ?? body.price;
  const per = priced?.per ?? body.amount;
  const size = per === undefined ? null : stockOf(read, per, composition);
  if (price === undefined || size === null) return null;
  const each = (amount: number | null): number | null =>
    amount === null || amount === 0 ? null : price.amount / amount;
  return { currency: price.currency, perKg: each(size.kg), perM3: each(size.m3) };
}

/** Something on the shelf, or null when nothing live makes it. */
export const materialView = (read: NotebookReader, id: string): MaterialView | null =>
  read.derive(`material:${id}`, (r) => {
    const maker = r.making(id);
    const makeup = makeupOf(r, id);
    if (maker === undefined || makeup === null) return null;
    const body = maker.body as Body<"material-bought">;
    const entries = r.touching(id);
    const taken = entries.flatMap((entry) => takenIn(entry, id).map((amount) => ({ entry, amount })));
    const used = taken.reduce<Stock>((sum, { amount }) => {
      const stock = stockOf(r, amount, makeup.composition);
      return stock === null ? sum : { kg: added(sum.kg, stock.kg), m3: added(sum.m3, stock.m3) };
    }, none);
    const bought = body.amount === undefined ? null : stockOf(r, body.amount, makeup.composition);
    const left = bought === null ? null : { kg: less(bought.kg, used.kg), m3: less(bought.m3, used.m3) };
    const usedUp = entries.some((entry) => entry.kind === "material-used-up");
    return {
      id,
      maker: maker.id,
      form: body.form,
      name: body.name,
      resin: makeup.resin,
      composition: makeup.composition,
      solvent: body.solvent ?? null,
      strengthProblem: makeup.problem,
      lot: body.lot ?? null,
      bought: body.bought ?? null,
      writtenAt: maker.happened,
      amount: body.amount ?? null,
      price: priceOf(r, entries, body, makeup.composition),
      used,
      left: usedUp ? none : left,
      usedUp,
      uses: taken.map(({ entry }) => ({ entry: entry.id, at: entry.happened })),
      dataSheet: body.dataSheet ?? null,
    };
  });

/** Ids of everything bought, in the order in which it was written down. */
export const materialIds = (read: NotebookReader): readonly string[] =>
  read.derive("materials", (r) => [...new Set(r.ofKind("material-bought").map((entry) => r.thingOf(entry)))]);

/** A scale, a jug, a meter. */
export interface InstrumentView {
  readonly id: string;
  readonly use: Body<"instrument-described">["use"];
  readonly name: string;
  readonly standardUncertainty: TypedQuantity | null;
  readonly checks: readonly {
    readonly entry: string;
    readonly at: string;
    readonly against: string;
    readonly read: TypedQuantity;
    readonly expected: TypedQuantity;
  }[];
}

export const instrumentView = (read: NotebookReader, id: string): InstrumentView | null =>
  read.derive(`instrument:${id}`, (r) => {
    const maker = r.making(id);
    if (maker?.kind !== "instrument-described") return null;
    const body = maker.body as Body<"instrument-described">;
    return {
      id,
      use: body.use,
      name: body.name,
      standardUncertainty: body.standardUncertainty ?? null,
      checks: r
        .touching(id)
        .filter((entry) => entry.kind === "instrument-checked")
        .map((entry) => ({
          entry: entry.id,
          at: entry.happened,
          ...(entry.body as Body<"instrument-checked">),
        })),
    };
  });

export const instrumentIds = (read: NotebookReader): readonly string[] =>
  read.derive("instruments", (r) => [
    ...new Set(r.ofKind("instrument-described").map((entry) => r.thingOf(entry))),
  ]);
