import { compareInstants } from "./instant.ts";
import { come, type Placed } from "./placed.ts";
import { stronglyConnected } from "./strongly-connected.ts";

const later = (a: string, b: string): string => (compareInstants(a, b) < 0 ? b : a);

/** Puts `node`, which happened at `own`, after everything in `before`; true when that moved it. */
export function placeAfter(node: Placed, before: readonly Placed[], own: string): boolean {
  let effective = own;
  for (const b of before) effective = later(effective, b.effective);
  let depth = 0;
  for (const b of before)
    if (b.depth >= depth && compareInstants(b.effective, effective) === 0) depth = b.depth + 1;
  const moved = node.effective !== effective || node.depth !== depth || node.tie !== own;
  node.effective = effective;
  node.depth = depth;
  node.tie = own;
  return moved;
}

/** Everything that hangs on `start` through links to it, with `start` itself. */
export function closure(start: Iterable<Placed>, next: (node: Placed) => readonly Placed[]): Set<Placed> {
  const reached = new Set(start);
  for (const node of reached) for (const after of next(node)) reached.add(after); // a Set yields what is added to it
  return reached;
}

/**
 * Works out the places of `nodes` again, which must hold all that hangs on any of them. Entries whose links form a ring
 * share one place in time.
 *
 * @returns which moved, and the rings found
 */
export function placeAgain(nodes: ReadonlySet<Placed>): { moved: Placed[]; rings: Placed[][] } {
  const moved: Placed[] = [];
  const rings: Placed[][] = [];
  const within = (node: Placed): Placed[] => come(node.about).filter((b) => nodes.has(b));
  for (const component of stronglyConnected(nodes, within)) {
    const inside = new Set(component.length > 1 ? component : []);
    if (inside.size > 0) rings.push(component);
    const before = component.flatMap((node) => come(node.about)).filter((b) => !inside.has(b));
    const own = component.map((node) => node.kept.entry.happened).reduce(later);
    for (const node of component) if (placeAfter(node, before, own)) moved.push(node);
  }
  return { moved, rings };
}
