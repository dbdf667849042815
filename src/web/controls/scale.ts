export interface Scale {
  readonly place: (value: number) => number;
  /** Four or five round values within the scale. */
  readonly marks: readonly number[];
}

/** A straight scale from `from` at `left` to `to` at `right`, with round marks. */
export function scaleOf(from: number, to: number, left: number, right: number): Scale {
  const span = to - from;
  const step = roundStep(span / 4);
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  const marks = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) =>
    Number(((first + i) * step).toPrecision(12)),
  );
  return { place: (value) => left + ((value - from) / span) * (right - left), marks };
}

/** The next of 1, 2, 2.5, 5 × 10ⁿ from `size` up. */
function roundStep(size: number): number {
  const power = 10 ** Math.floor(Math.log10(size));
  const nice = [1, 2, 2.5, 5, 10].find((n) => n * power >= size * (1 - 1e-9)) ?? 10;
  return nice * power;
}
