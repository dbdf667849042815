import { counted } from "../counted.ts";

const works: Record<string, string> = {
  sand: "Sand to 220, wipe off the dust",
  coat: "Coat",
  "de-nib": "De-nib lightly with 320",
  level: "Level with 320 to 400",
  "spirit-off": "Clear the oil: a pad nearly dry of alcohol, straight strokes",
  wait: "Wait",
  cure: "Leave to cure",
  "rub out": "Rub out",
  wax: "Wax thinly, buff",
};
const methods: Record<"pad" | "brush" | "spray", string> = { pad: "Pad", brush: "Brush", spray: "Spray" };

export const pieces = {
  title: "Pieces",
  none: "No pieces yet",
  noneSays: "Say how large it is and which recipe won: the book works out the evenings and the jar.",
  plan: "Plan a piece",
  newTitle: "A new piece",
  fromTrial: (question: string) => `With what won in “${question}”`,
  name: "What is it?",
  nameHint: "Eight reading-room chairs",
  nameMissing: "Give it a name, so that you find it next year.",
  area: "Area to finish",
  areaHint: "Both faces of a panel, edges too: 3.4 m² or 37 sq ft",
  wood: "Wood",
  method: "How it goes on",
  methods,
  cut: "Cut",
  coats: "Coats",
  coatsWrong: "Coats are counted: 1 to 40 would do.",
  resin: "Flakes",
  solvent: "Alcohol",
  fromShelf: "From the shelf",
  noSolvent: "Put an alcohol on the shelf first, then it can be chosen here.",
  noSolventChosen: "Choose the alcohol it is let down with.",
  toShelf: "Go to the shelf",
  firstEvening: "First evening",
  firstWrong: "A day as 2026-10-05 would do.",
  from: "From",
  until: "Until",
  which: "Which evenings",
  choices: { every: "Every evening", weekends: "Weekends", weekdays: "Monday to Friday" },
  spare: "Spare, in 100",
  spareHint: "15 to 25 on flat work, 30 to 50 on turned or carved (common practice)",
  spareWrong: "0 to 200 would do.",
  use: "Liquid a coat",
  useHint: (ml: string) => `${ml} mL a square metre is a start (common practice); your own figure is better`,
  doesNotFit: "This cannot be planned yet",
  perM2Wrong: "1 to 1000 mL a square metre would do.",
  untilWrong: "An evening ends after it begins, as 18:00 to 21:00.",
  lookingForBetter: "Looking for a plan that ends sooner or takes fewer evenings",
  notYet: "The plan appears here once area, cut and alcohol are known.",
  keep: "Keep this plan",
  change: "Change the plan",
  planTitle: (name: string) => `A plan for ${name}`,
  noPlan: "It has no plan yet.",
  planIt: "Plan it",
  mixThis: (amount: string, cut: string) => `Mix ${amount} of ${cut} lb`,
  weigh: (g: string, ml: string, solventG: string) =>
    `${g} of flakes in ${ml} of alcohol (${solventG} on the scale)`,
  used: (ml: string, spare: string) => `${ml} is reckoned to go on; ${spare} is spare.`,
  film: (um: string, hair: string) => `About ${um} µm dry at the end: ${hair} of a hair.`,
  filmSays:
    "A hair is taken as 70 µm. What the pad takes off again and what sinks in are a usual share, not yours.",
  evenings: (n: number, last: string) =>
    `${n === 1 ? "One evening" : `${sentenceCounted(n)} evenings`}, the last coat on ${last}.`,
  tooFew: (n: number) =>
    n === 1
      ? "One step has no evening that is long enough."
      : `${n} steps have no evening that is long enough.`,
  tooFewSays: "Longer evenings, or a smaller part at a time, would do.",
  rubFrom: (day: string, wait: string) =>
    `Rub out from ${day}: ${wait} to cure (two weeks to rub out are common practice, two or three days the least).`,
  when: "When",
  step: "Step",
  liquid: "Liquid",
  hands: "Hands on",
  waitAfter: "Then wait",
  waitBefore: "then wait",
  coatNumber: (n: number) => `Coat ${n}`,
  work: (what: string) => works[what] ?? what,
  overnight: "the night",
  toHour: (at: string) => `to ${at}`,
  noDay: "no evening left",
  isOn: (n: number) => `Coat ${n} is on`,
  done: (day: string) => `on since ${day}`,
  wrote: (n: number) => `Coat ${n} is written down.`,
  allOn: "All coats are on.",
  cost: (amount: string) => `About ${amount} of flakes and alcohol, at what was paid.`,
  printIt: "Print the schedule",
  printTitle: (name: string) => `Schedule: ${name}`,
  paperDone: "Done",
  paperRemark: "Remark",
  paperUsed: "mL used",
  repeatSays: (recipe: string) => `To repeat: ${recipe}`,
  recipe: (coats: number, cut: string, resin: string, solvent: string, method: string) =>
    `${counted(coats)} ${coats === 1 ? "coat" : "coats"} of ${cut} lb ${resin} in ${solvent}, ${method}.`,
  methodsDone: { pad: "padded", brush: "brushed", spray: "sprayed" } as Record<string, string>,
  flakes: "flakes",
  alcoholOf: "alcohol",
  usual: "Amounts, waits and minutes are common practice until you put in your own. Times are your clock's.",
  coatHead: "Coat",
  day: "Day",
  plannedBeside: "Planned, and what it took",
  plannedBesideSays:
    "From three coats of a kind on, the next plan starts from these numbers: the liquid and the minutes a square metre, and the wait between coats of one evening.",
  waitHead: "Then waited",
  plannedAtLeast: (length: string) => `planned ${length} at least`,
  aSquareMetre: (ml: string) => `${ml} mL/m²`,
  plannedWas: (amount: string) => `planned ${amount}`,
  notWritten: "–",
  liquidUsed: (percent: number, coats: number) =>
    `It took ${moreOrLess(percent)} liquid than planned (${countedCoats(coats)} measured).`,
  handsUsed: (percent: number, coats: number) =>
    `It took ${moreOrLess(percent)} time at the bench than planned (${countedCoats(coats)} timed).`,
  wentOn: "Say what a coat took",
  wentOnAmount: "Liquid used",
  wentOnHint: "40 mL by the jug, or 36 g: the bottle weighed before and after",
  wentOnMinutes: "Minutes at the bench",
  minutesWrong: "More than 0 and up to 1440 minutes would do.",
  wentOnNothing: "Write the liquid or the minutes first.",
  wentOnAct: "Write it down",
  wentOnWrote: (coat: string) => `${coat}: what it took is written down.`,
  ownUse: (ml: string, coats: number) => `${ml} mL a square metre is your own, from ${countedCoats(coats)}`,
  ownHands: (minutes: string, coats: number) =>
    `${minutes} minutes a square metre are your own too, from ${countedCoats(coats)}`,
  ownWait: (length: string, coats: number) =>
    `and between coats ${length}, the middle of ${countedCoats(coats)} within an evening`,
  again: "Do it again on another piece",
  beside: (name: string) => `Beside “${name}”`,
  lastTime: "Last time",
  thisTime: "This time",
  stays: "stays",
  toMix: "Liquid to mix",
  handsAll: "At the bench in all",
  waitsBetween: "Waits between coats",
  eveningsHead: "Evenings",
  eveningsFromTo: (n: number, first: string, last: string) =>
    n === 1 ? `one, ${first}` : `${counted(n)}, from ${first} to ${last}`,
  filmHead: "Film at the end",
  shopAir: "Air of the shop",
  airWas: (celsius: string, percent: string) => `${celsius} °C, ${percent} %`,
  sameFilm: (coats: number) =>
    `For the film of then it takes ${countedCoats(coats)} of this, as far as the cut and the liquid a coat go.`,
  takeCoats: (coats: number) => `Plan ${countedCoats(coats)}`,
  notKnownHead: "Not known any more",
  notKnown: {
    "flakes used up":
      "The flakes of then are used up: another lot may be darker, waxier or slower to dissolve.",
    "flakes not in the book": "Which flakes they were is not in the book.",
    "alcohol used up": "The alcohol of then is used up: read the strength on the new bottle.",
    "alcohol not in the book": "Which alcohol it was is not in the book.",
    "liquid never measured":
      "How much a coat really took was never written down: the amount is common practice.",
    "air never read":
      "The shop’s air was not read then, so the waits of then say little about another season.",
  },
  cautions: "Before you start",
  estimate: "An estimate, not a clearance. The supplier’s safety data sheet and local code come first.",
  air: "Window open, no flame, no heater with a glow, air drawn away from your face.",
  rags: "Spread cloths flat out of doors to dry. A cloth with linseed or tung oil can set itself alight: under water in a shut tin.",
  noPiece: "This piece is not in the book",
  noPieceSays: "It may have been struck out, or belong to another notebook.",
  measure: "100 mm: measure me",
  drying: "drying",
};

const countedCoats = (n: number): string => `${counted(n)} ${n === 1 ? "coat" : "coats"}`;

function moreOrLess(percent: number): string {
  if (percent === 0) return "no more and no less";
  return percent > 0 ? `${percent} % more` : `${-percent} % less`;
}

function sentenceCounted(n: number): string {
  const word = counted(n);
  return word.charAt(0).toUpperCase() + word.slice(1);
}
