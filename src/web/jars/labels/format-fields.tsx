import { Show } from "solid-js";
import { Choice } from "../../controls/choice.tsx";
import { TextField } from "../../controls/text-field.tsx";
import * as words from "../../words/words.ts";
import { perSheet, plainSheet, plainSize } from "./formats.ts";
import type { FormatChoice } from "./use-format.ts";

const t = words.jars.labelText;

/** Paper, the size of a label, and how far this printer is off. */
export function FormatFields(props: { readonly of: FormatChoice }) {
  const { of } = props;
  const plain = () => plainSheet(of.paper(), plainSize.width, plainSize.height);
  return (
    <>
      <Choice
        inline
        label={t.paper}
        value={of.paper()}
        options={[
          { value: "a4", label: t.papers.a4 },
          { value: "letter", label: t.papers.letter },
        ]}
        onChange={of.setPaper}
      />
      <Choice
        label={t.size}
        value={of.chosen()}
        options={[
          {
            value: "plain",
            label: t.plain,
            says: t.plainSays(plainSize.width, plainSize.height, perSheet(plain() as never)),
          },
          ...of.sheets().map((sheet, i) => ({
            value: String(i),
            label: t.millimetres(sheet.width, sheet.height),
            says: t.onASheet(perSheet(sheet)),
          })),
          { value: "own", label: t.own, says: t.ownSays },
        ]}
        onChange={of.setChosen}
      />
      <Show when={of.own()}>
        <div class="side-by-side halves">
          <TextField
            label={t.width}
            inputMode="decimal"
            value={of.width()}
            hint="90"
            wrong={of.width() !== "" && of.widthWrong() ? t.between(...of.limits.width) : undefined}
            onInput={of.setWidth}
          />
          <TextField
            label={t.height}
            inputMode="decimal"
            value={of.height()}
            hint="60"
            wrong={of.height() !== "" && of.heightWrong() ? t.between(...of.limits.height) : undefined}
            onInput={of.setHeight}
          />
        </div>
      </Show>
      <details>
        <summary>{t.off}</summary>
        <p class="soft">{t.offSays}</p>
        <div class="side-by-side halves">
          <TextField
            label={t.right}
            value={of.right()}
            wrong={of.rightWrong() ? t.between(-20, 20) : undefined}
            onInput={of.setRight}
          />
          <TextField
            label={t.down}
            value={of.down()}
            wrong={of.downWrong() ? t.between(-20, 20) : undefined}
            onInput={of.setDown}
          />
        </div>
      </details>
    </>
  );
}
