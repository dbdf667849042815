/** Hands a file made here to the browser, as if it had been fetched; nothing is sent anywhere. */
export function saveFile(name: string, type: string, text: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000); // a phone may ask first where to put it
}
