/** What goes with the piece: lines at the foot of the printed sheet. */
export const sheet = {
  heading: "With the piece",
  blend: "Lots: blend all flakes of the same name, or all jars of one cut, before the first coat. Lots used:",
  blendMany: (lots: string) => `Lots: blend ${lots} before the first coat, so that the colour is one.`,
  sample:
    "Retained sample: an offcut of the same wood, coated with every coat from the same jars, kept with this sheet. It is kept:",
  sampleKept: (where: string) => `Retained sample: ${where}.`,
  care: "Care: a soft dry cloth. No alcohol, perfume, ammonia or other strong cleaner; nothing hot, nothing wet left standing; out of the sun while it is fresh. A little wax once or twice a year. Marks can be made good: this sheet says with what.",
  source: "Common practice.",
};
