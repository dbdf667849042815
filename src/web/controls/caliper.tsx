import { createMemo, For, Show } from "solid-js";
import { known, withDigits } from "../words/number.ts";
import * as words from "../words/words.ts";
import { scaleOf } from "./scale.ts";

/**
 * A value with its give or take on a scale: beam above, two jaws down, the value a dot between. `mark` is another
 * value on the same scale to compare with (what the label says).
 */
export function Caliper(props: {
  readonly value: number;
  readonly giveOrTake: number;
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  readonly label: string;
  readonly mark?: { readonly at: number; readonly says: string } | undefined;
}) {
  const width = 346;
  const scale = createMemo(() => scaleOf(props.from, props.to, 16, width - 16));
  const said = () => known(props.value, props.giveOrTake);
  const x = (value: number) => scale().place(value);
  const read = () =>
    `${props.label}: ${words.controls.giveOrTake(`${said().value} ${props.unit}`, said().by)}${props.mark === undefined ? "" : `; ${props.mark.says}`}`;
  const jaws = () => [x(props.value - props.giveOrTake), x(props.value + props.giveOrTake)] as const;
  return (
    <svg width={width} height="78" viewBox={`0 0 ${width} 78`} font-size="16" role="img" aria-label={read()}>
      <path class="pen" d={`M0 46H${width}`} />
      <For each={scale().marks}>
        {(at) => (
          <g>
            <path class="fine" d={`M${x(at)} 46V53`} />
            <text x={x(at)} y="70" class="m soft">
              {withDigits(at, 3)
                .replace(/(\.\d*?)0+$/, "$1")
                .replace(/\.$/, "")}
            </text>
          </g>
        )}
      </For>
      <path class="cal" d={`M${jaws()[0]} 42V20H${jaws()[1]}V42`} />
      <circle class="dot" cx={x(props.value)} cy="36" r="7" />
      <text
        x={jaws()[1] > width - 90 ? jaws()[0] - 8 : jaws()[1] + 8}
        y="30"
        class={jaws()[1] > width - 90 ? "e" : ""}
      >
        ± {said().by}
      </text>
      <Show when={props.mark} keyed>
        {(mark) => (
          <g>
            <path class="pen" d={`M${x(mark.at)} 14V46`} />
            <text x={x(mark.at)} y="10" class="m">
              {mark.says}
            </text>
          </g>
        )}
      </Show>
    </svg>
  );
}
