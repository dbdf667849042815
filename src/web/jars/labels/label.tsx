import { createMemo, For } from "solid-js";
import { finishColour } from "../../../core/colour/finish-colour.ts";
import { hexFromSrgb } from "../../../core/colour/srgb.ts";
import type { JarView } from "../../../core/views/jar.ts";
import { qrPath } from "../../drawings/qr-path.ts";
import * as words from "../../words/words.ts";
import { finishOfJar } from "../jar-look.ts";
import type { LabelLayout, PlacedText } from "./label-layout.ts";

const looks = {
  cut: { class: "say", weight: 700 },
  name: { class: "say", weight: 560 },
  plain: { class: "", weight: 400 },
  quiet: { class: "quiet", weight: 400 },
  strong: { class: "", weight: 600 },
  code: { class: "m", weight: 800 },
  white: { class: "white", weight: 600 },
} as const;

/** The corner cut off that every caution has. */
const cutOff = ({ x, y, width, height }: LabelLayout["warning"]): string => {
  const by = Math.min(3, height * 0.45);
  return `M${x + by} ${y}H${x + width}V${y + height}H${x}V${y + by}Z`;
};

/** Black first: the colour stripe repeats what a word says, so that a grey printer loses nothing. */
export function Label(props: {
  readonly jar: JarView;
  readonly layout: LabelLayout;
  readonly address: string;
}) {
  const fill = () => {
    const finish = finishOfJar(props.jar);
    return finish === undefined ? "#fff" : hexFromSrgb(finishColour(finish));
  };
  const qr = createMemo(() => qrPath(props.address));
  const l = () => props.layout;
  return (
    <g class="label">
      <rect {...l().stripe} fill={fill()} stroke="#000" stroke-width="0.4" class="stripe" />
      <rect {...l().codeBox} fill="none" stroke="#000" stroke-width={l().size * 0.2} />
      <path d={cutOff(l().warning)} fill="#000" class="stripe" />
      <circle
        cx={l().warning.x + l().size * 1.05}
        cy={l().warning.y + l().size * 0.95}
        r={l().size * 0.34}
        fill="#fff"
      />
      <g transform={`translate(${l().qr.x} ${l().qr.y}) scale(${l().qr.width / qr().size})`}>
        <path d={qr().path} fill="#000" />
      </g>
      <For each={l().blanks}>
        {(blank) => (
          <path
            d={`M${blank.x} ${blank.y}h${blank.width}`}
            stroke="#000"
            stroke-width="0.25"
            stroke-dasharray="0.4 0.5"
          />
        )}
      </For>
      <For each={l().texts}>{(text) => <Words text={text} />}</For>
    </g>
  );
}

function Words(props: { readonly text: PlacedText }) {
  const look = () => looks[props.text.as];
  return (
    <text
      x={props.text.x}
      y={props.text.y}
      class={look().class}
      font-size={String(props.text.size)}
      font-weight={look().weight}
    >
      {props.text.says}
      {props.text.as === "cut" ? (
        <tspan dx={props.text.size * 0.1} font-size={String(props.text.size * 0.48)} font-weight="560">
          {words.jars.labelText.lb}
        </tspan>
      ) : null}
    </text>
  );
}
