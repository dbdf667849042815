import { thingsOf } from "../../core/pieces/surfaces.ts";
import type { PiecePlanInput } from "../../core/registry/piece-schedule.ts";
import type { CoatsOn } from "../../core/views/coats-on.ts";
import type { PieceView } from "../../core/views/piece.ts";
import { coatSteps } from "./kept-plan.ts";
import { coatName } from "./plan-words.ts";

/** What keeps the next step waiting, in minutes since 1970 UTC: a night in which the clocks change is as long as it is. */
export interface DryingUntil {
  /** The coat that it waits for. */
  readonly says: string;
  readonly ready: number;
  /** After that the coat has waited too long; absent where it may wait. */
  readonly most: number | undefined;
}

/** Minutes since 1970 UTC of an instant. */
export const minuteOf = (instant: string): number => Math.floor(Date.parse(instant) / 60_000);

/** The last coat that is on a surface; on any where none is named. */
export const lastOn = (
  { logged }: Pick<CoatsOn, "logged">,
  surface?: string,
): CoatsOn["logged"][number] | undefined =>
  logged
    .filter((one) => one.surface === undefined || surface === undefined || one.surface === surface)
    .reduce<CoatsOn["logged"][number] | undefined>(
      (a, b) => (a === undefined || b.coat >= a.coat ? b : a),
      undefined,
    );

/** The surfaces of the same thing as one, with itself: those that are turned to. */
function sameThing(given: PiecePlanInput | undefined, surface: string | undefined): readonly string[] {
  const all = given?.surfaces ?? [];
  const thing = thingsOf(all.map(({ turned = false, ...one }) => ({ ...one, turned }))).find((one) =>
    one.some((i) => all[i]?.name === surface),
  );
  return thing?.flatMap((i) => all[i]?.name ?? []) ?? [];
}

interface Kept {
  readonly schedule: PieceView["schedule"];
  /** What the plan was worked out from, where that was kept. */
  readonly given: PiecePlanInput | undefined;
  readonly on: Pick<CoatsOn, "logged">;
}

/** The wait before the next step by a coat that is on its surface, or on the one that it would lie on. */
function waitAfter(
  { schedule, given, on }: Kept,
  surface: string | undefined,
  before: string | undefined,
): readonly DryingUntil[] {
  const last = lastOn(on, before);
  if (last === undefined) return [];
  const [step] = coatSteps(schedule, { ...last, ...(before && { surface: before }) });
  if (step === undefined) return [];
  const [own, most] = [before === surface, step.mostWaitMinutes];
  const least = (own ? undefined : given?.turnMinutes) ?? step.leastWaitMinutes ?? 0;
  const finished = minuteOf(last.at);
  return [
    {
      says: coatName(last.coat, before),
      ready: finished + least,
      most: own && most !== undefined ? finished + most : undefined,
    },
  ];
}

/** Until when a step on a surface waits at the least and at the most, and for which coat. */
export function dryingUntil(kept: Kept, surface: string | undefined): DryingUntil | undefined {
  const others = sameThing(kept.given, surface).filter((one) => one !== surface);
  const waits = [surface, ...others].flatMap((before) => waitAfter(kept, surface, before));
  const ready = Math.max(...waits.map((wait) => wait.ready));
  const longest = waits.find((wait) => wait.ready === ready);
  return longest && { ...longest, most: waits.find(({ most }) => most !== undefined)?.most };
}
