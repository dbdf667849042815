import type { CoatRole, PieceWork } from "./finishing-step.ts";
import { methodDefaults, type PieceMethod, workDefaults } from "./method-defaults.ts";

/** A step as a person writes it down and edits it: in the units of the trade, once for so many times in a row. */
export interface WrittenStep {
  readonly what: PieceWork;
  /** The rest is for coats. */
  readonly as?: CoatRole;
  readonly times?: number;
  readonly method?: PieceMethod;
  readonly cutLbPerGal?: number;
  readonly millilitresPerM2?: number;
  readonly minutesPerM2: number;
  readonly leastWaitMinutes: number;
  readonly mostWaitMinutes?: number;
  readonly overnight?: boolean;
}

export const finishingSchedules = [
  "brushed",
  "padded",
  "brushed-padded",
  "sprayed",
  "toned",
  "waxed",
] as const;
export type FinishingSchedule = (typeof finishingSchedules)[number];

/** Least wait after so many coats of a method, in minutes. */
const waitAfter = (method: PieceMethod, coat: 1 | 2 | 3): number =>
  methodDefaults[method].waits[coat - 1] as number;

interface Layer {
  readonly as?: CoatRole;
  readonly times?: number;
  readonly bare?: boolean;
  readonly wait?: number;
  readonly overnight?: boolean;
}

function layer(method: PieceMethod, cutLbPerGal: number, how: Layer = {}): WrittenStep {
  const usual = methodDefaults[method];
  const ml = usual.litresPerM2 * 1000 * (how.bare ? usual.firstCoatTimes : 1);
  return {
    what: "coat",
    as: how.as ?? "body",
    times: how.times ?? 1,
    method,
    cutLbPerGal,
    millilitresPerM2: Math.round(ml * 10) / 10,
    minutesPerM2: usual.minutesPerM2,
    leastWaitMinutes: how.wait ?? waitAfter(method, 3),
    ...(how.overnight ? { overnight: true } : {}),
  };
}

/** The first coat on bare wood, thin, and rubbed smooth. */
const sealed = (method: PieceMethod): readonly WrittenStep[] => [
  work("sand", workDefaults.sandMinutesPerM2),
  layer(method, 1, { as: "seal", bare: true, wait: waitAfter(method, 1) }),
  work("de-nib", workDefaults.deNibMinutesPerM2),
];

function work(what: PieceWork, minutesPerM2: number, leastWaitMinutes = 0): WrittenStep {
  return { what, minutesPerM2, leastWaitMinutes };
}

const levelled: WrittenStep = work("level", workDefaults.levelMinutesPerM2);
const night: WrittenStep = { what: "wait", minutesPerM2: 0, leastWaitMinutes: 0, overnight: true };
const cured = (days: number): WrittenStep => work("cure", 0, days * 1440);
const rubbedOut: WrittenStep = work("rub out", workDefaults.rubOutMinutesPerM2);
const end: readonly WrittenStep[] = [cured(workDefaults.cureDays), rubbedOut];

/**
 * Common finishing schedules, every number of them a start to be edited.
 *
 * Order of work, cuts and numbers of coats: common practice. Sealed with one thin coat of 1 lb (sealers are of 1–2 lb);
 * brushed coats of 1½–2 lb, three to five; padding of 1–2 lb, ten to fourteen sessions, thinner towards the end; two
 * brushed and the rest padded; sprayed coats of 1–1½ lb, several and light; colour between clear coats, no more than
 * three of them. Levelled every two to four coats, a night after every three or four. Wax goes on a film that has had
 * two or three days at the least, rubbed out first. The oil of the pad is cleared a night after the last coat, with a pad
 * nearly dry of alcohol; a padding without oil leaves that step out. Amounts and waits are those of `methodDefaults`, common practice
 * too. Minutes a square metre, those of clearing oil and waxing, and the half hour until wax is buffed: from memory.
 */
export const scheduleSteps: Readonly<Record<FinishingSchedule, readonly WrittenStep[]>> = {
  brushed: [
    ...sealed("brush"),
    layer("brush", 2, { times: 2 }),
    night,
    levelled,
    layer("brush", 2, { times: 2 }),
    ...end,
  ],
  padded: [
    ...sealed("pad"),
    layer("pad", 1.5, { wait: waitAfter("pad", 2) }),
    layer("pad", 1.5),
    night,
    levelled,
    layer("pad", 1.5, { times: 3 }),
    night,
    levelled,
    layer("pad", 1.5, { times: 3 }),
    night,
    levelled,
    layer("pad", 1, { times: 3 }),
    night,
    work("spirit-off", 15),
    ...end,
  ],
  "brushed-padded": [
    ...sealed("brush"),
    layer("brush", 2, { times: 2 }),
    night,
    levelled,
    layer("pad", 1.5, { times: 3 }),
    night,
    layer("pad", 1, { times: 2 }),
    ...end,
  ],
  sprayed: [
    ...sealed("spray"),
    layer("spray", 1.5, { times: 3 }),
    night,
    levelled,
    layer("spray", 1.5, { times: 2 }),
    ...end,
  ],
  toned: [
    ...sealed("brush"),
    layer("brush", 1.5),
    layer("brush", 1, { as: "tint", times: 2 }),
    night,
    layer("brush", 1.5, { times: 2 }),
    ...end,
  ],
  waxed: [
    ...sealed("brush"),
    layer("brush", 1.5, { times: 2 }),
    night,
    levelled,
    layer("brush", 1.5),
    cured(3),
    rubbedOut,
    work("wax", 10, 30),
  ],
};
