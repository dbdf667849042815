import type { ToleranceTable } from "./tolerance.ts";

/** One case to compute and compare, wherever it was read from. */
export interface CheckCase {
  readonly id: string;
  /** What the computed object must hold: compared key by key. A null is a result that must be absent. */
  readonly expected: Readonly<Record<string, unknown>>;
  readonly tol: ToleranceTable;
  /** Numbers as the source prints them: shown, not compared. */
  readonly published?: unknown;
  /** Why this case is shown and not compared. */
  readonly shown?: string;
  /** Throws where it cannot be computed (a failed case), or `NotReadable` where the case asks what is not known here. */
  readonly compute: () => unknown;
}

/** A case that this project has no way to read yet: counted as not read, never as passed. */
export class NotReadable extends Error {
  override readonly name = "NotReadable";
}

export type Json = Readonly<Record<string, unknown>>;
/** A row of a table: the cells as text, by column. */
export type Row = Readonly<Record<string, string>>;

export interface Context {
  /** The folder of the file being read: a case's `data` path is relative to it. */
  readonly folder: string;
  /** The rows of a CSV file beside the case, cells as text. */
  readonly rows: (path: string) => readonly Row[];
  /** A JSON or CSV file of constants from the project's own copy of this topic, whatever folder is checked. */
  readonly constants: (path: string) => Json;
  readonly constantRows: (path: string) => readonly Row[];
}

/** Computes one case of a kind from its `model`, `input` and `rows`; returns an object with the expected keys. */
export type KindAdapter = (given: Json, context: Context) => unknown;

export interface TableAdapter {
  /** Every column that may stand in the file; a file with another one is not read. */
  readonly columns: readonly (string | RegExp)[];
  /** Columns without which the file is not read. */
  readonly needs: readonly string[];
  readonly cases: (rows: readonly Row[], context: Context) => readonly CheckCase[];
}

/** Part of a topic: what one file beside this one knows how to compute. */
export interface Topic {
  /** Cases of format `cases/1`, by `kind`. */
  readonly kinds?: Readonly<Record<string, KindAdapter>>;
  /** Instances of the scheduling formats, by `format`. */
  readonly instances?: Readonly<Record<string, (instance: Json, context: Context) => CheckCase>>;
  /** CSV tables, by file name. */
  readonly tables?: Readonly<Record<string, TableAdapter>>;
  /** Who printed a table, by file name: named beside its largest residuals. */
  readonly sources?: Readonly<Record<string, string>>;
  /** CSV files that hold inputs or constants only. */
  readonly notCompared?: readonly string[];
  /** Reads any JSON file as a whole, where the topic has no `format`. */
  readonly wholeFile?: (name: string, content: Json, context: Context) => readonly CheckCase[];
  /** Ends what the topic started. */
  readonly close?: () => Promise<void>;
}
