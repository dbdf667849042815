import { liquidOf, massOf, solventVolumeOf, volumeOf } from "../jar/amounts.ts";
import { dewaxedUpTo } from "../jar/dewaxed.ts";
import { type DropTest, dropTestsOf, type Fitness, fitnessOf } from "../jar/fitness.ts";
import { foldJar } from "../jar/fold-jar.ts";
import type { Named } from "../jar/ingredient.ts";
import type { DriedDown, JarFold, JarStep, SolventLost, Unusable } from "../jar/jar-fold.ts";
import { type Looks, looksOf } from "../jar/looks.ts";
import { makesBatch, parentsOf, type WayMade, wayMade } from "../jar/making.ts";
import { type CutFigure, cutFigure, type Figure, figureOf } from "../jar/reckoning.ts";
import { waxShare } from "../jar/steps.ts";
import { type StruckBottles, struckBottles } from "../jar/struck.ts";
import type { NotebookEntry } from "../notebook/entry.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import type { Composition } from "../solution/composition.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { strengthAt20C } from "../solution/strength.ts";
import { type Cut, cutFromPoundsPerUsGallon, type VolumeFraction, volumeFraction } from "../units.ts";
import { trialView } from "./trial.ts";

/** The shelf that a jar stands on: what it is for. */
export type Stage = "stock" | "strained" | "thinned";
/** Waxed: the flakes bring more than a dewaxed grade's. Settled: it lies at the bottom. */
export type WaxState = "dewaxed" | "waxy" | "settled" | "not told";

export interface JarUse {
  readonly entry: string;
  readonly at: string;
  readonly targets: Body<"layer-applied">["targets"];
  readonly kind: string;
}

/** A jar as its entries tell it. Volumes at 20 °C. */
export interface JarView extends StruckBottles {
  readonly id: string;
  readonly code: string;
  readonly maker: string;
  readonly made: WayMade;
  readonly madeAt: string;
  readonly stage: Stage;
  readonly vessel: { readonly id: string; readonly name: string; readonly capacity: number | null } | null;
  readonly parents: readonly string[];
  /** Parent, its parent, and so on, along the first named. */
  readonly lineage: readonly { readonly id: string; readonly code: string }[];
  readonly children: readonly string[];
  readonly resins: readonly Named[];
  readonly grades: readonly string[];
  readonly solvents: readonly Named[];
  /** False when what is in it cannot be reckoned; then the figures below say nothing. */
  readonly known: boolean;
  readonly mass: Figure;
  readonly volume: Figure;
  /** What it held when it was filled. */
  readonly volumeAtFirst: number;
  readonly cut: (CutFigure & { readonly shown: "reckoned" | DriedDown["stands"] }) | null;
  readonly labelCut: Cut | null;
  readonly solids: VolumeFraction;
  readonly composition: Composition;
  readonly waterShare: number;
  readonly driedDown: DriedDown | null;
  readonly lost: (SolventLost & { readonly volume: number }) | null;
  readonly resinSince: string | null;
  readonly wax: WaxState;
  readonly looks: Looks;
  readonly dropTests: readonly DropTest[];
  readonly weighedLast: { readonly at: string; readonly grossKg: number; readonly withLid: boolean } | null;
  readonly contaminated: readonly { readonly entry: string; readonly with: string }[];
  readonly emptied: string | null;
  readonly uses: readonly JarUse[];
  readonly steps: readonly JarStep[];
  readonly unusable: readonly Unusable[];
}

/** Ids of every jar, in the order in which they were filled. */
export const jarIds = (read: NotebookReader): readonly string[] =>
  read.derive("jars", (r) => {
    const makers = ["mixed", "filtered", "thinned", "blended", "decanted"]
      .flatMap((way) => r.ofKind(`batch-${way}`))
      .filter(makesBatch);
    const made = makers.map((entry) => ({ id: r.thingOf(entry), at: entry.happened }));
    made.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.id < b.id ? -1 : 1));
    return [...new Set(made.map((jar) => jar.id))];
  });

const codeOf = (maker: NotebookEntry): string => (maker.body as { code?: string }).code ?? "";

/** Codes along the first parents; a ring ends where it closes. */
function lineageOf(read: NotebookReader, id: string): JarView["lineage"] {
  const line: { id: string; code: string }[] = [];
  const seen = new Set([id]);
  let maker = read.making(id);
  for (let here = id; maker !== undefined; ) {
    const parent: string | undefined = parentsOf(maker, here)[0];
    if (parent === undefined || seen.has(parent)) break;
    seen.add(parent);
    maker = read.making(parent);
    if (maker !== undefined) line.push({ id: parent, code: codeOf(maker) });
    here = parent;
  }
  return line;
}

function stageOf(read: NotebookReader, id: string, seen: ReadonlySet<string> = new Set()): Stage {
  const maker = read.making(id);
  const way = maker === undefined ? null : wayMade(maker);
  if (way === "filtered") return "strained";
  if (way === "thinned") return "thinned";
  if (maker === undefined || way === "mixed" || way === null) return "stock";
  const stages = parentsOf(maker, id).map((parent) =>
    seen.has(parent) ? "stock" : stageOf(read, parent, new Set([...seen, id])),
  );
  // What is poured together is no further on than the part that is least so.
  return (["stock", "strained", "thinned"] as const).find((stage) => stages.includes(stage)) ?? "stock";
}

