import { createEffect, Show } from "solid-js";
import { Choice } from "../controls/choice.tsx";
import { TextField } from "../controls/text-field.tsx";
import * as words from "../words/words.ts";
import type { SurfaceDraft } from "./surface-draft.ts";

const t = words.surfaces;

/** A side or part in one line that opens to its fields. */
export function SurfaceLine(props: {
  readonly number: number;
  readonly surface: SurfaceDraft;
  readonly refused: string | undefined;
  readonly onChange: (to: Partial<SurfaceDraft>) => void;
  readonly onRemove: () => void;
}) {
  let line!: HTMLDetailsElement;
  const wrongIn = (field: keyof SurfaceDraft, says: string) =>
    props.refused === `surfaces[${props.number - 1}].${field}` ? says : undefined;
  createEffect(() => {
    if (props.refused?.startsWith(`surfaces[${props.number - 1}]`)) line.open = true;
  });
  return (
    <li>
      <details ref={line}>
        <summary>
          {t.line(props.number, props.surface.name, props.surface.share, props.surface.turned)}
        </summary>
        <div class="stack step-fields">
          <div class="side-by-side">
            <TextField
              label={t.name}
              value={props.surface.name}
              wrong={wrongIn("name", t.nameWrong)}
              onInput={(name) => props.onChange({ name })}
            />
            <TextField
              label={t.share}
              value={props.surface.share}
              inputMode="decimal"
              wrong={wrongIn("share", t.shareWrong)}
              onInput={(share) => props.onChange({ share })}
            />
          </div>
          <Show when={props.number > 1 || props.surface.turned}>
            <Choice
              label={t.turnedTo}
              value={props.surface.turned ? "turned" : "apart"}
              options={[
                { value: "apart", label: t.apart },
                { value: "turned", label: t.afterTurn },
              ]}
              wrong={wrongIn("turned", t.firstTurned)}
              onChange={(to) => props.onChange({ turned: to === "turned" })}
            />
          </Show>
          <button type="button" class="words" onClick={() => props.onRemove()}>
            {t.remove}
          </button>
        </div>
      </details>
    </li>
  );
}
