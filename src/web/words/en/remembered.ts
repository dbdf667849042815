import type { LineFault, Source, WhyOut } from "../../remembered/evening.ts";
import type { HeadFault } from "../../remembered/head.ts";
import { counted } from "../counted.ts";

const patches = (n: number): string => `${counted(n)} ${n === 1 ? "patch" : "patches"}`;

/** An evening written down afterwards, from memory or off the pencilled sheet. */
export const remembered = {
  title: "An evening, remembered",
  says: "For coats that nobody wrote down. Go down the lines of the printed sheet; a line without a time has that of the line above it.",
  none: "No coat is waited for",
  noneSays: "When boards are laid out for a trial, coats that were forgotten can be written down here.",
  toBench: "Go to the bench",
  trial: "Which trial",
  day: "Which evening",
  days: { today: "Today", yesterday: "Yesterday", other: "Another day" },
  otherDay: "The day",
  otherDayWrong: "No day is chosen yet. A day up to today would do.",
  source: "How is it known?",
  sources: {
    sheet: { label: "It stands on the sheet", says: "Pencilled at the bench: a time counts as exact." },
    exact: { label: "I remember the time", says: "Marked as remembered." },
    about: { label: "I remember about when", says: "Half an hour either way. Marked as remembered." },
    day: { label: "Only the day", says: "Marked as remembered." },
  } satisfies Record<Source, { label: string; says: string }>,
  counts:
    "A remembered time is not reckoned with as if it were exact: your own waits leave it out, and the next coat waits from the latest that it may have been.",
  coats: "Which coats",
  coat: (n: number) => `Coat ${n}`,
  head: (coat: number) => `At the head of the sheet of coat ${coat}`,
  air: "Air temperature",
  damp: "Relative humidity",
  began: "Began",
  ended: "Ended",
  headHint: "Leave empty what was not pencilled. Lines without any time then went on about when it began.",
  headFault: "What stands at the head of a sheet does not fit yet.",
  airHalf: "The air takes both figures: its temperature and its damp.",
  nightSays: "A time before 05:00 belongs to the evening before.",
  lines: (coat: number) => `Coat ${coat}, in the order of the sheet`,
  line: (n: number, code: string) => `line ${n}, ${code}`,
  where: (board: string, place: number) => `${board}, place ${place}`,
  on: "It is on",
  leftOut: "Left out",
  written: "already written",
  outOfTrial: "out of the trial",
  time: "Time",
  jar: "Jar",
  jarByKey: "as the key says",
  remark: "Remark",
  why: "Why",
  whys: {
    "this time": "Not this time",
    dropped: "Dropped: out of the trial",
    warped: "Warped: out of the trial",
    spoiled: "Spoiled: out of the trial",
    lost: "Lost: out of the trial",
    other: "Other: out of the trial",
  } satisfies Record<WhyOut, string>,
  note: "In words",
  keyShut:
    "The key is shut: each patch got what its code says, and no jar is written beside it. Where it was another jar, write that down once the key is open.",
  fault: (fault: LineFault | HeadFault, say: (instant: string) => string): string => {
    switch (fault.code) {
      case "not-a-time":
        return `“${fault.typed}” is not a time of day. 19:30 would do.`;
      case "no-beginning":
        return "It ended without a beginning. When it began would do, or neither.";
      case "no-time":
        return "No time stands here or above. 19:30 would do, or “Only the day”.";
      case "ahead":
        return `${say(fault.at)} is still to come. A time up to now would do.`;
      case "too-early":
        return `What came before it is written for ${say(fault.after)}. A later time would do.`;
      case "coat-before":
        return `Coat ${fault.coat} is not written on it yet. Choose that coat as well, or leave this line out.`;
    }
  },
  faults: (n: number) => (n === 1 ? "One line does not fit yet." : `${n} lines do not fit yet.`),
  act: (n: number, out: number) =>
    n === 0
      ? `Write down that ${patches(out)} ${out === 1 ? "was" : "were"} left out`
      : `Write down ${patches(n)}${out === 0 ? "" : `, ${counted(out)} left out`}`,
  nothing: "No line is filled in. Choose a coat above.",
  wrote: (n: number, out: number) =>
    `Written on ${patches(n)}${out === 0 ? "" : `, ${counted(out)} left out`}.`,
  remarkNote: (coat: number, code: string, remark: string) => `Coat ${coat} on ${code}: ${remark}`,
  leftOutNote: (coat: number, code: string, why: string) =>
    `Coat ${coat} left out on ${code}${why === "" ? "." : `: ${why}`}`,
};
