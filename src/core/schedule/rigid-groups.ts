import type { Net } from "./net.ts";

/** Tasks that no plan moves against each other: placed together or not at all. */
export interface RigidGroups {
  readonly of: Int32Array;
  /** From the start of the first of the group. */
  readonly offset: Int32Array;
  readonly members: readonly (readonly number[])[];
}

/**
 * Tasks bound to each other by a least and a most wait that are the same.
 *
 * @param net  n tasks
 * @returns    groups by task (n), starts within the group [min] (n), and the members of each group in order of their starts
 * @throws DomainError never
 *
 * Valid:  waits that do not contradict each other
 * Source: the definition
 */
export function rigidGroups(net: Net): RigidGroups {
  const n = net.minutes.length;
  const of = new Int32Array(n).fill(-1);
  const offset = new Int32Array(n);
  const members: number[][] = [];
  for (let first = 0; first < n; first++) {
    if ((of[first] as number) >= 0) continue;
    const group = members.length;
    const found = [first];
    of[first] = group;
    for (const i of found)
      for (const { other, least } of net.out[i] ?? []) {
        const isBack = net.into[i]?.some((arc) => arc.other === other && arc.least === -least) ?? false;
        if (!isBack || (of[other] as number) >= 0) continue;
        of[other] = group;
        offset[other] = (offset[i] as number) + least;
        found.push(other);
      }
    const begin = Math.min(...found.map((i) => offset[i] as number));
    for (const i of found) offset[i] = (offset[i] as number) - begin;
    members.push(found.sort((a, b) => (offset[a] as number) - (offset[b] as number) || a - b));
  }
  return { of, offset, members };
}
