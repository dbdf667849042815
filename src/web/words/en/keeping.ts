const entries = (n: number): string => (n === 1 ? "one entry" : `${n} entries`);
const theyAre = (n: number): string => (n === 1 ? "It is" : "They are");

/** Where what was written lies, and what becomes of it. */
export const keeping = {
  title: "What is kept where",
  allSent: "All in the notebook",
  onDevice: "Kept on this device",
  beingKept: (n: number) => `Being kept: ${n}`,
  toSend: (n: number) => `Kept here, ${n} to send`,
  notKept: "This browser keeps nothing: leave the page open until all is sent",
  toSendAndNotKept: (n: number) => `${n} to send, and this browser keeps nothing`,
  noRoom: (n: number) => (n === 0 ? "No room left in this browser" : `No room here: ${n} on this page alone`),
  barred: "Not let in",
  barredToSend: (n: number) => `Not let in: kept here, ${n} to send`,
  newVersion: "A new version is here",
  nearlyFull: "Little room left here",

  counts: { house: "In the notebook’s house", here: "Kept in this browser", waits: "Waits to be sent" },
  count: entries,
  waitsHeading: (n: number) => `${entries(n).replace(/^o/, "O")} ${n === 1 ? "waits" : "wait"} to be sent`,
  more: (n: number) => `and ${n} more`,
  nothingWaits: "Nothing waits. All that was written here is in the notebook’s house.",
  reached: "The house answers. What is written is sent at once.",
  outOfReach:
    "The house does not answer just now. Go on writing: it is all kept here, and sent by itself when the house is back, once and in any order.",
  barredHeading: "This device is not let in",
  barredSays:
    "The house answers, and does not take what this device sends: it was never let in, or was taken off the list. Nothing is lost: what is written is kept here, and goes when the device is let in. Ask at the computer that keeps the notebook for a new code (lacbench pair, or its page “Phones”).",
  noRoomHeading: "There is no room left in this browser",
  noRoomSays: (n: number) =>
    n === 0
      ? "What is written from now on would be on this page alone. Make room on the device, then try again."
      : `${entries(n).replace(/^o/, "O")} ${n === 1 ? "is" : "are"} on this page alone. Leave it open until all is sent, or save the notebook to a file. Make room on the device, then try again.`,
  tryAgain: "Try again to keep it here",
  stillNoRoom: "There is still no room.",

  writerHeading: "Who writes on this device?",
  writerSays:
    "The name stands on everything written here from now on, so that the book says who did what. What was written before stays as it is.",
  writerName: "Name",
  writerAct: "Write under this name",
  writerKept: (name: string) => `${name} writes here from now on.`,
  writerGone: "Nobody’s name is written from now on.",

  deviceHeading: "Will this browser keep it?",
  promised: "Yes. The browser promises not to clear it away by itself.",
  evictable:
    "Not for certain. When the device runs short of room, or the page is not opened for weeks, the browser may clear away what is kept here. What has reached the house stays there.",
  evictableUnsent: (n: number) =>
    `${theyAre(n)} only here so far: let the device reach the house soon, or save a file.`,
  noWord: "This browser does not say. What has reached the house stays there; what waits is only here.",
  ask: "Ask the browser to keep it",
  notPromised:
    "The browser does not promise it yet. Adding Lacbench to the home screen, or opening it often, makes most browsers agree.",
  room: (used: string, of: string) => `${used} used of ${of} that the browser allows.`,
  nearlyFullSays: "Little room is left. Save the notebook to a file, and make room on the device.",

  pagesHeading: "Do the pages open without the house?",
  pages: {
    kept: "Yes. All pages are kept on this device; they open, reckon and write with the house out of reach.",
    coming: "Soon: they are being fetched.",
    failed: "Not yet. They could not be kept just now; it is tried again when the page is next opened.",
    "not-offered": "Not in this browser. Keep this page open, and all pages that were fetched go on working.",
    "not-secure":
      "No: this address begins with http, and browsers do not keep pages, read cameras or show reminders there.",
  },
  insecureSays:
    "Writing works all the same, and what is not sent yet is kept in this browser, under this very address. Keep the page open while out of reach.",
  insecureAct: "How to get a secure page",
  newVersionHeading: "A new version of Lacbench lies ready",
  newVersionSays:
    "What is written and not sent yet stays where it is. What is half typed on this page is lost.",
  newVersionAct: "Go over to it now",

  phonesHeading: "Other devices",
  phonesSay: "Phones that share this notebook are let in, and taken off, at the computer that keeps it.",
  phonesAct: "Phones",

  fileHeading: "A file of your own",
  fileSays: "The Book saves the whole notebook to a file, and takes one in.",
  fileAct: "Go to the Book",
};

/** The same where no house keeps the notebook: it lies on this device and in the person's own file. */
export const keepingAlone: Partial<typeof keeping> = {
  allSent: "All in your file",
  toSend: (n: number) => `Kept on this device, ${n} not in your file yet`,
  notKept: "This browser keeps nothing: save to your file before you leave the page",
  toSendAndNotKept: (n: number) => `${n} not in your file yet, and this browser keeps nothing`,
  counts: { house: "In your file", here: "Kept in this browser", waits: "Not in your file yet" },
  waitsHeading: (n: number) =>
    `${entries(n).replace(/^o/, "O")} ${n === 1 ? "is" : "are"} not in your file yet`,
  nothingWaits: "All that was written here is in the file that you saved last.",
  noRoomSays: (n: number) =>
    n === 0
      ? "What is written from now on would be on this page alone. Make room on the device, then try again."
      : `${entries(n).replace(/^o/, "O")} ${n === 1 ? "is" : "are"} on this page alone. Save to your file before you leave it. Make room on the device, then try again.`,
  evictable:
    "Not for certain. When the device runs short of room, or the page is not opened for weeks, the browser may clear away what is kept here. What is in your file stays there.",
  evictableUnsent: (n: number) => `${theyAre(n)} only here so far: save to your file soon.`,
  noWord: "This browser does not say. What is in your file stays there.",
  pagesHeading: "Do the pages open without a network?",
  pages: {
    ...keeping.pages,
    kept: "Yes. All pages are kept on this device; they open, reckon and write without a network.",
  },
  newVersionSays: "What is written stays where it is. What is half typed on this page is lost.",
  fileHeading: "Into a house later",
  fileSays:
    "When a computer in the shop keeps notebooks, open your file there, on its first page: everything goes over, and what is there already counts once. A later file can be taken in again, in the Book.",
};
