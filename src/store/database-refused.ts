export const refusalReasons = [
  "not-a-database",
  "damaged",
  "foreign",
  "newer",
  "no-permission",
  "no-room",
  "busy",
] as const;
export type RefusalReason = (typeof refusalReasons)[number];

/** The database was not opened, and not touched. The message is one plain sentence with what to do. */
export class DatabaseRefused extends Error {
  override readonly name = "DatabaseRefused";
  readonly reason: RefusalReason;
  constructor(reason: RefusalReason, message: string) {
    super(message);
    this.reason = reason;
  }
}

const elsewhere = "or name another folder in LACBENCH_DATA";

const sentences: Record<RefusalReason, (path: string) => string> = {
  "not-a-database": (path) =>
    `${path} is not a Lacbench database, and was left as it is: move it away and start again, ${elsewhere}.`,
  damaged: (path) =>
    `${path} is damaged, and was left as it is: put a copy from before in its place, ${elsewhere}.`,
  foreign: (path) =>
    `${path} belongs to another program, and was left as it is: move it away and start again, ${elsewhere}.`,
  newer: (path) =>
    `${path} was written by a newer Lacbench, and was left as it is: start that one, ${elsewhere}.`,
  "no-permission": (path) => `Lacbench may not write to ${path}: give this user the right to, ${elsewhere}.`,
  "no-room": (path) => `There is no room left on the disk for ${path}: make some and start again.`,
  busy: (path) => `Another program holds ${path}: end that one and start again, ${elsewhere}.`,
};

export const refuseDatabase = (reason: RefusalReason, path: string): DatabaseRefused =>
  new DatabaseRefused(reason, sentences[reason](path));
