import { findRoot } from "../solution/find-root.ts";
import type { FilmEquations } from "./film-equations.ts";
import { integrateStiff, type RodasStep } from "./rodas.ts";

/** Something that happens once, when a quantity that starts below zero comes to zero. */
export interface FilmEvent {
  readonly name: string;
  readonly quantity: (y: Float64Array) => number;
  readonly ends: boolean;
}

export interface FilmState {
  readonly seconds: number;
  readonly y: Float64Array;
}

export interface FilmRun {
  /** The start, every step and every event, in order. */
  readonly states: readonly FilmState[];
  readonly events: ReadonlyMap<string, FilmState>;
}

/** Small enough that halving it moves the times of touch-dry and of the next coat by less than a thousandth: by 1e-5. */
export const usualTolerance = 1e-4;

/** Where inside a step a quantity comes to zero: the step is taken again, shorter. */
function momentOf(event: FilmEvent, before: number, length: number, step: RodasStep): FilmState {
  const at = (part: number): number => {
    step.take(part * length);
    return event.quantity(step.end);
  };
  const part = findRoot(at, 1e-6, 1);
  step.take(part * length);
  return { seconds: before + part * length, y: step.end.slice() };
}

/**
 * Runs a film for a time, or until an event ends it.
 *
 * @param equations  of the film
 * @param seconds    how long [s], scalar
 * @param events     what to look out for
 * @param tolerance  relative, a step
 * @returns          states [mol/m², J/m²] at the start, after each step and at each event
 * @throws DomainError `no-convergence`
 *
 * Valid:    as the equations
 * Accuracy: tolerance a step; events to 1e-6 of the step they fall in
 * Source:   as `integrateStiff`
 */
export function runFilm(
  equations: FilmEquations,
  seconds: number,
  events: readonly FilmEvent[],
  tolerance = usualTolerance,
): FilmRun {
  const states: FilmState[] = [{ seconds: 0, y: equations.start.slice() }];
  const found = new Map<string, FilmState>();
  for (const event of events)
    if (event.quantity(equations.start) >= 0) found.set(event.name, states[0] as FilmState);
  integrateStiff(equations, {
    from: equations.start,
    until: seconds,
    tolerance,
    firstStep: 1e-3,
    onStep: (time, length, step) => {
      const end = step.end.slice();
      const ended = events.some((event) => {
        if (found.has(event.name) || event.quantity(end) < 0) return false;
        const moment = momentOf(event, time - length, length, step);
        found.set(event.name, moment);
        states.push(moment);
        return event.ends;
      });
      if (!ended) states.push({ seconds: time, y: end });
      return ended;
    },
  });
  return { states: states.sort((a, b) => a.seconds - b.seconds), events: found };
}
