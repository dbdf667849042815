import { Show } from "solid-js";
import { TextField } from "../../controls/text-field.tsx";
import * as words from "../../words/words.ts";
import type { Planning } from "../planning.ts";
import { areaText, timesFrom } from "./parts-total.ts";

/** What all parts come to, and what end grain adds in the first coat. */
export function PartsTotal(props: { readonly planning: Planning }) {
  const { draft, put, parts, partsArea } = props.planning;
  const said = (areaM2: number, digits = 3) => areaText(areaM2, parts().unit, digits);
  return (
    <Show when={parts().total}>
      {(total) => (
        <>
          <p class="lead" role="status">
            {words.parts.inAll(said(total().areaM2))}
          </p>
          <Show when={parts().notCounted > 0}>
            <p>{words.parts.notCounted(parts().notCounted)}</p>
          </Show>
          <Show when={total().endGrainM2 > 0} fallback={<p>{words.parts.noEndGrain}</p>}>
            <p>{words.parts.endGrain(said(total().endGrainM2, 2), said(total().equivalentM2))}</p>
            <TextField
              label={words.parts.times}
              value={draft().endGrainTimes}
              inputMode="decimal"
              hint={words.parts.timesHint}
              wrong={timesFrom(draft().endGrainTimes) === undefined ? words.parts.timesWrong : undefined}
              onInput={(endGrainTimes) => put({ endGrainTimes })}
            />
          </Show>
          <Show when={partsArea() !== draft().area}>
            <button type="button" onClick={() => put({ area: partsArea() ?? "" })}>
              {words.parts.take(partsArea() ?? "")}
            </button>
          </Show>
        </>
      )}
    </Show>
  );
}
