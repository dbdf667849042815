import { saveFile } from "../controls/save-file.ts";

/** A file made here when it is pressed; nothing is sent anywhere. */
export function Download(props: {
  readonly says: string;
  readonly name: string;
  readonly type: string;
  readonly text: () => string;
}) {
  return (
    <button type="button" class="words" onClick={() => saveFile(props.name, props.type, props.text())}>
      {props.says}
    </button>
  );
}
