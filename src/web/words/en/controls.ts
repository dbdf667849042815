export const controls = {
  undo: "Undo",
  giveOrTake: (value: string, by: string) => `${value}, give or take ${by}`,
  giveOrTakeBy: (by: string) => `, give or take ${by}`,
  didYouMean: "Did you mean",
  changeIt: "Change it",
  optional: "if you know it",
  /** What a field says when what is typed in it cannot be read; `example` is something that would do. */
  cannotRead: (typed: string, example: string) => `“${typed}” cannot be read here. ${example} would do.`,
  missing: (label: string, example: string) => `${label}: nothing is written yet. ${example} would do.`,
  outside: (shown: string, least: string, most: string) =>
    `${shown} does not fit. From ${least} to ${most} would do.`,
  tooLittle: (shown: string, least: string) => `${shown} does not fit. ${least} or more would do.`,
  tooMuch: (shown: string, most: string) => `${shown} does not fit. ${most} or less would do.`,
  whichOunce: (typed: string) => `“${typed}”: which ounce?`,
  ounceOfLiquid: "Fluid ounces, by the jug",
  ounceOfWeight: "Ounces, on the scale",
  howItIsWorkedOut: "How it is worked out",
};
