import { For, type JSX, Show } from "solid-js";
import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import { coatNumbers } from "../../core/pieces/planned-evenings.ts";
import { shopClock } from "../../core/schedule/shop-clock.ts";
import { useBook } from "../book-store/use-book.tsx";
import { createRoom } from "../controls/room.ts";
import * as words from "../words/words.ts";
import { EveningRow, type RowTelling } from "./evening-row.tsx";
import { clockOf, dayName } from "./plan-words.ts";
import { endOfRow, type StripRow, stripHours, stripRows } from "./strip-rows.ts";
import { surfaceSigns, surfacesOf, worksTogether } from "./surface-names.ts";

const left = 120;
/** Narrower than this, a row's name stands above it. */
const beside = 560;
const leastWidth = 280;

/** The evening that it is now, by the clock on the wall. */
export interface WallNow {
  readonly day: string;
  readonly minute: number;
}

/** The evenings as rows, hours to scale under one another: hands on above, drying below; today's wears a mark. */
export function EveningStrip(props: {
  readonly steps: readonly ScheduleStep[];
  readonly isDone?: (step: ScheduleStep) => boolean;
  /** A short name for a block, where it is not its work. */
  readonly nameOf?: (step: ScheduleStep) => string;
  readonly now?: WallNow;
  /** What stands under the name of an evening that has something left to do. */
  readonly act?: (day: string) => JSX.Element;
}) {
  let frame!: HTMLDivElement;
  const room = createRoom(() => frame, leastWidth);
  const clock = shopClock(useBook().zone);
  const rows = () => stripRows(props.steps, clock);
  const hours = () => stripHours(rows());
  const width = () => (room() < beside ? room() : room() - left);
  const coats = () => coatNumbers(props.steps);
  const isDone = (step: ScheduleStep) => props.isDone?.(step) ?? false;
  const surfaces = () => surfacesOf(props.steps);
  const signs = () => surfaceSigns(surfaces());
  const nameOf = (step: ScheduleStep) =>
    props.nameOf?.(step) ?? words.evenings.short(step.what, coats().get(step));
  const namesOf = (step: ScheduleStep): readonly string[] => {
    const [name, sign] = [nameOf(step), signs().get(step.surface ?? "")];
    const [letter = ""] = name.split(" ");
    if (step.surface === undefined || sign === undefined)
      return letter.length === 1 ? [name, letter] : [name];
    const coat = coats().get(step);
    return [
      words.surfaces.short(name, step.surface),
      ...(coat === undefined ? [] : [words.surfaces.short(String(coat), sign)]),
      sign,
    ];
  };
  const telling: RowTelling = { isDone, namesOf };
  const allDone = (row: StripRow) => row.blocks.every(({ step }) => isDone(step));
  const isTonight = (row: StripRow) => props.now?.day === row.day;
  const state = (row: StripRow) => {
    if (allDone(row)) return words.evenings.done;
    return isTonight(row) ? words.evenings.tonight : "";
  };
  const says = (row: StripRow) => {
    return words.evenings.row({
      day: dayName(row.day),
      from: clockOf(row.blocks[0]?.from ?? 0),
      until: clockOf(endOfRow(row.blocks)),
      steps:
        surfaces().length === 0
          ? row.blocks.map(({ step }) => nameOf(step))
          : worksTogether(
              row.blocks.map(({ step }) => ({ name: nameOf(step), surface: step.surface })),
              surfaces().length,
            ),
      state: state(row),
    });
  };
  return (
    <div ref={frame} class="evenings" classList={{ beside: room() >= beside }}>
      <Show when={surfaces().some((name) => !name.endsWith(signs().get(name) ?? ""))}>
        <p class="soft small strip-key">
          <For each={[...signs()]}>{([name, sign]) => <span>{words.surfaces.key(sign, name)}</span>}</For>
        </p>
      </Show>
      <Hours hours={hours()} width={width()} />
      <For each={rows()}>
        {(row) => (
          <div class="evening-row" classList={{ tonight: isTonight(row) }}>
            <div>
              <b>{dayName(row.day)}</b> <span class="soft small">{state(row)}</span>
              <Show when={!allDone(row)}>{props.act?.(row.day)}</Show>
            </div>
            <EveningRow
              row={row}
              hours={hours()}
              width={width()}
              telling={telling}
              nowMinute={isTonight(row) ? props.now?.minute : undefined}
              says={says(row)}
            />
          </div>
        )}
      </For>
    </div>
  );
}

const gapWidth = 52;

/** The hours above all rows; the rows say their times themselves. */
function Hours(props: {
  readonly hours: { readonly from: number; readonly until: number };
  readonly width: number;
}) {
  const each = () => (props.width - gapWidth) / (props.hours.until - props.hours.from);
  const every = () => (each() < 34 ? 2 : 1);
  const marks = () =>
    Array.from({ length: props.hours.until - props.hours.from + 1 }, (_, i) => i).filter(
      (i) => i % every() === 0,
    );
  return (
    <svg class="evening-hours" width={props.width} height="22" aria-hidden="true">
      <For each={marks()}>
        {(i) => (
          <text class="m soft" x={Math.max(i * each(), 10)} y="15" font-size="15">
            {props.hours.from + i}
          </text>
        )}
      </For>
    </svg>
  );
}
