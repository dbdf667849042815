import { For, Show } from "solid-js";
import type { JarView } from "../../../core/views/jar.ts";
import { words } from "../../words/words.ts";
import { Label, labelMm } from "./label.tsx";
import type { LabelText } from "./label-text.ts";

export const papers = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
} as const;
export type Paper = keyof typeof papers;

const across = 2;
const down = 3;
export const perSheet = across * down;

/** Six labels to a sheet, everything in millimetres, with a bar to measure the print by. */
export function LabelSheet(props: {
  readonly paper: Paper;
  readonly labels: readonly { readonly jar: JarView; readonly text: LabelText; readonly address: string }[];
  readonly invented: boolean;
}) {
  const paper = () => papers[props.paper];
  const left = () => (paper().width - across * labelMm.width) / 2;
  const top = () => (props.paper === "a4" ? 12 : 5);
  const t = words.jars.labelText;
  const feet = () => top() + down * labelMm.height;
  return (
    <svg
      class={`label-sheet ${props.paper}`}
      width={`${paper().width}mm`}
      height={`${paper().height}mm`}
      viewBox={`0 0 ${paper().width} ${paper().height}`}
      role="img"
      aria-label={t.sheet(props.labels.map((one) => one.text.code).join(", "))}
    >
      <rect width={paper().width} height={paper().height} fill="#fff" />
      <For each={props.labels}>
        {(one, i) => (
          <g
            transform={`translate(${left() + (i() % across) * labelMm.width} ${top() + Math.floor(i() / across) * labelMm.height})`}
          >
            <rect
              width={labelMm.width}
              height={labelMm.height}
              fill="none"
              stroke="#888"
              stroke-width="0.25"
              stroke-dasharray="1.4 1.2"
            />
            <Label jar={one.jar} text={one.text} address={one.address} />
          </g>
        )}
      </For>
      <text x={left()} y={feet() + 5} font-size="3.6">
        {t.tip}
        <Show when={props.invented}> {words.shell.demo}.</Show>
      </text>
      <g transform={`translate(${left()} ${feet() + 8})`}>
        <path d="M0.1 0.4V3.6M0.1 2H99.9M99.9 0.4V3.6" fill="none" stroke="#000" stroke-width="0.3" />
        <rect x="31" y="0" width="38" height="4" fill="#fff" />
        <text x="50" y="3.2" font-size="3.6" class="m">
          {t.measure}
        </text>
      </g>
    </svg>
  );
}
