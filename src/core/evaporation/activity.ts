import { dortmund, type GroupSize, originalUnifac, type UnifacSet } from "./unifac-parameters.ts";
import type { Volatile } from "./volatiles.ts";

/** Activity coefficients in one fixed list of components. */
export interface ActivityModel {
  readonly method: UnifacSet["method"];
  /** Writes ln γ of each component into `out`: mole fractions in the list's order (they need not sum to one), T in K. */
  readonly lnGamma: (moles: Readonly<Numbers>, temperature: number, out: Numbers) => void;
}
export type Numbers = Float64Array;

interface Sizes {
  readonly volume: readonly number[];
  readonly surface: readonly number[];
  /** Counts of each group in each molecule, molecule by molecule. */
  readonly counts: Numbers;
  readonly groups: readonly GroupSize[];
}

function sizesOf(set: UnifacSet, components: readonly Volatile[]): Sizes {
  const molecules = components.map((c) => set.molecules[c] ?? {});
  const names = Object.keys(set.groups).filter((name) => molecules.some((m) => (m[name] ?? 0) > 0));
  const groups = names.map((name) => set.groups[name] as GroupSize);
  const sum = (m: Readonly<Record<string, number>>, of: (g: GroupSize) => number): number =>
    groups.reduce((total, g, k) => total + (m[names[k] as string] ?? 0) * of(g), 0);
  return {
    volume: molecules.map((m) => sum(m, (g) => g.volume)),
    surface: molecules.map((m) => sum(m, (g) => g.surface)),
    counts: Float64Array.from(molecules.flatMap((m) => names.map((name) => m[name] ?? 0))),
    groups,
  };
}

/** Fills ψ between the groups at a temperature, row by row. */
function interactionsAt(set: UnifacSet, groups: readonly GroupSize[]): (t: number, psi: Numbers) => void {
  const terms = groups.flatMap((from) =>
    groups.map((to) =>
      from.main === to.main
        ? ([0, 0, 0] as const)
        : (set.interactions[`${from.main}-${to.main}`] ?? [0, 0, 0]),
    ),
  );
  return (t, psi) => {
    for (let i = 0; i < terms.length; i++) {
      const [a, b, c] = terms[i] as readonly [number, number, number];
      psi[i] = a === 0 && b === 0 && c === 0 ? 1 : Math.exp(-(a / t + b + c * t));
    }
  };
}

/** ln Γ of each group in a mixture of groups, given as amounts. */
function lnGroupGamma(
  surface: Numbers,
  psi: Numbers,
  amounts: Numbers,
  offset: number,
  theta: Numbers,
  out: Numbers,
): void {
  const n = surface.length;
  let total = 0;
  for (let m = 0; m < n; m++) total += at(amounts, offset + m) * at(surface, m);
  for (let m = 0; m < n; m++) theta[m] = (at(amounts, offset + m) * at(surface, m)) / total;
  for (let k = 0; k < n; k++) out[offset + k] = 0;
  for (let m = 0; m < n; m++) {
    let mean = 0;
    for (let j = 0; j < n; j++) mean += at(theta, j) * at(psi, j * n + m);
    out[offset + m] = at(out, offset + m) + 1 - Math.log(mean);
    const share = at(theta, m) / mean;
    for (let k = 0; k < n; k++) out[offset + k] = at(out, offset + k) - share * at(psi, k * n + m);
  }
  for (let k = 0; k < n; k++) out[offset + k] = at(out, offset + k) * at(surface, k);
}

const at = (x: Readonly<Numbers>, i: number): number => x[i] as number; // inside the arrays' own lengths

/** The combinatorial part: size and shape alone. Returns a function that adds nothing but writes. */
function combinatorial(sizes: Sizes, power: number): (moles: Readonly<Numbers>, out: Numbers) => void {
  const scaled = sizes.volume.map((r) => r ** power);
  const n = scaled.length;
  return (moles, out) => {
    let [total, volume, powered, surface] = [0, 0, 0, 0];
    for (let i = 0; i < n; i++) {
      const x = at(moles, i);
      total += x;
      volume += x * (sizes.volume[i] as number);
      powered += x * (scaled[i] as number);
      surface += x * (sizes.surface[i] as number);
    }
    for (let i = 0; i < n; i++) {
      const [r, q] = [sizes.volume[i] as number, sizes.surface[i] as number];
      const v = ((scaled[i] as number) * total) / powered;
      const shape = (r / q) * (surface / volume);
      out[i] = 1 - v + Math.log(v) - 5 * q * (1 - shape + Math.log(shape));
    }
  };
}

