import { For, Show } from "solid-js";
import type { JarView } from "../../../core/views/jar.ts";
import * as words from "../../words/words.ts";
import { type LabelFormat, papers, placeOf } from "./formats.ts";
import { Label } from "./label.tsx";
import type { LabelLayout } from "./label-layout.ts";

export interface SheetLabel {
  readonly jar: JarView;
  readonly layout: LabelLayout;
  readonly address: string;
}

/** One sheet of labels, everything in millimetres, with a bar to measure the print by where the foot has room. */
export function LabelSheet(props: {
  readonly format: LabelFormat;
  readonly labels: readonly SheetLabel[];
  readonly invented: boolean;
  /** How far the printer is off, mm. */
  readonly moved: { readonly right: number; readonly down: number };
}) {
  const f = () => props.format;
  const paper = () => papers[f().paper];
  const t = words.jars.labelText;
  const feet = () => f().top + f().down * f().height;
  const hasFoot = () => paper().height - feet() >= 12;
  return (
    <svg
      class={`label-sheet ${f().paper}`}
      width={`${paper().width}mm`}
      height={`${paper().height}mm`}
      viewBox={`0 0 ${paper().width} ${paper().height}`}
      role="img"
      aria-label={t.sheet(props.labels.map((one) => one.jar.code).join(", "))}
    >
      <rect width={paper().width} height={paper().height} fill="#fff" />
      <g transform={`translate(${props.moved.right} ${props.moved.down})`}>
        <For each={props.labels}>
          {(one, i) => (
            <g transform={`translate(${placeOf(f(), i()).x} ${placeOf(f(), i()).y})`}>
              <Show when={f().dashes}>
                <rect
                  width={f().width}
                  height={f().height}
                  fill="none"
                  stroke="#888"
                  stroke-width="0.25"
                  stroke-dasharray="1.4 1.2"
                />
              </Show>
              <Label jar={one.jar} layout={one.layout} address={one.address} />
            </g>
          )}
        </For>
      </g>
      <Show when={hasFoot()}>
        <text x={Math.max(6, f().left)} y={paper().height - 8.5} font-size="3.2">
          {f().dashes ? t.tip : t.tipCut}
          <Show when={props.invented}> {words.shell.demo}.</Show>
        </text>
        <g transform={`translate(${Math.max(6, f().left)} ${paper().height - 7})`}>
          <path d="M0.1 0.4V3.6M0.1 2H99.9M99.9 0.4V3.6" fill="none" stroke="#000" stroke-width="0.3" />
          <rect x="31" y="0" width="38" height="4" fill="#fff" />
          <text x="50" y="3.2" font-size="3.6" class="m">
            {t.measure}
          </text>
        </g>
      </Show>
    </svg>
  );
}
