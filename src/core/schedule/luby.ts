/**
 * The sequence 1, 1, 2, 1, 1, 2, 4, … by which a search that may be unlucky is best begun again.
 *
 * @param i  place in the sequence, from 1
 * @returns  how long the run is, in units
 * @throws DomainError never
 *
 * Valid:  1 to 2^30
 * Source: M. Luby, A. Sinclair and D. Zuckerman, "Optimal speedup of Las Vegas algorithms", Inf. Process. Lett. 47 (1993) 173
 * @example
 * luby(7) // => 4
 */
export function luby(i: number): number {
  let k = 1;
  while (2 ** k - 1 < i) k++;
  return 2 ** k - 1 === i ? 2 ** (k - 1) : luby(i - 2 ** (k - 1) + 1);
}
