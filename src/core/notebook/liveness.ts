import type { Placed } from "./placed.ts";
import { stronglyConnected } from "./strongly-connected.ts";

/**
 * Works out along the strikes which of `nodes` are live, never by clock or id. `nodes` must hold all that is struck by any
 * of them. An entry is live unless a live entry strikes it; strikes that nothing from outside decides form a ring, whose
 * entries are all live.
 *
 * @returns which changed, and the rings found
 */
export function judgeLiveness(
  nodes: ReadonlySet<Placed>,
  strikersOf: (node: Placed) => readonly Placed[],
  struckBy: (node: Placed) => readonly Placed[],
): { changed: Placed[]; rings: Placed[][] } {
  const undecided = new Set(nodes);
  const changed: Placed[] = [];
  const rings: Placed[][] = [];
  let queue: Placed[] = [...nodes];
  const decide = (node: Placed, live: boolean): void => {
    undecided.delete(node);
    if (node.live !== live) changed.push(node);
    node.live = live;
    queue.push(...struckBy(node));
  };
  const settle = (): void => {
    for (let node = queue.pop(); node !== undefined; node = queue.pop()) {
      if (!undecided.has(node)) continue;
      const strikers = strikersOf(node);
      if (strikers.some((s) => s.live && !undecided.has(s))) decide(node, false);
      else if (strikers.every((s) => !undecided.has(s))) decide(node, true);
    }
  };
  for (settle(); undecided.size > 0; settle()) {
    // Every undecided entry is struck by an undecided one, so the first component that nothing outside strikes is a ring.
    const pending = (node: Placed) => strikersOf(node).filter((s) => undecided.has(s));
    const [ring] = stronglyConnected(undecided, pending) as [Placed[]];
    queue = [];
    for (const node of ring) decide(node, true);
    rings.push(ring);
  }
  return { changed, rings };
}
