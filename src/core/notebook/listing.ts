import type { NotebookEntry } from "./entry.ts";
import type { Placed } from "./placed.ts";
import { isReadable } from "./readable.ts";
import { Row } from "./row.ts";
import type { Source } from "./tracking.ts";

const isSeen = (node: Placed): boolean => node.live && isReadable(node);
const always = (): boolean => true;

/** Entries that belong together (of one thing, of one kind, all), put into order when somebody looks. */
export class Listing implements Source {
  readonly #members: Placed[] = [];
  readonly #live = new Row(this.#members, isSeen);
  readonly #every = new Row(this.#members, always);
  #version = 0;

  current(): number {
    return this.#version;
  }

  add(node: Placed, version: number): void {
    this.#members.push(node);
    this.changed(node, version);
  }

  /** One of the entries here is not what it was, or not where: new, struck, brought back, emptied, moved. */
  changed(node: Placed, version: number): void {
    this.#version = version;
    this.#live.changed(node);
    this.#every.changed(node);
  }

  members(): readonly Placed[] {
    return this.#members;
  }

  /** What views see: live, with a body that can be read. */
  live(): readonly NotebookEntry[] {
    return this.#live.entries();
  }

  every(): readonly NotebookEntry[] {
    return this.#every.entries();
  }
}
