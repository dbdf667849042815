import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import type { PieceWords } from "../../core/pieces/piece-events.ts";
import type { ShopClock } from "../../core/schedule/shop-clock.ts";
import { lengthInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { millilitres } from "./amount-text.ts";
import { shortCut } from "./cut-text.ts";
import { stepName } from "./plan-words.ts";

const cautions = [words.pieces.air, words.pieces.rags, words.pieces.estimate].join(" ");

/** `brushed`, `200 mL of 2 lb`, `18 minutes at the bench`, `then wait 2 h`. */
function told(step: ScheduleStep): string[] {
  const {
    millilitres: ml = 0,
    cutLbPerGal,
    minutes = 0,
    leastWaitMinutes: least = 0,
    mostWaitMinutes,
  } = step;
  const amount =
    cutLbPerGal === undefined
      ? millilitres(ml)
      : words.calendar.amount(millilitres(ml), shortCut(cutLbPerGal));
  const done = step.method === undefined ? undefined : words.pieces.methodsDone[step.method];
  return [
    ...(done === undefined ? [] : [done]),
    ...(ml > 0 ? [amount] : []),
    ...(minutes > 0 ? [words.calendar.hands(lengthInWords(minutes))] : []),
    ...(least > 0 ? [words.calendar.wait(lengthInWords(least))] : []),
    ...(mostWaitMinutes === undefined ? [] : [words.calendar.noLonger(lengthInWords(mostWaitMinutes))]),
  ];
}

/** An evening of a piece as a calendar shows it: what is done in one line, and each step with its hour below. */
export function calendarWords(piece: string, recipe: string, clock: ShopClock): PieceWords<ScheduleStep> {
  const below = (lines: readonly string[]) => [...lines, "", recipe, cautions].join("\n");
  const short = (what: string, coat: number | undefined) =>
    coat === undefined ? words.calendar.work(what) : words.calendar.coat(coat);
  return {
    evening: ({ steps }) => ({
      summary: words.calendar.heading(piece, [
        ...new Set(steps.map(({ step, coat }) => short(step.what, coat))),
      ]),
      description: below(
        steps.map(({ step, coat, from }) =>
          words.calendar.line(clock.clock(from).slice(11, 16), stepName(step, coat), told(step)),
        ),
      ),
    }),
    day: (step) => ({
      summary: words.calendar.heading(piece, [short(step.what, undefined)]),
      description: below([[stepName(step, undefined), ...told(step)].join(", "), words.calendar.from]),
    }),
  };
}
