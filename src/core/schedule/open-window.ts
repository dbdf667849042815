import type { Placement } from "./placement.ts";

/** Later than any window. */
export const never = 2 ** 30;

/** The window that is being filled, and what is known to find no more room in it. */
export class OpenWindow {
  readonly #placement: Placement;
  #at: number;
  /** From a moment on no gap of so many minutes is left. */
  #full: { readonly from: number; readonly minutes: number }[] = [];

  constructor(placement: Placement, from: number) {
    this.#placement = placement;
    this.#at = placement.net.windows.findIndex(([, until]) => until > from);
  }

  get closes(): number {
    return this.#placement.net.windows[this.#at]?.[1] ?? never;
  }

  get opensNext(): number {
    return this.#placement.net.windows[this.#at + 1]?.[0] ?? never;
  }

  /** False after the last window. */
  next(): boolean {
    if (this.closes === never) return false;
    this.#at++;
    this.#full = [];
    return true;
  }

  /** A group may find room in it. */
  mayHold(group: number): boolean {
    const soonest = this.#placement.soonest(group);
    if (soonest >= this.closes) return false;
    return !this.#full.some((gap) => soonest >= gap.from && this.#shortest(group) >= gap.minutes);
  }

  /** Keeps a group in its place if that is in the window, or else takes it out and puts it off. */
  keeps(group: number): boolean {
    const placement = this.#placement;
    const members = placement.members(group);
    if ((placement.start[members[0] as number] as number) < this.closes) return true;
    placement.takeOut(group);
    if (this.#isPlain(group))
      this.#full.push({ from: placement.soonest(group), minutes: this.#shortest(group) });
    for (const i of members) placement.release[i] = Math.max(placement.release[i] as number, this.opensNext);
    return false;
  }

  /** A group takes nothing but hands, and no pad. */
  #isPlain(group: number): boolean {
    const { change, needs } = this.#placement.net;
    const members = this.#placement.members(group);
    return change.length === 1 && members.length === 1 && needs[members[0] as number]?.length === 0;
  }

  /** The shortest of a group; less than nothing where one takes no hands. */
  #shortest(group: number): number {
    const { minutes, kitOf } = this.#placement.net;
    const own = (i: number): number => ((kitOf[i] as number) < 0 ? -1 : (minutes[i] as number));
    return Math.min(...this.#placement.members(group).map(own));
  }
}
