import { DomainError } from "../domain-error.ts";
import type { Metre } from "../units.ts";
import { lateralAreaOfFrustum } from "./frustum.ts";

/** A turned part measured with calipers at one height. */
export interface Station {
  readonly at: Metre;
  readonly diameter: Metre;
}

const refuse = (field: string, value: unknown, because: string): never => {
  throw new DomainError({ code: "contradiction", field, value, because });
};

/**
 * Side of a turned part from diameters measured along it: between two measurements it is a frustum. Two
 * measurements at one height are a shoulder, and its flat ring is counted.
 *
 *     A = Σ π·(d_i + d_{i+1})/2·√((z_{i+1} − z_i)² + ((d_i − d_{i+1})/2)²)
 *
 * @param profile  n measurements, heights z [m] never falling, diameters d [m]; from one end to the other
 * @param field    what to call the profile where it is refused
 * @returns        [m²], scalar, without the two ends
 * @throws DomainError for fewer than two measurements, a height that falls, or no length at all
 *
 * Valid:    a part that is round everywhere
 * Accuracy: never more than the smooth surface where it bulges; a ball cut into 8 comes out 2 % short
 * Source:   Archimedes, On the Sphere and Cylinder I, proposition 16, summed
 * @example
 * areaOfRevolution([{ at: metre(0), diameter: metre(0.03) }, { at: metre(0.4), diameter: metre(0.05) }]) // => 0.05028
 */
export function areaOfRevolution(profile: readonly Station[], field = "profile"): number {
  const [first, last] = [profile[0], profile.at(-1)];
  if (first === undefined || last === undefined || profile.length < 2)
    throw new DomainError({
      code: "not-enough-data",
      field,
      value: profile.length,
      because: "Two measured diameters or more would do.",
    });
  if (last.at === first.at) refuse(field, last.at, "All of it is at one height; a length would do.");
  return profile.slice(1).reduce((sum, to, i) => {
    const from = profile[i] as Station; // i runs one behind `to`
    if (!(to.at >= from.at))
      refuse(`${field}[${i + 1}].at`, to.at, "Heights go from one end to the other and never back.");
    return sum + lateralAreaOfFrustum(from.diameter, to.diameter, (to.at - from.at) as Metre); // not below 0: checked
  }, 0);
}
