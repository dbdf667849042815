import { type Threshold, thresholdFromAnswers } from "../statistics/senses/yes-no-threshold.ts";

/** A coat that was put on over another, and how that went. */
export interface LoggedWait {
  /** Until the film beneath was firm enough, as the model has it, s. */
  readonly model: number;
  /** How long was waited, s. */
  readonly waited: number;
  /** False where the pad dragged or it was too soon. */
  readonly ready: boolean;
}

/** A coat with the margin that the model gave it, and whether it turned white. */
export interface LoggedWhitening {
  /** K to spare, as `blushOf` has it. */
  readonly margin: number;
  readonly whitened: boolean;
}

/** What a person's own log says of one figure of the model. Enough: the log is used; until then it is only shown. */
export interface Own {
  readonly estimate: number;
  readonly interval: readonly [number, number];
  readonly standardError: number;
  readonly coats: number;
  /** Of those, dragged or white. */
  readonly bad: number;
  readonly enough: boolean;
}

/** A log with fewer coats, or with hardly any of one kind, bounds the figure from one side only. */
export const enoughCoats = { coats: 6, ofEachKind: 2 } as const;

const isEnough = ({ yes, no }: Threshold): boolean =>
  yes + no >= enoughCoats.coats && Math.min(yes, no) >= enoughCoats.ofEachKind;

/** The model's wait for a coat is off by a factor of 3, it says; coats of one hand differ by a factor of 1.3. From memory. */
const waitExpected = { mean: 0, standardDeviation: Math.log(3) };
const waitSpread = Math.log(1.3);

/**
 * How much longer than the model a person's coats wait, from how coats went that were put on after known waits.
 *
 *     P(ready after t) = Φ((ln(t/tmodel) − ln f)/ln 1.3),   ln f ~ N(0, ln 3) before anything is logged
 *
 * A coat that dragged says only that f is larger than t/tmodel, one that went well only that it is smaller.
 *
 * @param coats  n logged coats with waits above 0 [s]
 * @returns      the factor f on the model's wait, its 95 % interval, and the standard error of its logarithm
 * @throws DomainError `not-a-number` for a wait of nothing
 *
 * Valid:    coats whose wait the model could reckon
 * Accuracy: as the interval; the spread of 1.3 between coats is from memory
 * Source:   as `thresholdFromAnswers`
 * @example
 * ownWaitFactor([]).estimate // => 1
 */
export function ownWaitFactor(coats: readonly LoggedWait[]): Own {
  const answers = coats.map(({ model, waited, ready }) => ({ at: Math.log(waited / model), yes: ready }));
  const found = thresholdFromAnswers(answers, waitExpected, waitSpread);
  return {
    estimate: Math.exp(found.estimate),
    interval: [Math.exp(found.interval[0]), Math.exp(found.interval[1])],
    standardError: found.standardError,
    coats: coats.length,
    bad: found.no,
    enough: isEnough(found),
  };
}

/** The threshold of the model is fitted to practice and off by 3 K, say; from one evening to the next by 1 K. From memory. */
const whiteningExpected = { mean: 0, standardDeviation: 3 };
const whiteningSpread = 1;

/**
 * The margin below which a person's coats turn white, from coats that did and coats that stayed clear.
 *
 *     P(clear at margin m) = Φ((m − θ)/1 K),   θ ~ N(0, 3 K) before anything is logged
 *
 * @param coats  n logged coats with the model's margin [K]
 * @returns      θ [K] with its 95 % interval: above 0 where coats turn white that the model thinks clear
 *
 * Valid:    coats whose margin the model could reckon
 * Accuracy: as the interval; the spread of 1 K between evenings is from memory
 * Source:   as `thresholdFromAnswers`
 * @example
 * ownWhiteningMargin([]).estimate // => 0
 */
export function ownWhiteningMargin(coats: readonly LoggedWhitening[]): Own {
  const answers = coats.map(({ margin, whitened }) => ({ at: margin, yes: !whitened }));
  const found = thresholdFromAnswers(answers, whiteningExpected, whiteningSpread);
  return {
    estimate: found.estimate,
    interval: found.interval,
    standardError: found.standardError,
    coats: coats.length,
    bad: found.no,
    enough: isEnough(found),
  };
}
