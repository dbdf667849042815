const spelled = [
  "no",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
];
/**
 * Small counts in words, as one says them; larger ones in figures. By itself, since the words of a place that nobody
 * has opened stay out of the first script only while they bring nothing along that is worked out when it is loaded.
 */
export const counted = (n: number): string => spelled[n] ?? String(n);
