export const start = {
  heading: "A bench book for spirit finishes",
  says: "Mix by the cut, try it on fair sample boards, repeat the winner on the piece. Nothing is overwritten: a mistake is struck out and stays readable.",
  onThisDevice:
    "These pages keep the notebook on this device and in one file of yours, and send nothing anywhere.",
  none: "No notebook here yet",
  empty: "Start an empty book",
  demo: "Open the demo (all of it made up)",
  demoSays:
    "A month of an invented restorer with eight chairs: jars, boards, coats and verdicts. You may write in it.",
  demoOpening: "Writing the demo: a month in a moment",
  called: "Name on its cover",
  calledDefault: "Bench book",
  which: "Which notebook?",
  open: (name: string) => `Open ${name}`,
  startAnother: "Start another",
  invented: "demo, all of it made up",
  unnamed: "a notebook without a name",
  barred:
    "The house answers, and does not let this device in. A code from the computer that keeps the notebook lets it in: lacbench pair shows one.",
  outOfReach:
    "The notebook's house does not answer just now. What is kept in this browser opens all the same.",
};
