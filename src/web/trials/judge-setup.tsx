import { createSignal, Show } from "solid-js";
import type { Trial } from "../../core/views/trial.ts";
import { Choice } from "../controls/choice.tsx";
import { TextField } from "../controls/text-field.tsx";
import { light as pageLight } from "../shell/light.ts";
import * as words from "../words/words.ts";
import { nextOccasion, type Sitting, toRead } from "./judging-state.ts";

export type SetupChosen = Omit<Sitting, "order">;

const whoKey = "lacbench-judge";
const lights = ["window", "lamp", "outdoors", "raking"] as const;

function lastJudge(): string {
  try {
    return localStorage.getItem(whoKey) ?? "";
  } catch {
    return ""; // storage is refused in some private windows
  }
}

function rememberJudge(who: string): void {
  try {
    localStorage.setItem(whoKey, who);
  } catch {
    // As above.
  }
}

/** What is looked at, by whom, in which light: told once for a sitting. */
export function JudgeSetup(props: {
  readonly trial: Trial;
  readonly onBegin: (chosen: SetupChosen) => void;
}) {
  const [who, setWho] = createSignal(lastJudge());
  const [light, setLight] = createSignal<(typeof lights)[number]>("window");
  const looks = () => props.trial.asked.looksAt;
  const firstOpen = () =>
    looks().find((l) => toRead(props.trial, l.name, who().trim(), 1).length > 0)?.name ??
    looks()[0]?.name ??
    "";
  const [picked, setPicked] = createSignal<string>();
  const response = () => picked() ?? firstOpen();
  const occasion = () => nextOccasion(props.trial, response(), who().trim());
  const begin = () => {
    rememberJudge(who().trim());
    props.onBegin({ response: response(), who: who().trim(), light: light(), occasion: occasion() });
  };
  return (
    <div class="stack judge-setup">
      <h2>{words.trials.judgeSetup}</h2>
      <Show when={looks().length > 1}>
        <Choice
          label={words.trials.judgeWhat}
          options={looks().map((l) => ({ value: l.name, label: words.trials.sentence.capital(l.name) }))}
          value={response()}
          onChange={setPicked}
        />
      </Show>
      <TextField label={words.trials.judgeWho} value={who()} onInput={setWho} onEnter={begin} />
      <Choice
        label={words.trials.judgeLight}
        options={lights.map((value) => ({ value, label: words.trials.lights[value] }))}
        value={light()}
        onChange={setLight}
      />
      <p>
        <b>{occasion() === 1 ? words.trials.occasionFirst : words.trials.occasionAgain(occasion())}</b>{" "}
        <span class="soft">{words.trials.occasionSays}</span>
      </p>
      <Show when={pageLight() === "dim"}>
        <p>{words.trials.judgeDim}</p>
      </Show>
      <Show when={props.trial.key.state === "open"}>
        <p>{words.trials.judgeKeyOpen}</p>
      </Show>
      <Show when={props.trial.coatsDone < props.trial.asked.coats}>
        <p>{words.trials.judgeToo}</p>
      </Show>
      <button type="button" class="main" onClick={begin}>
        {words.trials.judgeBegin}
      </button>
    </div>
  );
}
