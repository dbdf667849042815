import { batch, createMemo, createSignal, Index, Show } from "solid-js";
import { cut as cutOf, poundsPerUsGallonFromCut } from "../../../core/units.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { Cautions } from "../../controls/cautions.tsx";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { fields, readQuantity } from "../../controls/read-quantity.ts";
import { TextField } from "../../controls/text-field.tsx";
import * as words from "../../words/words.ts";
import { asMillilitres } from "../as-typed.ts";
import { codesTaken, letterOf, nextCode } from "../codes.ts";
import { seriesPlan, type WantedCut } from "../series-plan.ts";
import { SolventSelect, useSolvent } from "../solvents.tsx";
import { lookAtJar } from "../use-jar.ts";
import { ActForm, type ActProps } from "./act-form.tsx";
import { SeriesResult } from "./series-result.tsx";

/** One working cut as it is being typed; a code that was not typed is the next free one. */
interface Row {
  readonly cut: string;
  readonly amount: string;
  readonly code: string | undefined;
}
const bare: Row = { cut: "", amount: "", code: undefined };

const readRow = (row: Row) => ({
  cut: readQuantity(row.cut, fields.cut),
  amount: readQuantity(row.amount, fields.volume),
});

const wantedOf = (row: Row): WantedCut | undefined => {
  const { cut, amount } = readRow(row);
  return cut.ok && amount.ok && amount.value.si > 0
    ? { toCutLbPerGal: poundsPerUsGallonFromCut(cutOf(cut.value.si)), resultMl: amount.value.si * 1e6 }
    : undefined;
};

/** Several working cuts out of one stock in one plan: sealer, body, glaze; and whether the stock suffices. */
export function SeriesAct(props: ActProps) {
  const book = useBook();
  const t = words.jars.acts.series;
  const jar = () => lookAtJar(book, props.jarId);
  const [rows, setRows] = createSignal<readonly Row[]>([bare, bare]);
  const [told, setTold] = createSignal(false);
  const solvent = useSolvent(book, () => jar()?.solvents[0]?.material ?? undefined);
  const put = (at: number, change: Partial<Row>) =>
    setRows(rows().map((row, i) => (i === at ? { ...row, ...change } : row)));
  const codes = createMemo(() => {
    const taken = new Set(codesTaken(book));
    for (const { code } of rows()) if (code !== undefined) taken.add(code.trim());
    return rows().map(({ code }) => {
      const given = code ?? nextCode(letterOf(jar()?.code ?? ""), taken);
      taken.add(given.trim());
      return given.trim();
    });
  });
  const codeWrong = (at: number) => {
    const code = codes()[at] ?? "";
    if (code === "") return words.jars.acts.vessel.codeMissing;
    const twice = codes().filter((one) => one === code).length > 1;
    return twice || codesTaken(book).has(code) ? words.jars.acts.vessel.codeTaken(code) : undefined;
  };
  const wanted = createMemo(() => rows().map(wantedOf));
  const whole = () => {
    const all = wanted().filter((one) => one !== undefined);
    return all.length === rows().length ? all : undefined;
  };
  const plan = createMemo(() => {
    const [from, added, cuts] = [jar(), solvent.material()?.composition, whole()];
    return from?.cut == null || added == null || cuts === undefined
      ? undefined
      : seriesPlan(from, cuts, added);
  });
  const good = () => {
    const found = plan();
    return found?.ok ? found.value : undefined;
  };
  const refused = () => {
    const found = plan();
    return found === undefined || found.ok ? undefined : found.error;
  };
  const write = () => {
    setTold(true);
    const [found, material] = [good(), solvent.id()];
    if (found === undefined || material === undefined || rows().some((_, i) => codeWrong(i) !== undefined))
      return;
    const given = codes();
    batch(() => {
      const made = found.cuts.map((one, i) =>
        book.write({
          kind: "batch-thinned",
          about: [props.jarId, material],
          body: {
            code: given[i] ?? "",
            taken: asMillilitres(one.stockMl),
            added: [{ material, amount: asMillilitres(one.addMl) }],
            aimedCutLbPerGal: Number(one.toCutLbPerGal.toPrecision(6)),
          },
        }),
      );
      props.onWrote(t.wrote(given.join(", ")), made);
    });
  };
  return (
    <ActForm heading={t.heading} act={t.act} onAct={write} onLeave={props.onLeave}>
      <SolventSelect solvent={solvent} told={told()} />
      <Index each={rows()}>
        {(row, i) => (
          <fieldset class="series-row stack-small">
            <legend>{t.row(i + 1)}</legend>
            <div class="side-by-side thirds">
              <QuantityField
                label={t.cut}
                typed={row().cut}
                reading={readRow(row()).cut}
                onInput={(cut) => put(i, { cut })}
                hint={i === 0 ? words.jars.acts.thin.targetHint : undefined}
                told={told()}
              />
              <QuantityField
                label={t.amount}
                typed={row().amount}
                reading={readRow(row()).amount}
                onInput={(amount) => put(i, { amount })}
                hint={i === 0 ? words.jars.acts.thin.amountHint : undefined}
                told={told()}
              />
              <TextField
                label={t.code}
                value={codes()[i] ?? ""}
                onInput={(code) => put(i, { code })}
                wrong={told() ? codeWrong(i) : undefined}
              />
            </div>
            <Show when={rows().length > 1}>
              <button type="button" class="words" onClick={() => setRows(rows().filter((_, at) => at !== i))}>
                {t.leaveOut(i + 1)}
              </button>
            </Show>
          </fieldset>
        )}
      </Index>
      <button type="button" onClick={() => setRows([...rows(), bare])}>
        {t.oneMore}
      </button>
      <Show when={refused()} keyed>
        {(problem) => (
          <p class="wrong">
            {problem.field.endsWith("toCutLbPerGal") ? words.jars.acts.thin.onlyWeaker : problem.message}
          </p>
        )}
      </Show>
      <Show when={good()} keyed>
        {(found) => <SeriesResult plan={found} codes={codes()} from={jar()?.code ?? ""} />}
      </Show>
      <Show when={solvent.material()?.composition} keyed>
        {(liquid) => <Cautions act="mixing" liquid={liquid} />}
      </Show>
    </ActForm>
  );
}
