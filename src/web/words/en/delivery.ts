/** When a piece is done, if its waits turn out longer or shorter. */
export const delivery = {
  heading: "When it is done",
  by: (cases: string, day: string) => `In ${cases} it is done by ${day}.`,
  nine: "9 cases of 10",
  half: "half of all cases",
  wanted: (cases: string, day: string) => `By ${day}, when it is wanted, it is done in ${cases}.`,
  cases: (share: number): string => {
    const tenths = Math.round(share * 10);
    if (share < 0.05) return "hardly any case";
    if (share >= 0.95) return "nearly every case";
    return `${tenths} ${tenths === 1 ? "case" : "cases"} of 10`;
  },
  never: (cases: string) => `In ${cases} the evenings given are too few.`,
  neverNine: "In more than one case of 10 the evenings given are too few.",
  says: (runs: string) =>
    `The cure and the last work with it. ${runs} times laid out anew, each wait drawn by itself about its figure; a cold or damp week makes all of them longer.`,
  spread: "Waits vary, times",
  spreadHint: (times: string) =>
    `Two waits of three lie between the figure divided by this and times it. ${times} is from memory: yours is better.`,
  spreadWrong: "1 to 5 would do.",
  working: "Working out when it is done.",
  failed: "It could not be worked out when it is done.",
  again: "Try again",
  wantedBy: "Wanted by",
};
