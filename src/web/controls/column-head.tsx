import * as words from "../words/words.ts";

/** A column of a table that is brought in: its heading, and some of its cells. */
export function ColumnHead(props: {
  readonly match: { readonly header: string; readonly column: number; readonly sample: readonly string[] };
}) {
  return (
    <p>
      <b>
        {props.match.header === ""
          ? words.jars.importing.noHeading(props.match.column + 1)
          : props.match.header}
      </b>
      <span class="soft sample">{props.match.sample.join(" · ")}</span>
    </p>
  );
}
