import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { alikeFrom, profileLikeness, similarityLessScatter } from "../statistics/curves/profile-likeness.ts";
import { mean } from "../statistics/numeric/vector.ts";
import { defineCalculation } from "./calculation.ts";

const percents = z.array(z.number().min(0).max(120)).min(1).max(1000);
const jars = z.array(percents).min(1).max(1000);

/** At each hour the readings of every jar. */
function byHour(
  list: readonly (readonly number[])[],
  hours: number,
  field: string,
): readonly (readonly number[])[] {
  list.forEach((jar, i) => {
    if (jar.length !== hours)
      throw new DomainError({
        code: "contradiction",
        field: `${field}[${i}]`,
        value: jar.length,
        limits: { min: hours, max: hours },
        because: `Each jar is read once at each of the ${hours} hours.`,
      });
  });
  return Array.from({ length: hours }, (_, hour) => list.map((jar) => jar[hour] as number)); // as long, held above
}

export const dissolvingAlike = defineCalculation({
  name: "dissolving-alike",
  purpose:
    "Whether two lots of flakes dissolve alike, from the percent dissolved in their jars at the same hours",
  input: z.strictObject({
    atH: z
      .array(z.number().min(0).max(100_000))
      .min(1)
      .max(1000)
      .describe("hours of the looks; best before both are done"),
    reference: jars.describe("percent dissolved at each hour, a list for each jar"),
    other: jars.describe("the same for the lot to be compared"),
  }),
  output: z.object({
    differencePercent: z.number().describe("f1: the mean distance in percent of the reference"),
    similarity: z
      .number()
      .describe("f2: 100 for the same course, about 50 where they lie 10 points apart throughout"),
    similarityLessScatter: z
      .number()
      .nullable()
      .describe("f2 less what the jars' own scatter takes; null from one jar, or where scatter is all"),
    alike: z.boolean().describe("f2 of 50 or more: the sources' convention"),
  }),
  run: ({ atH, reference, other }) => {
    const [known, lot] = [byHour(reference, atH.length, "reference"), byHour(other, atH.length, "other")];
    const { difference, similarity } = profileLikeness(known.map(mean), lot.map(mean));
    if (!Number.isFinite(difference))
      throw new DomainError({
        code: "no-variation",
        field: "reference",
        value: 0,
        because: "Nothing of the reference had dissolved at any of these hours: later looks would do.",
      });
    return {
      differencePercent: difference,
      similarity,
      similarityLessScatter:
        reference.length < 2 || other.length < 2 ? null : similarityLessScatter(known, lot),
      alike: similarity >= alikeFrom,
    };
  },
  sources: [
    "J. W. Moore and H. H. Flanner, Pharmaceutical Technology 20 (1996) 64",
    "V. P. Shah et al., Pharmaceutical Research 15 (1998) 889: f2 and its bias; alike from 50 on is a convention for tablets, taken over",
  ],
  example: {
    input: {
      atH: [2, 4, 8, 12],
      reference: [[34.9166666667, 59.5, 79.2666666667, 95.075]],
      other: [[40.3391666667, 67.1458333333, 87.0075, 97.725]],
    },
    output: { differencePercent: 8.7287, similarity: 60.03, similarityLessScatter: null, alike: true },
  },
});
