import { For, Show } from "solid-js";
import type { BoardGeometry } from "../../core/design/board-geometry.ts";
import { placeStartMm } from "../../core/design/board-geometry.ts";
import { createRoom } from "../controls/room.ts";
import * as words from "../words/words.ts";
import "./boards.css";
import { woodFill } from "./wood-fill.ts";

export interface DrawnPatch {
  readonly patch: string;
  readonly code: string;
  readonly place: number;
  /** Its turn on the board, for the session that is shown. */
  readonly turn: number | null;
  /** Coats that it has, built up from below. */
  readonly coats?: number;
  readonly leftOut?: boolean;
  readonly here?: boolean;
}

export interface DrawnBoard {
  readonly name: string;
  readonly plank: string;
  readonly wood: string;
  readonly patches: readonly DrawnPatch[];
}

const leastPatchPx = 46;
const rowGapPx = 12;
const woodGapPx = 10;

interface Sheet {
  readonly left: number;
  readonly width: number;
  readonly height: number;
  readonly scale: number;
  readonly rows: readonly { readonly board: DrawnBoard; readonly y: number }[];
}

/** The boards on a sheet of this width: names at the left where there is room, above each board where not. */
function sheetOf(boards: readonly DrawnBoard[], geometry: BoardGeometry, room: number): Sheet {
  const beside = room > 560;
  const left = beside ? 96 : 0;
  const least = (leastPatchPx / geometry.patchLengthMm) * geometry.lengthMm;
  const width = Math.max(room - left - 2, least);
  const scale = width / geometry.lengthMm;
  const boardPx = Math.max(geometry.widthMm * scale, 52);
  let y = 1;
  const rows = boards.map((board, i) => {
    if (i > 0) y += rowGapPx + (board.wood !== boards[i - 1]?.wood ? woodGapPx : 0);
    if (!beside) y += 24;
    const row = { board, y };
    y += boardPx;
    return row;
  });
  return { left, width, height: y + 2, scale, rows };
}

/** Every board in its place, to scale along the grain: patches, gutters, the field to judge, code and turn. */
export function Boards(props: {
  readonly boards: readonly DrawnBoard[];
  readonly geometry: BoardGeometry;
  readonly label: string;
  readonly pressed?: string | undefined;
  readonly onPatch?: ((patch: string) => void) | undefined;
}) {
  let frame!: HTMLDivElement;
  const room = createRoom(() => frame, 200);
  const sheet = () => sheetOf(props.boards, props.geometry, room());
  const widthOf = () => sheet().left + sheet().width + 2;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing is no set of fields; it takes the focus where it is wider than the phone
    <div
      ref={frame}
      class="boards"
      tabindex={widthOf() > room() + 4 ? 0 : undefined}
      role="group"
      aria-label={props.label}
    >
      <svg
        width={widthOf()}
        height={sheet().height}
        viewBox={`0 0 ${widthOf()} ${sheet().height}`}
        role={props.onPatch === undefined ? "img" : undefined}
        aria-label={props.onPatch === undefined ? props.label : undefined}
      >
        <For each={sheet().rows}>
          {(row) => (
            <OneBoard
              board={row.board}
              geometry={props.geometry}
              sheet={sheet()}
              y={row.y}
              pressed={props.pressed}
              onPatch={props.onPatch}
            />
          )}
        </For>
      </svg>
    </div>
  );
}

