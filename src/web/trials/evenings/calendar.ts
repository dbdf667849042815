import { calendarFile } from "../../../core/calendar-file/write-calendar.ts";
import { eveningsToKeep, type TrialWords, trialEvents } from "../../../core/registry/trial-events.ts";
import { shopClock } from "../../../core/schedule/shop-clock.ts";
import type { TrialPlans } from "../../../core/views/trial-plans.ts";
import { lengthInWords } from "../../words/time.ts";
import * as words from "../../words/words.ts";
import type { PlannedTrial } from "./planned.ts";

const t = words.trialEvenings;
const cautions = [words.pieces.air, words.pieces.rags, words.pieces.estimate].join(" ");

/** An evening of a trial as a calendar shows it: its coats in one line, and each with its hour and jar below. */
function calendarWords(question: string, { coats }: PlannedTrial, zone: string): TrialWords {
  const clock = shopClock(zone);
  return {
    evening: ({ tasks }) => {
      const of = tasks.flatMap(({ task, from }) => {
        const coat = coats.find((one) => one.task === task);
        return coat === undefined ? [] : [{ coat, at: clock.clock(from).slice(11, 16) }];
      });
      const numbers = [...new Set(of.map(({ coat }) => coat.coat))];
      const lines = of.map(({ coat, at }) =>
        words.calendar.line(at, t.coatFrom(coat.coat, coat.jar), [
          t.patches(coat.patches),
          words.calendar.hands(lengthInWords(coat.minutes)),
          words.calendar.wait(lengthInWords(coat.leastWaitMinutes)),
        ]),
      );
      return {
        summary: words.calendar.heading(question, numbers.map(words.calendar.coat)),
        description: [...lines, "", cautions].join("\n"),
      };
    },
    gone: () => ({ summary: question, description: t.gone }),
  };
}

/**
 * The evenings of a trial as a calendar file; those that earlier ones had and this one has not are cancelled in it. A plan that
 * was not kept as it is now is another revision, and is to be kept.
 */
export function takenToCalendar(
  trial: { readonly id: string; readonly question: string },
  planned: PlannedTrial,
  plans: TrialPlans,
  when: { readonly zone: string; readonly stamp: string },
): { readonly text: string; readonly isNew: boolean } {
  const minute = Math.round(Date.parse(when.stamp) / 60_000);
  const says = calendarWords(trial.question, planned, when.zone);
  const events = trialEvents(trial.id, planned.sessions, plans, minute, says);
  const isNew = JSON.stringify(eveningsToKeep(planned.sessions, plans, minute)) !== JSON.stringify(plans.now);
  const sequence = plans.changes + (isNew && plans.evenings.length > 0 ? 1 : 0);
  return { isNew, text: calendarFile({ ...when, sequence, events }) };
}
