import { createEffect, createMemo, createSignal, For, on, Show } from "solid-js";
import { Dynamic } from "solid-js/web";
import type { JarView } from "../../core/views/jar.ts";
import { useBook } from "../book-store/use-book.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import * as words from "../words/words.ts";
import type { ActProps } from "./acts/act-form.tsx";
import { BlendAct } from "./acts/blend.tsx";
import { CorrectAct } from "./acts/correct.tsx";
import { DropTestAct } from "./acts/drop-test.tsx";
import { DryDownAct } from "./acts/dry-down.tsx";
import { EmptyAct, SpoiltAct } from "./acts/end.tsx";
import { LookAct } from "./acts/look.tsx";
import { PourBackAct } from "./acts/pour-back.tsx";
import { PourOffAct } from "./acts/pour-off.tsx";
import { RestoreAct } from "./acts/restore.tsx";
import { SeriesAct } from "./acts/series.tsx";
import { StrainAct } from "./acts/strain.tsx";
import { ThinAct } from "./acts/thin.tsx";
import { TopUpAct } from "./acts/top-up.tsx";
import { WeighAct } from "./acts/weigh.tsx";
import { type ActGroup, actGroups, type JarAct, nextAct } from "./next-act.ts";

const forms: Readonly<Record<JarAct, (props: ActProps) => ReturnType<typeof LookAct>>> = {
  look: LookAct,
  strain: StrainAct,
  thin: ThinAct,
  weigh: WeighAct,
  dryDown: DryDownAct,
  dropTest: DropTestAct,
  series: SeriesAct,
  topUp: TopUpAct,
  restore: RestoreAct,
  correct: CorrectAct,
  blend: BlendAct,
  pourBack: PourBackAct,
  pourOff: PourOffAct,
  spoilt: SpoiltAct,
  empty: EmptyAct,
};

/** The one thing to press, the rest a tap below; after it its undo in the very place. */
export function JarActs(props: { readonly jar: JarView }) {
  const book = useBook();
  const [open, setOpen] = createSignal<JarAct>();
  const [wrote, setWrote] = createSignal<{ readonly said: string; readonly entries: readonly string[] }>();
  const which = createMemo(() => props.jar.id); // the jar itself is another one after every entry
  createEffect(
    on(
      which,
      () => {
        setOpen(undefined);
        setWrote(undefined);
      },
      { defer: true },
    ),
  );
  const next = () => nextAct(props.jar);
  const start = (act: JarAct) => {
    setWrote(undefined);
    setOpen(act);
  };
  const undo = () => {
    const written = wrote();
    if (written !== undefined) book.strike([...written.entries]);
    setWrote(undefined);
  };
  return (
    <div class="jar-acts not-on-paper">
      <Show when={wrote()} keyed>
        {(written) => <UndoStrip says={written.said} onUndo={undo} />}
      </Show>
      <Show
        when={open()}
        keyed
        fallback={
          <>
            <Show when={next()} keyed>
              {(act) => (
                <button type="button" class="main" onClick={() => start(act)}>
                  {act === "weigh" && props.jar.weighedLast !== null
                    ? words.jars.next.weighAgain
                    : words.jars.next[act]}
                </button>
              )}
            </Show>
            <details class="other-acts">
              <summary>{words.jars.others}</summary>
              <For each={Object.keys(actGroups) as ActGroup[]}>
                {(group) => (
                  <section class="act-group" aria-label={words.jars.groups[group]}>
                    <h3>{words.jars.groups[group]}</h3>
                    <div class="side-by-side">
                      <For each={actGroups[group].filter((act) => act !== next())}>
                        {(act) => (
                          <button type="button" onClick={() => start(act)}>
                            {words.jars.next[act]}
                          </button>
                        )}
                      </For>
                    </div>
                  </section>
                )}
              </For>
            </details>
          </>
        }
      >
        {(act) => (
          <Dynamic
            component={forms[act]}
            jarId={props.jar.id}
            onLeave={() => setOpen(undefined)}
            onWrote={(said: string, entries: readonly string[]) => {
              setOpen(undefined);
              setWrote({ said, entries });
            }}
          />
        )}
      </Show>
    </div>
  );
}
