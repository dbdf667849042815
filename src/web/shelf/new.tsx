import { createSignal, Match, Switch } from "solid-js";
import { useBook } from "../book-store/use-book.tsx";
import { Choice } from "../controls/choice.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import { address } from "../router.ts";
import { Page } from "../shell/page.tsx";
import * as words from "../words/words.ts";
import { NewInstrument } from "./new-instrument.tsx";
import { NewOther } from "./new-other.tsx";
import { NewResin } from "./new-resin.tsx";
import { NewSolvent } from "./new-solvent.tsx";
import "./shelf.css";

const t = words.shelf;
const forms = ["resin", "solvent", "other", "instrument"] as const;
type Form = (typeof forms)[number];

/** Something new onto the shelf. What was just put there stays in sight with its undo, for the next is often near. */
export function NewOnShelf() {
  const book = useBook();
  const [form, setForm] = createSignal<Form>(
    forms.find((one) => one === address().query.get("what")) ?? "resin",
  );
  const [wrote, setWrote] = createSignal<{ readonly name: string; readonly entry: string } | null>(null);
  const onWrote = (name: string, entry: string) => setWrote({ name, entry });
  const undo = () => {
    const last = wrote();
    if (last !== null) book.strike([last.entry]);
    setWrote(null);
  };
  return (
    <Page title={t.newTitle}>
      <h1>{t.newTitle}</h1>
      <div class="on-shelf-desk stack">
        <Choice
          label={t.what}
          value={form()}
          options={forms.map((value) => ({ value, label: t.forms[value] }))}
          onChange={setForm}
        />
        {wrote() === null ? null : <UndoStrip says={t.wrote(wrote()?.name ?? "")} onUndo={undo} />}
        <Switch>
          <Match when={form() === "resin"}>
            <NewResin onWrote={onWrote} />
          </Match>
          <Match when={form() === "solvent"}>
            <NewSolvent onWrote={onWrote} />
          </Match>
          <Match when={form() === "other"}>
            <NewOther onWrote={onWrote} />
          </Match>
          <Match when={form() === "instrument"}>
            <NewInstrument onWrote={onWrote} />
          </Match>
        </Switch>
        <p>
          <a href="/shelf">{t.title}</a>
        </p>
      </div>
    </Page>
  );
}
