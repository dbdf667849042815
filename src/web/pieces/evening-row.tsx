import { For, Show } from "solid-js";
import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import * as words from "../words/words.ts";
import { clockOf } from "./plan-words.ts";
import type { Block, StripRow } from "./strip-rows.ts";

/** How a row says what it shows of a step. */
export interface RowTelling {
  /** Names for the block, the longest first: the first that it has room for is written. */
  readonly namesOf: (step: ScheduleStep) => readonly string[];
  readonly isDone: (step: ScheduleStep) => boolean;
}

const gapWidth = 52;
const block = { top: 6, height: 34 };
const perHand = 38;
const dryingBelow = 14;
const perLevel = 11;
const below = 20;
const letterWidth = 8.2;

/** The longest name that the block has room for, if any: the list beside it names every step. */
const fits = (names: readonly string[], width: number): string =>
  names.find((name) => name.length * letterWidth + (name.length > 2 ? 8 : 2) <= width) ?? "";

/** One evening, its hours to scale: hands on above, drying below, and how long until the next. */
export function EveningRow(props: {
  readonly row: StripRow;
  readonly hours: { readonly from: number; readonly until: number };
  readonly width: number;
  readonly telling: RowTelling;
  /** Minutes after midnight, when this is the evening that it is now. */
  readonly nowMinute: number | undefined;
  readonly says: string;
}) {
  const room = () => props.width - gapWidth;
  const levels = () => Math.max(0, ...props.row.blocks.map((one) => one.level));
  const hands = () => Math.max(0, ...props.row.blocks.map((one) => one.hand));
  const firstDrying = () => block.top + hands() * perHand + block.height + dryingBelow;
  const height = () => firstDrying() + levels() * perLevel + below;
  const x = (minute: number) =>
    ((minute / 60 - props.hours.from) / (props.hours.until - props.hours.from)) * room();
  const marks = () =>
    Array.from({ length: props.hours.until - props.hours.from + 1 }, (_, i) =>
      x((props.hours.from + i) * 60),
    );
  const nowAt = () => {
    const minute = props.nowMinute;
    if (minute === undefined || minute < props.hours.from * 60 || minute > props.hours.until * 60)
      return null;
    return { x: x(minute), says: clockOf(minute) };
  };
  return (
    <svg class="evening" width={props.width} height={height()} role="img" aria-label={props.says}>
      <For each={marks()}>{(at) => <path class="faint" d={`M${at} 2V${height() - 4}`} />}</For>
      <For each={props.row.blocks}>
        {(one) => (
          <HandsOn
            block={one}
            x={x}
            names={props.telling.namesOf(one.step)}
            firstDrying={firstDrying()}
            done={props.telling.isDone(one.step)}
            over={props.nowMinute !== undefined && props.nowMinute >= one.dryUntil}
            edge={room()}
          />
        )}
      </For>
      <Show when={nowAt()} keyed>
        {(now) => (
          <>
            <path class="pen" d={`M${now.x} 0V${height() - 18}`} />
            <text class="m b" x={Math.min(Math.max(now.x, 22), room() - 22)} y={height() - 4} font-size="14">
              {now.says}
            </text>
          </>
        )}
      </Show>
      <Show when={props.row.gapHours} keyed>
        {(hours) => (
          <>
            <path class="quiet" d={zigzag(room() + 4)} />
            <text class="soft" x={room() + 14} y="44" font-size="14">
              {words.evenings.gap(hours)}
            </text>
          </>
        )}
      </Show>
    </svg>
  );
}

const zigzag = (at: number): string => `M${at} 4${"l4 8-4 8".repeat(4)}`;

function HandsOn(props: {
  readonly block: Block;
  readonly x: (minute: number) => number;
  readonly names: readonly string[];
  readonly firstDrying: number;
  readonly done: boolean;
  /** Its drying is over by now. */
  readonly over: boolean;
  readonly edge: number;
}) {
  const from = () => props.x(props.block.from);
  const until = () => Math.max(from() + 4, props.x(props.block.until));
  const top = () => block.top + props.block.hand * perHand;
  const dryingAt = () => props.firstDrying + props.block.level * perLevel;
  const dry = () => Math.min(props.x(props.block.dryUntil), props.edge - 6);
  return (
    <>
      <rect
        class="strip-hands"
        classList={{ coat: props.block.step.what === "coat", done: props.done }}
        x={from()}
        y={top()}
        width={until() - from()}
        height={block.height}
      />
      <text
        class="m b strip-name"
        classList={{ coat: props.block.step.what === "coat", done: props.done }}
        x={(from() + until()) / 2}
        y={top() + 22}
        font-size="15"
      >
        {fits(props.names, until() - from())}
      </text>
      <Show when={props.block.dryUntil > props.block.until}>
        <path class="quiet" d={`M${until()} ${top() + block.height}V${dryingAt()}`} stroke-dasharray="2 3" />
        <path class="pen" d={`M${until()} ${dryingAt()}H${dry()}`} />
        <circle class={props.done && props.over ? "dot" : "ring"} cx={dry()} cy={dryingAt()} r="5" />
      </Show>
    </>
  );
}
