import { createMemo, For, Show } from "solid-js";
import type { DriedDown } from "../../core/jar/jar-fold.ts";
import type { CutFigure } from "../../core/jar/reckoning.ts";
import { poundsPerUsGallonFromCut } from "../../core/units.ts";
import { scaleOf } from "../controls/scale.ts";
import { upToDigits } from "../words/number.ts";
import * as words from "../words/words.ts";
import { cutKnown, giveOrTake } from "./jar-text.ts";

const width = 346;
const left = 108;
const pitch = 34;

const jawsOf = (cut: CutFigure): readonly [number, number, number] => {
  const value = poundsPerUsGallonFromCut(cut.value);
  const by = giveOrTake((value * cut.standardUncertainty) / cut.value);
  return [value - by, value, value + by];
};

/** What was reckoned, what the spoonful says, and both together, each with its jaws on one scale. */
export function ThreeCuts(props: { readonly driedDown: DriedDown }) {
  const t = words.jars.three;
  const rows = createMemo(() =>
    (["reckoned", "measured", "combined"] as const)
      .filter((which) => which !== "combined" || !props.driedDown.disagrees)
      .map((which) => ({
        which,
        jaws: jawsOf(props.driedDown[which]),
        said: cutKnown(props.driedDown[which]),
      })),
  );
  const scale = createMemo(() => {
    const all = rows().flatMap((row) => row.jaws);
    const [low, high] = [Math.min(...all), Math.max(...all)];
    const air = (high - low) * 0.08;
    return scaleOf(low - air, high + air, left, width - 16);
  });
  const foot = () => rows().length * pitch + 8;
  const read = () =>
    rows()
      .map(({ which, said }) => t.row(t[which], said.value, said.by))
      .join("; ");
  return (
    <svg
      class="three-cuts"
      width={width}
      height={foot() + 28}
      viewBox={`0 0 ${width} ${foot() + 28}`}
      font-size="16"
      role="img"
      aria-label={read()}
    >
      <path class="pen" d={`M${left} ${foot()}H${width}`} />
      <For each={scale().marks}>
        {(at) => (
          <g>
            <path class="fine" d={`M${scale().place(at)} ${foot()}V${foot() + 6}`} />
            <text x={scale().place(at)} y={foot() + 23} class="m soft">
              {upToDigits(at, 3)}
            </text>
          </g>
        )}
      </For>
      <For each={rows()}>
        {(row, i) => {
          const y = () => i() * pitch + 12;
          const x = (at: 0 | 1 | 2) => scale().place(row.jaws[at]);
          return (
            <g>
              <text x="0" y={y() + 13} classList={{ b: props.driedDown.stands === row.which }}>
                {t[row.which]}
              </text>
              <path class="cal" d={`M${x(0)} ${y() + 18}V${y()}H${x(2)}V${y() + 18}`} />
              <Show
                when={props.driedDown.stands === row.which}
                fallback={<circle class="ring" cx={x(1)} cy={y() + 12} r="5" />}
              >
                <circle class="dot" cx={x(1)} cy={y() + 12} r="6" />
              </Show>
            </g>
          );
        }}
      </For>
    </svg>
  );
}
