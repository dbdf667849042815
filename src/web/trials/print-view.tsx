import { createMemo, createResource, createSignal, For, Show } from "solid-js";
import { readTrialKey, type TrialKey } from "../../core/notebook/trial-key.ts";
import { type Trial, trialView } from "../../core/views/trial.ts";
import { useBook } from "../book-store/use-book.tsx";
import type { ScreenProps } from "../place.ts";
import { Page } from "../shell/page.tsx";
import * as words from "../words/words.ts";
import { KeyOpener } from "./key-opener.tsx";
import { openerOf } from "./open-key.ts";
import { BoardLabels, CodesSheet, CutSheet, SessionSheet } from "./sheets.tsx";
import { shelfJars } from "./shelf-jars.ts";
import { NoTrial } from "./trial-view.tsx";
import "./trials.css";
import "./sheets.css";

/** Paper for the bench: codes to stick on the boards, a sheet for each coat, the cut list. */
export function TrialPrint(props: ScreenProps) {
  const book = useBook();
  const id = () => props.params.trial as string; // the page's path holds it
  const trial = createMemo(() => book.look(`trial-page:${id()}`, (read) => trialView(read, id())));
  const [key, setKey] = createSignal<TrialKey | null>(null);
  const shelf = createMemo(() => book.look("shelf-jars", shelfJars));
  /** The code on the jar where it is known which one it is, else what the plan calls it. */
  const jarToPour = (jar: string | undefined): string | null => {
    if (jar === undefined) return null;
    const batch = trial()?.jars.find((j) => j.jar === jar)?.batch;
    const code = shelf().find((s) => s.id === batch)?.code;
    return code === undefined ? jar : words.trials.jarOf(code, jar);
  };
  return (
    <Show when={trial()} fallback={<NoTrial />}>
      {(t) => (
        <Page title={words.trials.printTitle} headingUnseen>
          <div class="not-on-paper stack">
            <h2>{words.trials.printTitle}</h2>
            <button type="button" class="main" onClick={() => window.print()}>
              {words.trials.print}
            </button>
            <a class="press" href={`/bench/remembered?trial=${t().id}&source=sheet`}>
              {words.trials.typeBack}
            </a>
            <Show when={done(t()) > 0}>
              <p class="soft">{words.trials.sheetsLeft(done(t()))}</p>
            </Show>
            <Show when={t().key.state !== "open" && key() === null}>
              <ShowJars trial={t()} onKey={setKey} />
            </Show>
          </div>
          <Show when={t().laidOut}>
            {(laid) => (
              <div class="papers">
                <CodesSheet name={t().asked.question} body={laid().body} />
                <BoardLabels name={t().asked.question} trial={t().id} body={laid().body} />
                <For each={laid().body.orders}>
                  {(order, n) => (
                    <Show when={n() >= done(t())}>
                      <SessionSheet
                        name={t().asked.question}
                        body={laid().body}
                        order={order}
                        coat={n() + 1}
                        jarOf={(code) => jarToPour((t().key.opened ?? key())?.codes[code]?.jar)}
                      />
                    </Show>
                  )}
                </For>
                <CutSheet body={laid().body} />
              </div>
            )}
          </Show>
        </Page>
      )}
    </Show>
  );
}

/** Coats that are on every patch want no sheet any more; once all are on, each may be printed again. */
const done = ({ coatsDone, asked }: Trial): number => (coatsDone >= asked.coats ? 0 : coatsDone);

/** Opens the key for this sheet alone, for whoever pours: nothing is written down. */
function ShowJars(props: { readonly trial: Trial; readonly onKey: (key: TrialKey) => void }) {
  const [opener] = createResource(() => props.trial, openerOf);
  function show(text: string): void {
    const read = readTrialKey(text, props.trial.laidOut?.body.keySha256 ?? "");
    if (read.ok) props.onKey(read.value);
  }
  return (
    <Show when={opener() !== undefined && opener() !== "elsewhere"}>
      <section class="hung">
        <p>{words.trials.sheetJarsSays}</p>
        <KeyOpener
          trial={props.trial}
          opener={opener()}
          label={words.trials.sheetJars}
          mayOpen={() => true}
          onOpened={show}
        />
      </section>
    </Show>
  );
}
