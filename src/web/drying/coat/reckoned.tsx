import { For } from "solid-js";
import { drying } from "../../../core/registry/drying.ts";
import { upToDigits, withDigits, withPlaces } from "../../words/number.ts";
import * as words from "../../words/words.ts";
import type { Dried } from "../task.ts";
import { type CurvePoint, tableOf } from "./state.ts";

const t = words.drying.coat;

/** `3e-9` as `0.000 000 3 %`: a misclosure is said as what it is less than. */
function lessThan(share: number): string {
  const size = Math.abs(share);
  const power = Math.min(-1, Math.ceil(Math.log10(Math.max(size, 1e-15))));
  return t.lessThan(-power);
}

/** One tap below: the figures of the curve, how far mass and heat are accounted for, what to know, and the sources. */
export function Reckoned(props: { readonly run: Dried; readonly points: readonly CurvePoint[] }) {
  return (
    <>
      <details>
        <summary>{t.table}</summary>
        <table class="figures">
          <thead>
            <tr>
              <th scope="col">{t.tableMinutes}</th>
              <th scope="col">{t.tableLiquid}</th>
              <th scope="col">{t.tableWater}</th>
              <th scope="col">{t.tableSurface}</th>
            </tr>
          </thead>
          <tbody>
            <For each={tableOf(props.points)}>
              {(point) => (
                <tr>
                  <td>{withPlaces(point.at, 1)}</td>
                  <td>{withDigits(point.liquid, 3)}</td>
                  <td>{upToDigits((point.shares.water ?? 0) * 100, 2)}</td>
                  <td>{withPlaces(point.surfaceC, 1)}</td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </details>
      <details>
        <summary>{t.how}</summary>
        <div class="stack small">
          <p>{t.balance(lessThan(props.run.balance.mass), lessThan(props.run.balance.heat))}</p>
          <For each={props.run.flags}>{(flag) => <p>{flag.message}</p>}</For>
          <ul>
            <For each={drying.sources}>{(source) => <li>{source}</li>}</For>
          </ul>
        </div>
      </details>
    </>
  );
}
