import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import { coatsForFilm, mostCoats } from "../../core/pieces/coats-for-film.ts";
import { methodDefaults } from "../../core/pieces/method-defaults.ts";
import type { PieceView } from "../../core/views/piece.ts";
import type { AirOfShop, RepeatView } from "../../core/views/repeat.ts";
import { upToDigits, withDigits } from "../words/number.ts";
import { dayInWords, lengthInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { millilitres } from "./amount-text.ts";
import { shortCut } from "./cut-text.ts";
import type { Plan, PlanInput } from "./draft.ts";
import { planOfSchedule } from "./kept-plan.ts";

/** One thing of the recipe, as it was and as it is to be; null where it is not known. */
export interface RepeatRow {
  readonly what: string;
  readonly was: string | null;
  readonly is: string | null;
}

interface Worked {
  readonly input: PlanInput;
  readonly plan: Plan;
}

export interface Again {
  readonly area: string;
  /** As typed, where it can be read: what is shown before there is a plan. */
  readonly cutLbPerGal: number | undefined;
  readonly coats: string;
  readonly method: string;
  readonly steps: readonly ScheduleStep[];
  readonly resin: string | undefined;
  readonly alcohol: string | undefined;
  readonly worked: Worked | undefined;
}

const air = (of: AirOfShop | null): string | null =>
  of === null
    ? null
    : words.pieces.airWas(upToDigits(of.temperature - 273.15, 2), upToDigits(of.relativeHumidity * 100, 2));

const film = (plan: Plan | undefined): string | null =>
  plan === undefined ? null : `${withDigits(plan.dryUm, 2)} µm`;
const mixed = (plan: Plan | undefined): string | null =>
  plan === undefined ? null : millilitres(plan.solutionToMixMl);

/** `7, from Mon 30 Nov 2026 to Sun 6 Dec 2026`, where the evenings reach. */
function evenings(steps: readonly ScheduleStep[]): string | null {
  const days = [
    ...new Set(steps.flatMap(({ day, at }) => (day === undefined || at === undefined ? [] : [day]))),
  ];
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return null;
  const named = (day: string) => dayInWords(`${day}T12:00:00Z`, "UTC");
  return words.pieces.eveningsFromTo(days.length, named(first), named(last));
}

/** The least waits between coats, each once: `15 minutes, 2 h`. */
function waits(steps: readonly ScheduleStep[]): string | null {
  const coats = steps.filter(({ what }) => what === "coat").slice(0, -1);
  const all = [...new Set(coats.map(({ leastWaitMinutes = 0 }) => leastWaitMinutes))];
  return all.length === 0 ? null : all.map(lengthInWords).join(", ");
}

const hands = (steps: readonly ScheduleStep[]): string | null =>
  steps.length === 0 ? null : lengthInWords(steps.reduce((sum, { minutes = 0 }) => sum + minutes, 0));

/** What stays and what changes from the piece done before to the one being planned, top to bottom as one would ask. */
export function repeatRows(before: PieceView, seen: RepeatView, again: Again): readonly RepeatRow[] {
  const recipe = before.schedule?.recipe;
  const [then, input, plan] = [planOfSchedule(before.schedule), again.worked?.input, again.worked?.plan];
  const row = (what: string, was: string | null | undefined, is: string | null | undefined): RepeatRow => ({
    what,
    was: was ?? null,
    is: is ?? null,
  });
  const cutIn = (lbPerGal: number | undefined) =>
    lbPerGal === undefined ? null : `${shortCut(lbPerGal)} lb`;
  const coatsIn = (coats: number | undefined) => (coats === undefined ? null : String(coats));
  const methodIn = (method: string | undefined) =>
    method === undefined ? null : words.pieces.methodsDone[method];
  return [
    row(words.pieces.area, before.areaTyped, again.area.trim() === "" ? null : again.area),
    row(words.pieces.resin, recipe?.resin, again.resin),
    row(words.pieces.solvent, recipe?.alcohol, again.alcohol),
    row(words.pieces.cut, cutIn(recipe?.cutLbPerGal), cutIn(input?.cutLbPerGal ?? again.cutLbPerGal)),
    row(words.pieces.coats, coatsIn(recipe?.coats), coatsIn(input?.coats) ?? again.coats),
    row(words.pieces.method, methodIn(recipe?.method), methodIn(input?.method ?? again.method)),
    row(words.pieces.toMix, mixed(then?.plan), mixed(plan)),
    row(words.pieces.handsAll, hands(before.schedule?.steps ?? []), hands(again.steps)),
    row(words.pieces.waitsBetween, waits(before.schedule?.steps ?? []), waits(again.steps)),
    row(words.pieces.eveningsHead, evenings(before.schedule?.steps ?? []), evenings(again.steps)),
    row(words.pieces.filmHead, film(then?.plan), film(plan)),
    row(words.pieces.shopAir, air(seen.airThen), air(seen.airNow)),
  ];
}

/** Coats of what is being planned that leave the film of before; null where they are the same, or of more than one recipe. */
export function coatsForSameFilm(before: PieceView, worked: Worked | undefined): number | null {
  const then = planOfSchedule(before.schedule)?.plan;
  if (then === undefined || worked === undefined || worked.input.steps !== undefined) return null;
  const { firstCoatTimes } = methodDefaults[worked.input.method];
  const coat = worked.plan.dryUm / (firstCoatTimes + worked.input.coats - 1);
  const coats = coatsForFilm(then.dryUm, coat, firstCoatTimes);
  return coats === worked.input.coats || coats > mostCoats ? null : coats;
}
