import { createMemo, createSignal, For, onMount, Show } from "solid-js";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { qrPath } from "../drawings/qr-path.ts";
import { boardAtBench } from "../film/board-path.ts";
import { addressForPhones, addressHere } from "../pairing/pairing-api.ts";
import * as words from "../words/words.ts";

type Layout = Body<"trial-laid-out">;

const codesAcross = 9;
const codeMm = [21, 15] as const;

/** A ruler that shows whether the paper came out at its size. Drawn in millimetres: boxes of the page's own are not exact. */
function Bar() {
  return (
    <svg class="bar" width="104mm" height="7mm" viewBox="0 0 104 7" role="img" aria-label={words.trials.bar}>
      <path d="M2 1V6M102 1V6M2 3.500H102" fill="none" stroke="#000" stroke-width=".4" />
      <rect x="31" y="0" width="42" height="7" fill="#fff" />
      <text x="52" y="5" font-size="4" class="m">
        {words.trials.bar}
      </text>
    </svg>
  );
}

function Head(props: { readonly says: string; readonly beside?: string }) {
  return (
    <div class="sheet-head">
      <h2>{props.says}</h2>
      <span>{props.beside}</span>
    </div>
  );
}

/** Every code to cut out and stick beside its patch, in the order of the boards. */
export function CodesSheet(props: { readonly name: string; readonly body: Layout }) {
  const rows = () => Math.ceil(props.body.patches.length / codesAcross);
  const [w, h] = codeMm;
  return (
    <section class="sheet" tabindex="0" aria-label={words.trials.codesHeading(props.name)}>
      <Head
        says={words.trials.codesHeading(props.name)}
        beside={words.trials.keyApart(props.body.keySha256.slice(0, 8))}
      />
      <svg
        width={`${w * codesAcross}mm`}
        height={`${h * rows()}mm`}
        viewBox={`0 0 ${w * codesAcross} ${h * rows()}`}
        role="img"
        aria-label={props.body.patches.map((p) => p.code).join(", ")}
      >
        <For each={props.body.patches}>
          {(p, i) => (
            <g transform={`translate(${(i() % codesAcross) * w} ${Math.floor(i() / codesAcross) * h})`}>
              <rect
                width={w}
                height={h}
                fill="none"
                stroke="#888"
                stroke-width=".25"
                stroke-dasharray="1.500 1"
              />
              <text x={w / 2} y="8.500" font-size="8" class="m b">
                {p.code}
              </text>
              <text x={w / 2} y="13" font-size="3" class="m">
                {p.board} · {p.place}
              </text>
            </g>
          )}
        </For>
      </svg>
      <p class="tip">{words.trials.codesTip}</p>
      <Bar />
    </section>
  );
}

const labelsAcross = 3;
const labelMm = [62, 30] as const;

/** A label for the back of each board: its name, its plank, and a code that opens it on a phone. It says nothing of recipes. */
export function BoardLabels(props: { readonly name: string; readonly trial: string; readonly body: Layout }) {
  const [w, h] = labelMm;
  const rows = () => Math.ceil(props.body.boards.length / labelsAcross);
  const [phonesAt, setPhonesAt] = createSignal(addressHere);
  onMount(async () => setPhonesAt(await addressForPhones()));
  return (
    <section class="sheet" tabindex="0" aria-label={words.trials.labelsHeading(props.name)}>
      <Head says={words.trials.labelsHeading(props.name)} />
      <svg
        width={`${w * labelsAcross}mm`}
        height={`${h * rows()}mm`}
        viewBox={`0 0 ${w * labelsAcross} ${h * rows()}`}
        role="img"
        aria-label={props.body.boards.map((b) => b.name).join(", ")}
      >
        <For each={props.body.boards}>
          {(board, i) => {
            const code = createMemo(() => qrPath(`${phonesAt()}${boardAtBench(props.trial, board.name)}`));
            return (
              <g transform={`translate(${(i() % labelsAcross) * w} ${Math.floor(i() / labelsAcross) * h})`}>
                <rect
                  width={w}
                  height={h}
                  fill="none"
                  stroke="#888"
                  stroke-width=".25"
                  stroke-dasharray="1.500 1"
                />
                <g transform={`translate(${w - h} 0) scale(${h / code().size})`}>
                  <path d={code().path} />
                </g>
                <text x="3" y="9" font-size="6" class="b">
                  {board.name}
                </text>
                <text x="3" y="15" font-size="3.500">
                  {words.trials.labelPlank(board.plank)}
                </text>
                <text x="3" y="20" font-size="3.500">
                  {board.wood}
                </text>
              </g>
            );
          }}
        </For>
      </svg>
      <p class="tip">{words.trials.labelsTip}</p>
      <Bar />
    </section>
  );
}

/** One coat in its drawn order, with blanks for the pencil. */
export function SessionSheet(props: {
  readonly name: string;
  readonly body: Layout;
  readonly order: readonly string[];
  readonly coat: number;
  readonly jarOf: (code: string) => string | null;
}) {
  const say = words.trials.sheetColumns;
  const patch = (code: string) => props.body.patches.find((p) => p.code === code);
  const jars = () => props.order.some((code) => props.jarOf(code) !== null);
  return (
    <section class="sheet" tabindex="0" aria-label={words.trials.sheetHeading(props.coat, props.name)}>
      <Head says={words.trials.sheetHeading(props.coat, props.name)} />
      <p class="sheet-caution">
        <b>{words.pieces.air}</b> {words.pieces.rags} {words.pieces.estimate}
      </p>
      <p class="air">{words.trials.airLine}</p>
      <table>
        <thead>
          <tr>
            <th>{say.line}</th>
            <th>{say.board}</th>
            <th>{say.place}</th>
            <th>{say.code}</th>
            <Show when={jars()}>
              <th>{say.jar}</th>
            </Show>
            <th class="wide">{say.time}</th>
            <th class="wide">{say.leftOut}</th>
            <th class="wide">{say.remark}</th>
          </tr>
        </thead>
        <tbody>
          <For each={props.order}>
            {(code, i) => (
              <tr>
                <td>{i() + 1}</td>
                <td>{patch(code)?.board}</td>
                <td>{patch(code)?.place}</td>
                <td>
                  <b>{code}</b>
                </td>
                <Show when={jars()}>
                  <td>{props.jarOf(code)}</td>
                </Show>
                <td />
                <td />
                <td />
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <p class="tip">{words.trials.sheetTip}</p>
      <Bar />
    </section>
  );
}

/** What to saw. */
export function CutSheet(props: { readonly body: Layout }) {
  const say = words.trials.cutColumns;
  const size = () => props.body.geometry?.boardMm.join(" × ") ?? "";
  return (
    <section class="sheet" tabindex="0" aria-label={words.trials.cutHeading}>
      <Head says={words.trials.cutHeading} />
      <table>
        <thead>
          <tr>
            <th>{say.board}</th>
            <th>{say.wood}</th>
            <th>{say.plank}</th>
            <th>{say.size}</th>
            <th>{say.patches}</th>
          </tr>
        </thead>
        <tbody>
          <For each={props.body.boards}>
            {(b) => (
              <tr>
                <td>
                  <b>{b.name}</b>
                </td>
                <td>{b.wood}</td>
                <td>{b.plank}</td>
                <td>{size()}</td>
                <td>{b.patches}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <Bar />
    </section>
  );
}
