import { type ContentLine, contentLine } from "./content-lines.ts";
import type { Report } from "./faults.ts";

export interface Component {
  readonly name: string;
  readonly parent: Component | undefined;
  readonly lines: ContentLine[];
  readonly inside: Component[];
}

/** The lines of a component with this name. */
export const named = (component: Component, name: string): ContentLine[] =>
  component.lines.filter((line) => line.name === name);

/** A component and all that it holds, outer before inner. */
export function* everyComponent(component: Component): Generator<Component> {
  yield component;
  for (const inner of component.inside) yield* everyComponent(inner);
}

/** The calendars in the file, as trees of components. RFC 5545, section 3.4. */
export function calendarsIn(lines: readonly string[], report: Report): Component[] {
  const calendars: Component[] = [];
  let open: Component | undefined;
  for (const text of lines) {
    const line = readLine(text, report);
    if (line === undefined) continue;
    if (line.name === "BEGIN") open = opened(line.value.toUpperCase(), open, calendars, report);
    else if (open === undefined) report("envelope");
    else if (line.name === "END") {
      if (line.value.toUpperCase() !== open.name) report("envelope");
      open = open.parent;
    } else open.lines.push(line);
  }
  if (open !== undefined || calendars.length === 0) report("envelope");
  return calendars;
}

function readLine(text: string, report: Report): ContentLine | undefined {
  if (!/^[A-Za-z0-9-]+[;:]/.test(text)) {
    report("name-form");
    return undefined;
  }
  const line = contentLine(text);
  if (line === undefined) report("param-quote");
  return line;
}

function opened(
  name: string,
  parent: Component | undefined,
  calendars: Component[],
  report: Report,
): Component {
  const component = { name, parent, lines: [], inside: [] };
  if (parent !== undefined) parent.inside.push(component);
  else if (name === "VCALENDAR") calendars.push(component);
  else report("envelope");
  return component;
}
