import { createMemo, For } from "solid-js";
import type { Grain } from "../../core/wood/movement.ts";
import { woodFill } from "../trials/wood-fill.ts";
import { withDigits } from "../words/number.ts";
import * as words from "../words/words.ts";

const width = 338;
const left = 8;
const thickness = 54;
const top = 30;
/** Room at the right for the panel to grow into. */
const room = 78;

/** How much larger than the panel its movement has to be drawn, to be seen at all. */
function magnified(change: number, panel: number): number {
  const px = (Math.abs(change) / panel) * (width - left - room);
  return [1, 2, 5, 10, 20].find((times) => px * times >= 14) ?? 50;
}

/** Rings in the end of a board: arcs that lie flat, or lines that stand up. */
function rings(grain: Grain, from: number, to: number): readonly string[] {
  if (grain === "radial") {
    const n = 22;
    return Array.from({ length: n - 1 }, (_, i) => {
      const x = from + ((i + 1) * (to - from)) / n;
      return `M${x} ${top}Q${x + 4} ${top + thickness / 2} ${x + 2} ${top + thickness}`;
    });
  }
  const middle = (from + to) / 2;
  return Array.from({ length: 7 }, (_, i) => {
    const half = ((i + 1) / 7) * ((to - from) / 2);
    const rise = thickness * (0.22 + 0.09 * i);
    return `M${middle - half} ${top + thickness}Q${middle} ${top + thickness - 2 * rise} ${middle + half} ${top + thickness}`;
  });
}

/** The panel's end in the dry season, and its edge in the damp one. */
export function PanelPicture(props: {
  readonly widthMm: number;
  readonly changeMm: number;
  readonly species: string;
  readonly grain: Grain;
}) {
  const edge = width - room;
  const times = createMemo(() => magnified(props.changeMm, props.widthMm));
  const moved = () => {
    const px = (props.changeMm / props.widthMm) * (edge - left) * times();
    return Math.max(-120, Math.min(room - 8, px));
  };
  const wood = () => props.species.split(",")[0] ?? "";
  const says = () =>
    words.wood.picture(
      `${withDigits(props.widthMm, 3)} mm`,
      words.wood.grainSays[props.grain],
      `${withDigits(props.changeMm, 2)} mm`,
    );
  return (
    <figure class="panel-picture">
      <svg viewBox={`0 0 ${width} 118`} font-size="16" role="img" aria-label={says()}>
        <clipPath id="panel-end">
          <rect x={left} y={top} width={edge - left} height={thickness} />
        </clipPath>
        <rect x={left} y={top} width={edge - left} height={thickness} fill={woodFill(wood())} />
        <g clip-path="url(#panel-end)" class="rings">
          <For each={rings(props.grain, left, edge)}>{(d) => <path d={d} />}</For>
        </g>
        <rect class="pen" x={left} y={top} width={edge - left} height={thickness} />
        <path class="pen dashed" d={`M${edge} ${top}H${edge + moved()}V${top + thickness}H${edge}`} />
        <path class="cal" d={`M${edge} 24V12H${edge + moved()}V24`} />
        <text x={left} y="22">
          {withDigits(props.widthMm, 3)} mm
        </text>
        <text x={edge - 6} y={top + thickness + 22} class="e">
          {words.wood.pictureDry}
        </text>
        <text x={edge + moved() + 4} y={top + thickness + 22}>
          {words.wood.pictureDamp}
        </text>
      </svg>
      <figcaption class="soft small">
        {times() === 1 ? words.wood.toScale : words.wood.scale(times())}
      </figcaption>
    </figure>
  );
}
