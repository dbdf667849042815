import { createMemo, For, type JSX, Show } from "solid-js";
import { createRoom } from "../../controls/room.ts";
import { scaleOf } from "../../controls/scale.ts";
import { spread } from "../../drawings/spread.ts";
import { upToDigits, withDigits, withPlaces } from "../../words/number.ts";
import { lengthInWords } from "../../words/time.ts";
import * as words from "../../words/words.ts";
import type { Dried } from "../task.ts";
import { type CurvePoint, coldest } from "./state.ts";

const left = 46;
const right = 12;
const t = words.drying.coat;

const component = (name: string): string => t.component[name as keyof typeof t.component] ?? name;

interface Frame {
  readonly width: number;
  readonly x: (minutes: number) => number;
  readonly marks: readonly number[];
}

const line = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${x.toFixed(1)} ${y.toFixed(1)}`).join("");

/** Mass, make-up and surface of a drying coat, one under another on the same minutes. */
export function Curves(props: {
  readonly run: Dried;
  readonly points: readonly CurvePoint[];
  readonly resin: number;
  readonly woodC: number;
}) {
  let figure!: HTMLDivElement;
  const room = createRoom(() => figure, 300);
  const frame = createMemo((): Frame => {
    const scale = scaleOf(0, props.points.at(-1)?.at ?? 1, left, room() - right);
    return { width: room(), x: scale.place, marks: scale.marks };
  });
  return (
    <div ref={figure} class="curves stack">
      <Mass {...props} frame={frame()} />
      <MakeUp {...props} frame={frame()} />
      <Surface {...props} frame={frame()} />
    </div>
  );
}

/** The frame of one drawing: its name, its height, the minutes below. */
function Plot(props: {
  readonly heading: string;
  readonly axis: string;
  readonly says: string;
  readonly frame: Frame;
  readonly height: number;
  readonly marks: readonly { readonly y: number; readonly says: string }[];
  readonly children: JSX.Element;
}) {
  const bottom = () => props.height;
  return (
    <figure>
      <figcaption>
        <h3>{props.heading}</h3>
        <span class="soft small">{props.axis}</span>
      </figcaption>
      <svg
        width={props.frame.width}
        height={props.height + 34}
        viewBox={`0 0 ${props.frame.width} ${props.height + 34}`}
        font-size="16"
        role="img"
        aria-label={props.says}
      >
        <For each={props.marks}>
          {(mark) => (
            <>
              <path class="faint" d={`M${left} ${mark.y}H${props.frame.width - right}`} />
              <text x={left - 8} y={mark.y + 5} class="e soft">
                {mark.says}
              </text>
            </>
          )}
        </For>
        {props.children}
        <path class="pen" d={`M${left} ${bottom()}H${props.frame.width - right}`} />
        <For each={props.frame.marks}>
          {(mark) => (
            <text x={props.frame.x(mark)} y={bottom() + 24} class="m soft">
              {upToDigits(mark, 3)}
            </text>
          )}
        </For>
      </svg>
    </figure>
  );
}

interface DrawnProps {
  readonly run: Dried;
  readonly points: readonly CurvePoint[];
  readonly resin: number;
  readonly woodC: number;
  readonly frame: Frame;
}

function TouchDry(props: { readonly run: Dried; readonly frame: Frame; readonly height: number }) {
  return (
    <Show when={props.run.touchDryMin}>
      {(at) => <path class="fine" stroke-dasharray="2 4" d={`M${props.frame.x(at())} 18V${props.height}`} />}
    </Show>
  );
}

function Mass(props: DrawnProps) {
  const height = 170;
  const most = () => Math.max(...props.points.map((p) => p.liquid)) + props.resin;
  const scale = createMemo(() => scaleOf(0, most() * 1.12, height, 4));
  const at = createMemo(() =>
    props.points.map((p) => [props.frame.x(p.at), scale().place(p.liquid + props.resin)] as const),
  );
  const end = () => at().at(-1)?.[0] ?? left;
  const says = () =>
    t.massSays(
      withDigits(most(), 2),
      withDigits(props.resin, 2),
      props.run.touchDryMin === null ? t.never : lengthInWords(props.run.touchDryMin),
    );
  const dryX = () => props.frame.x(props.run.touchDryMin ?? 0);
  return (
    <Plot
      heading={t.mass}
      axis={t.massAxis}
      says={says()}
      frame={props.frame}
      height={height}
      marks={scale().marks.map((mark) => ({ y: scale().place(mark), says: upToDigits(mark, 3) }))}
    >
      <path class="filled" d={`${line(at())}L${end()} ${height}L${left} ${height}Z`} />
      <path
        class="fine over-fill"
        d={`M${left} ${scale().place(props.resin)}H${end()}`}
        stroke-dasharray="5 4"
      />
      <path class="pen" d={line(at())} />
      <TouchDry run={props.run} frame={props.frame} height={height} />
      <Show when={props.run.touchDryMin !== null}>
        <circle class="dot" cx={dryX()} cy={height - 54} r="6.5" />
        <text x={dryX() + 12} y={height - 48} class="b halo">
          {t.touchDryMark}
        </text>
      </Show>
      <text x={end() - 6} y={scale().place(props.resin) - 7} class="e halo">
        {t.resin}
      </text>
    </Plot>
  );
}

const dashes = ["", "7 4", "2 4", "10 4 2 4", "4 3", "1 3"];

function MakeUp(props: DrawnProps) {
  const height = 150;
  const y = (share: number) => height - share * (height - 14);
  const names = createMemo(() => {
    const first = props.points[0]?.shares ?? {};
    return Object.keys(first).sort((a, b) => (first[b] ?? 0) - (first[a] ?? 0));
  });
  /** What is not left at touch-dry is not drawn on as if it still mattered. */
  const until = () => props.run.touchDryMin ?? Number.POSITIVE_INFINITY;
  const drawn = createMemo(() => props.points.filter(({ at }) => at <= until() * 1.02));
  const last = () => drawn().at(-1);
  const labelsAt = createMemo(() =>
    spread(
      names().map((name) => ({ at: y(last()?.shares[name] ?? 0), width: 20 })),
      0,
      height + 4,
    ),
  );
  const endX = () => props.frame.x(last()?.at ?? 0);
  const says = () =>
    t.makeUpSays(
      names().map((name) =>
        t.makeUpOne(
          component(name),
          percent(props.points[0]?.shares[name] ?? 0),
          percent(last()?.shares[name] ?? 0),
        ),
      ),
    );
  return (
    <Plot
      heading={t.makeUp}
      axis={t.makeUpAxis}
      says={says()}
      frame={props.frame}
      height={height}
      marks={[0.25, 0.5, 0.75, 1].map((share) => ({ y: y(share), says: String(share * 100) }))}
    >
      <For each={names()}>
        {(name, i) => (
          <>
            <path
              class="pen"
              stroke-dasharray={dashes[i()] ?? ""}
              d={line(drawn().map((p) => [props.frame.x(p.at), y(p.shares[name] ?? 0)] as const))}
            />
            <text x={endX() + 8} y={(labelsAt()[i()] ?? 0) + 5} class="halo">
              {component(name)} {percent(last()?.shares[name] ?? 0)}
            </text>
          </>
        )}
      </For>
    </Plot>
  );
}

const percent = (share: number): string => `${upToDigits(share * 100, share < 0.0995 ? 1 : 2)} %`;
const celsius = (c: number): string => `${withPlaces(c, 1)} °C`;

function Surface(props: DrawnProps) {
  const height = 160;
  const dew = () => props.run.dewPointC;
  const scale = createMemo(() => {
    const all = [
      ...props.points.map((p) => p.surfaceC),
      props.woodC,
      ...(dew() === null ? [] : [dew() ?? 0]),
    ];
    const [low, high] = [Math.min(...all), Math.max(...all)];
    const pad = Math.max(1, (high - low) * 0.16);
    return scaleOf(low - pad, high + pad, height, 4);
  });
  const at = createMemo(() =>
    props.points.map((p) => [props.frame.x(p.at), scale().place(p.surfaceC)] as const),
  );
  const low = () => coldest(props.points, props.run.touchDryMin);
  const says = () =>
    t.surfaceSays(
      celsius(low()?.surfaceC ?? 0),
      lengthInWords(low()?.at ?? 0),
      dew() === null ? t.noDew : celsius(dew() ?? 0),
    );
  return (
    <Plot
      heading={t.surface}
      axis={t.surfaceAxis}
      says={says()}
      frame={props.frame}
      height={height}
      marks={scale().marks.map((mark) => ({
        y: scale().place(mark),
        says: upToDigits(mark, 3),
      }))}
    >
      <Show when={dew() !== null}>
        <defs>
          <pattern
            id="wet-below"
            width="7"
            height="7"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <path d="M0 0V7" stroke="var(--ink)" stroke-width="1.6" />
          </pattern>
        </defs>
        <rect
          x={left}
          y={scale().place(dew() ?? 0)}
          width={props.frame.width - right - left}
          height={Math.max(0, height - scale().place(dew() ?? 0))}
          fill="url(#wet-below)"
        />
        <path class="fine" d={`M${left} ${scale().place(dew() ?? 0)}H${props.frame.width - right}`} />
        <text x={props.frame.width - right} y={scale().place(dew() ?? 0) - 6} class="e halo">
          {t.dewBelow(celsius(dew() ?? 0))}
        </text>
      </Show>
      <path class="pen" d={line(at())} />
      <TouchDry run={props.run} frame={props.frame} height={height} />
      <Show when={low()}>
        {(point) => (
          <>
            <circle class="dot" cx={props.frame.x(point().at)} cy={scale().place(point().surfaceC)} r="6.5" />
            <text x={props.frame.x(point().at) - 8} y={scale().place(point().surfaceC) + 24} class="b halo">
              {celsius(point().surfaceC)}
            </text>
          </>
        )}
      </Show>
    </Plot>
  );
}
