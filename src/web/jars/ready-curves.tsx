import { createUniqueId, For, Show } from "solid-js";
import { usualMatters } from "../../core/statistics/verdict/verdict-times.ts";
import { type Ready, type ReadyGroup, shareReadyBy } from "../../core/views/ready.ts";
import { readyCompared } from "../../core/views/ready-compared.ts";
import { useBook } from "../book-store/use-book.tsx";
import { upToDigits, withDigits } from "../words/number.ts";
import * as words from "../words/words.ts";
import { stripScale } from "./strip-lines.ts";

const width = 338;
const left = 44;
const right = width - 16;
const height = 96;
const y = (share: number): number => 8 + (1 - share) * (height - 8);

interface PlotProps {
  readonly ready: Ready;
  readonly group: ReadyGroup;
  readonly until: number;
  readonly name: string;
}

/** The steps that the looks alone allow: up somewhere within each hatched box, level between. */
function Steps(props: PlotProps & { readonly x: (hours: number) => number }) {
  const hatch = createUniqueId();
  const boxes = () => {
    let before = 0;
    return props.group.steps.map((step) => {
      const low = before;
      before += step.mass;
      return { from: step.left, to: step.right ?? props.until, low, high: before };
    });
  };
  const level = () => {
    const all = boxes();
    return all.map((box, i) => ({ from: box.to, to: all[i + 1]?.from ?? props.until, at: box.high }));
  };
  return (
    <>
      <defs>
        <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V6" stroke="var(--line)" stroke-width="1.4" />
        </pattern>
      </defs>
      <For each={boxes()}>
        {(box) => (
          <rect
            x={props.x(box.from)}
            y={y(box.high)}
            width={Math.max(2, props.x(box.to) - props.x(box.from))}
            height={y(box.low) - y(box.high)}
            fill={`url(#${hatch})`}
            class="box"
          />
        )}
      </For>
      <For each={level()}>
        {(line) => <path class="pen thin" d={`M${props.x(line.from)} ${y(line.at)}H${props.x(line.to)}`} />}
      </For>
    </>
  );
}

function Plot(props: PlotProps) {
  const t = words.jars.ready;
  const x = (hours: number) => left + (Math.min(hours, props.until) / props.until) * (right - left);
  const curve = () => {
    const { medianH } = props.group;
    const { scale, model } = props.ready;
    if (medianH === null || scale === null) return "";
    return Array.from({ length: 61 }, (_, i) => {
      const hours = Math.max(1e-6, (i / 60) * props.until);
      return `${i === 0 ? "M" : "L"}${x(hours).toFixed(1)} ${y(shareReadyBy(hours, medianH, scale, model)).toFixed(1)}`;
    }).join("");
  };
  return (
    <figure class="ready-curve">
      <figcaption>
        <b>{props.name}</b>
        <Show when={props.group.oneJar}>
          <span class="soft"> {t.oneJarOnly}</span>
        </Show>
      </figcaption>
      <svg
        width={width}
        height={height + 26}
        viewBox={`0 0 ${width} ${height + 26}`}
        font-size="15"
        role="img"
        aria-label={t.curveLabel(props.name, props.group.medianH)}
      >
        <path class="faint" d={`M${left} ${y(0.5)}H${right}`} />
        <path class="pen" d={`M${left} ${y(1)}V${y(0)}H${right}`} />
        <text x={left - 6} y={y(1) + 10} class="e soft">
          {t.all}
        </text>
        <text x={left - 6} y={y(0.5) + 5} class="e soft">
          {t.half}
        </text>
        <text x={right} y={height + 20} class="e soft">
          {t.hours(props.until)}
        </text>
        <text x={left} y={height + 20} class="soft">
          {t.hours(0)}
        </text>
        <Steps {...props} x={x} />
        <path class="fitted outer" d={curve()} />
        <path class="fitted" d={curve()} />
      </svg>
    </figure>
  );
}

/** By recipe: what the looks alone say, and through it the curve that was fitted; then how the recipes compare. */
export function ReadyCurves(props: {
  readonly ready: Ready;
  readonly nameOf: (group: ReadyGroup) => string;
}) {
  const t = words.jars.ready;
  const until = () => stripScale(props.ready).until;
  const groupOf = (key: string) => props.ready.groups.find((group) => group.key === key);
  const book = useBook();
  const compared = () =>
    book.look(`ready-compared:${props.ready.model}`, (read) => readyCompared(read, props.ready.model));
  const ratios = () =>
    (compared()?.pairs ?? []).flatMap((ratio) => {
      const [of, to] = [groupOf(ratio.of), groupOf(ratio.to)];
      if (of === undefined || to === undefined) return [];
      const figures = [ratio.ratio, ...ratio.interval].map((one) => withDigits(one, 2));
      return [
        {
          word: words.verdict.words[ratio.verdict],
          says: t.ratio(
            props.nameOf(of),
            props.nameOf(to),
            figures[0] ?? "",
            figures[1] ?? "",
            figures[2] ?? "",
          ),
          only: of.oneJar || to.oneJar,
        },
      ];
    });
  return (
    <>
      <div class="ready-curves">
        <For each={props.ready.groups}>
          {(group) => <Plot ready={props.ready} group={group} until={until()} name={props.nameOf(group)} />}
        </For>
      </div>
      <p class="small soft">{t.curvesSay}</p>
      <Show when={ratios().length > 0}>
        <ul class="plain ratios">
          <For each={ratios()}>
            {(ratio) => (
              <li>
                <b>{ratio.word}.</b> {ratio.says} <Show when={ratio.only}>{t.theseJarsOnly}</Show>
              </li>
            )}
          </For>
        </ul>
        <p class="small soft">{t.ratiosSay(upToDigits(usualMatters, 2), compared()?.moreJars ?? null)}</p>
      </Show>
    </>
  );
}
