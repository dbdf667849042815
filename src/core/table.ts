/** A list as it was kept: one heading a column, one row a thing. */
export interface Table {
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
}
