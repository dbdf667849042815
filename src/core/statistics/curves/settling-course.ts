import { at, type Vector } from "../numeric/vector.ts";
import type { Curve } from "./least-squares.ts";

/** What was read at a time. */
export interface TimedReading {
  readonly time: number;
  readonly value: number;
}

export const settlingShapes = ["first-order", "weibull"] as const;
export type SettlingShape = (typeof settlingShapes)[number];

/** Ends of the way that are known beforehand; the others are estimated. */
export interface KnownEnds {
  readonly start?: number | undefined;
  readonly end?: number | undefined;
}

/** Places of the four quantities among the parameters; −1 for one that is known. τ and β go by their logarithms, so that both stay above 0. */
export interface Layout {
  readonly logTime: number;
  readonly logShape: number;
  readonly start: number;
  readonly end: number;
  readonly count: number;
}

/** Which of the four are estimated, and where they stand. */
export function layoutOf(shape: SettlingShape, ends: KnownEnds): Layout {
  let count = 1;
  const next = (estimated: boolean): number => (estimated ? count++ : -1);
  const [logShape, start, end] = [
    next(shape === "weibull"),
    next(ends.start === undefined),
    next(ends.end === undefined),
  ];
  return { logTime: 0, logShape, start, end, count };
}

/** A first guess: the ends as read, and 1/e of the way left by the middle of the times. */
export function firstGuess(readings: readonly TimedReading[], layout: Layout): Float64Array {
  const inOrder = [...readings].sort((a, b) => a.time - b.time);
  const [first, last] = [inOrder[0], inOrder.at(-1)];
  const guess = new Float64Array(layout.count);
  const times = inOrder.map(({ time }) => time).filter((time) => time > 0);
  guess[layout.logTime] = Math.log(times[Math.floor((times.length - 1) / 2)] ?? 1);
  if (layout.start >= 0) guess[layout.start] = first?.value ?? 0;
  if (layout.end >= 0) guess[layout.end] = last?.value ?? 0;
  return guess;
}

/** What parameters stand for. */
interface Figures {
  readonly start: number;
  readonly end: number;
  readonly timeConstant: number;
  readonly exponent: number;
}

/** What the parameters come to. */
export const figuresOf = (layout: Layout, ends: KnownEnds, parameters: Vector): Figures => ({
  start: layout.start < 0 ? (ends.start as number) : at(parameters, layout.start),
  end: layout.end < 0 ? (ends.end as number) : at(parameters, layout.end),
  timeConstant: Math.exp(at(parameters, layout.logTime)),
  exponent: layout.logShape < 0 ? 1 : Math.exp(at(parameters, layout.logShape)),
});

/** The course over the times of the readings, with its slopes by each parameter. */
export const courseOver =
  (times: readonly number[], layout: Layout, ends: KnownEnds): Curve =>
  (parameters, reading) => {
    const { start, end, timeConstant, exponent } = figuresOf(layout, ends, parameters);
    const way = at(times, reading) / timeConstant;
    const power = way ** exponent;
    const left = Math.exp(-power);
    const byTime = (start - end) * left * power * exponent;
    const slopes = new Float64Array(layout.count);
    slopes[layout.logTime] = byTime;
    if (layout.logShape >= 0) slopes[layout.logShape] = way === 0 ? 0 : -byTime * Math.log(way);
    if (layout.start >= 0) slopes[layout.start] = left;
    if (layout.end >= 0) slopes[layout.end] = 1 - left;
    return { value: end + (start - end) * left, slopes };
  };
