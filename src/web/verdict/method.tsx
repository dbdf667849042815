import { For, Show } from "solid-js";
import type { Trial } from "../../core/views/trial.ts";
import { blindingHad } from "../../core/views/trial-rows.ts";
import type { Saying } from "../words/en/verdict.ts";
import { withDigits } from "../words/number.ts";
import * as words from "../words/words.ts";
import { rowsAsCsv } from "./csv.ts";
import { Download } from "./download.tsx";
import { figuresOf } from "./figures.ts";
import { type Look, pairsTold, type VerdictAnswer, type VerdictInput } from "./questions.ts";
import { sayFlags } from "./saying.ts";
import type { OneVerdict } from "./verdict-state.ts";

/** One tap below the sentence: how it was reckoned, every number, and the rows to reckon it again. */
export function Method(props: {
  readonly trial: Trial;
  readonly look: Look;
  readonly verdicts: readonly OneVerdict[];
  readonly how: Saying;
}) {
  const first = () => props.verdicts.find((v) => v.answer.ok);
  const answer = () => {
    const found = first()?.answer;
    return found?.ok ? found.value : null;
  };
  const boards = () => new Set(first()?.input.rows.map((r) => r.block)).size;
  const patches = () => new Set(first()?.input.rows.map((r) => r.patch)).size;
  return (
    <details class="hung how">
      <summary>
        {words.verdict.method}
        <span class="soft counts">{words.verdict.counts(patches(), boards())}</span>
      </summary>
      <Show when={answer()}>
        {(a) => <InWords {...props} answer={a()} input={(first() as OneVerdict).input} />}
      </Show>
      <div class="numbers">
        <For each={props.verdicts}>{(v) => <Numbers verdict={v} how={props.how} />}</For>
      </div>
      <For each={props.verdicts}>
        {(v) => (
          <p class="small">
            {words.verdict.compared(v.factor)}:{" "}
            <Download
              says={words.verdict.csv}
              name={words.verdict.fileName(v.factor, props.look.name, ".csv")}
              type="text/csv"
              text={() => rowsAsCsv(v.input)}
            />{" "}
            <Download
              says={words.verdict.json}
              name={words.verdict.fileName(v.factor, props.look.name, ".json")}
              type="application/json"
              text={() => JSON.stringify(v.input, null, 1)}
            />
          </p>
        )}
      </For>
    </details>
  );
}

/** How a calculation says that boards were taken out, measured and in words. */
const boardTerms: ReadonlySet<string> = new Set(["block", "blocks: boards"]);

function InWords(props: {
  readonly trial: Trial;
  readonly look: Look;
  readonly verdicts: readonly OneVerdict[];
  readonly how: Saying;
  readonly answer: VerdictAnswer;
  readonly input: VerdictInput;
}) {
  const say = words.verdict;
  const blind = () => blindingHad(props.trial);
  const out = (late: boolean) =>
    props.trial.patches.filter((p) => p.leftOut !== null && p.leftOut.keyOpen === late).map((p) => p.code);
  const departed = () => props.trial.patches.filter((p) => p.departures.length > 0).length;
  const matters = () => String(props.how.shares ? props.answer.matters * 100 : props.answer.matters);
  /** A wood lies on boards of its own: it is not compared within one. */
  const withinBoards = () =>
    props.verdicts
      .filter((v) => v.answer.ok && v.answer.value.method.terms.some((term) => boardTerms.has(term)))
      .map((v) => v.factor);
  return (
    <div class="in-words">
      <Show when={withinBoards().length > 0}>
        <p>
          <b>{say.withinHeading}</b> {say.within(words.trials.and(withinBoards()))}
        </p>
      </Show>
      <For each={props.verdicts}>
        {(v) => (
          <Show when={v.answer.ok ? v.answer.value : null}>
            {(a) => (
              <p>
                <b>
                  {say.compared(v.factor)}. {say.errorHeading}
                </b>{" "}
                {say.error(
                  unitName(a().method.errorTerm),
                  String(Number(a().degreesOfFreedom.toPrecision(3))),
                )}
              </p>
            )}
          </Show>
        )}
      </For>
      <Show when={props.answer.method.variances.length > 0}>
        <p>
          <b>{say.luckHeading}</b>{" "}
          {say.luck(
            props.answer.method.variances.map((v) => say.luckOf(v.of, withDigits(Math.sqrt(v.variance), 2))),
          )}
        </p>
      </Show>
      <Beside answer={props.answer} />
      <Show when={sayFlags(props.answer, props.input)} keyed>
        {(flags) => <p>{flags}</p>}
      </Show>
      <p>
        <b>{say.jawsHeading}</b> {say.jaws(props.answer.pairs.length)}
      </p>
      <p>
        <b>{say.equalHeading}</b> {say.equalSays(matters(), props.how)}{" "}
        {props.look.mattersIsCommon === true ? say.bandCommon : say.bandOwn}
      </p>
      <Show when={props.answer.wobble.sameJudge} keyed>
        {(sd) => (
          <p>
            <b>{say.wobbleHeading}</b> {say.wobble(`${withDigits(sd, 2)} ${props.look.unit ?? ""}`.trim())}
          </p>
        )}
      </Show>
      <Show when={props.answer.wobble.judges > 1}>
        <p>{say.wobbleJudges(props.answer.wobble.judges)}</p>
      </Show>
      <Show when={blind()} keyed>
        {(b) => (
          <p>
            <b>{say.blindHeading}</b> {say.blind[b.had]}{" "}
            {b.knowing > 0 && b.had !== "none" ? say.knowing(b.knowing, b.readings) : ""}{" "}
            {b.laidDownFirst ? "" : say.notFirst}
          </p>
        )}
      </Show>
      <Show when={out(false).length > 0}>
        <p>{say.leftOut(out(false))}</p>
      </Show>
      <Show when={out(true).length > 0}>
        <p>{say.leftOutLate(out(true))}</p>
      </Show>
      <Show when={departed() > 0}>
        <p>{say.departed(departed())}</p>
      </Show>
    </div>
  );
}

