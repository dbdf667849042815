/** One unfolded line of a calendar file: `NAME;PARAM=value:value`. */
export interface ContentLine {
  readonly name: string;
  readonly params: Readonly<Record<string, readonly string[]>>;
  readonly value: string;
}

/** Cuts a line into its parts; undefined where it has no colon outside quotes, or its parameters are not well formed. */
export function contentLine(line: string): ContentLine | undefined {
  const head = /^([^;:]+)/.exec(line)?.[1];
  if (head === undefined) return undefined;
  const params: Record<string, string[]> = {};
  let at = head.length;
  while (line[at] === ";") {
    const name = /^;([A-Za-z0-9-]+)=/.exec(line.slice(at))?.[1];
    if (name === undefined) return undefined;
    at += name.length + 2;
    const values: string[] = [];
    do {
      if (values.length > 0) at++;
      const part = /^(?:"[^"]*"|[^";:,]*)/.exec(line.slice(at))?.[0] ?? "";
      at += part.length;
      values.push(part.startsWith('"') ? part.slice(1, -1) : part);
    } while (line[at] === ",");
    params[name.toUpperCase()] = values;
  }
  if (line[at] !== ":") return undefined;
  return { name: head.toUpperCase(), params, value: line.slice(at + 1) };
}