/** The residual part: ln γ = Σ ν (ln Γ − ln Γ in the pure liquid), added to what is there. */
function residual(set: UnifacSet, sizes: Sizes): (moles: Readonly<Numbers>, t: number, out: Numbers) => void {
  const n = sizes.groups.length;
  const molecules = sizes.volume.length;
  const surface = Float64Array.from(sizes.groups, (g) => g.surface);
  const fillPsi = interactionsAt(set, sizes.groups);
  const [psi, theta, amounts, mixed] = [n * n, n, n, n].map((k) => new Float64Array(k)) as [
    Numbers,
    Numbers,
    Numbers,
    Numbers,
  ];
  const pure = new Float64Array(molecules * n);
  let known = Number.NaN;
  return (moles, t, out) => {
    if (t !== known) {
      fillPsi(t, psi);
      for (let i = 0; i < molecules; i++) lnGroupGamma(surface, psi, sizes.counts, i * n, theta, pure);
      known = t;
    }
    amounts.fill(0);
    for (let i = 0; i < molecules; i++)
      for (let k = 0; k < n; k++) amounts[k] = at(amounts, k) + at(moles, i) * at(sizes.counts, i * n + k);
    lnGroupGamma(surface, psi, amounts, 0, theta, mixed);
    for (let i = 0; i < molecules; i++)
      for (let k = 0; k < n; k++) {
        const count = at(sizes.counts, i * n + k);
        if (count > 0) out[i] = at(out, i) + count * (at(mixed, k) - at(pure, i * n + k));
      }
  };
}

/** Modified UNIFAC where it has every group; the original, for all of the mixture, where a ketone or an ester is in it. */
const setFor = (components: readonly Volatile[]): UnifacSet =>
  components.every((c) => dortmund.molecules[c] !== undefined) ? dortmund : originalUnifac;

/**
 * A model of activity coefficients for one list of components, by the groups that they are made of.
 *
 *     ln γ = ln γC + Σ ν·(ln Γ − ln Γpure)
 *     ln γC = 1 − V + ln V − 5·q·(1 − V′ + ln V′),  V ∝ r^¾ (original: r), V′ = (r/q)·(Σxq/Σxr)
 *     ln Γk = Qk·[1 − ln Σm θm·ψmk − Σm θm·ψkm / Σj θj·ψjm]
 *
 * It is fitted over a range of temperatures, room temperature included. Parameters fitted at the boiling point are not
 * for this: they put the vapour pressure of dilute alcohol at 30 °C up to 18 % too high.
 *
 * @param components  n names
 * @returns           the method that has groups for all of them, and a function that writes ln γ [n] from mole
 *                    numbers [n] and a temperature [K]
 *
 * Valid:    0–100 °C
 * Accuracy: total pressure of alcohol and water within 4 % at 30 °C, 2 % at 50 °C; the original set 13 %
 * Source:   J. Gmehling, J. Li, M. Schiller, Ind. Eng. Chem. Res. 32 (1993) 178; A. Fredenslund et al., AIChE J. 21 (1975) 1086
 * @example
 * Math.exp(lnActivity(["ethanol", "water"], [0.0001, 0.9999], kelvin(298.15))[0] ?? 0) // => 4.79
 */
export function activityModel(components: readonly Volatile[]): ActivityModel {
  const set = setFor(components);
  const sizes = sizesOf(set, components);
  const [bySize, byGroups] = [combinatorial(sizes, set.volumePower), residual(set, sizes)];
  return {
    method: set.method,
    lnGamma: (moles, t, out) => {
      bySize(moles, out);
      byGroups(moles, t, out);
    },
  };
}

/**
 * ln γ of each component once, where speed does not matter.
 *
 * @param components     n names
 * @param moleFractions  n, paired with them
 * @param temperature    [K], scalar
 * @returns              n values of ln γ
 *
 * Valid:    as `activityModel`
 * Accuracy: as `activityModel`
 * Source:   as `activityModel`
 * @example
 * lnActivity(["ethanol"], [1], kelvin(298.15))[0] // => 0
 */
export function lnActivity(
  components: readonly Volatile[],
  moleFractions: readonly number[],
  temperature: number,
): readonly number[] {
  const out = new Float64Array(components.length);
  activityModel(components).lnGamma(Float64Array.from(moleFractions), temperature, out);
  return [...out];
}
