import { createMemo, createResource, For, Show } from "solid-js";
import { equalFrom } from "../../core/statistics/verdict/over-coats.ts";
import type { Trial } from "../../core/views/trial.ts";
import { scaleOf } from "../controls/scale.ts";
import type { Saying } from "../words/en/verdict.ts";
import * as words from "../words/words.ts";
import { type Course as CourseFound, courseOf } from "./course-state.ts";
import { figuresOf } from "./figures.ts";
import type { Look, VerdictPair } from "./questions.ts";

/** How the largest difference came about, coat by coat, where it was read after more than one coat. */
export function Course(props: {
  readonly trial: Trial;
  readonly look: Look;
  readonly factor: string;
  readonly pair: VerdictPair;
  readonly how: Saying;
}) {
  const [course] = createResource(
    () => ({ trial: props.trial, look: props.look, factor: props.factor, pair: props.pair }),
    (asked) => courseOf(asked.trial, asked.look, asked.factor, asked.pair),
  );
  return (
    <Show when={course.latest}>
      {(found) => (
        <section class="hung">
          <h2>{words.verdict.course}</h2>
          <p>{words.verdict.courseSays(props.pair)}</p>
          <Drawn course={found()} how={props.how} />
          <Show when={equalFrom(found().words)} keyed>
            {(coat) => <p>{words.verdict.equalFrom(coat)}</p>}
          </Show>
        </section>
      )}
    </Show>
  );
}

const width = 380;
const height = 250;
const left = 44;
const bottom = height - 44;

function Drawn(props: { readonly course: CourseFound; readonly how: Saying }) {
  const points = () => props.course.points;
  const ends = createMemo(() => {
    const all = [-props.course.matters, props.course.matters, ...points().flatMap((p) => p.pair.interval)];
    return [Math.min(...all), Math.max(...all)] as const;
  });
  const scale = createMemo(() => scaleOf(ends()[0], ends()[1], 0, bottom - 16));
  const y = (value: number) => bottom - 8 - scale().place(value);
  const x = (i: number) => left + 34 + (i * (width - left - 60)) / Math.max(1, points().length - 1);
  const jaw = (i: number, [low, high]: readonly [number, number]) =>
    `M${x(i) + 12} ${y(high)}H${x(i) - 8}V${y(low)}H${x(i) + 12}`;
  const said = () =>
    points()
      .map((p) => {
        const figures = figuresOf(p.pair, props.course.matters, props.how.shares);
        return `${words.verdict.coat(p.coat)}: ${words.verdict.value(figures.difference, props.how)}, ${words.verdict.words[p.pair.verdict]}`;
      })
      .join("; ");
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      font-size="16"
      role="img"
      aria-label={said()}
    >
      <defs>
        <pattern
          id="course-band"
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path d="M0 0V7" stroke="var(--ink)" stroke-width="1.2" opacity=".55" />
        </pattern>
      </defs>
      <rect
        x={left}
        y={y(props.course.matters)}
        width={width - left}
        height={y(-props.course.matters) - y(props.course.matters)}
        fill="url(#course-band)"
      />
      <path
        class="pen"
        d={`M${left} ${y(props.course.matters)}H${width}M${left} ${y(-props.course.matters)}H${width}`}
      />
      <path class="fine" d={`M${left} ${y(0)}H${width}`} stroke-dasharray="3 5" />
      <For each={scale().marks}>
        {(mark) => (
          <text x={left - 8} y={y(mark) + 5} class="e soft">
            {words.verdict.mark(mark, props.how).replace("-", "−")}
          </text>
        )}
      </For>
      <For each={points()}>
        {(point, i) => (
          <g>
            <path class="cal under" d={jaw(i(), point.pair.interval)} />
            <path class="cal" d={jaw(i(), point.pair.interval)} />
            <circle class="dot" cx={x(i()) + 4} cy={y(point.pair.difference)} r="6" />
            <text x={x(i())} y={bottom + 18} class="m">
              {point.coat}
            </text>
            <text x={x(i())} y={bottom + 38} class="m" font-size="15">
              {words.verdict.shortWords[point.pair.verdict]}
            </text>
          </g>
        )}
      </For>
      <text x={left - 8} y={bottom + 18} class="e soft">
        {words.verdict.coatAxis}
      </text>
    </svg>
  );
}
