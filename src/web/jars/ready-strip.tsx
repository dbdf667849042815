import { createMemo, createUniqueId, For, Show } from "solid-js";
import type { Ready, ReadyGroup } from "../../core/views/ready.ts";
import { useBook } from "../book-store/use-book.tsx";
import { now } from "../shell/now.ts";
import { whenInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { hoursOf, lineOf, type StripScale, stripScale } from "./strip-lines.ts";

const lineHeight = 22;

/** What the looks at one recipe's jars come to, in a sentence. */
function sayGroup(group: ReadyGroup): { readonly first: string; readonly rest: string } {
  const { median, from, to, notBy, everReady } = hoursOf(group);
  const t = words.jars.ready;
  if (median !== null && from !== null && to !== null)
    return { first: t.hours(median), rest: t.between(from, to) };
  const whose = group.oneJar ? t.thisJar : t.theseJars;
  if (!everReady) return { first: t.notBy(notBy), rest: "" };
  const [box] = group.jars.flatMap((jar) =>
    jar.doneByH === null ? [] : [[jar.notYetH, jar.doneByH] as const],
  );
  return box === undefined ? { first: "", rest: "" } : { first: t.somewhere(box[0], box[1]), rest: whose };
}

function Lines(props: {
  readonly group: ReadyGroup;
  readonly y: number;
  readonly x: (hours: number) => number;
  readonly hatch: string;
}) {
  return (
    <For each={props.group.jars.map(lineOf)}>
      {(line, i) => {
        const y = () => props.y + i() * lineHeight;
        const last = () => props.x(line.ready ?? line.notYet.at(-1) ?? 0);
        return (
          <g>
            <Show when={line.box} keyed>
              {([from, to]) => (
                <rect
                  x={props.x(from)}
                  y={y() - 8}
                  width={Math.max(2, props.x(to) - props.x(from))}
                  height="16"
                  fill={`url(#${props.hatch})`}
                  class="box"
                />
              )}
            </Show>
            <path class="pen thin" d={`M${props.x(0)} ${y()}H${props.x(line.notYet.at(-1) ?? 0)}`} />
            <Show when={line.ready === null}>
              <path class="pen" d={`M${last()} ${y()}h22M${last() + 15} ${y() - 6}l8 6l-8 6`} />
            </Show>
            <For each={line.notYet}>
              {(hours) => <circle class="ring" cx={props.x(hours)} cy={y()} r="5.5" />}
            </For>
            <Show when={line.ready !== null}>
              <circle class="dot" cx={props.x(line.ready ?? 0)} cy={y()} r="7" />
            </Show>
          </g>
        );
      }}
    </For>
  );
}

/** The looks at every mixed jar on one scale of hours, by recipe, with what they come to. */
export function ReadyStrip(props: {
  readonly ready: Ready;
  readonly wide: boolean;
  readonly nameOf: (group: ReadyGroup) => string;
}) {
  const book = useBook();
  const hatch = createUniqueId();
  const scale = createMemo<StripScale>(() => stripScale(props.ready));
  const left = () => (props.wide ? 212 : 8);
  const right = () => (props.wide ? 520 : 320);
  const x = (hours: number) => left() + (hours / scale().until) * (right() - left());
  const heads = () => (props.wide ? 0 : 44);
  const rows = createMemo(() => {
    let y = 22;
    return props.ready.groups.map((group) => {
      const top = y;
      y += heads() + Math.max(1, group.jars.length) * lineHeight + 16;
      return { group, y: top + heads() };
    });
  });
  const height = () => {
    const last = rows().at(-1);
    return last === undefined ? 40 : last.y + last.group.jars.length * lineHeight;
  };
  const name = (group: ReadyGroup) => props.nameOf(group);
  const again = (group: ReadyGroup) => {
    const times = group.jars.flatMap((jar) => jar.lookAgainAt ?? []).sort();
    return times[0] === undefined
      ? ""
      : times[0] <= now()
        ? words.jars.ready.lookNow
        : words.jars.ready.lookAgain(whenInWords(times[0], book.zone, now()));
  };
  const saying = (group: ReadyGroup) => {
    const { first, rest } = sayGroup(group);
    return [first, rest].filter((part) => part !== "").join(", ");
  };
  const width = () => (props.wide ? 800 : 338);
  return (
    <svg
      class="ready-strip"
      width={width()}
      height={height() + 58}
      viewBox={`0 0 ${width()} ${height() + 58}`}
      font-size="16"
      role="img"
      aria-label={props.ready.groups.map((g) => `${name(g)}: ${saying(g)}. ${again(g)}`).join(" ")}
    >
      <defs>
        <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V6" stroke="var(--ink)" stroke-width="1.6" />
        </pattern>
      </defs>
      <For each={scale().marks}>
        {(mark) => (
          <g>
            <path class="faint" d={`M${x(mark)} 8V${height()}`} />
            <text x={x(mark)} y={height() + 20} class="m soft">
              {mark === 0 || mark === scale().marks.at(-1) ? words.jars.ready.hours(mark) : mark}
            </text>
          </g>
        )}
      </For>
      <For each={rows()}>
        {(row) => (
          <g>
            <text x="0" y={props.wide ? row.y + 5 : row.y - 38} class="b">
              {name(row.group)}
            </text>
            <text x={props.wide ? 552 : 0} y={props.wide ? row.y + 5 : row.y - 17}>
              <tspan class="b">{sayGroup(row.group).first}</tspan>
              {sayGroup(row.group).rest === "" ? "" : `, ${sayGroup(row.group).rest}`}
              <Show when={!props.wide && again(row.group) !== ""}> {again(row.group)}</Show>
            </text>
            <Show when={props.wide && again(row.group) !== ""}>
              <text x="552" y={row.y + 25} class="soft">
                {again(row.group)}
              </text>
            </Show>
            <Lines group={row.group} y={row.y} x={x} hatch={hatch} />
          </g>
        )}
      </For>
      <g transform={`translate(${props.wide ? left() : 0} ${height() + 44})`}>
        <circle class="ring" cx="7" cy="0" r="6" />
        <text x="20" y="6" class="soft">
          {words.jars.ready.notYet}
        </text>
        <circle class="dot" cx="91" cy="0" r="7" />
        <text x="104" y="6" class="soft">
          {words.jars.ready.ready}
        </text>
        <rect x="156" y="-8" width="26" height="16" fill={`url(#${hatch})`} class="box" />
        <text x="188" y="6" class="soft">
          {words.jars.ready.inHere}
        </text>
      </g>
    </svg>
  );
}
