/** A file made here when it is pressed; nothing is sent anywhere. */
export function Download(props: {
  readonly says: string;
  readonly name: string;
  readonly type: string;
  readonly text: () => string;
}) {
  function save(): void {
    const address = URL.createObjectURL(new Blob([props.text()], { type: `${props.type};charset=utf-8` }));
    const link = document.createElement("a");
    link.href = address;
    link.download = props.name;
    link.click();
    URL.revokeObjectURL(address);
  }
  return (
    <button type="button" class="words" onClick={save}>
      {props.says}
    </button>
  );
}
