import { type Metre, metre } from "../units.ts";

/** How well a coat's thickness is known, by what it comes from. What shares a source is off together. */
export interface Doubt {
  readonly source: string;
  /** Standard uncertainty as a part of the thickness. */
  readonly relative: number;
}

/** Something that happened to a surface. */
export type FilmAct =
  | {
      readonly what: "coat";
      readonly entry: string;
      /** All that stays on the work, were none of it to sink in; null where nobody can know. */
      readonly dry: Metre | null;
      readonly doubts: readonly Doubt[];
    }
  | {
      readonly what: "taken off";
      readonly entry: string;
      readonly removed: Metre;
      readonly doubts: readonly Doubt[];
    }
  | { readonly what: "stripped"; readonly entry: string }
  | { readonly what: "cut through"; readonly entry: string };

/** How much of the first coats on bare wood sinks in, coat by coat; each as a part of the coat. */
export interface Sinking {
  readonly shares: readonly number[];
  /** Standard uncertainty of a share, as a part of it. */
  readonly relative: number;
}

export interface FilmLayer {
  readonly entry: string;
  /** What stands above the wood of it when it has dried. */
  readonly laid: Metre;
  readonly sunk: Metre;
  /** What sanding has left of it. */
  readonly left: Metre;
}

export interface FilmBuilt {
  /** From the wood up; those of an unknown thickness are not among them. */
  readonly layers: readonly FilmLayer[];
  readonly thickness: Metre;
  readonly standardUncertainty: number;
  /** Parts of the variance by source, largest first. */
  readonly contributions: readonly { readonly source: string; readonly share: number }[];
  /** Coats of which nobody can know how thick they are. */
  readonly unknown: readonly string[];
  /** Work that would have taken off more than was there. */
  readonly tooMuch: readonly string[];
  /** It was cut through somewhere, and not stripped since. */
  readonly cutThrough: boolean;
  /** The film after each act, by entry. */
  readonly after: ReadonlyMap<string, Metre>;
}

/** A pile of layers from the wood up, with what each source puts them off by together. */
class Pile {
  layers: FilmLayer[] = [];
  unknown: string[] = [];
  readonly tooMuch: string[] = [];
  readonly doubts = new Map<string, number>();
  cutThrough = false;
  #onWood = 0;

  get thickness(): number {
    return this.layers.reduce((sum, layer) => sum + layer.left, 0);
  }

  #doubt(doubts: readonly Doubt[], of: number): void {
    for (const { source, relative } of doubts)
      this.doubts.set(source, (this.doubts.get(source) ?? 0) + relative * of);
  }

  coat(act: FilmAct & { readonly what: "coat" }, sinking: Sinking): void {
    const share = sinking.shares[this.#onWood] ?? 0;
    this.#onWood++;
    if (act.dry === null) {
      this.unknown.push(act.entry);
      return;
    }
    const laid = metre(act.dry * (1 - share));
    this.layers.push({ entry: act.entry, laid, sunk: metre(act.dry * share), left: laid });
    this.#doubt(act.doubts, laid);
    if (share > 0) this.#doubt([{ source: "sinking", relative: -sinking.relative * share }], act.dry);
  }

  /** Off the top, layer by layer. */
  takeOff(act: FilmAct & { readonly what: "taken off" }): void {
    let removed: number = act.removed;
    if (this.unknown.length === 0 && removed > this.thickness * (1 + 1e-12)) this.tooMuch.push(act.entry);
    this.#doubt(act.doubts, -Math.min(removed, this.thickness));
    this.layers = this.layers
      .toReversed()
      .map((layer) => {
        const off = Math.min(removed, layer.left);
        removed -= off;
        return { ...layer, left: metre(layer.left - off) };
      })
      .reverse();
  }

  strip(): void {
    this.layers = [];
    this.unknown = [];
    this.doubts.clear();
    this.cutThrough = false;
    this.#onWood = 0;
  }
}

function contributionsOf(doubts: ReadonlyMap<string, number>, variance: number): FilmBuilt["contributions"] {
  return [...doubts]
    .map(([source, off]) => ({ source, share: variance === 0 ? 0 : off ** 2 / variance }))
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share - a.share);
}

/**
 * A film from what happened to a surface: coats that sink in at first and then build, work that takes off from the top.
 *
 *     coat i on bare wood: dry·(1 − share_i) stands, dry·share_i sinks in
 *     u² = Σ over sources (Σ over acts uses of it)²
 *
 * Two coats whose thickness comes from the same assumption are off together, two that were each weighed are not: their
 * sources carry other names.
 *
 * @param acts     in the order in which they happened
 * @param sinking  shares of the first coats on bare wood that sink in; none where it is sealed
 * @returns        layers [m] from the wood up, the film and its standard uncertainty [m], and what is not known
 *
 * Valid:    films without pores to fill; a coat melts into the one below, which moves the border and not the sum
 * Accuracy: as the doubts that it is given
 * Source:   addition; uncertainties as JCGM 100:2008, 5.2.2, with sources fully correlated or not at all
 * @example
 * filmBuiltUp([{ what: "coat", entry: "a", dry: metre(1e-5), doubts: [] }], { shares: [0.5], relative: 0.3 }).thickness // => 0.000005
 */
export function filmBuiltUp(acts: readonly FilmAct[], sinking: Sinking): FilmBuilt {
  const pile = new Pile();
  const after = new Map<string, Metre>();
  for (const act of acts) {
    if (act.what === "coat") pile.coat(act, sinking);
    else if (act.what === "taken off") pile.takeOff(act);
    else if (act.what === "stripped") pile.strip();
    else pile.cutThrough = true;
    after.set(act.entry, metre(pile.thickness));
  }
  const variance = [...pile.doubts.values()].reduce((sum, off) => sum + off ** 2, 0);
  return {
    layers: pile.layers,
    thickness: metre(pile.thickness),
    standardUncertainty: Math.sqrt(variance),
    contributions: contributionsOf(pile.doubts, variance),
    unknown: pile.unknown,
    tooMuch: pile.tooMuch,
    cutThrough: pile.cutThrough,
    after,
  };
}
