import {
  holds,
  pairsOf,
  type TolerancePair,
  type ToleranceTable,
  toleranceFor,
  toleranceText,
} from "./tolerance.ts";

/** One quantity as compared. `ok` is null where it is shown and not compared. */
export interface Quantity {
  readonly quantity: string;
  readonly expected: unknown;
  readonly got: unknown;
  readonly tolerance: string;
  readonly residual: number | null;
  readonly ok: boolean | null;
}

interface Place {
  readonly name: string;
  /** The object keys on the way, outermost first: where a tolerance is looked up. */
  readonly keys: readonly string[];
  /** The nearest expected standard uncertainty. */
  readonly u: number | undefined;
  readonly tol: ToleranceTable;
}

const labels = ["term", "pair", "group", "level", "left", "name"] as const;

const isObject = (x: unknown): x is Record<string, unknown> =>
  typeof x === "object" && x !== null && !Array.isArray(x);
const sameText = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Compares what was computed with what is expected, key by key; more keys than expected may have been computed. */
export const compare = (
  expected: Readonly<Record<string, unknown>>,
  got: unknown,
  tol: ToleranceTable,
): readonly Quantity[] => compareObject({ name: "", keys: [], u: undefined, tol }, expected, got);

function quantity(
  place: Place,
  expected: unknown,
  got: unknown,
  tolerance: string,
  ok: boolean | null,
): Quantity[] {
  const residual = typeof expected === "number" && typeof got === "number" ? got - expected : null;
  return [{ quantity: place.name, expected, got, tolerance, residual, ok }];
}

function compareValue(place: Place, e: unknown, g: unknown): Quantity[] {
  const pairs = pairsOf(toleranceFor(place.tol, place.keys));
  const has = (form: TolerancePair["form"]) => pairs?.some((p) => p.form === form) === true;
  if (has("any")) return quantity(place, e, g, "any", null);
  if (e === null) return quantity(place, e, g, "absent", g === undefined || g === null);
  if (has("inside")) return quantity(place, e, g, "inside", isInside(e, g));
  if (has("includes")) return quantity(place, e, g, "includes", includes(e, g));
  if (Array.isArray(e)) return compareList(place, e, g);
  if (isObject(e)) return compareObject(place, e, g);
  if (typeof e === "number") return quantity(place, e, g, toleranceText(pairs), isNear(pairs, e, g, place.u));
  return quantity(place, e, g, "the same", e === g);
}

function compareObject(place: Place, e: Readonly<Record<string, unknown>>, g: unknown): Quantity[] {
  if (!isObject(g)) return quantity(place, e, g, "an object", false);
  const u = typeof e.u === "number" ? e.u : place.u;
  return Object.entries(e).flatMap(([key, value]) => {
    const name = place.name === "" ? key : `${place.name}.${key}`;
    const here = { ...place, name, keys: [...place.keys, key], u };
    return compareValue(here, value, Object.hasOwn(g, key) ? g[key] : undefined);
  });
}

function compareList(place: Place, e: readonly unknown[], g: unknown): Quantity[] {
  if (!Array.isArray(g)) return quantity(place, e, g, "a list", false);
  if (e.length === 0) return quantity(place, e, g, "an empty list", g.length === 0);
  if (e.every((x) => typeof x === "string"))
    return quantity(place, e, g, "the same set", includes(e, g) && includes(g, e));
  if (e.every(isObject)) {
    const label = labels.find((key) => e.every((x) => Object.hasOwn(x, key)));
    if (label !== undefined) return compareLabelled(place, label, e, g);
  }
  if (e.length !== g.length) return quantity(place, e, g, `a list of ${e.length}`, false);
  return e.flatMap((x, i) => compareValue({ ...place, name: `${place.name}[${i}]` }, x, g[i]));
}

/** Each expected element against the first computed one of the same label that is left; none may be left over. */
function compareLabelled(
  place: Place,
  label: string,
  e: readonly Record<string, unknown>[],
  g: readonly unknown[],
): Quantity[] {
  const left = new Map(g.entries());
  const found = e.flatMap((x) => {
    const here = { ...place, name: `${place.name}[${String(x[label])}]` };
    const match = [...left].find(([, y]) => isObject(y) && isSameLabel(x[label], y[label]));
    if (match === undefined) return quantity(here, x, undefined, `one with this ${label}`, false);
    left.delete(match[0]);
    const { [label]: _, ...rest } = x;
    return compareObject(here, rest, match[1]);
  });
  const more = [...left.values()].flatMap((y) =>
    quantity({ ...place, name: `${place.name}[+]` }, undefined, y, "no more of them", false),
  );
  return [...found, ...more];
}

const isNear = (
  pairs: readonly TolerancePair[] | undefined,
  expected: number,
  got: unknown,
  u: number | undefined,
): boolean =>
  pairs !== undefined &&
  typeof got === "number" &&
  Number.isFinite(got) &&
  pairs.some((p) => holds(p, expected, got, u));

function isInside(expected: unknown, got: unknown): boolean {
  if (!Array.isArray(expected) || typeof got !== "number") return false;
  const [low, high]: unknown[] = expected;
  return typeof low === "number" && typeof high === "number" && got >= low && got <= high;
}

const includes = (expected: unknown, got: unknown): boolean =>
  Array.isArray(expected) && Array.isArray(got) && expected.every((e) => got.some((g) => sameText(e, g)));

const isSameLabel = (a: unknown, b: unknown): boolean =>
  String(a) === String(b) ||
  (typeof a === "number" && typeof b === "number" && Math.abs(a - b) <= 1e-9 * Math.abs(a));
