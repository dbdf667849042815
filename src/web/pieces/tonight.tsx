import { For, Show } from "solid-js";
import { inTime } from "../../core/pieces/planned-evenings.ts";
import * as words from "../words/words.ts";
import type { CarryingOn } from "./carrying-on.ts";
import { dayName, stepName } from "./plan-words.ts";

/** The steps of tonight, or of the next evening that has any, ticked as they are behind us; and why one must wait. */
export function Tonight(props: { readonly of: CarryingOn }) {
  const day = () => {
    const today = props.of.wall().day;
    return props.of.steps().some((step) => step.day === today && step.at !== undefined)
      ? today
      : props.of.next()?.day;
  };
  const waits = () => {
    const drying = props.of.drying();
    const left = drying === undefined ? 0 : drying.ready - props.of.wall().minutes;
    return drying === undefined || left <= 0 || left > 12 * 60
      ? undefined
      : words.evenings.dries(lower(drying.says), props.of.clockAt(drying.ready));
  };
  const tooLate = () => {
    const drying = props.of.drying();
    if (drying?.most === undefined || props.of.wall().minutes <= drying.most) return undefined;
    return words.evenings.tooLate(drying.says, props.of.clockAt(drying.most));
  };
  return (
    <Show when={day()} keyed>
      {(shown) => (
        <section class="tonight-now">
          <h2>
            {shown === props.of.wall().day
              ? words.evenings.tonightHeading(dayName(shown))
              : words.evenings.nextHeading(dayName(shown))}
          </h2>
          <ol class="tonight-list">
            <For each={inTime(props.of.steps()).filter((step) => step.day === shown)}>
              {(step) => (
                <li classList={{ soft: props.of.isDone(step) }}>
                  <b>{step.at}</b>
                  <span classList={{ b: step === props.of.next() }}>
                    {stepName(step, props.of.coats().get(step))}
                  </span>
                  <Show when={props.of.isDone(step)} fallback={<Ring />}>
                    <Tick />
                  </Show>
                </li>
              )}
            </For>
          </ol>
          <Show when={tooLate() ?? waits()} keyed>
            {(why) => <p class="soft">{why}</p>}
          </Show>
        </section>
      )}
    </Show>
  );
}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

const Ring = () => (
  <svg class="tick" viewBox="0 0 26 26" aria-hidden="true">
    <circle class="ring" cx="13" cy="13" r="11" />
  </svg>
);

const Tick = () => (
  <svg class="tick" viewBox="0 0 26 26" role="img" aria-label={words.evenings.isDone}>
    <circle class="dot" cx="13" cy="13" r="12" />
    <path d="M7 13.5l4.2 4.2 8-8.6" fill="none" stroke="var(--ground)" stroke-width="3" />
  </svg>
);
