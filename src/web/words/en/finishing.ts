import type { FinishingSchedule } from "../../../core/pieces/finishing-schedules.ts";
import type { CoatRole, PieceWork } from "../../../core/pieces/finishing-step.ts";

const schedules: Record<FinishingSchedule | "plain" | "kept", string> = {
  plain: "One cut, so many coats",
  brushed: "Sealed and brushed",
  padded: "Padded, many thin coats",
  "brushed-padded": "Brushed, then padded",
  sprayed: "Sprayed",
  toned: "Toned between clear coats",
  waxed: "Brushed, topped with wax",
  kept: "As it was planned last",
};

const works: Record<PieceWork, string> = {
  sand: "Sand",
  coat: "Coat",
  "de-nib": "De-nib",
  level: "Level",
  "spirit-off": "Clear the oil",
  wait: "Wait",
  cure: "Leave to cure",
  "rub out": "Rub out",
  wax: "Wax",
};

const roles: Record<CoatRole, string> = { seal: "Seal", body: "Build", tint: "Tint" };
const coatOf: Record<CoatRole, string> = { seal: "Seal", body: "Coat", tint: "Tint" };

/** A finishing schedule, step by step, as it is chosen and edited. */
export const finishing = {
  schedule: "Schedule",
  schedules,
  usual:
    "Order, cuts and waits are common practice, minutes from memory: open a step and put in your own. Try it on a scrap of the same wood first.",
  works,
  roles,
  what: "What is done",
  as: "What the coat is for",
  times: "Times in a row",
  perM2: "Liquid a coat, mL a square metre",
  minutes: "Minutes a square metre",
  least: "Least wait after it",
  most: "Most wait after it",
  mostHint: "Empty: as long as you like",
  waitHint: "15 min, 2 h, 14 days",
  next: "The next step",
  nextSoon: "Once the wait is over",
  nextOvernight: "On another evening",
  remove: "Leave this step out",
  repeat: "Another step after this one",
  step: (n: number, says: string) => `${n}. ${says}`,
  coat: (as: CoatRole, times: number, method: string, cut: string) =>
    `${coatOf[as]}${times > 1 ? ` × ${times}` : ""}: ${method}, ${cut}`,
  night: "Wait the night",
  waited: (what: string, wait: string) => `${what}, ${wait}`,
  timesWrong: "1 to 40 would do.",
  perM2Wrong: "1 to 1000 mL a square metre would do.",
  minutesWrong: "0 to 600 would do.",
  waitWrong: "A time such as 15 min, 2 h or 14 days would do.",
  mostWrong: "The most is less than the least.",
  tooNear: (least: string) => `No two of the evenings lie so near: ${least} or more would do.`,
  coatsWrong: "A schedule has 1 to 40 coats in all.",
  firstWrong: "A schedule begins with work: there is nothing yet to wait for.",
  coatIs: { seal: "seal", body: "", tint: "tint" } as Record<CoatRole, string>,
  jars: (n: string) => `Mix ${n} jars`,
  jar: (amount: string, cut: string) => `${amount} of ${cut} lb`,
};
