import { createMemo, For } from "solid-js";
import type { SmallestDifference } from "../../../core/design/foresight/smallest-difference.ts";
import { withDigits } from "../../words/number.ts";
import * as words from "../../words/words.ts";

const width = 340;
const rowPx = 46;

/** The smallest difference that each factor can show, as bars against the band that is too small to matter. */
export function ShowBars(props: {
  readonly smallest: readonly SmallestDifference[];
  readonly matters: number;
}) {
  const shown = createMemo(() =>
    props.smallest.flatMap((s) => (s.value === null ? [] : [{ ...s, value: s.value }])),
  );
  const most = () => Math.max(props.matters * 1.3, ...shown().map((s) => s.value * 1.18));
  const x = (value: number) => (value / most()) * (width - 40);
  const height = () => shown().length * rowPx + 6;
  const short = (value: number) => withDigits(value, 2);
  const matters = () => String(props.matters);
  const said = () =>
    words.trials.smallestSaid(
      shown().map((s) => words.trials.smallestOf(words.trials.about(s.about, s.factor), short(s.value))),
      matters(),
    );
  return (
    <svg
      class="show-bars"
      width={width}
      height={height() + 28}
      viewBox={`0 0 ${width} ${height() + 28}`}
      font-size="16"
      role="img"
      aria-label={said()}
    >
      <defs>
        <pattern
          id="too-small"
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path d="M0 0V6" stroke="var(--ink)" stroke-width="1.3" />
        </pattern>
      </defs>
      <rect x="0" y="0" width={x(props.matters)} height={height()} fill="url(#too-small)" opacity=".55" />
      <path class="pen" d={`M${x(props.matters)} 0V${height() + 2}M0 ${height()}H${width}`} />
      <For each={shown()}>
        {(s, i) => (
          <g transform={`translate(0 ${i() * rowPx + 4})`}>
            <text x="4" y="15" class={`halo ${s.about === s.factor ? "b" : ""}`}>
              {words.trials.about(s.about, s.factor)}
            </text>
            <rect
              x="0"
              y="21"
              width={Math.max(2, x(s.value))}
              height="18"
              class="pen"
              style={{ fill: s.about === s.factor ? "var(--ink)" : "var(--sheet)" }}
            />
            <text x={x(s.value) + 7} y="36" class="b halo">
              {short(s.value)}
            </text>
          </g>
        )}
      </For>
      <text x="0" y={height() + 20} class="soft">
        0
      </text>
      <text x={Math.min(Math.max(x(props.matters), 76), width - 62)} y={height() + 20} class="m">
        {words.trials.mattersToYou(matters())}
      </text>
    </svg>
  );
}
