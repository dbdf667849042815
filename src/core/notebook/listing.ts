import type { NotebookEntry } from "./entry.ts";
import { inOrder, type Placed } from "./placed.ts";
import type { Source } from "./tracking.ts";

/** With few newcomers each is put into its place; with many the list is sorted anew. */
const fewNewcomers = 16;

/** Entries that belong together (of one thing, of one kind, all), sorted when somebody looks. */
export class Listing implements Source {
  readonly #nodes: Placed[] = [];
  /** How many from the front are known to be in order. */
  #sorted = 0;
  #version = 0;
  #live: readonly NotebookEntry[] | undefined;
  #every: readonly NotebookEntry[] | undefined;

  current(): number {
    return this.#version;
  }

  add(node: Placed, version: number): void {
    this.#nodes.push(node);
    this.changed(version);
  }

  /** One of the entries here is no longer what it was: struck, brought back, emptied. */
  changed(version: number): void {
    this.#version = version;
    this.#live = undefined;
    this.#every = undefined;
  }

  /** One of the entries here has another place now. */
  moved(version: number): void {
    this.#sorted = 0;
    this.changed(version);
  }

  nodes(): readonly Placed[] {
    return this.#nodes;
  }

  /** What views see: live, with a body that can be read. */
  live(): readonly NotebookEntry[] {
    this.#live ??= this.#inOrder()
      .filter((node) => node.live && node.readable)
      .map((node) => node.kept.entry);
    return this.#live;
  }

  every(): readonly NotebookEntry[] {
    this.#every ??= this.#inOrder().map((node) => node.kept.entry);
    return this.#every;
  }

  #inOrder(): readonly Placed[] {
    const nodes = this.#nodes;
    if (nodes.length - this.#sorted > fewNewcomers) nodes.sort(inOrder);
    else for (let i = this.#sorted; i < nodes.length; i++) this.#insert(i);
    this.#sorted = nodes.length;
    return nodes;
  }

  /** Moves the node at `from` to its place among those before it, which are in order. */
  #insert(from: number): void {
    const node = this.#nodes[from] as Placed;
    let low = 0;
    let high = from;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (inOrder(this.#nodes[middle] as Placed, node) <= 0) low = middle + 1;
      else high = middle;
    }
    if (low < from) this.#nodes.copyWithin(low + 1, low, from)[low] = node;
  }
}
