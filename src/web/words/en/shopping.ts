const lotNamed = (name: string, lot: string | null): string => (lot === null ? name : `${name} (lot ${lot})`);

/** What a plan takes from the shelf, and what is still to be bought. */
export const shopping = {
  heading: "To buy",
  flakes: (amount: string) => `${amount} of flakes`,
  alcohol: (amount: string) => `${amount} of alcohol`,
  nothing: "Nothing: the shelf holds enough.",
  cost: (amounts: string) => `About ${amounts}, at what was paid last.`,
  noPrice: "What it costs is not known: put a price on the shelf.",
  taken: (parts: string) => `From the shelf, in this order: ${parts}.`,
  part: (amount: string, name: string, lot: string | null) => `${amount} ${lotNamed(name, lot)}`,
  lot: lotNamed,
  lotToBuy: "what is bought",
  old: (names: string) =>
    `${names}: old for flakes. Dissolve a gram in fresh alcohol and let a drop dry on glass first. How long they keep is common practice.`,
  unknown: (names: string) => `The shelf does not say how much is left of ${names}; it is not counted.`,
  blend: "More than one lot: blend them all before the first coat, so that the colour is one.",
};
