import { blushOfSetup } from "../evaporation/blush.ts";
import type { DryingSetup } from "../evaporation/drying.ts";
import {
  type LoggedWait,
  type LoggedWhitening,
  type Own,
  ownWaitFactor,
  ownWhiteningMargin,
} from "../evaporation/own-log.ts";
import { recoatSeconds } from "../evaporation/recoat.ts";
import type { NotebookEntry } from "../notebook/entry.ts";
import { isToTheMinute } from "../notebook/entry-time.ts";
import { epochMilliseconds } from "../notebook/instant.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { type CoatSetups, layerSetups, type NoModelReason } from "./coat-setup.ts";
import { entriesAt, type Place, placeOfTarget } from "./place.ts";
import { type CommonWait, commonWait } from "./waits.ts";

type Layer = Body<"layer-applied">;

/** What has to be worked out to say when a layer may be coated again. Plain data: a worker answers it. */
export interface WaitQuestion {
  readonly layer: string;
  readonly common: CommonWait;
  readonly coat: CoatSetups;
}

/** A coat in the log that says how the wait before it was. */
export interface LoggedWaitQuestion {
  readonly entry: string;
  readonly waited: number;
  readonly ready: boolean;
  readonly setups: readonly DryingSetup[];
}

/** A coat in the log that says whether it turned white. */
export interface LoggedWhiteningQuestion {
  readonly entry: string;
  readonly whitened: boolean;
  readonly setups: readonly DryingSetup[];
}

/** Everything that the log says of how coats went. */
export interface LogQuestions {
  readonly waits: readonly LoggedWaitQuestion[];
  readonly whitenings: readonly LoggedWhiteningQuestion[];
}

/** The last so many: hands and habits change, and each takes some milliseconds to follow. */
const latest = 40;

const isCoat = (entry: NotebookEntry): boolean => {
  if (entry.kind !== "layer-applied") return false;
  const { sort } = entry.body as Layer;
  return sort === "coat" || sort === "session" || sort === "wash";
};

/** When may this layer be coated again? */
export function waitQuestion(read: NotebookReader, layer: NotebookEntry, place: Place): WaitQuestion {
  const { method } = layer.body as Layer;
  return {
    layer: layer.id,
    common: commonWait(read, method),
    coat: layerSetups(read, layer, place),
  };
}

/** A layer's first target; its other targets had the same. */
function firstPlace(layer: NotebookEntry): Place | null {
  const [target] = (layer.body as Layer).targets;
  return target === undefined ? null : placeOfTarget(target);
}

function loggedWait(read: NotebookReader, layer: NotebookEntry, place: Place): LoggedWaitQuestion[] {
  const { went } = layer.body as Layer;
  if (went === undefined || went === "whitened") return [];
  const coats = entriesAt(read, place).filter(isCoat);
  const before = coats[coats.findIndex((entry) => entry.id === layer.id) - 1];
  if (before === undefined || !isToTheMinute(layer) || !isToTheMinute(before)) return [];
  const waited = (epochMilliseconds(layer.happened) - epochMilliseconds(before.happened)) / 1e3;
  const { setups } = layerSetups(read, before, place);
  return setups === null || waited <= 0 ? [] : [{ entry: layer.id, waited, ready: went === "well", setups }];
}

function loggedWhitening(
  read: NotebookReader,
  layer: NotebookEntry,
  place: Place,
): LoggedWhiteningQuestion[] {
  const { went } = layer.body as Layer;
  if (went === undefined) return [];
  const { setups } = layerSetups(read, layer, place);
  return setups === null ? [] : [{ entry: layer.id, whitened: went === "whitened", setups }];
}

/** What the last of a list give, no more of them looked at than is needed. */
function lastOf<T, U>(all: readonly T[], of: (one: T) => readonly U[]): readonly U[] {
  const found: U[] = [];
  for (let i = all.length - 1; i >= 0 && found.length < latest; i--) found.unshift(...of(all[i] as T));
  return found;
}

/** What the log says of how coats went, the last forty of each. */
export const logQuestions = (read: NotebookReader): LogQuestions =>
  read.derive("log-questions", (r) => {
    const coats = r.ofKind("layer-applied").filter(isCoat);
    const placed = coats.flatMap((layer) => {
      const place = firstPlace(layer);
      return place === null ? [] : [{ layer, place }];
    });
    return {
      waits: lastOf(placed, ({ layer, place }) => loggedWait(r, layer, place)),
      whitenings: lastOf(placed, ({ layer, place }) => loggedWhitening(r, layer, place)),
    };
  });

/** Of several jars that it may have been, the one that asks for most. */
function slowest(setups: readonly DryingSetup[]): number | null {
  let longest = 0;
  for (const setup of setups) {
    const wait = recoatSeconds(setup);
    if (wait === null) return null;
    longest = Math.max(longest, wait);
  }
  return longest;
}

/** The person's own factor and whitening margin. It follows every logged coat: for a worker. */
export function ownFrom(questions: LogQuestions): { readonly wait: Own; readonly whitening: Own } {
  const waits = questions.waits.flatMap(({ waited, ready, setups }): LoggedWait[] => {
    const model = slowest(setups);
    return model === null || model === 0 ? [] : [{ model, waited, ready }];
  });
  const whitenings = questions.whitenings.flatMap(({ whitened, setups }): LoggedWhitening[] => {
    const margins = setups.flatMap((setup) => blushOfSetup(setup)?.margin ?? []);
    return margins.length === 0 ? [] : [{ margin: Math.min(...margins), whitened }];
  });
  return { wait: ownWaitFactor(waits), whitening: ownWhiteningMargin(whitenings) };
}

/** When a layer may be coated again, by each of the three that can say so, and which of them is shown. Seconds. */
export interface WaitAnswer {
  readonly layer: string;
  readonly shown: "common practice" | "set by hand" | "model" | "own log";
  readonly seconds: number;
  readonly interval: readonly [number, number] | null;
  readonly common: CommonWait;
  readonly model: number | null;
  /** Why the model says nothing: what is missing, or that it is not dry in three days. */
  readonly why: NoModelReason | "not-in-three-days" | null;
}

/** The model is off by a factor of 3, it says itself. */
const modelFactor = 3;

/**
 * Answers a question of waiting: a wait set by hand first, then the person's own factor on the model once the log is
 * enough, then the model, then common practice. It follows the film: for a worker.
 */
export function waitAnswer(question: WaitQuestion, own: Own | null): WaitAnswer {
  const { layer, common, coat } = question;
  const model = coat.setups === null ? null : slowest(coat.setups);
  const why: WaitAnswer["why"] = coat.why ?? (model === null ? "not-in-three-days" : null);
  const rest = { layer, common, model, why };
  if (common.setByHand) return { ...rest, shown: "set by hand", seconds: common.seconds, interval: null };
  if (model === null) return { ...rest, shown: "common practice", seconds: common.seconds, interval: null };
  if (own?.enough === true)
    return {
      ...rest,
      shown: "own log",
      seconds: model * own.estimate,
      interval: [model * own.interval[0], model * own.interval[1]],
    };
  return { ...rest, shown: "model", seconds: model, interval: [model / modelFactor, model * modelFactor] };
}
