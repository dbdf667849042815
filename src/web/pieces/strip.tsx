import { For, Show } from "solid-js";
import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import { createRoom } from "../controls/room.ts";
import * as words from "../words/words.ts";
import { dayName } from "./plan-words.ts";
import { type StripRow, stripHours, stripRows } from "./strip-rows.ts";

const left = 112;
const leastWidth = 300;
const rowHeight = 58;

/** The evenings as rows, hours to scale under one another: hands on above, drying below. */
export function EveningStrip(props: { readonly steps: readonly ScheduleStep[] }) {
  let frame!: HTMLDivElement;
  const width = createRoom(() => frame, leastWidth);
  const rows = () => stripRows(props.steps);
  const hours = () => stripHours(rows());
  const x = (minute: number) =>
    left + ((minute / 60 - hours().from) / (hours().until - hours().from)) * (width() - left - 8);
  const every = () => (width() < 480 && hours().until - hours().from > 4 ? 2 : 1);
  const marks = () =>
    Array.from({ length: hours().until - hours().from + 1 }, (_, i) => hours().from + i).filter(
      (_, i) => i % every() === 0,
    );
  const height = () => rows().length * rowHeight + 26;
  const said = () => words.pieces.stripSays(rows().map(rowInWords).join("; "));
  return (
    <div ref={frame}>
      <svg class="strip" width={width()} height={height()} role="img" aria-label={said()}>
        <For each={marks()}>
          {(hour) => (
            <>
              <path class="faint" d={`M${x(hour * 60)} 0V${height() - 24}`} />
              <text class="m soft" x={x(hour * 60)} y={height() - 6} font-size="15">
                {hour}
              </text>
            </>
          )}
        </For>
        <For each={rows()}>
          {(row, i) => (
            <g transform={`translate(0 ${i() * rowHeight})`}>
              <text x="0" y="30" font-size="16" class="b">
                {dayName(row.day)}
              </text>
              <path class="pen" d={`M${left} 32H${width() - 8}`} />
              <For each={row.blocks}>
                {(block) => (
                  <>
                    <rect
                      class="strip-hands"
                      classList={{ coat: block.step.what === "coat" }}
                      x={x(block.from)}
                      y="8"
                      width={Math.max(3, x(block.until) - x(block.from))}
                      height="24"
                    />
                    <Show when={block.dryUntil > block.until}>
                      <path class="quiet" d={`M${x(block.until)} 32V42H${x(block.dryUntil)}V36`} />
                    </Show>
                  </>
                )}
              </For>
            </g>
          )}
        </For>
      </svg>
    </div>
  );
}

const rowInWords = (row: StripRow): string => {
  const clock = (minute: number) => `${Math.floor(minute / 60)}:${String(minute % 60).padStart(2, "0")}`;
  const first = row.blocks[0];
  const last = row.blocks.at(-1);
  return words.pieces.stripRow(dayName(row.day), clock(first?.from ?? 0), clock(last?.until ?? 0));
};
