import { createSignal, Show } from "solid-js";
import { useBook } from "../book-store/use-book.tsx";
import { DoesNotFit } from "../controls/does-not-fit.tsx";
import { TextField } from "../controls/text-field.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import * as words from "../words/words.ts";
import { madeSmaller, type Smaller } from "./made-smaller.ts";
import { isNoKeep, keepPicture } from "./picture-keep.ts";
import type { Pictured } from "./view.tsx";

const t = words.photographs;

interface Taken {
  readonly entry: string;
  readonly picture: Smaller;
}
interface Refused {
  readonly heading: string;
  readonly says: string;
}

/** Takes or chooses a picture. Its bytes are kept here before the entry that speaks of them is written. */
export function TakeOne(props: { readonly of: Pictured; readonly onTaken: () => void }) {
  const book = useBook();
  const [note, setNote] = createSignal("");
  const [taken, setTaken] = createSignal<Taken>();
  const [refused, setRefused] = createSignal<Refused>();

  async function take(file: File | undefined): Promise<void> {
    if (file === undefined) return;
    setTaken(undefined);
    setRefused(undefined);
    props.onTaken();
    const picture = await madeSmaller(file);
    if (picture === undefined) {
      setRefused({ heading: t.refused, says: t.refusedSays(file.name) });
      return;
    }
    try {
      await keepPicture(book.id, picture, "to-send");
      setTaken({ entry: write(picture), picture });
      setNote("");
    } catch (error) {
      if (!isNoKeep(error)) throw error;
      setRefused({ heading: t.noRoom, says: t.noRoomSays((error as Error).message) });
    }
  }

  function write({ sha256, type, bytes }: Smaller): string {
    const shows = note().trim();
    const { thing, board } = props.of;
    return book.write({
      kind: "photograph",
      about: [thing],
      body: {
        ...{ sha256, type, bytes: bytes.length },
        ...(shows === "" ? {} : { note: shows }),
        ...(board === undefined ? {} : { board }),
      },
    });
  }

  return (
    <>
      <TextField label={t.note} hint={t.noteHint} value={note()} onInput={setNote} />
      <div class="side-by-side">
        <FromFile label={t.take} camera onFile={take} />
        <FromFile label={t.choose} onFile={take} />
      </div>
      <p class="soft small">{t.smaller}</p>
      <Show when={taken()} keyed>
        {({ entry, picture: { width, height, bytes } }) => (
          <UndoStrip
            says={t.kept(width, height, Math.max(1, Math.round(bytes.length / 1000)))}
            onUndo={() => {
              book.strike([entry]);
              setTaken(undefined);
            }}
          />
        )}
      </Show>
      <Show when={refused()} keyed>
        {({ heading, says }) => <DoesNotFit heading={heading} says={says} />}
      </Show>
    </>
  );
}

function FromFile(props: {
  readonly label: string;
  readonly camera?: boolean;
  readonly onFile: (file: File | undefined) => Promise<void>;
}) {
  return (
    <label class="press file">
      {props.label}
      <input
        type="file"
        accept="image/*"
        capture={props.camera === true ? "environment" : undefined}
        onChange={(event) => {
          void props.onFile(event.currentTarget.files?.[0]);
          event.currentTarget.value = "";
        }}
      />
    </label>
  );
}
