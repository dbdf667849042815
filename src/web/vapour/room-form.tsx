import { createSignal, Show } from "solid-js";
import { useBook } from "../book-store/use-book.tsx";
import { TextField } from "../controls/text-field.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import { upToDigits } from "../words/number.ts";
import * as words from "../words/words.ts";
import { closedRoom, limits, plainNumber, roomNames, type ShopRoom } from "./state.ts";

const t = words.vapour;

/** The room, typed once and kept: its size and how often its air changes. */
export function RoomForm(props: { readonly room: ShopRoom | null }) {
  const book = useBook();
  const [volume, setVolume] = createSignal<string>();
  const [changes, setChanges] = createSignal<string>();
  const [told, setTold] = createSignal(false);
  const [wrote, setWrote] = createSignal<readonly string[]>();
  const volumeText = () => volume() ?? (props.room === null ? "" : upToDigits(props.room.volumeM3, 4));
  const changesText = () => changes() ?? String(props.room?.airChangesPerHour ?? closedRoom);
  const read = () => ({
    volumeM3: plainNumber(volumeText(), limits.volumeM3.min, limits.volumeM3.max),
    airChangesPerHour: plainNumber(changesText(), limits.airChangesPerHour.min, limits.airChangesPerHour.max),
  });
  function keep(): void {
    setTold(true);
    const { volumeM3, airChangesPerHour } = read();
    if (volumeM3 === undefined || airChangesPerHour === undefined) return;
    const changed = { volumeM3, airChangesPerHour };
    const names = ["volumeM3", "airChangesPerHour"] as const;
    const ids = names
      .filter((name) => props.room?.[name] !== changed[name])
      .map((name) =>
        book.write({
          kind: "default-changed",
          body: {
            name: roomNames[name],
            value: changed[name],
            ...(props.room === null ? {} : { was: props.room[name] }),
          },
        }),
      );
    setWrote(ids);
    setTold(false);
    setVolume(undefined);
    setChanges(undefined);
  }
  function undo(): void {
    const ids = wrote() ?? [];
    if (ids.length > 0) book.strike([...ids]);
    setWrote(undefined);
  }
  return (
    <>
      <details open={props.room === null} class="not-on-paper">
        <summary>
          {props.room === null
            ? t.room
            : t.roomIs(upToDigits(props.room.volumeM3, 3), upToDigits(props.room.airChangesPerHour, 2))}
        </summary>
        <div class="stack">
          <TextField
            label={t.volume}
            inputMode="decimal"
            value={volumeText()}
            onInput={setVolume}
            hint={t.volumeHint}
            wrong={told() && read().volumeM3 === undefined ? t.volumeWrong : undefined}
            onEnter={keep}
          />
          <TextField
            label={t.changes}
            inputMode="decimal"
            value={changesText()}
            onInput={setChanges}
            hint={t.changesHint}
            wrong={told() && read().airChangesPerHour === undefined ? t.changesWrong : undefined}
            onEnter={keep}
          />
          <button type="button" class="wide" onClick={keep}>
            {t.keepRoom}
          </button>
        </div>
      </details>
      <Show when={wrote()}>
        <UndoStrip says={t.keptRoom} onUndo={undo} />
      </Show>
    </>
  );
}
