const known = new Set(["cherry", "ash", "birch"]);

/** The wood's own colour where it is known, the plain sheet where not: the word beside it says which wood it is. */
export const woodFill = (wood: string): string =>
  known.has(wood.trim().toLowerCase()) ? `var(--${wood.trim().toLowerCase()})` : "#e9e2d4";