/** What stands beside the shares of an ordered response: other kinds of evidence, whether they agree or not. */
function Beside(props: { readonly answer: VerdictAnswer }) {
  const say = words.verdict;
  return (
    <Show when={props.answer.permutation}>
      {(dealt) => (
        <p>
          <b>{say.besideHeading}</b>{" "}
          {say.dealt(withDigits(dealt().pValue * 1000, 2), dealt().dealings, dealt().exact)}{" "}
          <For each={props.answer.odds?.pairs ?? []}>
            {(p) => (
              <>
                {say.odds(
                  p.a,
                  p.b,
                  withDigits(p.oddsRatio, 2),
                  withDigits(p.interval[0], 2),
                  withDigits(p.interval[1], 2),
                )}{" "}
              </>
            )}
          </For>
        </p>
      )}
    </Show>
  );
}

const unitName = (term: string): string => term.replace(/[()]/g, "");

/** The numbers of one comparison as a table, and beside them those as treated where they differ. */
function Numbers(props: { readonly verdict: OneVerdict; readonly how: Saying }) {
  const answer = () => (props.verdict.answer.ok ? props.verdict.answer.value : null);
  const treated = () => (props.verdict.treated?.ok ? props.verdict.treated.value : null);
  return (
    <div>
      <Show when={answer()}>
        {(a) => (
          <PairTable caption={words.verdict.compared(props.verdict.factor)} answer={a()} how={props.how} />
        )}
      </Show>
      <Show when={treated()}>
        {(a) => (
          <>
            <p>{words.verdict.asTreatedSays}</p>
            <PairTable caption={words.verdict.asTreated} answer={a()} how={props.how} />
          </>
        )}
      </Show>
    </div>
  );
}

function PairTable(props: {
  readonly caption: string;
  readonly answer: VerdictAnswer;
  readonly how: Saying;
}) {
  const say = words.verdict;
  return (
    <table>
      <caption>{props.caption}</caption>
      <thead>
        <tr>
          <th scope="col">{say.table.comparison}</th>
          <th scope="col">{say.table.seen}</th>
          <th scope="col">{say.table.jaws}</th>
          <th scope="col">{say.table.word}</th>
        </tr>
      </thead>
      <tbody>
        <For each={pairsTold(props.answer)}>
          {(p) => {
            const f = () => figuresOf(p, props.answer.matters, props.how.shares);
            return (
              <tr>
                <td>{say.between(p.a, p.b)}</td>
                <td>{say.signed(f().difference)}</td>
                <td>{say.fromTo(say.signed(f().low), say.signed(f().high))}</td>
                <td>{say.words[p.verdict]}</td>
              </tr>
            );
          }}
        </For>
        <For each={props.how.shares ? [] : props.answer.levels}>
          {(l) => (
            <tr class="soft">
              <td>{l.level}</td>
              <td>{withDigits(l.mean, 3)}</td>
              <td colspan="2">{say.levelSeen(l.patches, l.jars)}</td>
            </tr>
          )}
        </For>
      </tbody>
    </table>
  );
}
