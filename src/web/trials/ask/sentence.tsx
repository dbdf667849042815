import { For, type JSX } from "solid-js";
import * as words from "../../words/words.ts";
import { type Draft, factorName } from "./draft.ts";
import { listOf } from "./field-reader.ts";

export const blanks = ["factors", "boards", "coats", "looks"] as const;
export type Blank = (typeof blanks)[number];

type Piece = string | { readonly blank: Blank; readonly text: string };

/** The trial as one sentence, with what can be changed in it as blanks. */
export function piecesOf(draft: Draft): readonly Piece[] {
  const say = words.trials.sentence;
  const factors = [...draft.factors].sort((a, b) => Number(a.kind === "cut") - Number(b.kind === "cut"));
  const varied = factors.flatMap((f, i): Piece[] => {
    const text = words.trials.levelsOf(factorName(f), listOf(f.levels)) || words.trials.nothing.factors;
    const link = i === 0 ? [] : [f.kind === "cut" ? say.at : say.with];
    return [...link, { blank: "factors", text: i === 0 ? say.capital(text) : text }];
  });
  const woods = listOf(draft.woods);
  const looks = draft.looks.map((l) => l.name.trim()).filter((name) => name !== "");
  return [
    ...(varied.length > 0
      ? varied
      : [{ blank: "factors", text: say.capital(words.trials.nothing.factors) } as const]),
    say.on,
    {
      blank: "boards",
      text:
        say.boardsEach(draft.boardsPerWood, woods.length) +
        (words.trials.and(woods) || words.trials.nothing.woods),
    },
    ", ",
    { blank: "coats", text: say.coats(draft.coats) },
    say.judgedBy,
    { blank: "looks", text: words.trials.and(looks) || words.trials.nothing.looks },
    say.after,
    { blank: "coats", text: say.days(draft.daysToJudge) },
    say.end,
  ];
}

export function Sentence(props: {
  readonly draft: Draft;
  readonly open: Blank | null;
  readonly onOpen: (blank: Blank) => void;
}): JSX.Element {
  return (
    <h1 class="say ask">
      <For each={piecesOf(props.draft)}>
        {(piece) =>
          typeof piece === "string" ? (
            piece
          ) : (
            <button
              type="button"
              class="blank"
              aria-expanded={props.open === piece.blank}
              aria-controls="blank-editor"
              onClick={() => props.onOpen(piece.blank)}
            >
              {piece.text}
            </button>
          )
        }
      </For>
    </h1>
  );
}
