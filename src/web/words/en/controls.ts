export const controls = {
  undo: "Undo",
  giveOrTake: (value: string, by: string) => `${value}, give or take ${by}`,
  giveOrTakeBy: (by: string) => `, give or take ${by}`,
  didYouMean: "Did you mean",
  unit: "Unit",
  letters: "Letters",
  optional: "if you know it",
  outside: (shown: string, least: string, most: string) =>
    `${shown} does not fit. From ${least} to ${most} would do.`,
  tooLittle: (shown: string, least: string) => `${shown} does not fit. ${least} or more would do.`,
  tooMuch: (shown: string, most: string) => `${shown} does not fit. ${most} or less would do.`,
  otherGallon: (taken: string, other: string) =>
    `${taken}, by the US gallon; by the imperial it would be ${other}`,
};
