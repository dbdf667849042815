/**
 * The strongly connected components of a directed graph, each after every component that it points to. Without
 * recursion, so that a chain of any length will do.
 *
 * Source: R. Tarjan, "Depth-first search and linear graph algorithms", SIAM J. Comput. 1 (1972) 146
 */
export function stronglyConnected<T>(nodes: Iterable<T>, pointsTo: (node: T) => readonly T[]): T[][] {
  const components: T[][] = [];
  const found = new Map<T, { index: number; low: number; open: boolean }>();
  const open: T[] = [];
  const enter = (node: T) => {
    const mark = { index: found.size, low: found.size, open: true };
    found.set(node, mark);
    open.push(node);
    return { node, mark, targets: pointsTo(node), next: 0 };
  };
  for (const root of nodes) {
    if (found.has(root)) continue;
    const path = [enter(root)];
    for (let here = path.at(-1); here !== undefined; here = path.at(-1)) {
      if (here.next < here.targets.length) {
        const target = here.targets[here.next++] as T;
        const seen = found.get(target);
        if (seen === undefined) path.push(enter(target));
        else if (seen.open) here.mark.low = Math.min(here.mark.low, seen.index);
        continue;
      }
      path.pop();
      const above = path.at(-1);
      if (above !== undefined) above.mark.low = Math.min(above.mark.low, here.mark.low);
      if (here.mark.low !== here.mark.index) continue;
      const component = open.splice(open.lastIndexOf(here.node));
      for (const node of component) (found.get(node) as { open: boolean }).open = false;
      components.push(component);
    }
  }
  return components;
}
