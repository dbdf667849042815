import { counted } from "../number.ts";

/** What is said on and about labels. */
export const labelText = {
  title: "Labels for jars",
  which: "For which jars?",
  paper: "Paper",
  papers: { a4: "A4", letter: "Letter" },
  none: "Choose a jar.",
  print: (sheets: number) => (sheets === 1 ? "Print the sheet" : `Print the ${counted(sheets)} sheets`),
  actualSize:
    "At actual size, without margins of the printer’s own. The bar at the foot measures 100 mm then.",
  sheet: (codes: string) => `A sheet of labels: ${codes}`,
  lb: "lb",
  cutDefined: (grams: number) => `${grams} g of dry resin to a litre of alcohol`,
  cutUnknown: "Cut not known: dry down a spoonful",
  waxy: "waxy",
  from: "From",
  flakes: "flakes",
  made: {
    mixed: "Mixed",
    filtered: "Strained",
    thinned: "Thinned",
    blended: "Blended",
    decanted: "Poured",
  },
  oldAs: "Old as",
  filled: "Filled",
  byWeight: (solvent: string, others: string) => `${solvent}: ${others} by weight`,
  shutAt: "Shut at",
  withLid: (grams: string) => `${grams} with lid`,
  testBy: "Test by",
  opened: "Opened",
  dropTest: "Drop test",
  warning: "Catches fire. Not to drink.",
  hidden: {
    methanol: "Methanol: poison.",
    ketone: "Ketone.",
    "unnamed-share": "Not all of it is named.",
  } as Readonly<Record<string, string>>,
  tip: "Six to a sheet, cut on the dashes. The cut is pounds of dry resin to a US gallon of alcohol.",
  measure: "100 mm: measure me",
};
