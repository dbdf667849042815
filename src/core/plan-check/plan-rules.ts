/** A task of a plan, in minutes of real time; written down here anew, so that the check shares nothing with the planner. */
export interface RuledTask {
  readonly task: string;
  readonly minutes: number;
  readonly hands: boolean;
  /** Whose hands, where people are told apart. */
  readonly by?: readonly string[];
  readonly needs?: Readonly<Record<string, number>>;
  readonly notBefore?: number;
  /** A jar that must be ready. */
  readonly jar?: string;
  /** The pad and jar in the hand. */
  readonly kit?: string;
  /** Tasks of one round follow each other without a break, in the order given. */
  readonly round?: string;
}

export interface RuledWait {
  readonly from: string;
  readonly to: string;
  readonly leastMinutes: number;
  readonly mostMinutes?: number | null;
  /** The second task is for a window that opens after the end of the first. */
  readonly otherWindow?: boolean;
}

type Window = readonly [from: number, until: number];

export interface PlanRules {
  readonly tasks: readonly RuledTask[];
  readonly waits: readonly RuledWait[];
  readonly capacity: Readonly<Record<string, number>>;
  /** When hands are there that belong to nobody by name. */
  readonly windows: readonly Window[];
  /** When the people with names are there. */
  readonly people?: Readonly<Record<string, readonly Window[]>>;
  readonly jars?: Readonly<Record<string, number>>;
  /** Minutes between two tasks of the same hands with different kits: `others`, unless the pair is in `between`. */
  readonly changes?: {
    readonly others: number;
    readonly between: readonly { readonly from: string; readonly to: string; readonly minutes: number }[];
  };
  /** Tasks of which only one may run at a time. */
  readonly notTogether?: readonly (readonly string[])[];
}

/** What a plan says of itself. What it does not say is not checked. */
export interface ClaimedPlan {
  readonly starts: Readonly<Record<string, number>>;
  /** Who does it of several people without names, from 1. */
  readonly who?: Readonly<Record<string, number>>;
  readonly finish?: number;
  readonly lowerBound?: number;
  readonly sessions?: number;
  readonly idleMinutes?: number;
  readonly isFinishProven?: boolean;
}

export const planFaultCodes = [
  "no start",
  "unknown task",
  "no number",
  "no whole minute",
  "before its date",
  "before its jar is ready",
  "unknown jar",
  "hands before a window",
  "hands after a window",
  "hands while nobody is there",
  "least wait cut short",
  "most wait overrun",
  "no night between",
  "wait of an unknown task",
  "too many hands",
  "one person at two tasks",
  "nobody to do it",
  "too little room",
  "more than there ever is",
  "no time to change",
  "round broken up",
  "round out of order",
  "round by two people",
  "together",
  "finish",
  "sessions",
  "idle minutes",
  "finish below its bound",
  "proven above its bound",
] as const;
export type PlanFaultCode = (typeof planFaultCodes)[number];

export interface PlanFault {
  readonly code: PlanFaultCode;
  /** The tasks concerned. */
  readonly tasks: readonly string[];
}

/** A task with its place in time. */
export interface Placed {
  readonly rule: RuledTask;
  readonly start: number;
  readonly end: number;
  /** Of several people without names, where it is told. */
  readonly who?: number;
}
