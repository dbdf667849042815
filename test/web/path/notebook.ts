/** The entries as the server has them, each as it was written. */
export async function entryTexts(address: string): Promise<readonly string[]> {
  const answer = await fetch(`${address}/api/notebooks/${await notebookId(address)}/entries?limit=1000`);
  const { entries } = (await answer.json()) as { entries: readonly unknown[] };
  return entries.map((entry) => JSON.stringify(entry));
}

export async function notebookId(address: string): Promise<string> {
  const answer = await fetch(`${address}/api/notebooks`);
  const { notebooks } = (await answer.json()) as { notebooks: readonly { readonly id: string }[] };
  const id = notebooks[0]?.id;
  if (id === undefined) throw new Error("There is no notebook yet.");
  return id;
}
