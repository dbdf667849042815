import { at } from "./vector.ts";

interface Rule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/** Nodes and weights on [−1, 1]: zeros of the Legendre polynomial by Newton from the cosine guess. */
function legendreRule(n: number): Rule {
  const nodes = new Float64Array(n);
  const weights = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let pass = 0; pass < 8; pass++) {
      let [p, before] = [1, 0];
      for (let k = 1; k <= n; k++) [p, before] = [((2 * k - 1) * x * p - (k - 1) * before) / k, p];
      slope = (n * (x * p - before)) / (x * x - 1);
      x -= p / slope;
    }
    nodes[i] = x;
    weights[i] = 2 / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}

const sixteen = legendreRule(16);

/**
 * The integral of a smooth function over [low, high] by Gauss–Legendre with 16 nodes in each of `panels` equal parts.
 *
 * Source: NIST Digital Library of Mathematical Functions, 3.5.15 and table 3.5.3
 * @example
 * integral((x) => Math.exp(x), 0, 1, 1) // => 1.718281828459
 */
export function integral(f: (x: number) => number, low: number, high: number, panels: number): number {
  const half = (high - low) / (2 * panels);
  let total = 0;
  for (let panel = 0; panel < panels; panel++) {
    const centre = low + (2 * panel + 1) * half;
    for (let i = 0; i < 16; i++) total += at(sixteen.weights, i) * f(centre + half * at(sixteen.nodes, i));
  }
  return total * half;
}
