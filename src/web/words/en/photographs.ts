const some = (n: number): string => (n === 1 ? "one photograph" : `${n} photographs`);
const Some = (n: number): string => (n === 1 ? "One photograph" : `${n} photographs`);

/** Pictures of a board, a jar or a piece. */
export const photographs = {
  heading: "Photographs",
  none: "None yet.",
  note: "What the next photograph shows",
  noteHint: "May be left empty. It is read out where the picture cannot be seen.",
  take: "Take a photograph",
  choose: "Choose a picture",
  smaller:
    "Each is made smaller before it is kept: at most 1600 pixels either way, as a JPEG, without where it was taken.",
  kept: (width: number, height: number, kB: number) => `Kept: ${width} × ${height} pixels, ${kB} kB.`,
  refused: "This is no picture that the browser can read",
  refusedSays: (name: string) => `“${name}” was not kept. A JPEG or PNG picture would do.`,
  noRoom: "The photograph could not be kept",
  noRoomSays: (why: string) =>
    `The browser says: ${why} Nothing was written. Make room on the device, and take it again.`,
  alt: (when: string, note: string) => (note === "" ? `Photograph, ${when}` : `${note}, ${when}`),
  enlarge: (alt: string) => `Enlarge: ${alt}`,
  notHere: "not here: on another device",
  strike: "Strike it out",
  struck: "The photograph is struck out.",
  less: "Make it small again",

  toSend: (n: number) => `Kept here, ${some(n)} to send`,
  notInFile: (n: number) => `Kept on this device, ${some(n)} not in your file yet`,
  waits: (n: number) => `${Some(n)} to send.`,
  waitsForFile: (n: number) => `${Some(n)} not in your file yet.`,

  /** Of a file. */
  lacking: (n: number) => `${Some(n)} ${n === 1 ? "is" : "are"} not whole in the file:`,
  lackingLine: (when: string, note: string, spoiled: boolean) =>
    `${when}${note === "" ? "" : `, ${note}`}: ${spoiled ? "spoiled" : "missing"}`,
  notSaved: (n: number) => `${Some(n)} ${n === 1 ? "is" : "are"} not in the file: not on this device.`,
  took: (n: number) => `${Some(n)} came with it.`,
};