function OneBoard(props: {
  readonly board: DrawnBoard;
  readonly geometry: BoardGeometry;
  readonly sheet: Sheet;
  readonly y: number;
  readonly pressed?: string | undefined;
  readonly onPatch?: ((patch: string) => void) | undefined;
}) {
  const height = () => Math.max(props.geometry.widthMm * props.sheet.scale, 52);
  const grain = () =>
    [0.1, 0.28, 0.5, 0.7, 0.9]
      .map((share, i) => {
        const [y, w] = [share * height(), props.sheet.width];
        return `M0 ${y}Q${w * (0.16 + 0.05 * i)} ${y + (i % 2 === 0 ? 5 : -4)} ${w / 2} ${y}T${w} ${y + (i % 3) - 1}`;
      })
      .join("");
  return (
    <g transform={`translate(${props.sheet.left} ${props.y})`}>
      <Show
        when={props.sheet.left > 0}
        fallback={
          <text y={-8} class="b" font-size="16">
            {props.board.name}{" "}
            <tspan class="soft plain">{words.trials.plank(props.board.plank, props.board.wood)}</tspan>
          </text>
        }
      >
        <text x={-props.sheet.left} y={height() / 2 - 3} class="b" font-size="17">
          {props.board.name}
        </text>
        <text x={-props.sheet.left} y={height() / 2 + 17} class="soft" font-size="16">
          {words.trials.plank(props.board.plank, props.board.wood)}
        </text>
      </Show>
      <rect width={props.sheet.width} height={height()} fill={woodFill(props.board.wood)} class="edge" />
      <path d={grain()} class="grain" />
      <For each={props.board.patches}>
        {(patch) => (
          <OnePatch
            patch={patch}
            geometry={props.geometry}
            scale={props.sheet.scale}
            boardHeight={height()}
            pressed={props.pressed === patch.patch}
            onPatch={props.onPatch}
          />
        )}
      </For>
    </g>
  );
}

function OnePatch(props: {
  readonly patch: DrawnPatch;
  readonly geometry: BoardGeometry;
  readonly scale: number;
  readonly boardHeight: number;
  readonly pressed: boolean;
  readonly onPatch?: ((patch: string) => void) | undefined;
}) {
  const x = () => placeStartMm(props.geometry, props.patch.place) * props.scale;
  const width = () => props.geometry.patchLengthMm * props.scale;
  const margin = () => Math.max(3, (props.geometry.gutterMm * props.scale) / 2);
  const height = () => props.boardHeight - 2 * margin();
  const inset = () => Math.max(3, props.geometry.judgedInsetMm * props.scale);
  const narrow = () => width() < 70;
  const turn = () => props.patch.turn;
  return (
    <g transform={`translate(${x()} ${margin()})`}>
      <g
        class="patch"
        classList={{
          out: props.patch.leftOut ?? false,
          here: (props.patch.here ?? false) || props.pressed,
        }}
        aria-hidden={props.onPatch !== undefined}
      >
        <rect width={width()} height={height()} class="field-of-patch" />
        <Show when={!narrow()}>
          <rect
            x={inset()}
            y={inset()}
            width={Math.max(0, width() - 2 * inset())}
            height={Math.max(0, height() - 2 * inset())}
            class="judged"
          />
        </Show>
        <For each={Array.from({ length: props.patch.coats ?? 0 })}>
          {(_, i) => <rect x={3} y={height() - 5 - i() * 5} width={width() - 6} height="3" class="coat" />}
        </For>
        <text
          x={width() / 2}
          y={height() / 2 + (narrow() ? 4 : 8) - Math.min(10, 3 * (props.patch.coats ?? 0))}
          class="m b"
          font-size={narrow() ? "20" : "24"}
        >
          {props.patch.code}
        </text>
        <Show when={turn()}>
          <text x={width() - 5} y={height() - 5} class="e" font-size="15">
            {turn()}
          </text>
        </Show>
      </g>
      <Show when={props.onPatch}>
        {(press) => (
          <PatchButton
            says={words.trials.patchSaid(props.patch)}
            pressed={props.pressed}
            size={[width(), height()]}
            onPress={() => press()(props.patch.patch)}
          />
        )}
      </Show>
    </g>
  );
}

/** What is pressed lies over the drawing, which has no other name for those who hear it. */
function PatchButton(props: {
  readonly says: string;
  readonly pressed: boolean;
  readonly size: readonly [number, number];
  readonly onPress: () => void;
}) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: there are no buttons inside a drawing
    <rect
      class="pressable"
      role="button"
      tabindex={0}
      aria-pressed={props.pressed}
      aria-label={props.says}
      width={props.size[0]}
      height={props.size[1]}
      onClick={() => props.onPress()}
      onKeyDown={(event) => {
        if (event.key !== "Enter" && event.key !== " ") return;
        event.preventDefault();
        props.onPress();
      }}
    />
  );
}
