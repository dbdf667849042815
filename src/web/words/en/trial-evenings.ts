import { counted } from "../counted.ts";

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
  notThis: "Not this evening",
  notThisOf: (day: string) => `Not this evening: ${day}`,
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
  nothingLeft: "All coats are on.",
  keyShut: "The key is shut, so all jars are coated in one go, in the order drawn for each coat.",
  letter: (letter: string, jar: string) => `${letter}: ${jar}`,
  block: (letter: string, coat: number) => `${letter}${letter === "" ? "coat " : " "}${coat}`,
  waits: (minutes: number) =>
    `${minutes} minutes between coats, as the Bench reckons them (common practice until you change it).`,
};
