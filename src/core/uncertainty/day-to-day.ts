import { DomainError } from "../domain-error.ts";
import { fTails } from "../statistics/distribution/f-distribution.ts";

/** Readings of one thing on several days, judged for whether days differ by more than readings do. */
export interface DayToDay {
  readonly mean: number;
  /** Standard deviation of the days' means. */
  readonly betweenMeans: number;
  /** Standard deviation of readings within a day, pooled. */
  readonly within: number;
  /** Standard uncertainty of the mean, from the days' means. */
  readonly meanUncertainty: number;
  readonly statistic: number;
  readonly degreesOfFreedom: readonly [number, number];
  readonly pValue: number;
}

/**
 * Type A evaluation by one-way analysis of variance, from the mean and the standard deviation of each day.
 *
 *     s²(pooled) = Σ si²/J,   F = K·s²(means)/s²(pooled),   u(mean) = s(means)/√J
 *
 * @param means   J ≥ 2, one a day
 * @param sds     J, paired with the means
 * @param perDay  K ≥ 2 readings in each
 * @throws DomainError for fewer than two days or readings, unequal lists, and days without any spread
 *
 * Valid:    as many readings on each day, of one variance
 * Accuracy: full digits
 * Source:   JCGM 100:2008, H.5.2
 * @example
 * dayToDay([1, 2], [0.5, 0.5], 4).statistic // => 8
 */
export function dayToDay(means: readonly number[], sds: readonly number[], perDay: number): DayToDay {
  const days = means.length;
  if (sds.length !== days)
    throw new DomainError({
      code: "contradiction",
      field: "sds",
      value: sds.length,
      because: `There are ${days} means.`,
    });
  if (days < 2 || !(perDay >= 2))
    throw new DomainError({
      code: "not-enough-data",
      field: days < 2 ? "means" : "perDay",
      value: days < 2 ? days : perDay,
      limits: { min: 2 },
    });
  const mean = means.reduce((total, x) => total + x, 0) / days;
  const betweenMeans = Math.sqrt(means.reduce((total, x) => total + (x - mean) ** 2, 0) / (days - 1));
  const within = Math.sqrt(sds.reduce((total, s) => total + s ** 2, 0) / days);
  if (!(within > 0)) throw new DomainError({ code: "no-variation", field: "sds", value: within });
  const statistic = (perDay * betweenMeans ** 2) / within ** 2;
  const degreesOfFreedom = [days - 1, days * (perDay - 1)] as const;
  return {
    mean,
    betweenMeans,
    within,
    meanUncertainty: betweenMeans / Math.sqrt(days),
    statistic,
    degreesOfFreedom,
    pValue: fTails(statistic, ...degreesOfFreedom).upper,
  };
}
