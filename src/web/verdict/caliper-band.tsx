import { createMemo, For } from "solid-js";
import { scaleOf } from "../controls/scale.ts";
import type { Saying } from "../words/en/verdict.ts";
import * as words from "../words/words.ts";
import { figuresOf } from "./figures.ts";
import type { VerdictPair } from "./questions.ts";

/** One difference with its jaws against the band that is too small to matter; the scale is that of all the others. */
export function CaliperBand(props: {
  readonly pair: VerdictPair;
  readonly matters: number;
  readonly scale: readonly [number, number];
  readonly how: Saying;
  readonly says: string;
  readonly width: number;
}) {
  const height = 108;
  const line = 84;
  const scale = createMemo(() => scaleOf(props.scale[0], props.scale[1], 6, props.width - 6));
  const x = (value: number) => scale().place(value);
  const [left, right] = [() => x(props.pair.interval[0]), () => x(props.pair.interval[1])];
  const at = () => x(props.pair.difference);
  const told = () =>
    words.verdict.value(figuresOf(props.pair, props.matters, props.how.shares).difference, props.how);
  const wide = () => told().length * 10 + 16;
  const labelAt = () => Math.min(Math.max(at(), wide() / 2), props.width - wide() / 2);
  return (
    <svg
      width={props.width}
      height={height}
      viewBox={`0 0 ${props.width} ${height}`}
      font-size="16"
      role="img"
      aria-label={props.says}
    >
      <defs>
        <pattern
          id="no-matter"
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path d="M0 0V7" stroke="var(--ink)" stroke-width="1.2" opacity=".55" />
        </pattern>
      </defs>
      <rect
        x={x(-props.matters)}
        width={x(props.matters) - x(-props.matters)}
        height={line}
        fill="url(#no-matter)"
      />
      <path
        class="pen"
        d={`M${x(-props.matters)} 0V${line}M${x(props.matters)} 0V${line}M0 ${line}H${props.width}`}
      />
      <path class="fine" d={`M${x(0)} 0V${line}`} stroke-dasharray="3 5" />
      <path class="cal under" d={`M${left()} 38V12H${right()}V38`} />
      <path class="cal" d={`M${left()} 38V12H${right()}V38`} />
      <circle cx={at()} cy="31" r="11" fill="var(--ground)" />
      <circle class="dot" cx={at()} cy="31" r="8" />
      <rect x={labelAt() - wide() / 2} y="46" width={wide()} height="26" fill="var(--ground)" />
      <text x={labelAt()} y="66" class="m b" font-size="19">
        {told()}
      </text>
      <For each={scale().marks}>
        {(mark) => (
          <text x={x(mark)} y="103" class="m soft">
            {words.verdict.mark(mark, props.how).replace("-", "−")}
          </text>
        )}
      </For>
    </svg>
  );
}
