const key = "lacbench-notebook";

/** Which notebook this browser had open last. */
export function lastOpen(): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null; // a browser that keeps nothing asks again
  }
}

export function rememberOpen(id: string): void {
  try {
    localStorage.setItem(key, id);
  } catch {
    // As above.
  }
}
