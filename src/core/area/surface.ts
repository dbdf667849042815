/** What a surface shows of the wood: the sides of its fibres, or their cut ends, which drink more. */
export type Grain = "side" | "end";

/** One named surface of a part, flattened out. */
export interface Surface {
  readonly surface: string;
  /** [m²], above or equal to 0. */
  readonly areaM2: number;
  readonly grain: Grain;
}
