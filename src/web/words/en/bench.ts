import { counted } from "../counted.ts";

const patches = (n: number): string => `${counted(n)} ${n === 1 ? "patch" : "patches"}`;
const these = (n: number): string => (n === 1 ? "this one" : `these ${counted(n)}`);

export const bench = {
  title: "Bench",
  dueNow: "Due now",
  dueAt: (when: string) => `Due ${when}`,
  written: (when: string) => `Written, ${when}`,
  coatOn: (coat: number, n: number) => `Coat ${coat} on ${patches(n)}`,
  coatOfTrial: (question: string, coat: number, coats: number) => `Coat ${coat} of ${coats}. ${question}`,
  and: " and ",
  jarNamed: (code: string, says: string) => `jar ${code}: ${says}`,
  jarSays: (resin: string, cut: string, solvent: string) =>
    [resin, cut, solvent === "" ? "" : `in ${solvent}`].filter((part) => part !== "").join(" "),
  cutLb: (text: string) => `${text} lb`,
  byCode: "Coat by code, in this order",
  byCodeSays:
    "The key is not on this device. Each patch gets what its code says; whoever holds the key pours it.",
  keyElsewhere: "The key is on another device. Coat each patch from the pot that bears its code.",
  keyWords: "The words that open the key",
  keyWordsHint: "The jars then show on this page, and nowhere else.",
  keyShow: "Show the jars",
  keyWrong: "These words do not open the key. The ones that sealed it would do.",
  tapToLeaveOut: "Tap a patch to leave it out of this coat",
  tile: (wood: string, coats: number) =>
    `, ${wood}, ${coats === 0 ? "no coat yet" : coats === 1 ? "one coat" : `${counted(coats)} coats`} `,
  leftOut: "left out",
  from: (when: string) => `from ${when}`,
  act: (coat: number, n: number) => `Coat ${coat} is on ${these(n)}`,
  wrote: (coat: number, hands: string) => `Coat ${coat}${hands === "" ? "" : `, by ${hands},`} written on`,
  noneChosen: "No patch is chosen. Tap the ones that have it.",

  otherwiseThan: (method: string) => `It was earlier, or not ${method}`,
  when: "When was it?",
  now: "Just now",
  ago: (minutes: number) => (minutes === 60 ? "An hour ago" : `${minutes} minutes ago`),
  clock: "Or at what time",
  clockHint: "As 19:30; a time still to come is taken for yesterday’s.",
  clockWrong: (typed: string) => `“${typed}” is not a time of day. 19:30 would do.`,
  atTime: (when: string) => `It is written for ${when}.`,
  how: "How did it go on?",
  methods: { pad: "Padded", brush: "Brushed", spray: "Sprayed", wipe: "Wiped", dip: "Dipped" },
  methodDone: { pad: "padded", brush: "brushed", spray: "sprayed", wipe: "wiped", dip: "dipped" },

  nothingDue: "Nothing to coat just now",
  nothingDueSays: "What comes next stands below, with its time.",
  first: {
    shelf: {
      heading: "Nothing is at the bench yet",
      says: "First put on the shelf what you bought: flakes, and the alcohols to try.",
      act: "Go to the shelf",
    },
    jars: {
      heading: "Nothing is at the bench yet",
      says: "The shelf is stocked. Weigh some flakes, measure some alcohol, and start a jar.",
      act: "Go to the jars",
    },
    trials: {
      heading: "Nothing is at the bench yet",
      says: "When boards are laid out for a trial, the coats that they wait for stand here, one tap each.",
      act: "Go to the trials",
    },
  },
  allCoated: "All coats are on",
  allCoatedSays: "The boards rest now. Let the film harden before you judge it.",
  boardTitle: (board: string) => `Board ${board}`,
  boardSays: (wood: string, plank: string) => `${wood}, plank ${plank}`,
  boardFilm: "The film on it",
  wholeBench: "The whole bench",
  boardNothing: (board: string) => `Nothing to coat on ${board} just now`,
  boardDone: (board: string) => `All coats are on ${board}`,

  spine: (coats: number) =>
    coats === 0
      ? "Bare wood so far"
      : `Film so far on these patches: ${counted(coats)} ${coats === 1 ? "coat" : "coats"}`,

  twice: (coat: number, codes: readonly string[]) =>
    codes.length > 3
      ? `Coat ${coat} on ${patches(codes.length)}, twice?`
      : `Coat ${coat} on ${codes.join(" ")}, twice?`,
  twiceAt: (when: string, where: string) => `${when} ${where}`,
  onThisDevice: "on this device",
  onAnother: "on another",
  twiceSays: "Both are kept. Strike the one that did not happen.",
  strikeThat: (when: string, where: string) => `Strike ${when} ${where}`,
  bothHappened: "Both went on",
  twiceWhy: (coat: number) => `coat ${coat} was given twice`,

  next: "What comes next",
  nowWord: "now",
  inTime: (length: string) => `in ${length}`,
  coatShort: (coat: number, n: number, jar: string) =>
    `Coat ${coat} on ${patches(n)}${jar === "" ? "" : `, ${jar}`}`,
  pieceCoat: (name: string, coat: number, surface: string | undefined) =>
    `Coat ${coat} on ${name}${surface === undefined ? "" : `, ${surface}`}`,
  lookAt: (code: string) => `Look at jar ${code} again`,
  lookFirst: (code: string) => `Look at jar ${code} for the first time`,
  remind: "Remind me when it is time",
  reminding: "You are reminded when it is time, while Lacbench stays open on this device.",
  remindNot: "Do not remind me",
  remindWhy: {
    refused:
      "The browser does not let this page remind you. Its settings for this address have a switch for notifications; turn it on there and press again.",
    "not-secure":
      "Browsers show reminders only on a secure page, and this address begins with http. The times stand above all the same.",
    "not-offered": "This browser shows no reminders. The times stand above all the same.",
  },
  remindSecure: "How to get a secure page",
  coatDue: (coat: number, codes: readonly string[]) => `Coat ${coat} may go on: ${codes.join(" ")}`,
  waits: "Waits between coats",
  waitsSay: (minutes: string, method: string) =>
    `${minutes} after a coat is ${method}, to begin with; common practice. Set it to your own.`,
  waitShown: (wait: string) => `After the last coat on these: ${wait}.`,
  waitField: (method: string) => `After a coat is ${method}, minutes`,
  waitWrong: "A wait is a number of minutes from 1 to 10000, as 60.",
  waitAct: "Keep this wait",
  waitKept: (minutes: string) => `Waits are ${minutes} from now on.`,

  whose: "Whose hands?",
  myself: "Mine",
  helpers: "Who helps here",
  helpersSay:
    "Named once on this device, chosen in one tap above. The book then says who did what; whoever writes stays named too.",
  helperName: "A helper’s name",
  helperMissing: "No name is typed yet. The one they are called by would do.",
  helperAdd: "Add this helper",
  helperOff: (name: string) => `Take ${name} off`,
  by: (who: string) => `, by ${who}`,
  remembered: "An evening, remembered",
  roughly: (codes: string) =>
    `The coat before is not known to the minute on ${codes}: its wait is counted from the latest that it may have been.`,

  air: "The air",
  airOld: (when: string) => `Last read ${when}.`,
  airNoneSays: "Temperature, moisture and the wood say whether a coat will draw water.",
  airRead: "Read the air",
  airAgain: "Read it again",
  temperature: "Air temperature",
  humidity: "Relative humidity",
  woodTemperature: "Wood temperature",
  airHints: {
    temperature: "As 14 °C, or 57 °F",
    humidity: "As 68 %",
    wood: "Lay the thermometer on the wood",
  },
  airAct: "Put it down",
  airWrote: "The air is written down.",
  airSays: (temperature: string, humidity: string, when: string) =>
    `Air ${temperature}, ${humidity}, read ${when}.`,
  woodAsAir: "The wood was not read; it is taken to be as warm as the air.",
  dewBelow: "dew below",
  wood: "wood",
  airOutside: "This reading lies outside what the dew point is reckoned for, −30 to 60 °C.",

  more: "Other things at the bench",
  surface: "Sanded, de-nibbed, lifted the grain",
  surfaceOn: (codes: string) => `On ${codes}: the patches that are chosen above.`,
  surfaceHow: "What was done?",
  surfaceHows: {
    sanded: "Sanded",
    "grain lifted": "Lifted the grain",
    "de-nibbed": "De-nibbed",
    scuffed: "Scuffed",
    levelled: "Levelled",
    "rubbed out": "Rubbed out",
    wiped: "Wiped clean",
    planed: "Planed",
  },
  surfaceWith: "With what",
  surfaceWithHint: "As 320 paper",
  surfaceAct: "Write it down",
  surfaceWrote: (how: string, codes: string) => `${how}: ${codes}.`,
  outside: "A coat outside the plan",
  outsideOn: (codes: string) => `On ${codes}: the patches that are chosen above.`,
  outsideSort: "What was it?",
  outsideSorts: {
    coat: "A coat",
    session: "A session of passes",
    wash: "A wash coat",
    wipe: "Wiped over",
    stain: "A stain",
    filler: "A filler",
    oil: "Oil",
    wax: "Wax",
    topcoat: "A topcoat",
    "spirit-off": "Spirited off",
  },
  outsideFrom: "From which jar",
  outsideFromNone: "from none of them",
  outsideWhy: "Why",
  outsideWhyMissing: "Why it was outside the plan is not said yet. “Thin spot at the end” would do.",
  outsideAct: "Write it down",
  outsideWrote: (what: string, codes: string) => `${what}, outside the plan: ${codes}.`,
  sittingBegin: "Begin a sitting",
  sittingEnd: "End the sitting",
  sittingOpen: (since: string, length: string) => `A sitting since ${since}, ${length}.`,
  sittingSays: "Who was at it and how long: for the time a finish takes.",
  sittingBegan: "The sitting has begun.",
  sittingEnded: (length: string) => `The sitting is over: ${length}.`,
};
