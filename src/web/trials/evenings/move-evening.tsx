import { createSignal, Show } from "solid-js";
import { DomainError } from "../../../core/domain-error.ts";
import { movedWindow, type ShopWindow } from "../../../core/pieces/shop-windows.ts";
import { problemFromDomain } from "../../../core/registry/problem.ts";
import { DoesNotFit } from "../../controls/does-not-fit.tsx";
import { TextField } from "../../controls/text-field.tsx";
import { dayName } from "../../pieces/plan-words.ts";
import * as words from "../../words/words.ts";

const t = words.trialEvenings;

/** One evening goes to another day or hour, or falls out; the plan follows. */
export function MoveEvening(props: {
  readonly day: string;
  readonly windows: readonly ShopWindow[];
  /** By the clock on the wall. */
  readonly now: string;
  readonly onMove: (to: ShopWindow) => void;
  readonly onLeaveOut: () => void;
}) {
  const lies = () => props.windows.find(([from]) => from.startsWith(props.day));
  const [day, setDay] = createSignal(props.day);
  const [from, setFrom] = createSignal(lies()?.[0].slice(11) ?? "18:00");
  const [until, setUntil] = createSignal(lies()?.[1].slice(11) ?? "21:00");
  const [wrong, setWrong] = createSignal<string>();
  const typing = (put: (text: string) => void) => (text: string) => {
    setWrong(undefined);
    put(text);
  };
  const move = () => {
    const to = [`${day()}T${from()}`, `${day()}T${until()}`] as const;
    const stays = lies();
    if (stays?.[0] === to[0] && stays[1] === to[1]) return setWrong(words.evenings.thereAlready);
    if (to[1] <= props.now) return setWrong(words.evenings.passed);
    try {
      movedWindow(props.windows, props.day, to); // refuses what is no evening
      props.onMove(to);
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
      setWrong(problemFromDomain(error.detail).message);
    }
  };
  return (
    <section class="hung stack not-on-paper">
      <h2>{words.evenings.moveThis(dayName(props.day))}</h2>
      <TextField label={words.evenings.moveTo} type="date" value={day()} onInput={typing(setDay)} />
      <div class="side-by-side">
        <TextField label={words.evenings.from} type="time" value={from()} onInput={typing(setFrom)} />
        <TextField label={words.evenings.until} type="time" value={until()} onInput={typing(setUntil)} />
      </div>
      <Show when={wrong()} keyed>
        {(why) => <DoesNotFit heading={words.evenings.cannotMove} says={why} />}
      </Show>
      <div class="side-by-side">
        <button type="button" onClick={move}>
          {words.evenings.moveAct}
        </button>
        <button type="button" onClick={() => props.onLeaveOut()}>
          {t.notThisOf(dayName(props.day))}
        </button>
      </div>
    </section>
  );
}
