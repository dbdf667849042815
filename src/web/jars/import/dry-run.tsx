import { createMemo, For, Show } from "solid-js";
import type { ImportPlan, PlannedJar } from "../../../core/jar-import/plan-import.ts";
import { poundsPerUsGallonFromCut } from "../../../core/units.ts";
import { withDigits } from "../../words/number.ts";
import * as words from "../../words/words.ts";
import { grams, millilitres } from "../jar-text.ts";

const t = words.jars.importing;

const made = ({ amounts, usedKg }: PlannedJar): string =>
  [
    words.jars.lb(withDigits(poundsPerUsGallonFromCut(amounts.mixed.cut), 3)),
    t.madeOf(amounts.resin.typed, amounts.solvent.typed),
    t.makes(millilitres(amounts.mixed.solutionVolume)),
    usedKg > 0 ? t.used(grams(usedKg)) : "",
  ]
    .filter((part) => part !== "")
    .join(", ");

/** What would be written, row by row; what does not fit, by row and column; and what was taken for granted. */
export function DryRun(props: {
  readonly plan: ImportPlan;
  readonly leftOut: readonly number[];
  readonly onLeaveOut: (row: number) => void;
  readonly onBringBack: () => void;
  readonly told: boolean;
}) {
  /** Each row with problems once, however many there are. */
  const rows = createMemo(() => [...new Set(props.plan.problems.map((problem) => problem.row))]);
  const of = (row: number) => props.plan.problems.filter((problem) => problem.row === row);
  return (
    <section class="hung stack" aria-live="polite">
      <h2>{t.dryRun}</h2>
      <p>
        <b>{t.would(props.plan.jars.length)}</b> {t.problems(rows().length)}
      </p>
      <Show when={props.told && rows().length > 0}>
        <p class="wrong">{t.notWhile}</p>
      </Show>
      <ul class="plain problems">
        <For each={rows()}>
          {(row) => (
            <li class="does-not-fit">
              <For each={of(row)}>{(problem) => <p>{problem.says}</p>}</For>
              <Show when={row > 1}>
                <button type="button" onClick={() => props.onLeaveOut(row)}>
                  {t.leaveOut(row)}
                </button>
              </Show>
            </li>
          )}
        </For>
      </ul>
      <Show when={props.leftOut.length > 0}>
        <p>
          {t.leftOut(props.leftOut.join(", "))}{" "}
          <button type="button" class="words" onClick={() => props.onBringBack()}>
            {t.bringBack}
          </button>
        </p>
      </Show>
      <ol class="plain planned">
        <For each={props.plan.jars}>
          {(jar) => (
            <li>
              <b>{jar.row.code}</b>
              <span>
                {words.jars.inSolvent(jar.row.resin, jar.row.solvent.name)}
                <span class="soft"> {made(jar)}</span>
              </span>
            </li>
          )}
        </For>
      </ol>
      <Show when={props.plan.notes.length > 0}>
        <details>
          <summary>{t.notes(props.plan.notes.length)}</summary>
          <ul class="small">
            <For each={props.plan.notes}>{(note) => <li>{note.says}</li>}</For>
          </ul>
        </details>
      </Show>
    </section>
  );
}
