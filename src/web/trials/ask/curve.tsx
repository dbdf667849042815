import { createMemo, For, Show } from "solid-js";
import type { CurvePoint } from "../../../core/design/foresight/more-of-it.ts";
import * as words from "../../words/words.ts";

const width = 340;
const height = 170;
const left = 30;
const right = 84;
const bottom = 44;
const top = 12;
const namePx = 16;

interface Dot {
  readonly jars: number;
  readonly boards: number;
  readonly value: number;
}

/** The smallest difference in one factor as a plan grows: a line for each number of boards, along the jars of each recipe. */
export function Curve(props: {
  readonly points: readonly CurvePoint[];
  readonly factor: string;
  readonly matters: number;
}) {
  // one jar of each speaks of those jars alone, and is no point of the same line
  const dots = createMemo(() =>
    props.points.flatMap((p): Dot[] => {
      const shown = p.smallestDifference.find((s) => s.factor === props.factor && s.about === props.factor);
      return shown?.value == null ? [] : [{ jars: p.jarsPerLevel, boards: p.boards, value: shown.value }];
    }),
  );
  const lines = () =>
    [...new Set(dots().map((d) => d.boards))].map(
      (boards) => [boards, dots().filter((d) => d.boards === boards)] as const,
    );
  const jars = () => [...new Set(dots().map((d) => d.jars))];
  const most = () => Math.max(props.matters * 1.15, ...dots().map((d) => d.value));
  const x = (n: number) => {
    const [first = 0, last = first] = [jars()[0], jars().at(-1)];
    return left + ((n - first) / Math.max(1, last - first)) * (width - left - right);
  };
  const y = (value: number) => top + (1 - value / most()) * (height - top - bottom);
  /** Where the name of each line stands: beside its end, moved down where two would lie on each other. */
  const names = () => {
    let above = Number.NEGATIVE_INFINITY;
    return [...lines()]
      .map(([boards, line]) => ({
        boards,
        x: x(line.at(-1)?.jars ?? 0) + 8,
        y: y(line.at(-1)?.value ?? 0) + 5,
      }))
      .sort((a, b) => a.y - b.y)
      .map((name) => {
        above = Math.max(name.y, above + namePx);
        return { ...name, y: above };
      });
  };
  const said = () =>
    words.plan.curveSaid(
      props.factor,
      dots().map((d) => words.plan.curvePoint(d.jars, d.boards, d.value)),
      String(props.matters),
    );
  return (
    <Show when={dots().length > 1}>
      <h3>{words.plan.curveHeading}</h3>
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        font-size="15"
        role="img"
        aria-label={said()}
      >
        <path class="pen" fill="none" d={`M${left} ${top}V${height - bottom}H${width - right + 8}`} />
        <path
          class="pen"
          fill="none"
          stroke-dasharray="4 4"
          d={`M${left} ${y(props.matters)}H${width - right + 8}`}
        />
        <text x={left - 4} y={y(props.matters) + 5} class="e">
          {props.matters}
        </text>
        <For each={lines()}>
          {([, line]) => (
            <>
              <path
                class="pen"
                fill="none"
                d={`M${line.map((d) => `${x(d.jars)} ${y(d.value)}`).join("L")}`}
              />
              <For each={line}>
                {(d) => <circle cx={x(d.jars)} cy={y(d.value)} r="3.5" fill="var(--ink)" />}
              </For>
            </>
          )}
        </For>
        <For each={names()}>
          {(name) => (
            <text x={name.x} y={name.y} class="halo">
              {words.plan.curveBoards(name.boards)}
            </text>
          )}
        </For>
        <For each={jars()}>
          {(n) => (
            <text x={x(n)} y={height - bottom + 18} class="m">
              {n}
            </text>
          )}
        </For>
        <text x={left} y={height - 6} class="soft">
          {words.plan.curveJars}
        </text>
      </svg>
    </Show>
  );
}
