import { createMemo, createSignal, Show } from "solid-js";
import { usualSpread } from "../../core/pieces/delivery.ts";
import type { DeliveryOutput } from "../../core/registry/delivery.ts";
import { TextField } from "../controls/text-field.tsx";
import { useReckoned } from "../drying/use-reckoned.ts";
import * as words from "../words/words.ts";
import type { PlanInput } from "./draft.ts";
import { dayName } from "./plan-words.ts";

const t = words.delivery;
/** The same plan is drawn the same, however often it is looked at. */
const seed = "delivery";

const readSpread = (typed: string): number | undefined => {
  const times = Number(typed.trim().replace(",", "."));
  return typed.trim() !== "" && times >= 1 && times <= 5 ? times : undefined;
};

/** The first day by which so large a share of the runs was done. */
const dayOf = ({ doneBy }: DeliveryOutput, share: number): string | undefined =>
  doneBy.find((by) => by.share >= share)?.day;
const shareBy = ({ doneBy }: DeliveryOutput, day: string): number =>
  doneBy.findLast((by) => by.day <= day)?.share ?? 0;

/** By when the piece is done, and how likely: `In 9 cases of 10 it is done by Sat 21 Nov.` */
export function Delivery(props: { readonly input: PlanInput; readonly wanted: string | null }) {
  const [spread, setSpread] = createSignal(String(usualSpread));
  const input = createMemo(() => {
    const spreadTimes = readSpread(spread());
    return spreadTimes === undefined ? undefined : { ...props.input, spreadTimes, seed };
  });
  const reckoned = useReckoned("delivery", input);
  const chance = (): DeliveryOutput | undefined => {
    const answer = reckoned.last()?.answer;
    return answer?.ok ? answer.value : undefined;
  };
  return (
    <section class="stack">
      <h3>{t.heading}</h3>
      <Show when={chance()} fallback={input() && <NotYet reckoned={reckoned} />}>
        {(found) => (
          <>
            <p>
              <b>{ninth(found())}</b> {half(found())}
            </p>
            <Show when={props.wanted} keyed>
              {(day) => <p>{t.wanted(t.cases(shareBy(found(), day)), dayName(day))}</p>}
            </Show>
            <Show when={found().neverShare >= 0.05 && found().neverShare <= 0.1}>
              <p>{t.never(t.cases(found().neverShare))}</p>
            </Show>
            <p class="soft small">{t.says(String(found().runs))}</p>
          </>
        )}
      </Show>
      <TextField
        label={t.spread}
        value={spread()}
        inputMode="decimal"
        hint={t.spreadHint(String(usualSpread))}
        wrong={readSpread(spread()) === undefined ? t.spreadWrong : undefined}
        onInput={setSpread}
      />
    </section>
  );
}

function ninth(found: DeliveryOutput): string {
  const day = dayOf(found, 0.9);
  return day === undefined ? t.neverNine : t.by(t.nine, dayName(day));
}

function half(found: DeliveryOutput): string {
  const day = dayOf(found, 0.5);
  return day === undefined ? "" : t.by(t.half, dayName(day));
}

const NotYet = (props: { readonly reckoned: ReturnType<typeof useReckoned<"delivery">> }) => (
  <Show when={props.reckoned.failed()} fallback={<p class="soft">{t.working}</p>}>
    <p>{t.failed}</p>
    <button type="button" onClick={props.reckoned.again}>
      {t.again}
    </button>
  </Show>
);
