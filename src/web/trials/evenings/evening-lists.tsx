import { For, Show } from "solid-js";
import { dayName } from "../../pieces/plan-words.ts";
import { lengthInWords } from "../../words/time.ts";
import * as words from "../../words/words.ts";
import { byDay, type PlannedCoat } from "./planned.ts";

const t = words.trialEvenings;

/** What is on tonight, or on the next evening that has anything. */
export function NextEvening(props: { readonly coats: readonly PlannedCoat[]; readonly today: string }) {
  const first = () => byDay(props.coats)[0];
  return (
    <Show when={first()} keyed>
      {([day, coats]) => (
        <section class="tonight-now not-on-paper">
          <h2>
            {day === props.today
              ? words.evenings.tonightHeading(dayName(day))
              : words.evenings.nextHeading(dayName(day))}
          </h2>
          <ol class="tonight-list">
            <For each={coats}>
              {(coat) => (
                <li>
                  <b>{coat.at}</b>
                  <span>{t.work(coat.letter, coat.coat)}</span>
                  <span class="soft">{t.patches(coat.patches)}</span>
                </li>
              )}
            </For>
          </ol>
        </section>
      )}
    </Show>
  );
}

/** The evenings after the next with their coats; on paper all of them, with blanks for a pencil. */
export function EveningTables(props: { readonly coats: readonly PlannedCoat[] }) {
  return (
    <For each={byDay(props.coats)}>
      {([day, coats], i) => (
        <table class="evening-table" classList={{ next: i() === 0 }}>
          <caption>{dayName(day)}</caption>
          <thead>
            <tr>
              <th scope="col">{t.when}</th>
              <th scope="col">{t.what}</th>
              <th scope="col">{t.on}</th>
              <th scope="col" class="where-wide">
                {words.pieces.hands}
              </th>
              <th scope="col">{t.dryBy}</th>
              <th scope="col" class="paper-only">
                {t.began}
              </th>
              <th scope="col" class="paper-only">
                {t.remark}
              </th>
            </tr>
          </thead>
          <tbody>
            <For each={coats}>
              {(coat) => (
                <tr>
                  <td>
                    <b>{coat.at}</b>
                  </td>
                  <td>{t.work(coat.letter, coat.coat)}</td>
                  <td>{t.patches(coat.patches)}</td>
                  <td class="where-wide">{lengthInWords(coat.minutes)}</td>
                  <td>{coat.dryAt}</td>
                  <td class="paper-only" />
                  <td class="paper-only" />
                </tr>
              )}
            </For>
          </tbody>
        </table>
      )}
    </For>
  );
}
