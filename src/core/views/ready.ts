import { epochMilliseconds } from "../notebook/instant.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { errorDistributions } from "../statistics/distribution/error-distribution.ts";
import { readyTime } from "../statistics/times/ready-time.ts";
import { type MassInterval, turnbull } from "../statistics/times/turnbull.ts";
import { type JarView, jarIds, jarView } from "./jar.ts";

/** A jar being watched until its resin is dissolved. */
export interface WatchedJarView {
  readonly id: string;
  readonly code: string;
  readonly mixedAt: string;
  readonly looks: JarView["looks"]["looks"];
  readonly notYetH: number;
  readonly doneByH: number | null;
  /** When a look would teach most, UTC; null once it was seen ready, strained or emptied. */
  readonly lookAgainAt: string | null;
}

/** Jars of one recipe, and what their looks say of its time. */
export interface ReadyGroup {
  readonly key: string;
  readonly resins: string;
  readonly solvents: string;
  readonly jars: readonly WatchedJarView[];
  /** Hours until half of such jars are ready, with its 95 % interval; null where the looks do not fix it. */
  readonly medianH: number | null;
  readonly intervalH: readonly [number, number] | null;
  /** Shares of the jars by the looks alone, no model of time: where in a stretch its share lies is not determined. */
  readonly steps: readonly MassInterval[];
  /** One jar only: what is said is said of this jar, not of its recipe. */
  readonly oneJar: boolean;
}

export const readyModels = ["weibull", "lognormal"] as const;
export type ReadyModel = (typeof readyModels)[number];

export interface Ready {
  readonly model: ReadyModel;
  /** σ of the fit on the logarithm of time, one for every group; null where nothing is fixed. */
  readonly scale: number | null;
  readonly groups: readonly ReadyGroup[];
}

const hourMs = 3_600_000;
/** With nothing known of a recipe: half as long again as it has been. A convention of Lacbench's own. */
const halfAsLongAgain = 1.5;

const groupKey = (jar: JarView): string =>
  [...jar.resins, ...jar.solvents].map((named) => named.material ?? named.name).join(" · ");

const errorAt = (hours: number, medianH: number, scale: number, model: ReadyModel): number =>
  Math.log(hours / medianH) / scale + errorDistributions[model].quantile(0.5);

/**
 * The share of a recipe's jars that are ready by an hour.
 *
 *     F(t) = P(W < ln(t/median)/σ + w½),  W of the model's distribution
 *
 * @param hours    [h], scalar, above 0
 * @param medianH  of its recipe [h], scalar
 * @param scale    σ of the fit on the logarithm of time, scalar
 * @param model    Weibull or log-normal times
 * @returns        a share, scalar
 *
 * Valid:    times above 0
 * Accuracy: as the fit
 * Source:   J. D. Kalbfleisch and R. L. Prentice, The Statistical Analysis of Failure Time Data (2002), 2.2
 * @example
 * shareReadyBy(8, 8, 0.2, "lognormal") // => 0.50
 */
export const shareReadyBy = (hours: number, medianH: number, scale: number, model: ReadyModel): number =>
  -Math.expm1(errorDistributions[model].logUpper(errorAt(hours, medianH, scale, model)));

/**
 * The hour at which a jar that was not ready at `notYetH` is as likely ready as not.
 *
 *     S(t) = S(t0)/2
 *
 * @param notYetH  the last hour at which it was seen not ready, scalar, above 0
 * @param medianH  of its recipe [h], scalar
 * @param scale    σ of the fit on the logarithm of time, scalar
 * @param model    Weibull or log-normal times
 * @returns        [h], scalar, later than both
 *
 * Valid:    times above 0
 * Accuracy: as the fit
 * Source:   survival functions of the two distributions; halving what is left of the doubt is the usual bisection
 * @example
 * evenChanceHour(8, 8, 0.2, "weibull") // => 9.19
 */
export function evenChanceHour(notYetH: number, medianH: number, scale: number, model: ReadyModel): number {
  const { logUpper, quantile } = errorDistributions[model];
  const halved = 1 - Math.exp(logUpper(errorAt(notYetH, medianH, scale, model))) / 2;
  return medianH * Math.exp(scale * (quantile(halved) - quantile(0.5)));
}

function lookAgain(
  jar: JarView,
  medianH: number | null,
  scale: number | null,
  model: ReadyModel,
): string | null {
  const ready = jar.looks.ready;
  if (ready === null || ready.doneByH !== null || jar.emptied !== null || jar.children.length > 0)
    return null;
  const hours =
    medianH === null || scale === null || ready.notYetH === 0
      ? ready.notYetH * halfAsLongAgain
      : evenChanceHour(ready.notYetH, medianH, scale, model);
  return new Date(epochMilliseconds(jar.madeAt) + hours * hourMs).toISOString();
}

const watchedJars = (read: NotebookReader): readonly JarView[] =>
  jarIds(read).flatMap((id) => {
    const jar = jarView(read, id);
    return jar !== null && jar.made === "mixed" && jar.looks.ready !== null ? [jar] : [];
  });

/** The jars that were looked at with their looks, and the times that these bound; null while there are none. */
export const watchedTimes = (read: NotebookReader, model: ReadyModel) =>
  read.derive(`ready-times:${model}`, (r) => {
    const jars = watchedJars(r);
    const spans = jars.flatMap((jar) => {
      const { ready } = jar.looks;
      return ready === null || (ready.notYetH === 0 && ready.doneByH === null)
        ? []
        : [{ jar: jar.id, group: groupKey(jar), left: ready.notYetH, right: ready.doneByH }];
    });
    return { jars, spans, times: spans.length === 0 ? null : readyTime(spans, model) };
  });

/** Every mixed jar that was looked at, by recipe, with the time to ready that the looks bound. */
export const readyView = (read: NotebookReader, model: ReadyModel = "weibull"): Ready =>
  read.derive(`ready:${model}`, (r) => {
    const { jars, spans, times } = watchedTimes(r, model);
    const keys = [...new Set(jars.map(groupKey))];
    return {
      model,
      scale: times?.fit?.scale ?? null,
      groups: keys.map((key) => {
        const own = jars.filter((jar) => groupKey(jar) === key);
        const time = times?.groups.find((group) => group.group === key);
        const [first] = own;
        const seen = spans.filter((span) => span.group === key);
        return {
          key,
          resins: first?.resins.map((named) => named.name).join(", ") ?? "",
          solvents: first?.solvents.map((named) => named.name).join(", ") ?? "",
          medianH: time?.median ?? null,
          intervalH: time?.interval ?? null,
          steps: seen.length === 0 ? [] : turnbull(seen).intervals,
          oneJar: own.length === 1,
          jars: own.map((jar) => ({
            id: jar.id,
            code: jar.code,
            mixedAt: jar.madeAt,
            looks: jar.looks.looks,
            notYetH: jar.looks.ready?.notYetH ?? 0,
            doneByH: jar.looks.ready?.doneByH ?? null,
            lookAgainAt: lookAgain(jar, time?.median ?? null, times?.fit?.scale ?? null, model),
          })),
        };
      }),
    };
  });
