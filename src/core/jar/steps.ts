import type { NotebookEntry } from "../notebook/entry.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { TypedQuantity } from "../notebook/kinds/parts.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { combined, massOf, only, solidsOf } from "./amounts.ts";
import { afterDryingDown } from "./drying-down.ts";
import { cannotUse, type JarFold, stepped } from "./jar-fold.ts";
import { makesBatch, putIn } from "./making.ts";
import { afterPouring, pourFrom } from "./pouring.ts";
import { nothing, propagated, type Reckoned } from "./reckoning.ts";
import { type AmountRead, amountRead, isGuessed } from "./typed-amount.ts";
import { afterWeighing, type Glass } from "./weighing.ts";

/** What a step may need to know beside the jar as it stands. */
export interface StepContext {
  readonly read: NotebookReader;
  readonly jar: string;
  readonly glass: Glass | null;
  /** Its wax has settled: what is poured off leaves it behind. */
  readonly waxSettled: boolean;
  /** A trial whose key is shut may have drawn on it. */
  readonly mayHaveBeenUsed: boolean;
}

type StepOf = (fold: JarFold, entry: NotebookEntry, context: StepContext) => JarFold;

const amountOf = (
  { read }: StepContext,
  entry: NotebookEntry,
  quantity: TypedQuantity,
  name = "amount",
  guessed = false,
): AmountRead | null => amountRead(read, quantity, `${entry.id}.${name}`, guessed);

/** A pour of what is written, all of it when nothing is. */
function pourOut(
  fold: JarFold,
  entry: NotebookEntry,
  context: StepContext,
  quantity: TypedQuantity | undefined,
): JarFold {
  if (quantity === undefined) return afterPouring(fold, entry, "all");
  const amount = amountOf(context, entry, quantity);
  return amount === null ? cannotUse(fold, entry, "not-an-amount") : afterPouring(fold, entry, amount);
}

/** What may stay at the bottom: dirt always, wax when it has settled. */
const leftBehind = (context: StepContext): readonly ("wax" | "insoluble")[] =>
  context.waxSettled ? ["insoluble", "wax"] : ["insoluble"];

/** How much passed the filter: as it was measured, or all but the sludge. */
function filteredAmount(
  fold: JarFold,
  entry: NotebookEntry,
  context: StepContext,
): AmountRead | "all" | "not-an-amount" {
  const body = entry.body as Body<"batch-filtered">;
  if (body.kept !== undefined) return amountOf(context, entry, body.kept, "kept") ?? "not-an-amount";
  if (body.sludge === undefined) return "all";
  const sludge = amountOf(context, entry, body.sludge, "sludge");
  if (sludge === null || sludge.by === "volume") return "not-an-amount";
  const passed = massOf(fold.now.value) - sludge.reading.value;
  return { by: "mass", reading: { ...sludge.reading, value: Math.max(0, passed) } };
}

const filtered: StepOf = (fold, entry, context) => {
  const amount = filteredAmount(fold, entry, context);
  if (amount === "not-an-amount") return cannotUse(fold, entry, amount);
  if (makesBatch(entry)) return afterPouring(fold, entry, amount, leftBehind(context));
  return stepped(fold, entry, pourFrom(fold.now, amount, leftBehind(context)).poured);
};

const thinned: StepOf = (fold, entry, context) => {
  const body = entry.body as Body<"batch-thinned">;
  if (!makesBatch(entry)) return putIn(context.read, fold, entry, { solvents: body.added });
  if (body.taken === undefined) return cannotUse(fold, entry, "amount-not-written");
  return pourOut(fold, entry, context, body.taken);
};

const blended: StepOf = (fold, entry, context) => {
  const part = (entry.body as Body<"batch-blended">).parts.find((p) => p.batch === context.jar);
  return part === undefined ? fold : pourOut(fold, entry, context, part.amount);
};

const toppedUp: StepOf = (fold, entry, context) => {
  const before = massOf(only(fold.now.value, "liquids"));
  const { added: solvents, resins = [] } = entry.body as Body<"batch-topped-up">;
  const next = putIn(context.read, fold, entry, { solvents, resins });
  const added = massOf(only(next.now.value, "liquids")) - before;
  if (next.lost === null) return next;
  const still = next.lost.kg - added;
  return {
    ...next,
    weighed: null,
    lost: still > next.lost.standardUncertainty ? { ...next.lost, kg: still } : null,
  };
};

const pouredBack: StepOf = (fold, entry, context) => {
  const { amount: quantity } = entry.body as Body<"leftovers-poured-back">;
  if (quantity === undefined) return cannotUse(fold, entry, "amount-not-written");
  const amount = amountOf(context, entry, quantity);
  if (amount === null) return cannotUse(fold, entry, "not-an-amount");
  const { poured } = pourFrom(fold.now, amount);
  const now = propagated([fold.now, poured], [], ([all = {}, back = {}]) => combined([1, all], [1, back]));
  return stepped(fold, entry, now);
};

/** The layer's amount in this jar's share, or null when no amount was written. */
export function layerAmount(context: StepContext, entry: NotebookEntry, share: number): AmountRead | null {
  const { amount } = entry.body as Body<"layer-applied">;
  if (amount === undefined || amount.by === "wet film") return null;
  const read = amountOf(context, entry, amount.total, "total", isGuessed(amount.by));
  if (read === null) return null;
  const { reading } = read;
  return {
    ...read,
    reading: {
      ...reading,
      value: reading.value * share,
      standardUncertainty: reading.standardUncertainty * share,
    },
  };
}

const layered: StepOf = (fold, entry, context) => {
  const { from } = entry.body as Body<"layer-applied">;
  const mine = from.find((source) => source.batch === context.jar);
  if (mine === undefined) return fold;
  const amount = layerAmount(context, entry, mine.share ?? 1 / from.length);
  return amount === null ? stepped(fold, entry, fold.now) : afterPouring(fold, entry, amount);
};

const weighed: StepOf = (fold, entry, context) => {
  const { gross, withLid } = entry.body as Body<"batch-weighed">;
  const amount = amountOf(context, entry, gross, "gross");
  if (amount === null || amount.by === "volume") return cannotUse(fold, entry, "not-an-amount");
  return afterWeighing(fold, entry, amount.reading, withLid, context.glass, context.mayHaveBeenUsed);
};

const driedDown: StepOf = (fold, entry, context) => {
  const body = entry.body as Body<"batch-dried-down">;
  const wet = amountOf(context, entry, body.wet, "wet");
  const dry = amountOf(context, entry, body.dry, "dry");
  if (wet?.by !== "mass" || dry?.by !== "mass") return cannotUse(fold, entry, "not-an-amount");
  return afterDryingDown(fold, entry, wet.reading, dry.reading);
};

const emptied: StepOf = (fold, entry) => ({
  ...stepped(fold, entry, nothing),
  lost: null,
  emptied: entry.id,
});

export const stepOf: Readonly<Record<string, StepOf>> = {
  "batch-filtered": filtered,
  "batch-thinned": thinned,
  "batch-blended": blended,
  "batch-topped-up": toppedUp,
  "batch-decanted": (fold, entry, context) =>
    pourOut(fold, entry, context, (entry.body as Body<"batch-decanted">).amount),
  "leftovers-poured-back": pouredBack,
  "layer-applied": layered,
  "batch-weighed": weighed,
  "batch-dried-down": driedDown,
  "batch-emptied": emptied,
};

/** Share of the solids that is wax. */
export const waxShare = (now: Reckoned): number => {
  const all = solidsOf(now.value);
  return all > 0 ? (now.value.wax ?? 0) / all : 0;
};
