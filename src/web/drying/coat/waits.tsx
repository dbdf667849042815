import { For, Show } from "solid-js";
import type { Own } from "../../../core/evaporation/own-log.ts";
import type { WaitAnswer } from "../../../core/views/wait-question.ts";
import { lengthInWords } from "../../words/time.ts";
import * as words from "../../words/words.ts";
import { NotReckoned } from "../not-reckoned.tsx";
import type { Reckoning } from "../use-reckoned.ts";

const t = words.drying.coat;
const length = (seconds: number): string => lengthInWords(seconds / 60);

/** When the next coat may go on, which of the three says so, and the other two beside it. */
export function Waits(props: {
  readonly answer: WaitAnswer | undefined;
  readonly own: Own | undefined;
  readonly reckoning: Reckoning<"waits">;
}) {
  const rows = () => {
    const [found, mine] = [props.answer, props.own];
    if (found === undefined || mine === undefined) return [];
    const ownSays =
      found.model === null
        ? t.ownWithout
        : mine.enough
          ? t.ownSays(length(found.model * mine.estimate), mine.coats)
          : t.ownNotYet(mine.coats, mine.bad);
    return [
      {
        name: found.common.setByHand ? t.which["set by hand"] : t.commonAs[found.common.known],
        says: length(found.common.seconds),
      },
      { name: t.which.model, says: found.model === null ? t.noModel : length(found.model) },
      { name: t.which["own log"], says: ownSays },
    ];
  };
  return (
    <section class="hung stack">
      <Show
        when={props.answer}
        fallback={
          <>
            <h2>{t.recoat}</h2>
            <NotReckoned reckoning={props.reckoning} />
          </>
        }
      >
        {(found) => (
          <>
            <h2>{t.recoatAfter(length(found().seconds))}</h2>
            <p>
              <b>{t.shown[found().shown]}</b>{" "}
              <Show when={found().interval} keyed>
                {([from, to]) => t.between(length(from), length(to))}
              </Show>{" "}
              <Show when={found().why} keyed>
                {(why) => (
                  <span class="soft">
                    {why === "not-in-three-days" ? t.notInThreeDays : words.drying.blush.why[why]}
                  </span>
                )}
              </Show>
            </p>
            <ul class="plain helps">
              <For each={rows()}>
                {(row) => (
                  <li>
                    <b>{row.name}</b>
                    <span>{row.says}</span>
                  </li>
                )}
              </For>
            </ul>
          </>
        )}
      </Show>
    </section>
  );
}
