export type Params = Readonly<Record<string, string>>;

/** `/jars/:jar` against `/jars/018f…`: the named parts, or null when the path is another one. */
export function matchPath(pattern: string, path: string): Params | null {
  const want = parts(pattern);
  const have = parts(path);
  if (want.length !== have.length) return null;
  const params: Record<string, string> = {};
  for (const [i, piece] of want.entries()) {
    const part = have[i] as string;
    if (piece.startsWith(":")) {
      const read = decoded(part);
      if (read === null) return null;
      params[piece.slice(1)] = read;
    } else if (piece !== part) return null;
  }
  return params;
}

const parts = (path: string): string[] => path.split("/").filter((part) => part !== "");

function decoded(part: string): string | null {
  try {
    return decodeURIComponent(part);
  } catch (error) {
    if (error instanceof URIError) return null;
    throw error;
  }
}
