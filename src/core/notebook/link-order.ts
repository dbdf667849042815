import type { Placed } from "./placed.ts";
import { stronglyConnected } from "./strongly-connected.ts";

/** Puts `node` after everything in `before`; true when that moved it. */
export function placeAfter(node: Placed, before: readonly Placed[], own = node.happened): boolean {
  let effective = own;
  for (const b of before) if (b.effective > effective) effective = b.effective;
  let depth = 0;
  for (const b of before) if (b.effective === effective && b.depth >= depth) depth = b.depth + 1;
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
export function placeAgain(
  nodes: ReadonlySet<Placed>,
  before: (node: Placed) => readonly Placed[],
): { moved: Placed[]; rings: Placed[][] } {
  const moved: Placed[] = [];
  const rings: Placed[][] = [];
  for (const component of stronglyConnected(nodes, (node) => before(node).filter((b) => nodes.has(b)))) {
    const [only] = component as [Placed];
    if (component.length === 1) {
      if (placeAfter(only, before(only))) moved.push(only);
      continue;
    }
    rings.push(component);
    const inside = new Set(component);
    const outside = component.flatMap(before).filter((b) => !inside.has(b));
    const own =
      component
        .map((n) => n.happened)
        .sort()
        .at(-1) ?? only.happened;
    for (const node of component) if (placeAfter(node, outside, own)) moved.push(node);
  }
  return { moved, rings };
}
