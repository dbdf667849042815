import type { BlushWord } from "../../../core/evaporation/blush.ts";
import type { NoModelReason } from "../../../core/views/coat-setup.ts";

const jarsInWords = (n: number): string => (n === 1 ? "one jar" : `${n} jars`);

/** What happens on the wood: turning white, drying, films, vapour. */
export const drying = {
  working: "Working it out …",
  failed: "This cannot be worked out just now: the page’s reckoner could not be started.",
  again: "Try again",
  estimate:
    "An estimate, not a clearance: the supplier’s safety data sheet, local codes and licensed practice come first.",

  blush: {
    spare: (by: string) => `Blush margin: ${by} to spare`,
    short: (by: string) => `Blush margin: ${by} short`,
    dry: "Blush margin: plenty, the air is too dry",
    clear: (jar: string, done: string) => `${jar} ${done} should stay clear in this air.`,
    advice: (
      word: Exclude<BlushWord, "unlikely">,
      cold: boolean,
      when: "tonight" | "now",
      what: string,
    ): string => {
      const will = word === "likely" ? "will" : "may";
      const which = cold ? "A cold board" : "A coat";
      const time = when === "tonight" ? " tonight" : cold ? "" : " in this air";
      return `${which} ${will} turn white${time}: ${what}`;
    },
    what: {
      warm: (celsius: number) => `warm it to ${celsius} °C or wait.`,
      warmWood: (celsius: number) => `warm the wood to ${celsius} °C or wait.`,
      dry: (percent: number) => `dry the air to ${percent} % or wait.`,
      thin: "put it on thinner, or wait.",
      wait: "wait for drier air.",
    },
    worstOf: (n: number, code: string) => `The nearest to it of ${jarsInWords(n)}: ${code}.`,
    jar: (code: string, says: string) => (says === "" ? code : `${code}, ${says}`),
    rule: (by: string) =>
      `Give or take ${by}. How far the coldest film stays above the dew point, less 3 °C (common practice) and a little for the water in it (fitted to practice).`,
    asTyped: "As it is typed; not written down yet.",
    helps: "What would help, each by itself",
    help: {
      "warmer wood": (h: { readonly woodC?: number | undefined }) => `Wood at ${Math.ceil(h.woodC ?? 0)} °C`,
      "drier air": (h: { readonly relativeHumidity?: number | undefined }) =>
        `Air of ${Math.floor((h.relativeHumidity ?? 0) * 100)} %`,
      "thinner coat": (h: { readonly wetUm?: number | undefined }) =>
        `A thinner coat, ${Math.floor(h.wetUm ?? 0)} µm wet`,
      "slower alcohol": (h: { readonly nButanolMassShare?: number | undefined }) =>
        `n-Butanol in the jar, ${Math.ceil((h.nButanolMassShare ?? 0) * 100)} % of its alcohol`,
    },
    helpEnough: "enough",
    helpNot: (better: string) => `not enough alone: ${better} better`,
    helpNone: "makes no difference",
    noHelp: "Nothing that can be changed here is enough by itself. Wait for drier air.",
    why: {
      "no-air-reading": "No air was read within six hours of it.",
      "time-not-known": "It is remembered without its hour, so the air that it dried in is not known.",
      "air-out-of-range": "Coats are reckoned in air and on wood of 0 to 50 °C.",
      "jar-not-known": "What is in the jar is not known well enough.",
      "part-without-a-name": "A part without a name is in it. Name it, and it can be reckoned.",
      "film-out-of-range": "Wet coats are reckoned from 1 to 500 µm.",
    } satisfies Record<NoModelReason, string>,
    noJars: "With a jar on the shelf, how near its coat comes to turning white stands here.",
    coldest: "coldest film",
    scale: (dew: string, film: string, wood: string) =>
      `Dew point ${dew}, coldest film ${film}, wood ${wood}`,
    all: (n: number, danger: number) =>
      `${n === 1 ? "The jar" : `All ${n} jars`} in this air: ${danger === 0 ? "clear" : danger === n ? "in danger" : `${danger} in danger`}`,
    words: { unlikely: "clear", possible: "may turn white", likely: "turns white" },
    spareShort: (by: string) => `${by} to spare`,
    shortShort: (by: string) => `${by} short`,
    compare: "Compare jars",
    compareThis: "How it dries in this air",
    wood: "Wood and air",
  },

  coat: {
    place: "A coat",
    notFound: "This coat is not in the notebook",
    notFoundSays: "It may have been struck out, or be on another device that has not sent it yet.",
    title: (number: number | null, where: string) =>
      `${number === null ? "A layer" : `Coat ${number}`} on ${where}`,
    when: (when: string, jar: string) => `${when}, from ${jar},`,
    jarNotKnown: "a jar that is not known here",
    wet: (um: string, from: string) => `${um} µm wet on the work, ${from}.`,
    wetFrom: {
      weighed: "from what was weighed",
      "poured from a jug": "poured from a jug",
      guessed: "from what was guessed",
      "read off a comb": "read off a comb",
      "method's usual": "what is usual for this way of coating",
    },
    heading: "How it dries",
    noCurve: "So there is no curve; the usual wait stands beside.",
    touchDry: "Touch dry in",
    /** Half the width of what it may be: off by a factor of 1.5. */
    touchDryOff: 0.5,
    neverDry: "Not touch dry within 12 hours",
    never: "not within 12 hours",
    slowestOf: (n: number) =>
      `The key is shut: of the ${n} jars that it may have come from, the one that dries last.`,
    blush: { unlikely: "It stays clear", possible: "It may turn white", likely: "It turns white" },
    blushBy: (by: string, spare: boolean) => (spare ? `, ${by} °C to spare.` : `, ${by} °C short.`),
    water: (percent: string) => `When it sets, ${percent} % of what is still liquid is water.`,

    mass: "What lies there",
    massAxis: "g/m² by minutes",
    massSays: (first: string, resin: string, dry: string) =>
      `Mass falls from ${first} g/m² towards ${resin} g/m² of resin; touch dry: ${dry}.`,
    touchDryMark: "touch dry",
    resin: "resin",
    makeUp: "What the liquid is made of, until it sets",
    makeUpAxis: "% by minutes",
    makeUpSays: (each: readonly string[]) => `${each.join("; ")}.`,
    makeUpOne: (name: string, first: string, last: string) => `${name} from ${first} to ${last}`,
    surface: "How cold its surface gets",
    surfaceAxis: "°C by minutes",
    surfaceSays: (low: string, when: string, dew: string) =>
      `The surface is coldest, ${low}, after ${when}; dew point ${dew}.`,
    noDew: "none, the air is too dry",
    dewBelow: (dew: string) => `dew below ${dew}`,
    component: {
      ethanol: "ethanol",
      isopropanol: "isopropanol",
      "n-propanol": "n-propanol",
      methanol: "methanol",
      "n-butanol": "n-butanol",
      isobutanol: "isobutanol",
      mek: "MEK",
      mibk: "MIBK",
      "ethyl-acetate": "ethyl acetate",
      "n-butyl-acetate": "butyl acetate",
      "n-heptane": "heptane",
    },
    table: "The figures in a table",
    tableMinutes: "Minutes",
    tableLiquid: "Liquid, g/m²",
    tableWater: "Water in it, %",
    tableSurface: "Surface, °C",
    how: "How it was worked out",
    lessThan: (places: number) =>
      `less than 1 part in ${places <= 3 ? 10 ** places : `10${superscript(places)}`}`,
    balance: (mass: string, heat: string) =>
      `Of the mass that left, ${mass} is unaccounted for; of the heat, ${heat}.`,

    recoat: "When the next coat may go on",
    recoatAfter: (wait: string) => `The next coat after ${wait}`,
    shown: {
      "common practice": "That is common practice.",
      "set by hand": "That is the wait you set.",
      model: "That is the model’s.",
      "own log": "That is by your own log.",
    },
    which: { "set by hand": "Set by you", model: "The model", "own log": "Your own log" },
    commonAs: { "common practice": "Common practice", "from memory": "Usual, from memory" },
    between: (from: string, to: string) => `It may be ${from} to ${to}.`,
    noModel: "says nothing",
    ownWithout: "needs the model",
    ownSays: (wait: string, coats: number) => `${wait}, from ${coats} coats`,
    ownNotYet: (coats: number, bad: number) =>
      `${coats === 0 ? "no coats" : coats === 1 ? "one coat" : `${coats} coats`} told, ${bad === 0 ? "none" : bad} too soon; 6 are needed, 2 of each kind`,
    notInThreeDays: "By the model it is not firm within three days.",
    waited: (minutes: number) =>
      minutes < 60
        ? `${minutes} minutes`
        : minutes < 2880
          ? `${Math.floor(minutes / 60)} h ${minutes % 60} min`
          : `${Math.round(minutes / 1440)} days`,
    beneath: "The coat beneath",
    above: "The coat above",
    see: (coat: number) => `How coat ${coat} dries`,
  },

  compare: {
    title: "Jars in this air",
    none: "No jars to compare yet",
    noneSays:
      "A jar whose contents are known can be set beside another: which dries first, which turns white.",
    how: "How it goes on",
    noAir: "Read the air, and the jars are set side by side in it.",
    choose: "Choose the jars to set side by side.",
    which: (most: number) => `Which jars, up to ${most}`,
    air: (temperature: string, humidity: string, wood: string) =>
      `Air ${temperature} °C, ${humidity} %, wood ${wood} °C.`,
    firstAndLast: (first: string, soon: string, last: string, late: string) =>
      `${first} is touch dry first, in ${soon}; ${last} last, ${late.startsWith("not") ? late : `in ${late}`}`,
    alike: "They are touch dry at about the same time",
    touchDry: "Touch dry in",
    recoat: "Next coat after",
    blush: "Turning white",
    coldest: "Coldest surface",
    freshAir: "Fresh air for a m² in an hour",
    unknown: "not known",
    by: {
      "common practice": "(common practice)",
      "set by hand": "(set by you)",
      model: "(model)",
      "own log": "(your own log)",
    },
    rule: "A first coat, by the usual amount for this way of coating. Touch dry may be off by a factor of 1.5, the next coat by 3. Fresh air: what would hold its vapour at the published limits, badly mixed.",
  },

  ready: {
    question: "Was it ready?",
    beneath: "Was the coat beneath ready?",
    white: "Did it turn white?",
    answers: {
      dragged: "The pad dragged",
      well: "Ready",
      "too soon": "Too soon",
      whitened: "It turned white",
    },
    wrote: {
      dragged: "Written down: the pad dragged.",
      well: "Written down: it was ready.",
      "too soon": "Written down: too soon.",
      whitened: "Written down: it turned white.",
    },
    notYet: "It is asked once the next coat is on.",
    nextWent: (when: string, waited: string | undefined) =>
      `The next coat went on ${when}${waited === undefined ? "" : `, ${waited} later`}.`,
  },
};

const superscript = (n: number): string => [...String(n)].map((d) => "⁰¹²³⁴⁵⁶⁷⁸⁹"[Number(d)]).join("");
