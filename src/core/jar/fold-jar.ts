import type { NotebookEntry } from "../notebook/entry.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { trialView } from "../views/trial.ts";
import { cannotUse, emptyFold, type JarFold, stepped } from "./jar-fold.ts";
import { madeFold, makesBatch, parentsOf } from "./making.ts";
import { afterPouring } from "./pouring.ts";
import { layerAmount, type StepContext, stepOf } from "./steps.ts";
import { amountRead } from "./typed-amount.ts";
import type { Glass } from "./weighing.ts";

/** The batch's own ancestors, itself not among them unless its links form a ring. */
function ancestorsOf(read: NotebookReader, id: string): ReadonlySet<string> {
  const found = new Set<string>();
  const open = [id];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const maker = read.making(next);
    for (const parent of maker === undefined ? [] : parentsOf(maker, next))
      if (!found.has(parent)) {
        found.add(parent);
        open.push(parent);
      }
  }
  return found;
}

/** What the glass that a jar stands in weighs empty, with its lid; null where that was never written. */
export function glassOf(read: NotebookReader, vessel: string | undefined): Glass | null {
  const described = vessel === undefined ? undefined : read.making(vessel);
  if (described?.kind !== "vessel-described") return null;
  const { emptyWeight } = described.body as Body<"vessel-described">;
  const amount = emptyWeight === undefined ? null : amountRead(read, emptyWeight, `${described.id}.empty`);
  return amount?.by === "mass"
    ? { emptyKg: amount.reading.value, standardUncertainty: amount.reading.standardUncertainty }
    : null;
}

/** A layer that a trial put on from this jar, known once its key is open: the entry and the jar's share of it. */
interface TrialUse {
  readonly entry: NotebookEntry;
  readonly share: number;
}

/** What trials drew from this jar, and from when on one with a shut key may have. */
function trialsOf(read: NotebookReader, jar: string, entries: readonly NotebookEntry[]) {
  const uses: TrialUse[] = [];
  let shutSince: string | null = null;
  for (const layout of entries.filter((entry) => entry.kind === "trial-laid-out")) {
    const trial = layout.about[0] === undefined ? null : trialView(read, layout.about[0]);
    if (trial === null) continue;
    if (trial.key.state !== "open") {
      if (shutSince === null || layout.happened < shutSince) shutSince = layout.happened;
      continue;
    }
    const mine = new Set(trial.patches.filter((p) => p.batch === jar).map((p) => p.patch));
    const layers = new Set(trial.patches.flatMap((p) => p.layers.map((layer) => layer.entry)));
    for (const id of layers) {
      const entry = read.entry(id);
      const body = entry?.body as Body<"layer-applied"> | undefined;
      if (entry === undefined || body === undefined || body.from.length > 0) continue;
      const hit = body.targets.filter((t) => t.trial === trial.id && mine.has(t.patch ?? ""));
      const share = hit.reduce((sum, t) => sum + (t.share ?? 1 / body.targets.length), 0);
      if (share > 0) uses.push({ entry, share });
    }
  }
  return { uses, shutSince };
}

/** Its own entries with the trials' layers put in where they fell in time. */
function withUses(entries: readonly NotebookEntry[], uses: readonly TrialUse[]): readonly NotebookEntry[] {
  const waiting = [...uses].sort((a, b) => (a.entry.happened < b.entry.happened ? -1 : 1));
  const merged: NotebookEntry[] = [];
  for (const entry of entries) {
    while (waiting[0] !== undefined && waiting[0].entry.happened < entry.happened)
      merged.push((waiting.shift() as TrialUse).entry);
    merged.push(entry);
  }
  return [...merged, ...waiting.map((use) => use.entry)];
}

function useInTrial(fold: JarFold, use: TrialUse, context: StepContext): JarFold {
  const amount = layerAmount(context, use.entry, use.share);
  return amount === null ? stepped(fold, use.entry, fold.now) : afterPouring(fold, use.entry, amount);
}

function computeFold(read: NotebookReader, id: string, maker: NotebookEntry): JarFold {
  if (ancestorsOf(read, id).has(id)) return cannotUse(emptyFold, maker, "ring");
  const parents = parentsOf(maker, id).map((parent) => foldJar(read, parent));
  const entries = read.touching(id).filter((entry) => entry.id !== maker.id);
  const { uses, shutSince } = trialsOf(read, id, entries);
  const useOf = new Map(uses.map((use) => [use.entry.id, use]));
  const glass = glassOf(read, (maker.body as { vessel?: string }).vessel);
  let fold = madeFold(read, maker, parents);
  let waxSettled = false;
  for (const entry of withUses(entries, uses)) {
    if (entry.kind === "batch-looked-at")
      waxSettled = (entry.body as Body<"batch-looked-at">).waxSettled === true;
    const mayHaveBeenUsed = shutSince !== null && entry.happened > shutSince;
    const context: StepContext = { read, jar: id, glass, waxSettled, mayHaveBeenUsed };
    const use = useOf.get(entry.id);
    fold =
      use === undefined
        ? (stepOf[entry.kind]?.(fold, entry, context) ?? fold)
        : useInTrial(fold, use, context);
  }
  return fold;
}

/** A jar's entries folded, or null when nothing live makes a jar of this id. */
export const foldJar = (read: NotebookReader, id: string): JarFold | null =>
  read.derive(`jar-fold:${id}`, (r) => {
    const maker = r.making(id);
    return maker !== undefined && makesBatch(maker) ? computeFold(r, id, maker) : null;
  });
