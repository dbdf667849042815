import { createMemo, For } from "solid-js";
import { finishColour } from "../../../core/colour/finish-colour.ts";
import { hexFromSrgb } from "../../../core/colour/srgb.ts";
import type { JarView } from "../../../core/views/jar.ts";
import { words } from "../../words/words.ts";
import { finishOfJar } from "../jar-look.ts";
import { brokenInto, type LabelText } from "./label-text.ts";
import { qrPath } from "./qr-path.ts";

/** One label, in millimetres. */
export const labelMm = { width: 95, height: 85 } as const;
const qrMm = 25;
const left = 12.5;
const right = labelMm.width - 4.5;

/** Black first: the colour stripe repeats what a word says, so that a grey printer loses nothing. */
export function Label(props: { readonly jar: JarView; readonly text: LabelText; readonly address: string }) {
  const fill = () => {
    const finish = finishOfJar(props.jar);
    return finish === undefined ? "#fff" : hexFromSrgb(finishColour(finish));
  };
  const qr = createMemo(() => qrPath(props.address));
  const solvent = createMemo(() => brokenInto(props.text.solvent, 42, 2));
  const resin = createMemo(() => brokenInto(props.text.resin, 26, 1));
  const rowsTop = () => 35 + solvent().length * 4.4;
  const codeWidth = () => 6 + props.text.code.length * 5.4;
  const warning = createMemo(() => brokenInto(props.text.warning, 38, 2));
  const warningTop = () => (warning().length > 1 ? 70.4 : 74);
  const rowPitch = () => (warning().length > 1 ? 4 : 4.4);
  return (
    <g class="label">
      <rect
        x="4"
        y="4.5"
        width="4.2"
        height="76"
        fill={fill()}
        stroke="#000"
        stroke-width="0.5"
        class="stripe"
      />
      <text x={left} y="17.5" class="say" font-size="15.5" font-weight="700">
        {props.text.cut}
        <tspan dx="1.6" font-size="7.4" font-weight="560">
          {words.jars.labelText.lb}
        </tspan>
      </text>
      <rect
        x={right - codeWidth()}
        y="4.5"
        width={codeWidth()}
        height="11.5"
        fill="none"
        stroke="#000"
        stroke-width="0.8"
      />
      <text x={right - codeWidth() / 2} y="13.4" class="m" font-size="8.8" font-weight="800">
        {props.text.code}
      </text>
      <text x={left} y="22.6" font-size="3.5">
        {props.text.cutDefined}
      </text>
      <text x={left} y="30.2" class="say" font-size="5.6">
        {resin()[0]}
      </text>
      <For each={solvent()}>
        {(line, i) => (
          <text x={left} y={35.2 + i() * 4.4} font-size="3.9">
            {line}
          </text>
        )}
      </For>
      <For each={props.text.rows}>
        {(row, i) => (
          <g>
            <text x={left} y={rowsTop() + (i() + 0.4) * rowPitch()} font-size="3.7" class="quiet">
              {row.name}
            </text>
            <text x={left + 17} y={rowsTop() + (i() + 0.4) * rowPitch()} font-size="3.7" font-weight="600">
              {row.says}
            </text>
          </g>
        )}
      </For>
      <g transform={`translate(${right - qrMm + 2} ${rowsTop() - 2.5}) scale(${qrMm / qr().size})`}>
        <path d={qr().path} fill="#000" />
      </g>
      <For each={[words.jars.labelText.opened, words.jars.labelText.dropTest]}>
        {(name, i) => (
          <g transform={`translate(${left + i() * 40} ${warningTop() - 1.8})`}>
            <text font-size="3.7" class="quiet">
              {name}
            </text>
            <path d="M17 0.4H37.5" stroke="#000" stroke-width="0.25" stroke-dasharray="0.4 0.5" />
          </g>
        )}
      </For>
      <path
        d={`M${left + 3} ${warningTop()}H${right}V81H${left}V${warningTop() + 3}Z`}
        fill="#000"
        class="stripe"
      />
      <circle cx={left + 4.2} cy={warningTop() + 3.5} r="1.3" fill="#fff" />
      <For each={warning()}>
        {(line, i) => (
          <text
            x={left + 7.5}
            y={79 - (warning().length - 1 - i()) * 4.1}
            font-size="3.8"
            font-weight="600"
            fill="#fff"
            class="white"
          >
            {line}
          </text>
        )}
      </For>
    </g>
  );
}
