import { createMemo, createSignal, Show } from "solid-js";
import { DomainError } from "../../core/domain-error.ts";
import { movedWindow } from "../../core/pieces/shop-windows.ts";
import { problemFromDomain } from "../../core/registry/problem.ts";
import { DoesNotFit } from "../controls/does-not-fit.tsx";
import { TextField } from "../controls/text-field.tsx";
import * as words from "../words/words.ts";
import { type CarryingOn, endOf } from "./carrying-on.ts";
import { dayName } from "./plan-words.ts";

/** One evening goes to another day or hour, and what follows it follows; the new end is said before anything is kept. */
export function MoveEvening(props: {
  readonly of: CarryingOn;
  readonly day: string;
  readonly onMoved: (entry: string) => void;
}) {
  const lies = () => props.of.windows().find(([from]) => from.startsWith(props.day));
  const [day, setDay] = createSignal(props.day);
  const [from, setFrom] = createSignal(lies()?.[0].slice(11) ?? "18:00");
  const [until, setUntil] = createSignal(lies()?.[1].slice(11) ?? "21:00");
  const [told, setTold] = createSignal(false);
  const isSame = () => lies()?.[0] === `${day()}T${from()}` && lies()?.[1] === `${day()}T${until()}`;
  const anew = createMemo(() => {
    if (isSame()) return undefined;
    try {
      const to = [`${day()}T${from()}`, `${day()}T${until()}`] as const;
      if (to[1] <= props.of.wall().text) return { wrong: words.evenings.passed };
      const found = props.of.replanned(movedWindow(props.of.windows(), props.day, to));
      if (found === undefined) return undefined;
      return found.ok ? { plan: found.value } : { wrong: found.error.message };
    } catch (error) {
      if (error instanceof DomainError) return { wrong: problemFromDomain(error.detail).message };
      throw error;
    }
  });
  const plan = () => anew()?.plan;
  const says = () => {
    const [found, before] = [plan(), props.of.ends()];
    const after = found === undefined ? null : endOf(found.steps);
    if (found === undefined) return "";
    return after === null
      ? words.evenings.doesNotReach
      : words.evenings.ends(dayName(after), dayName(before ?? after));
  };
  const move = () => {
    const found = plan();
    if (found === undefined) setTold(true);
    else props.onMoved(props.of.keep(found));
  };
  return (
    <section class="hung stack">
      <h2>{words.evenings.moveThis(dayName(props.day))}</h2>
      <TextField label={words.evenings.moveTo} type="date" value={day()} onInput={setDay} />
      <div class="side-by-side">
        <TextField label={words.evenings.from} type="time" value={from()} onInput={setFrom} />
        <TextField label={words.evenings.until} type="time" value={until()} onInput={setUntil} />
      </div>
      <Show when={anew()?.wrong} keyed>
        {(why) => <DoesNotFit heading={words.evenings.cannotMove} says={why} />}
      </Show>
      <p role="status">{told() && isSame() ? words.evenings.thereAlready : says()}</p>
      <button type="button" class="main" onClick={move}>
        {words.evenings.moveAct}
      </button>
    </section>
  );
}
