import { createMemo, For, Show } from "solid-js";
import { spread } from "../drawings/spread.ts";
import { upToDigits, withDigits } from "../words/number.ts";
import * as words from "../words/words.ts";
import { heightUm, type Layer, type Section } from "./state.ts";

const t = words.film;
const height = 236;
const top = 46;
const woodDepth = 70;
const hairUm = 70;
const labelsWide = 132;

const um = (value: number): string => upToDigits(value, 2);

/** A film in section, up and across to one scale: coats from the wood up, what sank in, what came off, what rubbing asks for. */
export function FilmSection(props: {
  readonly section: Section;
  readonly wood: string;
  readonly width: number;
  readonly says: string;
}) {
  const inner = () => props.width - labelsWide;
  const scale = createMemo(() => Math.min(height / heightUm(props.section), (inner() - 16) / hairUm));
  const surface = top + height;
  const y = (filmUm: number) => surface - filmUm * scale();
  const middles = createMemo(() =>
    spread(
      props.section.layers.map((layer) => ({ at: y((layer.fromUm + layer.toUm) / 2), width: 21 })),
      top - 8,
      surface + 4,
    ),
  );
  const neededY = () => y(props.section.neededUm);
  return (
    <svg
      width={props.width}
      height={surface + woodDepth + 4}
      viewBox={`0 0 ${props.width} ${surface + woodDepth + 4}`}
      font-size="16"
      role="img"
      aria-label={props.says}
    >
      <defs>
        <pattern id="sunk-in" width="6" height="6" patternUnits="userSpaceOnUse">
          <circle cx="1.6" cy="1.6" r="1.2" fill="var(--wood-ink)" />
        </pattern>
        <pattern
          id="sanded-off"
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path d="M0 0V7" stroke="var(--ink)" stroke-width="1.6" />
        </pattern>
      </defs>
      <path class="fine" d={`M2 18V28M2 23H${2 + hairUm * scale()}M${2 + hairUm * scale()} 18V28`} />
      <text x="2" y="12" class="halo">
        {t.hair}
      </text>
      <rect x="0" y={surface} width={inner()} height={woodDepth} fill={props.wood} />
      <Show when={props.section.sunkUm > 0}>
        <rect
          x="0"
          y={surface}
          width={inner()}
          height={Math.min(woodDepth - 24, props.section.sunkUm * scale())}
          fill="url(#sunk-in)"
        />
      </Show>
      <For each={props.section.layers}>
        {(layer, i) => (
          <Coat
            layer={layer}
            last={i() === props.section.layers.length - 1}
            inner={inner()}
            y={y}
            middle={middles()[i()] ?? 0}
          />
        )}
      </For>
      <path class="pen" d={`M0 ${surface}H${inner()}`} />
      <text x="8" y={surface + woodDepth - 10} class="on-wood">
        {props.section.sunkUm > 0 ? t.woodSunk(um(props.section.sunkUm)) : t.wood}
      </text>
      <Show when={props.section.toGoUm > 0}>
        <path class="pen needed" d={`M0 ${neededY()}H${inner()}`} />
        <text x={inner() - 6} y={neededY() + 20} class="e">
          {t.neededMark(withDigits(props.section.neededUm, 2))}
        </text>
      </Show>
    </svg>
  );
}

function Coat(props: {
  readonly layer: Layer;
  readonly last: boolean;
  readonly inner: number;
  readonly y: (um: number) => number;
  readonly middle: number;
}) {
  const topY = () => props.y(props.layer.toUm);
  const tall = () => props.y(props.layer.fromUm) - topY();
  const edge = () => (props.last ? "pen" : props.layer.offUm > 0 ? "pen cut" : "meet");
  return (
    <g>
      <rect x="0" y={topY()} width={props.inner} height={Math.max(0.5, tall())} fill={props.layer.fill} />
      <path class={edge()} d={`M0 ${topY()}H${props.inner}`} />
      <Show when={tall() >= 19}>
        <text x="8" y={topY() + tall() / 2 + 6} class="b" style={{ fill: props.layer.on }}>
          {t.coat(props.layer.number)}
        </text>
      </Show>
      <path class="fine" d={`M${props.inner} ${topY() + tall() / 2}L${props.inner + 10} ${props.middle}`} />
      <text x={props.inner + 14} y={props.middle + 5}>
        {t.coatUm(props.layer.number, um(props.layer.toUm - props.layer.fromUm))}
        <Show when={props.layer.offUm > 0}>{t.off(um(props.layer.offUm))}</Show>
      </text>
      <Show when={props.layer.offUm > 0}>
        <rect
          x={props.inner - 26}
          y={topY()}
          width="26"
          height={Math.max(
            3,
            Math.min(
              tall(),
              props.layer.offUm * (tall() / Math.max(props.layer.toUm - props.layer.fromUm, 0.1)),
            ),
          )}
          fill="url(#sanded-off)"
        />
      </Show>
    </g>
  );
}
