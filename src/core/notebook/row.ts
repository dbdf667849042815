import type { NotebookEntry } from "./entry.ts";
import { inOrder, type Placed } from "./placed.ts";

/** Up to this many changes are put into the row one by one; with more it is made anew. */
const fewChanges = 16;

/** Those of some entries that are wanted, in order. Each look gives a list of its own, which does not change later. */
export class Row {
  readonly #members: readonly Placed[];
  readonly #isWanted: (node: Placed) => boolean;
  /** Changed since the last look; null before the first, and when there are too many to count. */
  #changes: Set<Placed> | null = null;
  #nodes: Placed[] = [];
  #entries: NotebookEntry[] = [];

  /** @param members  grows as entries come; every newcomer is also told by `changed` */
  constructor(members: readonly Placed[], isWanted: (node: Placed) => boolean) {
    this.#members = members;
    this.#isWanted = isWanted;
  }

  changed(node: Placed): void {
    if (this.#changes === null) return;
    this.#changes.add(node);
    if (this.#changes.size > fewChanges) this.#changes = null;
  }

  entries(): readonly NotebookEntry[] {
    if (this.#changes === null) this.#makeAnew();
    else if (this.#changes.size > 0) this.#take(this.#changes);
    this.#changes = new Set();
    return this.#entries;
  }

  #makeAnew(): void {
    this.#nodes = this.#members.filter(this.#isWanted).sort(inOrder);
    this.#entries = this.#nodes.map((node) => node.kept.entry);
  }

  #take(changes: ReadonlySet<Placed>): void {
    for (const node of changes) this.#remove(node);
    for (const node of changes) if (this.#isWanted(node)) this.#insert(node);
  }

  /** Looks for the node itself, since its place may not be what it was. */
  #remove(node: Placed): void {
    const at = this.#nodes.indexOf(node);
    if (at === -1) return;
    this.#nodes.splice(at, 1);
    this.#entries = this.#entries.toSpliced(at, 1);
  }

  #insert(node: Placed): void {
    let low = 0;
    let high = this.#nodes.length;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (inOrder(this.#nodes[middle] as Placed, node) <= 0) low = middle + 1;
      else high = middle;
    }
    this.#nodes.splice(low, 0, node);
    this.#entries = this.#entries.toSpliced(low, 0, node.kept.entry); // the list that was given out stays as it is
  }
}