function waxStateOf(fold: JarFold, looks: Looks): WaxState {
  if (looks.looks.at(-1)?.waxSettled === true) return "settled";
  if (waxShare(fold.now) > dewaxedUpTo) return "waxy";
  return fold.resins.length > 0 && fold.resins.every((resin) => resin.wax !== null) ? "dewaxed" : "not told";
}

function vesselOf(read: NotebookReader, id: string | undefined): JarView["vessel"] {
  const described = id === undefined ? undefined : read.making(id);
  if (id === undefined || described?.kind !== "vessel-described") return null;
  const body = described.body as Body<"vessel-described">;
  return { id, name: body.name, capacity: body.capacity?.si ?? null };
}

const lostAs = (fold: JarFold): JarView["lost"] => {
  const { composition } = liquidOf(fold.now.value);
  if (fold.lost === null || Object.keys(composition).length === 0) return null;
  return { ...fold.lost, volume: fold.lost.kg / densityOfSolvent(composition, strengthAt20C).value };
};

/** What a layer lies on from this jar: in a blind trial that was opened, the patches that its key gave to the jar. */
function targetsFrom(read: NotebookReader, jar: string, body: Body<"layer-applied">): JarUse["targets"] {
  if (body.from.length > 0) return body.targets;
  return body.targets.filter((target) => {
    const trial = target.trial === undefined ? null : trialView(read, target.trial);
    return trial?.patches.some((patch) => patch.patch === target.patch && patch.batch === jar) ?? false;
  });
}

const usesOf = (read: NotebookReader, jar: string, fold: JarFold): readonly JarUse[] =>
  fold.steps.flatMap((step) => {
    const entry = step.kind === "layer-applied" ? read.entry(step.entry) : undefined;
    if (entry === undefined) return [];
    const body = entry.body as Body<"layer-applied">;
    return [{ entry: entry.id, at: entry.happened, targets: targetsFrom(read, jar, body), kind: body.sort }];
  });

/** What the liquid is and how much of it: the part of the view that is reckoned. */
function contentsOf(fold: JarFold) {
  const { value } = fold.now;
  const cut = cutFigure(fold.now);
  const volume = figureOf(fold.now, volumeOf);
  const { composition } = liquidOf(value);
  return {
    mass: figureOf(fold.now, massOf),
    volume,
    volumeAtFirst: fold.steps[0] === undefined ? 0 : volumeOf(fold.steps[0].after.value),
    cut: cut === null ? null : { ...cut, shown: fold.driedDown?.stands ?? ("reckoned" as const) },
    solids: volumeFraction(volume.value > 0 ? 1 - solventVolumeOf(value) / volumeOf(value) : 0),
    composition,
    waterShare: composition.water ?? 0,
  };
}

/** A jar, or null when nothing live makes one of this id. */
export const jarView = (read: NotebookReader, id: string): JarView | null =>
  read.derive(`jar:${id}`, (r) => {
    const maker = r.making(id);
    const fold = foldJar(r, id);
    if (maker === undefined || fold === null) return null;
    const body = maker.body as Partial<Body<"batch-mixed">>;
    const entries = r.touching(id);
    const looks = looksOf(entries, maker);
    const aimed = body.aimedCutLbPerGal;
    const { weighed } = fold;
    return {
      id,
      code: codeOf(maker),
      maker: maker.id,
      made: wayMade(maker) as WayMade, // foldJar gave a fold, so the entry makes a batch
      madeAt: maker.happened,
      stage: stageOf(r, id),
      vessel: vesselOf(r, body.vessel),
      parents: parentsOf(maker, id),
      lineage: lineageOf(r, id),
      children: entries
        .filter((entry) => makesBatch(entry) && parentsOf(entry, r.thingOf(entry)).includes(id))
        .map((entry) => r.thingOf(entry)),
      resins: fold.resinNames,
      grades: fold.resins.map((resin) => resin.grade),
      solvents: fold.solventNames,
      known: fold.steps.length > 0,
      ...contentsOf(fold),
      ...struckBottles(r, fold),
      labelCut: aimed === undefined || aimed === 0 ? null : cutFromPoundsPerUsGallon(aimed),
      driedDown: fold.driedDown,
      lost: lostAs(fold),
      resinSince: fold.resinSince,
      wax: waxStateOf(fold, looks),
      looks,
      dropTests: dropTestsOf(entries),
      weighedLast:
        weighed === null ? null : { at: weighed.at, grossKg: weighed.grossKg, withLid: weighed.withLid },
      contaminated: entries
        .filter((entry) => entry.kind === "batch-contaminated")
        .map((entry) => ({ entry: entry.id, with: (entry.body as Body<"batch-contaminated">).with })),
      emptied: fold.emptied,
      uses: usesOf(r, id, fold),
      steps: fold.steps,
      unusable: [...fold.unusable, ...looks.unusable],
    };
  });

/** The state of a jar at an instant, its ancestors' contaminations counted with its own. */
export function jarFitness(read: NotebookReader, id: string, now: string): Fitness {
  const inherited = (jarView(read, id)?.lineage ?? []).flatMap((parent) =>
    read.touching(parent.id).filter((entry) => entry.kind === "batch-contaminated"),
  );
  const made = read.making(id)?.happened ?? now;
  const before = inherited.filter((entry) => entry.happened <= made);
  return fitnessOf(read, [...before, ...read.touching(id)], foldJar(read, id)?.resinSince ?? null, now);
}
