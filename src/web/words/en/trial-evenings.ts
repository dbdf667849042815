import { counted } from "../counted.ts";
import { whenDue } from "./when-due.ts";

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? "") : `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;

/** The evenings that a trial takes. */
export const trialEvenings = {
  title: (question: string) => `Evenings for “${question}”`,
  link: "Plan its evenings",
  says: "What is left to coat, laid into the evenings that you have: the earliest end first, then the fewest evenings, then the least waiting at the bench.",
  free: "When are you free?",
  minutesPerPatch: "Minutes for one patch",
  change: "Minutes to change pad and jar",
  usual: "Three minutes a patch and ten for a change are a start, from memory; put in your own.",
  minutesWrong: "0.5 to 120 minutes would do.",
  keep: "Keep these evenings",
  kept: "These evenings are kept; the next plan starts from them.",
  keptLast: "These are the evenings kept last; typing here lays them anew.",
  notThisOf: (day: string) => `Not on ${day} at all`,
  leftOut: (day: string) => `${day} is left out.`,
  notRead: "The plan appears here once the fields can be read.",
  unfetched: "The planner is out of reach just now",
  unfetchedSays:
    "It is fetched from the house once. Change anything here when the house is in reach, and it plans.",
  planning: "Looking for a better plan",
  enough: "That is good enough",
  ends: (when: string, evenings: number) =>
    `The last coat is done on ${when}, on ${evenings === 1 ? "one evening" : `${counted(evenings)} evenings`}.`,
  idle: (minutes: number) => (minutes === 0 ? "" : `${minutes} minutes at the bench are spent waiting.`),
  proven: {
    finish: "Nothing ends earlier.",
    "finish and sessions": "Nothing ends earlier, nor takes fewer evenings.",
    "all goals": "Nothing ends earlier, takes fewer evenings or waits less.",
  },
  bound: (when: string) => `Whether it can end earlier is not known; not before ${when}.`,
  none: "The evenings given have no room for it. Longer ones, or more, would do.",
  refused: "This cannot be planned yet",
  tooShort: (coat: number, patches: number, minutes: number, evening: number) =>
    `Coat ${coat} on ${patches === 1 ? "one patch" : `${counted(patches)} patches`} takes ${minutes} minutes in one go, and the longest evening has ${evening}. An evening of ${minutes} minutes would do.`,
  nothingLeft: "All coats are on.",
  closed: "The trial is closed: nothing of it is to be coated any more.",
  toTrial: "To the trial",
  print: "Print the evenings",
  calendarKept: "The evenings are kept with it.",
  gone: "Not in the plan any more.",
  when: "When",
  what: "Coat",
  on: "On",
  dryBy: "Dry at",
  began: "Began",
  remark: "Remark",
  work: (letter: string, coat: number) =>
    letter === "" ? `Coat ${coat}, all jars` : `${letter}: coat ${coat}`,
  coatFrom: (coat: number, jar: string | null) =>
    jar === null ? `Coat ${coat}` : `Coat ${coat} from ${jar}`,
  patches: (n: number) => (n === 1 ? "one patch" : `${counted(n)} patches`),
  /** What comes due too late for its evening; at night somebody is asleep. */
  dueLate: (patches: number, hour: number, inTime: boolean) => {
    const what = patches === 1 ? "One patch comes due" : `${capital(counted(patches))} patches come due`;
    return `${what} ${whenDue(hour, inTime)}`;
  },
  dueSays: (due: {
    readonly coats: readonly string[];
    readonly from: string;
    readonly to: string;
    readonly day: string;
    readonly until: string;
  }) =>
    `${capital(listed(due.coats))} may go on from ${due.from === due.to ? due.from : `${due.from} to ${due.to}`}; ${due.day} ends at ${due.until}.`,
  dueBegin: (at: string) => `Start at ${at} instead, and they go on that evening too.`,
  dueNever: "Starting up to six hours earlier would not be enough: they wait for the next evening.",
  keyShut: "The key is shut, so all jars are coated in one go, in the order drawn for each coat.",
  letter: (letter: string, jar: string) => `${letter}: ${jar}`,
  block: (letter: string, coat: number) => `${letter}${letter === "" ? "coat " : " "}${coat}`,
  waits: (minutes: number) =>
    `${minutes} minutes between coats, as the Bench reckons them (common practice until you change it).`,
};
