import { counted } from "../counted.ts";
import { withDigits } from "../number.ts";

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const and = (list: readonly string[]): string =>
  list.length < 2 ? (list[0] ?? "") : `${list.slice(0, -1).join(", ")} and ${list.at(-1)}`;
const some = (n: number, one: string, many: string): string => `${counted(n)} ${n === 1 ? one : many}`;

const unitNames = { jar: "its jar", plank: "its plank", board: "its board", patch: "its patch" } as const;
const isUnit = (name: string): name is keyof typeof unitNames => Object.hasOwn(unitNames, name);
const article = (name: string): string => (/^[aeiou]/.test(name) ? `an ${name}` : `a ${name}`);

const whyUnit = {
  jar: "Each recipe comes out of one mixing, so a lucky jar looks like a lucky recipe.",
  plank:
    "Each comes from one plank, so a lucky plank looks like a lucky wood. Fine if that is not the question.",
  board: "Each stands on boards of its own, so a lucky board looks like it.",
  patch: "There is one patch of each, and nothing to judge its luck by.",
} as const;

export const trials = {
  title: "Trials",
  none: "No trial yet",
  noneSays: "A question, a few boards, jars that nobody can tell apart. Then one sentence you can believe.",
  ask: "Ask a question",
  /** Beside a board there is room for a few letters; the wood stands there already. */
  plank: (name: string, wood: string) => {
    const own = name
      .replace(new RegExp(wood.replace(/[^\p{L}\d ]/gu, "."), "iu"), "")
      .replace(/plank/i, "")
      .trim();
    return `plank ${own.length > 6 ? `${own.slice(0, 5)}…` : own || name}`;
  },
  and,
  patchSaid: (p: { code: string; place: number; coats?: number; leftOut?: boolean; turn: number | null }) =>
    `${p.code}, place ${p.place}${p.turn === null ? "" : `, turn ${p.turn}`}${p.coats === undefined ? "" : `, ${some(p.coats, "coat", "coats")}`}${p.leftOut ? ", left out" : ""}`,

  states: {
    asked: "Asked, not laid out",
    "laid out": "Laid out, no coat yet",
    coating: "Being coated",
    judging: "To be judged",
    closed: "Closed",
  },
  listed: (patches: number, boards: number, coats: number, of: number) =>
    `${patches} patches on ${some(boards, "board", "boards")}, ${coats} of ${of} ${of === 1 ? "coat" : "coats"}`,
  keyWord: {
    none: "",
    sealed: "Key sealed",
    elsewhere: "Key kept elsewhere",
    open: "Key open",
    wrong: "Another key was opened",
  },

  // the sentence
  levelsOf: (name: string, levels: readonly string[]) =>
    levels.length > 2 && levels.length < 13 && name === "alcohol"
      ? `${counted(levels.length)} alcohols`
      : and(levels),
  nothing: { factors: "what varies", woods: "a wood", looks: "what is looked at" },
  sentence: {
    at: " at ",
    with: " with ",
    on: ", on ",
    boardsEach: (n: string, woods: number) =>
      `${some(Number(n), "board", "boards")} ${woods > 1 ? "each " : ""}of `,
    coats: (n: string) => some(Number(n), "coat", "coats"),
    judgedBy: ", judged by ",
    after: " after ",
    days: (n: string) => (Number(n) === 1 ? "a day" : `${n} days`),
    end: ".",
    capital,
  },
  change: (what: string) => `Change: ${what}`,
  done: "Done",
  blankNames: {
    factors: "What varies",
    boards: "Boards and woods",
    coats: "Coats and time",
    looks: "What is looked at",
  },

  // what varies
  factorKinds: {
    alcohol: "Alcohol",
    cut: "Cut",
    resin: "Resin",
    method: "Method",
    other: "Something else",
  },
  levels: (name: string) => `Which ${name === "" ? "ones" : `${name}s`} are tried`,
  levelsHint: "With commas between.",
  factorCalled: "What it is called",
  addFactor: "Vary something more",
  removeFactor: (name: string) => `Do not vary ${name}`,
  fromOneStock: "Let down from one stock of each",
  fromOneStockSays: "The cuts then share their stock's luck.",
  sitsOn: "To repeat it truly, what would you make again?",
  sitsOnJar: "A jar",
  sitsOnBoard: "A board",
  sitsOnPatch: "A patch",
  jarsPerLevel: "Jars mixed for each recipe",
  jarsPerLevelHint: "Two or more, each from its own weighing, tell a recipe from its jar.",

  // boards
  woods: "Woods",
  boardsPerWood: "Boards of each wood",
  planksPerWood: "Sawn from how many planks",
  patchesPerBoard: "Patches on a board",
  boardLength: "Board length, mm",
  boardWidth: "Board width, mm",

  // time
  coats: "Coats",
  evenings: "Evenings you have",
  daysToJudge: "Days from the last coat to judging",
  millilitres: "Liquid for one coat of a patch, mL",

  // what is looked at
  lookPresets: {
    gloss: "Gloss, by a meter",
    sheen: "Sheen, by eye",
    smoothness: "Smoothness, by hand",
    grain: "Grain raise",
    colour: "Colour change, by a meter",
    other: "Something else, by a number",
    otherWords: "Something else, in words",
  },
  addLook: "Look at one thing more",
  removeLook: (name: string) => `Do not look at ${name}`,
  lookCalled: "What it is called",
  lookUnit: "Its unit",
  lookLevels: "Its steps in words, from least to most",
  matters: (unit: string) => `What difference matters${unit === "" ? "" : `, ${unit}`}`,
  mattersCommon: "Common practice; put your own.",
  mattersOwn: "Yours.",
  mattersOrdered:
    "A share from 0 to 1: how much more often one is rated above the other. 0.3 is Lacbench's own convention.",
  more: "More of it is",
  less: "Less of it is",

  faults: {
    missing: "Nothing is written here yet.",
    "two needed": "One alone cannot be compared. Two or more would do.",
    "named twice": (value: string) => `“${value}” stands here twice.`,
    "not a number": (value: string) => `“${value}” is not a number.`,
    "not whole": (value: string) => `${value}: a whole number would do.`,
    "too little": (value: string, limit: string) => `${value} is too little. ${limit} or more would do.`,
    "too much": (value: string, limit: string) => `${value} is too much. ${limit} or less would do.`,
    "does not fit": (value: string, limit: string) =>
      `${value} mm leaves patches too small to judge. ${limit} mm or more would do.`,
  },
  cannotLay: "This cannot be laid out",
  notYet: "Something does not fit yet",
  lookInto: "It stands in:",

  // the plan
  planHeading: "The boards",
  drawing: (boards: number, patches: number) =>
    `${capital(some(boards, "board", "boards"))} with ${patches} coded patches in all, gutters between, the turn of coating in each patch`,
  toScale: (patch: readonly [number, number], board: readonly [number, number], gutter: number) =>
    `To scale along the grain: patches ${patch[0]} × ${patch[1]} mm on boards ${board[0]} × ${board[1]}, gutters ${gutter}. Judge inside the dots. Small figure: its turn on the board in the first coat, drawn again for every coat. All by lot.`,
  drawAgain: "Draw another lot",
  canShow: (value: string, unit: string, factor: string) => `It can show ${value} ${unit} in ${factor}`,
  canShowNothing: "It cannot show a difference",
  canShowOrdered: "By eye it can show which is more",
  canShowOrderedSays: "A scale in words has no unit to reckon with beforehand.",
  mattersToYou: (value: string) => `${value} matters to you`,
  smallestSaid: (list: readonly string[], matters: string) =>
    `Smallest difference it can show four times in five: ${list.join("; ")}. What matters to you is ${matters}.`,
  smallestOf: (factor: string, value: string) => `${factor} ${value}`,
  about: (about: string, factor: string) => (about === factor ? factor : `${factor}, ${about}`),
  wouldMiss: (factors: readonly string[], matters: string) =>
    `It would often miss a difference of ${matters} in ${and(factors)}.`,
  noneLeft: (factor: string) => `Nothing is left over to judge ${factor} by: more boards would do.`,
  noiseSays: (patch: string, jar: string, plank: string, unit: string) =>
    `Reckoned with like patches ${patch} ${unit} apart, jars ${jar}, planks ${plank} (one standard deviation).`,
  noiseAssumed: "Assumed, as shares of what matters to you, until you put your own.",
  noiseOwn: "How this was reckoned",
  noiseFields: { patch: "Patch to patch", jar: "Jar to jar", plank: "Plank to plank" },
  cannotTellHeading: "It cannot tell apart",
  tellsAll: "It tells everything apart",
  tellsAllSays: "Whatever varies was made more than once, and nothing goes along with something else.",
  cannotTell: (term: string, withWhat: string) =>
    isUnit(withWhat)
      ? `${capital(article(term))} and ${unitNames[withWhat]}.`
      : `${capital(article(term))} and ${article(withWhat)}.`,
  cannotTellWhy: (withWhat: string) =>
    isUnit(withWhat)
      ? whyUnit[withWhat]
      : "They go together everywhere, so they are the same thing in this plan.",
  takesHeading: "It takes",
  hours: "h",
  handsOn: (by: string) => `hands on, give or take ${by}`,
  eveningsThen: (days: string) => (days === "0" ? "evenings" : `evenings, then ${days} days`),
  litres: "L",
  millilitresUnit: "mL",
  inJars: (jars: number, each: string) => `in ${some(jars, "jar", "jars")}, about ${each} mL each`,
  takesSays: "A rule of thumb: two minutes a patch and coat, twenty a sitting.",
  secondJars: "Second jars",
  oneJar: "One jar each",
  keepIt: "Keep it",
  working: "Drawing the lot",
  shelfJar: (code: string, pounds: number | null, solvents: readonly string[]) =>
    [code, pounds === null ? "" : `${withDigits(pounds, 2)} lb`, and(solvents)]
      .filter((x) => x !== "")
      .join(", "),

  // before it is kept
  called: "What the trial is called",
  calledBy: (factors: readonly string[], woods: readonly string[]) =>
    capital(`${and(factors)} on ${and(woods)}`),
  jarsHeading: "The jars",
  jarsSays:
    "Which jar on the shelf each jar of the plan is. It can be told later. It never says where a jar goes.",
  notChosen: "Not chosen yet",
  jarName: (jar: string) => jar,
  keyHeading: "The key",
  keySays:
    "The key says what is on each code. While it is shut, whoever judges has only codes; its fingerprint is laid down now, so it cannot be changed later.",
  keyHow: "Who keeps it",
  keyHoldings: {
    device: {
      label: "This device",
      says: "Opened here, and nowhere else. If the device is lost, so is the key.",
    },
    passphrase: { label: "A passphrase of mine", says: "Opened on any device that has the notebook." },
    helper: {
      label: "A helper’s passphrase",
      says: "The helper types it now, pours by code for you, and opens the key after the judging.",
    },
    none: {
      label: "Nobody: not blind",
      says: "Everyone sees the recipes while judging. The verdict will say so.",
    },
  },
  alone:
    "One person alone cannot be blind while coating: the jar in the hand tells. Judging by codes, days later, is what can be blind.",
  passphrase: "Passphrase",
  passphraseAgain: "The same again",
  passphraseFaults: { short: "Eight signs or more would do.", differs: "The two differ." },
  passphraseLost: "There is no way in without it.",
  sealing: "Sealing the key",
  keyNotKept: "This browser would not keep the key, so nothing was laid down. A passphrase would do.",

  // one trial
  next: {
    asked: "Lay it out",
    toBench: "Coat it on the bench",
    judge: "Judge it",
    verdict: "Read the verdict",
    print: "Codes and session sheet",
  },
  coatsDone: (done: number, of: number) => `${done} of ${of} ${of === 1 ? "coat" : "coats"} on every patch`,
  judgedSoFar: (done: number, of: number) => `${done} of ${of} readings`,
  askedOn: (day: string) => `Asked ${day}`,
  laidDownOn: (day: string, print: string) => `Laid down ${day}, key fingerprint ${print}`,
  openKeyHeading: "Open the key",
  openKeySays: "From here on everyone can see what is on each code. It cannot be shut again.",
  openKeyLeft: (n: number) =>
    n === 1 ? "One patch is not judged yet." : `${capital(counted(n))} patches are not judged yet.`,
  openKey: "Open the key",
  openKeyAnyway: "Open it all the same",
  opening: "Opening",
  keyIsElsewhere: "The key lies on another device. Open it there.",
  keyWrong: "What was opened is not the key that was laid down. The right one can still be opened.",
  doesNotOpen: "This does not open the key. The passphrase that sealed it would do.",
  keyOpened: (day: string) => `The key was opened ${day}.`,
  patchHeading: (code: string) => `Patch ${code}`,
  patchPlace: (board: string, place: number) => `${capital(board)}, place ${place}`,
  patchCoats: (n: number) => capital(some(n, "coat", "coats")),
  patchTreatment: (levels: readonly string[], jar: string) => `${levels.join(", ")}; from ${jar}`,
  leaveOut: "Leave it out",
  leaveOutWhy: "Why",
  why: { dropped: "Dropped", warped: "Warped", spoiled: "Spoiled", lost: "Lost", other: "Something else" },
  whyNote: "In a few words",
  bringBack: "Bring it back",
  leftOutSaid: (why: string, open: boolean) =>
    `Left out: ${why.toLowerCase()}, ${open ? "after" : "before"} the key was opened.`,
  tapPatch: "Press a patch to see what happened to it, or to leave it out.",
  departures: {
    "another jar": "Coated from another jar than planned",
    "outside the plan": "A layer outside the plan",
    "film removed": "Film was removed",
    "a coat too many": "A coat more than planned",
  },
  jarOf: (jar: string, batch: string) => `${jar}: ${batch}`,
  chooseJars: "Choose the jars",
  wroteLeftOut: (code: string) => `${code} is left out.`,
  wroteBroughtBack: (code: string) => `${code} is back.`,
  wroteKept: "The trial is laid down.",
  changesHeading: "Done otherwise than planned",
  changeWhy: (why: string, open: boolean) => `${why} (${open ? "after" : "before"} the key was opened)`,
  changeAdd: "Something was done otherwise",
  changeWhat: "What",
  wroteChange: "It is written down.",
  closeHeading: "Close the trial",
  closeSays: "What was chosen, if anything. It can still be read, and undone in the Book.",
  close: "Close it",
  chosen: (name: string) => `Which ${name}`,
  noneChosen: "None",
  closedSaid: (day: string) => `Closed ${day}.`,
  cannotTellShort: "What this plan cannot tell apart",
  notFound: "There is no such trial here",
  notFoundSays: "It may not have arrived on this device yet.",

  // judging
  judging: "Judging",
  judgeTitle: (name: string) => `Judging: ${name}`,
  judgeBegin: "Begin",
  judgeSetup: "Before you begin",
  judgeWhat: "What is looked at now",
  judgeWho: "Who judges",
  judgeLight: "Light",
  lights: { window: "By a window", lamp: "Under a lamp", outdoors: "Outdoors", raking: "Raking light" },
  judgeOccasion: "First time, or again",
  occasionFirst: "The first time",
  occasionAgain: (n: number) => `Again, time ${n}`,
  occasionSays: "A few judged twice, a day apart, show your own wobble.",
  judgeDim: "Not under this light: colours cannot be judged in the dim shop.",
  judgeOf: (n: number, of: number) => `${n} of ${of}`,
  judgeValue: (name: string, unit: string) =>
    capital(unit === "" ? name : unit.startsWith(name) ? unit : `${name}, ${unit}`),
  judgeNext: "Write it down",
  judgeSkip: "Skip this one",
  judgeWrote: (code: string, value: string) => `${code}: ${value}.`,
  judgeDone: "All of them are judged",
  judgeDoneSays: "The key can be opened now, or judge some again another day.",
  judgeMore: "Judge something more",
  judgeKeyOpen: "The key is open: this reading counts as taken by somebody who could know the recipe.",
  judgeToo: "Not coated to the end yet; this is written as seen after the coats so far.",
  notANumber: (typed: string) => `“${typed}” is not a number. 41.5 would do.`,
  chooseStep: "One of the steps would do.",
  backToTrial: "Back to the trial",

  // print
  printTitle: "Codes and session sheet",
  print: "Print",
  labelsHeading: (name: string) => `Board labels, ${name}`,
  labelPlank: (plank: string) => `plank ${plank}`,
  labelsTip:
    "For the back of each board. The code opens the board at the bench, on a phone that is let in; it says nothing of what is on it.",
  codesHeading: (name: string) => `Board codes, ${name}`,
  codesTip: "Pencil the code on the back too. No I, O, 0 or 1 is used; no code says what is in the jar.",
  keyApart: (print: string) => `fingerprint ${print}, key kept apart`,
  sheetHeading: (n: number, name: string) => `Coat ${n}, ${name}`,
  sheetsLeft: (coats: number) =>
    `${coats === 1 ? "The first coat is" : `The first ${counted(coats)} coats are`} on every patch: sheets are for those to come.`,
  sheetTip:
    "In this order, line by line; a line without a time has that of the line above. Type it back later: Bench, “An evening, remembered”.",
  typeBack: "Type a pencilled sheet back",
  sheetJars: "Show which jar for each code",
  sheetJarsSays: "For whoever pours. Whoever judges must not see it.",
  sheetColumns: {
    line: "Line",
    board: "Board",
    place: "Place",
    code: "Code",
    jar: "Jar",
    time: "Time",
    leftOut: "Left out, why",
    remark: "Remark",
  },
  cutHeading: "Cut list",
  cutColumns: { board: "Board", wood: "Wood", plank: "Plank", size: "Size, mm", patches: "Patches" },
  airLine: "Day ____________   Air °C ______   Damp % ______   Began ______   Ended ______",
  bar: "100 mm: measure me",
};
