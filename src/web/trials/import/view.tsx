import { batch, createMemo, createSignal, Show } from "solid-js";
import { planTrial, wordsRead } from "../../../core/trial-import/plan-trial.ts";
import { writeTrial } from "../../../core/trial-import/write-trial.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { TableInput } from "../../controls/table-input.tsx";
import { TextField } from "../../controls/text-field.tsx";
import { typedTable } from "../../controls/typed-table.ts";
import { navigate } from "../../router.ts";
import { Page } from "../../shell/page.tsx";
import * as words from "../../words/words.ts";
import { newSecret } from "../ask/lay-down.ts";
import { ComesTo } from "./comes-to.tsx";
import { RoleFields } from "./role-fields.tsx";
import { type Choices, firstLook, type LookTyped, lookOf, matchesOf, mattersOf, readAs } from "./state.ts";
import "../trials.css";
import "../../controls/import.css";

const t = words.trialImport;

/** Somebody's trial from a table: its columns matched, what it comes to, and nothing written while a row does not fit. */
export function ImportTrial() {
  const book = useBook();
  const [choices, setChoices] = createSignal<Choices>({});
  const [look, setLook] = createSignal<LookTyped>(firstLook);
  const [called, setCalled] = createSignal<string>();
  const [told, setTold] = createSignal(false);
  const { text, setText, table, wrong } = typedTable(t.noTable, told);
  const matches = createMemo(() => {
    const found = table();
    return found === undefined ? [] : matchesOf(found, choices());
  });
  const steps = createMemo(() => {
    const found = table();
    return found === undefined ? [] : wordsRead(found, matches());
  });
  const as = () => readAs(look(), steps());
  const plan = createMemo(() => {
    const found = table();
    return found === undefined ? undefined : planTrial(found, matches(), as());
  });
  const header = () => matches().find((m) => m.role === "value")?.header ?? "";
  const name = () => (look().name ?? header()).trim();
  const question = () => called() ?? t.calledFirst(name());
  const matters = () => mattersOf(look().matters, as().scale);
  const change = (to: Partial<LookTyped>) => setLook({ ...look(), ...to });
  const take = (next: string) => {
    setText(next);
    setChoices({});
    setLook(firstLook);
    setTold(false);
  };
  const write = () => {
    setTold(true);
    const [found, matter] = [plan(), matters()];
    if (found === undefined || found.problems.length > 0 || found.readings.length === 0 || matter === null)
      return;
    const say = {
      question: question().trim() || t.calledFirst(name()),
      look: lookOf(look(), as(), header(), matter),
      seed: newSecret(),
      salt: newSecret(),
    };
    const trial = batch(() => writeTrial(found, say, (draft) => book.write(draft)));
    navigate(`/trials/${trial}/verdict`);
  };
  return (
    <Page title={t.title}>
      <h1>{t.title}</h1>
      <form
        class="import-desk stack"
        onSubmit={(event) => {
          event.preventDefault();
          write();
        }}
      >
        <section class="hung stack">
          <h2>{t.table}</h2>
          <p class="soft">{t.tableSays}</p>
          <TableInput
            text={text()}
            onText={take}
            file={t.file}
            paste={t.paste}
            pasteHint={t.pasteHint}
            wrong={wrong()}
          />
        </section>
        <Show when={table()}>
          <section class="hung stack">
            <h2>{words.jars.importing.columns}</h2>
            <p class="soft">{words.jars.importing.columnsSay}</p>
            <RoleFields matches={matches()} choices={choices()} onChoose={setChoices} />
          </section>
          <section class="hung stack">
            <h2>{t.look}</h2>
            <TextField
              label={t.lookName}
              value={look().name ?? header()}
              onInput={(n) => change({ name: n })}
            />
            <Show
              when={as().scale === "ordered"}
              fallback={<TextField label={t.unit} value={look().unit} onInput={(unit) => change({ unit })} />}
            >
              <TextField
                label={t.levels}
                hint={words.trials.levelsHint}
                value={look().levels ?? steps().join(", ")}
                onInput={(levels) => change({ levels })}
              />
            </Show>
            <TextField
              label={t.matters}
              hint={as().scale === "ordered" ? t.mattersShare : t.mattersHint}
              inputMode="decimal"
              value={look().matters}
              onInput={(text) => change({ matters: text })}
              wrong={
                told() && matters() === null
                  ? as().scale === "ordered"
                    ? t.shareWrong
                    : t.mattersWrong
                  : undefined
              }
            />
            <TextField label={t.called} value={question()} onInput={setCalled} />
          </section>
        </Show>
        <Show when={plan()}>{(found) => <ComesTo plan={found()} />}</Show>
        <button type="submit" class="main">
          {t.act(plan()?.readings.length ?? 0)}
        </button>
      </form>
    </Page>
  );
}
