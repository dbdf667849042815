import type { BlushWord } from "../../../core/evaporation/blush.ts";

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
      thin: "put it on half as thick, or wait.",
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
        `A coat half as thick, ${Math.round(h.wetUm ?? 0)} µm wet`,
      "slower alcohol": () => "A tenth of n-butanol in the jar",
    },
    helpEnough: "enough",
    helpNot: (better: string) => `not enough alone: ${better} better`,
    helpNone: "makes no difference",
    noHelp: "Nothing that can be changed here is enough by itself. Wait for drier air.",
    outside: "Coats are reckoned in air of 0 to 50 °C.",
    noJars: "With a jar on the shelf, how near its coat comes to turning white stands here.",
    notKnown: "A part without a name is in it: it cannot be reckoned",
    coldest: "coldest film",
    scale: (dew: string, film: string, wood: string) =>
      `Dew point ${dew}, coldest film ${film}, wood ${wood}`,
    all: (n: number, danger: number) =>
      `${n === 1 ? "The jar" : `All ${n} jars`} in this air: ${danger === 0 ? "clear" : danger === n ? "in danger" : `${danger} in danger`}`,
    words: { unlikely: "clear", possible: "may turn white", likely: "turns white" },
    spareShort: (by: string) => `${by} to spare`,
    shortShort: (by: string) => `${by} short`,
    compare: "Compare jars",
    wood: "Wood and air",
  },
};
