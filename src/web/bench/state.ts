import type { Body } from "../../core/notebook/kinds/all.ts";
import type { DueCoat, DuePatch } from "../../core/views/bench.ts";
import type { PieceCoat } from "../../core/views/bench-pieces.ts";
import type { JarToLookAt } from "../../core/views/look-again.ts";
import type { CoatMethod } from "../../core/views/waits.ts";

/** A coat is known again after the notebook has changed by its trial, number and jar. */
export const coatKey = (coat: DueCoat): string => `${coat.trial}/${coat.coat}/${coat.jar?.name ?? ""}`;

/** A patch whose wait is over: nothing asks for the others yet. */
export const isReady = (patch: DuePatch, nowMs: number): boolean =>
  patch.dueMs === null || patch.dueMs <= nowMs;

export interface BenchList {
  /** Coats with at least one patch whose wait is over, in the order to take them. */
  readonly now: readonly DueCoat[];
  readonly later: readonly DueCoat[];
}

export function sortedByTime(coats: readonly DueCoat[], nowMs: number): BenchList {
  const ready = (coat: DueCoat) => coat.patches.some((p) => isReady(p, nowMs));
  return { now: coats.filter(ready), later: coats.filter((coat) => !ready(coat)) };
}

/** The coat in question: the one that was picked while it is still waited for, else the first that is due. */
export const inQuestion = (list: BenchList, picked: string | undefined): DueCoat | undefined =>
  [...list.now, ...list.later].find((coat) => coatKey(coat) === picked) ?? list.now[0];

/** Which patches are in: those that are ready, turned over by each tap. */
export function chosenPatches(
  coat: DueCoat,
  tapped: ReadonlySet<string>,
  nowMs: number,
): readonly DuePatch[] {
  return coat.patches.filter((p) => isReady(p, nowMs) !== tapped.has(p.patch));
}

export interface ComingUp {
  readonly atMs: number;
  readonly coat: DueCoat | null;
  readonly jar: JarToLookAt | null;
  readonly piece: PieceCoat | null;
}

const dayMs = 86_400_000;
const mostComingUp = 8;

/** What comes next, in order of time, within a week; what is overdue first. */
export function comingUp(
  later: readonly DueCoat[],
  jars: readonly JarToLookAt[],
  pieces: readonly (PieceCoat & { readonly dueMs: number })[],
  nowMs: number,
): readonly ComingUp[] {
  const none = { coat: null, jar: null, piece: null };
  return [
    ...later.map((coat) => ({ ...none, atMs: coat.dueMs ?? nowMs, coat })),
    ...jars.map((jar) => ({ ...none, atMs: jar.dueMs, jar })),
    ...pieces.map((piece) => ({ ...none, atMs: piece.dueMs, piece })),
  ]
    .filter((one) => one.atMs < nowMs + 7 * dayMs)
    .sort((a, b) => a.atMs - b.atMs)
    .slice(0, mostComingUp);
}

/** A day and a clock time of the shop's zone as an instant; without a time, noon. */
export function instantOfDay(
  day: string,
  at: string | null,
  offsetMinutes: (instant: string) => number,
): number {
  const local = Date.parse(`${day}T${at ?? "12:00"}:00Z`);
  return local - offsetMinutes(new Date(local).toISOString()) * 60_000;
}

/** How long ago, in minutes, or a time of day as typed. */
export type When = { readonly ago: number } | { readonly clock: string };
export const agoChoices = [0, 10, 20, 30, 60] as const;

/** `07:05` of what was typed as a time of day; undefined for what is none. */
export function clockIn(typed: string): string | undefined {
  const read = /^\s*([01]?\d|2[0-3])[:.h ]?([0-5]\d)\s*$/.exec(typed);
  return read === null ? undefined : `${String(read[1]).padStart(2, "0")}:${read[2]}`;
}

/** The instant meant, or undefined for a clock that cannot be read. A time of day still to come was yesterday's. */
export function instantMeant(
  when: When,
  now: string,
  offsetMinutes: (instant: string) => number,
): string | undefined {
  if ("ago" in when) return new Date(Date.parse(now) - when.ago * 60_000).toISOString();
  const clock = clockIn(when.clock);
  if (clock === undefined) return undefined;
  const local = new Date(Date.parse(now) + offsetMinutes(now) * 60_000).toISOString().slice(0, 10);
  const at = Date.parse(`${local}T${clock}:00Z`);
  const instant = at - offsetMinutes(new Date(at).toISOString()) * 60_000;
  return new Date(instant > Date.parse(now) ? instant - dayMs : instant).toISOString();
}

/** The layer as it is written down. While the key is shut no jar stands beside the patches: it would give the codes away. */
export function layerOf(
  coat: DueCoat,
  patches: readonly DuePatch[],
  method: CoatMethod,
): { readonly about: readonly string[]; readonly body: Body<"layer-applied"> } {
  return plannedLayer({ ...coat, method, batch: coat.keyOpen ? (coat.jar?.batch ?? null) : null }, patches);
}

/** A coat of the plan on some patches, from a jar or from what the key says. */
export function plannedLayer(
  coat: {
    readonly trial: string;
    readonly coat: number;
    readonly method: CoatMethod;
    readonly batch: string | null;
  },
  patches: readonly { readonly patch: string; readonly boardId: string | null }[],
): { readonly about: readonly string[]; readonly body: Body<"layer-applied"> } {
  return {
    about: [coat.trial, ...boardIds(patches), ...(coat.batch === null ? [] : [coat.batch])],
    body: {
      sort: "coat",
      targets: targetsOf(coat.trial, patches),
      from: coat.batch === null ? [] : [{ batch: coat.batch }],
      method: coat.method,
      planned: { coat: coat.coat },
    },
  };
}

export const targetsOf = (trial: string, patches: readonly { readonly patch: string }[]) =>
  patches.map(({ patch }) => ({ trial, patch }));

export const boardIds = (patches: readonly { readonly boardId: string | null }[]): readonly string[] => [
  ...new Set(patches.flatMap(({ boardId }) => (boardId === null ? [] : [boardId]))),
];

/** What was just written, as the page goes on showing it until the next act. */
export interface JustWritten {
  readonly entry: string;
  readonly at: string;
  readonly coat: DueCoat;
  readonly codes: readonly string[];
  /** A helper’s name; empty for whoever writes. */
  readonly hands: string;
}

/** A wait in whole minutes, or undefined for text that is not one. */
export function readWait(typed: string): number | undefined {
  const read = /^\s*(\d{1,5})\s*(min|minutes?)?\s*$/.exec(typed);
  const minutes = read === null ? 0 : Number(read[1]);
  return minutes >= 1 && minutes <= 10_000 ? minutes : undefined;
}

/** Air changes over a day: an older reading says nothing about this evening. */
const freshAirMs = 6 * 3_600_000;
export const isFresh = (readAt: string, nowMs: number): boolean => nowMs - Date.parse(readAt) < freshAirMs;

/** What somebody does first whose bench is empty. */
export type FirstStep = "shelf" | "jars" | "trials";
export function firstStep(has: { readonly materials: number; readonly jars: number }): FirstStep {
  if (has.jars > 0) return "trials";
  return has.materials > 0 ? "jars" : "shelf";
}
