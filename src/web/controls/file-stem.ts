/** A name as the beginning of a file's: letters and figures of any script, what lies between them a hyphen. */
export const fileStem = (name: string, otherwise: string): string =>
  name
    .replaceAll(/[^\p{L}\p{N}]+/gu, "-")
    .replaceAll(/^-|-$/g, "")
    .toLocaleLowerCase() || otherwise;
